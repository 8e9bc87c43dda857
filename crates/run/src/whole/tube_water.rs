//! Water in one tube: where it forms and goes, low points, traps, legs, frost.

use dewrun_quantity::{Mass, MassFlow, Pressure, Temperature};
use dewrun_water::Water;
use dewrun_water::drain::HandDrain;
use dewrun_water::drainage::{
    Destination, DrainLeg, DrainTube, Drainage, DrainageError, Formed, ProposedTrap, TrapAt, Traps,
    legs, propose,
};
use dewrun_water::duct_entry::{InsideFall, from_duct};
use dewrun_water::held::Keeping;
use dewrun_water::time_to_trouble::{PassingAir, USUAL_MARGIN, drain_interval, troubles};
use dewrun_water::trap::{Requirement, TrapKind};

use super::error::WholeError;
use super::fitted::Fitted;
use super::ice::{ice, losses};
use super::leg_water::{LegAir, leg_water};
use super::line::side;
use super::low_point::{Around, Watch};
use super::outcome::{AirflowOutcome, LegWater, Proposal, TrapOutcome, TubeWater};
use super::trap::{dries_out, needs, opened, pressures};
use crate::error::{Place, Tube};
use crate::input::{Leg, Run};
use crate::installation::{Drain, Installation, Trap, TubeInstallation};
use crate::outcome::{ProfilePoint, TubeOutcome};

/// What every tube is told from.
pub(super) struct Context<'a> {
    pub(super) run: &'a Run,
    pub(super) installation: &'a Installation,
    pub(super) fitted: &'a Fitted<'a>,
    pub(super) watch: Watch<'a>,
}

impl<'a> Context<'a> {
    /// A run as it is installed, and its airflow as that is watched.
    pub(super) fn new(
        run: &'a Run,
        installation: &'a Installation,
        fitted: &'a Fitted<'a>,
        airflow: &AirflowOutcome,
    ) -> Self {
        Self {
            run,
            installation,
            fitted,
            watch: Watch {
                fitted,
                sensor: installation.sensor,
                low_limit: airflow.low_limit(),
            },
        }
    }
}

/// One tube with all that its water needs.
struct Wet<'a> {
    context: &'a Context<'a>,
    tube: Tube,
    outcome: &'a TubeOutcome,
    legs: &'a [Leg],
    built: &'a TubeInstallation,
    drain: DrainTube,
    formed: Vec<Formed>,
}

/// Water in one tube.
pub(super) fn tube_water(
    context: &Context<'_>,
    tube: Tube,
    outcome: &TubeOutcome,
) -> Result<TubeWater, WholeError> {
    let (legs, built) = match tube {
        Tube::Intake => (&context.run.intake, &context.installation.intake),
        Tube::Exhaust => (&context.run.exhaust, &context.installation.exhaust),
    };
    let wet = Wet {
        context,
        tube,
        outcome,
        legs,
        built,
        drain: drain_tube(context, tube, legs, built, outcome)?,
        formed: formed(outcome),
    };
    wet.tell()
}

impl Wet<'_> {
    fn tell(&self) -> Result<TubeWater, WholeError> {
        let interval = self.context.installation.drain_interval;
        let drainage = self.drainage(Traps::Forgotten)?;
        let air = self.passing_air();
        let trips = |pool: &_| {
            self.context
                .watch
                .tripping_depth(self.tube, &self.drain, pool)
        };
        let troubles = troubles(&drainage, &self.drain, air, trips);
        let losses = losses(self.context.run, self.legs, self.outcome);
        let around = Around {
            side: self.tube,
            watch: &self.context.watch,
            tube: &self.drain,
            drainage: &drainage,
            troubles: &troubles,
            air,
            interval,
            outcome: self.outcome,
            losses: &losses,
        };
        Ok(TubeWater {
            legs: self.each_leg(air)?,
            low_points: around.low_points(),
            traps: self.each_trap(&drainage)?,
            proposals: self.proposals()?,
            out_at_start: drainage.out_at_start.final_rate(),
            out_at_end: drainage.out_at_end.final_rate(),
            drain_interval: drain_interval(&troubles, USUAL_MARGIN),
            ice: ice(self.legs, self.outcome, interval),
            from_duct: from_duct(self.built.entry, InsideFall::IntoDuct),
            troubles,
            drainage,
        })
    }

    fn failed(&self) -> impl Fn(DrainageError) -> WholeError {
        let tube = self.tube;
        move |source| WholeError::Drainage { tube, source }
    }

    fn drainage(&self, traps: Traps) -> Result<Drainage, WholeError> {
        Drainage::of(&self.drain, &self.formed, traps).map_err(self.failed())
    }

    /// The air as it passes low points: as fitted, in the density of the middle of the tube.
    fn passing_air(&self) -> PassingAir {
        let tube = self.context.fitted.line.tube(side(self.tube));
        let middle = tube.stretches.get(tube.stretches.len() / 2);
        let density = middle.map_or(self.context.fitted.line.room, |stretch| stretch.air.density);
        let kg_s = self
            .context
            .fitted
            .airflow
            .mass
            .to_kilograms_per_second()
            .abs();
        PassingAir {
            flow: dewrun_quantity::VolumeFlow::cubic_metres_per_second(
                kg_s / density.to_kilograms_per_cubic_metre(),
            ),
            density,
        }
    }

    fn each_leg(&self, air: PassingAir) -> Result<Vec<LegWater>, WholeError> {
        let reports = legs(&self.drain).map_err(self.failed())?;
        let flow = &self.context.fitted.airflow;
        let air = LegAir {
            flow: air.flow,
            density: air.density,
            reynolds: match self.tube {
                Tube::Intake => flow.reynolds_intake,
                Tube::Exhaust => flow.reynolds_exhaust,
            },
            film: self.context.installation.film,
        };
        let all = self
            .legs
            .iter()
            .zip(&self.built.legs)
            .zip(reports)
            .enumerate();
        all.map(|(number, ((leg, built), report))| {
            let place = Place::Leg(self.tube, number);
            let told = leg_water(place, leg, built, report, (self.drain.water, &air))?;
            let found = self.outcome.legs.get(number);
            let is_wet = found.is_some_and(|leg| MassFlow::ZERO < leg.condensate);
            Ok(LegWater {
                dragged: told.dragged && is_wet,
                ..told
            })
        })
        .collect()
    }

    fn each_trap(&self, drainage: &Drainage) -> Result<Vec<TrapOutcome>, WholeError> {
        let emptied = self.drainage(Traps::Emptied)?;
        let all = self.built.traps.iter().enumerate();
        all.map(|(number, trap)| self.trap(number, trap, drainage, &emptied))
            .collect()
    }

    fn trap(
        &self,
        number: usize,
        trap: &Trap,
        drainage: &Drainage,
        emptied: &Drainage,
    ) -> Result<TrapOutcome, WholeError> {
        let failed = |source| WholeError::Trap {
            tube: self.tube,
            trap: number,
            source,
        };
        let water = self.drain.water.density;
        let at = pressures(self.context, self.tube, trap.at, self.velocity_pressure());
        let needs: Requirement = needs(trap.kind, at, water).map_err(failed)?;
        let opened: HandDrain = opened(trap, at, water).map_err(failed)?;
        let rate = emptied
            .into_traps
            .get(number)
            .map_or(MassFlow::ZERO, |inflow| inflow.final_rate());
        let is_fed = MassFlow::ZERO < rate;
        Ok(TrapOutcome {
            at: trap.at,
            drain: trap.drain,
            rate,
            full: drainage.trap_full(&self.drain, number),
            overflow: Drainage::overflow_of(&self.drain, number).map_err(self.failed())?,
            running: at.running,
            starting: at.starting,
            drop_is_enough: needs.outlet_drop <= trap.outlet_drop,
            seal_is_enough: needs.seal <= trap.seal,
            needs,
            dries_out: if is_fed || trap.drain != Drain::ByItself {
                None
            } else {
                dries_out(self.context, self.outcome, self.tube, trap)
            },
            opened,
        })
    }

    /// Velocity pressure in the tube, as it was fitted.
    fn velocity_pressure(&self) -> Pressure {
        let air = self.passing_air();
        let bore_m = self
            .legs
            .last()
            .map_or(1.0, |leg| leg.tube.bore.to_metres());
        let area_m2 = 0.25 * core::f64::consts::PI * bore_m * bore_m;
        let speed = air.flow.to_cubic_metres_per_second() / area_m2;
        Pressure::pascals(0.5 * air.density.to_kilograms_per_cubic_metre() * speed * speed)
    }

    /// Traps that are missing: at low points first, and where water still runs into the detector then.
    fn proposals(&self) -> Result<Vec<Proposal>, WholeError> {
        let detector = match self.tube {
            Tube::Intake => Destination::End,
            Tube::Exhaust => Destination::Start,
        };
        let mut found = propose(&self.drain, &self.formed, None).map_err(self.failed())?;
        let mut drained = self.drain.clone();
        drained.traps.extend(found.iter().filter_map(|trap| {
            let (at, capacity) = (trap.at?, None);
            Some(TrapAt { at, capacity })
        }));
        let before = propose(&drained, &self.formed, Some(detector)).map_err(self.failed())?;
        found.extend(
            before
                .into_iter()
                .filter(|trap| trap.instead_of == detector),
        );
        let all = found.into_iter().enumerate();
        all.map(|(number, trap)| self.proposal(number, trap))
            .collect()
    }

    fn proposal(&self, number: usize, trap: ProposedTrap) -> Result<Proposal, WholeError> {
        let interval = self.context.installation.drain_interval;
        let place = trap.at.unwrap_or(trap.low_point);
        let at = pressures(self.context, self.tube, place, self.velocity_pressure());
        let needs = needs(TrapKind::EqualLegs, at, self.drain.water.density);
        Ok(Proposal {
            trap,
            capacity: Mass::kilograms(trap.rate.to_kilograms_per_second() * interval.to_seconds()),
            needs: needs.map_err(|source| WholeError::Trap {
                tube: self.tube,
                trap: number,
                source,
            })?,
        })
    }
}

pub(super) fn drain_tube(
    context: &Context<'_>,
    tube: Tube,
    legs: &[Leg],
    built: &TubeInstallation,
    outcome: &TubeOutcome,
) -> Result<DrainTube, WholeError> {
    let water = Water::at(mean_wall(outcome));
    let drain_legs = legs.iter().zip(&built.legs).map(|(leg, built)| DrainLeg {
        length: leg.length,
        rise: leg.rise,
        bore: leg.tube.bore,
        keeping: Keeping {
            film: context.installation.film,
            corrugations: built.corrugations,
            ..Keeping::USUAL
        },
        reachable: built.reachable,
    });
    let mut traps = Vec::with_capacity(built.traps.len());
    for (number, trap) in built.traps.iter().enumerate() {
        traps.push(TrapAt {
            at: trap.at,
            capacity: takes(context, tube, number, trap, water)?,
        });
    }
    Ok(DrainTube {
        legs: drain_legs.collect(),
        traps,
        water,
    })
}

/// What a trap takes until it is emptied; none where it drains itself. A stub under suction takes the column that the suction holds.
fn takes(
    context: &Context<'_>,
    tube: Tube,
    number: usize,
    trap: &Trap,
    water: Water,
) -> Result<Option<Mass>, WholeError> {
    match trap.drain {
        Drain::ByHand => Ok(Some(trap.capacity)),
        Drain::ByItself => Ok(None),
        Drain::OpenStub => {
            let at = pressures(context, tube, trap.at, Pressure::ZERO);
            let found = opened(trap, at, water.density).map_err(|source| WholeError::Trap {
                tube,
                trap: number,
                source,
            })?;
            Ok((!found.gives_water).then_some(found.runs_out))
        }
    }
}

/// Mean temperature of the inner wall, as liquid water takes it.
fn mean_wall(outcome: &TubeOutcome) -> Temperature {
    let (mut sum, mut count) = (0.0, 0.0);
    for point in &outcome.profile {
        sum += point.inner_wall.to_celsius();
        count += 1.0;
    }
    let mean_c = if 0.0 < count { sum / count } else { 20.0 };
    Temperature::celsius(mean_c.clamp(0.0, 95.0))
}

/// What forms as water between two places of the march, per dry air: what the air has lost there.
fn liquid_between(from: &ProfilePoint, to: &ProfilePoint) -> f64 {
    let holds =
        |point: &ProfilePoint| (point.humidity_ratio + point.mist).to_kilograms_per_kilogram();
    let liquid = 1.0 - 0.5 * (from.frozen_share + to.frozen_share);
    (holds(from) - holds(to)).max(0.0) * liquid
}

/// Where liquid water forms: between the places of the march, each leg with what forms in it.
fn formed(outcome: &TubeOutcome) -> Vec<Formed> {
    let mut all = Vec::new();
    for points in outcome.profile.chunk_by(|one, next| one.leg == next.leg) {
        let leg = points.first().and_then(|point| outcome.legs.get(point.leg));
        let Some(leg) = leg else { continue };
        let whole = (leg.condensate - leg.frost).to_kilograms_per_second();
        if whole <= 0.0 {
            continue;
        }
        let steps = || points.iter().zip(points.iter().skip(1));
        let drawn: f64 = steps().map(|(one, next)| liquid_between(one, next)).sum();
        if drawn <= 0.0 {
            // Less than a cell of it is wet: it is told of the leg as a whole.
            all.push(Formed {
                from: leg.from,
                to: leg.to,
                rate: MassFlow::kilograms_per_second(whole),
            });
            continue;
        }
        for (one, next) in steps() {
            let share = liquid_between(one, next) / drawn;
            let rate = MassFlow::kilograms_per_second(share * whole);
            if one.x < next.x && MassFlow::ZERO < rate {
                let (from, to) = (one.x, next.x);
                all.push(Formed { from, to, rate });
            }
        }
    }
    all
}
