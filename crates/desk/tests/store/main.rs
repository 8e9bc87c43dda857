//! What is on the desk can be undone, and comes back after a reload or a crash.

mod acts;
mod kept;

use dewrun_desk::{Kept, Store, read_record, record_text};
use dewrun_document::Project;
use proptest::collection::vec;
use proptest::prelude::{ProptestConfig, prop_assert, proptest};

use acts::{act, desk};

/// Every project there is, which one is open, and as what; which run is shown is no part of a document.
fn documents(store: &Store) -> Vec<(u64, String, Project)> {
    let all = [store.now()].into_iter().chain(store.aside());
    let document = |kept: &Kept| (kept.key, kept.stage.address(), kept.project.project.clone());
    all.map(document).collect()
}

fn undo_all(store: &mut Store) {
    while store.can_undo() {
        store.undo();
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn two_hundred_edits_are_undone_and_redone(acts in vec(act(), 200)) {
        let mut store = desk();
        let before = documents(&store);
        for (key, act) in (2..).zip(acts) {
            act.act(&mut store, key);
        }
        let after = documents(&store);
        undo_all(&mut store);
        prop_assert!(documents(&store) == before, "undone");
        while store.can_redo() {
            store.redo();
        }
        prop_assert!(documents(&store) == after, "and redone");
    }

    #[test]
    fn a_desk_that_was_left_is_undone_as_if_it_never_was(acts in vec(act(), 1..60), undone in 0..8) {
        let mut store = desk();
        let before = documents(&store);
        for (key, act) in (2..).zip(acts) {
            act.act(&mut store, key);
        }
        for _ in 0..undone {
            store.undo();
        }
        let (open, time) = (store.now().key, 1000);
        store.set_changed(open, time);
        let text = record_text(&store, store.now(), "7", true);
        let record = read_record(&text.expect("it is written")).expect("what was written is read");
        prop_assert!(record.kept == *store.now(), "the project");
        let aside = store.aside().to_vec();
        let mut records = vec![record];
        for kept in aside {
            let text = record_text(&store, &kept, "7", true);
            records.push(read_record(&text.expect("it is written")).expect("it is read"));
        }
        let mut again = Store::started(Some(store.now().stage), records, 99).expect("it begins");
        prop_assert!(documents(&again) == documents(&store), "all of it");
        while store.can_redo() {
            prop_assert!(again.can_redo(), "as many steps forward");
            store.redo();
            again.redo();
        }
        prop_assert!(documents(&again) == documents(&store), "redone");
        undo_all(&mut again);
        prop_assert!(documents(&again) == before, "undone");
    }
}
