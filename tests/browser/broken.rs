//! A version that cannot start says so, and does not stand in the way of the next one.

use std::{fs, path::PathBuf};

use anyhow::Context;
use fantoccini::Locator;

use crate::support::{App, with_app};

fn module(app: &App) -> anyhow::Result<PathBuf> {
    xtask::precache::files(app.files())?
        .into_iter()
        .find(|name| name.ends_with("_bg.wasm"))
        .map(|name| app.files().join(name))
        .context("the bundle has a compiled module")
}

fn publish(app: &App, content: &[u8]) -> anyhow::Result<()> {
    fs::write(module(app)?, content)?;
    xtask::precache::write(app.files(), &app.service_worker_template()?)
}

#[test]
fn a_version_that_cannot_start_gives_way_to_one_that_can() {
    with_app(async |app| {
        app.forgive("WebAssembly");
        let sound = fs::read(module(app)?)?;
        publish(app, b"no module")?;
        app.visit("").await?;
        let failed = "return document.documentElement.dataset.app === 'failed'";
        app.browser.until(failed).await?;
        let words = app
            .browser
            .find(Locator::Css("[role=alert]"))
            .await?
            .text()
            .await?;
        assert!(
            words.contains("Plans already saved on this device are still here"),
            "{words}"
        );
        app.wait_until_kept().await?;

        publish(app, &sound)?;
        app.browser.refresh().await?;
        app.browser.until(failed).await?;
        app.browser
            .until("return navigator.serviceWorker.getRegistration().then((found) => found.waiting !== null)")
            .await
            .context("the next version was not found")?;
        app.browser
            .find(Locator::Css("[role=alert] button"))
            .await?
            .click()
            .await?;
        app.started().await
    });
}
