//! Answers that are no number of the run: they are written into the project's note, a line each, in words that people read.

use dewrun_troubles::Asked;

use crate::OpenProject;

use super::Question;

/// What begins the line of a question; none for those whose answers are numbers.
fn head(question: Question) -> Option<&'static str> {
    Some(match question {
        Question::Weather => "Weather",
        Question::TroubleAir => "Duct air",
        Question::Where => "The tube runs through",
        _ => return asked(question).map(|asked| asked.head),
    })
}

/// What causes are ranked by, in the words of whoever ranks them.
pub(super) const fn asked(question: Question) -> Option<Asked> {
    Some(match question {
        Question::Trouble => Asked::TROUBLE,
        Question::When => Asked::WHEN,
        Question::Trap => Asked::TRAP,
        Question::Touched => Asked::TOUCHED,
        _ => return None,
    })
}

/// The answer that the note holds to a question.
pub(super) fn answer(project: &OpenProject, question: Question) -> Option<usize> {
    let head = head(question)?;
    let told = project.note.lines().find_map(|line| rest(line, head))?;
    question.words().iter().position(|word| *word == told)
}

/// Writes an answer into the note, in place of the one before.
pub(super) fn write(project: &mut OpenProject, question: Question, place: usize) -> Option<()> {
    let (head, word) = (head(question)?, question.words().get(place)?);
    let mut lines: Vec<&str> = project.note.lines().collect();
    let line = format!("{head}: {word}.");
    match lines.iter().position(|line| rest(line, head).is_some()) {
        Some(at) => lines[at] = &line,
        None => lines.push(&line),
    }
    let note = lines.join("\n");
    project.note = note;
    Some(())
}

/// What a line says of its head.
fn rest<'a>(line: &'a str, head: &str) -> Option<&'a str> {
    line.strip_prefix(head)?
        .strip_prefix(": ")?
        .strip_suffix('.')
}
