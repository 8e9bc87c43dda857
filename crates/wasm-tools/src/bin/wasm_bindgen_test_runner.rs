//! `wasm_bindgen_test_runner` built from the library crate, so that nothing has to be installed beside Rust.
use std::process::exit;

fn main() {
    if let Err(error) =
        wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
    {
        eprintln!("{error:?}");
        exit(1);
    }
}
