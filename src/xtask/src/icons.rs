//! `cargo xtask icons`: the pictures that stand for the app, in the sizes that phones ask for.
//!
//! The drawings are `public/icons/*.svg`; what is made from them is committed, and not checked, because browsers of
//! different years smooth edges differently.

use anyhow::Context;
use xshell::cmd;

use crate::{project, tool};

/// One drawing leaves the corners empty, the other fills them for phones that cut their own shape.
const DRAWINGS: [&str; 2] = ["longcook", "longcook-filled"];
const SIZES: [u32; 2] = [192, 512];

/// Draws every picture anew.
pub(crate) fn run() -> anyhow::Result<()> {
    let chromium = tool::browser()?.chromium;
    let shell = project::shell()?;
    let icons = project::root().join("public/icons");
    for name in DRAWINGS {
        let drawing = icons.join(format!("{name}.svg"));
        for size in SIZES {
            let picture = icons.join(format!("{name}-{size}.png"));
            let window = format!("--window-size={size},{size}");
            cmd!(
                shell,
                "{chromium} --headless --no-sandbox --disable-gpu --hide-scrollbars
                 --default-background-color=00000000 {window} --screenshot={picture} {drawing}"
            )
            .quiet()
            .ignore_stderr()
            .run()
            .with_context(|| format!("{} could not be drawn", picture.display()))?;
        }
    }
    Ok(())
}
