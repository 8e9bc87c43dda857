//! What the browser keeps at once, under names: little room, which it may refuse.

use leptos::prelude::*;
use web_sys::Storage;

fn storage() -> Option<Storage> {
    window().local_storage().ok().flatten()
}

/// All names that begin so, and what is kept under each.
pub(crate) fn all(begin: &str) -> Vec<(String, String)> {
    let Some(storage) = storage() else {
        return Vec::new();
    };
    let count = storage.length().unwrap_or(0);
    let names = (0..count).filter_map(|at| storage.key(at).ok().flatten());
    let own: Vec<String> = names.filter(|name| name.starts_with(begin)).collect();
    own.into_iter()
        .filter_map(|name| get(&name).map(|text| (name, text)))
        .collect()
}

/// What is kept under a name.
pub(crate) fn get(name: &str) -> Option<String> {
    storage()?.get_item(name).ok().flatten()
}

/// Keeps a text; whether the browser took it.
pub(crate) fn put(name: &str, text: &str) -> bool {
    storage().is_some_and(|storage| storage.set_item(name, text).is_ok())
}

/// Forgets what is kept under a name.
pub(crate) fn remove(name: &str) {
    if let Some(storage) = storage() {
        // A browser that keeps nothing has nothing to forget.
        let _ = storage.remove_item(name);
    }
}
