//! The commands of the project: `cargo xtask serve`, `cargo xtask test` and what they are made of.

mod bundle;
mod check;
mod cli;
mod finish;
mod flags;
mod generate;
mod icons;
mod project;
mod serve;
mod size;
mod test;
mod tidy;
mod tool;

use std::process::ExitCode;

use cli::Command;

fn main() -> ExitCode {
    let done = cli::parse(lexopt::Parser::from_env()).and_then(run);
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\nxtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(command: Command) -> anyhow::Result<()> {
    match command {
        Command::Help => {
            print!("{}", cli::USAGE);
            Ok(())
        }
        Command::Serve { port, profile } => serve::run(port, profile),
        Command::Build { profile } => bundle::build(profile).map(drop),
        Command::Test { part, filter } => test::run(part, &filter),
        Command::Check => check::run(),
        Command::Generate { check } => generate::run(check),
        Command::Icons => icons::run(),
        Command::FinishBundle => finish::run(),
    }
}
