//! Puts the page together: every asset in one folder named by the build, beside it only the page and its service worker.
//!
//! Names inside the folder stay relative to each other, so they need no rewriting, and an old and a new build can't mix.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};

use super::build_id::{build_id, files_below};
use super::{script, styles};
use crate::workspace::Workspace;

const PAGE: &str = "index.html";
const SERVICE_WORKER: &str = "sw.js";
/// What does long work.
const WORKER: &str = "worker.js";
/// What reads weather files begins so.
const ALMANAC: &str = "almanac";
/// An invented year, so that the first one needs no file of one's own.
const EXAMPLE: &str = "gull-harbour.csv";
/// The lines of `sw.js` that a release fills in.
const UNSTAMPED: [&str; 2] = ["const BUILD = \"\";", "const FILES = [];"];

/// Finishes `folder`, which holds the compiled module and its script.
///
/// # Errors
/// A file can't be read or written, or the page names an asset that isn't there.
pub(crate) fn assemble(workspace: &Workspace, folder: &Path) -> Result<()> {
    let www = workspace.root().join("www");
    for file in files_below(&www)? {
        let own =
            file.starts_with("styles") || (file == Path::new(PAGE) && folder.join(PAGE).is_file());
        if !own {
            copy(&www.join(&file), &folder.join(&file))?;
        }
    }
    let example = workspace.root().join("demo").join(EXAMPLE);
    copy(&example, &folder.join(EXAMPLE))?;
    fs::write(folder.join("styles.css"), styles::join(workspace)?)?;
    let later = folder.join(format!("{}.css", super::LATER));
    fs::write(later, styles::join_later(workspace)?)?;
    for file in files_below(folder)? {
        if file.extension().is_some_and(|ending| ending == "js") {
            rewrite(&folder.join(file), |script| Ok(script::plain(script)))?;
        }
    }
    let page = without_trunk(&fs::read_to_string(folder.join(PAGE))?);
    fs::write(folder.join(PAGE), page)?;
    let files = files_below(folder)?;
    let build = build_id(folder, &files)?;
    let assets: Vec<PathBuf> = files
        .into_iter()
        .filter(|file| file != Path::new(PAGE) && file != Path::new(SERVICE_WORKER))
        .collect();
    gather(folder, &build, &assets)?;
    let names: Vec<String> = assets
        .iter()
        .map(|file| file.to_string_lossy().replace('\\', "/"))
        .collect();
    rewrite(&folder.join(PAGE), |page| point_into(page, &build, &names))?;
    let kept: Vec<String> = names
        .into_iter()
        .filter(|name| is_kept(Path::new(name)))
        .collect();
    rewrite(&folder.join(SERVICE_WORKER), |script| {
        stamp(script, &build, &kept)
    })
}

/// Whether this file is kept for the time without a network: not the licence that lies beside the fonts for whoever looks, nor the icons for whoever installs the page.
fn is_kept(file: &Path) -> bool {
    let name = file.to_string_lossy();
    !(name.ends_with(".txt") || name.ends_with(".png"))
}

/// When a visit loads a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Load {
    /// Every visit does.
    First,
    /// Once a run is open and its answer stands.
    Later,
    /// Once a weather file is opened, or kept for the open project.
    Year,
    /// Only some do: letters with accents where there are any, icons where the page is installed, an invented year where it is asked for.
    Seldom,
}

/// When a visit loads this file.
pub(crate) fn load(file: &Path) -> Load {
    let is_rare = file.ends_with(EXAMPLE) || file.to_string_lossy().ends_with("-accented.woff2");
    if !is_kept(file) || is_rare {
        return Load::Seldom;
    }
    let name = file.file_name().map(|name| name.to_string_lossy());
    let name = name.unwrap_or_default();
    if name.starts_with(super::YEAR) || name.starts_with(ALMANAC) {
        Load::Year
    } else if name.starts_with(super::LATER) || name == WORKER {
        Load::Later
    } else {
        Load::First
    }
}

/// Moves the assets into the build's folder and drops the folders left empty.
fn gather(folder: &Path, build: &str, assets: &[PathBuf]) -> Result<()> {
    for asset in assets {
        let place = folder.join(build).join(asset);
        let parent = place.parent().context("an asset lies in a folder")?;
        fs::create_dir_all(parent)?;
        fs::rename(folder.join(asset), place)?;
    }
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() && !path.ends_with(build) {
            fs::remove_dir_all(path)?;
        }
    }
    Ok(())
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    let parent = to.parent().context("a file lies in a folder")?;
    fs::create_dir_all(parent)?;
    fs::copy(from, to).with_context(|| format!("{} could not be copied", from.display()))?;
    Ok(())
}

fn rewrite(path: &Path, change: impl FnOnce(&str) -> Result<String>) -> Result<()> {
    let text =
        fs::read_to_string(path).with_context(|| format!("{} is missing", path.display()))?;
    Ok(fs::write(path, change(&text)?)?)
}

/// The page without the lines that only trunk reads.
fn without_trunk(page: &str) -> String {
    page.lines()
        .filter(|line| !line.contains("data-trunk"))
        .map(|line| format!("{line}\n"))
        .collect()
}

/// The page with every `href` and `src` that names an asset pointing into the build's folder.
fn point_into(page: &str, build: &str, assets: &[String]) -> Result<String> {
    let mut pointed = page.to_owned();
    for asset in assets {
        for attribute in ["href", "src"] {
            let plain = format!("{attribute}=\"{asset}\"");
            pointed = pointed.replace(&plain, &format!("{attribute}=\"{build}/{asset}\""));
        }
    }
    for needed in ["start.js", "styles.css"] {
        ensure!(
            pointed.contains(&format!("\"{build}/{needed}\"")),
            "the page does not load {needed}"
        );
    }
    Ok(pointed)
}

/// The service worker with the build and its files filled in.
fn stamp(script: &str, build: &str, assets: &[String]) -> Result<String> {
    let [no_build, no_files] = UNSTAMPED;
    for line in UNSTAMPED {
        ensure!(
            script.contains(line),
            "the service worker lacks the line `{line}`"
        );
    }
    let files: Vec<String> = assets
        .iter()
        .map(|asset| format!("\"{build}/{asset}\""))
        .collect();
    Ok(script
        .replace(no_build, &format!("const BUILD = \"{build}\";"))
        .replace(no_files, &format!("const FILES = [{}];", files.join(", "))))
}

#[cfg(test)]
mod tests {
    use super::*;

    const ASSETS: [&str; 2] = ["start.js", "styles.css"];

    fn assets() -> Vec<String> {
        ASSETS.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn page_points_into_the_build() {
        let page = "<link href=\"styles.css\"><script src=\"start.js\"></script><a href=\"#top\">";
        let pointed = point_into(page, "abc", &assets()).expect("both assets are named");
        assert_eq!(
            pointed,
            "<link href=\"abc/styles.css\"><script src=\"abc/start.js\"></script><a href=\"#top\">",
            "only assets move"
        );
    }

    #[test]
    fn page_without_its_script_is_refused() {
        let refused = point_into("<link href=\"styles.css\">", "abc", &assets());
        assert!(
            refused.is_err(),
            "a page that starts nothing must not be shipped"
        );
    }

    #[test]
    fn service_worker_is_stamped_once() {
        let script = "const BUILD = \"\";\nconst FILES = [];\n";
        let stamped = stamp(script, "abc", &assets()).expect("both lines are there");
        let expected =
            "const BUILD = \"abc\";\nconst FILES = [\"abc/start.js\", \"abc/styles.css\"];\n";
        assert_eq!(stamped, expected, "build and files");
        assert!(
            stamp(&stamped, "def", &assets()).is_err(),
            "a stamped worker is refused"
        );
    }

    #[test]
    fn what_only_some_look_for_is_not_loaded() {
        for (file, expected) in [
            ("abc/fonts/b612-bold.woff2", Load::First),
            ("abc/fonts/OFL.txt", Load::Seldom),
            ("icons/dewrun.svg", Load::First),
            ("icons/dewrun-masked-512.png", Load::Seldom),
            ("abc/dewrun-web_bg.wasm", Load::First),
            ("abc/dewrun-workshop_bg.wasm", Load::Later),
            ("abc/dewrun-workshop.js", Load::Later),
            ("abc/worker.js", Load::Later),
            ("abc/dewrun-workshop-year.js", Load::Later),
            ("abc/dewrun-almanac_bg.wasm", Load::Year),
            ("abc/almanac.js", Load::Year),
            ("abc/almanac-files.js", Load::Year),
        ] {
            assert_eq!(load(Path::new(file)), expected, "{file}");
            let is_wanted = expected != Load::Seldom;
            assert_eq!(is_kept(Path::new(file)), is_wanted, "{file}");
        }
        let accented = Path::new("abc/fonts/b612-bold-accented.woff2");
        assert!(
            is_kept(accented),
            "a name may have accents without a network"
        );
        assert_eq!(load(accented), Load::Seldom, "and most visits show none");
        let example = Path::new("abc/gull-harbour.csv");
        assert!(is_kept(example), "an invented year needs no network");
        assert_eq!(
            load(example),
            Load::Seldom,
            "and most visits have their own"
        );
    }

    #[test]
    fn trunk_lines_are_dropped() {
        let page = "<title>a</title>\n<link data-trunk rel=\"rust\">\n<main></main>\n";
        assert_eq!(
            without_trunk(page),
            "<title>a</title>\n<main></main>\n",
            "only trunk's line goes"
        );
    }
}
