//! The table is whole: no id twice, every input there, no chain that ends before an entered value.

use std::collections::BTreeSet;

use dewrun_run::figure::Figure;

#[test]
fn every_id_is_there_once_and_in_plain_words() {
    let mut seen = BTreeSet::new();
    for figure in Figure::ALL {
        let id = figure.id();
        assert!(seen.insert(id), "{id} stands twice");
        assert!(
            id.chars().all(|c| c.is_ascii_lowercase() || c == '-'),
            "{id} is of small letters"
        );
        assert_eq!(Figure::from_id(id), Some(*figure), "{id} is found");
    }
    assert_eq!(Figure::from_id("water"), None, "no other is");
}

#[test]
fn the_table_holds_a_line_for_each_figure_and_no_other() {
    let computed = [
        include_str!("../../src/figure/computed.txt"),
        include_str!("../../src/figure/water-and-air.txt"),
    ];
    let given = [
        include_str!("../../src/figure/given.txt"),
        include_str!("../../src/figure/given-water-and-air.txt"),
    ];
    let check = |text: &str, columns: usize| {
        for line in text.lines() {
            let cells: Vec<&str> = line.split('|').collect();
            assert_eq!(cells.len(), columns, "{line}");
            assert!(Figure::from_id(cells[0]).is_some(), "{} is known", cells[0]);
        }
        text.lines().count()
    };
    let computed: usize = computed.iter().map(|text| check(text, 8)).sum();
    let given: usize = given.iter().map(|text| check(text, 4)).sum();
    let lines = computed + given;
    assert_eq!(lines, Figure::ALL.len(), "as many lines as figures");
}

#[test]
fn every_computed_figure_says_how_from_what_and_by_whom() {
    for figure in Figure::ALL.iter().filter(|figure| !figure.is_given()) {
        let id = figure.id();
        assert!(!figure.name().is_empty(), "{id} has a name");
        assert!(!figure.symbol().is_empty(), "{id} has a symbol");
        assert!(!figure.relation().is_empty(), "{id} has a relation");
        assert!(!figure.source().is_empty(), "{id} has a source");
        assert!(0 < figure.inputs().count(), "{id} has inputs");
    }
}

#[test]
fn every_input_says_how_it_is_measured() {
    for figure in Figure::ALL.iter().filter(|figure| figure.is_given()) {
        let id = figure.id();
        assert!(figure.how_to_measure().ends_with('.'), "{id}: a sentence");
        assert!(figure.relation().is_empty(), "{id} follows from nothing");
        assert_eq!(figure.inputs().count(), 0, "{id} has no inputs");
    }
}

#[test]
fn every_named_input_exists() {
    let lines = include_str!("../../src/figure/computed.txt").lines();
    let lines = lines.chain(include_str!("../../src/figure/water-and-air.txt").lines());
    for line in lines {
        let named = line.split('|').nth(4).unwrap_or("");
        for id in named.split(' ') {
            assert!(Figure::from_id(id).is_some(), "{id}, in {line}");
        }
    }
}

#[test]
fn every_chain_leads_to_what_was_entered() {
    for figure in Figure::ALL {
        let mut reached = vec![*figure];
        let mut at = 0;
        while let Some(next) = reached.get(at) {
            for input in next.inputs() {
                if !reached.contains(&input) {
                    reached.push(input);
                }
            }
            at += 1;
        }
        let entered = reached.iter().filter(|found| found.is_given()).count();
        assert!(0 < entered, "{} follows from nothing entered", figure.id());
    }
}

#[test]
fn the_text_stays_small() {
    let bytes = include_str!("../../src/figure/computed.txt").len()
        + include_str!("../../src/figure/given.txt").len();
    assert!(bytes < 20_000, "{bytes} bytes are loaded with the page");
}
