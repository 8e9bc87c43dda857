//! Water that stands at a low point: exact wedges of circular segments, first slugs, sealing, bubbling.

mod piece;
mod slugs;

pub use piece::Piece;
pub use slugs::{Slugs, taitel_dukler_1976_depth};

use dewrun_numeric::circular_segment::{area, height_of_integral, whole_area};
use dewrun_numeric::itp;
use dewrun_quantity::format::entered;
use dewrun_quantity::{Area, Density, Length, Limits, OutOfRange, Pressure, Volume, VolumeFlow};
use thiserror::Error;

use crate::{GRAVITY_M_S2, Incline};

const BORE: Limits = Limits::new("the bore", "mm", 0.5, 500.0);
const FALL: Limits = Limits::new("the fall towards a low point", "", 1e-6, f64::MAX);
const VOLUME: Limits = Limits::new("the water at a low point", "L", 0.0, 1e4);

/// Depths are found to this share of the bore.
const DEPTH_SHARE: f64 = 1e-12;

/// Why there is no pool.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[non_exhaustive]
pub enum PoolError {
    /// A number lies where no pool is: bring it within the limits.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// No leg meets at the low point: give at least one that falls towards it, or a level one.
    #[error("a low point needs a leg that falls towards it")]
    NoLeg,
    /// There is more water than the legs around hold: the rest runs on over the lower crest.
    #[error("{} mL run over: the low point holds {} mL", entered(*.volume_ml), entered(*.capacity_ml))]
    RunsOver {
        /// The water given, mL.
        volume_ml: f64,
        /// What the low point holds, mL.
        capacity_ml: f64,
    },
}

/// Which way a piece of tube rises from the low point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Against the flow: the water came down with the air.
    Before,
    /// With the flow; the water that seals is pushed up there.
    After,
}

/// The tube around a low point, as water that stands there sees it.
///
/// Depth counts square to the tube at the low point and falls by the tangent of the incline with each metre of tube;
/// legs are cut square where they meet, so that a pool between two endless legs holds `V = G(h) (1/t1 + 1/t2)` exactly.
/// A leg that is nearly upright holds next to nothing in this picture.
#[derive(Debug, Clone, PartialEq)]
pub struct PoolShape {
    pieces: Vec<Piece>,
    bore_m: f64,
    brim_m: f64,
}

/// How water stands at a low point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stand {
    /// Depth at the low point, square to the tube; more than the bore where it is sealed.
    pub depth: Length,
    /// Depth over the bore.
    pub share: f64,
    /// How far it reaches along the floor before and after the low point.
    pub wetted: [Length; 2],
    /// Free surface, from which it evaporates.
    pub surface: Area,
    /// What is left free of the cross-section at the low point.
    pub free_area: Area,
    /// Whether the water touches the crown.
    pub sealed: bool,
    /// Length of tube that the water beyond the sealing volume fills.
    pub plug: Length,
}

impl PoolShape {
    /// A low point between two legs of one bore that rise without end on either side.
    ///
    /// # Errors
    /// [`PoolError`] where the bore is none or a leg does not fall towards the low point.
    pub fn between(bore: Length, before: Incline, after: Incline) -> Result<Self, PoolError> {
        let (before, after) = (before.size(), after.size());
        FALL.check(before.tangent())?;
        FALL.check(after.tangent())?;
        let endless = |side, incline| Piece {
            side,
            foot: Length::ZERO,
            incline,
            length: Length::metres(f64::INFINITY),
            bore,
        };
        let pieces = vec![endless(Side::Before, before), endless(Side::After, after)];
        Self::of(pieces, Length::metres(f64::INFINITY))
    }

    /// A low point of any pieces, and the depth at which it runs over the lower crest; infinite where it does not.
    ///
    /// # Errors
    /// [`PoolError`] where there is no piece at the low point or a bore is none.
    pub fn of(pieces: Vec<Piece>, brim: Length) -> Result<Self, PoolError> {
        let mut narrowest: Option<f64> = None;
        for piece in &pieces {
            BORE.check(piece.bore.to_millimetres())?;
            if piece.foot <= Length::ZERO {
                let bore_m = piece.bore.to_metres();
                narrowest = Some(narrowest.map_or(bore_m, |least| least.min(bore_m)));
            }
        }
        Ok(Self {
            pieces,
            bore_m: narrowest.ok_or(PoolError::NoLeg)?,
            brim_m: brim.to_metres().max(0.0),
        })
    }

    /// Depth at the low point at which it runs over the lower crest; infinite where it does not.
    #[must_use]
    pub const fn brim(&self) -> Length {
        Length::metres(self.brim_m)
    }

    /// The narrowest bore at the low point.
    #[must_use]
    pub const fn bore(&self) -> Length {
        Length::metres(self.bore_m)
    }

    /// Water up to a depth.
    #[must_use]
    pub fn volume(&self, depth: Length) -> Volume {
        let depth_m = depth.to_metres();
        Volume::cubic_metres(self.volume_m3(depth_m))
    }

    fn volume_m3(&self, depth_m: f64) -> f64 {
        self.pieces
            .iter()
            .map(|piece| piece.volume_m3(depth_m))
            .sum()
    }

    /// Water that closes the bore; [`PoolShape::capacity`] says whether so much can stand there.
    ///
    /// Between two endless legs `(pi/8) D^3 (1/t1 + 1/t2)`.
    #[must_use]
    pub fn seal_volume(&self) -> Volume {
        self.volume(self.bore())
    }

    /// The most that stands there before it runs over a crest; infinite between endless legs.
    #[must_use]
    pub fn capacity(&self) -> Volume {
        if self.brim_m.is_infinite() {
            return Volume::cubic_metres(f64::INFINITY);
        }
        Volume::cubic_metres(self.volume_m3(self.brim_m))
    }

    /// Whether so much water can stand there that it closes the bore.
    #[must_use]
    pub const fn can_seal(&self) -> bool {
        self.bore_m <= self.brim_m
    }

    /// Depth of a volume of water.
    ///
    /// # Errors
    /// [`PoolError`] where the volume is none or runs over.
    pub fn depth(&self, volume: Volume) -> Result<Length, PoolError> {
        VOLUME.check(volume.to_litres())?;
        let target_m3 = volume.to_cubic_metres();
        if let Some(per_m) = self.endless_share() {
            return Ok(Length::metres(height_of_integral(
                target_m3 / per_m,
                self.bore_m,
            )));
        }
        let capacity_m3 = self.capacity().to_cubic_metres();
        if capacity_m3 <= target_m3 {
            // What was filled to the brim may come back a last digit over it.
            if target_m3 <= capacity_m3 * (1.0 + 1e-12) {
                return Ok(Length::metres(self.brim_m));
            }
            return Err(PoolError::RunsOver {
                volume_ml: volume.to_millilitres(),
                capacity_ml: capacity_m3 * 1e6,
            });
        }
        let mut high_m = self.bore_m;
        while self.volume_m3(high_m) < target_m3 && high_m < self.brim_m {
            high_m *= 2.0;
        }
        let off = |depth_m: f64| self.volume_m3(depth_m) - target_m3;
        let tolerance_m = DEPTH_SHARE * self.bore_m;
        let found = itp(off, 0.0, high_m.min(self.brim_m), tolerance_m);
        // The volume rises from nothing to the capacity, so a root lies between.
        Ok(Length::metres(found.unwrap_or(self.brim_m)))
    }

    /// The sum of `1/t` where all legs are endless, rise from the low point and have one bore.
    fn endless_share(&self) -> Option<f64> {
        let plain = |piece: &Piece| piece.is_endless() && piece.bore.to_metres() == self.bore_m;
        self.pieces.iter().all(plain).then(|| {
            self.pieces
                .iter()
                .map(|piece| 1.0 / piece.incline.tangent())
                .sum()
        })
    }

    /// How a volume of water stands.
    ///
    /// # Errors
    /// [`PoolError`] where the volume is none or runs over.
    pub fn stand(&self, volume: Volume) -> Result<Stand, PoolError> {
        Ok(self.stand_of(self.depth(volume)?, volume))
    }

    /// How water stands that is so deep at the low point.
    #[must_use]
    pub fn stand_at(&self, depth: Length) -> Stand {
        self.stand_of(depth, self.volume(depth))
    }

    fn stand_of(&self, depth: Length, volume: Volume) -> Stand {
        let depth_m = depth.to_metres();
        let wetted = |side| {
            let on_side = self.pieces.iter().filter(|piece| piece.side == side);
            Length::metres(on_side.map(|piece| piece.wetted_m(depth_m)).sum())
        };
        let surface_m2 = self.pieces.iter().map(|piece| piece.surface_m2(depth_m));
        let whole_m2 = whole_area(self.bore_m);
        let beyond_m3 = (volume - self.seal_volume()).to_cubic_metres();
        Stand {
            depth,
            share: depth_m / self.bore_m,
            wetted: [wetted(Side::Before), wetted(Side::After)],
            surface: Area::square_metres(surface_m2.sum()),
            free_area: Area::square_metres(whole_m2 - area(depth_m, self.bore_m)),
            sealed: self.bore_m <= depth_m,
            plug: Length::metres(beyond_m3.max(0.0) / whole_m2),
        }
    }

    /// Depth and volume at which moving air throws the first slugs; the sealing volume where it moves too slowly to.
    #[must_use]
    pub fn first_slugs(&self, flow: VolumeFlow, air: Density, water: Density) -> Slugs {
        let depth = taitel_dukler_1976_depth(self.bore(), flow, air, water);
        Slugs {
            depth,
            volume: self.volume(depth),
        }
    }

    /// Pressure that a sealed pool withstands before air bubbles through: the head of the plug pushed up the leg after it.
    ///
    /// `rho_w g (V - V_seal)/A sin a`; nothing where it is not sealed. Below it no air passes, above it the flow is unsteady.
    #[must_use]
    pub fn bubbling(&self, volume: Volume, water: Density) -> Pressure {
        let beyond_m3 = (volume - self.seal_volume()).to_cubic_metres().max(0.0);
        let plug_m = beyond_m3 / whole_area(self.bore_m);
        let sine = self.sine_after();
        let weight = water.to_kilograms_per_cubic_metre() * GRAVITY_M_S2;
        Pressure::pascals(weight * plug_m * sine)
    }

    /// Sine of the lowest leg that rises after the low point.
    fn sine_after(&self) -> f64 {
        self.pieces
            .iter()
            .filter(|piece| piece.side == Side::After && 0.0 < piece.incline.sine())
            .min_by(|one, other| one.foot.to_metres().total_cmp(&other.foot.to_metres()))
            .map_or(0.0, |piece| piece.incline.sine())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::{Strategy, prop_assert, proptest};

    const WATER: Density = Density::kilograms_per_cubic_metre(998.2);
    const AIR: Density = Density::kilograms_per_cubic_metre(1.2);

    fn between(bore_mm: f64, t1: f64, t2: f64) -> Result<PoolShape, PoolError> {
        PoolShape::between(
            Length::millimetres(bore_mm),
            Incline::per_horizontal(t1),
            Incline::per_horizontal(t2),
        )
    }

    #[track_caller]
    fn near(got: f64, expected: f64, relative: f64) {
        assert!(
            (got - expected).abs() <= relative * expected.abs(),
            "{got}, by hand {expected}"
        );
    }

    /// A V of a tube of 20 mm bore between falls of 1:50 and 1:25, by hand.
    ///
    /// D³ = 8 mL, 1/t1 + 1/t2 = 50 + 25 = 75.
    /// It seals at (π/8) · 8 · 75 = 235.619 mL; half full (10 mm) it holds D³/12 · 75 = 50 mL.
    /// At 10 mm the water reaches 10 · 50 = 500 mm up the first leg and 250 mm up the second, and leaves π/2 · 100 = 157.08 mm2 free.
    /// 300 mL seal it: the 64.381 mL beyond fill 64 381/314.159 = 204.93 mm of tube.
    /// Pushed up 1:25 (sin a = 0.039 968) they stand 8.1906 mm high and hold 998.2 · 9.80665 · 0.008 190 6 = 80.178 Pa.
    #[test]
    fn a_v_shaped_low_point_that_seals() {
        let shape = between(20.0, 0.02, 0.04).expect("a plain V");
        near(shape.seal_volume().to_millilitres(), 235.619_449, 1e-8);
        let half = shape
            .stand(Volume::millilitres(50.0))
            .expect("it holds that");
        near(half.depth.to_millimetres(), 10.0, 1e-9);
        near(half.wetted[0].to_millimetres(), 500.0, 1e-9);
        near(half.wetted[1].to_millimetres(), 250.0, 1e-9);
        near(half.free_area.to_square_millimetres(), 157.079_633, 1e-8);
        assert!(!half.sealed, "half of it is free");
        let much = Volume::millilitres(300.0);
        let sealed = shape.stand(much).expect("endless legs hold all");
        assert!(sealed.sealed, "{sealed:?}");
        assert_eq!(sealed.free_area, Area::ZERO, "nothing is free");
        near(sealed.plug.to_millimetres(), 204.931, 1e-5);
        near(shape.bubbling(much, WATER).to_pascals(), 80.178, 1e-4);
    }

    /// 1 m of level tube between two falls of 1:20, half full, by hand: bore 20 mm.
    /// The level metre holds π/8 · 0.02² = 157.080 mL, both wedges 8/12 · 40 = 26.667 mL.
    #[test]
    fn a_level_bottom_holds_its_segment() {
        let bore = Length::millimetres(20.0);
        let piece = |side, t, length_m| Piece {
            side,
            foot: Length::ZERO,
            incline: Incline::per_horizontal(t),
            length: Length::metres(length_m),
            bore,
        };
        let pieces = vec![
            piece(Side::Before, 0.05, f64::INFINITY),
            piece(Side::Before, 0.0, 1.0),
            piece(Side::After, 0.05, f64::INFINITY),
        ];
        let shape = PoolShape::of(pieces, Length::metres(f64::INFINITY)).expect("plain");
        near(
            shape.volume(Length::millimetres(10.0)).to_millilitres(),
            157.079_633 + 26.666_667,
            1e-8,
        );
    }

    #[test]
    fn what_runs_over_says_so() {
        let bore = Length::millimetres(20.0);
        let side = |side| Piece {
            side,
            foot: Length::ZERO,
            incline: Incline::per_horizontal(0.02),
            length: Length::metres(0.5),
            bore,
        };
        let brim = Length::millimetres(10.0);
        let shape = PoolShape::of(vec![side(Side::Before), side(Side::After)], brim);
        let shape = shape.expect("plain");
        assert!(!shape.can_seal(), "it runs over at half the bore");
        near(shape.capacity().to_millilitres(), 8.0 / 12.0 * 100.0, 1e-9);
        let over = shape.stand(Volume::millilitres(80.0));
        assert!(
            matches!(over, Err(PoolError::RunsOver { .. })),
            "{over:?} of 66.7 mL"
        );
        let full = shape.stand(shape.capacity()).map(|stand| stand.depth);
        assert_eq!(full, Ok(brim), "what it holds it holds");
    }

    #[test]
    fn what_is_no_low_point_is_refused() {
        assert!(between(20.0, 0.0, 0.02).is_err(), "a level leg has no end");
        assert!(between(0.0, 0.02, 0.02).is_err(), "no bore");
        assert!(between(f64::NAN, 0.02, 0.02).is_err(), "no number");
        let nothing = PoolShape::of(Vec::new(), Length::ZERO);
        assert_eq!(nothing, Err(PoolError::NoLeg), "no tube");
    }

    #[test]
    fn still_air_throws_no_slugs_before_the_bore_is_closed() {
        let bore = Length::millimetres(19.0);
        let depth = taitel_dukler_1976_depth(bore, VolumeFlow::ZERO, AIR, WATER);
        near(depth.to_millimetres(), 19.0, 1e-6);
    }

    fn shapes() -> impl Strategy<Value = (f64, f64, f64)> {
        (2.0..50.0_f64, 1e-3..0.5_f64, 1e-3..0.5_f64)
    }

    proptest! {
        #[test]
        fn depth_rises_with_volume_and_gives_it_back((bore_mm, t1, t2) in shapes(), share in 1e-6..2.0_f64, more in 1.0001..2.0_f64) {
            let shape = between(bore_mm, t1, t2)?;
            let volume = shape.seal_volume() * share;
            let (depth, deeper) = (shape.depth(volume)?, shape.depth(volume * more)?);
            prop_assert!(depth < deeper, "{depth:?} {deeper:?}");
            let back = shape.volume(depth) / volume;
            prop_assert!((back - 1.0).abs() < 1e-9, "{back} of the volume");
        }

        #[test]
        fn a_split_leg_holds_the_same((bore_mm, t1, t2) in shapes(), at_m in 0.01..3.0_f64, share in 1e-4..0.999_f64) {
            let whole = between(bore_mm, t1, t2)?;
            let [before, after] = [whole.pieces.first(), whole.pieces.last()].map(|piece| piece.copied());
            let (Some(before), Some(after)) = (before, after) else { unreachable!("two legs") };
            // A leg cut at some length; square to the tube the second part begins the tangent times that length higher.
            let lower = Piece { length: Length::metres(at_m), ..before };
            let upper = Piece { foot: Length::metres(at_m * before.incline.tangent()), ..before };
            let split = PoolShape::of(vec![upper, lower, after], Length::metres(f64::INFINITY))?;
            let volume = whole.seal_volume() * share;
            let (one, two) = (whole.stand(volume)?, split.stand(volume)?);
            for (one, two) in [
                (one.depth.to_metres(), two.depth.to_metres()),
                (one.surface.to_square_metres(), two.surface.to_square_metres()),
                (one.wetted[0].to_metres(), two.wetted[0].to_metres()),
            ] {
                prop_assert!((one - two).abs() <= 1e-7 * one, "{one} {two}");
            }
        }

        #[test]
        fn a_steeper_fall_never_holds_more((bore_mm, t1, t2) in shapes(), steeper in 1.0..5.0_f64, share in 0.01..2.0_f64) {
            let depth = Length::millimetres(bore_mm * share);
            let (flat, steep) = (between(bore_mm, t1, t2)?, between(bore_mm, t1 * steeper, t2)?);
            prop_assert!(steep.volume(depth) <= flat.volume(depth), "at {depth:?}");
        }

        #[test]
        fn more_air_throws_slugs_at_less_water((bore_mm, t1, t2) in shapes(), lpm in 0.1..200.0_f64, more in 1.0..3.0_f64) {
            let shape = between(bore_mm, t1, t2)?;
            let at = |lpm| shape.first_slugs(VolumeFlow::litres_per_minute(lpm), AIR, WATER);
            prop_assert!(at(lpm * more).volume <= at(lpm).volume, "{lpm} and {}", lpm * more);
            prop_assert!(at(lpm).volume <= shape.seal_volume(), "slugs come before the seal");
        }
    }
}
