//! Which relations hold in a cell, and how far a place is from the borders where they change.

use super::cell::Node;

/// Share of the vapour by which wetting, sweat or mist may miss its place: 0.003 K of the wall.
const TOLERANCE: f64 = 2e-4;

/// Which relations hold in a cell: it is cut where one of them changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Regime {
    /// Water or frost all over the inner wall: flux of either sign. Dry: no flux, whatever the wall's temperature.
    pub(crate) wet: bool,
    /// The vapour is at saturation, the rest suspended.
    pub(crate) misty: bool,
    /// Water or rime all over the outer surface.
    pub(crate) sweating: bool,
}

/// What may change along the tube.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Border {
    Wall,
    Mist,
    Sweat,
}

impl Border {
    const ALL: [Self; 3] = [Self::Wall, Self::Mist, Self::Sweat];
}

impl Regime {
    /// The relations on the other side of a border.
    pub(super) fn across(self, border: Border) -> Self {
        match border {
            Border::Wall => Self {
                wet: !self.wet,
                ..self
            },
            Border::Mist => Self {
                misty: !self.misty,
                ..self
            },
            Border::Sweat => Self {
                sweating: !self.sweating,
                ..self
            },
        }
    }

    /// How far beyond a border a place lies, in tolerances; below zero before it.
    pub(super) fn beyond(self, border: Border, node: &Node) -> f64 {
        let (there, inside) = match border {
            Border::Wall => (node.balance.force, self.wet),
            Border::Mist => (node.air.excess, self.misty),
            Border::Sweat => (node.balance.sweat_force, self.sweating),
        };
        let distance = there.clamp(-1e3, 1e3) / (TOLERANCE * (node.air.w + 1e-6));
        if inside { -distance } else { distance }
    }

    /// Whether a place belongs to these relations.
    pub(super) fn holds(self, node: &Node) -> bool {
        Border::ALL
            .iter()
            .all(|&border| self.beyond(border, node) <= 1.0)
    }

    /// The border that is crossed first on the way between two places, by straight lines.
    pub(super) fn first_crossed(self, start: &Node, end: &Node) -> Option<Border> {
        let mut first = None;
        for border in Border::ALL {
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
