//! What became of a leg, in numbers that are ready to be shown.

use dewrun_quantity::format::DOES_NOT_APPLY;
use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH, WATER};
use dewrun_quantity::{MassFlow, Style};
use dewrun_run::{LegOutcome, Tube};
use leptos::prelude::*;

use crate::state::use_desk;

/// What became of a leg.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct LegResults {
    pub(super) air_at_end: String,
    pub(super) lowest_wall: String,
    pub(super) dew_point_at_end: String,
    pub(super) water: String,
    pub(super) frost: String,
    pub(super) sweat: String,
    pub(super) wet_from: String,
    /// Its water over that of the wettest leg, 0 to 1.
    pub(super) share: f64,
    pub(super) is_frozen: bool,
}

/// The results of a leg; none where the last answer has no such leg.
pub(super) fn use_leg_results(tube: Tube, at: usize) -> Memo<Option<LegResults>> {
    let desk = use_desk();
    Memo::new(move |_| {
        let answered = desk.answered()?;
        let style = desk.style();
        let legs = &answered.view(tube, style).answer()?.legs;
        let most = legs
            .iter()
            .map(|leg| leg.condensate)
            .fold(MassFlow::ZERO, MassFlow::max);
        Some(results(legs.get(at)?, most, style))
    })
}

fn results(leg: &LegOutcome, most: MassFlow, style: Style) -> LegResults {
    let water = |flow| WATER.show(flow, style).number;
    let celsius = |t| TEMPERATURE.show(t, style).number;
    let none = || DOES_NOT_APPLY.to_owned();
    LegResults {
        air_at_end: celsius(leg.air_at_end.temperature),
        lowest_wall: celsius(leg.lowest_wall),
        dew_point_at_end: leg.air_at_end.dew_point.map_or_else(none, celsius),
        water: water(leg.condensate),
        frost: water(leg.frost),
        sweat: water(leg.sweat),
        wet_from: leg
            .first_wet
            .map_or_else(none, |x| TUBE_LENGTH.show(x, style).number),
        share: if most == MassFlow::ZERO {
            0.0
        } else {
            leg.condensate / most
        },
        is_frozen: leg.condensate < leg.frost * 2.0,
    }
}

/// Which forms of water beside liquid there are in any leg, so that tables show only what there is.
pub(super) fn use_other_forms() -> Memo<(bool, bool)> {
    let desk = use_desk();
    Memo::new(move |_| {
        let Some(answered) = desk.answered() else {
            return (false, false);
        };
        let outcome = &answered.outcome;
        let tubes = core::iter::once(&outcome.intake).chain(outcome.exhaust.as_ref());
        tubes
            .flat_map(|tube| &tube.legs)
            .fold((false, false), |(frost, sweat), leg| {
                (
                    frost || leg.frost != MassFlow::ZERO,
                    sweat || leg.sweat != MassFlow::ZERO,
                )
            })
    })
}
