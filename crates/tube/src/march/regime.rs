//! Which relations hold in a cell, and how far a place is from the borders where they change.

use super::cell::Node;

/// Share of the vapour by which wetting, sweat or mist may miss its place: 0.003 K of the wall.
const TOLERANCE: f64 = 2e-4;
/// Temperature by which freezing may miss its place, K; more than the stretch over which a surface melts.
const FREEZING_TOLERANCE_K: f64 = 3e-3;

/// Which relations hold in a cell: it is cut where one of them changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Regime {
    /// Water or frost all over the inner wall: flux of either sign. Dry: no flux, whatever the wall's temperature.
    pub(crate) wet: bool,
    /// The vapour is at saturation, the rest suspended.
    pub(crate) misty: bool,
    /// Water or rime all over the outer surface.
    pub(crate) sweating: bool,
    /// What is on the inner wall is frost; false on a dry wall.
    pub(crate) frosted: bool,
    /// What is on the outer surface is rime; false on a dry one.
    pub(crate) rimed: bool,
}

impl Regime {
    /// Clear air, both surfaces dry.
    pub(crate) const DRY: Self = Self {
        wet: false,
        misty: false,
        sweating: false,
        frosted: false,
        rimed: false,
    };
}

/// What may change along the tube.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Border {
    Wall,
    Mist,
    Sweat,
    Frost,
    Rime,
}

impl Border {
    const ALL: [Self; 5] = [Self::Wall, Self::Mist, Self::Sweat, Self::Frost, Self::Rime];
}

impl Regime {
    /// The relations on the other side of a border.
    pub(super) fn across(self, border: Border) -> Self {
        match border {
            Border::Wall => Self {
                wet: !self.wet,
                frosted: false,
                ..self
            },
            Border::Mist => Self {
                misty: !self.misty,
                ..self
            },
            Border::Sweat => Self {
                sweating: !self.sweating,
                rimed: false,
                ..self
            },
            Border::Frost => Self {
                frosted: !self.frosted,
                ..self
            },
            Border::Rime => Self {
                rimed: !self.rimed,
                ..self
            },
        }
    }

    /// How far beyond a border a place lies, in tolerances; below zero before it.
    pub(super) fn beyond(self, border: Border, node: &Node) -> f64 {
        let fluxes = &node.balance.fluxes;
        let vapour = TOLERANCE * (node.air.w + 1e-6);
        let (there, inside, tolerance) = match border {
            Border::Wall => (node.balance.force, self.wet, vapour),
            Border::Mist => (node.air.excess, self.misty, vapour),
            Border::Sweat => (
                node.balance.sweat_force,
                self.sweating,
                TOLERANCE * node.balance.sweat_vapour,
            ),
            Border::Frost if !self.wet => return -1.0,
            Border::Rime if !self.sweating => return -1.0,
            Border::Frost => (-fluxes.wall_c, self.frosted, FREEZING_TOLERANCE_K),
            Border::Rime => (-fluxes.surface_c, self.rimed, FREEZING_TOLERANCE_K),
        };
        let distance = there.clamp(-1e3, 1e3) / tolerance;
        if inside { -distance } else { distance }
    }

    /// The border that is crossed first on the way between two places, by straight lines; one border may be left out of sight.
    pub(super) fn first_crossed(
        self,
        start: &Node,
        end: &Node,
        unseen: Option<Border>,
    ) -> Option<Border> {
        let mut first = None;
        for border in Border::ALL
            .into_iter()
            .filter(|&border| Some(border) != unseen)
        {
            let (before, after) = (self.beyond(border, start), self.beyond(border, end));
            if after <= 1.0 {
                continue;
            }
            let at = (-before / (after - before)).max(0.0);
            if first.is_none_or(|(_, earliest)| at < earliest) {
                first = Some((border, at));
            }
        }
        first.map(|(border, _)| border)
    }
}
