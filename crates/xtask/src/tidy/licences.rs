//! Everything built or tested with may be used by anybody for anything: permissive licences only.

use cargo_metadata::Metadata;
use spdx::{Expression, LicenseReq, ParseMode};

/// Licences that ask for no more than naming the authors.
const PERMISSIVE: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "CDLA-Permissive-2.0",
    "ISC",
    "MIT",
    "MIT-0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// A package and the licence expression it states.
pub(super) struct Package {
    name: String,
    licence: Option<String>,
}

/// Every package the workspace depends on, on any platform.
pub(super) fn packages(metadata: &Metadata) -> Vec<Package> {
    let package = |package: &cargo_metadata::Package| Package {
        name: format!("{} {}", package.name, package.version),
        licence: package.license.clone(),
    };
    metadata.packages.iter().map(package).collect()
}

pub(super) fn check(packages: &[Package]) -> Vec<String> {
    packages
        .iter()
        .filter_map(|package| Some(format!("{}: {}", package.name, problem(package)?)))
        .collect()
}

fn problem(package: &Package) -> Option<String> {
    let Some(licence) = &package.licence else {
        return Some("states no licence".to_owned());
    };
    // Older packages still write a slash for "or".
    match Expression::parse_mode(licence, ParseMode::LAX) {
        Ok(expression) if expression.evaluate(is_permissive) => None,
        Ok(_) => Some(format!(
            "licence `{licence}` is not on the list of permissive ones"
        )),
        Err(error) => Some(format!(
            "licence `{licence}` can't be read: {}",
            error.reason
        )),
    }
}

/// An exception only ever adds rights, so it changes nothing here.
fn is_permissive(wanted: &LicenseReq) -> bool {
    wanted
        .license
        .id()
        .is_some_and(|id| PERMISSIVE.contains(&id.name))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn problems(licence: Option<&str>) -> usize {
        check(&[Package {
            name: "a".to_owned(),
            licence: licence.map(str::to_owned),
        }])
        .len()
    }

    #[test]
    fn permissive_licences_pass() {
        let cases = [
            "MIT",
            "MIT/Apache-2.0",
            "GPL-3.0-only OR MIT",
            "(MIT OR Apache-2.0) AND Unicode-3.0",
        ];
        for licence in cases {
            assert_eq!(problems(Some(licence)), 0, "allowed: {licence}");
        }
        assert_eq!(
            problems(Some("Apache-2.0 WITH LLVM-exception")),
            0,
            "an exception adds rights"
        );
    }

    #[test]
    fn others_are_found() {
        for licence in [
            "GPL-3.0-only",
            "MIT AND GPL-2.0-only",
            "MPL-2.0",
            "nonsense",
        ] {
            assert_eq!(problems(Some(licence)), 1, "refused: {licence}");
        }
        assert_eq!(problems(None), 1, "none stated");
    }
}
