//! How long the next cell is, and where it is cut.

use dewrun_numeric::fast_cbrt;

use super::Accuracy;
use super::cell::{Cell, Node};
use super::regime::{Border, Regime};
use crate::wall_balance::Wall;

/// A change of the air in the first cell of a segment, K, that its correction usually allows.
const FIRST_CHANGE_K: f64 = 4.0;
/// Distance behind an inlet, in bores, that stands for the inlet.
pub(super) const INLET_BORES: f64 = 0.03125;
/// Decay of the fastest mode over a cell from which on a cell that is not smooth is taken implicitly: at 30 L/min a cell of a hundred metres, at 0.01 L/min one of centimetres.
const STIFF: f64 = 50.0;
/// Correction of what deposits inside that is allowed, as a share of it.
const DEPOSIT_SHARE: f64 = 0.06;
/// The same of the sweat.
const SWEAT_SHARE: f64 = 0.02;
/// Correction of either that is allowed in any case: 0.1 mg/h, kg/s.
const LEAST_WATER_KG_S: f64 = 2.8e-11;
/// Steps to find the place of a cut; usually two are taken.
const CUT_STEPS: u32 = 40;
/// So many of them by secants.
const SECANTS: u32 = 8;
/// Shortest cell, in bores: where that is still stiff the flow is below a millilitre a minute.
const SHORTEST_BORES: f64 = 1e-4;

/// What happens to the regime with a cell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Cut {
    None,
    /// A border lies at the cell's end.
    AtEnd(Border),
    /// A border lies where the cell would begin.
    Now(Border),
}

/// A cell that was accepted.
#[derive(Clone, Copy)]
pub(super) struct Taken {
    pub(super) cell: Cell,
    pub(super) dx_m: f64,
    pub(super) cut: Cut,
}

/// The length of cells, which follows what their corrections allow.
pub(super) struct Stepper {
    accuracy: Accuracy,
    dx_m: f64,
}

impl Stepper {
    pub(super) fn new(accuracy: Accuracy) -> Self {
        Self {
            accuracy,
            dx_m: 0.0,
        }
    }

    /// Bound on the cells of a segment; a march takes about ten.
    pub(super) fn most_cells(&self) -> u32 {
        self.accuracy.most_cells
    }

    /// Chooses the length to begin a segment with: one bore at an inlet, else what a change of the air allows.
    pub(super) fn begin(&mut self, wall: &Wall<'_>, node: &Node, length_m: f64) {
        let slope = (node.balance.fluxes.energy / wall.dry_air_kg_s * node.air.t_by[0]).abs();
        self.dx_m = if node.x_m <= 0.0 {
            wall.bore_m.min(length_m)
        } else {
            (FIRST_CHANGE_K / slope).min(length_m).min(2.0 * node.x_m)
        };
    }

    /// The next cell: as long as its correction allows, cut where the regime changes.
    pub(super) fn next_cell(
        &mut self,
        wall: &Wall<'_>,
        node: &Node,
        regime: Regime,
        left_m: f64,
        unseen: Option<Border>,
    ) -> Taken {
        let shortest_m = shortest_first(wall, node).max(SHORTEST_BORES * wall.bore_m);
        let mut dx_m = self.dx_m.min(left_m).min(self.accuracy.longest_m);
        if dx_m < left_m && left_m < 1.5 * dx_m {
            dx_m = 0.5 * left_m;
        }
        if node.x_m < wall.bore_m * (1.0 - 1e-9) {
            // One bore behind the inlet is where the coldest wall is looked for from.
            dx_m = dx_m.min(wall.bore_m - node.x_m);
        }
        let mut cell = wall.cell(node, dx_m, regime);
        let mut size = self.size(&cell, node, dx_m);
        while 1.0 < size && shortest_m < dx_m && cell.stiffness < STIFF {
            dx_m = (dx_m * step_factor(size).min(0.7)).max(shortest_m);
            cell = wall.cell(node, dx_m, regime);
            size = self.size(&cell, node, dx_m);
        }
        if 1.0 < size {
            cell = wall.stiff_cell(node, dx_m, regime);
            self.dx_m = 2.0 * dx_m;
        } else {
            self.dx_m = dx_m * step_factor(size);
        }
        self.cut(
            wall,
            node,
            Taken {
                cell,
                dx_m,
                cut: Cut::None,
            },
            regime,
            unseen,
        )
    }

    /// Cuts a cell whose end has left its regime, at the first place where it does.
    ///
    /// Which border comes first is known for sure only once the cell ends on it: so it is asked again there.
    fn cut(
        &mut self,
        wall: &Wall<'_>,
        node: &Node,
        mut taken: Taken,
        regime: Regime,
        unseen: Option<Border>,
    ) -> Taken {
        let whole_m = taken.dx_m;
        while let Some(border) = regime.first_crossed(node, &taken.cell.end, unseen) {
            if 0.0 <= regime.beyond(border, node) {
                return Taken {
                    dx_m: 0.0,
                    cut: Cut::Now(border),
                    ..taken
                };
            }
            let shorter = ended_at(wall, node, &taken, regime, border);
            let shortened = shorter.dx_m < taken.dx_m;
            taken = shorter;
            if !shortened {
                break;
            }
        }
        if let Some(border) = less_than_nothing(&taken.cell, regime)
            && unseen != Some(border)
        {
            return Taken {
                dx_m: 0.0,
                cut: Cut::Now(border),
                ..taken
            };
        }
        if taken.cut != Cut::None {
            self.dx_m = self.dx_m.min(whole_m).max(SHORTEST_BORES * wall.bore_m);
        }
        taken
    }

    /// Correction over what is allowed.
    fn size(&self, cell: &Cell, node: &Node, dx_m: f64) -> f64 {
        let allowed_k = self.accuracy.correction_k;
        // Vapour at saturation changes by about 6 % a kelvin.
        let allowed_w = 0.06 * allowed_k * (node.air.w + 1e-6);
        let allowed_deposit = DEPOSIT_SHARE * cell.mean.vapour.abs() * dx_m + LEAST_WATER_KG_S;
        let allowed_sweat = SWEAT_SHARE * cell.mean.sweat.abs() * dx_m + LEAST_WATER_KG_S;
        let (t, w, deposit, sweat) = cell.correction;
        let size = (t.abs() / allowed_k).max(w.abs() / allowed_w);
        let size = size.max(deposit.abs() / allowed_deposit);
        let size = size.max(sweat.abs() / allowed_sweat);
        if size.is_finite() { size } else { 1e9 }
    }
}

/// The surface from which a cell would take water that is not there: wetting that was only just begun ends where it began.
fn less_than_nothing(cell: &Cell, regime: Regime) -> Option<Border> {
    if regime.wet && cell.mean.vapour < 0.0 {
        return Some(Border::Wall);
    }
    (regime.sweating && cell.mean.sweat < 0.0).then_some(Border::Sweat)
}

/// A cell that begins at an inlet is at least this long, m: the film is singular there, and what holds a thirty-second of a bore behind it stands for the inlet.
fn shortest_first(wall: &Wall<'_>, node: &Node) -> f64 {
    if node.x_m <= 0.0 {
        INLET_BORES * wall.bore_m
    } else {
        0.0
    }
}

/// A cell that ends on a border which another has crossed.
///
/// Searched in the cube root of the distance, in which the film and so the wall are nearly straight: by secants first, then by halves.
fn ended_at(
    wall: &Wall<'_>,
    node: &Node,
    crossed: &Taken,
    regime: Regime,
    border: Border,
) -> Taken {
    let mut ended = Taken {
        cut: Cut::AtEnd(border),
        ..*crossed
    };
    let least_m = shortest_first(wall, node);
    if crossed.dx_m <= least_m {
        return ended;
    }
    let (mut low, mut at_low) = (fast_cbrt(node.x_m + least_m), regime.beyond(border, node));
    let mut high = fast_cbrt(node.x_m + crossed.dx_m);
    let mut at_high = regime.beyond(border, &crossed.cell.end);
    let mut last_was_low = None;
    for step in 0..CUT_STEPS {
        let share = if step < SECANTS {
            at_low / (at_low - at_high)
        } else {
            0.5
        };
        let root = low + (high - low) * share.clamp(0.02, 0.98);
        ended.dx_m = root * root * root - node.x_m;
        ended.cell = wall.cell(node, ended.dx_m, regime);
        let here = regime.beyond(border, &ended.cell.end);
        if here.abs() <= 1.0 {
            break;
        }
        // An end that stays for a second time counts half, so that both close in (the Illinois rule).
        let is_low = here < 0.0;
        let stays = if last_was_low == Some(is_low) {
            0.5
        } else {
            1.0
        };
        last_was_low = Some(is_low);
        if is_low {
            (low, at_low) = (root, here);
            at_high *= stays;
        } else {
            (high, at_high) = (root, here);
            at_low *= stays;
        }
    }
    ended
}

/// By how much a cell may be longer or shorter next: its correction grows with the cube of its length.
fn step_factor(size: f64) -> f64 {
    let room = 1.0 / (size + 1e-3);
    (1.1 * fast_cbrt(room)).clamp(0.2, 6.0)
}
