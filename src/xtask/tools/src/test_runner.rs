//! Runs tests that were compiled to WebAssembly.

use std::{env, process::ExitCode};

fn main() -> ExitCode {
    match wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(env::args_os()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("wasm-bindgen-test-runner: {error:#}");
            ExitCode::FAILURE
        }
    }
}
