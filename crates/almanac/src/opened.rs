//! A figure of the year opened.

use dewrun_drawing::html::opening;
use dewrun_drawing::year::{Inputs, Year, opened};
use dewrun_run::Tube;
use dewrun_run::figure::{Figure, Spot};
use dewrun_season::figure::{YEAR_FIGURES, YearFigure};

/// The figure of that id as HTML; nothing where there is none.
pub(crate) fn figure(year: &Year, id: &str) -> String {
    let Some(figure) = named(id) else {
        return String::new();
    };
    let inputs: Vec<String> = figure.inputs.iter().filter_map(|id| input(id)).collect();
    opened(
        year,
        Inputs {
            id: figure.id,
            name: figure.name,
            relation: figure.relation,
            holds: figure.holds,
            source: figure.source,
            inputs: &inputs,
        },
    )
}

fn named(id: &str) -> Option<&'static YearFigure> {
    YEAR_FIGURES.iter().find(|figure| figure.id == id)
}

/// Another figure of the year, or one of the route in the hour that it shows, as what opens it.
fn input(id: &str) -> Option<String> {
    if let Some(figure) = named(id) {
        return Some(format!(
            "<button type=\"button\" class=\"dw-opens\" data-year-figure=\"{}\" aria-expanded=\"false\">{}</button>",
            figure.id, figure.name
        ));
    }
    let figure = Figure::from_id(id)?;
    Some(opening(figure, Spot::tube(Tube::Intake), "", figure.name()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_opens_and_so_does_all_it_follows_from() {
        for known in YEAR_FIGURES {
            let html = figure(&Year::default(), known.id);
            let buttons = html.matches("aria-expanded").count();
            assert_eq!(buttons, known.inputs.len(), "{}: {html}", known.id);
        }
        assert!(
            figure(&Year::default(), "year-nothing").is_empty(),
            "none of that name"
        );
    }
}
