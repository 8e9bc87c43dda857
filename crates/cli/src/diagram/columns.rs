//! What is drawn, as CSV: a name with its unit over each column.

use dewrun_advice::{BoundaryPoint, Limit};
use dewrun_drawing::View;
use dewrun_quantity::decimal::shortest;
use dewrun_run::told::Side;
use dewrun_run::{AirflowOutcome, TubeOutcome, fault_words};

use crate::year::quoted;

/// The legs: where they lie, how they rise, what forms in them.
pub(super) fn elevation(view: &View<'_>, tube: &TubeOutcome) -> String {
    let mut text = "leg,space,from_m,to_m,rise_m,water_g_h,frost_g_h,sweat_g_h\n".to_owned();
    for (at, (leg, outcome)) in view.legs().iter().zip(&tube.legs).enumerate() {
        let words = [
            view.leg_number(at).to_string(),
            quoted(view.space_name(leg.space)),
        ];
        let numbers = [
            outcome.from.to_metres(),
            outcome.to.to_metres(),
            leg.rise.to_metres(),
            outcome.condensate.to_grams_per_hour(),
            outcome.frost.to_grams_per_hour(),
            outcome.sweat.to_grams_per_hour(),
        ];
        row(&mut text, &words, &numbers.map(Some));
    }
    text
}

/// Every point of the march.
pub(super) fn profile(tube: &TubeOutcome) -> String {
    let mut text = "leg,x_m,air_c,inner_wall_c,outer_surface_c,dew_point_c,humidity_ratio_kg_kg,mist_kg_kg,deposit_g_h_m,frozen_share,sweat_g_h_m\n".to_owned();
    for point in &tube.profile {
        let numbers = [
            Some(point.x.to_metres()),
            Some(point.air.to_celsius()),
            Some(point.inner_wall.to_celsius()),
            Some(point.outer_surface.to_celsius()),
            point.dew_point.map(|dew_point| dew_point.to_celsius()),
            Some(point.humidity_ratio.to_kilograms_per_kilogram()),
            Some(point.mist.to_kilograms_per_kilogram()),
            Some(point.deposit.to_grams_per_hour_metre()),
            Some(point.frozen_share),
            Some(point.sweat.to_grams_per_hour_metre()),
        ];
        row(&mut text, &[(point.leg + 1).to_string()], &numbers);
    }
    text
}

/// The path of the air and of the inner wall, then the dry boundary.
pub(super) fn dew_square(tube: &TubeOutcome, boundary: &[BoundaryPoint]) -> String {
    let mut text = "curve,temperature_c,dew_point_c\n".to_owned();
    for (name, is_wall) in [("air", false), ("inner wall", true)] {
        for point in &tube.profile {
            let temperature = if is_wall { point.inner_wall } else { point.air };
            let numbers = [
                Some(temperature.to_celsius()),
                point.dew_point.map(|dew_point| dew_point.to_celsius()),
            ];
            row(&mut text, &[name.to_owned()], &numbers);
        }
    }
    for point in boundary {
        // Where any duct air of that temperature stays dry, or none does, there is no point.
        let Limit::At(dew_point) = point.dew_point else {
            continue;
        };
        let numbers = [point.temperature.to_celsius(), dew_point.to_celsius()];
        row(&mut text, &["dry boundary".to_owned()], &numbers.map(Some));
    }
    text
}

/// Pressures along the path of the air.
pub(super) fn pressure(air: &AirflowOutcome) -> String {
    let mut text = "tube,x_m,pressure_pa\n".to_owned();
    for point in &air.now.course {
        let tube = match point.side {
            Side::Intake => "intake",
            Side::Exhaust => "exhaust",
        };
        let numbers = [point.at.to_metres(), point.pressure.to_pascals()];
        row(&mut text, &[tube.to_owned()], &numbers.map(Some));
    }
    text
}

/// What drives the flow and what it costs.
pub(super) fn budget(air: &AirflowOutcome) -> String {
    let budget = &air.now.budget;
    let mut text = "part,pressure_pa\n".to_owned();
    for (part, pressure) in [
        ("fan", budget.fan),
        ("duct", budget.ends),
        ("holes", budget.inlet),
        ("intake", budget.intake.spent()),
        ("filter", budget.filter),
        ("chamber", budget.chamber),
        ("exhaust", budget.exhaust.spent()),
        ("outlet", budget.outlet),
    ] {
        row(
            &mut text,
            &[part.to_owned()],
            &[Some(pressure.to_pascals())],
        );
    }
    text
}

/// From the duct to the sensor; nothing but the head where no duct air arrives.
pub(super) fn transport(air: &AirflowOutcome) -> String {
    let mut text = "first_s,plug_s,ninety_percent_s\n".to_owned();
    if let Some(band) = air.now.transport {
        let times = [band.first, band.plug, band.ninety_percent];
        row(&mut text, &[], &times.map(|time| Some(time.to_seconds())));
    }
    text
}

/// States and faults.
pub(super) fn limits(air: &AirflowOutcome) -> String {
    let mut text = "state_or_fault,at_m,flow_l_min,reading_percent,share_percent\n".to_owned();
    for state in &air.states {
        let numbers = [
            None,
            Some(state.airflow.sensor.to_litres_per_minute()),
            Some(100.0 * state.reading),
            Some(100.0 * state.airflow.share),
        ];
        row(&mut text, &[quoted(&state.state.words())], &numbers);
    }
    for fault in &air.faults {
        let (words, at) = fault_words(fault.fault);
        let name = match at {
            Some((dewrun_run::Tube::Intake, _)) => format!("intake {words}"),
            Some((dewrun_run::Tube::Exhaust, _)) => format!("exhaust {words}"),
            None => words.to_owned(),
        };
        let numbers = [
            at.map(|(_, metres)| metres),
            Some(fault.airflow.sensor.to_litres_per_minute()),
            Some(100.0 * fault.reading),
            Some(100.0 * fault.airflow.share),
        ];
        row(&mut text, &[quoted(&name)], &numbers);
    }
    text
}

fn row(text: &mut String, words: &[String], numbers: &[Option<f64>]) {
    let mut cells = words.to_vec();
    cells.extend(numbers.iter().map(|number| {
        let number = number.filter(|number| number.is_finite());
        number.map_or_else(String::new, shortest)
    }));
    text.push_str(&cells.join(","));
    text.push('\n');
}
