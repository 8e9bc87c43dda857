//! The answer's sentences with their figures set off.

use crate::answer::{Answer, Emphasis, Part};
use crate::svg::escaped;

/// The one sentence.
#[must_use]
pub fn sentence(answer: &Answer) -> String {
    parts(&answer.sentence)
}

/// What stands beside it, an element each.
#[must_use]
pub fn asides(answer: &Answer) -> String {
    let aside = |aside: &Vec<Part>| format!("<span>{}</span> ", parts(aside));
    answer.asides.iter().map(aside).collect()
}

fn parts(parts: &[Part]) -> String {
    parts.iter().map(part).collect()
}

fn part(part: &Part) -> String {
    let text = escaped(&part.text);
    let class = match part.emphasis {
        Emphasis::None => return text,
        Emphasis::Strong => "",
        Emphasis::Water => " dw-figure--water",
        Emphasis::Frost => " dw-figure--frost",
        Emphasis::Mist => " dw-figure--mist",
        Emphasis::Sweat => " dw-figure--sweat",
    };
    format!("<b class=\"dw-figure{class}\">{text}</b>")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_set_off_and_words_are_not() {
        let answer = Answer {
            sentence: vec![
                Part::figure("10.6 g/h".into(), Emphasis::Water, "intake.condensate_g_h"),
                Part::words(" of water"),
            ],
            asides: vec![vec![Part::words("By model.")]],
        };
        assert_eq!(
            sentence(&answer),
            "<b class=\"dw-figure dw-figure--water\">10.6 g/h</b> of water",
            "the sentence"
        );
        assert_eq!(
            asides(&answer),
            "<span>By model.</span> ",
            "what stands beside it"
        );
    }
}
