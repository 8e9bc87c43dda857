//! What has to be said beside water and air.

use dewrun_quantity::{Length, MassFlow, VolumeFlow};
use dewrun_water::duct_entry::FromDuct;
use dewrun_water::water_lock::Lock;

use super::outcome::TubeWater;
use crate::error::{Place, Tube};
use crate::input::Run;
use crate::installation::{Drain, Installation};

/// What has to be said beside water and air.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Remark {
    /// No speed of the generic fan gives the flow entered: the fan's own curve has to be typed in.
    NoGenericFan {
        /// The flow entered, at the sensor.
        wanted: VolumeFlow,
    },
    /// Fan, tubes and pressures give another flow than the one entered.
    FlowDiffers {
        /// The flow computed.
        computed: VolumeFlow,
        /// The flow entered, at the sensor.
        wanted: VolumeFlow,
    },
    /// Water that lies in the duct can run into the tube; no balance of vapour can rule it out.
    EntryFromBelow {
        /// Which tube.
        tube: Tube,
    },
    /// Water runs into the detector.
    WaterIntoDetector {
        /// From which tube.
        tube: Tube,
        /// How much.
        rate: MassFlow,
    },
    /// The bore is so narrow that water fills and closes it.
    BoreLocks {
        /// The leg.
        place: Place,
        /// The bore.
        bore: Length,
        /// Even where the leg is upright.
        upright: bool,
    },
    /// A stub that is open below does not drain under suction.
    StubHoldsWater {
        /// Which tube.
        tube: Tube,
        /// Which trap, counted from 0.
        trap: usize,
        /// The column that the suction holds.
        column: Length,
    },
    /// The air runs up so fast that water does not run down against it.
    AirHoldsWater {
        /// The leg.
        place: Place,
    },
    /// The air holds a thin film back on a leg that drains against it.
    AirDragsFilm {
        /// The leg.
        place: Place,
    },
    /// Hangers stand so far apart that the leg holds water between them.
    Sags {
        /// The leg.
        place: Place,
        /// The largest spacing at which it drains.
        largest: Length,
    },
    /// A bore under 20 mm: first slugs are told by a relation that is unproven there.
    SlugsUnproven {
        /// Which tube.
        tube: Tube,
    },
}

/// Bores below this are unproven for first slugs.
const PROVEN_BORE: Length = Length::millimetres(20.0);

/// Adds what has to be said of water in both tubes.
pub(super) fn remarks(
    run: &Run,
    installation: &Installation,
    (intake, exhaust): (&TubeWater, Option<&TubeWater>),
    remarks: &mut Vec<Remark>,
) {
    of_tube(run, installation, Tube::Intake, intake, remarks);
    if let Some(exhaust) = exhaust {
        of_tube(run, installation, Tube::Exhaust, exhaust, remarks);
    }
}

fn of_tube(
    run: &Run,
    installation: &Installation,
    tube: Tube,
    water: &TubeWater,
    remarks: &mut Vec<Remark>,
) {
    let (legs, traps, into_detector) = match tube {
        Tube::Intake => (&run.intake, &installation.intake.traps, water.out_at_end),
        Tube::Exhaust => (
            &run.exhaust,
            &installation.exhaust.traps,
            water.out_at_start,
        ),
    };
    if water.from_duct == FromDuct::LyingWater {
        remarks.push(Remark::EntryFromBelow { tube });
    }
    if MassFlow::ZERO < into_detector {
        let rate = into_detector;
        remarks.push(Remark::WaterIntoDetector { tube, rate });
    }
    for (number, (leg, told)) in legs.iter().zip(&water.legs).enumerate() {
        let place = Place::Leg(tube, number);
        if told.lock != Lock::Runs {
            let (bore, upright) = (leg.tube.bore, told.lock == Lock::Upright);
            remarks.push(Remark::BoreLocks {
                place,
                bore,
                upright,
            });
        }
        let floods = told
            .flooding
            .is_some_and(|flooding| flooding < told.air_speed);
        if floods {
            remarks.push(Remark::AirHoldsWater { place });
        } else if told.dragged {
            remarks.push(Remark::AirDragsFilm { place });
        }
        if let super::HangerAdvice::Spacing { largest, .. } = told.hangers
            && told.hangers.sags()
        {
            remarks.push(Remark::Sags { place, largest });
        }
    }
    for (trap, (given, told)) in traps.iter().zip(&water.traps).enumerate() {
        if given.drain == Drain::OpenStub && !told.opened.gives_water {
            let column = told.opened.head;
            remarks.push(Remark::StubHoldsWater { tube, trap, column });
        }
    }
    let slugs = water.low_points.iter().any(|low| low.first_slugs.is_some());
    let narrow = legs.iter().any(|leg| leg.tube.bore < PROVEN_BORE);
    if slugs && narrow {
        remarks.push(Remark::SlugsUnproven { tube });
    }
}
