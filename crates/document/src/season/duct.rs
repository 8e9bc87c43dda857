//! The air of a duct through the year.

use dewrun_quantity::DecimalMark;
use dewrun_quantity::format::fixed;
use dewrun_season::told::{Coil, Humidifier};
use dewrun_season::{Change, Room, Source, Step};

use super::YearSaid;
use super::period::{rule, schedule};
use crate::field_path::Here;
use crate::{
    AirFrom, AirPair, AirSource, AirStep, AirStepKind, DocumentError, Duct, Input, Origin,
};

impl YearSaid {
    /// What is said of a duct, or assumed by the row of its air.
    pub(super) fn duct(
        &mut self,
        duct: &Duct,
        run_index: usize,
        air: Room,
    ) -> Result<(), DocumentError> {
        let runs = Here::at("runs");
        let run = runs.index(run_index);
        let at = run.field("duct");
        if let Some(off) = &duct.fan_off {
            let off = off.get_at(&at.field("fan_off"))?;
            self.season.fan_off = off.iter().map(|period| rule(period, 1.0)).collect();
        }
        match &duct.source {
            Some(source) => {
                let source = source.get_at(&at.field("source"))?;
                self.season.source = source_of(&source, air);
                self.season.steps = source.steps.iter().map(step).collect();
                if let Some(file) = &source.file {
                    let at = at.field("source");
                    file.understanding_at(&at.field("file"))?;
                }
                self.measured = source.file;
            }
            None => self.by_row(row_of(&duct.air), air),
        }
        Ok(())
    }

    /// Where nothing is said: what the kind of duct air is known for.
    fn by_row(&mut self, row: Option<&str>, air: Room) {
        let at = fixed(air.temperature_c, 1, DecimalMark::Point);
        let always = |change| Step {
            change,
            when: Vec::new(),
        };
        let (steps, said) = match row {
            Some("make-up-heated") => (
                vec![always(Change::Heated(air.temperature_c))],
                format!("outdoor air, heated to {at} °C where it is colder"),
            ),
            Some("make-up-cooled" | "after-coil") => (
                vec![always(Change::Cooled(Coil {
                    apparatus_c: air.temperature_c,
                    bypass: 0.0,
                }))],
                format!("outdoor air, cooled to {at} °C by a coil where it is warmer"),
            ),
            Some("after-humidifier") => (
                vec![
                    always(Change::Heated(air.temperature_c)),
                    always(Change::Humidified(air.humidity, Humidifier::Steam)),
                ],
                format!("outdoor air, heated to {at} °C and humidified by steam as entered"),
            ),
            Some("pool-hall" | "laundry" | "shower" | "kitchen-exhaust" | "return") => {
                self.season.source = room(air);
                (Vec::new(), format!("as entered all year, at {at} °C"))
            }
            _ => (Vec::new(), "outdoor air as it is".to_owned()),
        };
        self.season.steps = steps;
        self.said.push(format!(
            "Nothing says where the air of the duct comes from; it is taken as {said}."
        ));
    }
}

fn room(air: Room) -> Source {
    let [temperature_c, humidity] =
        [air.temperature_c, air.humidity].map(dewrun_season::told::Schedule::fixed);
    Source::Room {
        temperature_c,
        humidity,
    }
}

/// The row of the library that the temperature, or the dew point, of an air was taken from.
fn row_of(air: &AirPair) -> Option<&str> {
    let (AirPair::Temperature {
        temperature_c: input,
        ..
    }
    | AirPair::DewPointAndRelative {
        dew_point_c: input, ..
    }
    | AirPair::FrostPointAndRelative {
        frost_point_c: input,
        ..
    }
    | AirPair::RatioAndRelative {
        ratio_kg_kg: input, ..
    }) = air;
    match &input.origin {
        Origin::Assumed { row, .. } => Some(row),
        Origin::Typed | Origin::Measured { .. } => None,
    }
}

fn source_of(source: &AirSource, air: Room) -> Source {
    match source.from {
        AirFrom::Outdoors => Source::Outdoors,
        AirFrom::Measured => Source::Measured,
        AirFrom::Room => {
            let entered = |given: &Option<Input<f64>>, scale, otherwise| {
                given
                    .as_ref()
                    .map_or(otherwise, |given| scale * given.value)
            };
            let settings = &source.settings;
            let celsius = entered(&source.temperature_c, 1.0, air.temperature_c);
            let humidity = entered(&source.percent, 0.01, air.humidity);
            Source::Room {
                temperature_c: schedule(settings, |one| one.temperature_c.as_ref(), 1.0, celsius),
                humidity: schedule(settings, |one| one.percent.as_ref(), 0.01, humidity),
            }
        }
    }
}

/// A step; what it must have, it has: that was checked.
fn step(step: &AirStep) -> Step {
    let value = |input: &Option<Input<f64>>| input.as_ref().map_or(0.0, |input| input.value);
    let celsius = value(&step.temperature_c);
    let humidity = (0.01 * value(&step.percent)).min(1.0);
    let share = value(&step.share);
    let room = Room {
        temperature_c: celsius,
        humidity,
    };
    let change = match step.kind {
        AirStepKind::Heated => Change::Heated(celsius),
        AirStepKind::Cooled => Change::Cooled(Coil {
            apparatus_c: celsius,
            bypass: share,
        }),
        AirStepKind::Mixed => Change::Mixed(room, share),
        AirStepKind::Humidified => {
            let water = step.temperature_c.as_ref();
            let by = water.map_or(Humidifier::Steam, |water| Humidifier::Water(water.value));
            Change::Humidified(humidity, by)
        }
        AirStepKind::Recovered => Change::Recovered(room, share, value(&step.moisture_share)),
    };
    Step {
        change,
        when: step.when.iter().map(|period| rule(period, 1.0)).collect(),
    }
}
