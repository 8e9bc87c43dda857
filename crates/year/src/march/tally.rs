//! What the cells of a step come to, summed up in all lanes at once as they go by.

use super::cell::Cell;
use super::lanes::{LANES, Lanes, larger, smaller};
use super::state::State;
use crate::sums::{HourSum, LegSum};

/// One number of each lane, nought.
const NOUGHT: Lanes = [0.0; LANES];

/// What the step of each lane comes to so far.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct Tally {
    /// Of the leg that it is in, as [`LegSum`] has it.
    condensed_kg: Lanes,
    evaporated_kg: Lanes,
    drained_kg: Lanes,
    sweat_kg: Lanes,
    film_kg: Lanes,
    frost_kg: Lanes,
    slug_kg: Lanes,
    coldest_wall_c: Lanes,
    /// Of all its legs, as [`HourSum`] has it.
    wettest_kg_hm: Lanes,
    most_film_kg_m2: Lanes,
    most_frost_kg_m2: Lanes,
    /// Most frost over the bore that it lies in, kg/m3 times pi.
    most_frost_in_bore: Lanes,
}

impl Tally {
    /// Nothing yet.
    pub(super) const NONE: Self = Self {
        condensed_kg: NOUGHT,
        evaporated_kg: NOUGHT,
        drained_kg: NOUGHT,
        sweat_kg: NOUGHT,
        film_kg: NOUGHT,
        frost_kg: NOUGHT,
        slug_kg: NOUGHT,
        coldest_wall_c: [f64::INFINITY; LANES],
        wettest_kg_hm: NOUGHT,
        most_film_kg_m2: NOUGHT,
        most_frost_kg_m2: NOUGHT,
        most_frost_in_bore: NOUGHT,
    };

    /// A lane begins a step.
    pub(super) fn begin_step(&mut self, l: usize) {
        self.wettest_kg_hm[l] = 0.0;
        self.most_film_kg_m2[l] = 0.0;
        self.most_frost_kg_m2[l] = 0.0;
        self.most_frost_in_bore[l] = 0.0;
    }

    /// A lane begins a leg.
    pub(super) fn begin_leg(&mut self, l: usize) {
        self.condensed_kg[l] = 0.0;
        self.evaporated_kg[l] = 0.0;
        self.drained_kg[l] = 0.0;
        self.sweat_kg[l] = 0.0;
        self.film_kg[l] = 0.0;
        self.frost_kg[l] = 0.0;
        self.slug_kg[l] = 0.0;
        self.coldest_wall_c[l] = f64::INFINITY;
    }

    /// The leg that a lane has come through.
    pub(super) fn leg(&self, l: usize) -> LegSum {
        LegSum {
            condensed_kg: self.condensed_kg[l],
            evaporated_kg: self.evaporated_kg[l],
            drained_kg: self.drained_kg[l],
            sweat_kg: self.sweat_kg[l],
            film_kg: self.film_kg[l],
            frost_kg: self.frost_kg[l],
            slug_kg: self.slug_kg[l],
            coldest_wall_c: self.coldest_wall_c[l],
        }
    }

    /// Puts down the most of anything in the step that a lane has come through.
    pub(super) fn put_most(&self, l: usize, sum: &mut HourSum) {
        sum.wettest_kg_hm = self.wettest_kg_hm[l];
        sum.most_film_kg_m2 = self.most_film_kg_m2[l];
        sum.most_frost_kg_m2 = self.most_frost_kg_m2[l];
    }

    /// Most frost over the bore that it lies in, kg/m3 times pi, in the step that a lane has come through.
    pub(super) const fn most_frost_in_bore(&self, l: usize) -> f64 {
        self.most_frost_in_bore[l]
    }
}

impl State {
    /// Sums up what the lanes have done at their cells; what a lane without an hour comes to is not asked for.
    pub(super) fn tally(&mut self, cell: &Cell<Lanes>) {
        let (given, film, settled, tally) =
            (&self.given, &self.film, &self.settled, &mut self.tally);
        for l in 0..LANES {
            let area = cell.area[l];
            let change = settled.change[l];
            let (water, frost) = (settled.water[l], settled.frost[l]);
            tally.condensed_kg[l] += larger(change, 0.0) * area;
            tally.evaporated_kg[l] -= smaller(change, 0.0) * area;
            tally.drained_kg[l] += settled.drained[l] * area;
            tally.film_kg[l] += water * area;
            tally.frost_kg[l] += frost * area;
            let thawed = film.frost[l] - frost;
            tally.slug_kg[l] += larger(smaller(thawed, settled.drained[l]), 0.0) * area;
            let formed_kg_hm = change * cell.inner[l] * 3600.0 * given.per_second[l];
            tally.wettest_kg_hm[l] = larger(tally.wettest_kg_hm[l], formed_kg_hm);
            tally.most_film_kg_m2[l] = larger(tally.most_film_kg_m2[l], water);
            tally.most_frost_kg_m2[l] = larger(tally.most_frost_kg_m2[l], frost);
            let in_bore = frost * cell.per_bore[l];
            tally.most_frost_in_bore[l] = larger(tally.most_frost_in_bore[l], in_bore);
        }
        self.tally_dry(cell);
    }

    /// The same of lanes whose walls are all dry and stay so.
    pub(super) fn tally_dry(&mut self, cell: &Cell<Lanes>) {
        let (given, solving, settled) = (&self.given, &self.solving, &self.settled);
        for l in 0..LANES {
            self.tally.sweat_kg[l] += solving.sweat[l] * cell.length[l] * given.seconds[l];
            let wall_c = settled.wall_c[l] + cell.uncounted_k[l];
            self.tally.coldest_wall_c[l] = smaller(self.tally.coldest_wall_c[l], wall_c);
        }
    }
}
