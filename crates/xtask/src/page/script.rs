//! The script between page and module, as short as it can be without another tool.

use anyhow::{Result, ensure};

use super::trim::{Renamed, SCRIPT};

/// How the functions for the module are indented in the script that wasm-bindgen writes.
const INDENT: &str = "        ";
/// Classes that the framework's streams bring along; see [`super::trim`].
const STREAMS: &str = "IntoUnderlying";

/// The script without remarks, spaces at the start of lines, streams and functions that the module does not call, with the module's new names.
///
/// # Errors
/// The script lacks a function that the module calls.
pub(super) fn squeeze(script: &str, name: &str, renamed: &Renamed) -> Result<String> {
    let kept = lines(script, renamed);
    let kept = kept.replace(&format!("\"{name}\""), &format!("\"{SCRIPT}\""));
    let (short, met) = with_names(&kept, renamed);
    ensure!(
        met == renamed.imports.len(),
        "the script has {met} of the {} functions that the module calls",
        renamed.imports.len()
    );
    Ok(short)
}

/// A script of our own without lines that only say something, and without spaces at the start of lines.
pub(super) fn plain(script: &str) -> String {
    let mut kept = String::new();
    let mut is_remark = false;
    for line in script.lines().map(str::trim) {
        is_remark |= line.starts_with("/**");
        if !(is_remark || line.is_empty() || line.starts_with("//")) {
            kept.push_str(line);
            kept.push('\n');
        }
        is_remark &= !line.ends_with("*/");
    }
    kept
}

fn lines(script: &str, renamed: &Renamed) -> String {
    let mut kept = String::new();
    let mut until: Option<fn(&str) -> bool> = None;
    for line in script.lines() {
        if let Some(ends) = until {
            if ends(line) {
                until = None;
            }
            continue;
        }
        let plain = line.trim();
        let ends: fn(&str) -> bool = if plain.starts_with("/**") {
            |line| line.contains("*/")
        } else if plain.starts_with(&format!("export class {STREAMS}")) {
            |line| line == "}"
        } else if plain.contains(STREAMS) {
            |line| line.ends_with(';')
        } else if function(line).is_some_and(|name| !renamed.imports.contains_key(name)) {
            |line| {
                line.strip_prefix(INDENT)
                    .is_some_and(|rest| rest.starts_with('}'))
            }
        } else {
            if !plain.is_empty() && !plain.starts_with("//") {
                kept.push_str(plain);
                kept.push('\n');
            }
            continue;
        };
        if !ends(line) {
            until = Some(ends);
        }
    }
    kept
}

/// The name of the function for the module that begins on this line.
fn function(line: &str) -> Option<&str> {
    let (name, rest) = line.strip_prefix(INDENT)?.split_once(": ")?;
    let is_name = name.starts_with("__wb") && name.chars().all(is_of_name);
    (is_name && rest.starts_with("function")).then_some(name)
}

fn is_of_name(sign: char) -> bool {
    sign.is_ascii_alphanumeric() || sign == '_' || sign == '$'
}

/// The script with the new names, and how many functions for the module it has.
fn with_names(script: &str, renamed: &Renamed) -> (String, usize) {
    let mut short = String::new();
    let mut met = 0;
    let mut rest = script;
    while let Some(start) = rest.find(is_of_name) {
        let (before, after) = rest.split_at(start);
        short.push_str(before);
        let end = after.find(|sign| !is_of_name(sign)).unwrap_or(after.len());
        let (word, after) = after.split_at(end);
        let new = if short.ends_with("wasm.") {
            renamed.exports.get(word)
        } else {
            renamed.imports.get(word).inspect(|_| met += 1)
        };
        short.push_str(new.map_or(word, String::as_str));
        rest = after;
    }
    short.push_str(rest);
    (short, met)
}

#[cfg(test)]
mod tests {
    use std::collections::HashMap;

    use super::*;

    const WRITTEN: &str = "\
export class IntoUnderlyingSink {
    free() {
        wasm.__wbg_intounderlyingsink_free(1);
    }
}
if (Symbol.dispose) IntoUnderlyingSink.prototype = 1;
function imports() {
    const import0 = {
        __proto__: null,
        __wbg_log_12: function(arg0) {
            // What it says.
            console.log(\"a  b\", wasm.memory);
        },
        __wbg_gone_34: function() { return handleError(function () {
            gone();
        }, arguments); },
        __wbindgen_kept: function() {
            wasm.start();
        },
    };
    return { \"./a_bg.js\": import0 };
}
const IntoUnderlyingSinkFinalization = (typeof X === 'undefined')
    ? {}
    : new X(1);
/**
 * Runs.
 */
export function start() { wasm.start(); }
";

    fn renamed() -> Renamed {
        let pairs = |pairs: &[(&str, &str)]| -> HashMap<String, String> {
            let owned = |(from, to): &(&str, &str)| ((*from).to_owned(), (*to).to_owned());
            pairs.iter().map(owned).collect()
        };
        Renamed {
            imports: pairs(&[("__wbg_log_12", "a"), ("__wbindgen_kept", "b")]),
            exports: pairs(&[("memory", "a"), ("start", "b")]),
        }
    }

    #[test]
    fn remarks_are_left_out() {
        let script = "// What.\n/** How. */\nconst A = \"a // b\";\n\n/**\n * Why.\n */\nfunction b() {\n  // Here.\n  return A; // There.\n}\n";
        let expected = "const A = \"a // b\";\nfunction b() {\nreturn A; // There.\n}\n";
        assert_eq!(plain(script), expected, "whole lines only");
    }

    #[test]
    fn only_what_the_module_calls_is_left() {
        let short = squeeze(WRITTEN, "./a_bg.js", &renamed()).expect("nothing lacks");
        let expected = "\
function imports() {
const import0 = {
__proto__: null,
a: function(arg0) {
console.log(\"a  b\", wasm.a);
},
b: function() {
wasm.b();
},
};
return { \"_\": import0 };
}
export function start() { wasm.b(); }
";
        assert_eq!(short, expected, "line by line");
    }

    #[test]
    fn a_function_that_lacks_is_noticed() {
        let mut renamed = renamed();
        renamed
            .imports
            .insert("__wbg_more".to_owned(), "c".to_owned());
        let short = squeeze(WRITTEN, "./a_bg.js", &renamed);
        assert!(short.is_err(), "the module would not start");
    }
}
