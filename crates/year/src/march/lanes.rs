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
                per_length: of(&|c| c.per_length),
                inner: of(&|c| c.inner),
                area: of(&|c| c.area),
                uncounted_k: of(&|c| c.uncounted_k),
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
                inside: of(&|c| c.inside),
                follows: of(&|c| c.follows),
                eases: of(&|c| c.eases),
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

/// All bits where a number is below nought, which nought with a minus counts as; else none.
///
/// Of a difference it tells which is smaller. With [`either`] it makes a choice out of bits: loops that choose by comparing do not go side by side in WebAssembly.
#[inline(always)]
pub(super) const fn is_negative(number: f64) -> u64 {
    (number.to_bits().cast_signed() >> 63).cast_unsigned()
}

/// All bits where a number is above nought; none of either nought.
#[inline(always)]
pub(super) const fn is_positive(number: f64) -> u64 {
    is_negative(0.0 - number)
}

/// The first where all bits are set, the second where none is.
#[inline(always)]
pub(super) const fn either(bits: u64, first: f64, second: f64) -> f64 {
    let (first, second) = (first.to_bits(), second.to_bits());
    f64::from_bits(second ^ ((first ^ second) & bits))
}

/// Whether any lane is below a limit: gathered from bits, which goes side by side.
#[inline(always)]
pub(super) fn any_below(lanes: &Lanes, limit: f64) -> bool {
    let mut bits = 0;
    for &lane in lanes {
        bits |= is_negative(lane - limit);
    }
    bits != 0
}

/// Whether any lane is above a limit.
#[inline(always)]
pub(super) fn any_above(lanes: &Lanes, limit: f64) -> bool {
    let mut bits = 0;
    for &lane in lanes {
        bits |= is_negative(limit - lane);
    }
    bits != 0
}
