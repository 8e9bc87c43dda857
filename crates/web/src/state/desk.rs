//! The desk: the project as it is entered, and everything that follows from it.

mod files;
mod hand;
mod links;
mod projects;

use std::sync::Arc;

use dewrun_desk::{
    Answered, Edit, Fault, Field, Kept, OpenProject, Record, Shown, Stage, Store, TubeName, Way,
};
use dewrun_document::{Project, read_keeping_years};
use dewrun_quantity::{DecimalMark, Style, Units};
use leptos::prelude::*;

use crate::hooks::clock::{self, new_key};
use files::RefusedFile;

/// Everything the components share; it is a handful of handles and free to copy.
#[derive(Debug, Clone, Copy)]
pub struct Desk {
    store: RwSignal<Store>,
    faults: RwSignal<Vec<Fault>>,
    last_edit: RwSignal<Option<Edit>>,
    style: RwSignal<Style>,
    tube: RwSignal<TubeName>,
    selected: RwSignal<Option<(TubeName, usize)>>,
    compared: RwSignal<Option<usize>>,
    refused_file: RwSignal<Option<RefusedFile>>,
    /// What was on the desk before a hand took hold of something.
    held: RwSignal<Option<OpenProject>>,
    /// How often a hand has moved: what is drawn follows each move.
    moves: RwSignal<u32>,
    /// How often words were told of a hand that moves.
    beats: RwSignal<u32>,
    /// The next beat is on its way.
    is_beating: StoredValue<bool>,
    shown: Memo<Shown>,
    /// The answer in words, which nobody reads anew with each frame.
    told: Memo<Option<Arc<Answered>>>,
    /// The answer when no hand was on the project.
    settled: Memo<Option<Arc<Answered>>>,
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
        Self::of(Store::new(new_kept(project.into(), Stage::Project)))
    }

    /// A desk with what an address asks for on it, of what was kept where it is that; where that is nowhere any more, the empty page.
    pub(crate) fn at(asked: Option<Stage>, kept: Vec<Record>) -> Option<Self> {
        Store::started(asked, kept, new_key()).map(Self::of)
    }

    fn of(store: Store) -> Self {
        let store = RwSignal::new(store);
        let last_edit = RwSignal::new(None);
        let held = RwSignal::new(None::<OpenProject>);
        let is_held = Memo::new(move |_| held.with(Option::is_some));
        let moves = RwSignal::new(0);
        let shown = Memo::new(move |before: Option<&Shown>| {
            moves.track();
            let last_edit = last_edit.get_untracked();
            store.with(|store| Shown::next(before, &store.now().project, last_edit))
        });
        let answered = move || shown.with(|shown| shown.answered.clone());
        let beats = RwSignal::new(0);
        let told = Memo::new(move |_| {
            if is_held.get() {
                beats.track();
                return untrack(answered);
            }
            answered()
        });
        let settled = Memo::new(move |last: Option<&Option<Arc<Answered>>>| {
            if is_held.get() {
                return last.cloned().flatten();
            }
            answered()
        });
        Self {
            store,
            faults: RwSignal::new(Vec::new()),
            last_edit,
            style: RwSignal::new(Style::default()),
            tube: RwSignal::new(TubeName::Intake),
            selected: RwSignal::new(None),
            compared: RwSignal::new(None),
            refused_file: RwSignal::new(None),
            held,
            moves,
            beats,
            is_beating: StoredValue::new(false),
            shown,
            told,
            settled,
        }
    }

    /// Puts another project on the desk; undoing that brings back what was there.
    pub(crate) fn open(&self, project: OpenProject, stage: Stage) {
        self.act(|store| store.open(new_kept(project, stage)));
    }

    /// Puts on the desk what an address asks for, unless it is there.
    pub(crate) fn go_to(&self, asked: Stage) {
        self.act(|store| {
            if !store.go_back_to(asked)
                && let Some(project) = asked.project()
            {
                store.open(new_kept(project, asked));
            }
        });
    }

    /// Begins another project on the empty page.
    pub(crate) fn begin_anew(&self) {
        let stage = Stage::First(Way::Drawing);
        if let Some(project) = stage.project() {
            self.act(|store| store.begin_anew(new_kept(project, stage)));
        }
    }

    /// Makes what was answered on the empty page a project of one's own.
    pub(crate) fn draw_route(&self) {
        self.open(self.with_untracked(Clone::clone), Stage::Project);
    }

    /// As what the project is on the desk.
    pub(crate) fn stage(&self) -> Stage {
        self.store.with(|store| store.now().stage)
    }

    /// Looks at the project.
    pub fn with<T>(&self, look: impl FnOnce(&OpenProject) -> T) -> T {
        self.store.with(|store| look(&store.now().project))
    }

    /// Looks at the project once, without following it.
    pub fn with_untracked<T>(&self, look: impl FnOnce(&OpenProject) -> T) -> T {
        self.store
            .with_untracked(|store| look(&store.now().project))
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

    /// The last answer there was, as words tell it: a few times a second while a hand moves.
    pub(crate) fn answered(&self) -> Option<Arc<Answered>> {
        self.told.get()
    }

    /// The last answer there was, at each move of a hand: for what is drawn under it.
    pub(crate) fn drawn(&self) -> Option<Arc<Answered>> {
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
        let mut project = self.with_untracked(Clone::clone);
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
                self.replace(project, &about);
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
        self.store.update_untracked(Store::part);
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
        let mut project = self.with_untracked(Clone::clone);
        change(&mut project);
        self.store.update_untracked(Store::part);
        // Fields may have moved to other legs: what was typed there and could not be used has no place any more.
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.replace(project, about);
    }

    /// Puts a project that was made of the open one in its place; several about the same thing are one step until the next part.
    ///
    /// # Errors
    /// The text is no project, as a sentence.
    pub(crate) fn put(&self, about: &str, text: &str) -> Result<(), String> {
        let project = read_keeping_years(text).map_err(|error| error.to_string())?;
        let run = self.with_untracked(|project| project.run);
        self.last_edit.set(None);
        self.replace(OpenProject { project, run }, about);
        Ok(())
    }

    pub(crate) fn undo(&self) {
        self.act(Store::undo);
    }

    pub(crate) fn redo(&self) {
        self.act(Store::redo);
    }

    pub(crate) fn can_undo(&self) -> bool {
        self.store.with(Store::can_undo)
    }

    pub(crate) fn can_redo(&self) -> bool {
        self.store.with(Store::can_redo)
    }

    /// Does something that may put another project or run on the desk.
    fn act(&self, act: impl FnOnce(&mut Store)) {
        self.let_go();
        self.faults.set(Vec::new());
        self.last_edit.set(None);
        self.selected.set(None);
        let open = || self.with_store_untracked(|store| (store.now().key, store.now().project.run));
        let before = open();
        self.store.update(act);
        if open() != before {
            self.tube.set(TubeName::Intake);
        }
    }

    fn replace(&self, project: OpenProject, about: &str) {
        if self.with_untracked(|before| *before != project) {
            self.store.update(|store| store.change(about, project));
        }
    }

    /// The value of a field that the project holds, with its unit.
    fn held(&self, field: Field) -> String {
        let style = self.style.get_untracked();
        self.with_untracked(|project| field.show(project, style))
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

/// A project under a new key.
fn new_kept(project: OpenProject, stage: Stage) -> Kept {
    Kept {
        key: new_key(),
        project,
        stage,
        changed: clock::now(),
    }
}
