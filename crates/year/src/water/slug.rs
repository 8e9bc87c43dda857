//! First slugs: whether the moving air throws standing water up.

use dewrun_moist_air::mixture::density_kg_m3;
use dewrun_quantity::{Density, VolumeFlow};

use super::held::Store;
use super::places::Places;
use crate::hours::Hour;

/// A pool that fills less of its sealing volume throws none.
const ASKED: f64 = 0.02;
/// Share by which the air's push may have changed before it is asked anew.
const SAME: f64 = 0.005;

/// What throws slugs at each low point, as it was asked last: `m^2 / rho` of the air, kg m3/s2, and the water, kg.
#[derive(Debug, Clone, Default)]
pub(super) struct Slugs {
    asked: Vec<(f64, f64)>,
}

impl Slugs {
    pub(super) fn of(places: &Places) -> Self {
        Self {
            asked: vec![(f64::NAN, f64::INFINITY); places.pools.len()],
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
        for ((place, asked), store) in places.pools.iter().zip(&mut self.asked).zip(pools) {
            if store.all() <= ASKED * place.seal_kg || mass_kg_s <= 0.0 {
                continue;
            }
            let rho = density_kg_m3(hour.air_c, hour.w, hour.p_pa);
            let push = mass_kg_s * mass_kg_s / rho;
            let same = (push - asked.0).abs() <= SAME * push;
            if !same {
                let flow = VolumeFlow::cubic_metres_per_second(mass_kg_s / rho);
                let of = Density::kilograms_per_cubic_metre;
                let slugs = place
                    .low
                    .shape
                    .first_slugs(flow, of(rho), of(place.water_kg_m3));
                *asked = (push, slugs.volume.to_cubic_metres() * place.water_kg_m3);
            }
            thrown |= asked.1 <= store.all();
        }
        thrown
    }
}
