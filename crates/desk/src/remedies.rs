//! Remedies made in the open project, as a person would enter them.

use dewrun_advice::Change;

use super::OpenProject;

/// Makes changes in the run that is open, each value typed.
pub fn make_changes(project: &mut OpenProject, changes: &[Change]) {
    if let Some(run) = project.open_run_mut() {
        dewrun_document::make_changes(run, changes);
    }
}
