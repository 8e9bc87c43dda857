//! From remedies to the types of their answer, by hand.

use dewrun_quantity::Time;
use dewrun_remedies::{
    Alteration, DesignHour, EnteredLeft, Left, Miss, Powered, Subject, Target, Tried, YearLeft,
};
use dewrun_run::{Drain, Tube, Verdict};

use crate::answer_file::file_of_runs;
use crate::output::{
    AlterationOutput, EnteredLeftOutput, ErrorOutput, Figure, LeftOutput, REMEDIES_FORMAT,
    RemediesFile, RemediesOutput, RemediesRunOutput, RemedyOutput, RemedyPowerOutput, TargetOutput,
    YearLeftOutput,
};
use crate::{Access, DocumentError, Leg, Project, WeatherReference};

/// The remedies of a run, and what is told of all of them.
#[derive(Debug, Clone, Copy)]
pub struct RemediesTelling<'a> {
    /// What they were sought for.
    pub subject: &'a Subject,
    /// The project and the position of its run.
    pub of: (&'a Project, usize),
    /// The weather file; none where the conditions entered alone count.
    pub weather: Option<&'a WeatherReference>,
    /// In words.
    pub sentences: &'a [String],
    /// What was tried, in its order.
    pub tried: &'a [Tried],
}

/// The answer about the remedies of a run; of each remedy `words` says what it does and what else comes of it.
#[must_use]
pub fn remedies_answer(
    telling: &RemediesTelling<'_>,
    words: impl Fn(&Tried) -> (String, Vec<String>),
) -> RemediesOutput {
    let RemediesTelling {
        subject, weather, ..
    } = *telling;
    let (project, run) = telling.of;
    let told = |tried: &Tried| {
        let access = access_of(project, run, &tried.alterations);
        remedy(
            subject,
            tried,
            words(tried),
            access.map_or("", Access::words),
        )
    };
    RemediesOutput {
        sentences: telling.sentences.to_vec(),
        weather_file: weather.map(|weather| weather.file.clone()),
        weather_sha256: weather.map(|weather| weather.sha256.clone()),
        target: target(&subject.target),
        is_met: subject.is_met(),
        before: left(&subject.left),
        remedies: telling.tried.iter().map(told).collect(),
    }
}

/// How a person gets to the places at which alterations are made: the hardest of them; that of the detector where they are about no leg.
#[must_use]
pub fn access_of(
    project: &Project,
    run_index: usize,
    alterations: &[Alteration],
) -> Option<Access> {
    let run = project.runs.get(run_index)?;
    let legs = |tube: Tube| -> &[Leg] {
        let exhaust = run.exhaust.as_ref();
        match tube {
            Tube::Intake => &run.intake.legs,
            Tube::Exhaust => exhaust
                .map(|route| route.legs.as_slice())
                .unwrap_or_default(),
        }
    };
    let at = |tube: Tube, at_m: f64| {
        let mut end_m = 0.0;
        legs(tube).iter().find(|leg| {
            end_m += leg.length_m.value;
            at_m <= end_m
        })
    };
    let reached = alterations.iter().filter_map(|one| match one {
        Alteration::Geometry(dewrun_advice::Change::Trap {
            tube, at: place, ..
        }) => at(*tube, place.to_metres()).map(|leg| leg.access),
        other => {
            let (tube, leg) = other.leg()?;
            legs(tube).get(leg).map(|leg| leg.access)
        }
    });
    let hard = |access: &Access| match access {
        Access::Floor => 0,
        Access::Ladder => 1,
        Access::Lift => 2,
        Access::None => 3,
    };
    Some(reached.max_by_key(hard).unwrap_or(run.detector.access))
}

file_of_runs!(RemediesFile, REMEDIES_FORMAT, RemediesRunOutput);

fn target(target: &Target) -> TargetOutput {
    TargetOutput {
        dry_in: target.dry_in.map(|hour| hour_name(hour).to_owned()),
        wet_hours: target.wet_hours.map(Figure),
        formed_l: target.formed_kg.map(Figure),
        chamber_margin_percent: target.chamber_margin.map(|margin| Figure(100.0 * margin)),
        no_frost: target.no_frost,
        blind_hours: target.blind_hours.map(Figure),
        trap_days: target.trap_days.map(Figure),
    }
}

/// The word by which a design hour is asked for.
#[must_use]
pub const fn hour_name(hour: DesignHour) -> &'static str {
    match hour {
        DesignHour::Entered => "entered",
        DesignHour::Wettest04 => "0.4",
        DesignHour::Wettest1 => "1",
        DesignHour::Wettest2 => "2",
    }
}

const fn miss_name(miss: Miss) -> &'static str {
    match miss {
        Miss::Design => "dry_in",
        Miss::WetHours => "wet_hours",
        Miss::Formed => "formed_l",
        Miss::Chamber => "chamber_margin_percent",
        Miss::Frost => "no_frost",
        Miss::Blind => "blind_hours",
        Miss::TrapDays => "trap_days",
    }
}

fn remedy(
    subject: &Subject,
    tried: &Tried,
    (what, side_effects): (String, Vec<String>),
    access: &str,
) -> RemedyOutput {
    let misses = subject.target.missed(&tried.left, subject.rating);
    let works = tried.kinds.iter().map(|kind| kind.work_words());
    RemedyOutput {
        kinds: tried
            .kinds
            .iter()
            .map(|kind| kind.id().to_owned())
            .collect(),
        what,
        meets_target: tried.is_cure,
        misses: misses
            .into_iter()
            .map(|miss| miss_name(miss).to_owned())
            .collect(),
        alterations: tried.alterations.iter().map(alteration).collect(),
        left: left(&tried.left),
        side_effects,
        work: works.collect::<Vec<_>>().join("; "),
        access: access.to_owned(),
        power: tried.powered.as_ref().map(power),
    }
}

fn alteration(alteration: &Alteration) -> AlterationOutput {
    let place = alteration.leg();
    let of_leg = |does: &str, value: Option<f64>, of: Option<String>| AlterationOutput {
        does: does.to_owned(),
        tube: place.map(|(tube, _)| tube_name(tube).to_owned()),
        position: place.and_then(|(_, leg)| u64::try_from(leg).ok()),
        value: value.map(Figure),
        of,
    };
    match *alteration {
        Alteration::Geometry(change) => geometry(&change, of_leg),
        Alteration::TrapCapacity {
            tube,
            trap,
            capacity,
        } => AlterationOutput {
            tube: Some(tube_name(tube).to_owned()),
            position: u64::try_from(trap).ok(),
            ..of_leg("trap_capacity_ml", Some(capacity.to_grams()), None)
        },
        Alteration::DrainEvery(time) => of_leg("drain_every_days", Some(time.to_days()), None),
        Alteration::Insulate { thickness, .. } => of_leg(
            "insulate_mm",
            Some(thickness.to_millimetres()),
            Some(dewrun_remedies::INSULATION_ROW.to_owned()),
        ),
        Alteration::Bare { .. } => of_leg("bare", None, None),
        Alteration::Trace { power, .. } => {
            of_leg("trace_w_m", Some(power.to_watts_per_metre()), None)
        }
        Alteration::Space { space, .. } => of_leg("space", None, Some(space.to_string())),
        Alteration::Tube { row, .. } => of_leg("tube", None, Some(row.to_owned())),
        Alteration::Flow(volume) => of_leg("flow_l_min", Some(volume.to_litres_per_minute()), None),
        Alteration::Warm(heat) => of_leg("detector_heat_w", Some(heat.to_watts()), None),
        Alteration::DetectorAt { intake_legs, .. } => AlterationOutput {
            position: u64::try_from(intake_legs).ok(),
            ..of_leg("detector_behind_leg", None, None)
        },
    }
}

fn geometry(
    change: &dewrun_advice::Change,
    of_leg: impl Fn(&str, Option<f64>, Option<String>) -> AlterationOutput,
) -> AlterationOutput {
    use dewrun_advice::Change;
    match *change {
        Change::Trap {
            tube, at, drain, ..
        } => AlterationOutput {
            tube: Some(tube_name(tube).to_owned()),
            ..of_leg(
                "trap_at_m",
                Some(at.to_metres()),
                Some(
                    match drain {
                        Drain::ByHand => "hand_drained",
                        Drain::ByItself => "self_draining",
                        Drain::OpenStub => "open_stub",
                    }
                    .to_owned(),
                ),
            )
        },
        Change::Leg { rise, .. } => of_leg("rise_m", Some(rise.to_metres()), None),
        Change::Hangers { spacing, .. } => {
            of_leg("hanger_spacing_m", Some(spacing.to_metres()), None)
        }
    }
}

const fn tube_name(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "intake",
        Tube::Exhaust => "exhaust",
    }
}

fn power(powered: &Powered) -> RemedyPowerOutput {
    let thermostat = powered.thermostat;
    RemedyPowerOutput {
        power_w: Figure(powered.power.to_watts()),
        energy_kwh: powered.energy_kwh.map(Figure),
        thermostat_c: thermostat.map(|one| Figure(one.on_up_to_c)),
        thermostat_kwh: thermostat.map(|one| Figure(one.energy_kwh)),
        stuck_on_c: powered.stuck_on.map(|hot| Figure(hot.to_celsius())),
        bears_c: powered.bears.map(|most| Figure(most.to_celsius())),
        failed: left(&powered.failed),
    }
}

fn left(left: &Left) -> LeftOutput {
    LeftOutput {
        entered: entered(&left.entered),
        year: left.year.as_ref().map(year),
    }
}

fn entered(left: &EnteredLeft) -> EnteredLeftOutput {
    let air = left.air.as_ref();
    let transport = air.and_then(|air| air.transport);
    let seconds = |time: Time| Figure(time.to_seconds());
    EnteredLeftOutput {
        verdict: match left.verdict {
            Verdict::Dry => "dry",
            Verdict::Wet => "wet",
        }
        .to_owned(),
        water_g_h: Figure(left.forms.to_grams_per_hour()),
        sweat_g_h: Figure(left.sweat.to_grams_per_hour()),
        chamber_percent: Figure(left.chamber.to_percent()),
        is_blind: air.map(|air| air.water.blind.is_some()),
        standing_g: air.map(|air| Figure(air.water.standing.to_grams())),
        flow_l_min: air.map(|air| Figure(air.flow.to_litres_per_minute())),
        first_smoke_s: transport.map(|[first, _]| seconds(first)),
        ninety_percent_s: transport.map(|[_, ninety]| seconds(ninety)),
    }
}

fn year(left: &YearLeft) -> YearLeftOutput {
    // An empty sum is −0.
    let none = |value: f64| Figure(value + 0.0);
    YearLeftOutput {
        hours: none(left.hours),
        wet_hours: none(left.wet_hours),
        water_kg: none(left.formed_kg),
        design_g_h: left.design_g_h.map(none),
        mist_hours: none(left.mist_hours),
        frost_hours: none(left.frost_hours),
        most_humid_chamber_percent: Figure(100.0 * left.most_humid_chamber),
        sweat_kg: none(left.sweat_kg),
        blind_hours: left.blind_hours.map(none),
        limit_hours: left.limit_hours.map(none),
        into_detector_kg: left.into_detector_kg.map(none),
        drained_kg: left.drained_kg.map(none),
        trap_days: left.trap_days.map(Figure),
    }
}
