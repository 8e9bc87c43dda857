//! A project as it stands in one hour of its year, so that the route shows that hour.

use dewrun_document::{AirPair, Humidity, Input, Over, Project, Relative, Space, read, write};
use dewrun_run::Run;
use dewrun_run::air::{Humidity as RunHumidity, Over as RunOver, Pair};
use dewrun_season::{air_in_duct, moment, outdoors, run_at};

use crate::year::Found;

/// The project of a year with the duct's air and the spaces of one of its steps, typed.
///
/// # Errors
/// Why there is none, as a sentence.
pub(crate) fn project_at(found: &Found, at: usize) -> Result<String, String> {
    let run = run_in(found, at).ok_or("this hour can't be shown")?;
    let mut project = read(&found.of.project).map_err(|error| error.to_string())?;
    put(&mut project, found, &run);
    write(&project).map_err(|error| error.to_string())
}

/// The run in a step.
fn run_in(found: &Found, at: usize) -> Option<Run> {
    let series = &found.of.weather.series;
    let row = *found.rows.get(at)?;
    let outdoors = outdoors(series, row)?;
    let start_s = *series.start_s.get(row)?;
    let step = (start_s, series.timing.step_s);
    let in_duct = found.of.climate().measured;
    let read = in_duct.and_then(|read| air_in_duct(read, step, outdoors.p_pa));
    let moment = moment(start_s)?;
    Some(run_at(&found.run, &found.season, moment, &outdoors, read))
}

fn put(project: &mut Project, found: &Found, run: &Run) {
    if let Pair::Temperature(temperature, humidity) = run.duct_air
        && let Some(entered) = project.runs.get_mut(found.of.run)
    {
        entered.duct.air = AirPair::Temperature {
            temperature_c: degrees(temperature.to_celsius()),
            humidity: as_entered(humidity),
        };
    }
    let spaces = project.spaces.iter_mut().zip(&run.spaces);
    for ((space, now), before) in spaces.zip(&found.run.spaces) {
        let moved = now.temperature.to_celsius() - before.temperature.to_celsius();
        // A space that is as it was entered keeps what was said of it.
        if 0.005 < moved.abs() {
            put_space(space, now);
        }
    }
}

fn put_space(space: &mut Space, now: &dewrun_run::Space) {
    space.temperature_c = degrees(now.temperature.to_celsius());
    space.humidity = as_entered(now.humidity);
    space.radiant_c = now
        .radiant
        .map(|temperature| degrees(temperature.to_celsius()));
    space.wind_m_s = Input::typed(hundredths(now.wind.to_metres_per_second()));
}

fn as_entered(humidity: RunHumidity) -> Humidity {
    let (percent, over) = match humidity {
        RunHumidity::Relative { value, over } => (value.to_percent(), over),
        // The hours of a year have no other.
        _ => (0.0, RunOver::Water),
    };
    Humidity::Relative(Relative {
        percent: Input::typed(hundredths(percent)),
        over: if over == RunOver::Ice {
            Over::Ice
        } else {
            Over::Water
        },
    })
}

fn degrees(celsius: f64) -> Input<f64> {
    Input::typed(hundredths(celsius))
}

/// No weather file is better than this.
fn hundredths(value: f64) -> f64 {
    (100.0 * value).round() / 100.0
}
