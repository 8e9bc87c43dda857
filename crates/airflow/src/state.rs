//! What is otherwise with a line than as it was fitted: fan speed, dust, fouled holes, leaks, parted joints, water.

use dewrun_quantity::{Length, Pressure, Volume};

use crate::error::AirflowError;
use crate::line::{DuctPressures, Hole, Inlet, Line, Side, Tube, check_hole, check_place};
use crate::range;

/// A state of a line; the default one is the line as fitted.
#[derive(Debug, Clone, PartialEq)]
pub struct State {
    /// Speed of the fan, 1 is that of its curve.
    pub fan_speed: f64,
    /// Factor on the filter's resistance, 1 is clean.
    pub dust: f64,
    /// The filter was left out.
    pub filter_missing: bool,
    /// What is open of each hole, as a factor on its area; empty where all are open.
    pub hole_open: Vec<f64>,
    /// Pressures in the duct in place of those of the line.
    pub duct: Option<DuctPressures>,
    /// Holes in the tubes that do not belong there.
    pub leaks: Vec<Leak>,
    /// A joint that came apart.
    pub parted: Option<Parted>,
    /// Water that stands in the tubes.
    pub pools: Vec<Pool>,
}

/// A hole into the space around a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leak {
    /// Which tube.
    pub side: Side,
    /// From its start.
    pub at: Length,
    /// The hole.
    pub hole: Hole,
    /// Pressure of the space around.
    pub space: Pressure,
}

/// A joint that came apart: both halves open into the space around.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parted {
    /// Which tube.
    pub side: Side,
    /// From its start.
    pub at: Length,
    /// Pressure of the space around.
    pub space: Pressure,
}

/// Water that stands in a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pool {
    /// Which tube.
    pub side: Side,
    /// What it looks like.
    pub shape: PoolShape,
}

/// What a pool looks like. Water as deep as the bore closes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PoolShape {
    /// Of one depth over a length, as in a level leg.
    Uniform {
        /// Where it begins.
        from: Length,
        /// How long it is.
        length: Length,
        /// How deep it is, from the lowest point of the bore.
        depth: Length,
    },
    /// At a low point between two falls: deepest there, shallower with the floor's rise on both sides.
    Wedge {
        /// The low point.
        at: Length,
        /// How much water.
        volume: Volume,
        /// Fall per horizontal length of the leg before.
        fall_before: f64,
        /// Fall per horizontal length of the leg after, towards the low point.
        fall_after: f64,
    },
}

impl Default for State {
    fn default() -> Self {
        Self {
            fan_speed: 1.0,
            dust: 1.0,
            filter_missing: false,
            hole_open: Vec::new(),
            duct: None,
            leaks: Vec::new(),
            parted: None,
            pools: Vec::new(),
        }
    }
}

impl State {
    /// # Errors
    /// The first number that makes no sense on that line.
    pub(crate) fn check(&self, line: &Line) -> Result<(), AirflowError> {
        range::FAN_SPEED.check(self.fan_speed)?;
        range::DUST.check(self.dust)?;
        for open in &self.hole_open {
            range::OPEN_SHARE.check(*open)?;
        }
        if let Inlet::Holes(holes) = &line.inlet
            && !self.hole_open.is_empty()
            && self.hole_open.len() != holes.len()
        {
            return Err(AirflowError::HoleCount {
                given: self.hole_open.len(),
                holes: holes.len(),
            });
        }
        if let Some(duct) = &self.duct {
            range::PRESSURE.check(duct.intake.to_pascals())?;
            range::PRESSURE.check(duct.exhaust.to_pascals())?;
        }
        for leak in &self.leaks {
            check_hole(&leak.hole)?;
            range::PRESSURE.check(leak.space.to_pascals())?;
            check_place("a leak", line.tube(leak.side), leak.side, leak.at)?;
        }
        if let Some(parted) = &self.parted {
            range::PRESSURE.check(parted.space.to_pascals())?;
            let tube = line.tube(parted.side);
            check_place("a parted joint", tube, parted.side, parted.at)?;
        }
        self.pools
            .iter()
            .try_for_each(|pool| check_pool(pool, line))
    }
}

impl Line {
    /// One of its tubes.
    #[must_use]
    pub const fn tube(&self, side: Side) -> &Tube {
        match side {
            Side::Intake => &self.intake,
            Side::Exhaust => &self.exhaust,
        }
    }
}

fn check_pool(pool: &Pool, line: &Line) -> Result<(), AirflowError> {
    let at = match pool.shape {
        PoolShape::Uniform {
            from,
            length,
            depth,
        } => {
            range::LENGTH.check(length.to_metres())?;
            range::DEPTH.check(depth.to_millimetres())?;
            from
        }
        PoolShape::Wedge {
            at,
            volume,
            fall_before,
            fall_after,
        } => {
            range::VOLUME.check(volume.to_millilitres())?;
            range::FALL.check(fall_before)?;
            range::FALL.check(fall_after)?;
            at
        }
    };
    check_place("a pool", line.tube(pool.side), pool.side, at)
}
