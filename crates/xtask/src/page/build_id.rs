//! A build's name: a hash of everything in it, so that equal builds share it and others never do.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::Result;
use sha2::{Digest, Sha256};

/// Letters of the name; 48 bits never meet by chance within the life of one page.
const LENGTH: usize = 12;

/// The name of the build made of `files`, given relative to `folder`.
///
/// # Errors
/// A file can't be read.
pub(crate) fn build_id(folder: &Path, files: &[PathBuf]) -> Result<String> {
    let mut hash = Sha256::new();
    for file in files {
        let content = fs::read(folder.join(file))?;
        hash.update(file.to_string_lossy().replace('\\', "/"));
        // Lengths between name and content, so that no two builds read alike.
        hash.update([0]);
        hash.update(content.len().to_le_bytes());
        hash.update(content);
    }
    let mut name = hex(&hash.finalize());
    name.truncate(LENGTH);
    Ok(name)
}

/// A digest in letters.
pub(super) fn hex(digest: &[u8]) -> String {
    digest.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Every file below `folder`, relative to it and sorted.
///
/// # Errors
/// A folder can't be read.
pub(crate) fn files_below(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    let mut waiting = vec![folder.to_path_buf()];
    while let Some(next) = waiting.pop() {
        for entry in fs::read_dir(&next)? {
            let path = entry?.path();
            if path.is_dir() {
                waiting.push(path);
            } else {
                found.push(path.strip_prefix(folder)?.to_path_buf());
            }
        }
    }
    found.sort();
    Ok(found)
}
