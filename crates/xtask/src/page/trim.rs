//! Takes out of the page's module what a page has no use for.
//!
//! A panic ends the page without a word, whatever it would have said, so its words and how they are put together need not be loaded.
//! Streams between browser and server come with the framework and are never made here.

use std::collections::HashMap;

use anyhow::{Result, ensure};

use super::module::{Bytes, CODE, EXPORT, IMPORT, Import, Module, push_part};

/// How the names of functions begin that do nothing but end in a panic.
const PANICS: [&str; 17] = [
    "core::panicking::",
    "core::option::unwrap_failed",
    "core::option::expect_failed",
    "core::result::unwrap_failed",
    "core::slice::index::slice_index_fail",
    "core::slice::copy_from_slice_impl::len_mismatch_fail",
    "core::str::slice_error_fail",
    "core::cell::panic_already_",
    "core::cell::lazy::panic_poisoned",
    "core::slice::sort::shared::smallsort::panic_on_ord_violation",
    "alloc::raw_vec::handle_error",
    "alloc::raw_vec::capacity_overflow",
    "alloc::alloc::handle_alloc_error",
    "std::alloc::rust_oom",
    "std::panicking::panic_with_hook",
    "std::panicking::begin_panic",
    "std::thread::local::panic_access_error",
];
/// How the names of functions begin that bring large tables along, and what does the same without.
const TABLES: [(&str, &str); 6] = [
    ("core::num::dec2flt::", "dewrun_quantity::decimal::nearest"),
    (
        "core::fmt::float::",
        "dewrun_quantity::format; f64::clamp writes numbers too",
    ),
    ("core::num::flt2dec::", "dewrun_quantity::format"),
    (
        "core::unicode::unicode_data::conversions::",
        "the browser's own toLowerCase",
    ),
    // It may have taken those of the line above in, which then have no name.
    (
        "<str>::to_lowercase",
        "to_ascii_lowercase, or the browser's own toLowerCase",
    ),
    (
        "core::unicode::unicode_data::alphabetic::",
        "is_ascii_alphabetic, or the browser's own RegExp",
    ),
];
/// A function without variables that traps.
const TRAP: [u8; 3] = [0, 0x00, 0x0b];
/// How the names of exports begin that only streams would call.
const STREAMS: [&str; 2] = ["intounderlying", "__wbg_intounderlying"];

/// How the names of functions begin that make promises for the browser; only streams hand them out, and a page that did would end there.
const PROMISES: &str = "js_sys::futures::future_to_promise";

/// Lets panics trap at once and drops the exports that nobody calls; what only they used is left to `wasm-opt`.
///
/// # Errors
/// The bytes are no module, none of its functions has a name, or one brings large tables that the page can do without.
pub(super) fn trim(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut module = Module::parse(bytes)?;
    let names = module.names()?;
    ensure!(!names.is_empty(), "the module was built without names");
    for (begins, instead) in TABLES {
        let found = names.values().find(|name| plain(name).starts_with(begins));
        ensure!(
            found.is_none(),
            "the page carries the tables of {begins}, use {instead}"
        );
    }
    let mut number = module.imported_functions()?;
    module.rewrite(CODE, |rest| {
        let length = rest.number()?;
        let body = rest.take(length)?;
        let traps = |name: &String| panics(name) || plain(name).starts_with(PROMISES);
        let is_trap = names.get(&number).is_some_and(traps);
        number += 1;
        let mut written = Vec::new();
        push_part(&mut written, if is_trap { &TRAP } else { body });
        Ok(Some(written))
    })?;
    module.rewrite(EXPORT, |rest| {
        let (name, what) = export(rest)?;
        let is_kept = !STREAMS.iter().any(|stream| name.starts_with(stream));
        Ok(is_kept.then(|| exported(&name, &what)))
    })?;
    Ok(module.to_bytes())
}

/// Whether a function of that name does nothing but end in a panic.
fn panics(name: &str) -> bool {
    let plain = plain(name);
    PANICS.iter().any(|panic| plain.starts_with(panic))
}

/// The name without the hashes of its crates.
fn plain(name: &str) -> String {
    let mut plain = String::new();
    let mut depth = 0;
    for sign in name.chars() {
        match sign {
            '[' => depth += 1,
            ']' => depth -= 1,
            _ if depth == 0 => plain.push(sign),
            _ => {}
        }
    }
    plain
}

/// What the script calls the module's parts, and what they are called now.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Renamed {
    /// Functions of the script that the module calls; those not among them it never calls.
    pub(super) imports: HashMap<String, String>,
    /// Functions of the module that the script calls.
    pub(super) exports: HashMap<String, String>,
}

/// Gives short names to what module and script know each other by, and drops what no browser reads.
///
/// # Errors
/// The bytes are no module.
pub(super) fn shorten(bytes: &[u8], script: &str) -> Result<(Vec<u8>, Renamed)> {
    let mut module = Module::parse(bytes)?;
    let mut renamed = Renamed::default();
    module.rewrite(IMPORT, |rest| {
        let mut import = Import::read(rest)?;
        if import.module == script {
            let short = letters(renamed.imports.len());
            renamed.imports.insert(import.name, short.clone());
            (import.module, import.name) = (SCRIPT.to_owned(), short);
        }
        Ok(Some(import.written()))
    })?;
    module.rewrite(EXPORT, |rest| {
        let (name, what) = export(rest)?;
        let short = letters(renamed.exports.len());
        let written = exported(&short, &what);
        renamed.exports.insert(name, short);
        Ok(Some(written))
    })?;
    module.drop_custom();
    Ok((module.to_bytes(), renamed))
}

/// What the script is called by the module.
pub(super) const SCRIPT: &str = "_";

/// The name of that number: a, b, .. z, aa, ba, ..
fn letters(number: usize) -> String {
    let mut name = String::new();
    let mut rest = number;
    loop {
        let letter = u8::try_from(rest % 26).unwrap_or(0);
        name.push(char::from(b'a' + letter));
        rest /= 26;
        if rest == 0 {
            return name;
        }
        rest -= 1;
    }
}

/// The name of an export, and its kind and number as they stand.
fn export(rest: &mut Bytes<'_>) -> Result<(String, Vec<u8>)> {
    let name = rest.text()?.to_owned();
    let mut what = vec![rest.byte()?];
    super::module::push_number(&mut what, rest.number()?);
    Ok((name, what))
}

fn exported(name: &str, what: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::new();
    push_part(&mut bytes, name.as_bytes());
    bytes.extend(what);
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `(import "./a_bg.js" "long" (func))`, a function that is exported twice and one that ends in a panic, with their names.
    fn module() -> Vec<u8> {
        let mut bytes = b"\0asm\x01\0\0\0".to_vec();
        let mut add = |id: u8, content: &[u8]| {
            bytes.push(id);
            push_part(&mut bytes, content);
        };
        add(1, &[1, 0x60, 0, 0]);
        add(2, b"\x01\x09./a_bg.js\x04long\0\0");
        add(3, &[2, 0, 0]);
        add(7, b"\x02\x03run\0\x01\x14intounderlyingsink_x\0\x01");
        add(10, &[2, 4, 0, 0x10, 0, 0x0b, 4, 0, 0x10, 0, 0x0b]);
        add(
            0,
            b"\x04name\x01\x25\x02\x01\x03run\x02\x1dcore[0123]::panicking::panicx",
        );
        bytes
    }

    fn holds(bytes: &[u8], part: &[u8]) -> bool {
        bytes.windows(part.len()).any(|window| window == part)
    }

    #[test]
    fn panics_trap_and_streams_are_gone() {
        let trimmed = trim(&module()).expect("it is a module");
        let code = [10, 10, 2, 4, 0, 0x10, 0, 0x0b, 3, 0, 0, 0x0b];
        assert!(holds(&trimmed, &code), "only the panic traps: {trimmed:?}");
        assert!(holds(&trimmed, b"\x01\x03run\0\x01"), "one export is left");
        assert!(!holds(&trimmed, b"intounderlying"), "no stream");
    }

    #[test]
    fn names_are_short_and_known() {
        let (short, renamed) = shorten(&module(), "./a_bg.js").expect("it is a module");
        assert!(
            holds(&short, b"\x01\x01_\x01a\0\0"),
            "the import: {short:?}"
        );
        assert!(!holds(&short, b"panicking"), "no names of functions");
        assert_eq!(
            renamed.imports.get("long").map(String::as_str),
            Some("a"),
            "for the script"
        );
        assert_eq!(
            renamed.exports.get("run").map(String::as_str),
            Some("a"),
            "for the script"
        );
    }

    #[test]
    fn a_module_without_names_is_refused() {
        let bytes = b"\0asm\x01\0\0\0";
        assert!(trim(bytes).is_err(), "nothing could be found in it");
    }

    #[test]
    fn only_what_must_panic_is_a_panic() {
        assert!(
            panics("core[c5930c85a12de822]::panicking::panic_fmt"),
            "it must"
        );
        assert!(
            !panics("std[a54]::panicking::panic_count::is_zero_slow_path"),
            "it asks"
        );
    }

    #[test]
    fn letters_are_never_used_twice() {
        let names: Vec<String> = (0..1000).map(letters).collect();
        let mut once = names.clone();
        once.sort();
        once.dedup();
        assert_eq!(once.len(), names.len(), "each number its own");
    }
}
