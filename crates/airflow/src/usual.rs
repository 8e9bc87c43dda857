//! The states that every line comes into, and the faults that airflow limits are there for.

use dewrun_quantity::{Length, Pressure};

use crate::line::{DuctPressures, Hole, Inlet, Line, Side, Tube};
use crate::state::{Leak, Parted, Pool, PoolShape, State};

/// A state that must not trip a limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Expected {
    /// As it was fitted.
    AsFitted,
    /// The filter after so many months.
    FilterAfter(f64),
    /// The fan at another speed within its tolerance.
    FanSpeed(f64),
    /// The duct's own fan stands.
    DuctFanOff,
}

/// A fault that ought to trip one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fault {
    /// A joint came apart.
    Parted(Side, Length),
    /// Water or ice closes the bore.
    Sealed(Side, Length),
    /// Dirt narrows every hole.
    HolesFouled,
    /// The filter was left out.
    FilterMissing,
    /// A trap in the intake ran dry and draws air.
    TrapDry(Length),
    /// The fan turns too slowly.
    FanWeak,
}

/// What is usual; common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Usual {
    /// Factor on the filter's resistance after a year: 1.5, from 1.2 to 3.
    pub dust_after_year: f64,
    /// Tolerance of the fan's speed: 5 %.
    pub fan_tolerance: f64,
    /// What fouling leaves open of a hole: half.
    pub fouled_open: f64,
    /// Speed of a weak fan: 80 %.
    pub weak_fan: f64,
    /// What a trap that ran dry leaves open: 6 mm.
    pub trap_outlet: Hole,
}

impl Usual {
    /// The usual numbers.
    pub const PRACTICE: Self = Self {
        dust_after_year: 1.5,
        fan_tolerance: 0.05,
        fouled_open: 0.5,
        weak_fan: 0.8,
        trap_outlet: Hole {
            diameter: Length::millimetres(6.0),
            discharge: 0.61,
        },
    };

    /// States that must not trip a limit: as fitted, the filter after 3, 6 and 12 months, the fan at both ends of its tolerance, the duct's fan off.
    #[must_use]
    pub fn states(&self) -> Vec<(Expected, State)> {
        let mut states = vec![(Expected::AsFitted, State::default())];
        for months in [3.0, 6.0, 12.0] {
            let state = State {
                dust: 1.0 + (self.dust_after_year - 1.0) * months / 12.0,
                ..State::default()
            };
            states.push((Expected::FilterAfter(months), state));
        }
        for fan_speed in [1.0 - self.fan_tolerance, 1.0 + self.fan_tolerance] {
            let state = State {
                fan_speed,
                ..State::default()
            };
            states.push((Expected::FanSpeed(fan_speed), state));
        }
        let still = DuctPressures {
            intake: Pressure::ZERO,
            exhaust: Pressure::ZERO,
        };
        let state = State {
            duct: Some(still),
            ..State::default()
        };
        states.push((Expected::DuctFanOff, state));
        states
    }

    /// Faults of a line: each joint parted (both ends of every stretch), each stretch that has a length sealed, holes fouled, filter missing, traps dry, fan weak.
    ///
    /// `space` gives the pressure of the space around a stretch, by its place in its tube.
    #[must_use]
    pub fn faults(
        &self,
        line: &Line,
        space: impl Fn(Side, usize) -> Pressure,
    ) -> Vec<(Fault, State)> {
        let mut faults = Vec::new();
        for side in [Side::Intake, Side::Exhaust] {
            along(line.tube(side), |stretch, from, to| {
                let space = space(side, stretch);
                if stretch == 0 {
                    faults.push(parted(side, from, space));
                }
                // What has no length has one joint and holds no water.
                if from < to {
                    faults.push(parted(side, to, space));
                    faults.push(sealed(line, side, from, to));
                }
            });
        }
        if let Inlet::Holes(holes) = &line.inlet {
            let state = State {
                hole_open: vec![self.fouled_open; holes.len()],
                ..State::default()
            };
            faults.push((Fault::HolesFouled, state));
        }
        let state = State {
            filter_missing: true,
            ..State::default()
        };
        faults.push((Fault::FilterMissing, state));
        for trap in &line.intake.traps {
            let place = stretch_at(&line.intake, trap.at);
            faults.push(self.trap_dry(trap.at, space(Side::Intake, place)));
        }
        let state = State {
            fan_speed: self.weak_fan,
            ..State::default()
        };
        faults.push((Fault::FanWeak, state));
        faults
    }

    fn trap_dry(&self, at: Length, space: Pressure) -> (Fault, State) {
        let leak = Leak {
            side: Side::Intake,
            at,
            hole: self.trap_outlet,
            space,
        };
        let state = State {
            leaks: vec![leak],
            ..State::default()
        };
        (Fault::TrapDry(at), state)
    }
}

impl Default for Usual {
    fn default() -> Self {
        Self::PRACTICE
    }
}

/// Each stretch of a tube with its place in it, its start and its end.
fn along(tube: &Tube, mut visit: impl FnMut(usize, Length, Length)) {
    let mut from = Length::ZERO;
    for (place, stretch) in tube.stretches.iter().enumerate() {
        let to = from + stretch.length;
        visit(place, from, to);
        from = to;
    }
}

fn stretch_at(tube: &Tube, at: Length) -> usize {
    let mut found = 0;
    along(tube, |place, from, _| {
        if from < at {
            found = place;
        }
    });
    found
}

fn parted(side: Side, at: Length, space: Pressure) -> (Fault, State) {
    let state = State {
        parted: Some(Parted { side, at, space }),
        ..State::default()
    };
    (Fault::Parted(side, at), state)
}

/// Water as deep as the widest bore over a stretch, closed in its middle.
fn sealed(line: &Line, side: Side, from: Length, to: Length) -> (Fault, State) {
    let bores = line.tube(side).stretches.iter().map(|stretch| stretch.bore);
    let shape = PoolShape::Uniform {
        from,
        length: to - from,
        depth: bores.fold(Length::ZERO, Length::max),
    };
    let state = State {
        pools: vec![Pool { side, shape }],
        ..State::default()
    };
    (Fault::Sealed(side, from + (to - from) * 0.5), state)
}
