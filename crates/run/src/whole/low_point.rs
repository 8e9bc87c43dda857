//! A low point: what comes in, when it slugs, trips the low limit and seals, and how water stands there when traps are next emptied.

use dewrun_airflow::{FlowSensor, Pool as AirPool, PoolShape as AirPoolShape, State, airflow};
use dewrun_quantity::{Length, Temperature, Time, Volume};
use dewrun_water::Incline;
use dewrun_water::drainage::{DrainTube, Drainage, Pool};
use dewrun_water::ice::{freezes, heat_out, time_to_freeze};
use dewrun_water::pool::PoolShape;
use dewrun_water::time_to_trouble::{PassingAir, Trouble, TroubleAt, TroubleTime};

use super::fitted::Fitted;
use super::ice::LegLoss;
use super::line::side;
use super::outcome::{LowPoint, PoolLevel};
use crate::error::Tube;
use crate::outcome::TubeOutcome;

/// Flatter than this a leg beside a low point counts as level.
const LEVEL: f64 = 1e-4;
/// Steps to find the depth that trips the low limit: to a thousandth of the bore.
const STEPS: u32 = 10;
/// The deepest water that leaves the bore open, as a share of it.
const NEARLY_CLOSED: f64 = 0.999;
/// Depths at which the airflow over standing water is told, as shares of the bore.
const LEVELS: [f64; 4] = [0.25, 0.5, 0.75, 0.9];
/// Share of the wall that standing water wets when it fills about half the bore.
const WETTED_SHARE: f64 = 0.5;

/// What watches the airflow while water rises.
pub(super) struct Watch<'a> {
    pub(super) fitted: &'a Fitted<'a>,
    pub(super) sensor: FlowSensor,
    pub(super) low_limit: Option<f64>,
}

impl Watch<'_> {
    /// The airflow while water stands so deep, as a share of the bore, at a low point; none where it has no single flow.
    fn at_depth(
        &self,
        tube: Tube,
        water: &DrainTube,
        pool: &Pool,
        share: f64,
    ) -> Option<PoolLevel> {
        let depth = pool.shape.bore() * share;
        let pools = vec![AirPool {
            side: side(tube),
            shape: standing(water, (pool.at, pool.until), pool.shape.bore(), depth)?,
        }];
        let state = State {
            pools,
            ..State::default()
        };
        let found = airflow(&self.fitted.line, &state).ok()?.value;
        Some(PoolLevel {
            depth,
            flow: found.sensor,
            reading: self.sensor.reading(&found, &self.fitted.airflow),
        })
    }

    /// The depth of a pool at which the airflow falls under its low limit; none where it does not before the bore is closed.
    pub(super) fn tripping_depth(
        &self,
        tube: Tube,
        water: &DrainTube,
        pool: &Pool,
    ) -> Option<Length> {
        let limit = self.low_limit?;
        let trips = |share: f64| Some(self.at_depth(tube, water, pool, share)?.reading < limit);
        if !trips(NEARLY_CLOSED)? {
            return None;
        }
        let (mut passes, mut blocks) = (0.0, NEARLY_CLOSED);
        for _ in 0..STEPS {
            let middle = 0.5 * (passes + blocks);
            if trips(middle)? {
                blocks = middle;
            } else {
                passes = middle;
            }
        }
        Some(pool.shape.bore() * blocks)
    }
}

/// Water of a depth at a low point as the air meets it.
pub(super) fn standing(
    tube: &DrainTube,
    (at, until): (Length, Length),
    bore: Length,
    depth: Length,
) -> Option<AirPoolShape> {
    let (before, after) = falls(tube, at, until);
    let level = until - at;
    if before < LEVEL || after < LEVEL || Length::millimetres(1.0) < level {
        return Some(AirPoolShape::Uniform {
            from: at,
            length: level,
            depth,
        });
    }
    let incline = Incline::per_horizontal;
    let shape = PoolShape::between(bore, incline(before), incline(after)).ok()?;
    Some(AirPoolShape::Wedge {
        at,
        volume: shape.volume(depth),
        fall_before: before,
        fall_after: after,
    })
}

/// Falls of the legs that meet at a low point, per horizontal length; nearly upright ones as steep as the airflow takes them.
fn falls(tube: &DrainTube, low: Length, until: Length) -> (f64, f64) {
    const STEEPEST: f64 = 100.0;
    let near = Length::millimetres(1.0);
    let (mut before, mut after, mut at) = (0.0, 0.0, Length::ZERO);
    for leg in &tube.legs {
        let end = at + leg.length;
        let tangent = Incline::of(leg.length, -leg.rise).map_or(STEEPEST, Incline::tangent);
        if at < low && low <= end + near && 0.0 < tangent {
            before = tangent.min(STEEPEST);
        }
        if at <= until + near && until + near < end && tangent < 0.0 {
            after = (-tangent).min(STEEPEST);
        }
        at = end;
    }
    (before, after)
}

/// What low points are told from.
pub(super) struct Around<'a> {
    pub(super) side: Tube,
    pub(super) watch: &'a Watch<'a>,
    pub(super) tube: &'a DrainTube,
    pub(super) drainage: &'a Drainage,
    pub(super) troubles: &'a [TroubleTime],
    pub(super) air: PassingAir,
    pub(super) interval: Time,
    pub(super) outcome: &'a TubeOutcome,
    pub(super) losses: &'a [LegLoss],
}

impl Around<'_> {
    /// Low points to which water comes; pools that ran together only where something happens in them that did not before.
    pub(super) fn low_points(&self) -> Vec<LowPoint> {
        let pools = self.drainage.pools.iter().enumerate();
        pools
            .filter_map(|(number, pool)| self.low_point(number, pool))
            .collect()
    }

    fn low_point(&self, number: usize, pool: &Pool) -> Option<LowPoint> {
        let rate = pool.inflow.final_rate();
        let is_told = pool.joins.is_empty()
            || self
                .troubles
                .iter()
                .any(|trouble| trouble.at == TroubleAt::Pool(number));
        if rate.to_kilograms_per_second() <= 0.0 || !is_told {
            return None;
        }
        let water = self.tube.water.density;
        let amount = pool.amount(self.interval);
        let volume =
            Volume::cubic_metres(amount.to_kilograms() / water.to_kilograms_per_cubic_metre());
        let stand = pool.shape.stand(volume.min(pool.shape.capacity())).ok()?;
        let when = |trouble| {
            let at = TroubleAt::Pool(number);
            let found = self
                .troubles
                .iter()
                .find(|one| one.at == at && one.trouble == trouble);
            found.map(|one| one.after)
        };
        let wall = self.wall_at(pool.at);
        let loss = self.losses.iter().find(|loss| pool.at <= loss.to);
        let heat = loss.map(|loss| {
            let [before, after] = stand.wetted;
            heat_out(loss.passes, WETTED_SHARE, before + after, loss.outside)
        });
        Some(LowPoint {
            pool: number,
            at: pool.at,
            until: pool.until,
            rate,
            seal_volume: pool.shape.seal_volume(),
            capacity: Volume::cubic_metres(
                pool.capacity.to_kilograms() / water.to_kilograms_per_cubic_metre(),
            ),
            slug_volume: pool
                .shape
                .first_slugs(self.air.flow, self.air.density, water)
                .volume,
            first_slugs: when(Trouble::FirstSlugs),
            trips: when(Trouble::LowLimit),
            sealed: when(Trouble::Sealed),
            levels: LEVELS
                .iter()
                .filter(|share| pool.shape.bore() * **share <= stand.depth)
                .filter_map(|share| self.watch.at_depth(self.side, self.tube, pool, *share))
                .collect(),
            stand,
            amount,
            bubbling: pool.shape.bubbling(volume, water),
            runs_over_to: pool.runs_over_to,
            freezes: freezes(wall),
            freezing_time: heat.and_then(|heat| time_to_freeze(amount, heat)),
        })
    }

    /// Temperature of the inner wall at a place.
    fn wall_at(&self, at: Length) -> Temperature {
        let points = &self.outcome.profile;
        let found = points
            .iter()
            .find(|point| at <= point.x)
            .or_else(|| points.last());
        found.map_or(Temperature::celsius(20.0), |point| point.inner_wall)
    }
}
