//! Every list that is promised is there, and every row is found by its id.

use dewrun_run::library::{self, BoreForm, Library, Row, Supply};

#[test]
fn what_is_compiled_in_can_be_read() {
    let library = Library::read();
    assert!(library.is_ok(), "{:?}", library.err());
    assert!(
        library::rows().count() != 0,
        "and is there to be picked from"
    );
}

#[test]
fn what_is_assumed_of_water_and_air_can_be_read_and_says_whence() {
    let rows = library::read_assumptions();
    assert!(rows.is_ok(), "{:?}", rows.err());
    let rows = library::assumptions();
    assert!(20 <= rows.len(), "{} rows", rows.len());
    for row in rows {
        assert!(
            library::row(row.id).is_none(),
            "{}: an id of its own",
            row.id
        );
        let twice = rows.iter().filter(|other| other.id == row.id).count();
        assert_eq!(twice, 1, "{} stands once", row.id);
        assert_eq!(row.value.source, "common practice, no source", "{}", row.id);
    }
}

#[test]
fn ids_are_unique_and_kebab_case() {
    let mut ids: Vec<&str> = library::rows().map(Row::id).collect();
    for id in &ids {
        let is_word = |word: &str| {
            !word.is_empty()
                && word
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        };
        assert!(id.split('-').all(is_word), "`{id}` is not kebab-case");
        assert!(
            id.len() <= 64,
            "`{id}` is longer than an id in a project file"
        );
    }
    let all = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), all, "an id is given twice");
}

#[test]
fn a_row_is_found_by_its_id() {
    for row in library::rows() {
        let found = library::row(row.id());
        assert_eq!(
            found.map(Row::name),
            Some(row.name()),
            "{}: by its id",
            row.id()
        );
    }
    assert!(
        library::row("no-such-row").is_none(),
        "others are not there"
    );
    let tube = library::find(library::tubes(), "tube-copper-22");
    assert!(
        tube.is_some_and(|tube| tube.id == "tube-copper-22"),
        "in its own list"
    );
}

#[test]
fn every_list_that_is_promised_is_there() {
    for id in [
        "ceiling-void",
        "return-plenum",
        "loft-ventilated",
        "loft-insulated",
        "shaft",
        "corridor",
        "plant-room-heated",
        "plant-room-unheated",
        "cold-store-chill",
        "cold-store-freezer",
        "roof-winter-night",
        "make-up-untreated",
        "make-up-heated",
        "make-up-cooled",
        "after-coil",
        "after-humidifier",
        "pool-hall",
        "laundry",
        "shower",
        "kitchen-exhaust",
        "return",
        "insulation-closed-cell",
        "insulation-pe-foam",
        "insulation-mineral-wool",
        "insulation-glass-wool",
        "insulation-phenolic",
        "detector-generic",
        "route-level",
        "route-drop",
    ] {
        assert!(library::row(id).is_some(), "`{id}` is missing");
    }
    for material in ["ABS", "PVC-U", "CPVC", "PE", "PP", "PA", "Copper", "Steel"] {
        let made_of = |tube: &library::TubeRow| tube.material == material;
        assert!(
            library::tubes().iter().any(made_of),
            "no tube of {material}"
        );
    }
    let tubes = library::tubes();
    assert!(
        tubes
            .iter()
            .any(|tube| tube.bore_form == BoreForm::Corrugated),
        "no corrugated bore"
    );
    assert!(
        tubes.iter().any(|tube| tube.supply == Supply::Coiled),
        "no tube from a coil"
    );
    assert!(
        tubes.iter().any(|tube| tube.id.ends_with("-in")),
        "no inch size"
    );
    let names = library::detectors().iter().map(|row| row.name);
    for name in names {
        assert!(
            name.contains("stands for no device"),
            "`{name}` does not say so"
        );
    }
}
