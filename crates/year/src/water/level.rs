//! How water stands at a low point, by its mass: a table of its depth, its surface and how far it reaches.

use dewrun_quantity::Length;
use dewrun_water::pool::PoolShape;

/// Rows up to the crown and beyond it.
const BELOW: u32 = 64;
const BEYOND: u32 = 16;

/// How so much water stands.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Level {
    /// Depth at the low point, m.
    pub(crate) depth_m: f64,
    /// Free surface, m2.
    pub(crate) surface_m2: f64,
    /// How far it reaches along the floor before and after the low point, m.
    pub(crate) before_m: f64,
    pub(crate) after_m: f64,
}

/// A low point's levels, rising with the mass.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Levels {
    rows: Vec<(f64, Level)>,
}

impl Levels {
    /// Of a low point, water being so dense.
    pub(crate) fn of(shape: &PoolShape, water_kg_m3: f64) -> Self {
        let (bore_m, brim_m) = (shape.bore().to_metres(), shape.brim().to_metres());
        let crown_m = bore_m.min(brim_m);
        let below = (0..=BELOW).map(|row| crown_m * f64::from(row) / f64::from(BELOW));
        let beyond_m = if brim_m.is_finite() {
            (brim_m - crown_m).max(0.0)
        } else {
            bore_m
        };
        let beyond =
            (1..=BEYOND).map(|row| crown_m + beyond_m * f64::from(row) / f64::from(BEYOND));
        let mut rows: Vec<(f64, Level)> = Vec::new();
        for depth_m in below.chain(beyond) {
            let depth = Length::metres(depth_m);
            let kg = shape.volume(depth).to_cubic_metres() * water_kg_m3;
            if rows.last().is_some_and(|(last, _)| kg <= *last) {
                continue;
            }
            let stand = shape.stand_at(depth);
            let [before, after] = stand.wetted.map(Length::to_metres);
            let level = Level {
                depth_m,
                surface_m2: stand.surface.to_square_metres().max(0.0),
                before_m: before,
                after_m: after,
            };
            rows.push((kg, level));
        }
        Self { rows }
    }

    /// How so much water stands; past the brim as at the brim.
    pub(crate) fn at(&self, kg: f64) -> Level {
        if kg <= 0.0 {
            return Level::default();
        }
        let above = self.rows.partition_point(|(row, _)| *row <= kg);
        let Some((high_kg, high)) = self.rows.get(above) else {
            return self
                .rows
                .last()
                .map_or_else(Level::default, |(_, level)| *level);
        };
        let Some((low_kg, low)) = above.checked_sub(1).and_then(|below| self.rows.get(below))
        else {
            return *high;
        };
        let share = (kg - low_kg) / (high_kg - low_kg);
        let between = |low: f64, high: f64| low + share * (high - low);
        Level {
            depth_m: between(low.depth_m, high.depth_m),
            surface_m2: between(low.surface_m2, high.surface_m2),
            before_m: between(low.before_m, high.before_m),
            after_m: between(low.after_m, high.after_m),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use dewrun_quantity::Volume;
    use dewrun_water::Incline;

    /// A V of 1:50 and 1:25 in a bore of 20 mm holds 50 mL half full (see the pool's own test): 500 mm and 250 mm of floor are wet.
    #[test]
    fn half_full_by_hand() {
        let incline = Incline::per_horizontal;
        let shape = PoolShape::between(Length::millimetres(20.0), incline(0.02), incline(0.04))
            .expect("a plain V");
        let levels = Levels::of(&shape, 1000.0);
        let half = levels.at(0.050);
        assert!((half.depth_m - 0.010).abs() < 1e-5, "{half:?}");
        assert!(
            (half.before_m - 0.5).abs() < 1e-3 && (half.after_m - 0.25).abs() < 1e-3,
            "{half:?}"
        );
        for kg in [0.003, 0.021, 0.130, 0.220] {
            let exact = shape.stand(Volume::litres(kg)).expect("it holds that");
            let level = levels.at(kg);
            let off = level.surface_m2 / exact.surface.to_square_metres() - 1.0;
            assert!(off.abs() < 0.01, "{off} of the surface at {kg} kg");
        }
        assert_eq!(levels.at(0.0), Level::default(), "no water, no surface");
    }
}
