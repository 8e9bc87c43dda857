//! Answers with the files of one folder, each with its type.

use std::fs;
use std::path::{Component, Path, PathBuf};

/// A whole answer.
pub(super) struct Answer {
    /// Status and what it means.
    pub(super) status: &'static str,
    pub(super) content_type: &'static str,
    pub(super) content: Vec<u8>,
}

/// The file that `url` names below `folder`, or words and a status that say why not.
pub(super) fn answer(folder: &Path, method: &str, url: &str) -> Answer {
    if !matches!(method, "GET" | "HEAD") {
        return words(
            "405 Method Not Allowed",
            "only GET and HEAD are answered here",
        );
    }
    let Some(path) = path_of(url) else {
        return words("400 Bad Request", "this address leaves the folder");
    };
    match fs::read(folder.join(&path)) {
        Ok(content) => Answer {
            status: "200 OK",
            content_type: type_of(&path),
            content,
        },
        Err(_) => words("404 Not Found", "there is no such file"),
    }
}

/// The file a URL names, relative to the folder; `None` when it would leave it.
fn path_of(url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.trim_start_matches('/');
    let mut named = path.to_owned();
    if path.is_empty() || path.ends_with('/') {
        named.push_str("index.html");
    }
    let path = PathBuf::from(named);
    path.components()
        .all(|part| matches!(part, Component::Normal(_)))
        .then_some(path)
}

/// The type a browser needs to be told; WebAssembly is compiled while it loads only under its own.
fn type_of(path: &Path) -> &'static str {
    match path.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js" | "mjs") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        Some("csv") => "text/csv; charset=utf-8",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// An answer that is a sentence.
pub(super) fn words(status: &'static str, text: &str) -> Answer {
    Answer {
        status,
        content_type: "text/plain; charset=utf-8",
        content: text.as_bytes().to_vec(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_name_files() {
        let cases = [
            ("/", Some("index.html")),
            ("/?x=1", Some("index.html")),
            ("/some/where/", Some("some/where/index.html")),
            ("/ab/start.js", Some("ab/start.js")),
            ("/../Cargo.toml", None),
            ("/ab/../../Cargo.toml", None),
            ("//etc/passwd", Some("etc/passwd")),
        ];
        for (url, expected) in cases {
            assert_eq!(
                path_of(url),
                expected.map(PathBuf::from),
                "file named by {url}"
            );
        }
    }

    #[test]
    fn module_has_the_type_streaming_needs() {
        assert_eq!(
            type_of(Path::new("a/b_bg.wasm")),
            "application/wasm",
            "type of a module"
        );
    }

    #[test]
    fn only_reading_is_answered() {
        let answer = answer(Path::new("."), "POST", "/");
        assert!(answer.status.starts_with("405"), "status of a POST");
    }
}
