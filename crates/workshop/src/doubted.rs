//! How sure an answer is, as the numbers in which it travels between the page and its second module.

use dewrun_advice::{Spread, SteadyDoubt, TubeDoubt};
use dewrun_desk::{count_as_number, count_of};

/// Cases, wet ones, unanswered ones; mist; then of each tube how many places there are, its water, its sweat, and the wet cases at each place.
///
/// What varied stays behind: its shares are told where they were found.
pub(crate) fn doubt_as_numbers(doubt: &SteadyDoubt) -> Vec<f64> {
    let mut numbers = [doubt.cases, doubt.wet, doubt.unanswered]
        .map(f64::from)
        .to_vec();
    numbers.extend(spread_as_numbers(doubt.mist));
    for tube in [Some(&doubt.intake), doubt.exhaust.as_ref()]
        .into_iter()
        .flatten()
    {
        numbers.push(count_as_number(tube.wet_at.len()));
        numbers.extend(spread_as_numbers(tube.water_g_h));
        numbers.extend(spread_as_numbers(tube.sweat_g_h));
        numbers.extend(tube.wet_at.iter().copied().map(f64::from));
    }
    numbers
}

const fn spread_as_numbers(spread: Spread) -> [f64; 3] {
    [spread.p10, spread.p50, spread.p90]
}

/// What the numbers say; none where they are no such answer.
pub(crate) fn doubt_of(numbers: &[f64]) -> Option<SteadyDoubt> {
    let mut rest = numbers;
    let [cases, wet, unanswered] = [(); 3].map(|()| count(&mut rest));
    let mist = spread(&mut rest)?;
    let intake = tube(&mut rest)?;
    let exhaust = if rest.is_empty() {
        None
    } else {
        Some(tube(&mut rest)?)
    };
    rest.is_empty().then_some(SteadyDoubt {
        cases: cases?,
        wet: wet?,
        unanswered: unanswered?,
        intake,
        exhaust,
        mist,
        shares: Vec::new(),
    })
}

fn number(rest: &mut &[f64]) -> Option<f64> {
    let (first, behind) = rest.split_first()?;
    *rest = behind;
    Some(*first)
}

fn count(rest: &mut &[f64]) -> Option<u32> {
    u32::try_from(count_of(number(rest)?)?).ok()
}

fn spread(rest: &mut &[f64]) -> Option<Spread> {
    Some(Spread {
        p10: number(rest)?,
        p50: number(rest)?,
        p90: number(rest)?,
    })
}

fn tube(rest: &mut &[f64]) -> Option<TubeDoubt> {
    let places = count(rest)?;
    let (water_g_h, sweat_g_h) = (spread(rest)?, spread(rest)?);
    let wet_at: Option<Vec<u32>> = (0..places).map(|_| count(rest)).collect();
    Some(TubeDoubt {
        water_g_h,
        sweat_g_h,
        wet_at: wet_at?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(exhaust: bool) -> SteadyDoubt {
        let spread = |start: f64| Spread {
            p10: start,
            p50: start + 1.0,
            p90: start + 2.5,
        };
        let tube = |places: u32| TubeDoubt {
            water_g_h: spread(3.0),
            sweat_g_h: spread(0.0),
            wet_at: (0..places).collect(),
        };
        SteadyDoubt {
            cases: 1024,
            wet: 990,
            unanswered: 2,
            intake: tube(40),
            exhaust: exhaust.then(|| tube(7)),
            mist: spread(1e-6),
            shares: Vec::new(),
        }
    }

    #[test]
    fn numbers_are_read_back() {
        for exhaust in [false, true] {
            let doubt = sample(exhaust);
            let found = doubt_of(&doubt_as_numbers(&doubt));
            assert_eq!(found, Some(doubt), "with an exhaust tube: {exhaust}");
        }
    }

    #[test]
    fn what_is_cut_short_is_no_doubt() {
        let numbers = doubt_as_numbers(&sample(true));
        for length in 0..numbers.len() {
            // Cut behind the intake it is that of a run without exhaust.
            let is_whole = length == 6 + 7 + 40;
            let found = doubt_of(&numbers[..length]);
            assert_eq!(found.is_some(), is_whole, "of {length} numbers");
        }
        let mut wrong = numbers;
        wrong[0] = 0.5;
        assert_eq!(doubt_of(&wrong), None, "half a case");
    }
}
