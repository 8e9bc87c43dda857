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
    let aside = |aside: &Vec<Part>| {
        let parts: String = aside.iter().map(part).collect();
        format!("<span>{parts}</span> ")
    };
    answer.asides.iter().map(aside).collect()
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
    }
}
