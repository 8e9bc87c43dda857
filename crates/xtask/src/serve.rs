//! `cargo xtask serve`: builds the page, serves it on this machine and opens the worked example.

mod connection;
mod static_files;

use std::io::{Write, stdout};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use anyhow::{Context, Result, ensure};

use crate::page;
use crate::workspace::Workspace;

/// The port tried first, so that a bookmark keeps working.
const PORT: u16 = 8327;
/// The worked example a first visit opens: a file of `demo`, without its ending.
const EXAMPLE: &str = "make-up-air";
/// A browser that says nothing for so long is not waited for.
const PATIENCE: Duration = Duration::from_secs(60);

#[derive(clap::Args)]
pub(crate) struct Args {
    /// Port to serve on; by default 8327, or any free one where that is taken
    #[arg(long)]
    port: Option<u16>,
    /// Serve the page built last
    #[arg(long)]
    no_build: bool,
    /// Open no browser
    #[arg(long)]
    no_open: bool,
    /// Serve this folder instead of the page
    #[arg(long, hide = true, requires = "no_build")]
    folder: Option<PathBuf>,
}

/// Builds, serves and opens the page, until stopped.
pub(crate) fn run(workspace: &Workspace, args: &Args) -> Result<()> {
    if !args.no_build {
        page::build(workspace)?;
    }
    let folder = args.folder.clone().unwrap_or_else(|| workspace.dist());
    ensure!(
        folder.join("index.html").is_file(),
        "there is no page in {}: run `cargo xtask build` first",
        folder.display()
    );
    let listener = listen(args.port)?;
    let address = listener.local_addr()?;
    let example = format!("http://{address}/#example={EXAMPLE}");
    println!("Dewrun: http://{address}/");
    println!("Example: {example}");
    stdout().flush()?;
    if !args.no_open && may_show_a_window() {
        // The addresses stand above, so a browser that can't be opened is no failure.
        let _opened = open::that_detached(&example);
    }
    let folder: Arc<Path> = folder.into();
    for connection in listener.incoming().flatten() {
        let folder = Arc::clone(&folder);
        // A browser that went away in the middle of an answer is no failure.
        std::thread::spawn(move || answer(connection, &folder).ok());
    }
    Ok(())
}

fn answer(mut connection: TcpStream, folder: &Path) -> std::io::Result<()> {
    connection.set_read_timeout(Some(PATIENCE))?;
    connection::serve(&mut connection, folder)
}

/// Listens on the port asked for, else on the usual one, else on any free one.
fn listen(port: Option<u16>) -> Result<TcpListener> {
    let local = |port| SocketAddr::from((Ipv4Addr::LOCALHOST, port));
    if let Some(port) = port {
        return TcpListener::bind(local(port))
            .with_context(|| format!("port {port} can't be used"));
    }
    TcpListener::bind(local(PORT))
        .or_else(|_| TcpListener::bind(local(0)))
        .context("no port can be used")
}

/// Whether somebody sits in front of a screen here.
fn may_show_a_window() -> bool {
    let set = |variable| std::env::var_os(variable).is_some_and(|value| !value.is_empty());
    if set("CI") {
        return false;
    }
    cfg!(any(windows, target_os = "macos")) || set("DISPLAY") || set("WAYLAND_DISPLAY")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn example_is_one_of_the_demo() {
        let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../demo");
        let file = demo.join(format!("{EXAMPLE}.json"));
        assert!(file.is_file(), "{} is missing", file.display());
    }
}
