//! The values behind a result fit together by the relations of the table, and those of the answer are the answer's.

use core::f64::consts::PI;

use dewrun_run::air::{Humidity, Over, Pair};
use dewrun_run::figure::{Figure, Spot, value};
use dewrun_run::{Outcome, ProfilePoint, Run, Tube};

use crate::sample;

struct Here<'a> {
    run: &'a Run,
    outcome: &'a Outcome,
    spot: Spot,
}

impl Here<'_> {
    #[track_caller]
    fn of(&self, figure: Figure) -> f64 {
        value(self.run, self.outcome, figure, self.spot)
            .unwrap_or_else(|| panic!("{} has a value at {}", figure.id(), self.spot))
    }
}

/// Does something at points well behind every joint and inlet, where cells are long and films change slowly.
fn at_points(check: impl Fn(&Here<'_>)) {
    let run = sample::run();
    let outcome = sample::outcome(&run);
    for found in &outcome.intake.profile {
        if found.x.to_metres() < 1.0 {
            continue;
        }
        let spot = Spot::at(Tube::Intake, found.leg, found.x);
        check(&Here {
            run: &run,
            outcome: &outcome,
            spot,
        });
    }
}

#[track_caller]
fn close(found: f64, expected: f64, share: f64, what: &str, spot: Spot) {
    assert!(
        (found - expected).abs() <= share * expected.abs(),
        "{what} at {spot}: {found} and {expected}"
    );
}

/// Heat through the wall leaves the outer surface (Incropera et al., 6th ed. 2007, eq. 3.28 and 3.9): both are read from the table's values.
#[test]
fn heat_through_the_wall_leaves_the_surface() {
    at_points(|here| {
        let through = (here.of(Figure::WallAlong) - here.of(Figure::SurfaceAlong))
            / here.of(Figure::WallResistance);
        let leg = here.spot.leg_of(here.run).expect("the leg is there");
        let layer = leg
            .insulation
            .map_or(0.0, |layer| layer.thickness.to_metres());
        let outer_m = leg.tube.outside_diameter.to_metres() + 2.0 * layer;
        let space_c = here.run.spaces[leg.space].temperature.to_celsius();
        let film = here.of(Figure::FilmOutside) + here.of(Figure::Radiation);
        let left = PI * outer_m * film * (here.of(Figure::SurfaceAlong) - space_c);
        if here.of(Figure::SweatAlong) == 0.0 && 0.5 < through.abs() {
            close(through, left, 0.01, "heat", here.spot);
        }
    });
}

/// The flux of vapour with Stefan flow (Bird, Stewart & Lightfoot, 2nd ed. 2002, eq. 18.2-14) from the table's values.
#[test]
fn water_formed_follows_from_its_inputs() {
    at_points(|here| {
        let found = here.of(Figure::Deposit);
        if found < 0.2 {
            return;
        }
        let p_pa = here.run.pressure.to_pascals();
        let x = here.of(Figure::Saturation) / p_pa;
        let w_wall = 0.621_945 * x / (1.0 - x);
        let share = |w: f64| w / (1.0 + w);
        let (y_wall, y_bulk) = (share(w_wall), share(here.of(Figure::RatioAlong)));
        let log = logarithm((1.0 - y_wall) / (1.0 - y_bulk));
        let kg_sm = PI
            * here.of(Figure::Density)
            * here.of(Figure::Diffusivity)
            * 1e-6
            * here.of(Figure::Sherwood)
            * log;
        close(found, kg_sm * 3.6e6, 0.02, "water per metre", here.spot);
    });
}

/// The natural logarithm by its series about 1, good to 1e-9 for the few per cent that are asked here.
fn logarithm(x: f64) -> f64 {
    let s = (x - 1.0) / (x + 1.0);
    2.0 * (s + s * s * s / 3.0 + s * s * s * s * s / 5.0)
}

/// Nu = α D/λ, Re = 4 m (1 + W)/(π D μ): the definitions.
#[test]
fn film_and_numbers_fit() {
    at_points(|here| {
        let bore_m = 0.019;
        let film = here.of(Figure::Nusselt) * here.of(Figure::AirConductivity) / bore_m;
        close(here.of(Figure::FilmInside), film, 1e-12, "film", here.spot);
        let mass = here.of(Figure::DryAir) * (1.0 + here.of(Figure::RatioAlong));
        let reynolds = 4.0 * mass / (PI * bore_m * here.of(Figure::Viscosity) * 1e-6);
        close(here.of(Figure::Reynolds), reynolds, 1e-12, "Re", here.spot);
        let schmidt =
            here.of(Figure::Viscosity) / (here.of(Figure::Density) * here.of(Figure::Diffusivity));
        close(here.of(Figure::Schmidt), schmidt, 1e-12, "Sc", here.spot);
    });
}

#[test]
fn sums_and_ends_are_those_of_the_answer() {
    let run = sample::run();
    let outcome = sample::outcome(&run);
    let tube = Spot::tube(Tube::Intake);
    let at = |figure, spot| value(&run, &outcome, figure, spot);
    let legs: f64 = (0..3)
        .filter_map(|leg| at(Figure::LegWater, Spot::leg(Tube::Intake, leg)))
        .sum();
    let whole = at(Figure::TubeWater, tube).expect("it is wet");
    assert!((legs - whole).abs() < 1e-9 * whole, "{legs} and {whole}");
    assert_eq!(
        at(Figure::DewPointAtEnd, Spot::leg(Tube::Intake, 2)),
        at(Figure::DewPointAtEnd, tube),
        "a tube ends as its last leg"
    );
    assert_eq!(
        at(Figure::LowestWall, Spot::leg(Tube::Intake, 1)),
        Some(outcome.intake.legs[1].lowest_wall.to_celsius()),
        "of the leg asked for"
    );
    assert_eq!(
        at(Figure::LegWater, Spot::leg(Tube::Intake, 9)),
        None,
        "no such leg"
    );
    let frost = at(Figure::FrostFrom, tube).expect("the loft freezes");
    assert!((5.0..9.0).contains(&frost), "in the loft, not at {frost} m");
}

#[test]
fn a_figure_is_looked_into_where_it_says_most() {
    let run = sample::run();
    let outcome = sample::outcome(&run);
    let behind_a_bore = |point: &&ProfilePoint| 0.019 <= point.x.to_metres();
    let most = outcome
        .intake
        .profile
        .iter()
        .filter(behind_a_bore)
        .map(|point| point.deposit.to_grams_per_hour_metre());
    let most = most.fold(0.0, f64::max);
    let found = value(&run, &outcome, Figure::Deposit, Spot::tube(Tube::Intake));
    assert_eq!(found, Some(most), "where most forms");
    let tube = Spot::tube(Tube::Intake);
    let spot = tube.looked_into(Figure::TubeFrost, &run, &outcome);
    let share = value(&run, &outcome, Figure::FrozenShare, spot);
    assert_eq!(share, Some(1.0), "frost where it freezes");
    let leg = Spot::leg(Tube::Intake, 1);
    let spot = leg.looked_into(Figure::LowestWall, &run, &outcome);
    let wall = spot
        .reading(&run, &outcome)
        .expect("it has a place")
        .point
        .inner_wall;
    let lowest = outcome.intake.legs[1].lowest_wall;
    assert!(
        (wall - lowest).to_kelvins().abs() < 0.05,
        "{wall:?} where the wall is coldest, {lowest:?}"
    );
    let pair = Pair::Temperature(
        dewrun_quantity::Temperature::celsius(32.0),
        Humidity::Relative {
            value: dewrun_quantity::RelativeHumidity::percent(5.0),
            over: Over::Water,
        },
    );
    let dry = Run {
        duct_air: pair,
        ..run
    };
    let outcome = sample::outcome(&dry);
    let spot = Spot::tube(Tube::Intake).looked_into(Figure::TubeWater, &dry, &outcome);
    assert_eq!(
        spot.leg,
        Some(1),
        "a dry tube where it is nearest to wet: in the loft"
    );
}
