//! Writes the JavaScript that loads the compiled app.

use std::{env, process::ExitCode};

fn main() -> ExitCode {
    match wasm_bindgen_cli::wasm_bindgen::run_cli_with_args(env::args_os()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("wasm-bindgen: {error:#}");
            ExitCode::FAILURE
        }
    }
}
