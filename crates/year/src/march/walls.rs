//! What is on the walls from lane to lane and from hour to hour.

use super::OnWall;
use super::lanes::{LANES, Lanes, either, is_positive};
use super::state::State;

/// What is on the walls as the lanes pass it on: each leaves its cell to the lane behind it, the last one to the hours to come.
#[derive(Debug, Clone)]
pub(super) struct Walls {
    /// What the last lane has left on each cell.
    left: Vec<OnWall>,
    /// What the lanes have found at each of their last turns, as many as there are cells.
    found: Vec<(Lanes, Lanes)>,
    /// Whether a lane has an hour (1).
    pub(super) active: Lanes,
    /// Whether a cell has dried out in a lane's step (1).
    pub(super) dried_out: Lanes,
}

impl Walls {
    /// All dry, of so many cells, and no hour yet.
    pub(super) fn dry(cells: usize) -> Self {
        Self {
            left: vec![OnWall::default(); cells],
            found: vec![([0.0; LANES], [0.0; LANES]); cells],
            active: [0.0; LANES],
            dried_out: [0.0; LANES],
        }
    }

    /// What each lane finds at its cell of this turn: the first one what was left there, each other what the lane before it has left.
    pub(super) fn pass_on(&mut self, state: &mut State, first: usize) {
        let (film, settled) = (&mut state.film, &state.settled);
        let left = self.left.get(first).copied().unwrap_or_default();
        for l in (1..LANES).rev() {
            film.water[l] = self.active[l] * settled.water[l - 1];
            film.frost[l] = self.active[l] * settled.frost[l - 1];
        }
        film.water[0] = self.active[0] * left.water;
        film.frost[0] = self.active[0] * left.frost;
        if let Some(found) = self.found.get_mut(first) {
            *found = (film.water, film.frost);
        }
    }

    /// Takes down what the lanes have left, the last one at a cell.
    pub(super) fn take(&mut self, state: &State, last_at: usize) {
        let settled = &state.settled;
        for l in 0..LANES {
            let wet = settled.water[l] + settled.frost[l];
            let dries = is_positive(0.0 - settled.change[l]) & !is_positive(wet);
            self.dried_out[l] = either(dries, 1.0, self.dried_out[l]);
        }
        if 0.5 < self.active[LANES - 1]
            && let Some(left) = self.left.get_mut(last_at)
        {
            *left = OnWall {
                water: settled.water[LANES - 1],
                frost: settled.frost[LANES - 1],
            };
        }
    }

    /// The walls as a lane that is at its last cell has found them, and no lane with an hour.
    pub(super) fn put_back(&mut self, l: usize) {
        let count = self.left.len();
        for (at, left) in self.left.iter_mut().enumerate() {
            if let Some((water, frost)) = self.found.get((at + l) % count) {
                *left = OnWall {
                    water: water[l],
                    frost: frost[l],
                };
            }
        }
        self.active = [0.0; LANES];
    }
}
