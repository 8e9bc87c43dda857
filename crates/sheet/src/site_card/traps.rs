//! Traps and drains: where they are or belong, what they need, how they are emptied.

use dewrun_document::Access;
use dewrun_drawing::site_place;
use dewrun_quantity::format::{fixed, significant};
use dewrun_quantity::measure::WATER;
use dewrun_quantity::{Length, Mass, Pressure, Style, Time, Units};
use dewrun_run::figure::Figure;
use dewrun_run::{Drain, FilterOnSite, Proposal, Trap, TrapOutcome, Tube, on_site};

use crate::markup::strong;
use crate::told::{Told, called, reached};

/// More than this between two visits is too much to carry away by hand.
const BY_HAND: Mass = Mass::kilograms(2.0);
/// Up to here a time is told in hours.
const HOURS: Time = Time::hours(72.0);

/// An item for each trap that is there or missing, then how water is let out.
pub(crate) fn items(told: &Told<'_>, style: Style) -> Vec<String> {
    let mut items = Vec::new();
    let mut by_hand: Option<Pressure> = None;
    for tube in [Tube::Intake, Tube::Exhaust] {
        let Some(water) = told.water(tube) else {
            continue;
        };
        for (trap, outcome) in told.traps(tube).iter().zip(&water.traps) {
            items.push(there(told, tube, (trap, outcome), style));
            if trap.drain != Drain::ByItself {
                by_hand = by_hand.or(Some(outcome.running));
            }
        }
        for proposal in &water.proposals {
            items.push(missing(told, tube, proposal, style));
            if let Some(at) = proposal.trap.at {
                let drawn = || pressure_in_intake(told, tube, at);
                by_hand = by_hand.or_else(drawn);
            }
        }
    }
    if items.is_empty() {
        items.push(
            "None needed: in the conditions entered no water gathers anywhere in the tubes."
                .to_owned(),
        );
    } else {
        items.push(to_empty(by_hand, style));
    }
    items
}

/// A trap that is there.
fn there(
    told: &Told<'_>,
    tube: Tube,
    (trap, outcome): (&Trap, &TrapOutcome),
    style: Style,
) -> String {
    let place = place(told, tube, trap.at, style);
    let comes = WATER.show(outcome.rate, style);
    match trap.drain {
        Drain::ByHand => {
            let size = amount(trap.capacity, style);
            let full = outcome.full.map_or_else(
                || "it does not fill".to_owned(),
                |full| format!("full after {}", time(full, style)),
            );
            format!(
                "Trap {place}: drained by hand, {}, {comes} come to it, {full}. Empty it every {}.",
                strong(&size),
                strong(&interval(told, outcome, style))
            )
        }
        Drain::ByItself => {
            let ok = |is_enough: bool| if is_enough { "" } else { ", it has less" };
            format!(
                "Trap {place}: drains itself, {comes}. Outlet at least {}{} under the tube, seal at least {}{}.",
                strong(&at_least(outcome.needs.outlet_drop, style)),
                ok(outcome.drop_is_enough),
                strong(&at_least(outcome.needs.seal, style)),
                ok(outcome.seal_is_enough),
            )
        }
        Drain::OpenStub => {
            let holds = at_least(outcome.opened.head, style);
            format!(
                "Bare stub {place}: the suction holds {holds} of water in it and it does not drain. Put a trap in its place."
            )
        }
    }
}

/// A trap that is missing.
fn missing(told: &Told<'_>, tube: Tube, proposal: &Proposal, style: Style) -> String {
    let comes = WATER.show(proposal.trap.rate, style);
    let Some(at) = proposal.trap.at else {
        let low = site_place(proposal.trap.low_point, style);
        return format!(
            "{}: no place that can be reached drains the low point at {low} of the {}; {comes} come to it. Make one.",
            strong("Trap missing"),
            called(tube)
        );
    };
    let place = place(told, tube, at, style);
    let itself = format!(
        "draining itself: outlet {} under the tube, seal {}",
        strong(&at_least(proposal.needs.outlet_drop, style)),
        strong(&at_least(proposal.needs.seal, style)),
    );
    let by_hand = if proposal.capacity <= BY_HAND {
        format!(
            "; or {} between two valves, emptied every {}",
            strong(&amount(proposal.capacity, style)),
            time(told.installation.drain_interval, style)
        )
    } else {
        String::new()
    };
    format!(
        "{} {place}: tee pointing down, full bore; {comes} come to it; {itself}{by_hand}.",
        strong("Fit a trap")
    )
}

/// How water is let out of a tube that the fan draws on.
fn to_empty(by_hand: Option<Pressure>, style: Style) -> String {
    let head = strong("To empty:");
    let Some(pressure) = by_hand else {
        return format!(
            "{head} fan off under the impairment procedure before a seal is opened; fill it again."
        );
    };
    let gauge = |pressure: Pressure| {
        let shown = Figure::TrapPressure.kind();
        shown.show(pressure.to_pascals(), style).to_string()
    };
    if pressure < Pressure::ZERO {
        return format!(
            "{head} the tube is under suction there, {}: opened, the valve draws air in and gives no water. Fan off under the impairment procedure, or a pot between two valves. Shut it, note grams and airflow.",
            gauge(Pressure::ZERO - pressure)
        );
    }
    format!(
        "{head} the tube is under pressure there, {}: opened, the valve blows. Shut it, note grams and airflow.",
        gauge(pressure)
    )
}

/// Where a trap is and from where it is reached.
fn place(told: &Told<'_>, tube: Tube, at: Length, style: Style) -> String {
    let at_words = site_place(at, style);
    let reach = match told.access(tube, at) {
        None | Some(Access::None) => "out of reach".to_owned(),
        Some(access) => format!("reached from {}", reached(access)),
    };
    format!(
        "{} of the {}, {reach}",
        strong(&format!("at {at_words}")),
        called(tube)
    )
}

/// Pressure in the intake tube at a place against the room; none in the exhaust, where the fan blows.
fn pressure_in_intake(told: &Told<'_>, tube: Tube, at: Length) -> Option<Pressure> {
    let expected = on_site(&told.whole.airflow, FilterOnSite::New, Some(at));
    (tube == Tube::Intake).then_some(Pressure::ZERO - expected.suction.usual)
}

/// How long a trap may wait: half the time in which it fills, and no longer than the drain interval.
fn interval(told: &Told<'_>, trap: &TrapOutcome, style: Style) -> String {
    let entered = told.installation.drain_interval;
    let half = trap.full.map(|full| full * 0.5);
    time(half.map_or(entered, |half| half.min(entered)), style)
}

fn time(time: Time, style: Style) -> String {
    let (number, unit) = if time < HOURS {
        (time.to_hours(), "h")
    } else {
        (time.to_days(), "days")
    };
    format!("{}\u{a0}{unit}", significant(number, 2, 1, style.mark))
}

fn amount(water: Mass, style: Style) -> String {
    Figure::TrapSize
        .kind()
        .show(water.to_grams(), style)
        .to_string()
}

/// A height that something must have, rounded up to what a rule shows.
fn at_least(height: Length, style: Style) -> String {
    match style.units {
        Units::Si => fixed(height.to_millimetres().ceil(), 0, style.mark) + "\u{a0}mm",
        Units::InchPound => {
            fixed((height.to_inches() * 10.0).ceil() / 10.0, 1, style.mark) + "\u{a0}in"
        }
    }
}
