//! Prints the JSON Schema of a file format: `hand-over`, or `plan` for what its fields put together make.
//!
//! `cargo xtask generate` keeps both in `src/cook-model/schema`.

use std::{env, process::ExitCode};

use cook_model::handover::file::{plan_schema, schema};

fn main() -> ExitCode {
    let schema = match env::args().nth(1).as_deref() {
        Some("hand-over") => schema(),
        Some("plan") => plan_schema(),
        _ => {
            eprintln!("usage: schema hand-over|plan");
            return ExitCode::FAILURE;
        }
    };
    println!("{:#}", schema.as_value());
    ExitCode::SUCCESS
}
