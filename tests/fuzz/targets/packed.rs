//! Any bytes as a project saved with its files: no panic, no more memory than a file may take, and what is read is saved and read back.

#![no_main]

use dewrun_document::{pack, unpack};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(packed) = unpack(bytes) else {
        return;
    };
    let text = pack(&packed).expect("what was read can be saved");
    let back = unpack(text.as_bytes()).expect("what was saved can be read");
    assert_eq!(format!("{back:?}"), format!("{packed:?}"), "bit for bit");
});
