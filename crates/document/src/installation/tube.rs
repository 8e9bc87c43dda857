//! How a tube of the project file is installed: its legs, what they are made of, its traps.

use dewrun_quantity::{Angle, Area, Density, Length, Mass, MassPerLength, Modulus};
use dewrun_run as engine;
use dewrun_run::figure::Figure;
use dewrun_run::library::{self, Row, TubeRow};
use dewrun_run::told::Entry;
use dewrun_run::{Place, Tube};

use super::Entered;
use crate::{
    Access, BoreForm, FieldPath, Input, Leg, Origin, Route, Side, Trap, TrapCondition, TrapForm,
    TrapKind, TubeSupply,
};

/// Bore of a pot over that of its dip tube, where it is left out.
const POT_OVER_DIP: f64 = 3.0;

impl Entered {
    pub(super) fn tube(
        &mut self,
        tube: Tube,
        route: &Route,
        here: &FieldPath,
    ) -> engine::TubeInstallation {
        let legs = route.legs.iter().enumerate();
        let legs = legs.map(|(number, leg)| {
            let path = here.clone().field("legs").index(number);
            self.leg(leg, Place::Leg(tube, number), &path)
        });
        let legs: Vec<engine::LegInstallation> = legs.collect();
        let traps = route.traps.iter().enumerate();
        let traps = traps.map(|(number, trap)| {
            let bore_mm = route.legs.last().map_or(10.0, |leg| leg.tube.bore_mm.value);
            let path = here.clone().field("traps").index(number);
            self.trap(trap, bore_mm, Place::Trap(tube, number), &path)
        });
        engine::TubeInstallation {
            entry: match route.entry.side {
                Side::Side => Entry::Side,
                Side::Top => Entry::Top,
                Side::Bottom => Entry::Bottom,
            },
            traps: traps.collect(),
            legs,
        }
    }

    fn leg(&mut self, leg: &Leg, place: Place, here: &FieldPath) -> engine::LegInstallation {
        let row = row_of(leg);
        let stuff = leg.tube.stuff.as_ref();
        let at = |field: &str| here.clone().field("tube.stuff").field(field);
        let mut from_row = |given: Option<&Input<f64>>, field: &'static str, figure: Figure| {
            let entry = row.and_then(|row| Some((row.id(), row.entry(field)?.span)));
            match (given, entry) {
                (Some(given), _) => self.given((figure, place), given),
                (None, Some((id, span))) => self.assume(at(field), (figure, place), id, span),
                (None, None) => 0.0,
            }
        };
        let roughness = from_row(
            stuff.and_then(|stuff| stuff.roughness_mm.as_ref()),
            "roughness_mm",
            Figure::Roughness,
        );
        let modulus = from_row(
            stuff.and_then(|stuff| stuff.long_term_modulus_mpa.as_ref()),
            "long_term_modulus_mpa",
            Figure::Modulus,
        );
        let density = from_row(
            stuff.and_then(|stuff| stuff.density_kg_m3.as_ref()),
            "density_kg_m3",
            Figure::TubeDensity,
        );
        let corrugated = stuff.map_or_else(
            || row.is_some_and(|row| row.bore_form == library::BoreForm::Corrugated),
            |stuff| stuff.bore_form == BoreForm::Corrugated,
        );
        let coiled = stuff.map_or_else(
            || row.is_some_and(|row| row.supply == library::Supply::Coiled),
            |stuff| stuff.supply == TubeSupply::Coiled,
        );
        let ribs = if corrugated {
            self.or_row(
                None,
                || at("corrugations_g_m"),
                (Figure::Corrugations, place),
                "corrugations",
            )
        } else {
            0.0
        };
        let spacing = leg.hanger_spacing_m.as_ref();
        let spacing = spacing.map(|spacing| self.given((Figure::HangerSpacing, place), spacing));
        engine::LegInstallation {
            roughness: Length::millimetres(roughness),
            corrugations: MassPerLength::grams_per_metre(ribs),
            coiled,
            density: Density::kilograms_per_cubic_metre(density),
            long_term_modulus: Modulus::megapascals(modulus),
            hanger_spacing: spacing.map(Length::metres),
            fittings: leg
                .fittings
                .iter()
                .map(|one| (Length::metres(one.at_m.value), one.loss_coefficient.value))
                .collect(),
            reachable: leg.access != Access::None,
        }
    }

    fn trap(
        &mut self,
        trap: &Trap,
        tube_bore_mm: f64,
        place: Place,
        here: &FieldPath,
    ) -> engine::Trap {
        let at = |field: &str| here.clone().field(field);
        let bore_mm = trap
            .bore_mm
            .as_ref()
            .map_or(tube_bore_mm, |bore| bore.value);
        let capacity = trap.capacity_ml.as_ref();
        let capacity_ml = if trap.kind == TrapKind::HandDrained {
            self.or_row(
                capacity,
                || at("capacity_ml"),
                (Figure::TrapCapacity, place),
                "trap-capacity",
            )
        } else {
            capacity.map_or(0.0, |capacity| capacity.value)
        };
        let seal_mm = if trap.kind == TrapKind::SelfDraining {
            self.or_row(
                trap.seal_mm.as_ref(),
                || at("seal_mm"),
                (Figure::TrapSeal, place),
                "trap-seal",
            )
        } else {
            trap.seal_mm.as_ref().map_or(0.0, |seal| seal.value)
        };
        engine::Trap {
            at: Length::metres(trap.at_m.value),
            drain: match trap.kind {
                TrapKind::HandDrained => engine::Drain::ByHand,
                TrapKind::SelfDraining => engine::Drain::ByItself,
                TrapKind::OpenStub => engine::Drain::OpenStub,
            },
            open: trap.condition == TrapCondition::Open,
            kind: trap_kind(trap, bore_mm),
            // A millilitre of water is a gram, within what a trap's capacity is known to.
            capacity: Mass::grams(capacity_ml),
            seal: Length::millimetres(seal_mm),
            outlet_drop: Length::millimetres(self.or_row(
                trap.outlet_drop_mm.as_ref(),
                || at("outlet_drop_mm"),
                (Figure::TrapDrop, place),
                "trap-drop",
            )),
            bore: Length::millimetres(bore_mm),
        }
    }
}

/// The row of the library that a leg's bore was taken from; where it was typed, rigid plastic of no known kind.
fn row_of(leg: &Leg) -> Option<&'static TubeRow> {
    const PLAIN: &str = "tube-rigid-plastic-19";
    let tubes = library::tubes();
    let named = match &leg.tube.bore_mm.origin {
        Origin::Assumed { row, .. } => library::find(tubes, row),
        Origin::Typed | Origin::Measured { .. } => None,
    };
    named.or_else(|| library::find(tubes, PLAIN))
}

fn trap_kind(trap: &Trap, bore_mm: f64) -> engine::told::TrapKind {
    let round = |bore_mm: f64| {
        let bore_m = Length::millimetres(bore_mm).to_metres();
        0.25 * Angle::degrees(180.0).to_radians() * bore_m * bore_m
    };
    let pot_mm = trap
        .pot_bore_mm
        .as_ref()
        .map_or(POT_OVER_DIP * bore_mm, |pot| pot.value);
    let dip = Area::square_metres(round(bore_mm));
    let pot = Area::square_metres(round(pot_mm) - round(bore_mm));
    match trap.form {
        TrapForm::EqualLegs => engine::told::TrapKind::EqualLegs,
        TrapForm::DipOpenToRoom => engine::told::TrapKind::DipOpenToRoom { dip, pot },
        TrapForm::DipOnTube => engine::told::TrapKind::DipOnTube { dip, pot },
    }
}
