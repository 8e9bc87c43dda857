//! Every public function of the physics says for what range it holds and where it is from.
//!
//! Free functions only: constructors and accessors of a type state no relation of their own.

use super::source::Source;

/// The crates whose functions are relations of nature, or search over them.
const PHYSICS: &[&str] = &["moist-air", "tube", "water", "airflow", "advice"];
const NEEDED: [&str; 2] = ["# Range", "# Source"];

pub(super) fn check(source: &Source) -> Vec<String> {
    let physics = source
        .crate_folder()
        .is_some_and(|folder| PHYSICS.contains(&folder));
    if !physics || !source.is_rust() {
        return Vec::new();
    }
    let mut problems = Vec::new();
    let mut docs = String::new();
    for (number, line) in (1..).zip(source.text.lines()) {
        if let Some(doc) = line.strip_prefix("///") {
            docs.push_str(doc.trim());
            docs.push('\n');
            continue;
        }
        if is_public_function(line) {
            let missing = NEEDED
                .iter()
                .filter(|heading| !docs.lines().any(|doc| doc == **heading));
            problems.extend(
                missing.map(|heading| format!(":{number}: a public relation without `{heading}`")),
            );
        }
        // Attributes may stand between the documentation and the function, over several lines.
        let belongs = line.starts_with("#[") || line.starts_with(' ') || line.starts_with(")]");
        if !belongs {
            docs.clear();
        }
    }
    problems
}

/// A free function begins its line; methods are indented.
fn is_public_function(line: &str) -> bool {
    line.starts_with("pub fn ") || line.starts_with("pub const fn ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tidy::source::source;

    const WHOLE: &str = "//! A.\n/// B.\n///\n/// # Range\n/// All.\n///\n/// # Source\n/// C.\n#[must_use]\npub fn b() {}\n";

    #[test]
    fn relation_needs_range_and_source() {
        let path = "crates/tube/src/a.rs";
        assert_eq!(check(&source(path, WHOLE)).len(), 0, "both are there");
        assert_eq!(
            check(&source(path, &WHOLE.replace("# Source", "From"))).len(),
            1,
            "no source"
        );
        assert_eq!(
            check(&source(path, &WHOLE.replace("# Range", "For"))).len(),
            1,
            "no range"
        );
        assert_eq!(
            check(&source(path, "//! A.\npub const fn b() {}\n")).len(),
            2,
            "nothing at all"
        );
    }

    #[test]
    fn documentation_of_a_neighbour_does_not_count() {
        let two = format!("{WHOLE}pub fn c() {{}}\n");
        assert_eq!(
            check(&source("crates/water/src/a.rs", &two)).len(),
            2,
            "the second has none"
        );
    }

    #[test]
    fn methods_and_other_crates_are_free() {
        let method = "//! A.\nimpl A {\n    pub fn b(&self) {}\n}\n";
        assert_eq!(
            check(&source("crates/tube/src/a.rs", method)).len(),
            0,
            "a method"
        );
        assert_eq!(
            check(&source("crates/run/src/a.rs", "//! A.\npub fn b() {}\n")).len(),
            0,
            "no physics"
        );
    }
}
