//! What standing water leaves free of a bore, and what that costs.

use dewrun_numeric::circular_segment::{
    arc, area, area_integral, chord, height_of_integral, whole_area,
};
use dewrun_numeric::elementary::{cos, exp, ln};
use dewrun_numeric::integrate::gauss_legendre_8;

use crate::loss::{Loss, Section, WallFriction, of_coefficient};
use crate::state::PoolShape;

/// A pool in its tube.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Laid {
    /// The low point, or the middle of a pool of one depth: its losses are counted there.
    pub(crate) at_m: f64,
    pub(crate) from_m: f64,
    pub(crate) to_m: f64,
    profile: Profile,
    /// It fills the bore somewhere.
    pub(crate) closed: bool,
    /// It would reach past an end of the tube.
    pub(crate) cut: bool,
    pub(crate) loss: Loss,
}

/// How deep the water is along the tube.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Profile {
    bore_m: f64,
    deepest_m: f64,
    /// How fast the depth falls before and after the deepest place; nothing where it is the same throughout.
    falls: Option<[f64; 2]>,
}

/// The bore around a pool and the air over it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bore {
    pub(crate) bore_m: f64,
    pub(crate) roughness_m: f64,
    pub(crate) transition: f64,
    pub(crate) density_kg_m3: f64,
    pub(crate) viscosity_pa_s: f64,
    pub(crate) tube_length_m: f64,
}

/// Water at a low point: from its depth there it grows shallower with the floor's rise on both sides.
#[derive(Debug, Clone, Copy)]
struct Wedge {
    at_m: f64,
    volume_m3: f64,
    falls: [f64; 2],
}

/// Loss coefficient of both ends of a pool, on the velocity in what is free: sharp contraction and sudden expansion,
/// `K = 0.5 (1 - s) + (1 - s)^2`, s the free share of the bore.
///
/// Argument: free share (-).
///
/// # Range
/// Free shares above 0 to 1; water whose ends are steep. The same in both directions.
///
/// # Accuracy
/// The expansion is exact for a flat velocity profile, the contraction within 0.1; a gently sloping water line costs less.
///
/// # Errors
/// None.
///
/// # Source
/// Borda and Carnot; Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagrams 4-1 and 4-9, with the vena contracta's limit of 0.5.
///
/// ```
/// assert_eq!(dewrun_airflow::pool_ends_coefficient(0.5), 0.5);
/// assert_eq!(dewrun_airflow::pool_ends_coefficient(1.0), 0.0);
/// ```
#[must_use]
pub fn pool_ends_coefficient(free_share: f64) -> f64 {
    let narrowed = 1.0 - free_share;
    0.5 * narrowed + narrowed * narrowed
}

/// Lays a pool into its tube.
pub(crate) fn lay(shape: &PoolShape, bore: &Bore) -> Laid {
    match *shape {
        PoolShape::Uniform {
            from,
            length,
            depth,
        } => bore.uniform(from.to_metres(), length.to_metres(), depth.to_metres()),
        PoolShape::Wedge {
            at,
            volume,
            fall_before,
            fall_after,
        } => bore.wedge(Wedge {
            at_m: at.to_metres().min(bore.tube_length_m),
            volume_m3: volume.to_cubic_metres(),
            falls: [fall_before, fall_after],
        }),
    }
}

impl Laid {
    /// Water between two places of the tube \[m3\].
    pub(crate) fn water_m3(&self, from_m: f64, to_m: f64) -> f64 {
        let (from_m, to_m) = (from_m.max(self.from_m), to_m.min(self.to_m));
        if to_m <= from_m {
            return 0.0;
        }
        let Profile {
            bore_m,
            deepest_m,
            falls,
        } = self.profile;
        let Some([before, after]) = falls else {
            return area(deepest_m, bore_m) * (to_m - from_m);
        };
        // The integral of the area over the depth, by the fall the one over the length.
        let between = |fall: f64, near_m: f64, far_m: f64| {
            let integral = |away_m: f64| area_integral(deepest_m - fall * away_m, bore_m);
            (integral(near_m) - integral(far_m)) / fall
        };
        between(
            before,
            (self.at_m - to_m).max(0.0),
            (self.at_m - from_m).max(0.0),
        ) + between(
            after,
            (from_m - self.at_m).max(0.0),
            (to_m - self.at_m).max(0.0),
        )
    }

    /// There is water in it.
    pub(crate) fn holds_water(&self) -> bool {
        0.0 < self.profile.deepest_m && self.from_m < self.to_m
    }
}

impl Bore {
    fn uniform(&self, from_m: f64, length_m: f64, depth_m: f64) -> Laid {
        let from_m = from_m.min(self.tube_length_m);
        let to_m = (from_m + length_m).min(self.tube_length_m);
        let mut loss = self.ends(depth_m);
        if 0.0 < depth_m && depth_m < self.bore_m {
            loss.frictions.push(self.wall(to_m - from_m, depth_m));
        }
        Laid {
            at_m: 0.5 * (from_m + to_m),
            from_m,
            to_m,
            profile: Profile {
                bore_m: self.bore_m,
                deepest_m: depth_m,
                falls: None,
            },
            closed: self.bore_m <= depth_m && from_m < to_m,
            cut: self.tube_length_m < from_m + length_m,
            loss,
        }
    }

    /// The depth is that of all the water, as if both legs went on beyond the tube.
    fn wedge(&self, wedge: Wedge) -> Laid {
        let [before, after] = wedge.falls;
        let widths = 1.0 / before + 1.0 / after;
        let depth_m = height_of_integral(wedge.volume_m3 / widths, self.bore_m);
        let room_before = wedge.at_m;
        let room_after = self.tube_length_m - wedge.at_m;
        // Depth where an end of the tube cuts the water off, zero where it ends by itself.
        let cut_before_m = (depth_m - before * room_before).max(0.0);
        let cut_after_m = (depth_m - after * room_after).max(0.0);
        let closed = self.bore_m <= depth_m;
        let mut loss = self.ends(depth_m);
        if 0.0 < depth_m && !closed {
            if cut_before_m == cut_after_m {
                self.slope(depth_m, cut_before_m, widths, &mut loss);
            } else {
                self.slope(depth_m, cut_before_m, 1.0 / before, &mut loss);
                self.slope(depth_m, cut_after_m, 1.0 / after, &mut loss);
            }
        }
        Laid {
            at_m: wedge.at_m,
            from_m: (wedge.at_m - depth_m / before).max(0.0),
            to_m: (wedge.at_m + depth_m / after).min(self.tube_length_m),
            profile: Profile {
                bore_m: self.bore_m,
                deepest_m: depth_m,
                falls: Some(wedge.falls),
            },
            closed,
            cut: 0.0 < cut_before_m.max(cut_after_m),
            loss,
        }
    }

    /// Contraction and expansion at the deepest section; nothing where it is dry or closed.
    fn ends(&self, depth_m: f64) -> Loss {
        let free_m2 = area(self.bore_m - depth_m, self.bore_m);
        if depth_m <= 0.0 || free_m2 <= 0.0 {
            return Loss::default();
        }
        let coefficient = pool_ends_coefficient(free_m2 / whole_area(self.bore_m));
        Loss {
            quadratic: of_coefficient(coefficient, self.density_kg_m3, free_m2),
            ..Loss::default()
        }
    }

    /// Friction over a length of one depth.
    fn wall(&self, length_m: f64, depth_m: f64) -> WallFriction {
        WallFriction::of(
            length_m,
            free_section(depth_m, self.bore_m),
            self.roughness_m,
            self.density_kg_m3,
            self.viscosity_pa_s,
        )
        .taken(self.transition)
    }

    /// Friction over a depth that falls from `deep_m` to `shallow_m` along `width` times the difference.
    ///
    /// Up to the middle of the bore the angle is the smooth variable, above it the logarithm of what is free, a decade at a time.
    fn slope(&self, deep_m: f64, shallow_m: f64, width: f64, loss: &mut Loss) {
        /// What the free height may shrink by over one set of eight nodes.
        const DECADE: f64 = 10.0;
        let middle_m = 0.5 * self.bore_m;
        if shallow_m < middle_m {
            let angle = |depth_m: f64| arc(depth_m, self.bore_m) / self.bore_m;
            for (u, weight) in gauss_legendre_8(angle(shallow_m), angle(deep_m.min(middle_m))) {
                let depth_m = middle_m * (1.0 - cos(u));
                let step_m = chord(depth_m, self.bore_m) * 0.5 * weight;
                loss.frictions.push(self.wall(width * step_m, depth_m));
            }
        }
        let mut from_m = self.bore_m - shallow_m.max(middle_m);
        let free_m = self.bore_m - deep_m;
        while free_m < from_m {
            let to_m = free_m.max(from_m / DECADE);
            for (log, weight) in gauss_legendre_8(ln(to_m), ln(from_m)) {
                let height_m = exp(log);
                let depth_m = self.bore_m - height_m;
                loss.frictions
                    .push(self.wall(width * height_m * weight, depth_m));
            }
            from_m = to_m;
        }
    }
}

/// The free segment over water, `Dh = 4 A/P` with the water's surface in P.
fn free_section(depth_m: f64, bore_m: f64) -> Section {
    let height_m = bore_m - depth_m;
    let area_m2 = area(height_m, bore_m);
    Section {
        area_m2,
        bore_m: 4.0 * area_m2 / (arc(height_m, bore_m) + chord(depth_m, bore_m)),
    }
}

#[cfg(test)]
mod tests {
    use core::f64::consts::PI;

    use super::*;
    use crate::friction::churchill_1977;

    const BORE: Bore = Bore {
        bore_m: 0.019,
        roughness_m: 1.5e-6,
        transition: 1.0,
        density_kg_m3: 1.2,
        viscosity_pa_s: 1.8e-5,
        tube_length_m: 50.0,
    };

    /// The wedge's friction by its definition: many short uniform pieces.
    fn by_pieces(depth_m: f64, widths: f64, flow_kg_s: f64) -> f64 {
        const PIECES: u32 = 40_000;
        let step = depth_m / f64::from(PIECES);
        (0..PIECES)
            .map(|piece| {
                let free = free_section((f64::from(piece) + 0.5) * step, BORE.bore_m);
                let speed = flow_kg_s / (BORE.density_kg_m3 * free.area_m2);
                let reynolds = BORE.density_kg_m3 * speed * free.bore_m / BORE.viscosity_pa_s;
                let factor = churchill_1977(reynolds, BORE.roughness_m / free.bore_m);
                factor * widths * step / free.bore_m * 0.5 * BORE.density_kg_m3 * speed * speed
            })
            .sum()
    }

    #[test]
    fn nodes_meet_many_short_pieces() {
        for depth in [0.05, 0.3, 0.5, 0.7, 0.9, 0.97, 0.995] {
            for flow_kg_s in [1e-5, 1e-4, 6e-4, 2e-3] {
                let depth_m = depth * BORE.bore_m;
                let mut loss = Loss::default();
                BORE.slope(depth_m, 0.0, 75.0, &mut loss);
                let (got, expected) = (
                    loss.pressure_pa(flow_kg_s),
                    by_pieces(depth_m, 75.0, flow_kg_s),
                );
                assert!(
                    (got / expected - 1.0).abs() < 1e-3,
                    "{got} and {expected} at {depth} D, {flow_kg_s} kg/s"
                );
            }
        }
    }

    /// Half full: A = pi D^2/8, P = pi D/2 + D, so Dh = pi D / (pi + 2).
    #[test]
    fn half_a_bore() {
        let free = free_section(0.5, 1.0);
        assert!((free.area_m2 - PI / 8.0).abs() < 1e-15, "{free:?}");
        assert!((free.bore_m - PI / (PI + 2.0)).abs() < 1e-15, "{free:?}");
    }

    /// Falls 1:50 and 1:25 hold (pi/8) D^3 (50 + 25) before they seal: 202.01 mL in 19 mm.
    #[test]
    fn wedge_seals_at_its_volume() {
        let volume_m3 = PI / 8.0 * 0.019_f64 * 0.019 * 0.019 * 75.0;
        let wedge = |share: f64| {
            BORE.wedge(Wedge {
                at_m: 25.0,
                volume_m3: share * volume_m3,
                falls: [0.02, 0.04],
            })
        };
        assert!(!wedge(0.999).closed, "a little less leaves a passage");
        assert!(wedge(1.001).closed, "a little more seals");
        let almost = wedge(0.999);
        assert!(
            (almost.to_m - almost.from_m - 75.0 * 0.019).abs() < 0.02,
            "{almost:?}"
        );
    }

    /// All water is found along the tube, and parts of it add up.
    #[test]
    fn water_along_the_tube_is_the_volume() {
        let wedge = BORE.wedge(Wedge {
            at_m: 25.0,
            volume_m3: 90e-6,
            falls: [0.02, 0.04],
        });
        let whole = wedge.water_m3(0.0, 50.0);
        assert!((whole / 90e-6 - 1.0).abs() < 1e-12, "{whole}");
        let parts =
            wedge.water_m3(0.0, 24.8) + wedge.water_m3(24.8, 25.1) + wedge.water_m3(25.1, 50.0);
        assert!((parts / 90e-6 - 1.0).abs() < 1e-12, "{parts}");
    }

    #[test]
    fn an_end_of_the_tube_cuts_the_water_off() {
        let wedge = BORE.wedge(Wedge {
            at_m: 0.1,
            volume_m3: 60e-6,
            falls: [0.02, 0.02],
        });
        assert!(
            wedge.cut && wedge.from_m == 0.0,
            "cut at the start: {wedge:?}"
        );
        let water_m3 = wedge.water_m3(0.0, 50.0);
        assert!(water_m3 < 60e-6, "what would lie beyond is not there");
        let level = BORE.uniform(49.5, 1.0, 0.01);
        assert!(level.cut && level.to_m == 50.0, "cut at the end: {level:?}");
    }
}
