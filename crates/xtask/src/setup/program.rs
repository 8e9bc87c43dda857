//! Programs of this machine: finds them, and installs missing ones where the package manager can.

use std::path::PathBuf;

use anyhow::{Context, Result, bail};
use xshell::{Shell, cmd};

/// What a missing program is called by each package manager.
pub(crate) struct Packages {
    pub(crate) apt: &'static [&'static str],
    pub(crate) dnf: &'static [&'static str],
    pub(crate) pacman: &'static [&'static str],
    pub(crate) brew: &'static [&'static str],
}

/// The first of `names` that lies on the path.
pub(crate) fn on_path(names: &[&str]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let folders: Vec<PathBuf> = std::env::split_paths(&path).collect();
    names.iter().find_map(|name| {
        let file = format!("{name}{}", std::env::consts::EXE_SUFFIX);
        folders
            .iter()
            .map(|folder| folder.join(&file))
            .find(|candidate| candidate.is_file())
    })
}

/// Installs `packages` with the package manager at hand; `what` names them in messages.
///
/// # Errors
/// No known package manager, no right to use it, or its own failure.
pub(crate) fn install(shell: &Shell, what: &str, packages: &Packages) -> Result<()> {
    eprintln!("{what} not found: asking the system's package manager for it.");
    if on_path(&["apt-get"]).is_some() {
        // The lists may be stale but complete, so a failed update is no reason to stop.
        let apt = ["env", "DEBIAN_FRONTEND=noninteractive", "apt-get"];
        let updated = as_administrator(shell, &[&apt[..], &["update"]].concat(), &[]);
        if updated.is_err() {
            eprintln!("The package lists could not be refreshed; trying with those at hand.");
        }
        let install = ["install", "-y", "--no-install-recommends"];
        return as_administrator(shell, &[&apt[..], &install].concat(), packages.apt);
    }
    if on_path(&["dnf"]).is_some() {
        return as_administrator(shell, &["dnf", "install", "-y"], packages.dnf);
    }
    if on_path(&["pacman"]).is_some() {
        return as_administrator(shell, &["pacman", "-S", "--noconfirm"], packages.pacman);
    }
    if on_path(&["brew"]).is_some() {
        let names = packages.brew;
        return Ok(cmd!(shell, "brew install {names...}").run()?);
    }
    bail!(
        "no package manager known here (apt-get, dnf, pacman, brew): please install {what} by hand"
    )
}

/// Runs a command that changes the system, through `sudo` where we are no administrator.
fn as_administrator(shell: &Shell, command: &[&str], packages: &[&str]) -> Result<()> {
    let mut words = command.to_vec();
    words.extend(packages);
    if !is_administrator(shell) {
        let asks_nothing = || cmd!(shell, "sudo -n true").quiet().ignore_stderr().run();
        if on_path(&["sudo"]).is_none() || asks_nothing().is_err() {
            let line = words.join(" ");
            bail!("only an administrator can do this: please run `{line}` and start again")
        }
        words.splice(0..0, ["sudo", "-n"]);
    }
    let (program, arguments) = words.split_first().context("a command has a name")?;
    Ok(cmd!(shell, "{program} {arguments...}").run()?)
}

fn is_administrator(shell: &Shell) -> bool {
    let user = cmd!(shell, "id -u").quiet().ignore_stderr().read();
    user.is_ok_and(|id| id == "0")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn programs_are_found_by_their_first_known_name() {
        let found = on_path(&["no-such-program-here", "cargo"]);
        assert!(
            found.is_some_and(|path| path.is_file()),
            "cargo runs this test"
        );
        assert!(
            on_path(&["no-such-program-here"]).is_none(),
            "nothing has this name"
        );
    }
}
