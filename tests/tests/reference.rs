//! The reference run, with a harness of its own: see the README beside it.

use std::env;
use std::process::ExitCode;

/// The one test that this binary holds.
const NAME: &str = "reference";

/// Options of the usual harness that take a word after them.
const WITH_VALUE: [&str; 6] = [
    "--skip",
    "--test-threads",
    "--format",
    "--color",
    "--logfile",
    "-Z",
];

fn main() -> ExitCode {
    let words: Vec<String> = env::args().skip(1).collect();
    let has = |option: &str| words.iter().any(|word| word == option);
    if has("--list") {
        // Test runners ask for the ignored ones too; there are none.
        if !has("--ignored") {
            println!("{NAME}: test");
        }
        return ExitCode::SUCCESS;
    }
    if has("--ignored") || !wanted(&words) {
        println!("test result: ok. 0 passed; 0 failed; 0 ignored; 0 measured; 1 filtered out");
        return ExitCode::SUCCESS;
    }
    match dewrun_tests::reference::run() {
        Ok(true) => {
            println!("test result: ok. 1 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out");
            ExitCode::SUCCESS
        }
        Ok(false) => {
            println!(
                "test result: FAILED. 0 passed; 1 failed; 0 ignored; 0 measured; 0 filtered out"
            );
            ExitCode::FAILURE
        }
        Err(error) => {
            println!("{error}");
            ExitCode::FAILURE
        }
    }
}

/// Whether the filters on the command line, if any, let the one test through.
fn wanted(words: &[String]) -> bool {
    let mut filters = Vec::new();
    let mut words = words.iter();
    while let Some(word) = words.next() {
        if WITH_VALUE.contains(&word.as_str()) {
            words.next();
        } else if !word.starts_with('-') {
            filters.push(word);
        }
    }
    filters.is_empty() || filters.iter().any(|filter| NAME.contains(filter.as_str()))
}
