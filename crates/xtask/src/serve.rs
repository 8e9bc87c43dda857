//! `cargo xtask serve`: builds the page, serves it on this machine and opens the worked example.

mod static_files;

use std::io::{Read, Write, stdout};
use std::net::{Ipv4Addr, SocketAddr};
use std::path::PathBuf;

use anyhow::{Context, Result, anyhow, ensure};
use tiny_http::{HTTPVersion, Method, Request, Response, Server};

use crate::page;
use crate::workspace::Workspace;

/// The port tried first, so that a bookmark keeps working.
const PORT: u16 = 8327;
/// The worked example a first visit opens: a file of `demo`, without its ending.
const EXAMPLE: &str = "make-up-air";
/// Requests answered at once; a browser opens at most six connections to one host.
const THREADS: usize = 6;

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
    let server = listen(args.port)?;
    let address = server
        .server_addr()
        .to_ip()
        .context("the server listens on an address")?;
    let example = format!("http://{address}/#example={EXAMPLE}");
    println!("Dewrun: http://{address}/");
    println!("Example: {example}");
    stdout().flush()?;
    if !args.no_open && may_show_a_window() {
        // The addresses stand above, so a browser that can't be opened is no failure.
        let _opened = open::that_detached(&example);
    }
    std::thread::scope(|scope| {
        for _ in 0..THREADS {
            scope.spawn(|| answer_all(&server, &folder));
        }
    });
    Ok(())
}

/// Listens on the port asked for, else on the usual one, else on any free one.
fn listen(port: Option<u16>) -> Result<Server> {
    let local = |port| SocketAddr::from((Ipv4Addr::LOCALHOST, port));
    if let Some(port) = port {
        return Server::http(local(port))
            .map_err(|error| anyhow!("port {port} can't be used: {error}"));
    }
    Server::http(local(PORT))
        .or_else(|_| Server::http(local(0)))
        .map_err(|error| anyhow!("no port can be used: {error}"))
}

fn answer_all(server: &Server, folder: &std::path::Path) {
    for request in server.incoming_requests() {
        let response = static_files::answer(folder, request.method(), request.url());
        // A browser that went away in the middle of an answer is no failure.
        let _sent = send(request, response);
    }
}

/// Sends an answer after which the browser lets go of the connection.
///
/// The library may leave a connection waiting behind others that are kept open though nothing is asked on them.
fn send<R: Read>(request: Request, response: Response<R>) -> std::io::Result<()> {
    let headers = request.headers().to_vec();
    let is_head = *request.method() == Method::Head;
    let mut writer = request.into_writer();
    response.raw_print(&mut writer, HTTPVersion(1, 0), &headers, is_head, None)?;
    writer.flush()
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
