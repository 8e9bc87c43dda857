//! Where the water that forms in a tube goes: what the walls keep, low points, traps, the ends, and when.

mod descent;
mod fill;
mod inflow;
mod legs;
mod proposal;
mod tube;
mod walk;
mod way;
mod ways;

pub use inflow::Inflow;
pub use legs::{Course, LegReport, legs};
pub use proposal::{ProposedTrap, propose};
pub use tube::{DrainLeg, DrainTube, DrainageError, Formed, TrapAt};
pub use ways::{FlatPlace, LowPlace, Meets, Slope, Ways};

#[cfg(test)]
mod tests;

use dewrun_quantity::{Length, Mass, MassFlow, Time};

use crate::pool::PoolShape;
use descent::{Descent, Store};

/// Where water goes that does not stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Destination {
    /// Out of the first end of the tube.
    Start,
    /// Out of the last end of the tube.
    End,
    /// Into a trap, by its position in the list.
    Trap(usize),
    /// Into a pool, by its position in [`Drainage::pools`].
    Pool(usize),
}

/// Water at a low point, or over several that have run together.
#[derive(Debug, Clone, PartialEq)]
pub struct Pool {
    /// The lowest place; the beginning of its level bottom where it has one.
    pub at: Length,
    /// The end of its level bottom.
    pub until: Length,
    /// Height of its floor over the first end of the tube.
    pub elevation: Length,
    /// The crests on either side.
    pub catchment: [Length; 2],
    /// The pools that ran together in it; none in a single low point.
    pub joins: Vec<usize>,
    /// When they did; zero for a single low point.
    pub begins: Time,
    /// How water stands in it.
    pub shape: PoolShape,
    /// What comes in, counted from the start; includes what had come into the pools that it joins.
    pub inflow: Inflow,
    /// What stands in it when it runs over the lower crest.
    pub capacity: Mass,
    /// When that is; none where it never is.
    pub full: Option<Time>,
    /// Where it runs over to once it is full.
    pub runs_over_to: Option<Destination>,
    /// The pool in which it is lost in the end.
    pub joined_by: Option<usize>,
    /// When it is lost there.
    pub ends: Option<Time>,
}

impl Pool {
    /// What stands in it after a time; nothing before its time, nor after, when it is counted with the pool that joined it.
    #[must_use]
    pub fn amount(&self, after: Time) -> Mass {
        let over = self.ends.is_some_and(|ends| ends <= after);
        if after < self.begins || over {
            return Mass::ZERO;
        }
        self.inflow.amount(after).min(self.capacity)
    }
}

/// How traps are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Traps {
    /// Emptied in time: all that comes by runs in.
    #[default]
    Emptied,
    /// Never emptied: those with a capacity fill, and what comes after passes by.
    Forgotten,
}

/// The way of all water in a tube under steady conditions.
#[derive(Debug, Clone, PartialEq)]
pub struct Drainage {
    /// Low points first, in the order of the tube, then pools that ran together, in the order in which they did.
    pub pools: Vec<Pool>,
    /// What leaves by the first end.
    pub out_at_start: Inflow,
    /// What leaves by the last end.
    pub out_at_end: Inflow,
    /// What comes to each trap.
    pub into_traps: Vec<Inflow>,
    /// What evaporates again on its way.
    pub evaporates: Inflow,
    /// What forms.
    forms: MassFlow,
    stores: Vec<Store>,
    forgotten: Vec<(usize, Store)>,
}

/// Where all water is after a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// All that has formed.
    pub formed: Mass,
    /// What stands: on walls, in flat legs and at low points.
    pub standing: Mass,
    /// What has run into traps.
    pub drained: Mass,
    /// What has evaporated again.
    pub evaporated: Mass,
    /// What has left by the ends of the tube.
    pub carried_off: Mass,
}

impl Drainage {
    /// The way of the water that forms on the stretches given, in a tube that is dry at first.
    ///
    /// A wall keeps its film, a flat leg its puddle ([`crate::held`]); what comes beyond runs down to the nearest low point, trap or end.
    /// A low point fills to its lower crest and runs over; two that stand level at a crest run together.
    ///
    /// # Errors
    /// [`DrainageError`] where a leg, a trap or a stretch is none.
    pub fn of(tube: &DrainTube, formed: &[Formed], traps: Traps) -> Result<Self, DrainageError> {
        tube.check()?;
        tube.check_formed(formed)?;
        let descent = Descent::new(tube, formed, traps);
        Ok(fill::fill(descent))
    }

    /// Where all water is after a time.
    #[must_use]
    pub fn after(&self, time: Time) -> Balance {
        let on_walls: Mass = self.stores.iter().map(|store| store.holds(time)).sum();
        let in_pools: Mass = self.pools.iter().map(|pool| pool.amount(time)).sum();
        let forgotten = self.forgotten.iter().map(|(_, store)| store.holds(time));
        let trapped = self.into_traps.iter().map(|inflow| inflow.amount(time));
        Balance {
            formed: Mass::kilograms(self.forms.to_kilograms_per_second() * time.to_seconds()),
            standing: on_walls + in_pools,
            drained: trapped.chain(forgotten).sum(),
            evaporated: self.evaporates.amount(time),
            carried_off: self.out_at_start.amount(time) + self.out_at_end.amount(time),
        }
    }

    /// When a trap with a capacity is full; none where it never is or drains itself.
    #[must_use]
    pub fn trap_full(&self, tube: &DrainTube, trap: usize) -> Option<Time> {
        let capacity = tube.traps.get(trap)?.capacity?;
        let forgotten = self.forgotten.iter().find(|(number, _)| *number == trap);
        let incoming = match forgotten {
            Some((_, store)) => &store.incoming,
            None => self.into_traps.get(trap)?,
        };
        incoming.time_for(capacity)
    }

    /// Where water runs that passes a full trap: the pool over it, or the end that it comes to.
    ///
    /// # Errors
    /// [`DrainageError`] where the tube is none.
    pub fn overflow_of(
        tube: &DrainTube,
        trap: usize,
    ) -> Result<Option<Destination>, DrainageError> {
        let Some(given) = tube.traps.get(trap) else {
            return Ok(None);
        };
        let mut without = tube.clone();
        without.traps.remove(trap);
        without.check()?;
        let descent = Descent::new(&without, &[], Traps::Emptied);
        let found = descent.destination(given.at.to_metres());
        // The list without the trap is one shorter.
        Ok(found.map(|found| match found {
            Destination::Trap(other) if trap <= other => Destination::Trap(other + 1),
            other => other,
        }))
    }
}
