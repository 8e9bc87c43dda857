//! From the doubt of an answer to the answer file's types, by hand.

use dewrun_advice::{Share, Spread, SteadyDoubt, TubeDoubt, Varied};
use dewrun_run::Run;

use crate::given_path;
use crate::output::{DoubtOutput, Figure, ShareOutput, SpreadOutput, TubeDoubtOutput};

/// How sure a steady answer is; place by place where the tubes are drawn out.
pub(crate) fn doubt(
    (run_index, run): (usize, &Run),
    doubt: &SteadyDoubt,
    along: bool,
) -> DoubtOutput {
    let tube = |tube: &TubeDoubt| TubeDoubtOutput {
        water_g_h: spread(tube.water_g_h),
        sweat_g_h: spread(tube.sweat_g_h),
        wet_of_100_along: if along {
            let places = tube.wet_at.iter();
            places.map(|wet| of_100(*wet, doubt.cases)).collect()
        } else {
            Vec::new()
        },
    };
    let share = |one: &Share| share(run_index, run, one);
    DoubtOutput {
        cases: doubt.cases,
        unanswered: doubt.unanswered,
        wet_of_100: of_100(doubt.wet, doubt.cases),
        intake: tube(&doubt.intake),
        exhaust: doubt.exhaust.as_ref().map(tube),
        mist_kg_kg: spread(doubt.mist),
        shares: doubt.shares.iter().map(share).collect(),
    }
}

fn of_100(wet: u32, cases: u32) -> Figure {
    Figure(100.0 * f64::from(wet) / f64::from(cases.max(1)))
}

const fn spread(spread: Spread) -> SpreadOutput {
    SpreadOutput {
        p10: Figure(spread.p10),
        p50: Figure(spread.p50),
        p90: Figure(spread.p90),
    }
}

fn share(run_index: usize, run: &Run, share: &Share) -> ShareOutput {
    let (assumed, paths, relation) = match &share.varied {
        Varied::Assumed(one) => {
            let places = one.places.iter();
            let paths = places.map(|place| given_path(run_index, run, one.figure, *place));
            let paths = paths.map(|path| path.as_str().to_owned()).collect();
            (Some(one.figure.id()), paths, None)
        }
        Varied::Relation(relation) => (None, Vec::new(), Some(relation.id())),
    };
    ShareOutput {
        assumed: assumed.map(str::to_owned),
        paths,
        relation: relation.map(str::to_owned),
        share_percent: Figure(100.0 * share.share),
    }
}
