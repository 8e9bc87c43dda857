//! A figure that opens to where it comes from: its text as a button that names it.

use dewrun_run::figure::{Figure, Spot};

use crate::svg::escaped;

/// A figure as a button that opens it; `class` may set it off further.
///
/// The page listens for any element with `data-figure`: what is shown with it needs nothing else to be opened.
///
/// ```
/// use dewrun_drawing::html::opening;
/// use dewrun_run::Tube;
/// use dewrun_run::figure::{Figure, Spot};
/// let html = opening(Figure::LegWater, Spot::leg(Tube::Intake, 1), "", "7.2 g/h");
/// assert!(html.contains("data-figure=\"leg-water\" data-at=\"intake.1\""));
/// ```
#[must_use]
pub fn opening(figure: Figure, spot: Spot, class: &str, text: &str) -> String {
    let (id, text) = (figure.id(), escaped(text));
    let gap = if class.is_empty() { "" } else { " " };
    format!(
        "<button type=\"button\" class=\"dw-opens{gap}{class}\" data-figure=\"{id}\" data-at=\"{spot}\" aria-expanded=\"false\">{text}</button>"
    )
}
