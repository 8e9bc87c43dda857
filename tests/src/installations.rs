//! The one generator of random installations: how a random route hangs, is drained and moves its air.

use dewrun_quantity::{
    Density, FlowResistance, Length, Mass, MassPerArea, MassPerLength, Modulus, Pressure,
    TemperatureDifference, Time, Volume, VolumeFlow,
};
use dewrun_run::told::{Entry, FlowSensor, Hole, Reads, TrapKind};
use dewrun_run::{
    DetectorPath, Drain, DuctEnds, Fan, Installation, Leg, LegInstallation, Run, Trap,
    TubeInstallation,
};

use crate::routes::Draw;

/// A plain installation of any run: a generic fan, no traps, no pressure in the duct.
#[must_use]
pub fn plain(run: &Run) -> Installation {
    let legs = |legs: &[Leg]| TubeInstallation {
        entry: Entry::Side,
        legs: legs.iter().map(|_| leg()).collect(),
        traps: Vec::new(),
    };
    Installation {
        intake: legs(&run.intake),
        exhaust: legs(&run.exhaust),
        holes: vec![
            Hole {
                diameter: Length::millimetres(8.0),
                discharge: 0.62,
            };
            4
        ],
        duct: DuctEnds::still(Pressure::ZERO, Pressure::ZERO),
        detector: DetectorPath {
            filter: FlowResistance::pascals_per_litre_per_minute(3.0),
            chamber_loss: 1.5,
            chamber_volume: Volume::millilitres(310.0),
            fan: Fan::Generic {
                standing: Pressure::pascals(300.0),
                free: VolumeFlow::litres_per_minute(100.0),
            },
            start_suction: Pressure::pascals(350.0),
        },
        spaces: vec![Pressure::ZERO; run.spaces.len()],
        sensor: FlowSensor {
            reads: Reads::Volume,
            sees_direction: false,
        },
        limits: None,
        limit_margin: 0.02,
        drain_interval: Time::days(90.0),
        film: MassPerArea::grams_per_square_metre(50.0),
        season: [20.0, 15.0].map(TemperatureDifference::kelvins),
        transition: 1.0,
        dust_after_year: 1.5,
    }
}

/// A leg of rigid plastic that can be reached.
#[must_use]
pub fn leg() -> LegInstallation {
    LegInstallation {
        roughness: Length::millimetres(0.0015),
        corrugations: MassPerLength::ZERO,
        coiled: false,
        density: Density::kilograms_per_cubic_metre(1200.0),
        long_term_modulus: Modulus::megapascals(1200.0),
        hanger_spacing: None,
        fittings: Vec::new(),
        reachable: true,
    }
}

/// A hand-drained trap of usual size.
#[must_use]
pub fn trap(at: Length) -> Trap {
    Trap {
        at,
        drain: Drain::ByHand,
        open: false,
        kind: TrapKind::EqualLegs,
        capacity: Mass::grams(250.0),
        seal: Length::millimetres(50.0),
        outlet_drop: Length::millimetres(75.0),
        bore: Length::millimetres(10.0),
    }
}

/// A random installation of a run.
#[must_use]
pub fn installation(run: &Run, seed: u64) -> Installation {
    let mut draw = Draw::new(seed ^ 0x1257_A11E);
    let mut built = plain(run);
    tube(&mut draw, &run.intake, &mut built.intake);
    tube(&mut draw, &run.exhaust, &mut built.exhaust);
    let mut pressure = || Pressure::pascals(draw.between(-60.0, 60.0));
    built.duct = DuctEnds::still(pressure(), pressure());
    for space in &mut built.spaces {
        *space = Pressure::pascals(draw.between(-10.0, 10.0));
    }
    built.detector.filter = FlowResistance::pascals_per_litre_per_minute(draw.between(0.5, 6.0));
    built.film = MassPerArea::grams_per_square_metre(draw.between(25.0, 100.0));
    built.drain_interval = Time::days(draw.between(1.0, 180.0));
    built
}

fn tube(draw: &mut Draw, legs: &[Leg], built: &mut TubeInstallation) {
    let end_m: f64 = legs.iter().map(|leg| leg.length.to_metres()).sum();
    for leg in &mut built.legs {
        leg.coiled = draw.chance(0.2);
        leg.reachable = draw.chance(0.7);
        leg.hanger_spacing = draw
            .chance(0.5)
            .then(|| Length::metres(draw.between(0.3, 3.0)));
        if draw.chance(0.3) {
            leg.fittings.push((Length::ZERO, draw.between(0.1, 1.5)));
        }
    }
    if 0.0 < end_m && draw.chance(0.4) {
        let drains = [Drain::ByHand, Drain::ByItself, Drain::OpenStub];
        let at = Length::metres(end_m * draw.unit());
        let mut given = trap(at);
        given.drain = drains.get(draw.below(3)).copied().unwrap_or(Drain::ByHand);
        built.traps.push(given);
    }
}
