//! A solved line told place by place: pressures, leaks, sample share, transport time, budget.

use dewrun_quantity::{Length, MassFlow, Pressure, VolumeFlow};

use crate::airflow::{Airflow, CoursePoint, Direction, PressureAt};
use crate::chain::{AtDetector, Begin};
use crate::layout::reynolds_at_detector_s_kg;
use crate::line::{Line, Side};
use crate::part::{End, Opening, Part, Piece, Place, Section};
use crate::sections::Sections;
use crate::share::Mixing;
use crate::state::State;
use crate::transport_time::Elapsed;

/// Less at the sensor is no flow [m3/s]: 0.001 L/min, a hundredth of what any sensor tells from nothing.
const STILL_M3_S: f64 = 0.001 / 60_000.0;

/// An airflow in the making.
pub(crate) struct Story<'a> {
    detector: AtDetector<'a>,
    reynolds_s_kg: [f64; 2],
    told: Airflow,
}

/// The air at a place on the way along a section.
#[derive(Debug, Clone, Copy)]
struct Here {
    flow_kg_s: f64,
    pressure_pa: f64,
    /// Of the next leak, where it is known beforehand.
    next_inflow_kg_s: Option<f64>,
}

impl Here {
    fn at_start(begin: Begin) -> Self {
        Self {
            flow_kg_s: begin.flow_kg_s,
            pressure_pa: begin.pressure_pa,
            next_inflow_kg_s: begin.first_inflow_kg_s,
        }
    }

    /// Takes in what comes through a leak, and says how much.
    fn take_in(&mut self, opening: &Opening) -> f64 {
        let known = self.next_inflow_kg_s.take();
        let inflow_kg_s = known.unwrap_or_else(|| opening.inflow_kg_s(self.pressure_pa));
        self.flow_kg_s += inflow_kg_s;
        inflow_kg_s
    }
}

impl<'a> Story<'a> {
    /// Nothing flows and nothing is known but the pressures in the duct.
    pub(crate) fn of(line: &Line, state: &State, detector: AtDetector<'a>) -> Self {
        let duct = state.duct.unwrap_or(line.duct);
        let parted_intake = state
            .parted
            .is_some_and(|parted| parted.side == Side::Intake);
        let duct_pressures = [
            (Place::DuctAtIntake, duct.intake),
            (Place::DuctAtExhaust, duct.exhaust),
        ];
        let told = Airflow {
            direction: Direction::Still,
            sensor: VolumeFlow::ZERO,
            mass: MassFlow::ZERO,
            share: 0.0,
            transport: None,
            holes: (!parted_intake).then_some(VolumeFlow::ZERO),
            leaks: vec![VolumeFlow::ZERO; state.leaks.len()],
            stub: state.parted.map(|_| VolumeFlow::ZERO),
            reynolds_intake: 0.0,
            reynolds_exhaust: 0.0,
            pressures: duct_pressures
                .map(|(place, pressure)| PressureAt { place, pressure })
                .to_vec(),
            course: Vec::new(),
            budget: crate::Budget::default(),
            imbalance: Pressure::ZERO,
        };
        Self {
            detector,
            reynolds_s_kg: [
                reynolds_at_detector_s_kg(&line.intake, Side::Intake),
                reynolds_at_detector_s_kg(&line.exhaust, Side::Exhaust),
            ],
            told,
        }
    }

    /// The section with the detector, at its trial value.
    pub(crate) fn tell_main(&mut self, sections: &Sections, value: f64) {
        let main = &sections.main;
        let from_duct = sections.before.is_empty();
        let mut here = Here::at_start(Begin::of(main, value, Some(self.detector)));
        let mut mixing = match main.start {
            End::Open(_) if from_duct => Mixing::of_duct_air(here.flow_kg_s),
            _ => Mixing::of_other_air(here.flow_kg_s),
        };
        let mut elapsed = Elapsed::default();
        let mut in_intake = true;
        self.told_at_start(main, here, from_duct);
        for part in &main.parts {
            match part {
                Part::Piece(piece) => {
                    self.pass(piece, &mut here);
                    if in_intake {
                        elapsed.pass(
                            plug_s(piece, here.flow_kg_s),
                            reynolds(piece, here.flow_kg_s),
                        );
                    }
                }
                Part::Leak(opening) => {
                    let inflow_kg_s = here.take_in(opening);
                    self.leak(opening, inflow_kg_s);
                    self.at(Place::Leak(opening.number), here);
                    if in_intake {
                        mixing.take_in(inflow_kg_s);
                    }
                }
                Part::Place(place) => self.at(*place, here),
                Part::Fan => {
                    in_intake = false;
                    self.sensor(here.flow_kg_s, mixing, elapsed);
                    let rise_pa = self.detector.pressure_pa(here.flow_kg_s);
                    self.told.budget.fan = Pressure::pascals(rise_pa);
                    here.pressure_pa += rise_pa;
                    self.course(Side::Exhaust, 0.0, here);
                }
                Part::Break(..) => {}
            }
        }
        self.told_at_end(main, here, sections.after.is_empty());
    }

    /// A section between the duct or another break and a break.
    pub(crate) fn tell_beside(&mut self, section: &Section, value: f64, parted: Option<Side>) {
        let mut here = Here::at_start(Begin::of(section, value, None));
        let start_kg_s = here.flow_kg_s;
        for part in &section.parts {
            match part {
                Part::Piece(piece) => here.pressure_pa -= piece.loss.pressure_pa(here.flow_kg_s),
                Part::Leak(opening) => {
                    let inflow_kg_s = here.take_in(opening);
                    self.leak(opening, inflow_kg_s);
                }
                Part::Place(Place::Inlet) => self.inlet(&section.start, here.flow_kg_s),
                Part::Place(_) | Part::Fan | Part::Break(..) => {}
            }
        }
        // Of a joint's two ends the one that a section beside the detector has lies towards the duct.
        let stub = match (parted, section.start, section.end) {
            (Some(Side::Intake), _, End::Open(mouth)) => Some(here.flow_kg_s / mouth.density_kg_m3),
            (Some(Side::Exhaust), End::Open(mouth), _) => Some(start_kg_s / mouth.density_kg_m3),
            _ => None,
        };
        if let Some(stub_m3_s) = stub {
            self.told.stub = Some(VolumeFlow::cubic_metres_per_second(stub_m3_s));
        }
    }

    pub(crate) fn end(self) -> Airflow {
        self.told
    }

    fn told_at_start(&mut self, main: &Section, here: Here, from_duct: bool) {
        let mut outside_pa = here.pressure_pa;
        if let End::Open(mouth) = &main.start {
            outside_pa = mouth.pressure_pa;
            self.told.budget.inlet = Pressure::pascals(outside_pa - here.pressure_pa);
            if !from_duct {
                self.at(Place::PartedJoint, here);
            }
        }
        self.told.budget.ends = Pressure::pascals(outside_pa);
        self.course(Side::Intake, main.start_m, here);
        if from_duct {
            self.inlet(&main.start, here.flow_kg_s);
        }
    }

    fn told_at_end(&mut self, main: &Section, here: Here, to_duct: bool) {
        let mut outside_pa = here.pressure_pa;
        if let End::Open(mouth) = &main.end {
            outside_pa = mouth.pressure_pa;
            let behind_pa = mouth.behind_pa(-here.flow_kg_s);
            self.told.budget.outlet = Pressure::pascals(behind_pa - outside_pa);
            self.told.imbalance = Pressure::pascals(here.pressure_pa - behind_pa);
            if !to_duct {
                self.at(Place::PartedJoint, here);
            }
        }
        self.told.budget.ends = self.told.budget.ends - Pressure::pascals(outside_pa);
    }

    /// Pressure falls by what a piece costs.
    fn pass(&mut self, piece: &Piece, here: &mut Here) {
        let lost_pa = piece.loss.pressure_pa(here.flow_kg_s);
        here.pressure_pa -= lost_pa;
        self.told.budget.spend(piece.cause, lost_pa);
        if let Some((side, at_m)) = piece.end_m {
            self.course(side, at_m, *here);
        }
    }

    fn sensor(&mut self, flow_kg_s: f64, mixing: Mixing, elapsed: Elapsed) {
        let q_m3_s = flow_kg_s / self.detector.density_kg_m3;
        let told = &mut self.told;
        told.mass = MassFlow::kilograms_per_second(flow_kg_s);
        told.sensor = VolumeFlow::cubic_metres_per_second(q_m3_s);
        let [intake, exhaust] = self.reynolds_s_kg;
        told.reynolds_intake = intake * flow_kg_s.abs();
        told.reynolds_exhaust = exhaust * flow_kg_s.abs();
        if q_m3_s.abs() < STILL_M3_S {
            return;
        }
        if q_m3_s < 0.0 {
            told.direction = Direction::Reversed;
            return;
        }
        told.direction = Direction::Forward;
        told.share = mixing.share();
        told.transport = (0.0 < told.share).then(|| elapsed.time());
    }

    fn inlet(&mut self, start: &End, flow_kg_s: f64) {
        if let (End::Open(mouth), Some(_)) = (start, self.told.holes) {
            let q_m3_s = flow_kg_s / mouth.density_kg_m3;
            self.told.holes = Some(VolumeFlow::cubic_metres_per_second(q_m3_s));
        }
    }

    fn leak(&mut self, opening: &Opening, inflow_kg_s: f64) {
        if let Some(leak) = self.told.leaks.get_mut(opening.number) {
            *leak = VolumeFlow::cubic_metres_per_second(inflow_kg_s / opening.density_kg_m3);
        }
    }

    fn at(&mut self, place: Place, here: Here) {
        let pressure = Pressure::pascals(here.pressure_pa);
        self.told.pressures.push(PressureAt { place, pressure });
    }

    fn course(&mut self, side: Side, at_m: f64, here: Here) {
        self.told.course.push(CoursePoint {
            side,
            at: Length::metres(at_m),
            pressure: Pressure::pascals(here.pressure_pa),
        });
    }
}

/// Time to pass a piece as a plug (s).
fn plug_s(piece: &Piece, flow_kg_s: f64) -> f64 {
    piece.air_m3 * piece.density_kg_m3 / flow_kg_s
}

fn reynolds(piece: &Piece, flow_kg_s: f64) -> Option<f64> {
    Some(piece.reynolds_s_kg? * flow_kg_s.abs())
}
