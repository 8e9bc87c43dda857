//! Year files: annual hours, and design conditions counted from them.

use std::path::Path;

use serde_json::Value;

use super::Computed;
use crate::reference::weather::{Files, annual_hours, design_conditions};

/// What a row on year files asks for; none where it is no such row, or its files are not in the folder.
pub(super) fn compute(id: &str, inputs: &Value, folder: &Path) -> Option<Result<Computed, String>> {
    if !id.starts_with("WX-") {
        return None;
    }
    let path = &inputs["path"];
    let paths: Vec<&str> = match path {
        Value::Array(paths) => paths.iter().filter_map(Value::as_str).collect(),
        path => path.as_str().into_iter().collect(),
    };
    if paths.is_empty() || !paths.iter().all(|path| folder.join(path).exists()) {
        return None;
    }
    let files: Vec<Files> = paths.iter().map(|path| Files::at(folder, path)).collect();
    let values = match files.as_slice() {
        [one] if path.is_string() => annual_hours(one),
        several => design_conditions(several),
    };
    Some(values.map(|values| Computed {
        values,
        ..Computed::default()
    }))
}
