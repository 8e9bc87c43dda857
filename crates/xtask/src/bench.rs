//! bench
use crate::workspace::Workspace;
#[derive(clap::Args)]
pub(crate) struct Args {}
pub(crate) fn run(_: &Workspace, _: &Args) -> anyhow::Result<()> {
    anyhow::bail!("not yet")
}
