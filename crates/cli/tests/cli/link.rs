//! Links: printed by `link`, taken wherever a project is read, refused in words.

use crate::running::{Said, dewrun, dewrun_reading};

const DEMO: &str = "demo/make-up-air.json";
const PAGE: &str = "https://example.org/tubes/?from=card#project";

#[track_caller]
fn link_of(words: &[&str]) -> String {
    let said = dewrun(words);
    assert_eq!(said.status, 0, "{words:?}: {}", said.complaint);
    let lines: Vec<&str> = said.out.lines().collect();
    assert_eq!(lines.len(), 1, "one line: {}", said.out);
    lines.concat()
}

#[track_caller]
fn same_answer(said: &Said) {
    let expected = dewrun(&["assess", DEMO]);
    assert_eq!(said.out, expected.out, "the answer is that of the file");
    assert_eq!(said.status, expected.status, "and so is its ending");
}

#[test]
fn a_link_answers_as_its_file_does() {
    let bare = link_of(&["link", DEMO]);
    assert!(bare.starts_with("#v1="), "without a page: {bare}");
    let whole = link_of(&["link", DEMO, "--page", PAGE]);
    assert_eq!(
        whole,
        format!("https://example.org/tubes/?from=card{bare}"),
        "behind a page"
    );
    same_answer(&dewrun(&["assess", &bare]));
    same_answer(&dewrun(&["assess", &whole]));
    same_answer(&dewrun_reading(&["assess", "-"], whole.as_bytes()));
    assert_eq!(link_of(&["link", &whole]), bare, "a link of a link");
}

#[test]
fn lines_may_be_links() {
    let link = link_of(&["link", DEMO]);
    let said = dewrun_reading(&["lines"], format!("{link}\n\n{link}\n").as_bytes());
    let (wet, line) = ("\"verdict\":\"wet\"", "\"line\":3");
    assert_eq!(said.out.matches(wet).count(), 2, "both: {}", said.out);
    assert!(said.out.contains(line), "the second is line 3");
}

#[test]
fn a_bad_link_is_refused_in_words() {
    let good = link_of(&["link", DEMO]);
    let cut = good.get(..good.len() / 2).expect("letters are ASCII");
    for (link, complaint) in [
        (
            cut,
            "the link is damaged or cut short; copy it again, whole",
        ),
        (
            "#v1=a+b",
            "the link is damaged at letter 2 after `#v1=`; copy it again, whole",
        ),
        (
            "https://example.org/#v2=abc",
            "the link is of version 2, this Dewrun reads version 1; open it with a newer one",
        ),
    ] {
        let said = dewrun(&["assess", link]);
        assert_eq!(said.status, 1, "{link} has no answer");
        assert_eq!(
            said.complaint,
            format!("dewrun: link: {complaint}\n"),
            "{link}"
        );
    }
    let said = dewrun(&["link", "demo/nothing-there.json"]);
    assert_eq!(said.status, 1, "no file, no link");
}
