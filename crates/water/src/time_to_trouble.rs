//! How long until water makes trouble: first slugs, the low airflow limit, a sealed bore, a full trap; and the drain interval.

use dewrun_quantity::{Density, Length, Mass, Time, Volume, VolumeFlow};

use crate::drainage::{DrainTube, Drainage, Pool};

/// Share of the time to the first trouble that the drain interval leaves in hand, where nobody says otherwise: half.
///
/// Common practice, no source; the amount of water is rarely known better.
pub const USUAL_MARGIN: f64 = 0.5;

/// A trouble that water makes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    /// The moving air throws the first slugs.
    FirstSlugs,
    /// The airflow falls under its low limit.
    LowLimit,
    /// The bore is closed.
    Sealed,
    /// The trap is full.
    TrapFull,
}

/// Where it makes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TroubleAt {
    /// A pool, by its position in [`Drainage::pools`].
    Pool(usize),
    /// A trap, by its position in the list.
    Trap(usize),
}

/// A trouble and when it comes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TroubleTime {
    /// What.
    pub trouble: Trouble,
    /// Where.
    pub at: TroubleAt,
    /// After how long of the same conditions.
    pub after: Time,
}

/// The air that passes a low point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PassingAir {
    /// Its volume flow there.
    pub flow: VolumeFlow,
    /// Its density there.
    pub density: Density,
}

/// All troubles that come under steady conditions in a tube that is dry at first, the soonest first.
///
/// A pool that runs over before it is deep enough makes none; pools that ran together are looked at as one, for what none of them had before.
/// `low_limit` gives the depth of a pool at which the airflow trips its low limit, where there is one.
///
/// # Range
/// Steady conditions; traps as the drainage took them. Slugs in bores below 20 mm are unproven.
/// # Accuracy
/// That of the rates and of what the walls keep, a factor of two.
/// # Errors
/// None; what never comes is not in the list.
/// # Source
/// [`Drainage`] and [`crate::pool`].
///
/// ```
/// use dewrun_quantity::{Density, Length, MassFlow, Temperature, VolumeFlow};
/// use dewrun_water::{Incline, Water, held::Keeping};
/// use dewrun_water::drainage::{DrainLeg, DrainTube, Drainage, Formed, Traps};
/// use dewrun_water::time_to_trouble::{PassingAir, Trouble, troubles};
/// let leg = |rise_mm| DrainLeg {
///     length: Length::metres(4.0),
///     rise: Length::millimetres(rise_mm),
///     bore: Length::millimetres(19.0),
///     keeping: Keeping::USUAL,
///     reachable: true,
/// };
/// let water = Water::at(Temperature::celsius(15.0));
/// let tube = DrainTube { legs: vec![leg(-80.0), leg(80.0)], traps: vec![], water };
/// let forms = Formed { from: Length::ZERO, to: Length::metres(8.0), rate: MassFlow::grams_per_hour(8.0) };
/// let drainage = Drainage::of(&tube, &[forms], Traps::Emptied).unwrap();
/// let air = PassingAir { flow: VolumeFlow::litres_per_minute(30.0), density: Density::kilograms_per_cubic_metre(1.2) };
/// let first = troubles(&drainage, &tube, air, |_| None)[0];
/// assert_eq!(first.trouble, Trouble::FirstSlugs);
/// assert!((first.after.to_hours() - 10.7).abs() < 0.1, "23.9 g wet the walls, 61.8 mL more throw slugs");
/// ```
#[must_use]
pub fn troubles(
    drainage: &Drainage,
    tube: &DrainTube,
    air: PassingAir,
    low_limit: impl Fn(&Pool) -> Option<Length>,
) -> Vec<TroubleTime> {
    let water = tube.water.density;
    let mut all: Vec<TroubleTime> = Vec::new();
    // What each pool had, or the pools that ran together in it.
    let mut had: Vec<Vec<Trouble>> = Vec::with_capacity(drainage.pools.len());
    for (number, pool) in drainage.pools.iter().enumerate() {
        let parts = pool.joins.iter().filter_map(|part| had.get(*part));
        let mut known: Vec<Trouble> = parts.flatten().copied().collect();
        let slugs = pool.shape.first_slugs(air.flow, air.density, water);
        let depths = [
            (Trouble::FirstSlugs, Some(slugs.depth)),
            (Trouble::LowLimit, low_limit(pool)),
            (Trouble::Sealed, Some(pool.shape.bore())),
        ];
        for (trouble, depth) in depths {
            let volume = depth.map(|depth| pool.shape.volume(depth));
            let after = volume.and_then(|volume| when(pool, volume, water));
            if let Some(after) = after
                && !known.contains(&trouble)
            {
                let at = TroubleAt::Pool(number);
                all.push(TroubleTime { trouble, at, after });
                known.push(trouble);
            }
        }
        had.push(known);
    }
    for trap in 0..tube.traps.len() {
        if let Some(after) = drainage.trap_full(tube, trap) {
            all.push(TroubleTime {
                trouble: Trouble::TrapFull,
                at: TroubleAt::Trap(trap),
                after,
            });
        }
    }
    all.sort_by(|one, next| {
        let (one, next) = (one.after.to_seconds(), next.after.to_seconds());
        one.total_cmp(&next)
    });
    all
}

/// When a volume stands in a pool; none where it runs over before or never comes.
fn when(pool: &Pool, volume: Volume, water: Density) -> Option<Time> {
    let mass = Mass::kilograms(volume.to_cubic_metres() * water.to_kilograms_per_cubic_metre());
    if pool.capacity < mass {
        return None;
    }
    Some(pool.inflow.time_for(mass)?.max(pool.begins))
}

/// How long traps may wait: the time to the first trouble less a margin; none where there is no trouble.
///
/// Arguments: the troubles, the margin as a share of that time.
///
/// # Range
/// Margins from 0 to 1; others are taken as the nearer of both.
/// # Accuracy
/// That of the times.
/// # Errors
/// None.
/// # Source
/// A choice of this project; the margin is stated with the interval.
///
/// ```
/// use dewrun_quantity::Time;
/// use dewrun_water::time_to_trouble::{Trouble, TroubleAt, TroubleTime, USUAL_MARGIN, drain_interval};
/// let full = TroubleTime { trouble: Trouble::TrapFull, at: TroubleAt::Trap(0), after: Time::days(60.0) };
/// assert_eq!(drain_interval(&[full], USUAL_MARGIN), Some(Time::days(30.0)));
/// ```
#[must_use]
pub fn drain_interval(troubles: &[TroubleTime], margin: f64) -> Option<Time> {
    let first = troubles
        .iter()
        .map(|trouble| trouble.after)
        .reduce(Time::min)?;
    Some(first * (1.0 - margin.clamp(0.0, 1.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drainage::{DrainLeg, Formed, TrapAt, Traps};
    use crate::held::Keeping;
    use crate::{Incline, Water};
    use dewrun_quantity::{ForcePerLength, MassFlow, MassPerArea};

    const AIR: PassingAir = PassingAir {
        flow: VolumeFlow::litres_per_minute(30.0),
        density: Density::kilograms_per_cubic_metre(1.2),
    };

    fn v(rise_mm: f64) -> DrainTube {
        let sine = Incline::per_horizontal(0.02).sine();
        let leg = |rise_mm: f64| DrainLeg {
            length: Length::millimetres(rise_mm.abs() / sine),
            rise: Length::millimetres(rise_mm),
            bore: Length::millimetres(20.0),
            keeping: Keeping {
                film: MassPerArea::ZERO,
                ..Keeping::USUAL
            },
            reachable: true,
        };
        DrainTube {
            legs: vec![leg(-rise_mm), leg(rise_mm)],
            traps: Vec::new(),
            water: Water {
                density: Density::kilograms_per_cubic_metre(1000.0),
                surface_tension: ForcePerLength::newtons_per_metre(0.073),
            },
        }
    }

    fn times(tube: &DrainTube, grams_per_hour: f64) -> Vec<TroubleTime> {
        let forms = Formed {
            from: Length::ZERO,
            to: Length::metres(0.5),
            rate: MassFlow::grams_per_hour(grams_per_hour),
        };
        let drainage = Drainage::of(tube, &[forms], Traps::Emptied).expect("a plain tube");
        // Half the bore trips the limit.
        troubles(&drainage, tube, AIR, |pool| Some(pool.shape.bore() * 0.5))
    }

    /// Half full it holds 66.667 g and sealed 314.159 g (bore 20 mm, two falls of 1:50): at 10 g/h after 6.667 and 31.416 h.
    #[test]
    fn the_low_limit_trips_before_the_bore_is_closed() {
        let times = times(&v(80.0), 10.0);
        let hours = |trouble| {
            let found = times.iter().find(|time| time.trouble == trouble);
            found.map_or(f64::NAN, |time| time.after.to_hours())
        };
        assert!(
            (hours(Trouble::LowLimit) - 6.666_667).abs() < 1e-5,
            "{times:?}"
        );
        assert!(
            (hours(Trouble::Sealed) - 31.415_927).abs() < 1e-5,
            "{times:?}"
        );
        assert!(
            times.windows(2).all(|pair| match pair {
                [one, next] => one.after <= next.after,
                _ => true,
            }),
            "the soonest first: {times:?}"
        );
    }

    #[test]
    fn a_low_point_that_runs_over_first_is_never_sealed() {
        let times = times(&v(12.0), 10.0);
        let sealed = times.iter().find(|time| time.trouble == Trouble::Sealed);
        assert_eq!(sealed, None, "12 mm of crest are less than the bore");
        let trips = times.iter().any(|time| time.trouble == Trouble::LowLimit);
        assert!(trips, "but more than half of it: {times:?}");
    }

    /// Two dips of 10 mm in a trough of 80 mm, bore 20 mm: neither closes before they run together, together they do.
    #[test]
    fn pools_that_run_together_close_the_bore_once() {
        let mut tube = v(80.0);
        let shallow = v(10.0).legs;
        tube.legs.splice(1..1, shallow.into_iter().rev());
        let sealed: Vec<TroubleAt> = times(&tube, 10.0)
            .iter()
            .filter(|time| time.trouble == Trouble::Sealed)
            .map(|time| time.at)
            .collect();
        assert_eq!(sealed, [TroubleAt::Pool(2)], "only the pool of both");
    }

    #[test]
    fn no_water_no_trouble() {
        assert_eq!(times(&v(80.0), 0.0), [], "nothing comes");
        assert_eq!(
            drain_interval(&[], USUAL_MARGIN),
            None,
            "no interval needed"
        );
    }

    #[test]
    fn a_trap_of_60_grams_is_full_after_6_hours() {
        let mut tube = v(80.0);
        tube.traps.push(TrapAt {
            at: Length::millimetres(500.0),
            capacity: Some(Mass::grams(60.0)),
        });
        let times = times(&tube, 10.0);
        let full = times.first().map(|time| (time.trouble, time.at));
        assert_eq!(
            full,
            Some((Trouble::TrapFull, TroubleAt::Trap(0))),
            "{times:?}"
        );
        let hours = times.first().map_or(f64::NAN, |time| time.after.to_hours());
        assert!((hours - 6.0).abs() < 1e-9, "{hours} h");
    }
}
