//! tidy
use crate::workspace::Workspace;
pub(crate) fn run(_: &Workspace) -> anyhow::Result<()> {
    Ok(())
}
