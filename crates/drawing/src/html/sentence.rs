//! The answer's sentences with their figures set off.

use super::opening;
use crate::answer::{Answer, Emphasis, Part, Rests};
use crate::svg::escaped;

/// The one sentence, its figures to be opened.
#[must_use]
pub fn sentence(answer: &Answer) -> String {
    answer.sentence.iter().map(part).collect()
}

/// The one sentence where nothing is to be opened: it only repeats.
#[must_use]
pub fn plain_sentence(answer: &Answer) -> String {
    answer.sentence.iter().map(plain_part).collect()
}

/// What stands beside it, an element each.
#[must_use]
pub fn asides(answer: &Answer) -> String {
    answer.asides.iter().map(|parts| aside(parts)).collect()
}

/// What is known besides, and notes, as they stand in an element that is folded away under a name.
#[must_use]
pub fn more(answer: &Answer, notes: &[String]) -> String {
    let count = match notes.len() {
        0 => String::new(),
        1 => " and 1 note".to_owned(),
        many => format!(" and {many} notes"),
    };
    let known: String = answer.more.iter().map(|parts| aside(parts)).collect();
    let notes = notes.iter().map(|note| format!("<li>{note}</li>"));
    let notes: String = notes.collect();
    format!("<summary>Airflow, limits{count}</summary><p>{known}</p><ul>{notes}</ul>")
}

fn aside(parts: &[Part]) -> String {
    let parts: String = parts.iter().map(part).collect();
    format!("<span>{parts}</span> ")
}

/// What the answer rests on, the rest of it behind "and 2 more", and how each value could be measured.
#[must_use]
pub fn rests_on(rests: &Rests) -> String {
    let parts = |parts: &[Part]| parts.iter().map(part).collect::<String>();
    let mut html = parts(&rests.sentence);
    if !rests.more.is_empty() {
        let count = rests
            .more
            .iter()
            .filter(|part| part.figure.is_some())
            .count();
        html.push_str(&format!(
            " <details class=\"dw-rests\"><summary>and {count} more</summary>{}</details>",
            parts(&rests.more)
        ));
    }
    if !rests.how.is_empty() {
        let how = rests
            .how
            .iter()
            .map(|how| format!("<li>{}</li>", escaped(how)));
        let how: String = how.collect();
        html.push_str(&format!(
            " <details class=\"dw-rests\"><summary>How to measure</summary><ul>{how}</ul></details>"
        ));
    }
    html
}

/// How a piece is set off; none for plain words.
fn class(part: &Part) -> Option<&'static str> {
    Some(match part.emphasis {
        Emphasis::None => return None,
        Emphasis::Strong => "dw-figure",
        Emphasis::Water => "dw-figure dw-figure--water",
        Emphasis::Frost => "dw-figure dw-figure--frost",
        Emphasis::Mist => "dw-figure dw-figure--mist",
        Emphasis::Sweat => "dw-figure dw-figure--sweat",
        Emphasis::Assumed => "dw-figure--assumed",
    })
}

fn part(part: &Part) -> String {
    match part.figure {
        Some((figure, spot)) => opening(figure, spot, class(part).unwrap_or(""), &part.text),
        None => plain_part(part),
    }
}

fn plain_part(part: &Part) -> String {
    let text = escaped(&part.text);
    match class(part) {
        Some(class) => format!("<b class=\"{class}\">{text}</b>"),
        None => text,
    }
}

#[cfg(test)]
mod tests {
    use dewrun_run::Tube;
    use dewrun_run::figure::{Figure, Spot};

    use super::*;

    #[test]
    fn figures_are_set_off_and_words_are_not() {
        let answer = Answer {
            sentence: vec![
                Part::figure(
                    "10.6 g/h".into(),
                    Emphasis::Water,
                    Figure::TubeWater,
                    Spot::tube(Tube::Intake),
                ),
                Part::words(" of water"),
            ],
            asides: vec![vec![Part::words("By model.")]],
            more: vec![vec![Part::words("Air moves.")]],
        };
        let opens = opening(
            Figure::TubeWater,
            Spot::tube(Tube::Intake),
            "dw-figure dw-figure--water",
            "10.6 g/h",
        );
        assert_eq!(
            sentence(&answer),
            format!("{opens} of water"),
            "the sentence"
        );
        assert_eq!(
            plain_sentence(&answer),
            "<b class=\"dw-figure dw-figure--water\">10.6 g/h</b> of water",
            "the sentence once more"
        );
        assert_eq!(
            asides(&answer),
            "<span>By model.</span> ",
            "what stands beside it"
        );
        let notes = ["It is cold.".to_owned(), "It is far.".to_owned()];
        assert_eq!(
            more(&answer, &notes),
            "<summary>Airflow, limits and 2 notes</summary><p><span>Air moves.</span> </p><ul><li>It is cold.</li><li>It is far.</li></ul>",
            "what is known besides"
        );
    }
}
