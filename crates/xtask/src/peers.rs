//! peers
use crate::workspace::Workspace;
pub(crate) fn run(_: &Workspace) -> anyhow::Result<()> {
    anyhow::bail!("not yet")
}
