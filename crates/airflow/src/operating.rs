//! The flows at which the pressures balance.

use dewrun_numeric::{RootError, itp};

use crate::chain::Chain;
use crate::error::AirflowError;

/// Parts into which a stretch of rising fan pressure is cut in search of operating points.
const SCAN_PARTS: u32 = 32;
/// Steps of golden section on a near miss between two of them.
const NEAR_MISS_STEPS: u32 = 40;
/// Strides that quadruple: from the smallest flow to beyond any number.
const MAX_STRIDES: u32 = 80;
/// Share of the bracket to which a root is brought, far below its last digit: a nearly closed bore lets little through.
const RELATIVE_WIDTH: f64 = 1e-30;
/// Share of the pressures at work below which what is left of them is their rounding.
const ROUNDING: f64 = 2e-13;
/// Flow into a closed end that is none [kg/s]: a milligram a year.
const NO_INFLOW_KG_S: f64 = 1e-17;

/// What a section is searched with.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Search<'a> {
    /// Where to look first, and how far around it: flow [kg/s] where the start is open, pressure (Pa) where it is closed.
    pub(crate) stride: f64,
    /// Stretches of mass flow at the fan over which its pressure rises.
    pub(crate) humps: &'a [(f64, f64)],
}

/// Every trial value at which nothing is left at the section's end, rising.
///
/// # Errors
/// [`AirflowError::Unbalanced`] where none is found.
pub(crate) fn roots(chain: &Chain<'_>, search: Search<'_>) -> Result<Vec<f64>, AirflowError> {
    let rounding = match chain.pressure_at_work_pa() {
        Some(at_work_pa) => ROUNDING * at_work_pa,
        None => NO_INFLOW_KG_S,
    };
    let left = |value: f64| {
        let left = chain.try_out(value).left;
        if left.abs() <= rounding { 0.0 } else { left }
    };
    if chain.is_still() || search.humps.is_empty() {
        return Ok(vec![falling(left, search.stride)?]);
    }
    let mut stops = Vec::with_capacity(2 * search.humps.len());
    for &(from, to) in search.humps {
        stops.push((value_of_flow(chain, from, search.stride)?, true));
        stops.push((value_of_flow(chain, to, search.stride)?, false));
    }
    let mut roots = Vec::new();
    if let Some(&(first, _)) = stops.first() {
        let there = left(first);
        if there <= 0.0 {
            roots.push(beyond(left, (first, there), -search.stride)?);
        }
    }
    for pair in stops.windows(2) {
        if let &[(from, rises), (to, _)] = pair {
            let parts = if rises { SCAN_PARTS } else { 1 };
            scan(left, from, to, parts, &mut roots)?;
        }
    }
    if let Some(&(last, _)) = stops.last() {
        let there = left(last);
        if 0.0 < there {
            roots.push(beyond(left, (last, there), search.stride)?);
        }
    }
    if roots.is_empty() {
        return Err(AirflowError::Unbalanced { left_pa: left(0.0) });
    }
    Ok(roots)
}

/// The one root of a function that falls throughout.
fn falling(left: impl Fn(f64) -> f64 + Copy, stride: f64) -> Result<f64, AirflowError> {
    let there = left(0.0);
    let stride = if there <= 0.0 { -stride } else { stride };
    beyond(left, (0.0, there), stride)
}

/// The root of a falling function on one side of a place with its value, towards which `stride` points.
fn beyond(
    left: impl Fn(f64) -> f64 + Copy,
    from: (f64, f64),
    stride: f64,
) -> Result<f64, AirflowError> {
    let (mut near, mut step) = (from, stride);
    for _ in 0..MAX_STRIDES {
        let far = (near.0 + step, left(near.0 + step));
        if far.1.is_nan() {
            break;
        }
        if (0.0 < far.1) != (0.0 < near.1) {
            return if near.0 < far.0 {
                between(left, near, far)
            } else {
                between(left, far, near)
            };
        }
        near = far;
        step *= 4.0;
    }
    Err(AirflowError::Unbalanced { left_pa: near.1 })
}

/// The root between two places with their values, which have different signs.
fn between(
    left: impl Fn(f64) -> f64 + Copy,
    low: (f64, f64),
    high: (f64, f64),
) -> Result<f64, AirflowError> {
    let known = |value: f64| {
        if value == low.0 {
            low.1
        } else if value == high.0 {
            high.1
        } else {
            left(value)
        }
    };
    let tolerance = RELATIVE_WIDTH * low.0.abs().max(high.0.abs());
    itp(known, low.0, high.0, tolerance).map_err(|error| match error {
        RootError::NoSignChange {
            low: (_, left_pa), ..
        } => AirflowError::Unbalanced { left_pa },
        RootError::NotConverged { low, .. } => AirflowError::Unbalanced { left_pa: left(low) },
    })
}

/// Adds the roots between two places, found by changes of sign between equal parts and by near misses in between.
fn scan(
    left: impl Fn(f64) -> f64 + Copy,
    from: f64,
    to: f64,
    parts: u32,
    roots: &mut Vec<f64>,
) -> Result<(), AirflowError> {
    let at = |part: u32| from + (to - from) * f64::from(part) / f64::from(parts);
    let mut before: Option<(f64, f64)> = None;
    let mut here = (from, left(from));
    for part in 1..=parts {
        let x = at(part);
        let next = (x, left(x));
        if let Some(missed) = before.and_then(|before| near_miss(left, before, here, next)) {
            roots.push(between(left, before.unwrap_or(here), missed)?);
            roots.push(between(left, missed, next)?);
        } else if (0.0 < here.1) != (0.0 < next.1) {
            roots.push(between(left, here, next)?);
        }
        before = Some(here);
        here = next;
    }
    Ok(())
}

/// A place between three of one sign, the middle one nearest to zero, where the sign is the other.
fn near_miss(
    left: impl Fn(f64) -> f64,
    before: (f64, f64),
    here: (f64, f64),
    next: (f64, f64),
) -> Option<(f64, f64)> {
    /// The golden ratio's inverse.
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let sign = if 0.0 < here.1 { 1.0 } else { -1.0 };
    let (one, two, three) = (sign * before.1, sign * here.1, sign * next.1);
    if one <= 0.0 || three <= 0.0 || one < two || three < two {
        return None;
    }
    let (mut low, mut high) = (before.0, next.0);
    let mut inner = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    let mut values = inner.map(|x| sign * left(x));
    for _ in 0..NEAR_MISS_STEPS {
        let [a, b] = inner;
        let [at_a, at_b] = values;
        if at_a < 0.0 {
            return Some((a, sign * at_a));
        }
        if at_b < 0.0 {
            return Some((b, sign * at_b));
        }
        if at_a < at_b {
            high = b;
            let c = high - GOLDEN * (high - low);
            inner = [c, a];
            values = [sign * left(c), at_a];
        } else {
            low = a;
            let c = low + GOLDEN * (high - low);
            inner = [b, c];
            values = [at_b, sign * left(c)];
        }
    }
    None
}

/// The trial value at which a mass flow goes through the fan, which rises with it.
fn value_of_flow(chain: &Chain<'_>, flow_kg_s: f64, stride: f64) -> Result<f64, AirflowError> {
    if chain.begins_with_the_flow() {
        return Ok(flow_kg_s);
    }
    falling(|value| flow_kg_s - chain.try_out(value).fan_kg_s, stride)
}
