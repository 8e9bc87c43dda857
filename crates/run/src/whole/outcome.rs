//! What water and air do in a run.

use dewrun_airflow::{Airflow, AirflowLimits, AirflowNote, Expected, Fault, Trip, Verdict};
use dewrun_quantity::{Length, Mass, MassFlow, Pressure, Speed, Time, Volume, VolumeFlow};
use dewrun_water::drain::HandDrain;
use dewrun_water::drainage::{Destination, Drainage, LegReport, ProposedTrap};
use dewrun_water::duct_entry::FromDuct;
use dewrun_water::hanger::Sag;
use dewrun_water::ice::Freezes;
use dewrun_water::pool::Stand;
use dewrun_water::time_to_trouble::TroubleTime;
use dewrun_water::trap::Requirement;
use dewrun_water::water_lock::Lock;

use super::Remark;
use crate::error::Tube;
use crate::installation::Drain;

/// What water and air do in a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Whole {
    /// Water in the intake tube.
    pub intake: TubeWater,
    /// Water in the exhaust tube, where one is drawn.
    pub exhaust: Option<TubeWater>,
    /// The air through both.
    pub airflow: AirflowOutcome,
    /// Why the detector may not be sampling its duct; none where it does.
    pub blind: Option<Blind>,
    /// What has to be said besides.
    pub remarks: Vec<Remark>,
}

/// Why a detector may not be sampling its duct.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Blind {
    /// The air runs from the exhaust to the intake.
    Reversed,
    /// No air moves.
    Still,
    /// So much of the air at the sensor comes from the duct, and no more.
    Diluted {
        /// Sample share, 0 to 1.
        share: f64,
    },
    /// Frost closes the bore before the traps are next emptied.
    Iced {
        /// Which tube.
        tube: Tube,
        /// Where the frost grows most.
        at: Length,
        /// After how long.
        after: Time,
    },
    /// A low point is sealed before the traps are next emptied.
    Sealed {
        /// Which tube.
        tube: Tube,
        /// The low point.
        at: Length,
        /// After how long.
        after: Time,
    },
}

/// Water in one tube; places count from its inlet.
#[derive(Debug, Clone, PartialEq)]
pub struct TubeWater {
    /// One for each leg.
    pub legs: Vec<LegWater>,
    /// Low points to which water comes, and pools that ran together.
    pub low_points: Vec<LowPoint>,
    /// Traps and drains, in their order.
    pub traps: Vec<TrapOutcome>,
    /// Traps that are missing.
    pub proposals: Vec<Proposal>,
    /// What runs out of the first end in the long run.
    pub out_at_start: MassFlow,
    /// What runs out of the last end.
    pub out_at_end: MassFlow,
    /// All troubles that water makes here, the soonest first.
    pub troubles: Vec<TroubleTime>,
    /// How long the traps may wait; none where no trouble comes.
    pub drain_interval: Option<Time>,
    /// Frost, leg by leg, where any grows.
    pub ice: Vec<IceOutcome>,
    /// What water the duct itself may let in.
    pub from_duct: FromDuct,
    /// The way of all water while traps are not emptied.
    pub drainage: Drainage,
}

/// What a leg does with water, and what keeps it straight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LegWater {
    /// Its course, fall and what it holds.
    pub report: LegReport,
    /// What its bore does to water that once fills it.
    pub lock: Lock,
    /// How it must be hung.
    pub hangers: HangerAdvice,
    /// Speed of the air in it.
    pub air_speed: Speed,
    /// Speed of air above which water no longer runs down it against the air; none where it does not run so.
    pub flooding: Option<Speed>,
    /// Water forms in it and runs against the air, which drags a thin film up harder than its weight draws it down.
    pub dragged: bool,
}

/// How a leg must be hung so that it drains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HangerAdvice {
    /// So steep that it does not sag across.
    Steep,
    /// From a coil: support all along.
    AllAlong,
    /// Level: no spacing makes it drain.
    Level,
    /// Hangers no further apart than this.
    Spacing {
        /// The largest spacing at which it still drains.
        largest: Length,
        /// The spacing as it is, and how it sags there.
        now: Option<(Length, Sag)>,
    },
}

/// A low point, or pools that ran together.
#[derive(Debug, Clone, PartialEq)]
pub struct LowPoint {
    /// Its position in [`Drainage::pools`].
    pub pool: usize,
    /// The lowest place.
    pub at: Length,
    /// The end of its level bottom.
    pub until: Length,
    /// What comes in once all walls uphill are wet.
    pub rate: MassFlow,
    /// Water that closes the bore there.
    pub seal_volume: Volume,
    /// The most that can stand there.
    pub capacity: Volume,
    /// Water at which moving air throws the first slugs.
    pub slug_volume: Volume,
    /// When the first slugs come; none where it runs over before.
    pub first_slugs: Option<Time>,
    /// When the airflow falls under its low limit.
    pub trips: Option<Time>,
    /// When the bore is closed.
    pub sealed: Option<Time>,
    /// The airflow while water stands there, from shallow to nearly closed.
    pub levels: Vec<PoolLevel>,
    /// How water stands there when traps are next emptied.
    pub stand: Stand,
    /// What stands there then.
    pub amount: Mass,
    /// Pressure that holds air back then.
    pub bubbling: Pressure,
    /// Where it runs over to.
    pub runs_over_to: Option<Destination>,
    /// Whether water that stands there freezes, and how long what stands there then takes.
    pub freezes: Freezes,
    /// That time.
    pub freezing_time: Option<Time>,
}

/// The airflow while water stands so deep at a low point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PoolLevel {
    /// Depth of the water.
    pub depth: Length,
    /// Flow at the sensor.
    pub flow: VolumeFlow,
    /// The reading, as a part of that as fitted.
    pub reading: f64,
}

/// A trap or drain as it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrapOutcome {
    /// Along the tube.
    pub at: Length,
    /// How it is emptied.
    pub drain: Drain,
    /// What comes to it in the long run.
    pub rate: MassFlow,
    /// When it is full; none where it never is or drains itself.
    pub full: Option<Time>,
    /// Where water goes that passes it when it is full.
    pub overflow: Option<Destination>,
    /// Static pressure in the tube there against the room, running.
    pub running: Pressure,
    /// The same as the fan starts.
    pub starting: Pressure,
    /// The drop and the seal that it needs.
    pub needs: Requirement,
    /// Its outlet lies low enough.
    pub drop_is_enough: bool,
    /// Its seal is high enough.
    pub seal_is_enough: bool,
    /// When a seal that nothing refills dries out; none where the air takes nothing, or where it is refilled.
    pub dries_out: Option<Time>,
    /// What a valve gives that is opened while the fan runs, or what a stub lets out.
    pub opened: HandDrain,
}

/// A trap that is missing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Proposal {
    /// Where it goes, and instead of what.
    pub trap: ProposedTrap,
    /// What comes there until traps are next emptied.
    pub capacity: Mass,
    /// The drop and the seal that a self-draining one needs.
    pub needs: Requirement,
}

/// Frost in a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IceOutcome {
    /// The leg, counted from 0.
    pub leg: usize,
    /// All frost that grows in it.
    pub rate: MassFlow,
    /// Where it grows most.
    pub at: Length,
    /// When it has closed the bore there.
    pub closed: Option<Time>,
    /// What it leaves of the bore's area when traps are next emptied, 0 to 1.
    pub free_share: f64,
    /// What comes down at once when frost of one drain interval, or all that closes the bore, thaws.
    pub thaw: Mass,
}

/// The air through a run, its states and faults, and what limits make of them.
#[derive(Debug, Clone, PartialEq)]
pub struct AirflowOutcome {
    /// Speed of a generic fan against its curve; 1 where the curve is its own.
    pub fan_speed: f64,
    /// As it was fitted, all traps shut.
    pub fitted: Airflow,
    /// As it is: open traps leak.
    pub now: Airflow,
    /// Reading now, as a part of that as fitted.
    pub reading_now: f64,
    /// What has to be said of the flow as it is.
    pub notes: Vec<AirflowNote>,
    /// States that must not trip a limit.
    pub states: Vec<StateOutcome>,
    /// Faults that ought to.
    pub faults: Vec<FaultOutcome>,
    /// States and faults that have no single flow.
    pub unanswered: usize,
    /// The tightest limits, and the states that set the low and the high one.
    pub recommended: Option<(AirflowLimits, usize, usize)>,
    /// What the limits in use do.
    pub given: Option<GivenLimits>,
    /// What would let the limits catch a fault that they miss, the cheapest first; none where all are caught.
    pub change: Option<Change>,
}

/// What limits in use do.
#[derive(Debug, Clone, PartialEq)]
pub struct GivenLimits {
    /// The limits.
    pub limits: AirflowLimits,
    /// Expected states that trip: position in the list, which limit.
    pub false_alarms: Vec<(usize, Trip)>,
}

/// A state that must not trip a limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StateKind {
    /// One of the usual ones.
    Usual(Expected),
    /// The air in the line as cold as it gets.
    Cold,
    /// The air in the line as warm as it gets.
    Warm,
}

/// An expected state.
#[derive(Debug, Clone, PartialEq)]
pub struct StateOutcome {
    /// Which.
    pub state: StateKind,
    /// The reading, as a part of that as fitted.
    pub reading: f64,
    /// The air through the line.
    pub airflow: Airflow,
}

/// A fault.
#[derive(Debug, Clone, PartialEq)]
pub struct FaultOutcome {
    /// Which.
    pub fault: Fault,
    /// The reading, as a part of that as fitted.
    pub reading: f64,
    /// The air through the line.
    pub airflow: Airflow,
    /// What the recommended limits make of it.
    pub recommended: Option<Verdict>,
    /// What the limits in use make of it.
    pub given: Option<Verdict>,
}

/// The cheapest change that would let limits catch what they miss.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// A shorter filter interval: the loaded filter keeps the low limit down.
    FilterInterval,
    /// Measure the airflow as fitted anew with the duct fan as it usually runs: the duct fan keeps the limits apart.
    NewAsFitted,
    /// A sensor of mass flow, or limits set in the same season: cold and warm air keep the limits apart.
    Season,
    /// A fan of steadier speed.
    FanSpeed,
    /// A shorter or wider tube: the fault changes the flow too little.
    ShorterTube,
}

impl AirflowOutcome {
    /// Both limits in use, or those recommended.
    #[must_use]
    pub fn limits(&self) -> Option<[f64; 2]> {
        let both = |limits: &AirflowLimits| [limits.low(), limits.high()];
        let given = self.given.as_ref().map(|given| both(&given.limits));
        given.or_else(|| self.recommended.as_ref().map(|(limits, ..)| both(limits)))
    }

    /// The low limit in use, or the one recommended.
    #[must_use]
    pub fn low_limit(&self) -> Option<f64> {
        let given = self.given.as_ref().map(|given| given.limits.low());
        given.or_else(|| self.recommended.map(|(limits, ..)| limits.low()))
    }

    /// Faults that the limits in use, or those recommended, do not see, least sample share first.
    #[must_use]
    pub fn missed(&self) -> Vec<&FaultOutcome> {
        let verdict = |fault: &FaultOutcome| match self.given {
            Some(_) => fault.given,
            None => fault.recommended,
        };
        let is_missed =
            |fault: &&FaultOutcome| matches!(verdict(fault), Some(Verdict::Missed { .. }));
        let mut missed: Vec<&FaultOutcome> = self.faults.iter().filter(is_missed).collect();
        missed.sort_by(|one, next| one.airflow.share.total_cmp(&next.airflow.share));
        missed
    }
}
