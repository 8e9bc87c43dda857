//! The desk: the project as it is entered, and everything that follows from it.

mod files;
mod hand;
mod links;

use std::sync::Arc;

use dewrun_desk::{
    Answered, Edit, Fault, Field, History, OpenProject, Shown, Stage, Step, TubeName, Way,
};
use dewrun_document::Project;
use dewrun_quantity::{DecimalMark, Style, Units};
use leptos::prelude::*;

use files::RefusedFile;

/// Everything the components share; it is a handful of handles and free to copy.
#[derive(Debug, Clone, Copy)]
pub struct Desk {
    project: RwSignal<OpenProject>,
    stage: RwSignal<Stage>,
    /// What each way in had come to when it was left.
    begun: RwSignal<[Option<OpenProject>; 3]>,
    history: RwSignal<History>,
    faults: RwSignal<Vec<Fault>>,
    last_edit: RwSignal<Option<Edit>>,
    style: RwSignal<Style>,
    tube: RwSignal<TubeName>,
    selected: RwSignal<Option<(TubeName, usize)>>,
    refused_file: RwSignal<Option<RefusedFile>>,
    /// What was on the desk before a hand took hold of something.
    held: RwSignal<Option<Step>>,
    shown: Memo<Shown>,
}

/// The desk of the page.
///
/// # Panics
/// Outside a page that was given one.
pub(crate) fn use_desk() -> Desk {
    expect_context()
}

impl Desk {
    /// A desk with a project on it.
    #[must_use]
    pub fn new(project: Project) -> Self {
        Self::of(Step {
            project: project.into(),
            stage: Stage::Project,
        })
    }

    /// A desk with what an address asks for on it; where that is nowhere any more, the empty page.
    pub(crate) fn at(asked: Option<Stage>) -> Option<Self> {
        let example = match asked {
            Some(Stage::Example(example)) => example.project().ok(),
            _ => None,
        };
        let way = match asked {
            Some(Stage::First(way)) => way,
            _ => Way::Drawing,
        };
        Some(Self::of(match (example, asked) {
            (Some(project), Some(stage)) => Step {
                project: project.into(),
                stage,
            },
            _ => Step {
                project: way.project()?,
                stage: Stage::First(way),
            },
        }))
    }

    fn of(step: Step) -> Self {
        let project = RwSignal::new(step.project);
        let last_edit = RwSignal::new(None);
        let held = RwSignal::new(None);
        let is_held = Memo::new(move |_| held.with(Option::is_some));
        let shown = Memo::new(move |before: Option<&Shown>| {
            let next = if is_held.get() {
                Shown::meanwhile
            } else {
                Shown::next
            };
            project.with(|project| next(before, project, last_edit.get_untracked()))
        });
        Self {
            project,
            stage: RwSignal::new(step.stage),
            begun: RwSignal::default(),
            history: RwSignal::new(History::default()),
            faults: RwSignal::new(Vec::new()),
            last_edit,
            style: RwSignal::new(Style::default()),
            tube: RwSignal::new(TubeName::Intake),
            selected: RwSignal::new(None),
            refused_file: RwSignal::new(None),
            held,
            shown,
        }
    }

    /// Puts another project on the desk; undoing that brings back what was there.
    pub(crate) fn open(&self, project: OpenProject, stage: Stage) {
        let before = self.now();
        if let Stage::First(way) = before.stage {
            let left = Some(before.project.clone());
            self.begun
                .update_untracked(|begun| begun[way.place()] = left);
        }
        self.history.update(|history| {
            history.part();
            history.note(before, String::new());
            history.part();
        });
        self.tube.set(TubeName::Intake);
        self.show(Step { project, stage });
    }

    /// Puts on the desk what an address asks for, unless it is there.
    pub(crate) fn go_to(&self, asked: Stage) {
        if asked == self.stage.get_untracked() {
            return;
        }
        let project = match asked {
            Stage::First(way) => {
                let begun = self
                    .begun
                    .with_untracked(|begun| begun[way.place()].clone());
                begun.or_else(|| way.project())
            }
            Stage::Example(example) => example.project().ok().map(OpenProject::from),
            Stage::Project => self.history.with_untracked(|history| {
                let last = history.last_project();
                last.map(|step| step.project.clone())
            }),
        };
        if let Some(project) = project {
            self.open(project, asked);
        }
    }

    /// Begins another project on the empty page.
    pub(crate) fn begin_anew(&self) {
        self.begun
            .update_untracked(|begun| *begun = Default::default());
        self.go_to(Stage::First(Way::Drawing));
    }

    /// Makes what was answered on the empty page a project of one's own.
    pub(crate) fn draw_route(&self) {
        self.open(self.project.get_untracked(), Stage::Project);
    }

    /// As what the project is on the desk.
    pub(crate) fn stage(&self) -> Stage {
        self.stage.get()
    }

    /// Looks at the project.
    pub fn with<T>(&self, look: impl FnOnce(&OpenProject) -> T) -> T {
        self.project.with(look)
    }

    /// Looks at the project once, without following it.
    pub fn with_untracked<T>(&self, look: impl FnOnce(&OpenProject) -> T) -> T {
        self.project.with_untracked(look)
    }

    /// How numbers are read and shown.
    #[must_use]
    pub fn style(&self) -> Style {
        self.style.get()
    }

    /// Changes the units; nothing stored changes.
    pub fn set_units(&self, units: Units) {
        self.style.update(|style| style.units = units);
    }

    /// The last answer and what is wrong with what is entered now.
    #[must_use]
    pub(crate) fn shown(&self) -> Shown {
        self.shown.get()
    }

    /// The last answer there was.
    pub(crate) fn answered(&self) -> Option<Arc<Answered>> {
        self.shown.with(|shown| shown.answered.clone())
    }

    /// The answer shown is not the one to what stands in the fields.
    pub(crate) fn is_stale(&self) -> bool {
        let failed = self.shown.with(|shown| shown.failure.is_some());
        failed || self.faults.with(|faults| !faults.is_empty())
    }

    pub(crate) fn tube(&self) -> TubeName {
        self.tube.get()
    }

    pub(crate) fn show_tube(&self, tube: TubeName) {
        self.tube.set(tube);
    }

    pub(crate) fn selected(&self) -> Option<(TubeName, usize)> {
        self.selected.get()
    }

    /// The chosen leg, without following it.
    pub(crate) fn selected_now(&self) -> Option<(TubeName, usize)> {
        self.selected.get_untracked()
    }

    pub(crate) fn select(&self, tube: TubeName, at: usize) {
        if self.selected.get_untracked() != Some((tube, at)) {
            self.selected.set(Some((tube, at)));
        }
    }

    pub(crate) fn unselect(&self) {
        self.selected.set(None);
    }

    /// What was typed into a field and can't be used.
    pub(crate) fn fault(&self, field: Field) -> Option<Fault> {
        self.faults
            .with(|faults| faults.iter().find(|fault| fault.field == field).cloned())
    }

    pub(crate) fn faults(&self) -> Vec<Fault> {
        self.faults.get()
    }

    /// Takes what is being typed into the project, or keeps it as a fault beside it.
    pub fn type_into(&self, field: Field, text: &str) {
        self.take_mark(text);
        let style = self.style.get_untracked();
        let mut project = self.project.get_untracked();
        let name = field.full_name(&project);
        let held = self.held(field);
        match field.take(&mut project, text, style) {
            Ok(()) => {
                self.faults
                    .update(|faults| faults.retain(|fault| fault.field != field));
                let about = field.path(project.run);
                self.last_edit.set(Some(Edit {
                    name,
                    before: held,
                    field,
                }));
                self.replace(project, about);
            }
            Err(refused) => {
                let fault = Fault {
                    field,
                    name,
                    text: text.to_owned(),
                    sentence: refused.sentence,
                    held,
                    is_unfinished: refused.is_unfinished,
                };
                self.faults.update(|faults| {
                    faults.retain(|fault| fault.field != field);
                    faults.push(fault);
                });
            }
        }
    }

    /// What was begun in a field and left is a fault.
    pub(crate) fn leave(&self, field: Field) {
        self.history.update_untracked(History::part);
        let is_begun = |fault: &Fault| fault.field == field && fault.is_unfinished;
        if self
            .faults
            .with_untracked(|faults| faults.iter().any(is_begun))
        {
            self.faults.update(|faults| {
                for fault in faults.iter_mut().filter(|fault| is_begun(fault)) {
                    fault.is_unfinished = false;
                }
            });
        }
    }

    /// Puts the value that still holds back into a field.
    pub(crate) fn give_back(&self, field: Field) {
        self.faults
            .update(|faults| faults.retain(|fault| fault.field != field));
    }

    /// Changes the project otherwise than through a field.
    pub(crate) fn change(&self, about: &str, change: impl FnOnce(&mut OpenProject)) {
        let mut project = self.project.get_untracked();
        change(&mut project);
        self.history.update_untracked(History::part);
        // Fields may have moved to other legs: what was typed there and could not be used has no place any more.
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.replace(project, about.to_owned());
    }

    pub(crate) fn undo(&self) {
        self.step(History::undo);
    }

    pub(crate) fn redo(&self) {
        self.step(History::redo);
    }

    pub(crate) fn can_undo(&self) -> bool {
        self.history.with(History::can_undo)
    }

    pub(crate) fn can_redo(&self) -> bool {
        self.history.with(History::can_redo)
    }

    fn step(&self, step: impl FnOnce(&mut History, Step) -> Option<Step>) {
        self.let_go();
        let now = self.now();
        let step = self.history.try_update(|history| step(history, now));
        if let Some(step) = step.flatten() {
            self.show(step);
        }
    }

    /// What is on the desk.
    fn now(&self) -> Step {
        Step {
            project: self.project.get_untracked(),
            stage: self.stage.get_untracked(),
        }
    }

    fn show(&self, step: Step) {
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.selected.set(None);
        if self.stage.get_untracked() != step.stage {
            self.stage.set(step.stage);
        }
        self.project.set(step.project);
    }

    fn replace(&self, project: OpenProject, about: String) {
        let before = self.now();
        if before.project != project {
            self.history.update(|history| history.note(before, about));
            self.project.set(project);
        }
    }

    /// The value of a field that the project holds, with its unit.
    fn held(&self, field: Field) -> String {
        let style = self.style.get_untracked();
        self.project
            .with_untracked(|project| field.show(project, style))
            .map_or_else(String::new, |(number, unit)| match unit {
                "" => number,
                _ => format!("{number}\u{a0}{unit}"),
            })
    }

    /// Numbers are shown with the mark that a person types.
    fn take_mark(&self, text: &str) {
        let mark = match (text.contains(','), text.contains('.')) {
            (true, false) => DecimalMark::Comma,
            (false, true) => DecimalMark::Point,
            _ => return,
        };
        if self.style.get_untracked().mark != mark {
            self.style.update(|style| style.mark = mark);
        }
    }
}
