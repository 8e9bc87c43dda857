//! A run's inputs, checked and turned into what the tube takes.

use dewrun_moist_air::{Humidity, MoistAir, Pair};
use dewrun_quantity::Pressure;
use dewrun_tube::{Factors, Segment};

use crate::error::{Place, RunError, RunNote, Tube};
use crate::input::{FlowAt, Leg, Run, Space};
use crate::insulation_note::insulation_note;
use crate::range::{self, Limits};

/// A run whose inputs are checked and turned into what the tube takes.
pub(crate) struct Prepared {
    pub(crate) p_pa: f64,
    pub(crate) t_c: f64,
    pub(crate) w: f64,
    pub(crate) flow_m3_s: f64,
    pub(crate) flow_at: FlowAt,
    pub(crate) heat_w: f64,
    pub(crate) factors: Factors,
    pub(crate) intake: Vec<Segment>,
    pub(crate) exhaust: Vec<Segment>,
}

impl Prepared {
    pub(crate) fn new(run: &Run, notes: &mut Vec<RunNote>) -> Result<Self, RunError> {
        let p_pa = range::PRESSURE.check(Place::Run, run.pressure.to_pascals())?;
        let flow = range::FLOW.check(Place::Flow, run.flow.volume.to_litres_per_minute())?;
        let heat_w = range::DETECTOR_HEAT.check(Place::Detector, run.detector.heat.to_watts())?;
        if run.intake.is_empty() {
            return Err(RunError::NoLegs);
        }
        let air = state(run.duct_air, run.pressure, Place::DuctAir, notes)?;
        let spaces = spaces(run, notes)?;
        Ok(Self {
            p_pa,
            t_c: air.temperature().to_celsius(),
            w: air.humidity_ratio().to_kilograms_per_kilogram(),
            flow_m3_s: flow / 60_000.0,
            flow_at: run.flow.at,
            heat_w,
            factors: Factors::PUBLISHED,
            intake: segments(run, Tube::Intake, &spaces, notes)?,
            exhaust: segments(run, Tube::Exhaust, &spaces, notes)?,
        })
    }
}

/// The legs of both tubes as the tube's march takes them, intake first, each in the spaces that the run gives it.
///
/// # Errors
/// What keeps the run from being evaluated.
pub fn segments_of(run: &Run) -> Result<[Vec<Segment>; 2], RunError> {
    let prepared = Prepared::new(run, &mut Vec::new())?;
    Ok([prepared.intake, prepared.exhaust])
}

/// The state of an air, its notes and errors with the place they belong to.
fn state(
    pair: Pair,
    pressure: Pressure,
    place: Place,
    notes: &mut Vec<RunNote>,
) -> Result<MoistAir, RunError> {
    let made = MoistAir::new(pair, pressure).map_err(|source| RunError::Air { place, source })?;
    notes.extend(
        made.notes
            .into_iter()
            .map(|note| RunNote::Air { place, note }),
    );
    Ok(made.value)
}

/// A space as the tube takes it.
struct SpaceAir {
    air_c: f64,
    w: f64,
    radiant_c: f64,
    wind_m_s: f64,
}

fn spaces(run: &Run, notes: &mut Vec<RunNote>) -> Result<Vec<SpaceAir>, RunError> {
    run.spaces
        .iter()
        .enumerate()
        .map(|(position, space)| space_air(space, run.pressure, Place::Space(position), notes))
        .collect()
}

fn space_air(
    space: &Space,
    pressure: Pressure,
    place: Place,
    notes: &mut Vec<RunNote>,
) -> Result<SpaceAir, RunError> {
    let air_c = range::AIR_TEMPERATURE.check(place, space.temperature.to_celsius())?;
    let radiant = space.radiant.unwrap_or(space.temperature);
    let w = match space.humidity {
        // The state would only hand it back, and refuse air that is a rounding error above saturation.
        Humidity::Relative { value, .. } if value.to_fraction() == 0.0 => 0.0,
        humidity => state(
            Pair::Temperature(space.temperature, humidity),
            pressure,
            place,
            notes,
        )?
        .humidity_ratio()
        .to_kilograms_per_kilogram(),
    };
    Ok(SpaceAir {
        air_c,
        w,
        radiant_c: range::RADIANT_TEMPERATURE.check(place, radiant.to_celsius())?,
        wind_m_s: range::WIND.check(place, space.wind.to_metres_per_second())?,
    })
}

fn segments(
    run: &Run,
    tube: Tube,
    spaces: &[SpaceAir],
    notes: &mut Vec<RunNote>,
) -> Result<Vec<Segment>, RunError> {
    let legs = match tube {
        Tube::Intake => &run.intake,
        Tube::Exhaust => &run.exhaust,
    };
    let mut segments = Vec::with_capacity(legs.len());
    for (position, leg) in legs.iter().enumerate() {
        let place = Place::Leg(tube, position);
        let space = spaces.get(leg.space).ok_or(RunError::NoSuchSpace {
            place,
            space: leg.space,
            spaces: spaces.len(),
        })?;
        let segment = segment(leg, space, place)?;
        notes.extend(insulation_note(&segment, run.pressure.to_pascals(), place));
        segments.push(segment);
    }
    join_risers(&mut segments, legs);
    Ok(segments)
}

fn segment(leg: &Leg, space: &SpaceAir, place: Place) -> Result<Segment, RunError> {
    let length_m = range::LENGTH.check(place, leg.length.to_metres())?;
    let rise_m = leg.rise.to_metres();
    // No leg rises or falls by more than its length.
    let steepest = Limits {
        field: "rise",
        quantity: "the rise",
        unit: "m",
        min: -length_m,
        max: length_m,
    };
    steepest.check(place, rise_m)?;
    let bore = range::BORE.check(place, leg.tube.bore.to_millimetres())?;
    let wall = leg.tube.outside_diameter.to_millimetres() - bore;
    range::WALL.check(place, 0.5 * wall)?;
    let insulation = match leg.insulation {
        Some(layer) => (
            range::INSULATION.check(place, layer.thickness.to_millimetres())?,
            range::INSULATION_CONDUCTIVITY
                .check(place, layer.conductivity.to_watts_per_metre_kelvin())?,
        ),
        None => (0.0, 1.0),
    };
    let tube_w_mk = leg.tube.conductivity.to_watts_per_metre_kelvin();
    Ok(Segment {
        length_m,
        bore_m: leg.tube.bore.to_metres(),
        tube_outside_m: leg.tube.outside_diameter.to_metres(),
        tube_w_mk: range::TUBE_CONDUCTIVITY.check(place, tube_w_mk)?,
        insulation_m: insulation.0 * 1e-3,
        insulation_w_mk: insulation.1,
        emissivity: range::EMISSIVITY.check(place, leg.emissivity)?,
        tracing_w_m: range::TRACING.check(place, leg.tracing.to_watts_per_metre())?,
        riser_m: leg.is_steep().then_some(length_m),
        air_c: space.air_c,
        air_w: space.w,
        radiant_c: space.radiant_c,
        wind_m_s: space.wind_m_s,
    })
}

/// Gives consecutive steep segments that are alike in all but length, and lead the same way, the length of the riser they make up.
fn join_risers(segments: &mut [Segment], legs: &[Leg]) {
    let mut from = 0;
    for stretch in legs.chunk_by(|a, b| leads_up(a) == leads_up(b)) {
        let Some(stretch) = segments.get_mut(from..from + stretch.len()) else {
            return;
        };
        from += stretch.len();
        for riser in stretch.chunk_by_mut(alike_and_steep) {
            let height: f64 = riser.iter().map(|s| s.length_m).sum();
            for segment in riser {
                segment.riser_m = segment.riser_m.map(|_| height);
            }
        }
    }
}

fn leads_up(leg: &Leg) -> bool {
    0.0 < leg.rise.to_metres()
}

fn alike_and_steep(a: &Segment, b: &Segment) -> bool {
    let of_length = |s: &Segment| Segment {
        length_m: 0.0,
        riser_m: None,
        ..*s
    };
    a.riser_m.is_some() && b.riser_m.is_some() && of_length(a) == of_length(b)
}
