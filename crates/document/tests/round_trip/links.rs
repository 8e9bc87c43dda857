//! A project survives its link, and nothing that pretends to be one does harm.

use dewrun_document::{DocumentError, LINK_MARK, from_link, limits, read, share_link};
use proptest::prelude::{any, prop_assert, prop_assert_eq, prop_assume, proptest};
use proptest::sample::Index;

use crate::{DEMOS, bits, generator};

fn link(demo: usize) -> String {
    read(DEMOS[demo].1)
        .and_then(|project| share_link(&project))
        .expect("the example can be sent")
}

#[test]
fn rubbish_of_a_megabyte_is_refused() {
    for letter in ["A", "a", "_", "-", "9", "\u{202e}", "<", "%"] {
        let rubbish = format!("{LINK_MARK}{}", letter.repeat(999_000 / letter.len()));
        let refused = from_link(&rubbish);
        let is_damaged = matches!(
            refused,
            Err(DocumentError::LinkDamaged | DocumentError::LinkLetter { at: 1 })
        );
        assert!(is_damaged, "{letter}: {refused:?}");
    }
}

#[test]
fn a_project_too_large_for_a_link_is_told_so() {
    let mut project = read(DEMOS[0].1).expect("the example can be read");
    // Signs in no order, so that they do not pack.
    let mut state = 1_u64;
    let mut noise = || {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1);
        char::from_u32(0x4e00 + u32::try_from(state >> 44).unwrap_or_default() % 20_000)
    };
    let run = project.runs[0].clone();
    for at in 1..limits::RUNS {
        let mut run = run.clone();
        run.id = format!("run {at}");
        run.name = (0..limits::NAME).filter_map(|_| noise()).collect();
        run.duct.name = (0..limits::NAME).filter_map(|_| noise()).collect();
        for leg in &mut run.intake.legs {
            leg.id = (0..limits::ID).filter_map(|_| noise()).collect();
        }
        project.runs.push(run);
    }
    let refused = share_link(&project).map(|link| link.len());
    assert!(
        matches!(refused, Err(DocumentError::LinkTooLong { .. })),
        "{refused:?}"
    );
}

/// The bits behind the end of what was packed say nothing of the text, and are checked all the same.
#[test]
fn each_letter_at_the_end_is_checked() {
    let demos = 0..3;
    for whole in demos.map(link) {
        for at in whole.len() - 12..whole.len() {
            for letter in ["A", "B", "w", "_"] {
                let mut link = whole.clone();
                link.replace_range(at..=at, letter);
                if link != whole {
                    assert_eq!(
                        from_link(&link),
                        Err(DocumentError::LinkDamaged),
                        "{letter} at {at}"
                    );
                }
            }
        }
    }
}

proptest! {
    #[test]
    fn any_project_survives_its_link(project in generator::project()) {
        let back = share_link(&project).and_then(|link| from_link(&link));
        prop_assert_eq!(back.as_ref().map(bits), Ok(bits(&project)));
    }

    /// The check behind the text sees every change of up to 32 bits in a row.
    #[test]
    fn a_link_with_one_letter_changed_is_refused(demo in 0_usize..3, at in any::<Index>(), letter in "[A-Za-z0-9_-]") {
        let mut link = link(demo);
        let at = LINK_MARK.len() + at.index(link.len() - LINK_MARK.len());
        prop_assume!(link.get(at..=at) != Some(letter.as_str()));
        link.replace_range(at..=at, &letter);
        prop_assert_eq!(from_link(&link), Err(DocumentError::LinkDamaged));
    }

    /// What is lost may be the check alone: the project is whole then.
    #[test]
    fn a_link_cut_short_is_refused_or_whole(demo in 0_usize..3, at in any::<Index>()) {
        let mut link = link(demo);
        link.truncate(LINK_MARK.len() + at.index(link.len() - LINK_MARK.len()));
        match from_link(&link) {
            Ok(project) => prop_assert_eq!(bits(&project), read(DEMOS[demo].1).as_ref().map(bits).unwrap_or_default()),
            Err(error) => prop_assert!(matches!(error, DocumentError::LinkDamaged), "{error}"),
        }
    }

    #[test]
    fn no_letters_bring_the_reader_down(letters in "[A-Za-z0-9_-]{0,400}") {
        prop_assert!(from_link(&format!("{LINK_MARK}{letters}")).is_err(), "{letters}");
    }
}
