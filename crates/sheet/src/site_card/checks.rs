//! What is checked before anybody leaves.

use dewrun_quantity::format::{entered_with, fixed};
use dewrun_quantity::{Mass, Style, Units};
use dewrun_run::Tube;
use dewrun_run::told::FromDuct;

use crate::markup::strong;
use crate::told::Told;

/// Water for the pouring test: half a litre, or twice what the walls hold, in halves of a litre.
const HALF_LITRE_G: f64 = 500.0;

/// Things to tick off.
pub(crate) fn items(told: &Told<'_>, style: Style) -> Vec<String> {
    let mut items = vec![
        "Every joint pushed home and sealed; none at a low point but the tee. Sleeves through walls sealed."
            .to_owned(),
        "Each leg falls as in the table, checked with a level. No sag seen, no hanger presses the tube."
            .to_owned(),
    ];
    items.extend(poured(told, style));
    if !told.trap_places(Tube::Intake).is_empty() || !told.trap_places(Tube::Exhaust).is_empty() {
        items.push(
            "Leg numbers and \u{201c}low point, drain here\u{201d} marked on the tube.".to_owned(),
        );
    } else {
        items.push("Leg numbers marked on the tube.".to_owned());
    }
    items.push(
        "Smoke at the duct end reaches the detector within the times below; a magnet or an electronic test does not replace it."
            .to_owned(),
    );
    if told.whole.intake.from_duct == FromDuct::LyingWater {
        items.push(format!(
            "{}: the tube enters the duct from below; no water lies in the duct there.",
            strong("From below")
        ));
    }
    items
}

/// Water poured in at the duct end comes out at the first trap of the intake tube, all but what the walls keep.
fn poured(told: &Told<'_>, style: Style) -> Option<String> {
    let trap = told
        .trap_places(Tube::Intake)
        .into_iter()
        .reduce(|one, next| one.min(next))?;
    let water = told.water(Tube::Intake)?;
    let before = water.legs.iter().filter(|leg| leg.report.to <= trap);
    let held: Mass = before.map(|leg| leg.report.holds).sum();
    let poured_g = HALF_LITRE_G * (2.0 * held.to_grams() / HALF_LITRE_G).ceil().max(1.0);
    let volume = |grams: f64| match style.units {
        Units::Si => entered_with((grams / 10.0).round() / 100.0, style.mark) + "\u{a0}L",
        // A US fluid ounce is 29.573 529 562 5 mL.
        Units::InchPound => fixed(grams / 29.573_53, 0, style.mark) + "\u{a0}fl oz",
    };
    Some(format!(
        "{} of water poured in at the duct end, fan off, comes out at the trap, all but {}.",
        strong(&volume(poured_g)),
        volume(held.to_grams())
    ))
}
