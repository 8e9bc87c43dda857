//! Hours side by side: lane j does hour h + j at cell i - j, so that what an hour leaves on a wall is there when the next one comes.

use super::cell::{Cell, NUMBER};

/// Hours side by side.
pub(super) const LANES: usize = 8;

/// One number of each lane.
pub(super) type Lanes = [f64; LANES];

/// The cells as the lanes meet them: at each turn of the wave, lane j stands j cells behind lane 0.
pub(super) fn skewed(cells: &[Cell<f64>]) -> Vec<Cell<Lanes>> {
    let count = cells.len();
    (0..count)
        .map(|turn| {
            let of = |part: &dyn Fn(&Cell<f64>) -> f64| -> Lanes {
                core::array::from_fn(|lane| {
                    cells
                        .get((turn + count * LANES - lane) % count)
                        .map_or(0.0, part)
                })
            };
            Cell {
                length: of(&|c| c.length),
                inner: of(&|c| c.inner),
                per_inner: of(&|c| c.per_inner),
                per_bore: of(&|c| c.per_bore),
                number: core::array::from_fn::<_, NUMBER, _>(|power| of(&|c| c.number[power])),
                root_middle: of(&|c| c.root_middle),
                root_per_half: of(&|c| c.root_per_half),
                entry: of(&|c| c.entry),
                outer: of(&|c| c.outer),
                per_outer: of(&|c| c.per_outer),
                size: of(&|c| c.size),
                radiative: of(&|c| c.radiative),
                insulation: of(&|c| c.insulation),
                tube: of(&|c| c.tube),
                tracing: of(&|c| c.tracing),
                retained: of(&|c| c.retained),
                root_step: of(&|c| c.root_step),
                per_root: of(&|c| c.per_root),
                natural: of(&|c| c.natural),
                diffusivity: of(&|c| c.diffusivity),
                warmth: of(&|c| c.warmth),
            }
        })
        .collect()
}

/// The smaller of two, neither of which is missing.
#[inline(always)]
pub(super) fn smaller(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The larger of two, neither of which is missing.
#[inline(always)]
pub(super) fn larger(a: f64, b: f64) -> f64 {
    if a < b { b } else { a }
}

/// The greatest of all lanes.
#[inline(always)]
pub(super) fn greatest(lanes: &Lanes) -> f64 {
    let mut greatest = f64::NEG_INFINITY;
    for &lane in lanes {
        greatest = larger(greatest, lane);
    }
    greatest
}

/// The least of all lanes.
#[inline(always)]
pub(super) fn least(lanes: &Lanes) -> f64 {
    let mut least = f64::INFINITY;
    for &lane in lanes {
        least = smaller(least, lane);
    }
    least
}
