//! What can be asked for on the command line.

use anyhow::{Context, bail};
use lexopt::{Arg, Parser, ValueExt};

use crate::{bundle::Profile, test::Part};

/// The port for `serve`. It stays the same from day to day, because browsers keep plans apart by port.
pub(crate) const USUAL_PORT: u16 = 4180;

pub(crate) const USAGE: &str = "\
cargo xtask serve [--port N] [--debug]   install what is missing, build the app, serve it on this machine
cargo xtask build [--debug]              the same without serving; the files are in dist (target/dist-debug)
cargo xtask test                         install what the tests need and run every test
cargo xtask test native|browser [NAME]   only those on this machine or in the browser, or only those with this name
cargo xtask test bits                    only whether the model reckons the same bits here and in WebAssembly

cargo xtask check                        format, lints, generated files, habits
cargo xtask generate [--check]           write the files that are made from the code, or only tell which are stale
cargo xtask icons                        draw public/icons anew in the sizes that phones ask for

--debug builds in seconds; the app is then several times larger and slower.
Tools are kept in a folder of their own for each user: XDG_CACHE_HOME or ~/.cache, longcook-tools.
";

/// One command with its settings.
#[derive(Debug, PartialEq)]
pub(crate) enum Command {
    Help,
    Serve {
        port: u16,
        profile: Profile,
    },
    Build {
        profile: Profile,
    },
    Test {
        part: Option<Part>,
        filter: Vec<String>,
    },
    Check,
    Generate {
        check: bool,
    },
    Icons,
    FinishBundle,
}

/// Reads the command line.
pub(crate) fn parse(mut arguments: Parser) -> anyhow::Result<Command> {
    let mut name = None;
    let mut rest = Vec::new();
    let mut port = None;
    let mut debug = false;
    let mut only_check = false;
    while let Some(argument) = arguments.next()? {
        match argument {
            Arg::Long("help") | Arg::Short('h') => return Ok(Command::Help),
            Arg::Long("port") => {
                let text = arguments.value()?.string()?;
                let number: u16 = text.parse().with_context(|| {
                    format!("--port {text}: wanted is a number from 1 to 65535")
                })?;
                port = Some(number);
            }
            Arg::Long("debug") => debug = true,
            Arg::Long("check") => only_check = true,
            Arg::Value(value) if name.is_none() => name = Some(value.string()?),
            Arg::Value(value) if name.as_deref() == Some("test") => rest.push(value.string()?),
            other => return Err(other.unexpected().into()),
        }
    }
    let profile = if debug {
        Profile::Debug
    } else {
        Profile::Release
    };
    let command = match name.as_deref() {
        None | Some("help") => Command::Help,
        Some("serve") => Command::Serve {
            port: port.take().unwrap_or(USUAL_PORT),
            profile,
        },
        Some("build") => Command::Build { profile },
        Some("test") => {
            let part = match rest.first().map(String::as_str) {
                None => None,
                Some("native") => Some(Part::Native),
                Some("bits") => Some(Part::Bits),
                Some("browser") => Some(Part::Browser),
                Some(other) => bail!("test {other}: the parts are native, bits and browser"),
            };
            let filter = rest.into_iter().skip(1).collect();
            Command::Test { part, filter }
        }
        Some("check") => Command::Check,
        Some("generate") => Command::Generate {
            check: std::mem::take(&mut only_check),
        },
        Some("icons") => Command::Icons,
        Some("finish-bundle") => Command::FinishBundle,
        Some(other) => bail!("there is no command {other}; these exist:\n{USAGE}"),
    };
    if only_check {
        bail!("--check belongs to generate");
    }
    if port.is_some() {
        bail!("--port belongs to serve");
    }
    Ok(command)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(line: &str, wanted: Command) {
        let arguments = Parser::from_args(line.split_whitespace());
        assert_eq!(parse(arguments).unwrap(), wanted, "{line}");
    }

    fn refuse(line: &str, words: &str) {
        let arguments = Parser::from_args(line.split_whitespace());
        let error = format!("{:#}", parse(arguments).unwrap_err());
        assert!(error.contains(words), "{line}: {error}");
    }

    #[test]
    fn commands_and_settings() {
        check("", Command::Help);
        check("serve --help", Command::Help);
        let (port, profile) = (USUAL_PORT, Profile::Release);
        check("serve", Command::Serve { port, profile });
        check(
            "serve --debug --port 9000",
            Command::Serve {
                port: 9000,
                profile: Profile::Debug,
            },
        );
    }

    #[test]
    fn parts_of_the_tests() {
        let all = Command::Test {
            part: None,
            filter: vec![],
        };
        check("test", all);
        let one = Command::Test {
            part: Some(Part::Browser),
            filter: vec!["offline".to_owned()],
        };
        check("test browser offline", one);
    }

    #[test]
    fn what_is_not_understood_is_named() {
        refuse("srve", "srve");
        refuse("serve --port eighty", "--port eighty");
        refuse("build --port 80", "--port belongs to serve");
        refuse("serve --fast", "--fast");
        refuse("serve now", "now");
        refuse("test offline", "native, bits and browser");
    }
}
