//! First slugs: whether the moving air throws standing water up.

use std::collections::BTreeMap;

use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_quantity::{Density, VolumeFlow};

use super::held::Store;
use super::places::{Places, PoolAt};
use crate::hours::Hour;

/// A pool that fills less of its sealing volume throws none.
const ASKED: f64 = 0.02;
/// Bits of a push that are left out to tell between which pushes it lies: those are 3 to 6 % apart.
const BETWEEN: u32 = 48;

/// The water that throws slugs, kg, at pushes of the air, `m^2 / rho`, kg m3/s2, by their leading bits.
///
/// The stronger the push, the less water it takes, and the criterion knows the air by its push alone, but for the ten-thousandth that air bears of water.
/// Between two pushes only water between both is in doubt.
#[derive(Debug, Clone, Default)]
struct Known {
    kg: BTreeMap<u64, f64>,
}

impl Known {
    fn at(&mut self, place: &PoolAt, bits: u64, rho: f64) -> f64 {
        let push = f64::from_bits(bits << BETWEEN);
        *(self.kg.entry(bits)).or_insert_with(|| throws_kg(place, push, rho))
    }
}

/// Water at a low point that air of a push and density throws slugs of, kg.
fn throws_kg(place: &PoolAt, push: f64, rho: f64) -> f64 {
    let flow = VolumeFlow::cubic_metres_per_second((push / rho).sqrt());
    let of = Density::kilograms_per_cubic_metre;
    let slugs = place
        .low
        .shape
        .first_slugs(flow, of(rho), of(place.water_kg_m3));
    slugs.volume.to_cubic_metres() * place.water_kg_m3
}

/// What throws slugs at each low point, as far as it was asked.
#[derive(Debug, Clone, Default)]
pub(super) struct Slugs {
    known: Vec<Known>,
}

impl Slugs {
    pub(super) fn of(places: &Places) -> Self {
        Self {
            known: vec![Known::default(); places.pools.len()],
        }
    }

    /// Whether any pool stands so high that this air throws slugs of it.
    pub(super) fn are_thrown(
        &mut self,
        places: &Places,
        pools: &[Store],
        hour: &Hour,
        mass_kg_s: f64,
    ) -> bool {
        let mut thrown = false;
        for ((place, known), store) in places.pools.iter().zip(&mut self.known).zip(pools) {
            let kg = store.all();
            if kg <= ASKED * place.seal_kg || mass_kg_s <= 0.0 {
                continue;
            }
            let rho = density_kg_m3(hour.air_c, hour.w, hour.p_pa);
            thrown |= is_thrown(place, known, kg, (mass_kg_s * mass_kg_s / rho, rho));
        }
        thrown
    }
}

fn is_thrown(place: &PoolAt, known: &mut Known, kg: f64, (push, rho): (f64, f64)) -> bool {
    let weaker = push.to_bits() >> BETWEEN;
    if known.at(place, weaker, rho) <= kg {
        return true;
    }
    known.at(place, weaker + 1, rho) <= kg && throws_kg(place, push, rho) <= kg
}

#[cfg(test)]
mod tests {
    use super::super::held::by_hand::places;
    use super::*;

    /// A V of 1:50 and 1:25: at every push and every level the answer is that of the criterion itself.
    #[test]
    fn what_is_known_is_what_the_criterion_says() {
        let places = places(&[-0.199_96, 0.399_68], &[]);
        let place = &places.pools[0];
        let mut known = Known::default();
        let (mut thrown, mut asked) = (0, 0);
        for step in 0..40 {
            let rho = 1.1 + 0.005 * f64::from(step % 30);
            let mass_kg_s = 6e-4 * (1.0 + 0.01 * f64::from(step * 7 % 40));
            let push = mass_kg_s * mass_kg_s / rho;
            for level in 1..60 {
                let kg = place.seal_kg * f64::from(level) / 60.0;
                let criterion = throws_kg(place, push, rho) <= kg;
                let got = is_thrown(place, &mut known, kg, (push, rho));
                assert_eq!(got, criterion, "{kg} kg at a push of {push}");
                thrown += u32::from(got);
                asked += 1;
            }
        }
        assert!(
            asked / 10 < thrown && thrown < asked,
            "{thrown} of {asked} levels are thrown up"
        );
    }
}
