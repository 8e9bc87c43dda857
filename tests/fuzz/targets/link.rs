//! Any text and any packed bytes as a link: no panic, no more memory than the longest project, and what is read travels on bit for bit.

#![no_main]

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use dewrun_document::{LINK_MARK, from_link, is_link, share_link};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = str::from_utf8(bytes) {
        let is_read = from_link(text).is_ok();
        assert!(!is_read || is_link(text) || text.trim_start().starts_with('{'));
        travels(text);
    }
    travels(&format!("{LINK_MARK}{}", URL_SAFE_NO_PAD.encode(bytes)));
});

fn travels(link: &str) {
    if let Ok(project) = from_link(link) {
        let again = share_link(&project).expect("what was read can be sent");
        let back = from_link(&again).expect("what was sent can be read");
        assert_eq!(format!("{back:?}"), format!("{project:?}"), "bit for bit");
    }
}
