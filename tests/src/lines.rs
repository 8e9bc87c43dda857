//! The one generator of random airflow lines: a seed in, a line and a state out, the same on every machine.
//!
//! `line` draws as widely as lines are built; `Drawn::state` lays leaks, parted joints and water over it; `wild` puts any finite number anywhere.

use dewrun_airflow::{
    Air, Detector, DuctPressures, FanCurve, Fitting, Hole, Inlet, Leak, Line, OpenEnd, Parted,
    Pool, PoolShape, Side, State, Stretch, Trap, Tube,
};
use dewrun_quantity::{Density, FlowResistance, Length, Pressure, Viscosity, Volume, VolumeFlow};

use crate::routes::Draw;

/// Bores on sale, mm.
const BORES_MM: [f64; 8] = [4.0, 6.0, 10.0, 13.0, 15.8, 19.0, 20.9, 25.0];
/// Roughness of plastics, drawn metal and something worse, mm.
const ROUGHNESS_MM: [f64; 4] = [0.0, 0.0015, 0.05, 0.15];
/// Parts of a fan's largest flow and pressure along a curve that falls.
const FALLING: [(f64, f64); 6] = [
    (0.0, 1.0),
    (0.2, 0.96),
    (0.4, 0.87),
    (0.6, 0.74),
    (0.8, 0.45),
    (1.0, 0.0),
];

/// A random line, with its fan's curve falling throughout.
#[must_use]
pub fn line(seed: u64) -> Line {
    let mut draw = Draw::new(seed ^ 0xA1F1);
    let bore_mm = draw.one_of(&BORES_MM);
    // Some metres a second in the bore, and what pushes that through.
    let largest_lpm = 0.06 * bore_mm * bore_mm * draw.between(1.0, 8.0);
    let largest_pa = draw.between(100.0, 1000.0);
    let airs: [Air; 3] = core::array::from_fn(|_| air(&mut draw));
    let [intake_air, detector_air, exhaust_air] = airs;
    let holes = 1 + draw.below(8);
    let hole = Hole {
        diameter: Length::millimetres(bore_mm * draw.between(0.2, 0.6)),
        discharge: draw.between(0.55, 0.8),
    };
    Line {
        inlet: if draw.chance(0.8) {
            Inlet::Holes(vec![hole; holes])
        } else {
            Inlet::OpenEnd(OpenEnd::SHARP)
        },
        intake: tube(&mut draw, bore_mm, intake_air),
        detector: Detector {
            filter: FlowResistance::pascals_per_litre_per_minute(
                draw.between(0.0, 0.5) * largest_pa / largest_lpm,
            ),
            filter_volume: Volume::millilitres(draw.between(0.0, 100.0)),
            chamber_loss_coefficient: draw.between(0.0, 3.0),
            chamber_bore: Length::millimetres(bore_mm),
            chamber_volume: Volume::millilitres(draw.between(20.0, 600.0)),
            fan: falling_fan(largest_lpm, largest_pa),
            air: detector_air,
        },
        exhaust: tube(&mut draw, bore_mm, exhaust_air),
        outlet: OpenEnd::SHARP,
        duct: duct(&mut draw),
        room: Density::kilograms_per_cubic_metre(1.2),
    }
}

/// A random state of a line: fan, dust, holes, duct; with chances for leaks, a parted joint and water.
#[must_use]
pub fn state(line: &Line, seed: u64) -> State {
    let mut draw = Draw::new(seed ^ 0x57A7);
    let leaks = draw.below(3);
    let parted = draw.chance(0.25);
    let pools = draw.below(3);
    State {
        fan_speed: draw.between(0.6, 1.3),
        dust: draw.between(1.0, 3.0),
        filter_missing: draw.chance(0.1),
        hole_open: Vec::new(),
        duct: draw.chance(0.5).then(|| duct(&mut draw)),
        leaks: (0..leaks).map(|_| leak(&mut draw, line)).collect(),
        parted: parted.then(|| {
            let side = side(&mut draw);
            Parted {
                side,
                at: line.tube(side).length() * draw.unit(),
                space: Pressure::pascals(draw.between(-20.0, 20.0)),
            }
        }),
        pools: (0..pools).map(|_| pool(&mut draw, line)).collect(),
    }
}

/// A state without any break: no joint parted, no water, leaks as drawn.
#[must_use]
pub fn whole_state(line: &Line, seed: u64) -> State {
    State {
        parted: None,
        pools: Vec::new(),
        ..state(line, seed)
    }
}

/// Any finite number anywhere on a line and in its state.
#[must_use]
pub fn wild(seed: u64) -> (Line, State) {
    let (mut line, mut draw) = (line(seed), Draw::new(seed ^ 0x3117));
    let mut state = state(&line, seed);
    for _ in 0..=draw.below(4) {
        let number = any_number(&mut draw);
        match draw.below(14) {
            0 => line.intake.stretches[0].length = Length::metres(number),
            1 => line.intake.stretches[0].bore = Length::millimetres(number),
            2 => line.exhaust.stretches[0].roughness = Length::millimetres(number),
            3 => line.detector.chamber_loss_coefficient = number,
            4 => line.detector.filter = FlowResistance::pascals_per_litre_per_minute(number),
            5 => line.duct.intake = Pressure::pascals(number),
            6 => line.duct.exhaust = Pressure::pascals(number),
            7 => line.exhaust.stretches[0].air.density = Density::kilograms_per_cubic_metre(number),
            8 => line.outlet.outward = number,
            9 => state.fan_speed = number,
            10 => state.dust = number,
            11 => line.intake.stretches[0].rise = Length::metres(number),
            12 => state
                .leaks
                .iter_mut()
                .for_each(|leak| leak.at = Length::metres(number)),
            _ => state.pools.push(Pool {
                side: Side::Exhaust,
                shape: PoolShape::Wedge {
                    at: Length::metres(1.0),
                    volume: Volume::millilitres(number),
                    fall_before: any_number(&mut draw),
                    fall_after: 0.02,
                },
            }),
        }
    }
    (line, state)
}

/// The same fan with another curve shape: pressures in the parts of its largest that a fan with a hump has.
///
/// # Panics
/// Never: the points rise.
#[must_use]
pub fn humped_fan(largest_lpm: f64, largest_pa: f64) -> FanCurve {
    const HUMPED: [(f64, f64); 6] = [
        (0.0, 0.68),
        (0.15, 0.9),
        (0.3, 1.0),
        (0.54, 0.9),
        (0.77, 0.57),
        (1.0, 0.0),
    ];
    fan(&HUMPED, largest_lpm, largest_pa)
}

fn falling_fan(largest_lpm: f64, largest_pa: f64) -> FanCurve {
    fan(&FALLING, largest_lpm, largest_pa)
}

fn fan(shape: &[(f64, f64)], largest_lpm: f64, largest_pa: f64) -> FanCurve {
    let points: Vec<(VolumeFlow, Pressure)> = shape
        .iter()
        .map(|&(q, p)| {
            let flow = VolumeFlow::litres_per_minute(q * largest_lpm);
            (flow, Pressure::pascals(p * largest_pa))
        })
        .collect();
    FanCurve::new(&points, Density::kilograms_per_cubic_metre(1.2)).expect("the points rise")
}

fn air(draw: &mut Draw) -> Air {
    let t_k = draw.between(250.0, 315.0);
    Air {
        density: Density::kilograms_per_cubic_metre(1.2 * 293.15 / t_k),
        viscosity: Viscosity::micropascal_seconds(18.2 * t_k / 293.15),
    }
}

/// One to three stretches with a bend between each two.
fn tube(draw: &mut Draw, bore_mm: f64, air: Air) -> Tube {
    let roughness = Length::millimetres(draw.one_of(&ROUGHNESS_MM));
    let count = 1 + draw.below(3);
    let mut stretches = Vec::new();
    let mut fittings = Vec::new();
    let mut end = Length::ZERO;
    for _ in 0..count {
        let length = Length::metres(draw.between(0.3, 15.0));
        stretches.push(Stretch {
            length,
            bore: Length::millimetres(bore_mm),
            roughness,
            transition: 1.0,
            rise: length * draw.between(-0.5, 0.5),
            air,
        });
        end += length;
        fittings.push(Fitting {
            at: end,
            loss_coefficient: draw.between(0.0, 1.0),
        });
    }
    let traps = (0..draw.below(2))
        .map(|_| Trap {
            at: end * draw.unit(),
            volume: Volume::millilitres(draw.between(20.0, 200.0)),
        })
        .collect();
    Tube {
        stretches,
        fittings,
        traps,
    }
}

fn duct(draw: &mut Draw) -> DuctPressures {
    let static_pa = draw.between(-300.0, 300.0);
    DuctPressures {
        intake: Pressure::pascals(static_pa + draw.between(0.0, 60.0)),
        exhaust: Pressure::pascals(static_pa + draw.between(0.0, 20.0)),
    }
}

fn side(draw: &mut Draw) -> Side {
    if draw.chance(0.5) {
        Side::Intake
    } else {
        Side::Exhaust
    }
}

fn leak(draw: &mut Draw, line: &Line) -> Leak {
    let side = side(draw);
    Leak {
        side,
        at: line.tube(side).length() * draw.unit(),
        hole: Hole {
            diameter: Length::millimetres(draw.between(0.5, 6.0)),
            discharge: 0.61,
        },
        space: Pressure::pascals(draw.between(-20.0, 20.0)),
    }
}

fn pool(draw: &mut Draw, line: &Line) -> Pool {
    let side = side(draw);
    let tube = line.tube(side);
    let bore_m = tube.stretches[0].bore.to_metres();
    let shape = if draw.chance(0.5) {
        PoolShape::Uniform {
            from: tube.length() * draw.unit(),
            length: Length::metres(draw.between(0.05, 1.5)),
            depth: Length::metres(bore_m * draw.between(0.05, 1.05)),
        }
    } else {
        PoolShape::Wedge {
            at: tube.length() * draw.unit(),
            volume: Volume::cubic_metres(bore_m * bore_m * bore_m * draw.between(0.0, 40.0)),
            fall_before: draw.between(0.01, 0.2),
            fall_after: draw.between(0.01, 0.2),
        }
    };
    Pool { side, shape }
}

fn any_number(draw: &mut Draw) -> f64 {
    loop {
        let number = f64::from_bits(draw.bits());
        let usual = draw.between(-10.0, 100.0);
        let number = draw.one_of(&[number, usual, 0.0, -1.0, 1e-300, 1e300]);
        if number.is_finite() {
            return number;
        }
    }
}
