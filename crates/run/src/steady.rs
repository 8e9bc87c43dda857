//! The steady answer: duct air through the intake tube, the detector and the exhaust tube.

use dewrun_moist_air::fast::dew_or_frost_point_of_c;
use dewrun_moist_air::mixture::mole_fraction;
use dewrun_quantity::{MassFlow, Noted, Power};
use dewrun_tube::{Accuracy, Factors, STAGNANT_KG_S, Stream, StreamState, Trace, march};

use crate::error::{Place, RunError, RunNote, Tube};
use crate::input::{FlowAt, Run};
use crate::outcome::{
    Balance, Grade, Outcome, TubeOutcome, Verdict, WET_SENSOR_MIST, WET_TUBE_G_H,
};
use crate::prepare::Prepared;
use crate::range;
use crate::report::{air_point, tube_outcome};

/// More than the error of a dew point, K: a proof leaves no room for it.
const BOUND_MARGIN_K: f64 = 0.02;
/// Relative change of the flow at which the sensor's state has settled; the march itself is no finer.
const FLOW_SETTLED: f64 = 1e-7;
/// Relative change that is still accepted after all steps: at a millilitre a minute a march is no smoother.
const FLOW_ACCEPTED: f64 = 1e-3;
/// Steps to settle it; five are usual. Where the detector's heat is too much for the flow they lead nowhere.
const FLOW_STEPS: u32 = 30;

/// Evaluates a run in steady state, all walls dry at the start.
///
/// # Range
/// The limits of [`crate::range`].
///
/// # Accuracy
/// Condensate within 0.3 % and sweat within 1 % of the limit of fine cells; the relations as the crate `dewrun_tube` says.
///
/// # Errors
/// [`RunError`] says what keeps the run from being evaluated, and where.
///
/// ```
/// use dewrun_quantity::{Conductivity, HumidityRatio, Length, Power, PowerPerLength, Pressure, RelativeHumidity, Speed, Temperature, VolumeFlow};
/// use dewrun_run::air::{Humidity, Over, Pair};
/// use dewrun_run::{Detector, Flow, FlowAt, Leg, Run, Space, TubeWall, Verdict, evaluate};
/// let leg = Leg {
///     space: 0, length: Length::metres(8.0), rise: Length::metres(-0.16),
///     tube: TubeWall { bore: Length::millimetres(19.0), outside_diameter: Length::millimetres(22.0), conductivity: Conductivity::watts_per_metre_kelvin(0.19) },
///     insulation: None, emissivity: 0.9, tracing: PowerPerLength::ZERO,
/// };
/// let run = Run {
///     pressure: Pressure::pascals(101_325.0),
///     duct_air: Pair::Temperature(Temperature::celsius(32.0), Humidity::DewPoint(Temperature::celsius(26.0))),
///     flow: Flow { volume: VolumeFlow::litres_per_minute(30.0), at: FlowAt::Intake },
///     spaces: vec![Space {
///         temperature: Temperature::celsius(20.0),
///         humidity: Humidity::Relative { value: RelativeHumidity::percent(50.0), over: Over::Water },
///         radiant: None, wind: Speed::ZERO,
///     }],
///     intake: vec![leg], detector: Detector::default(), exhaust: vec![],
/// };
/// let outcome = evaluate(&run).unwrap().value;
/// assert_eq!(outcome.verdict, Verdict::Wet);
/// ```
pub fn evaluate(run: &Run) -> Result<Noted<Outcome, RunNote>, RunError> {
    evaluate_at(run, Factors::PUBLISHED, Accuracy::PRODUCT)
}

/// The same with the relations multiplied by factors: what the answer would be if they were off by as much.
///
/// # Range
/// As [`evaluate`]; factors from 0.5 to 2.
///
/// # Errors
/// As [`evaluate`].
pub fn evaluate_with(run: &Run, factors: Factors) -> Result<Noted<Outcome, RunNote>, RunError> {
    evaluate_at(run, factors, Accuracy::PRODUCT)
}

/// The same with cells a hundred times finer: what [`evaluate`] is held against, too slow for anything else.
///
/// # Range
/// As [`evaluate`].
///
/// # Errors
/// As [`evaluate`].
pub fn evaluate_fine(run: &Run) -> Result<Noted<Outcome, RunNote>, RunError> {
    evaluate_at(run, Factors::PUBLISHED, Accuracy::FINE)
}

fn evaluate_at(
    run: &Run,
    factors: Factors,
    accuracy: Accuracy,
) -> Result<Noted<Outcome, RunNote>, RunError> {
    let mut notes = Vec::new();
    let prepared = Prepared {
        factors,
        ..Prepared::new(run, &mut notes)?
    };
    let passage = prepared.pass(accuracy)?;
    prepared.refuse_extremes(&passage)?;
    let outcome = prepared.outcome(&passage);
    prepared.reserves(&passage, &mut notes);
    Ok(Noted {
        value: outcome,
        notes,
    })
}

/// The air's way through both tubes.
pub(crate) struct Passage {
    pub(crate) inlet: Stream,
    pub(crate) intake: Trace,
    /// The air around the sensor.
    pub(crate) chamber: StreamState,
    pub(crate) exhaust: Trace,
}

impl Prepared {
    /// Through both tubes, at the flow that was asked for.
    ///
    /// Counted at the sensor the flow follows the air's own state there; each step leaves as much of the error as the air warms or cools of its kelvins.
    fn pass(&self, accuracy: Accuracy) -> Result<Passage, RunError> {
        let at_intake = self.dry_air_kg_s(self.t_c, self.w);
        if at_intake <= STAGNANT_KG_S {
            return Ok(self.pass_with(0.0, accuracy));
        }
        let mut passage = self.pass_with(at_intake, accuracy);
        if self.flow_at == FlowAt::Intake {
            return Ok(passage);
        }
        let mut missing = f64::INFINITY;
        for _ in 0..FLOW_STEPS {
            let known = passage.inlet.dry_air_kg_s;
            let wanted = self.dry_air_kg_s(passage.chamber.t_c, passage.chamber.w);
            missing = (wanted - known).abs() / known;
            if missing <= FLOW_SETTLED {
                return Ok(passage);
            }
            if wanted <= STAGNANT_KG_S {
                // Air that a heater would thin out without end does not stand for that.
                if range::ANSWERED.max < passage.chamber.t_c {
                    break;
                }
                return Ok(self.pass_with(0.0, accuracy));
            }
            passage = self.pass_with(wanted, accuracy);
        }
        if missing <= FLOW_ACCEPTED {
            return Ok(passage);
        }
        Err(RunError::NotSolved {
            place: Place::Flow,
            quantity: "a flow of that volume at the sensor",
            remedy: "count it at the intake, or check it against the heat of the detector",
        })
    }

    /// Dry air that the volume flow carries at a state.
    fn dry_air_kg_s(&self, t_c: f64, w: f64) -> f64 {
        self.flow_m3_s * dewrun_moist_air::mixture::density_kg_m3(t_c, w, self.p_pa) / (1.0 + w)
    }

    fn pass_with(&self, dry_air_kg_s: f64, accuracy: Accuracy) -> Passage {
        let inlet =
            Stream::new(self.t_c, self.w, dry_air_kg_s, self.p_pa).with_factors(self.factors);
        let intake = march(&inlet, &self.intake, accuracy);
        let chamber = intake.end.warmed(self.heat_w);
        let exhaust = march(&chamber, &self.exhaust, accuracy);
        Passage {
            inlet,
            intake,
            chamber: chamber.state(),
            exhaust,
        }
    }

    fn outcome(&self, passage: &Passage) -> Outcome {
        let intake = tube_outcome(&passage.intake, self.p_pa);
        let exhaust = (!self.exhaust.is_empty()).then(|| tube_outcome(&passage.exhaust, self.p_pa));
        let chamber = air_point(&passage.chamber, self.p_pa);
        Outcome {
            verdict: verdict(
                &intake,
                exhaust.as_ref(),
                chamber.mist.to_kilograms_per_kilogram(),
            ),
            grade: self.grade(),
            dry_air: MassFlow::kilograms_per_second(passage.inlet.dry_air_kg_s),
            duct_air: air_point(&passage.inlet.state(), self.p_pa),
            intake,
            chamber,
            exhaust,
            balance: balance(passage, self.heat_w),
        }
    }

    /// By bound where no surface can be as cold as the dew or frost point of the duct air: nothing cools the tube below the coldest of air and surroundings.
    fn grade(&self) -> Grade {
        let coldest = self
            .intake
            .iter()
            .chain(&self.exhaust)
            .map(|s| s.air_c.min(s.radiant_c))
            .fold(self.t_c, f64::min);
        let x = mole_fraction(self.w);
        let bone_dry = self.w <= 0.0;
        let below = dew_or_frost_point_of_c(x, self.p_pa)
            .is_some_and(|point_c| point_c + BOUND_MARGIN_K < coldest);
        if bone_dry || below {
            Grade::ByBound
        } else {
            Grade::ByModel
        }
    }

    /// Refuses an answer of which any part is not a number, or lies where no relation holds any more.
    fn refuse_extremes(&self, passage: &Passage) -> Result<(), RunError> {
        for (tube, trace) in [
            (Tube::Intake, &passage.intake),
            (Tube::Exhaust, &passage.exhaust),
        ] {
            for station in &trace.stations {
                let place = Place::Leg(tube, station.segment);
                for t_c in [station.air_c, station.wall_c, station.surface_c] {
                    range::ANSWERED.check(place, t_c)?;
                }
                range::ANSWERED_WATER.check(place, station.w + station.mist)?;
            }
        }
        range::ANSWERED.check(Place::Detector, passage.chamber.t_c)?;
        Ok(())
    }
}

fn verdict(intake: &TubeOutcome, exhaust: Option<&TubeOutcome>, sensor_mist: f64) -> Verdict {
    let wettest = exhaust.map_or(0.0, |tube| tube.condensate.to_grams_per_hour());
    let wettest = wettest.max(intake.condensate.to_grams_per_hour());
    if WET_TUBE_G_H < wettest || WET_SENSOR_MIST < sensor_mist {
        Verdict::Wet
    } else {
        Verdict::Dry
    }
}

/// Water and energy, each term summed on its own.
fn balance(passage: &Passage, heat_w: f64) -> Balance {
    let dry_air = passage.inlet.dry_air_kg_s;
    let start = passage.inlet.state();
    let end = passage.exhaust.end.state();
    let water_in = dry_air * (start.w + start.mist);
    let water_out = dry_air * (end.w + end.mist);
    let (mut water, mut energy, mut turned) = (0.0, 0.0, 0.0);
    for sum in passage
        .intake
        .segments
        .iter()
        .chain(&passage.exhaust.segments)
    {
        water += sum.condensate_kg_s;
        energy += sum.tracing_w + sum.sweat_heat_w - sum.loss_w - sum.condensate_heat_w;
        turned += sum.tracing_w + sum.sweat_heat_w + sum.loss_w.abs() + sum.condensate_heat_w.abs();
    }
    // Where no air flows the detector's heat goes into none.
    let flows = passage.chamber.enthalpy_j_kg - passage.intake.end.state().enthalpy_j_kg;
    let detector_w = if flows == 0.0 { 0.0 } else { heat_w };
    energy += detector_w + dry_air * (start.enthalpy_j_kg - end.enthalpy_j_kg);
    turned += detector_w + dry_air * (start.enthalpy_j_kg.abs() + end.enthalpy_j_kg.abs());
    Balance {
        water_left_over: MassFlow::kilograms_per_second(water_in - water_out - water),
        water_in: MassFlow::kilograms_per_second(water_in),
        energy_left_over: Power::watts(energy),
        energy_turned_over: Power::watts(turned),
    }
}
