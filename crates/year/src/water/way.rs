//! How water stands in the way of the air: depths of pools, heads of closed ones, traps that leak, frost and ice.

use dewrun_run::Tube;

use super::held::Held;
use super::places::Places;

/// Shallower water does not change the flow, as a share of the bore.
const SHALLOW: f64 = 0.03;

/// How water stands in the way of the air.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct InTheWay {
    /// Pools that are not shallow, and their depth as a share of the bore.
    pub(super) pools: Vec<(usize, f64)>,
    pub(super) leaking: Vec<(Tube, usize)>,
    /// Head of all that is closed, Pa; none where nothing is.
    pub(super) head_pa: Option<f64>,
    iced: bool,
}

impl InTheWay {
    /// Of pools that hold so much, kg, traps as they are, and frost that closes a bore or not; so does as much ice in a pool as closes it.
    pub(crate) fn of(
        places: &Places,
        (pools_kg, held): (&[f64], &Held),
        iced: bool,
        open: &[(Tube, usize)],
    ) -> Self {
        let mut way = Self {
            leaking: open.to_vec(),
            iced,
            ..Self::default()
        };
        for (number, (place, &kg)) in places.pools.iter().zip(pools_kg).enumerate() {
            let depth = place.levels.at(kg).depth_m / place.bore_m;
            if SHALLOW < depth {
                way.pools.push((number, depth.min(1.0)));
            }
            let ice_kg = held.pools.get(number).map_or(0.0, |store| store.ice);
            way.iced |= place.seal_kg <= ice_kg;
            if place.seal_kg <= kg {
                let head_pa = (kg - place.seal_kg) * place.head_pa_kg;
                way.head_pa = Some(way.head_pa.unwrap_or(0.0) + head_pa);
            }
        }
        for (trap, place) in held.traps.iter().zip(&places.traps) {
            let dry = trap.lets_air(place) && 0.0 < place.seal_m;
            let at = (place.tube, place.number);
            if (dry || trap.leaks) && !way.leaking.contains(&at) {
                way.leaking.push(at);
            }
        }
        way
    }

    pub(crate) const fn is_sealed(&self) -> bool {
        self.head_pa.is_some()
    }

    pub(crate) const fn is_iced(&self) -> bool {
        self.iced
    }

    /// Depth of the deepest pool, as a share of its bore.
    pub(crate) fn deepest(&self) -> f64 {
        self.pools
            .iter()
            .map(|(_, depth)| *depth)
            .fold(0.0, f64::max)
    }
}
