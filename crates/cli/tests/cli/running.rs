//! Running the command line from the project's root.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

/// What a command said and how it ended.
#[derive(Debug)]
pub(crate) struct Said {
    pub(crate) status: i32,
    pub(crate) out: String,
    pub(crate) complaint: String,
}

/// Runs `dewrun` with these words, from the project's root, so that paths are the same everywhere.
#[track_caller]
pub(crate) fn dewrun(words: &[&str]) -> Said {
    dewrun_reading(words, b"")
}

/// As [`dewrun`], where it ends with this status.
#[track_caller]
pub(crate) fn ends(words: &[&str], status: i32) -> Said {
    let said = dewrun(words);
    assert_eq!(said.status, status, "{words:?}: {}", said.complaint);
    said
}

/// As [`dewrun`], with a text on its standard input.
#[track_caller]
pub(crate) fn dewrun_reading(words: &[&str], input: &[u8]) -> Said {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut child = Command::new(env!("CARGO_BIN_EXE_dewrun"))
        .args(words)
        .current_dir(root)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    let mut stdin = child.stdin.take().expect("it has a standard input");
    let input = input.to_vec();
    let writer = std::thread::spawn(move || {
        // It may end without reading everything.
        let _ = stdin.write_all(&input);
    });
    let output = child.wait_with_output().expect("it ends");
    writer.join().expect("its input is written");
    Said {
        status: output.status.code().expect("it is not killed"),
        out: String::from_utf8(output.stdout).expect("it writes text"),
        complaint: String::from_utf8(output.stderr).expect("it complains in text"),
    }
}
