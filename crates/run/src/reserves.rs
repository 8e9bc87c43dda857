//! What keeps an answer from being the whole truth: places past the range of the relations, and flows that they leave out.

use core::f64::consts::PI;

use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_tube::{Segment, Station, Trace};

use crate::error::{Place, RunNote, Tube};
use crate::prepare::Prepared;
use crate::range;
use crate::steady::Passage;

/// Buoyancy over inertia, Gr / Re^2, from which on natural convection inside counts as much as the forced one.
///
/// Incropera, DeWitt, Bergman & Lavine, Fundamentals of Heat and Mass Transfer, 6th ed. 2007, section 9.9 (from memory).
const MIXED_CONVECTION: f64 = 1.0;
/// Standard gravity, m/s2.
const GRAVITY_M_S2: f64 = 9.80665;
/// 0 °C on the thermodynamic scale, K.
const ZERO_CELSIUS_K: f64 = 273.15;
/// Warming by its own kinetic energy, K, from which on a flow is told as very fast: the accuracy that is held for temperatures is 0.1 K.
const KINETIC_K: f64 = 0.5;
/// Heat capacity of dry air, J/(kg K); for this estimate only.
const HEAT_CAPACITY_J_KGK: f64 = 1006.0;

impl Prepared {
    /// Notes what has to be said beside the answer.
    pub(crate) fn reserves(&self, passage: &Passage, notes: &mut Vec<RunNote>) {
        notes.extend(hottest(passage));
        notes.extend(coldest(passage));
        if passage.inlet.dry_air_kg_s <= 0.0 {
            notes.push(RunNote::NoFlow);
            return;
        }
        notes.extend(self.very_small_flow(passage));
        notes.extend(self.very_fast_flow(passage));
    }

    /// The leg in which buoyancy is strongest, where it is as strong as the flow: by `Gr / Re^2` on the bore, in which the viscosity cancels.
    fn very_small_flow(&self, passage: &Passage) -> Option<RunNote> {
        let (place, richardson) = self.most(passage, |segment, station| {
            let speed = self.velocity_m_s(passage, segment, station);
            let expansion = 1.0 / (station.air_c + ZERO_CELSIUS_K);
            let difference = (station.air_c - station.wall_c).abs();
            GRAVITY_M_S2 * expansion * difference * segment.bore_m / (speed * speed)
        })?;
        (MIXED_CONVECTION <= richardson).then_some(RunNote::VerySmallFlow { place, richardson })
    }

    /// The leg in which the air is fastest, where its kinetic energy counts.
    fn very_fast_flow(&self, passage: &Passage) -> Option<RunNote> {
        let (place, velocity_m_s) = self.most(passage, |segment, station| {
            self.velocity_m_s(passage, segment, station)
        })?;
        let kinetic_k = 0.5 * velocity_m_s * velocity_m_s / HEAT_CAPACITY_J_KGK;
        (KINETIC_K <= kinetic_k).then_some(RunNote::VeryFastFlow {
            place,
            velocity_m_s,
        })
    }

    fn velocity_m_s(&self, passage: &Passage, segment: &Segment, station: &Station) -> f64 {
        let area_m2 = 0.25 * PI * segment.bore_m * segment.bore_m;
        let flow = passage.inlet.dry_air_kg_s * (1.0 + station.w);
        flow / (density_kg_m3(station.air_c, station.w, self.p_pa) * area_m2)
    }

    /// The leg in which a quantity is largest, and how large.
    fn most(
        &self,
        passage: &Passage,
        at_station: impl Fn(&Segment, &Station) -> f64,
    ) -> Option<(Place, f64)> {
        let tubes = [
            (Tube::Intake, &self.intake, &passage.intake),
            (Tube::Exhaust, &self.exhaust, &passage.exhaust),
        ];
        let of_tube = |(tube, segments, trace): (Tube, &'_ Vec<Segment>, &'_ Trace)| {
            let at = |station: &Station| {
                let segment = segments.get(station.segment)?;
                let place = Place::Leg(tube, station.segment);
                Some((place, at_station(segment, station)))
            };
            trace
                .stations
                .iter()
                .filter_map(at)
                .max_by(|a, b| a.1.total_cmp(&b.1))
        };
        let most = tubes.into_iter().filter_map(of_tube);
        most.max_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// The first leg in which something is hotter than the relations hold for.
fn hottest(passage: &Passage) -> Option<RunNote> {
    let limit_c = range::AIR_TEMPERATURE.max;
    let (place, hottest_c) = first_beyond(passage, |air_c, wall_c| air_c.max(wall_c) - limit_c)?;
    Some(RunNote::HotterThanRange {
        place,
        hottest_c: limit_c + hottest_c,
    })
}

/// The first leg in which something is colder than the relations hold for.
fn coldest(passage: &Passage) -> Option<RunNote> {
    let limit_c = range::AIR_TEMPERATURE.min;
    let (place, colder_k) = first_beyond(passage, |air_c, wall_c| limit_c - air_c.min(wall_c))?;
    Some(RunNote::ColderThanRange {
        place,
        coldest_c: limit_c - colder_k,
    })
}

/// The first leg, or else the detector, where air and wall lie beyond a limit, and by how much at the most there.
fn first_beyond(passage: &Passage, beyond: impl Fn(f64, f64) -> f64) -> Option<(Place, f64)> {
    for (tube, trace) in [
        (Tube::Intake, &passage.intake),
        (Tube::Exhaust, &passage.exhaust),
    ] {
        let mut of_stations = trace
            .stations
            .iter()
            .map(|s| (s.segment, beyond(s.air_c, s.wall_c)));
        let Some((leg, first_k)) = of_stations.find(|(_, by_k)| 0.0 < *by_k) else {
            continue;
        };
        let most_k = of_stations
            .filter(|(segment, _)| *segment == leg)
            .map(|(_, by_k)| by_k)
            .fold(first_k, f64::max);
        return Some((Place::Leg(tube, leg), most_k));
    }
    let chamber_c = passage.chamber.t_c;
    let by_k = beyond(chamber_c, chamber_c);
    (0.0 < by_k).then_some((Place::Detector, by_k))
}
