//! Two days of frost and thaw, worked by hand.

use dewrun_year::{Around, Grid, Hour, HourSum, Hours, Leg, March, Route, Steps};

const HOURS: usize = 48;

/// A metre of bare copper tube in a gale that keeps its wall at the space's temperature to half a kelvin.
fn route() -> Route {
    let leg = Leg {
        length_m: 1.0,
        bore_m: 0.020,
        tube_outside_m: 0.022,
        tube_w_mk: 390.0,
        insulation_m: 0.0,
        insulation_w_mk: 1.0,
        emissivity: 0.1,
        tracing_w_m: 0.0,
        riser_m: None,
        space: 0,
        retained_kg_m2: 0.05,
    };
    Route {
        intake: vec![leg],
        detector_w: 0.0,
        exhaust: Vec::new(),
    }
}

/// So many hours of a space at a temperature, moving air through it at 10 m/s; the duct's air is at 10 °C with so much vapour.
fn add(hours: &mut Hours, count: usize, space_c: f64, w: f64) {
    for _ in 0..count {
        let hour = Hour {
            seconds: 3600.0,
            air_c: 10.0,
            w,
            p_pa: 101_325.0,
            dry_air_kg_s: 5e-4,
        };
        let around = Around {
            air_c: space_c,
            w: 0.001,
            radiant_c: space_c,
            wind_m_s: 10.0,
        };
        hours.push(hour, [around]);
    }
}

fn marched(hours: &Hours) -> March {
    let mut march = March::new(&route(), hours, Grid::PRODUCT, Steps::Whole);
    assert!(march.advance(hours, HOURS), "all hours");
    march
}

fn total(hours: &[HourSum], of: impl Fn(&HourSum) -> f64) -> f64 {
    hours.iter().map(of).sum()
}

/// A day at −10 °C, then a day at +5 °C.
///
/// Frost: the duct's air has 0.006 kg/kg, saturation over ice at −9.5 °C is 0.001 68. Of 19 transfer units a kilometre
/// (pi · 3.0e-5 · 3.8 · 1 m / 5e-4 = 0.72 for the metre, a little more behind the inlet) some 55 % of the difference deposits:
/// 5e-4 · 3600 · 0.55 · 0.0043 = 4.3 g an hour, 102 g in a day; none of it runs, though the wall keeps 0.05 · pi · 0.02 = 3.1 g.
/// Thaw: all of it has to melt first, 0.102 · 333.5 kJ = 34 kJ, at 0 °C. In the gale at +5 °C the wall takes up
/// pi · 0.022 · 97 · 5 = 33 W, 120 kJ an hour, and the air gives it more: it is gone within the hour,
/// as a slug of the frost less the 3.1 g that the wall keeps, and of what the thawing wall has still drawn from the air.
#[test]
fn frost_lies_and_comes_down_at_once() {
    let mut hours = Hours::of_spaces(1);
    add(&mut hours, 24, -10.0, 0.006);
    add(&mut hours, 24, 5.0, 0.006);
    let march = marched(&hours);
    let (cold, warm) = march.hours().split_at(24);
    let frost_kg = cold.last().map_or(0.0, |hour| hour.frost_kg);
    assert!(
        (frost_kg / 0.102 - 1.0).abs() < 0.1,
        "{frost_kg} kg of frost"
    );
    assert_eq!(
        total(cold, |hour| hour.drained_kg),
        0.0,
        "frost does not run"
    );
    assert_eq!(total(cold, |hour| hour.film_kg), 0.0, "nothing is liquid");
    let first = warm.first().expect("a first hour of thaw");
    assert_eq!(first.frost_kg, 0.0, "gone within the hour: {first:?}");
    let kept_kg = 0.05 * core::f64::consts::PI * 0.020;
    let slug_kg = frost_kg - kept_kg;
    assert!(
        slug_kg <= first.drained_kg && first.drained_kg < slug_kg + 0.006,
        "{} kg for {slug_kg}",
        first.drained_kg
    );
    assert!((first.slug_kg / frost_kg - 1.0).abs() < 0.05, "{first:?}");
}

/// The same frost, but the thaw is at +0.5 °C: it takes hours, by the heat of fusion alone.
///
/// The duct's air has 0.0038 kg/kg, which is saturation at 0 °C: nothing deposits and nothing dries.
/// In the gale the wall at 0 °C takes up pi · 0.022 · 97 · 0.5 = 3.4 W; inside, with Nu 5, k 0.0246 and some 8.5 K,
/// pi · 0.0246 · 5 · 8.5 = 3.3 W: 6.7 W, 24 kJ an hour, which melts 24/333.5 = 72 g of the 102 g.
#[test]
fn melting_takes_the_heat_of_fusion() {
    let mut hours = Hours::of_spaces(1);
    add(&mut hours, 24, -10.0, 0.006);
    add(&mut hours, 24, 0.5, 0.0038);
    let march = marched(&hours);
    let (cold, warm) = march.hours().split_at(24);
    let frost_kg = cold.last().map_or(0.0, |hour| hour.frost_kg);
    let first = warm.first().expect("a first hour of thaw");
    let melted_kg = frost_kg - first.frost_kg;
    assert!(
        (melted_kg / 0.072 - 1.0).abs() < 0.2,
        "{melted_kg} kg melted"
    );
    assert!(first.coldest_wall_c.abs() < 0.01, "at 0 °C: {first:?}");
    let after = warm.last().map_or(f64::NAN, |hour| hour.frost_kg);
    assert_eq!(after, 0.0, "in a day all of it");
}

/// The same, but the thaw is in still air at +0.5 °C and the duct's air is bone dry at 0 °C: melting takes days.
///
/// 102 g take 34 kJ. Still air at +0.5 °C gives a wall at 0 °C, emissivity 0.1, about
/// pi · 0.022 · (3.4 + 0.5) · 0.5 = 0.13 W, and the dry air in the tube takes heat away with what sublimes:
/// the wall stays frozen, at or below 0 °C, and nothing runs.
#[test]
fn a_faint_warmth_does_not_melt_it() {
    let mut hours = Hours::of_spaces(1);
    add(&mut hours, 24, -10.0, 0.006);
    for _ in 0..24 {
        let hour = Hour {
            seconds: 3600.0,
            air_c: 0.0,
            w: 0.0,
            p_pa: 101_325.0,
            dry_air_kg_s: 5e-4,
        };
        let around = Around {
            air_c: 0.5,
            w: 0.001,
            radiant_c: 0.5,
            wind_m_s: 0.0,
        };
        hours.push(hour, [around]);
    }
    let march = marched(&hours);
    let drained = total(march.hours(), |hour| hour.drained_kg);
    assert_eq!(drained, 0.0, "nothing runs");
    let (cold, after) = march.hours().split_at(24);
    let frost_kg = cold.last().map_or(0.0, |hour| hour.frost_kg);
    let sublimed = total(after, |hour| hour.evaporated_kg);
    let left_kg = after.last().map_or(0.0, HourSum::on_walls_kg);
    assert!(0.0 < sublimed, "dry air takes frost up");
    assert!(
        (frost_kg - sublimed - left_kg).abs() < 1e-12,
        "{frost_kg} - {sublimed} - {left_kg}"
    );
}

/// A film freezes with the wall: one hour at −10 °C between hours at +5 °C.
///
/// At +5 °C the wall fills with the 3.1 g that it keeps. To freeze them takes 1.05 kJ; the gale at −10 °C takes
/// pi · 0.022 · 100 · 10 = 69 W, 250 kJ an hour: all of it freezes, and what deposits in that hour lies on it as frost.
/// The next hour brings 120 kJ: it thaws, and what is more than 3.1 g runs.
#[test]
fn a_film_freezes_at_nought() {
    let mut hours = Hours::of_spaces(1);
    add(&mut hours, 24, 5.0, 0.0069);
    add(&mut hours, 1, -10.0, 0.0069);
    add(&mut hours, 23, 5.0, 0.0069);
    let march = marched(&hours);
    let before = &march.hours()[23];
    let frozen = &march.hours()[24];
    assert_eq!(before.frost_kg, 0.0, "{before:?}");
    assert!(
        before.film_kg < frozen.frost_kg && frozen.film_kg == 0.0,
        "{frozen:?}"
    );
    assert_eq!(frozen.drained_kg, 0.0, "ice does not run");
    let thawed = &march.hours()[25];
    assert!(thawed.frost_kg == 0.0 && 0.0 < thawed.slug_kg, "{thawed:?}");
}

/// Frost dries as ice, all of its surface at once: one hour at −10 °C with 0.0025 kg/kg, then bone dry air.
///
/// Of the difference to 0.001 68 over ice some 55 % deposits, as in the first of these: 5e-4 · 3600 · 0.55 · 0.000 82 = 0.81 g on 0.063 m2.
/// Dry air takes up 5e-4 · 3600 · 0.55 · 0.0016 = 1.6 g an hour, each place as much of its share as was left there: all is gone within the hour.
/// As drops with a share of (12.9/50)^(2/3) = 0.41 it would have taken 3 · 0.5/0.41 = 3.7 h, and (1 - 1/3.7)^3 = 0.39 were left after one.
#[test]
fn frost_dries_as_ice() {
    let mut hours = Hours::of_spaces(1);
    add(&mut hours, 1, -10.0, 0.0025);
    add(&mut hours, 3, -10.0, 0.0);
    let march = marched(&hours);
    let [frosts, dries, ..] = march.hours() else {
        panic!("four hours");
    };
    assert!(
        (frosts.frost_kg / 0.000_81 - 1.0).abs() < 0.15,
        "{} kg of frost",
        frosts.frost_kg
    );
    assert_eq!(dries.frost_kg, 0.0, "gone within the hour: {dries:?}");
    assert!(
        (dries.evaporated_kg / frosts.frost_kg - 1.0).abs() < 1e-9,
        "{} kg of {} kg",
        dries.evaporated_kg,
        frosts.frost_kg
    );
}
