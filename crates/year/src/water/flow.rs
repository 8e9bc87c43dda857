//! The air that follows the water: what passes in an hour's air, with water in the low points and traps that leak.

use std::collections::BTreeMap;

use dewrun_airflow::{Airflow, AirflowError, BLIND_SHARE, Pool as AirPool};
use dewrun_moist_air::humidity::{saturated_over_ice, saturated_over_water};
use dewrun_moist_air::mixture::humidity_ratio;
use dewrun_quantity::Length;
use dewrun_run::{Run, Standing, StandingAir, StandingTube, Tube};

use super::places::{Places, PoolAt};
use super::way::InTheWay;
use crate::hours::Hours;

/// Depths at which the air is solved, finer towards the crown: `1 - (1 - k/n)^2` of the bore.
const DEPTHS: u8 = 24;
/// The air is solved between the depths of so many pools; more stand at the nearest depth below.
const BETWEEN: usize = 3;
/// Time in which a filter gathers a year's dust, s.
const YEAR_S: f64 = 365.0 * 86_400.0;
/// Least flow that is marched, as a share of that as fitted: where less passes, the rest is the air that stands in the tube.
pub(crate) const TRICKLE: f64 = 0.002;

/// Less than this share of the flow as fitted is hardly any.
pub(crate) const STILL: f64 = 0.05;

/// Below this share of the flow as fitted the detector's heat warms the air no more than at it.
pub(crate) const WARMS_ALL: f64 = 0.25;

/// What is marched in an hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Marched {
    /// Dry air, kg/s.
    pub(crate) dry_air_kg_s: f64,
    /// Its vapour, kg/kg: where less passes than is marched, the rest holds no more than the coldest space lets it.
    pub(crate) w: f64,
    /// Whether so little passes that the air comes to rest with each wall it passes; no mist is followed in it.
    pub(crate) still: bool,
    /// Share of the detector's heat that goes into the air; the rest leaves through its housing.
    pub(crate) warms: f64,
}

/// The air that passes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Passing {
    /// At the sensor, kg/s; negative where it is reversed.
    pub(crate) mass_kg_s: f64,
    pub(crate) reading: f64,
    pub(crate) share: f64,
}

impl Passing {
    const STILL: Self = Self {
        mass_kg_s: 0.0,
        reading: 0.0,
        share: 0.0,
    };

    fn mix(self, other: Self, share: f64) -> Self {
        let mix = |one: f64, other: f64| one + share * (other - one);
        Self {
            mass_kg_s: mix(self.mass_kg_s, other.mass_kg_s),
            reading: mix(self.reading, other.reading),
            share: mix(self.share, other.share),
        }
    }

    fn times(self, factor: f64) -> Self {
        Self {
            mass_kg_s: factor * self.mass_kg_s,
            reading: factor * self.reading,
            share: self.share,
        }
    }

    /// Whether the detector does not sample its duct.
    pub(crate) fn is_blind(&self) -> bool {
        self.mass_kg_s <= 0.0 || self.share < BLIND_SHARE
    }
}

/// An hour as the air meets it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Weather {
    /// By how much the air is warmer than in the steady answer, K.
    pub(crate) warmer_k: f64,
    /// Pressure over that of the steady answer.
    pub(crate) pressure: f64,
    pub(crate) duct_runs: bool,
    /// Part of a year that the filter has gathered dust, at most 1.
    pub(crate) dust: f64,
}

/// The air through a run, solved as it is asked for.
#[derive(Debug, Clone)]
pub(crate) struct Flow {
    air: StandingAir,
    tubes: Vec<StandingTube>,
    warmer_k: Vec<f64>,
    /// Share of the legs' length in each space, and its temperature in the steady answer, °C.
    spaces: Vec<(f64, f64)>,
    p_pa: f64,
    dry: [Vec<Option<Passing>>; 2],
    wet: BTreeMap<Corner, Passing>,
    /// What a year's dust leaves of the flow, line by line.
    dusty: Vec<Option<f64>>,
}

impl Flow {
    pub(crate) fn of(standing: Standing, run: &Run) -> Self {
        let mut spaces: Vec<(f64, f64)> = run
            .spaces
            .iter()
            .map(|space| (0.0, space.temperature.to_celsius()))
            .collect();
        let legs = || run.intake.iter().chain(&run.exhaust);
        let all_m: f64 = legs().map(|leg| leg.length.to_metres()).sum();
        for leg in legs() {
            if let Some(space) = spaces.get_mut(leg.space) {
                space.0 += leg.length.to_metres() / all_m;
            }
        }
        let warmer_k: Vec<f64> = standing.air.warmer_k().collect();
        let none = vec![None; warmer_k.len()];
        let dusty = vec![None; warmer_k.len()];
        Self {
            air: standing.air,
            tubes: standing.tubes,
            warmer_k,
            spaces,
            p_pa: run.pressure.to_pascals(),
            dry: [none.clone(), none],
            wet: BTreeMap::new(),
            dusty,
        }
    }

    pub(crate) fn open(&self) -> &[(Tube, usize)] {
        &self.air.open
    }

    pub(crate) const fn limits(&self) -> Option<[f64; 2]> {
        self.air.limits
    }

    pub(crate) fn fitted_kg_s(&self) -> f64 {
        self.air.fitted.mass.to_kilograms_per_second()
    }

    /// The most that passes in any air, kg/s.
    pub(crate) fn most_kg_s(&mut self, places: &Places) -> f64 {
        let way = InTheWay::default();
        let mut most = self.fitted_kg_s();
        for warmer_k in self.warmer_k.clone() {
            for duct_runs in [true, false] {
                let weather = Weather {
                    warmer_k,
                    // Room for leaks and high pressure.
                    pressure: 1.3,
                    duct_runs,
                    dust: 0.0,
                };
                most = most.max(self.passing(places, weather, &way).mass_kg_s);
            }
        }
        most
    }

    /// An hour as the air meets it.
    pub(crate) fn weather(&self, hours: &Hours, hour: usize) -> Weather {
        let mut warmer_k = 0.0;
        for (space, (share, usual_c)) in self.spaces.iter().enumerate() {
            let around = hours.around(hour, space);
            warmer_k += share * around.map_or(0.0, |around| around.air_c - usual_c);
        }
        let now = hours.hour(hour);
        let p_pa = now.map_or(self.p_pa, |hour| hour.p_pa);
        let steps = f64::from(u32::try_from(hour).unwrap_or(u32::MAX));
        let since_s = now.map_or(0.0, |hour| steps * hour.seconds);
        Weather {
            warmer_k,
            pressure: p_pa / self.p_pa,
            duct_runs: hours.duct_runs(hour),
            dust: (since_s / YEAR_S).min(1.0),
        }
    }

    /// What the coldest space around the tube lets air hold that stands in it, kg/kg.
    pub(crate) fn stands_w(&self, hours: &Hours, hour: usize) -> f64 {
        let spaces = self.spaces.iter().enumerate();
        let used = spaces.filter(|(_, (share, _))| 0.0 < *share);
        let coldest_c = used
            .filter_map(|(space, _)| Some(hours.around(hour, space)?.air_c))
            .fold(f64::INFINITY, f64::min);
        let Some(hour) = hours.hour(hour) else {
            return 0.0;
        };
        if coldest_c.is_infinite() {
            return hour.w;
        }
        let saturated = if coldest_c < 0.0 {
            saturated_over_ice(coldest_c, hour.p_pa)
        } else {
            saturated_over_water(coldest_c, hour.p_pa)
        };
        hour.w.min(humidity_ratio(saturated))
    }

    /// What passes; nothing where frost or ice closes a bore, or water does and the suction is less than its head.
    pub(crate) fn passing(&mut self, places: &Places, weather: Weather, way: &InTheWay) -> Passing {
        if way.is_iced() {
            return Passing::STILL;
        }
        let bubbles = way
            .head_pa
            .map_or(1.0, |head_pa| self.bubbles(weather, head_pa));
        if bubbles <= 0.0 {
            return Passing::STILL;
        }
        let (line, share) = self.between(weather.warmer_k);
        let cold = self.at_line(places, line, weather.duct_runs, way);
        let warm = self.at_line(places, line + 1, weather.duct_runs, way);
        let dust = self.dust(places, line, weather);
        cold.mix(warm, share)
            .times(bubbles * weather.pressure * dust)
    }

    /// What dust leaves of the flow: its resistance grows with the time, and what it costs the flow of dry tubes it is taken to cost any.
    fn dust(&mut self, places: &Places, line: usize, weather: Weather) -> f64 {
        if weather.dust <= 0.0 {
            return 1.0;
        }
        let known = self.dusty.get(line).copied().flatten();
        let after_year = known.unwrap_or_else(|| {
            let clean = self.at_line(places, line, true, &InTheWay::default());
            let dusty = self.air.dusty(line).map(|found| self.told(&found));
            let left = dusty.map_or(1.0, |dusty| dusty.mass_kg_s / clean.mass_kg_s);
            // Reversed or still, it costs what it may: the water decides there.
            let left = if (0.0..=1.0).contains(&left) {
                left
            } else {
                1.0
            };
            if let Some(place) = self.dusty.get_mut(line) {
                *place = Some(left);
            }
            left
        });
        1.0 - weather.dust * (1.0 - after_year)
    }

    /// Part of the flow that comes through closed water in bubbles: what drives it less the head, as a square root.
    pub(crate) fn bubbles(&self, weather: Weather, head_pa: f64) -> f64 {
        let [on, off] = self.air.driving.map(|pressure| pressure.to_pascals());
        let driving_pa = if weather.duct_runs { on } else { off };
        if driving_pa <= head_pa {
            return 0.0;
        }
        (1.0 - head_pa / driving_pa).sqrt()
    }

    fn between(&self, warmer_k: f64) -> (usize, f64) {
        let last = self.warmer_k.len().saturating_sub(2);
        let above = self.warmer_k.partition_point(|line_k| *line_k <= warmer_k);
        let line = above.saturating_sub(1).min(last);
        let at = |line: usize| self.warmer_k.get(line).copied().unwrap_or(0.0);
        let share = (warmer_k - at(line)) / (at(line + 1) - at(line));
        (line, share.clamp(0.0, 1.0))
    }

    fn at_line(
        &mut self,
        places: &Places,
        line: usize,
        duct_runs: bool,
        way: &InTheWay,
    ) -> Passing {
        if way.pools.is_empty() && way.leaking.len() == self.air.open.len() {
            let kept = self
                .dry
                .get(usize::from(duct_runs))
                .and_then(|kept| kept.get(line));
            if let Some(Some(passing)) = kept {
                return *passing;
            }
            let solved = self.solve(places, (line, duct_runs), &way.leaking, &[]);
            let kept = self.dry.get_mut(usize::from(duct_runs));
            if let Some(place) = kept.and_then(|kept| kept.get_mut(line)) {
                *place = Some(solved);
            }
            return solved;
        }
        let mut corner: Vec<(usize, u8)> = Vec::with_capacity(way.pools.len());
        self.corners(places, (line, duct_runs), way, &mut corner)
    }

    /// Between the depths of one pool after the other.
    fn corners(
        &mut self,
        places: &Places,
        line: (usize, bool),
        way: &InTheWay,
        corner: &mut Vec<(usize, u8)>,
    ) -> Passing {
        let Some(&(pool, depth)) = way.pools.get(corner.len()) else {
            return self.kept(places, line, &way.leaking, corner);
        };
        let (below, share) = depth_below(depth);
        corner.push((pool, below));
        let low = self.corners(places, line, way, corner);
        corner.pop();
        if BETWEEN <= corner.len() || share <= 0.0 {
            return low;
        }
        corner.push((pool, below + 1));
        let high = self.corners(places, line, way, corner);
        corner.pop();
        low.mix(high, share)
    }

    fn kept(
        &mut self,
        places: &Places,
        line: (usize, bool),
        leaking: &[(Tube, usize)],
        corner: &[(usize, u8)],
    ) -> Passing {
        let key = key(line, leaking, corner);
        if let Some(passing) = self.wet.get(&key) {
            return *passing;
        }
        let solved = self.solve(places, line, leaking, corner);
        self.wet.insert(key, solved);
        solved
    }

    fn solve(
        &self,
        places: &Places,
        (line, duct_runs): (usize, bool),
        leaking: &[(Tube, usize)],
        corner: &[(usize, u8)],
    ) -> Passing {
        let pools = corner.iter().filter_map(|(pool, depth)| {
            let place = places.pools.get(*pool)?;
            self.standing(place, depth_share(*depth) * place.bore_m)
        });
        match self.air.passing(line, duct_runs, leaking, pools.collect()) {
            Ok(found) => self.told(&found),
            Err(AirflowError::SeveralOperatingPoints { flows }) => {
                let least = flows.iter().copied().reduce(|one, other| one.min(other));
                let fitted = &self.air.fitted;
                let part = least.map_or(0.0, |least| least / fitted.sensor);
                self.told(fitted).times(part)
            }
            Err(_) => Passing::STILL,
        }
    }

    fn standing(&self, place: &PoolAt, depth_m: f64) -> Option<AirPool> {
        let tube = self
            .tubes
            .iter()
            .find(|tube| tube.tube == place.along.tube)?;
        let (bore, depth) = (Length::metres(place.bore_m), Length::metres(depth_m));
        (0.0 < depth_m)
            .then(|| tube.pool(place.low.at, place.low.until, bore, depth))
            .flatten()
    }

    fn told(&self, found: &Airflow) -> Passing {
        Passing {
            mass_kg_s: found.mass.to_kilograms_per_second(),
            reading: self.air.sensor.reading(found, &self.air.fitted),
            share: found.share,
        }
    }
}

fn depth_share(number: u8) -> f64 {
    let left = 1.0 - f64::from(number) / f64::from(DEPTHS);
    1.0 - left * left
}

/// The solved depth below one, and how far it lies towards the next; closed water leaves what the last but one leaves.
fn depth_below(depth: f64) -> (u8, f64) {
    let last = DEPTHS - 1;
    let number = (0..last)
        .rev()
        .find(|number| depth_share(*number) <= depth)
        .unwrap_or(0);
    if depth_share(last) <= depth {
        return (last, 0.0);
    }
    let (low, high) = (depth_share(number), depth_share(number + 1));
    (number, (depth - low) / (high - low))
}

/// Which line of the air, which traps leak, and at which depths pools stand: two bytes each, the first seven in one number.
type Corner = (u128, Vec<u8>);

fn key(
    (line, duct_runs): (usize, bool),
    leaking: &[(Tube, usize)],
    corner: &[(usize, u8)],
) -> Corner {
    let byte = |number: usize| u8::try_from(number).unwrap_or(u8::MAX);
    let pools = corner.iter().map(|(pool, depth)| [byte(*pool), *depth]);
    let traps = leaking
        .iter()
        .map(|(tube, trap)| [200 + u8::from(*tube == Tube::Exhaust), byte(*trap)]);
    let mut key = u128::from(u16::from_be_bytes([byte(line), u8::from(duct_runs)]));
    let mut rest = Vec::new();
    for (place, pair) in pools.chain(traps).enumerate() {
        if place < 6 {
            key = (key << 17) | (1 + u128::from(u16::from_be_bytes(pair)));
        } else {
            rest.extend(pair);
        }
    }
    (key, rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn depths_rise_to_the_crown() {
        assert_eq!(depth_below(0.0), (0, 0.0), "no water");
        for depth in [0.01, 0.3, 0.74, 0.99] {
            let (below, share) = depth_below(depth);
            let (low, high) = (depth_share(below), depth_share(below + 1));
            let back = low + share * (high - low);
            assert!(
                (back - depth).abs() < 1e-12 && low <= depth,
                "{back} for {depth}"
            );
        }
        assert_eq!(depth_below(1.0), (DEPTHS - 1, 0.0), "closed");
    }
}
