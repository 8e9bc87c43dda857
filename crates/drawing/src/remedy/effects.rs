//! What else comes of a remedy, and what is left of it when its power fails.

use dewrun_quantity::format::{amount, fixed};
use dewrun_quantity::measure::TEMPERATURE;
use dewrun_quantity::{Style, Temperature};
use dewrun_remedies::{Kind, Left, Powered, Tried};
use dewrun_run::figure::Kind as Shown;
use dewrun_run::{Verdict, WET_TUBE_G_H};

use crate::wording;

/// Another flow by this part is told, and asks for other limits.
const OTHER_FLOW: f64 = 0.01;
/// A longer way of the smoke by this is told, s.
const LONGER_S: f64 = 0.5;

/// What else comes of a remedy, beside what is left; the gravest first.
#[must_use]
pub fn side_effects(before: &Left, tried: &Tried, style: Style) -> Vec<String> {
    let mut told = Vec::new();
    let (was, is) = (&before.entered, &tried.left.entered);
    let sweats = |left: &Left| WET_TUBE_G_H < left.entered.sweat.to_grams_per_hour();
    if sweats(&tried.left) && is.sweat.to_grams_per_hour() > 1.1 * was.sweat.to_grams_per_hour() {
        let rate = wording::water(is.sweat, style);
        told.push(format!("sweats outside, {rate} as entered"));
    }
    if let (Some(was), Some(is)) = (&was.air, &is.air) {
        let seconds = |transport: Option<[dewrun_quantity::Time; 2]>| {
            transport.map(|[_, ninety]| ninety.to_seconds())
        };
        if let (Some(was), Some(is)) = (seconds(was.transport), seconds(is.transport))
            && was + LONGER_S < is
        {
            let longer = amount(is - was, 1, style.mark);
            told.push(format!("the smoke takes {longer}\u{a0}s longer"));
        }
        let (was, is) = (
            was.flow.to_litres_per_minute(),
            is.flow.to_litres_per_minute(),
        );
        if OTHER_FLOW * was.abs() < (is - was).abs() {
            let flow = wording::measured(Shown::Flow, is, style);
            told.push(format!("airflow {flow}: set the limits anew"));
        }
    }
    if tried.kinds.contains(&Kind::Trap) {
        told.push("drained by hand: under suction a valve draws air in".to_owned());
    }
    if tried.kinds.contains(&Kind::Insulate) || tried.kinds.contains(&Kind::Trace) {
        told.push("of a kind the code allows there".to_owned());
    }
    if let Some(powered) = &tried.powered {
        told.extend(power(powered, style));
    }
    told
}

fn power(powered: &Powered, style: Style) -> Vec<String> {
    let kwh = |energy: f64| format!("{}\u{a0}kWh", fixed(energy, 0, style.mark));
    let celsius = |one: Temperature| TEMPERATURE.show(one, style).to_string();
    let mut power = wording::measured(Shown::Heat, powered.power.to_watts(), style);
    if let Some(energy) = powered.energy_kwh {
        power.push_str(&format!(", {} a year always on", kwh(energy)));
    }
    if let Some(thermostat) = powered.thermostat {
        let at = celsius(Temperature::celsius(thermostat.on_up_to_c));
        power.push_str(&format!(
            ", {} with a thermostat that is on up to {at}",
            kwh(thermostat.energy_kwh)
        ));
    }
    let mut told = vec![power];
    if let Some(hot) = powered.stuck_on {
        let bears = powered
            .bears
            .map(|most| format!(", the tube bears {}", celsius(most)));
        told.push(format!(
            "stuck on and without flow the tube gets {}{}",
            celsius(hot),
            bears.unwrap_or_default()
        ));
    }
    told
}

/// What is left when its power has failed.
#[must_use]
pub fn failed(powered: &Powered, style: Style) -> String {
    let left = &powered.failed;
    let mut told = Vec::new();
    told.push(match left.entered.verdict {
        Verdict::Dry => "dry as entered".to_owned(),
        Verdict::Wet => wording::water(left.entered.forms, style),
    });
    if let Some(year) = &left.year {
        told.push(format!(
            "{}\u{a0}wet h",
            fixed(year.wet_hours + 0.0, 0, style.mark)
        ));
    }
    if left.entered.is_blind() {
        told.push("may be blind".to_owned());
    }
    told.join(", ")
}
