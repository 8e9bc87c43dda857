//! A figure opened to where it comes from.

use dewrun_desk::style_of;
use dewrun_drawing::html::{Origins, opened};
use dewrun_run::figure::{Figure, Spot};

use crate::asked::Asked;

pub(super) fn html(asked: &Asked<'_>) -> Result<String, String> {
    let mut words = asked.words.split(' ');
    let figure = words.next().and_then(Figure::from_id);
    let spot = words.next().and_then(Spot::parse);
    let before = words.next().and_then(Figure::from_id);
    let Some(step) = figure.zip(spot) else {
        return Err(format!("\u{201c}{}\u{201d} is no figure", asked.words));
    };
    let (style, _) = style_of(asked.numbers);
    let open = &asked.open;
    let origins = Origins {
        givens: open.givens(),
        ranked: open.ranked(),
        whole: open.whole().ok(),
    };
    Ok(opened(
        &open.answered.view(step.1.tube, style),
        origins,
        step,
        before,
    ))
}
