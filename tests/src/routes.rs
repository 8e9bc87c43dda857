//! The one generator of random routes: a seed in, a run out, the same on every machine.
//!
//! [`route`] draws as widely as the solved cases do; [`awkward`] moves such a route onto the numbers
//! where formulas break: equal temperatures, a wall at 0 °C, no tracing, hardly any flow.

use dewrun_quantity::{
    Conductivity, HumidityRatio, Length, Power, PowerPerLength, Pressure, RelativeHumidity, Speed,
    Temperature, VolumeFlow,
};
use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::{Detector, Flow, FlowAt, Insulation, Leg, Run, Space, TubeWall};

/// Bores on sale, mm.
const BORES_MM: [f64; 8] = [4.0, 6.0, 10.0, 13.0, 15.8, 19.0, 20.9, 25.0];
/// Thicknesses of tube wall, mm.
const WALLS_MM: [f64; 5] = [0.8, 1.0, 1.5, 2.0, 2.8];
/// Conductivities of plastics, steel and copper, W/(m K).
const TUBE_CONDUCTIVITIES: [f64; 5] = [0.16, 0.19, 0.4, 45.0, 390.0];
/// Thicknesses of insulation, mm; none is as common as all others together.
const INSULATION_MM: [f64; 8] = [0.0, 0.0, 0.0, 0.0, 9.0, 13.0, 19.0, 25.0];
/// Emissivities of metal, foil and plastics.
const EMISSIVITIES: [f64; 4] = [0.1, 0.3, 0.9, 0.95];
/// Air speeds across a tube, m/s.
const WINDS: [f64; 5] = [0.0, 0.0, 0.0, 0.5, 3.0];
/// Heat tracing, W/m.
const TRACINGS: [f64; 6] = [0.0, 0.0, 0.0, 0.0, 3.0, 8.0];

/// Random numbers of a seed.
///
/// # Source
/// Steele, Lea & Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (SplitMix64).
#[derive(Debug, Clone)]
pub struct Draw(u64);

impl Draw {
    /// The numbers of a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next 64 bits.
    pub const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number from 0 to 1, evenly.
    pub fn unit(&mut self) -> f64 {
        let high = u32::try_from(self.bits() >> 32).unwrap_or(u32::MAX);
        f64::from(high) / f64::from(u32::MAX)
    }

    /// A number from `low` to `high`, evenly.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// A number from 0 to `count` less one.
    pub fn below(&mut self, count: usize) -> usize {
        let count = u64::try_from(count).unwrap_or(1).max(1);
        usize::try_from(self.bits() % count).unwrap_or(0)
    }

    /// One of a list.
    pub fn one_of(&mut self, values: &[f64]) -> f64 {
        values[self.below(values.len())]
    }

    /// True with the given chance.
    pub fn chance(&mut self, chance: f64) -> bool {
        self.unit() < chance
    }
}

/// A random route: one to six legs, half of them with an exhaust tube, half drawn damp and cold.
#[must_use]
pub fn route(seed: u64) -> Run {
    let mut draw = Draw::new(seed);
    let damp = draw.chance(0.5);
    let air_c = if damp {
        draw.between(5.0, 48.0)
    } else {
        draw.between(-20.0, 48.0)
    };
    let rh = if damp {
        draw.between(0.6, 0.995)
    } else {
        draw.between(0.05, 0.95)
    };
    let count = 1 + draw.below(6);
    let spaces: Vec<Space> = (0..count)
        .map(|_| {
            let space_c = if damp {
                air_c - draw.between(-10.0, 40.0)
            } else {
                draw.between(-23.0, 52.0)
            };
            space(&mut draw, space_c.clamp(-40.0, 60.0))
        })
        .collect();
    let bore_mm = draw.one_of(&BORES_MM);
    let tube = TubeWall {
        bore: Length::millimetres(bore_mm),
        outside_diameter: Length::millimetres(bore_mm + 2.0 * draw.one_of(&WALLS_MM)),
        conductivity: Conductivity::watts_per_metre_kelvin(draw.one_of(&TUBE_CONDUCTIVITIES)),
    };
    let mut intake: Vec<Leg> = (0..count)
        .map(|space| leg(&mut draw, space, tube))
        .collect();
    let in_intake = if draw.chance(0.5) {
        count
    } else {
        1 + draw.below(count)
    };
    let exhaust = intake.split_off(in_intake);
    let flow_lpm = draw.between(1.0, (0.6 * bore_mm * bore_mm).min(100.0));
    let heat_w = if exhaust.is_empty() {
        0.0
    } else {
        draw.between(0.0, 0.3 * flow_lpm.min(30.0))
    };
    Run {
        pressure: Pressure::pascals(draw.between(60e3, 108e3)),
        duct_air: Pair::Temperature(Temperature::celsius(air_c), relative(rh)),
        flow: Flow {
            volume: VolumeFlow::litres_per_minute(flow_lpm),
            at: if draw.chance(0.7) {
                FlowAt::Intake
            } else {
                FlowAt::Sensor
            },
        },
        spaces,
        intake,
        detector: Detector {
            heat: Power::watts(heat_w),
            humidity_rating: None,
        },
        exhaust,
    }
}

fn relative(rh: f64) -> Humidity {
    Humidity::Relative {
        value: RelativeHumidity::fraction(rh),
        over: Over::Water,
    }
}

fn space(draw: &mut Draw, air_c: f64) -> Space {
    Space {
        temperature: Temperature::celsius(air_c),
        humidity: relative(draw.between(0.05, 0.95)),
        radiant: draw
            .chance(0.2)
            .then(|| Temperature::celsius(air_c + draw.between(-10.0, 10.0))),
        wind: Speed::metres_per_second(draw.one_of(&WINDS)),
    }
}

fn leg(draw: &mut Draw, space: usize, tube: TubeWall) -> Leg {
    let length_m = draw.between(0.5, 10.0);
    let thickness_mm = draw.one_of(&INSULATION_MM);
    let slope = if draw.chance(0.3) {
        draw.between(-1.0, 1.0)
    } else {
        draw.between(-0.05, 0.05)
    };
    Leg {
        space,
        length: Length::metres(length_m),
        rise: Length::metres(length_m * slope),
        tube,
        insulation: (0.0 < thickness_mm).then(|| Insulation {
            thickness: Length::millimetres(thickness_mm),
            conductivity: Conductivity::watts_per_metre_kelvin(0.036),
        }),
        emissivity: draw.one_of(&EMISSIVITIES),
        tracing: PowerPerLength::watts_per_metre(draw.one_of(&TRACINGS)),
    }
}

/// A random route on awkward ground: each of its numbers may be nudged onto one where a formula breaks.
#[must_use]
pub fn awkward(seed: u64) -> Run {
    let mut run = route(seed);
    let mut draw = Draw::new(!seed);
    if let Pair::Temperature(air, _) = &mut run.duct_air {
        if draw.chance(0.3) {
            *air = Temperature::celsius(near(&mut draw, 0.0));
        }
        let air_c = air.to_celsius();
        for space in &mut run.spaces {
            if draw.chance(0.4) {
                let at = if draw.chance(0.5) { air_c } else { 0.0 };
                space.temperature = Temperature::celsius(near(&mut draw, at));
                space.radiant = None;
            }
        }
    }
    for leg in run.intake.iter_mut().chain(&mut run.exhaust) {
        awkward_leg(&mut draw, leg);
    }
    if draw.chance(0.3) {
        let tiny = [0.0, 1e-9, 1e-6, 1e-3, 0.05];
        run.flow.volume = VolumeFlow::litres_per_minute(draw.one_of(&tiny));
        run.detector.heat = Power::ZERO;
    }
    if let Pair::Temperature(_, humidity) = &mut run.duct_air
        && draw.chance(0.3)
    {
        *humidity = match draw.below(3) {
            0 => Humidity::Ratio(HumidityRatio::ZERO),
            1 => relative(1.0),
            _ => relative(near(&mut draw, 0.5)),
        };
    }
    run
}

/// A number, or one a hair beside it.
fn near(draw: &mut Draw, value: f64) -> f64 {
    value + draw.one_of(&[0.0, 0.0, 1e-12, -1e-12, 1e-6, -1e-6, 1e-3, -1e-3])
}

fn awkward_leg(draw: &mut Draw, leg: &mut Leg) {
    if draw.chance(0.3) {
        leg.tracing = PowerPerLength::watts_per_metre(draw.one_of(&[0.0, 1e-12, 1e-6]));
    }
    if draw.chance(0.2) {
        leg.length = Length::metres(draw.one_of(&[1e-3, 0.01, 0.1]));
        leg.rise = Length::ZERO;
    }
    if draw.chance(0.2) {
        // Exactly as steep as decides which outside film holds.
        leg.rise = leg.length * core::f64::consts::FRAC_1_SQRT_2;
    }
    if draw.chance(0.2) {
        leg.emissivity = draw.one_of(&[0.0, 1.0]);
    }
}

/// A random route of which one to three numbers are any finite number at all.
#[must_use]
pub fn wild(seed: u64) -> Run {
    let mut draw = Draw::new(seed.rotate_left(32));
    let mut run = awkward(seed);
    for _ in 0..=draw.below(3) {
        let number = any_finite(&mut draw);
        let position = draw.below(run.spaces.len());
        let space = run.spaces.get_mut(position);
        let leg = run.intake.first_mut();
        let (Some(space), Some(leg)) = (space, leg) else {
            continue;
        };
        match draw.below(16) {
            0 => run.pressure = Pressure::pascals(number),
            1 => run.flow.volume = VolumeFlow::litres_per_minute(number),
            2 => run.duct_air = Pair::Temperature(Temperature::celsius(number), relative(0.5)),
            3 => run.duct_air = Pair::Temperature(Temperature::celsius(20.0), relative(number)),
            4 => run.detector.heat = Power::watts(number),
            5 => space.temperature = Temperature::celsius(number),
            6 => space.humidity = Humidity::Ratio(HumidityRatio::kilograms_per_kilogram(number)),
            7 => space.radiant = Some(Temperature::celsius(number)),
            8 => space.wind = Speed::metres_per_second(number),
            9 => leg.length = Length::metres(number),
            10 => leg.rise = Length::metres(number),
            11 => leg.tube.bore = Length::metres(number),
            12 => leg.tube.outside_diameter = Length::metres(number),
            13 => leg.tube.conductivity = Conductivity::watts_per_metre_kelvin(number),
            14 => leg.emissivity = number,
            _ => leg.tracing = PowerPerLength::watts_per_metre(number),
        }
    }
    run
}

/// Half the time any bits that are a finite number, half the time one of a size that may be let through.
fn any_finite(draw: &mut Draw) -> f64 {
    if draw.chance(0.5) {
        return draw.between(-1.0, 1.0) * draw.one_of(&[1e-3, 1.0, 100.0, 1e5]);
    }
    let number = f64::from_bits(draw.bits());
    if number.is_finite() { number } else { f64::MAX }
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_run::{Verdict, evaluate};

    #[test]
    fn the_same_seed_is_the_same_route() {
        for seed in 0..20 {
            assert_eq!(route(seed), route(seed), "seed {seed}");
            assert_eq!(awkward(seed), awkward(seed), "seed {seed}");
        }
        assert_ne!(route(1), route(2), "other seeds are other routes");
    }

    #[test]
    fn at_least_a_third_is_wet() {
        let count = 300;
        let wet = (0..count)
            .filter(|seed| {
                let outcome = evaluate(&route(*seed));
                outcome.is_ok_and(|outcome| outcome.value.verdict == Verdict::Wet)
            })
            .count();
        assert!(
            count <= 3 * u64::try_from(wet).unwrap_or(0),
            "{wet} of {count} are wet"
        );
    }

    #[test]
    fn routes_are_as_wide_as_the_solved_cases() {
        let runs: Vec<Run> = (0..300).map(route).collect();
        let legs = || {
            runs.iter()
                .flat_map(|run| run.intake.iter().chain(&run.exhaust))
        };
        let share = |count: usize, all: usize| 10 * count >= all;
        let all = legs().count();
        assert!(
            share(legs().filter(|leg| leg.is_steep()).count() * 2, all),
            "steep legs"
        );
        assert!(
            share(legs().filter(|leg| leg.insulation.is_some()).count(), all),
            "insulated legs"
        );
        assert!(
            share(
                legs()
                    .filter(|leg| PowerPerLength::ZERO < leg.tracing)
                    .count(),
                all
            ),
            "traced legs"
        );
        assert!(
            share(
                runs.iter().filter(|run| !run.exhaust.is_empty()).count(),
                300
            ),
            "exhaust tubes"
        );
        assert!(
            share(runs.iter().filter(|run| run.intake.len() == 1).count(), 300),
            "single legs"
        );
    }
}
