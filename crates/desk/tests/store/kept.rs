//! What is kept of a project between visits.

use dewrun_desk::{
    Kept, Stage, Store, Unkept, add_variant, example, read_record, record_text, rename_project,
};
use dewrun_document::Input;

use crate::acts::{desk, kept};

/// A project of one's own on the desk.
fn own() -> Store {
    let project = desk().now().project.clone();
    Store::new(kept(4, project, Stage::Project))
}

fn text(store: &Store) -> String {
    record_text(store, store.now(), "3", true).unwrap_or_default()
}

#[track_caller]
fn is_refused(text: &str, with: &str) {
    let refused = read_record(text)
        .map(drop)
        .map_err(|Unkept(sentence)| sentence);
    assert!(
        matches!(&refused, Err(sentence) if sentence.contains(with)),
        "{refused:?}"
    );
}

/// Changes the name of the open project.
fn rename(store: &mut Store, name: &str) {
    let mut project = store.now().project.clone();
    rename_project(&mut project, name);
    store.part();
    store.change("name", project);
}

#[test]
fn a_project_and_its_history_take_little_room() {
    let mut store = own();
    let bare = text(&store).len();
    for number in 0..200 {
        rename(&mut store, &format!("Name {number}"));
    }
    let with_history = text(&store).len();
    assert!(
        with_history < bare + 200 * 80,
        "{with_history} B with 200 steps, {bare} B without"
    );
}

#[test]
fn what_can_not_be_used_is_told_and_not_taken() {
    let whole = text(&own());
    let first = whole.lines().next();
    assert_eq!(
        first,
        Some("dewrun-desk 1 4 3"),
        "when, and by which window"
    );
    is_refused("", "damaged");
    is_refused("hello", "damaged");
    is_refused(
        &whole.replacen("dewrun-desk 1", "dewrun-desk 2", 1),
        "newer",
    );
    is_refused(
        &whole.replacen("\"revision\":", "\"revision\":9", 1),
        "newer",
    );
    is_refused(whole.get(..whole.len() / 2).unwrap_or(""), "not JSON");
    is_refused(&"x".repeat(5 * 1024 * 1024 + 1), "larger than 5 MB");
}

#[test]
fn of_a_damaged_history_the_rest_is_used() {
    let mut store = own();
    for name in ["A", "B", "C"] {
        rename(&mut store, name);
    }
    let whole = text(&store);
    let cut = whole
        .trim_end()
        .rsplit_once('\n')
        .map_or("", |(cut, _)| cut);
    let record = read_record(cut).expect("the project is whole");
    let mut again = Store::started(None, vec![record], 99).expect("it begins");
    assert_eq!(again.now(), store.now(), "the project");
    again.undo();
    again.undo();
    assert!(!again.can_undo(), "the third step was damaged");
    assert_eq!(again.now().project.name, "A", "two steps back");
}

/// Case F08: what is no number must never be kept, since it could not be read again.
#[test]
fn what_is_no_number_is_not_kept() {
    let mut store = own();
    let mut project = store.now().project.clone();
    project.spaces[0].temperature_c = Input::typed(f64::NAN);
    store.change("", project);
    let refused = record_text(&store, store.now(), "3", true);
    assert!(refused.is_err(), "{refused:?}");
    store.undo();
    let written = text(&store);
    assert!(
        !written.contains("NaN") && !written.contains("null"),
        "no word for it in the text"
    );
    assert!(read_record(&written).is_ok(), "which is read again");
}

#[test]
fn what_was_kept_last_comes_under_what_was_done_since() {
    let mut store = own();
    let mut earlier = own();
    rename(&mut earlier, "An hour ago");
    let record = read_record(&text(&earlier)).expect("it is read");
    rename(&mut store, "Now");
    store.join(record);
    store.undo();
    store.undo();
    assert_eq!(store.now().project.name, "An hour ago", "what was kept");
    store.undo();
    assert_eq!(store.now(), own().now(), "and what was before it");
}

#[test]
fn two_windows_keep_both() {
    let mut store = own();
    rename(&mut store, "Mine");
    let mut theirs = own();
    rename(&mut theirs, "Theirs");
    store.part_from(theirs.now().clone(), 8);
    let names: Vec<_> = store
        .aside()
        .iter()
        .map(|one: &Kept| &one.project.name)
        .collect();
    assert_eq!(names, ["Theirs"], "is aside");
    assert_eq!(store.now().project.name, "Mine (2)", "is told apart");
    assert_eq!(store.now().key, 8, "and kept under a key of its own");
    store.undo();
    assert_eq!(store.now().key, 8, "undone too");
    assert_eq!(store.take_touched().last(), Some(&8), "what is to be kept");
}

/// Each window has an example of its own open, and edits it: the one that reloads finds its own again.
#[test]
fn an_edited_example_outlives_another_in_a_second_window() {
    let [mine, theirs] = ["make-up-air", "chilled-supply"].map(|name| {
        let found = example(&format!("#example={name}"));
        Stage::Example(found.expect("it is offered"))
    });
    let desk_with = |stage: Stage, key| {
        let project = stage.project().expect("the example is there");
        Store::new(kept(key, project, stage))
    };
    let mut first = desk_with(mine, 6);
    rename(&mut first, "Edited");
    let record = || read_record(&text(&first)).expect("what was written is read");
    let second = Store::started(Some(theirs), vec![record()], 9).expect("an example");
    let mut second = second;
    assert!(
        !second.take_touched().contains(&6),
        "the second window leaves it alone"
    );
    let again = Store::started(Some(mine), vec![record()], 10).expect("an example");
    assert_eq!(again.now().project.name, "Edited", "the first has it back");
    // Opened anew in a window that has the same one already, the older goes.
    let mut newer = desk_with(mine, 12);
    rename(&mut newer, "Newer");
    newer.join(record());
    assert!(newer.take_touched().contains(&6), "one of each is enough");
}

#[test]
fn what_deletes_is_kept_with_what_is_open() {
    let mut store = own();
    store.open(kept(5, desk().now().project.clone(), Stage::Project));
    store.take_touched();
    store.delete(4);
    let mut touched = store.take_touched();
    touched.sort_unstable();
    assert_eq!(
        touched,
        [4, 5],
        "the one that is gone, and the way back to it"
    );
}

#[test]
fn a_deleted_original_leaves_its_variants() {
    let mut project = own().now().project.clone();
    add_variant(&mut project);
    add_variant(&mut project);
    project.run = 0;
    dewrun_desk::delete_run(&mut project);
    let of: Vec<_> = project
        .runs
        .iter()
        .map(|run| run.variant_of.clone())
        .collect();
    assert_eq!(
        of,
        [None, Some(project.runs[0].id.clone())],
        "the first takes its place"
    );
    assert_eq!(project.run, 0, "and is open");
    assert_eq!(dewrun_desk::layouts(&project), [0, 1], "of one detector");
}
