//! The lines of a record.

use core::str;

use dewrun_document::{DocumentError, Project, link_text, read_keeping_years};

use super::Unkept;
use super::delta::{delta, undelta};
use crate::history::Step;
use crate::{Kept, OpenProject, Stage};

/// The file of a project in one line.
pub(super) fn text_of(project: &Project) -> Result<String, DocumentError> {
    link_text(project)
}

/// What stands before the text of a project.
pub(super) fn begin(kept: &Kept) -> String {
    let address = kept.stage.address();
    let stage = address.trim_start_matches('#');
    let Kept { key, changed, .. } = kept;
    format!("{key} {changed} {} #{stage} ", kept.project.run)
}

/// A state as it differs from the one next to it of the same project; none where it can't be written.
pub(super) fn state(kept: &Kept, texts: &mut Texts) -> Option<String> {
    let text = text_of(&kept.project).ok()?;
    let (before, behind, middle) = delta(texts.find(kept.key), &text);
    let line = format!("{}{before} {behind} {middle}", begin(kept));
    texts.set(kept.key, text);
    Some(line)
}

/// The text of each project in the state that was written or read last.
pub(super) struct Texts(Vec<(u64, String)>);

impl Texts {
    pub(super) fn of(key: u64, text: &str) -> Self {
        Self(vec![(key, text.to_owned())])
    }

    fn find(&self, key: u64) -> &str {
        let found = self.0.iter().find(|(own, _)| *own == key);
        found.map_or("", |(_, text)| text)
    }

    fn set(&mut self, key: u64, text: String) {
        self.0.retain(|(own, _)| *own != key);
        self.0.push((key, text));
    }
}

/// The lines that are still to be read.
pub(super) struct Lines<'a>(str::Lines<'a>);

impl<'a> Lines<'a> {
    pub(super) fn of(text: &'a str) -> Self {
        Self(text.lines())
    }

    pub(super) fn next(&mut self) -> Option<&'a str> {
        self.0.next()
    }

    /// The project, and its text; none where the line is none of a project.
    pub(super) fn project(&mut self) -> Result<Option<(Kept, &'a str)>, Unkept> {
        let Some((head, json)) = self.next().and_then(parted) else {
            return Ok(None);
        };
        let project = read_keeping_years(json)?;
        Ok(head.kept(project).map(|kept| (kept, json)))
    }

    /// The next step, if there is one of that sign.
    pub(super) fn step(&mut self, sign: char, texts: &mut Texts) -> Option<Step> {
        let mut rest = self.0.clone();
        let numbers = rest.next()?.strip_prefix(sign)?.strip_prefix(' ')?;
        let (now, count) = numbers.split_once(' ')?;
        let (now, count) = (now.parse().ok()?, count.parse().ok()?);
        let mut was = Vec::new();
        for _ in 0_usize..count {
            was.push(state_of(rest.next()?, texts)?);
        }
        self.0 = rest;
        Some(Step { now, was })
    }
}

fn state_of(line: &str, texts: &mut Texts) -> Option<(u64, Option<Kept>)> {
    if let Ok(key) = line.parse() {
        return Some((key, None));
    }
    let (head, rest) = parted(line)?;
    let (before, rest) = rest.split_once(' ')?;
    let (behind, middle) = rest.split_once(' ')?;
    let base = texts.find(head.key);
    let text = undelta(base, before.parse().ok()?, behind.parse().ok()?, middle)?;
    let kept = head.kept(read_keeping_years(&text).ok()?)?;
    texts.set(kept.key, text);
    Some((kept.key, Some(kept)))
}

/// What stands before the text of a project.
struct Head {
    key: u64,
    changed: u64,
    run: usize,
    stage: Stage,
}

impl Head {
    fn kept(self, project: Project) -> Option<Kept> {
        let run = self.run;
        project.runs.get(run)?;
        Some(Kept {
            key: self.key,
            project: OpenProject { project, run },
            stage: self.stage,
            changed: self.changed,
        })
    }
}

/// What stands before the text of a project, and that text.
fn parted(line: &str) -> Option<(Head, &str)> {
    let mut words = line.splitn(5, ' ');
    let head = Head {
        key: words.next()?.parse().ok()?,
        changed: words.next()?.parse().ok()?,
        run: words.next()?.parse().ok()?,
        stage: Stage::asked(words.next()?)?,
    };
    Some((head, words.next()?))
}
