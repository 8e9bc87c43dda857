//! What a run would still take dry, in words: three limits, each beside what there is now.

use dewrun_advice::{Limit, SpaceLimit, StayingDry, TubeLimit};
use dewrun_quantity::measure::{TEMPERATURE, TUBE_LENGTH, Written};
use dewrun_quantity::{Style, Temperature};

use dewrun_run::figure::{Figure, Spot};
use dewrun_run::{Place, Tube};

use crate::view::View;
use crate::wording::{celsius, metres};

/// The tube whose limits they are.
const INTAKE: Spot = Spot::tube(Tube::Intake);

/// One limit in words.
#[derive(Debug, Clone, PartialEq)]
pub struct DryLimit {
    /// The figure that the limit is.
    pub figure: Figure,
    /// The figure that it stands beside, and where that is read.
    pub beside: (Figure, Spot),
    /// What may go so far.
    pub name: &'static str,
    /// How far, or a word where there is no limit.
    pub limit: Written,
    /// Of what, and where.
    pub words: String,
    /// What there is now.
    pub now: String,
}

/// The most humid duct air, the coldest space and the longest tube that stay dry, one change at a time.
#[must_use]
pub fn dry_limits(view: &View<'_>, found: &StayingDry) -> [DryLimit; 3] {
    [
        duct_air(view, found),
        space(view, &found.space),
        tube(view, &found.tube),
    ]
}

fn duct_air(view: &View<'_>, found: &StayingDry) -> DryLimit {
    let t = celsius(found.duct_temperature, view.style);
    let now = view.outcome.duct_air.dew_point;
    DryLimit {
        figure: Figure::BoundaryDewPoint,
        beside: (Figure::InletDewPoint, INTAKE),
        name: "Most humid duct air",
        limit: limit(found.duct_air, |t| TEMPERATURE.show(t, view.style)),
        words: match found.duct_air {
            Limit::At(_) => format!("dew point at {t}"),
            Limit::Any => format!("even saturated at {t}"),
            Limit::Never => "wet however dry".to_owned(),
        },
        now: now.map_or_else(String::new, |t| {
            format!("now {}", TEMPERATURE.show(t, view.style).number)
        }),
    }
}

fn space(view: &View<'_>, found: &SpaceLimit) -> DryLimit {
    let names: Vec<&str> = found.spaces.iter().map(|at| view.space_name(*at)).collect();
    let words = match (&found.temperature, names.as_slice()) {
        (Limit::Any, _) => "however cold the spaces".to_owned(),
        (Limit::Never, _) => "wet however warm the spaces".to_owned(),
        (_, [one]) => (*one).to_owned(),
        (_, [one, other]) => format!("{one} and {other} alike"),
        (_, all) => format!("{} spaces alike", all.len()),
    };
    let first = found.spaces.first().map(|at| Place::Space(*at));
    let spot = first.and_then(|place| Spot::of_place(place, view.run));
    DryLimit {
        figure: Figure::BoundarySpace,
        beside: (Figure::SpaceTemperature, spot.unwrap_or(INTAKE)),
        name: "Coldest space",
        limit: limit(found.temperature, |t| TEMPERATURE.show(t, view.style)),
        words,
        now: spaces_now(view, &found.spaces),
    }
}

/// The temperatures that the spaces have now: each of one or two, the ends of more.
fn spaces_now(view: &View<'_>, spaces: &[usize]) -> String {
    let at = |place: &usize| view.run.spaces.get(*place);
    let now: Vec<Temperature> = spaces
        .iter()
        .filter_map(at)
        .map(|s| s.temperature)
        .collect();
    let entered = |t: Temperature, style: Style| TEMPERATURE.show_entered(t, style).number;
    let (Some(low), Some(high)) = (
        now.iter().copied().reduce(Temperature::min),
        now.iter().copied().reduce(Temperature::max),
    ) else {
        return String::new();
    };
    let joint = if now.len() == 2 { "and" } else { "to" };
    let [low, high] = match now.as_slice() {
        [one, other] => [*one, *other],
        _ => [low, high],
    }
    .map(|t| entered(t, view.style));
    if low == high {
        return format!("now {low}");
    }
    format!("now {low} {joint} {high}")
}

fn tube(view: &View<'_>, found: &TubeLimit) -> DryLimit {
    let whole_m: f64 = view
        .run
        .intake
        .iter()
        .map(|leg| leg.length.to_metres())
        .sum();
    let whole = metres(whole_m, view.style);
    let last = view.run.intake.len().saturating_sub(1);
    DryLimit {
        figure: Figure::BoundaryLength,
        beside: (Figure::LegTo, Spot::leg(Tube::Intake, last)),
        name: "Longest tube",
        limit: limit(found.length, |length| TUBE_LENGTH.show(length, view.style)),
        words: match found.length {
            Limit::At(_) => ending(view, found),
            Limit::Any => "the whole intake as drawn".to_owned(),
            Limit::Never => "wet from the duct on".to_owned(),
        },
        now: format!("now {}", whole.split('\u{a0}').next().unwrap_or_default()),
    }
}

/// Where along the route the longest dry tube ends.
fn ending(view: &View<'_>, found: &TubeLimit) -> String {
    let space_of = |leg: usize| view.run.intake.get(leg).map(|leg| leg.space);
    let number = found.leg + 1;
    let next = space_of(found.leg + 1).filter(|next| Some(*next) != space_of(found.leg));
    match next {
        Some(next) if found.at_end_of_leg => format!("up to {}", view.space_name(next)),
        _ if found.at_end_of_leg => format!("to the end of leg {number}"),
        _ => {
            let name = space_of(found.leg).map_or("", |space| view.space_name(space));
            format!("ends in leg {number}, {name}")
        }
    }
}

/// The limit, or a word for none.
fn limit<T>(found: Limit<T>, show: impl FnOnce(T) -> Written) -> Written {
    let word = |word: &str| Written {
        number: word.to_owned(),
        unit: "",
    };
    match found {
        Limit::At(value) => show(value),
        Limit::Any => word("any"),
        Limit::Never => word("none"),
    }
}
