//! The section Sheets: the site card, the stopwatch, the form of a visit and the visits so far.

use dewrun_desk::{VisitField, style_of};
use dewrun_drawing::site_place;
use dewrun_quantity::Units;
use dewrun_run::Tube;

use super::visits::{list, places, whole};
use crate::asked::Asked;

pub(super) fn html(asked: &Asked<'_>) -> Result<String, String> {
    let (style, _) = style_of(asked.numbers);
    let places = places(whole(asked)?);
    let open = &asked.open.answered.project;
    let visits = open.project.runs.get(open.run);
    let visits = visits.map_or(&[][..], |run| run.visits.as_slice());
    let suction = places.suction.map_or_else(
        || "at the detector".to_owned(),
        |at| format!("at {}", site_place(at, style)),
    );
    let readings: String = VisitField::ALL
        .into_iter()
        .map(|one| {
            let label = match one {
                VisitField::Suction => format!("{} {suction}", one.label()),
                _ => one.label().to_owned(),
            };
            field(one.name(), &label, one.unit(style), "decimal")
        })
        .collect();
    let unit = match style.units {
        Units::Si => "g or mL",
        Units::InchPound => "oz",
    };
    let water: String = places
        .water
        .iter()
        .enumerate()
        .map(|(number, (tube, at))| {
            let tube = match tube {
                Tube::Intake => "intake",
                Tube::Exhaust => "exhaust",
            };
            let label = format!("Water at {} of the {tube} tube", site_place(*at, style));
            field(&format!("water-{number}"), &label, unit, "decimal")
        })
        .collect();
    Ok([
        CARD.to_owned(),
        SERVICE.to_owned(),
        CALCULATION.to_owned(),
        WATCH.to_owned(),
        FORM_BEGINS.to_owned(),
        readings,
        water,
        field("note", "Note", "", "text"),
        FORM_ENDS.to_owned(),
        format!(
            "<div class=\"dw-sheets__part\" role=\"group\" aria-labelledby=\"visits\"><h3 id=\"visits\" class=\"dw-air__name\">Visits so far</h3>{}</div>",
            list(visits, style)
        ),
    ]
    .concat())
}

const CARD: &str = "\
<div class=\"dw-sheets__part dw-sheets__part--wide\" role=\"group\" aria-labelledby=\"site-card\"><h3 id=\"site-card\" class=\"dw-air__name\">Site card</h3>\
<p>One sheet to hold in hand: levels, falls and drops, hangers, trap and drain, checks, what to measure. Its printed code opens this run on a phone.</p>\
<form class=\"dw-sheets__fields\" data-form=\"card\">\
<div class=\"dw-sheets__field\"><label for=\"card-paper\">Paper</label><select id=\"card-paper\" name=\"paper\"><option value=\"a4\">A4</option><option value=\"letter\">Letter</option></select></div>\
<div class=\"dw-sheets__field\"><label for=\"card-revision\">Revision</label><input id=\"card-revision\" name=\"revision\" type=\"text\" autocomplete=\"off\" maxlength=\"8\"></div>\
<div class=\"dw-sheets__field\"><label for=\"card-date\">Day</label><input id=\"card-date\" name=\"date\" type=\"date\"></div></form>\
<p class=\"dw-sheets__acts\"><button type=\"button\" class=\"dw-button\" data-do=\"print\">Print the site card</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"show\" aria-expanded=\"false\">Show it here</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"save\">Save as HTML</button></p>\
<p role=\"status\" data-room=\"said\"></p>\
<div class=\"dw-scroll dw-sheets__card\" data-room=\"card\" role=\"region\" aria-label=\"Site card\" tabindex=\"0\" hidden></div></div>";

const SERVICE: &str = "\
<div class=\"dw-sheets__part dw-sheets__part--wide\" role=\"group\" aria-labelledby=\"service-card\"><h3 id=\"service-card\" class=\"dw-air__name\">Service card</h3>\
<p>For whoever comes to a trouble: its cause as the section Troubles tells it, what cures it, intervals and limits, baseline readings, the order of checks, access, the visits so far. Paper, revision and day are those above.</p>\
<p class=\"dw-sheets__acts\"><button type=\"button\" class=\"dw-button\" data-do=\"print-service\">Print the service card</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"show-service\" aria-expanded=\"false\">Show it here</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"save-service\">Save as HTML</button></p>\
<p role=\"status\" data-room=\"said-service\"></p>\
<div class=\"dw-scroll dw-sheets__card\" data-room=\"service-card\" role=\"region\" aria-label=\"Service card\" tabindex=\"0\" hidden></div></div>";

const CALCULATION: &str = "\
<div class=\"dw-sheets__part dw-sheets__part--wide\" role=\"group\" aria-labelledby=\"calculation\"><h3 id=\"calculation\" class=\"dw-air__name\">Calculation sheet</h3>\
<p>Some pages for another engineer to check: inputs with their origin, relations with their sources, results, remedies, doubt, cautions, and room to sign. Paper, revision and day are those above.</p>\
<p class=\"dw-sheets__acts\"><button type=\"button\" class=\"dw-button\" data-do=\"print-calculation\">Print the calculation sheet</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"show-calculation\" aria-expanded=\"false\">Show it here</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"save-calculation\">Save as HTML</button></p>\
<p role=\"status\" data-room=\"said-calculation\"></p>\
<div class=\"dw-scroll dw-sheets__card\" data-room=\"calculation\" role=\"region\" aria-label=\"Calculation sheet\" tabindex=\"0\" hidden></div></div>";

const WATCH: &str = "\
<div class=\"dw-sheets__part\" role=\"group\" aria-labelledby=\"stopwatch\"><h3 id=\"stopwatch\" class=\"dw-air__name\">Stopwatch</h3>\
<p>One presses as the smoke is let go at the duct end, then as the detector reads its first trace, then as it reads nine tenths of it.</p>\
<button type=\"button\" class=\"dw-watch\" data-do=\"press\"><span data-room=\"press\">Smoke is at the duct</span><b class=\"dw-watch__time\" data-room=\"time\" aria-hidden=\"true\"></b></button>\
<div role=\"status\" data-room=\"taken\"></div>\
<p class=\"dw-sheets__acts\"><button type=\"button\" class=\"dw-button\" data-do=\"note\" disabled>Write it into the visit</button>\
<button type=\"button\" class=\"dw-button\" data-do=\"again\" disabled>Set back</button></p></div>";

const FORM_BEGINS: &str = "\
<form class=\"dw-sheets__part\" aria-labelledby=\"visit\" data-form=\"visit\" novalidate><h3 id=\"visit\" class=\"dw-air__name\">A visit</h3>\
<p>Readings become measured values; at hand-over the airflow is the one as fitted.</p>\
<div class=\"dw-sheets__fields\">\
<div class=\"dw-sheets__field\"><label for=\"visit-on\">Day</label><input id=\"visit-on\" name=\"on\" type=\"date\" aria-describedby=\"told-on\"><p class=\"dw-sheets__told\" id=\"told-on\" data-told=\"on\"></p></div>\
<div class=\"dw-sheets__field\"><label for=\"visit-by\">By</label><input id=\"visit-by\" name=\"by\" type=\"text\" autocomplete=\"name\"></div>\
<div class=\"dw-sheets__field\"><label for=\"visit-occasion\">Occasion</label><select id=\"visit-occasion\" name=\"occasion\"><option value=\"service\">Service</option><option value=\"as_fitted\">Hand-over, as fitted</option></select></div></div>\
<div class=\"dw-sheets__fields\">";

const FORM_ENDS: &str = "</div><p class=\"dw-sheets__acts\"><button type=\"submit\" class=\"dw-button\">Note the visit</button></p></form>";

/// A field under its label, with its unit and room for a sentence.
fn field(name: &str, label: &str, unit: &str, keypad: &str) -> String {
    let unit = if unit.is_empty() {
        String::new()
    } else {
        format!(" <span class=\"dw-unit\">{unit}</span>")
    };
    format!(
        "<div class=\"dw-sheets__field\"><label for=\"visit-{name}\">{label}{unit}</label>\
         <input id=\"visit-{name}\" name=\"{name}\" type=\"text\" inputmode=\"{keypad}\" autocomplete=\"off\" aria-describedby=\"told-{name}\">\
         <p class=\"dw-sheets__told\" id=\"told-{name}\" data-told=\"{name}\"></p></div>"
    )
}

#[cfg(test)]
mod tests {
    use super::field;

    #[test]
    fn a_field_has_its_label_and_room_for_a_sentence() {
        let html = field("note", "Note", "", "text");
        assert!(
            html.contains("<label for=\"visit-note\">Note</label>"),
            "{html}"
        );
        assert!(html.contains("aria-describedby=\"told-note\""), "{html}");
    }
}
