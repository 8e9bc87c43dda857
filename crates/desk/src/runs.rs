//! The runs of a project and the variants of each: added, copied, named and deleted.

use dewrun_document::{Project, Run, limits};

use crate::OpenProject;

/// Positions of the runs that are no variants.
#[must_use]
pub fn runs(project: &Project) -> Vec<usize> {
    positions(project, |run| run.variant_of.is_none())
}

/// Positions of the layouts of the open run's detector, the run itself first.
#[must_use]
pub fn layouts(project: &OpenProject) -> Vec<usize> {
    let original = project.open_run().map(original);
    let of_it = |run: &Run| Some(self::original(run)) == original;
    let first = positions(project, |run| of_it(run) && run.variant_of.is_none());
    let others = positions(project, |run| of_it(run) && run.variant_of.is_some());
    [first, others].concat()
}

/// The id of the run that a run is a variant of; its own where it is none.
fn original(run: &Run) -> &str {
    run.variant_of.as_ref().unwrap_or(&run.id)
}

fn positions(project: &Project, holds: impl Fn(&Run) -> bool) -> Vec<usize> {
    let runs = project.runs.iter().enumerate();
    runs.filter(|(_, run)| holds(run))
        .map(|(at, _)| at)
        .collect()
}

/// Adds a run that begins as the open one and opens it.
pub fn add_run(project: &mut OpenProject) {
    let count = runs(project).len();
    add(project, format!("Run {}", count + 1), None);
}

/// Copies the open run as another layout of the same detector and opens the copy.
pub fn add_variant(project: &mut OpenProject) {
    let count = layouts(project).len();
    let of = project.open_run().map(|run| original(run).to_owned());
    add(project, format!("Variant {}", count + 1), of);
}

fn add(project: &mut OpenProject, name: String, variant_of: Option<String>) {
    let Some(run) = project.open_run() else {
        return;
    };
    if limits::RUNS <= project.runs.len() {
        return;
    }
    let added = Run {
        id: free_id(project),
        name,
        variant_of,
        ..run.clone()
    };
    project.run = project.runs.len();
    project.runs.push(added);
}

/// An id that no run bears.
fn free_id(project: &Project) -> String {
    let mut number = project.runs.len() + 1;
    loop {
        let id = format!("run-{number}");
        if project.runs.iter().all(|run| run.id != id) {
            return id;
        }
        number += 1;
    }
}

/// Deletes the open run; its first variant takes its place, and the last run of a project stays.
pub fn delete_run(project: &mut OpenProject) {
    let at = project.run;
    if project.runs.len() < 2 || project.runs.len() <= at {
        return;
    }
    let gone = project.runs.remove(at);
    let mut heir = None;
    for (at, run) in project.project.runs.iter_mut().enumerate() {
        if run.variant_of.as_ref() == Some(&gone.id) {
            let (heir_at, id) = heir.get_or_insert_with(|| (at, run.id.clone()));
            run.variant_of = (*heir_at != at).then(|| id.clone());
        }
    }
    let is_original = |run: &Run| gone.variant_of.as_ref() == Some(&run.id);
    let original = project.runs.iter().position(is_original);
    let heir = heir.map(|(at, _)| at);
    project.run = original.or(heir).unwrap_or(at.saturating_sub(1));
}

/// Names the open run.
pub fn rename_run(project: &mut OpenProject, name: &str) {
    if let Some(run) = project.open_run_mut() {
        run.name = shortened(name);
    }
}

/// Names the project.
pub fn rename_project(project: &mut OpenProject, name: &str) {
    project.name = shortened(name);
}

/// No longer than a file may hold.
fn shortened(name: &str) -> String {
    name.chars().take(limits::NAME).collect()
}
