//! Random projects within the limits, with awkward numbers among them.

use dewrun_document::{
    Access, AirPair, AirPath, AirSource, AirflowSensor, BoreForm, Detector, DryEnough, DryIn, Duct,
    DuctEntry, ExpectedReading, FallForm, FanPoint, Fitting, FittingKind, Flow, FlowAt, Humidity,
    Input, Insulation, Kept, Leg, Occasion, Origin, Over, Period, Pressure, Project, Reading,
    Relative, Route, Run, Side, Space, SpaceYear, Trap, TrapCondition, TrapForm, TrapKind,
    TroublesKept, TubeStuff, TubeSupply, TubeWall, Visit, VisitedTube, WaterFound,
    WeatherReference, limits,
};
use dewrun_quantity::Limits;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::{BoxedStrategy, Just, Strategy, any, prop_oneof};
use proptest::sample::select;

use crate::troubles::troubles;
use crate::years;

/// Keeps a part where there is one.
macro_rules! kept {
    ($part:ident, $type:ty) => {
        $part.map(|part: $type| Kept::<$type>::of(&part).expect("within all limits"))
    };
}

/// Any project that a file may hold.
pub(crate) fn project() -> impl Strategy<Value = Project> {
    let pressure = prop_oneof![
        input(limits::ABSOLUTE_PA).prop_map(Pressure::AbsolutePa),
        input(limits::ALTITUDE_M).prop_map(Pressure::AltitudeM),
    ];
    let spaces = vec(space(), 1..4);
    let runs = vec(run(), 0..3);
    let year = (option::of(years::file()), option::of(target()));
    let head = (text(), text(), pressure, year);
    (head, spaces, runs).prop_map(
        |((name, note, pressure, (weather, target)), spaces, runs)| {
            let mut project = Project {
                name,
                note,
                pressure,
                weather: kept!(weather, WeatherReference),
                target: kept!(target, DryEnough),
                spaces,
                runs,
            };
            number_ids(&mut project);
            project
        },
    )
}

fn target() -> impl Strategy<Value = DryEnough> {
    let hours = [
        DryIn::Entered,
        DryIn::Wettest04,
        DryIn::Wettest1,
        DryIn::Wettest2,
    ];
    (
        option::of(select(hours.to_vec())),
        option::of(number(limits::HOURS_OF_YEAR)),
        option::of(number(limits::LITRES_OF_YEAR)),
        option::of(number(limits::CHAMBER_MARGIN_PERCENT)),
        any::<bool>(),
        option::of(number(limits::HOURS_OF_YEAR)),
        option::of(number(limits::TRAP_DAYS)),
    )
        .prop_map(
            |(
                dry_in,
                wet_hours,
                formed_l,
                chamber_margin_percent,
                no_frost,
                blind_hours,
                trap_days,
            )| DryEnough {
                dry_in,
                wet_hours,
                formed_l,
                chamber_margin_percent,
                no_frost,
                blind_hours,
                trap_days,
            },
        )
}

/// Gives every id its own number and lets every leg lie in a space that exists.
fn number_ids(project: &mut Project) {
    let count = project.spaces.len();
    for (at, space) in project.spaces.iter_mut().enumerate() {
        space.id = format!("space {at}");
    }
    for (at, run) in project.runs.iter_mut().enumerate() {
        run.id = format!("run {at}");
        let is_variant = 0 < at && run.name.len().is_multiple_of(2);
        run.variant_of = is_variant.then(|| "run 0".to_owned());
        let exhaust = run.exhaust.iter_mut().flat_map(|route| &mut route.legs);
        for (at, leg) in run.intake.legs.iter_mut().chain(exhaust).enumerate() {
            leg.id = format!("leg \"{at}\"");
            leg.space = format!("space {}", at % count);
        }
    }
}

/// Short texts, quotes, controls and signs of many scripts included.
pub(crate) fn text() -> BoxedStrategy<String> {
    vec(any::<char>(), 0..12)
        .prop_map(|signs| signs.into_iter().collect())
        .boxed()
}

/// A number within its limits: either end, a plain one, or any pattern of bits that falls between.
pub(crate) fn number(limits: Limits) -> BoxedStrategy<f64> {
    let Limits { min, max, .. } = limits;
    let bits = any::<f64>().prop_map(move |value| {
        let inside = if value.is_finite() { value % max } else { max };
        inside.clamp(min, max)
    });
    prop_oneof![Just(min), Just(max), min..max, bits].boxed()
}

pub(crate) fn input(limits: Limits) -> BoxedStrategy<Input<f64>> {
    let three = (number(limits), number(limits), number(limits));
    let assumed = three.prop_map(|(a, b, c)| {
        let (low, high) = (a.min(b).min(c), a.max(b).max(c));
        let value = a.min(b).max(a.max(b).min(c));
        let row = "row".to_owned();
        Input {
            value,
            origin: Origin::Assumed { row, low, high },
        }
    });
    let measured = (number(limits), text()).prop_map(|(value, by)| Input {
        value,
        origin: Origin::Measured {
            on: "2024-02-29".to_owned(),
            by,
        },
    });
    prop_oneof![number(limits).prop_map(Input::typed), assumed, measured].boxed()
}

fn relative() -> impl Strategy<Value = Relative> {
    let over = select(vec![Over::Water, Over::Ice]);
    (input(limits::RELATIVE_PERCENT), over).prop_map(|(percent, over)| Relative { percent, over })
}

fn humidity() -> impl Strategy<Value = Humidity> {
    prop_oneof![
        relative().prop_map(Humidity::Relative),
        input(limits::DEW_POINT_C).prop_map(Humidity::DewPoint),
        input(limits::FROST_POINT_C).prop_map(Humidity::FrostPoint),
        input(limits::RATIO_KG_KG).prop_map(Humidity::Ratio),
        input(limits::WET_BULB_C).prop_map(Humidity::WetBulb),
        input(limits::ENTHALPY_KJ_KG).prop_map(Humidity::Enthalpy),
    ]
}

fn air() -> impl Strategy<Value = AirPair> {
    prop_oneof![
        (input(limits::TEMPERATURE_C), humidity()).prop_map(|(temperature_c, humidity)| {
            AirPair::Temperature {
                temperature_c,
                humidity,
            }
        }),
        (input(limits::DEW_POINT_C), relative()).prop_map(|(dew_point_c, relative)| {
            AirPair::DewPointAndRelative {
                dew_point_c,
                relative,
            }
        }),
        (input(limits::FROST_POINT_C), relative()).prop_map(|(frost_point_c, relative)| {
            AirPair::FrostPointAndRelative {
                frost_point_c,
                relative,
            }
        }),
        (input(limits::RATIO_KG_KG), relative()).prop_map(|(ratio_kg_kg, relative)| {
            AirPair::RatioAndRelative {
                ratio_kg_kg,
                relative,
            }
        }),
    ]
}

fn space() -> impl Strategy<Value = Space> {
    (
        text(),
        input(limits::TEMPERATURE_C),
        humidity(),
        option::of(input(limits::RADIANT_C)),
        input(limits::WIND_M_S),
        (
            option::of(input(limits::PRESSURE_PA)),
            option::of(years::space()),
        ),
    )
        .prop_map(
            |(name, temperature_c, humidity, radiant_c, wind_m_s, (pressure_pa, year))| Space {
                id: String::new(),
                name,
                temperature_c,
                humidity,
                radiant_c,
                wind_m_s,
                pressure_pa,
                year: kept!(year, SpaceYear),
            },
        )
}

fn run() -> impl Strategy<Value = Run> {
    let duct = (
        text(),
        air(),
        input(limits::STATIC_PA),
        input(limits::VELOCITY_PA),
        (
            option::of(years::source()),
            option::of(vec(years::period(), 0..3)),
        ),
    )
        .prop_map(
            |(name, air, static_pa, velocity_pa, (source, fan_off))| Duct {
                name,
                air,
                static_pa,
                velocity_pa,
                source: kept!(source, AirSource),
                fan_off: kept!(fan_off, Vec<Period>),
            },
        );
    let flow = (
        input(limits::VOLUME_L_MIN),
        select(vec![FlowAt::Intake, FlowAt::Sensor]),
    )
        .prop_map(|(volume_l_min, at)| Flow { volume_l_min, at });
    let detector = (
        input(limits::HEAT_W),
        option::of(input(limits::HUMIDITY_RATING_PERCENT)),
        access(),
    )
        .prop_map(|(heat_w, humidity_rating_percent, access)| Detector {
            heat_w,
            humidity_rating_percent,
            access,
        });
    let tubes = (route(), option::of(route()));
    let rest = (
        option::of(air_path()),
        vec(visit(), 0..3),
        option::of(troubles()),
    );
    (text(), duct, flow, tubes, detector, rest).prop_map(
        |(name, duct, flow, (intake, exhaust), detector, (air_path, visits, troubles))| Run {
            id: String::new(),
            name,
            variant_of: None,
            duct,
            flow,
            intake,
            detector,
            exhaust,
            air_path,
            visits,
            troubles: kept!(troubles, TroublesKept),
        },
    )
}

fn visit() -> impl Strategy<Value = Visit> {
    let readings = limits::READINGS.map(|(_, limits)| option::of(reading(limits)));
    let tube = select(vec![VisitedTube::Intake, VisitedTube::Exhaust]);
    let found = (tube, number(limits::TRAP_AT_M), number(limits::WATER_G)).prop_map(
        |(tube, at_m, water_g)| WaterFound {
            tube,
            at_m,
            water_g,
        },
    );
    let said = (text(), select(vec![Occasion::AsFitted, Occasion::Service]));
    let place = option::of(number(limits::TRAP_AT_M));
    (said, readings, place, vec(found, 0..3), text()).prop_map(
        |((by, occasion), readings, suction_at_m, water, note)| {
            let [
                airflow_l_min,
                duct_static_pa,
                suction_pa,
                first_smoke_s,
                ninety_percent_s,
            ] = readings;
            Visit {
                on: "2024-02-29".to_owned(),
                by,
                occasion,
                airflow_l_min,
                duct_static_pa,
                suction_pa,
                suction_at_m,
                first_smoke_s,
                ninety_percent_s,
                water,
                note,
            }
        },
    )
}

fn reading(limits: Limits) -> impl Strategy<Value = Reading> {
    let three = [0; 3].map(|_| number(limits::EXPECTED));
    (number(limits), option::of(three)).prop_map(|(value, three)| Reading {
        value,
        expected: three.map(|mut three| {
            three.sort_by(f64::total_cmp);
            let [low, usual, high] = three;
            ExpectedReading { usual, low, high }
        }),
    })
}

fn air_path() -> impl Strategy<Value = AirPath> {
    let maybe = |limits| option::of(input(limits));
    let point = (input(limits::VOLUME_L_MIN), input(limits::PRESSURE_PA)).prop_map(
        |(flow_l_min, pressure_pa)| FanPoint {
            flow_l_min,
            pressure_pa,
        },
    );
    let holes = (
        maybe(limits::HOLE_COUNT),
        maybe(limits::HOLE_DIAMETER_MM),
        maybe(limits::HOLE_DISCHARGE),
    );
    let ends = (
        maybe(limits::CATCH),
        maybe(limits::CATCH),
        maybe(limits::STATIC_PA),
        maybe(limits::VELOCITY_PA),
    );
    let device = (
        vec(point, 0..3),
        maybe(limits::FILTER_PA_MIN_L),
        maybe(limits::LOSS_COEFFICIENT),
        maybe(limits::CHAMBER_VOLUME_ML),
        maybe(limits::START_SUCTION_PA),
    );
    let sensor = select(vec![
        AirflowSensor::Volume,
        AirflowSensor::Mass,
        AirflowSensor::VelocityPressure,
    ]);
    let watch = (
        sensor,
        maybe(limits::LIMIT_MARGIN_PERCENT),
        maybe(limits::DRAIN_INTERVAL_DAYS),
    );
    (holes, ends, device, watch).prop_map(|(holes, ends, device, watch)| AirPath {
        hole_count: holes.0,
        hole_diameter_mm: holes.1,
        hole_discharge: holes.2,
        intake_catch: ends.0,
        exhaust_catch: ends.1,
        exhaust_static_pa: ends.2,
        exhaust_velocity_pa: ends.3,
        fan: device.0,
        filter_pa_min_l: device.1,
        chamber_loss: device.2,
        chamber_volume_ml: device.3,
        start_suction_pa: device.4,
        sensor: watch.0,
        low_limit_percent: Some(Input::typed(70.5)),
        high_limit_percent: Some(Input::typed(130.0)),
        limit_margin_percent: watch.1,
        drain_interval_days: watch.2,
    })
}

fn route() -> impl Strategy<Value = Route> {
    let entry = (text(), select(vec![Side::Side, Side::Top, Side::Bottom]))
        .prop_map(|(place, side)| DuctEntry { place, side });
    (entry, vec(leg(), 0..3), vec(trap(), 0..3)).prop_map(|(entry, legs, traps)| Route {
        entry,
        legs,
        traps,
    })
}

fn leg() -> impl Strategy<Value = Leg> {
    let form = select(vec![
        FallForm::Ratio,
        FallForm::Percent,
        FallForm::MmPerM,
        FallForm::InPerFt,
    ]);
    let geometry = (input(limits::LENGTH_M), input(limits::RISE_M), form);
    let tube = (
        input(limits::BORE_MM),
        input(limits::OUTSIDE_DIAMETER_MM),
        input(limits::TUBE_CONDUCTIVITY_W_MK),
        option::of(stuff()),
    )
        .prop_map(
            |(bore_mm, outside_diameter_mm, conductivity_w_mk, stuff)| TubeWall {
                bore_mm,
                outside_diameter_mm,
                conductivity_w_mk,
                stuff,
            },
        );
    let insulation = (
        input(limits::THICKNESS_MM),
        input(limits::INSULATION_CONDUCTIVITY_W_MK),
    )
        .prop_map(|(thickness_mm, conductivity_w_mk)| Insulation {
            thickness_mm,
            conductivity_w_mk,
        });
    let outside = (
        input(limits::EMISSIVITY),
        option::of(insulation),
        option::of(input(limits::HEAT_TRACING_W_M)),
    );
    let hangers = option::of(input(limits::HANGER_SPACING_M));
    let rest = (vec(fitting(), 0..3), access(), hangers);
    (geometry, tube, outside, rest).prop_map(|(geometry, tube, outside, rest)| Leg {
        id: String::new(),
        space: String::new(),
        length_m: geometry.0,
        rise_m: geometry.1,
        fall_as: geometry.2,
        tube,
        emissivity: outside.0,
        insulation: outside.1,
        heat_tracing_w_m: outside.2,
        hanger_spacing_m: rest.2,
        fittings: rest.0,
        access: rest.1,
    })
}

fn stuff() -> impl Strategy<Value = TubeStuff> {
    (
        select(vec![BoreForm::Plain, BoreForm::Corrugated]),
        select(vec![TubeSupply::Rigid, TubeSupply::Coiled]),
        option::of(input(limits::ROUGHNESS_MM)),
        option::of(input(limits::MODULUS_MPA)),
        option::of(input(limits::DENSITY_KG_M3)),
    )
        .prop_map(
            |(bore_form, supply, roughness_mm, long_term_modulus_mpa, density_kg_m3)| TubeStuff {
                bore_form,
                supply,
                roughness_mm,
                long_term_modulus_mpa,
                density_kg_m3,
            },
        )
}

fn trap() -> impl Strategy<Value = Trap> {
    let words = (
        select(vec![
            TrapKind::HandDrained,
            TrapKind::SelfDraining,
            TrapKind::OpenStub,
        ]),
        select(vec![TrapCondition::Shut, TrapCondition::Open]),
        select(vec![
            TrapForm::EqualLegs,
            TrapForm::DipOpenToRoom,
            TrapForm::DipOnTube,
        ]),
    );
    let numbers = (
        input(limits::TRAP_AT_M),
        option::of(input(limits::CAPACITY_ML)),
        option::of(input(limits::SEAL_MM)),
        option::of(input(limits::OUTLET_DROP_MM)),
        option::of(input(limits::BORE_MM)),
        option::of(input(limits::BORE_MM)),
    );
    (words, numbers).prop_map(|(words, numbers)| Trap {
        at_m: numbers.0,
        kind: words.0,
        condition: words.1,
        form: words.2,
        capacity_ml: numbers.1,
        seal_mm: numbers.2,
        outlet_drop_mm: numbers.3,
        bore_mm: numbers.4,
        pot_bore_mm: numbers.5,
    })
}

fn fitting() -> impl Strategy<Value = Fitting> {
    let kind = select(vec![
        FittingKind::Bend,
        FittingKind::Elbow,
        FittingKind::Tee,
        FittingKind::Valve,
        FittingKind::Other,
    ]);
    (
        kind,
        input(limits::FITTING_AT_M),
        input(limits::LOSS_COEFFICIENT),
    )
        .prop_map(|(kind, at_m, loss_coefficient)| Fitting {
            kind,
            at_m,
            loss_coefficient,
        })
}

fn access() -> impl Strategy<Value = Access> {
    select(vec![
        Access::Floor,
        Access::Ladder,
        Access::Lift,
        Access::None,
    ])
}
