//! Chromium and its driver, each looked for on its own: a machine may have only the first.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde_json::json;
use xshell::Shell;

use super::program::{Packages, install, on_path};

const CHROMIUM: Packages = Packages {
    apt: &["chromium"],
    dnf: &["chromium"],
    pacman: &["chromium"],
    brew: &["--cask", "chromium"],
};
const DRIVER: Packages = Packages {
    apt: &["chromium-driver"],
    dnf: &["chromedriver"],
    pacman: &["chromium"],
    brew: &["--cask", "chromedriver"],
};
/// Names under which Chromium and its relatives are installed.
const NAMES: &[&str] = &[
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
];
const APPLICATIONS: &[&str] = &[
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];
/// Started so, Chromium asks nothing of the network and runs for an administrator too.
const ARGUMENTS: &[&str] = &[
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

/// A Chromium to test in.
pub(crate) struct Browser {
    pub(crate) program: PathBuf,
}

impl Browser {
    /// Finds Chromium by `CHROMIUM` or by name, or installs it.
    ///
    /// # Errors
    /// There is none and the package manager can't bring it.
    pub(crate) fn set_up(shell: &Shell) -> Result<Self> {
        if let Some(program) = named_by("CHROMIUM").or_else(installed) {
            return Ok(Self { program });
        }
        let by_hand = "Chromium is missing: please install it, or name it in CHROMIUM";
        install(shell, "Chromium", &CHROMIUM).context(by_hand)?;
        let program = installed().context(by_hand)?;
        Ok(Self { program })
    }

    /// Finds the driver by `CHROMEDRIVER` or by name, or installs it.
    ///
    /// # Errors
    /// There is none and the package manager can't bring it.
    pub(crate) fn driver(shell: &Shell) -> Result<PathBuf> {
        let find = || on_path(&["chromedriver", "chromium.chromedriver"]);
        if let Some(driver) = named_by("CHROMEDRIVER").or_else(find) {
            return Ok(driver);
        }
        let by_hand = "ChromeDriver is missing: please install the one of your Chromium, or name it in CHROMEDRIVER";
        install(shell, "ChromeDriver", &DRIVER).context(by_hand)?;
        find().context(by_hand)
    }

    /// The arguments as the browser tests read them from their environment.
    pub(crate) fn arguments() -> String {
        ARGUMENTS.join(" ")
    }

    /// What `webdriver.json` tells the runner of the tests in the browser.
    pub(crate) fn capabilities(&self) -> String {
        let program = self.program.display().to_string();
        format!(
            "{:#}\n",
            json!({ "goog:chromeOptions": { "args": ARGUMENTS, "binary": program } })
        )
    }
}

fn named_by(variable: &str) -> Option<PathBuf> {
    std::env::var_os(variable)
        .map(PathBuf::from)
        .filter(|program| program.is_file())
}

fn installed() -> Option<PathBuf> {
    let application = || {
        APPLICATIONS
            .iter()
            .map(Path::new)
            .find(|program| program.is_file())
    };
    on_path(NAMES).or_else(|| application().map(Path::to_path_buf))
}
