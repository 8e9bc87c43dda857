//! Where on a ladder the smallest size is that meets a target, asked as seldom as may be.

/// A walk on the steps of a ladder: what is known of them, and which is asked next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Walk {
    /// So many from below miss.
    misses: usize,
    /// From here on they meet; the number of all where none does yet.
    meets: usize,
    way: Way,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Way {
    /// Halves what is not known: what a step meets, all above it meet.
    Halves,
    /// From below, until one meets.
    Up,
    /// From a guess to its neighbours; after some of these halves what is not known, where that may be.
    Around {
        guess: usize,
        asked: u32,
        was_met: bool,
        may_halve: bool,
    },
}

/// So many neighbours are asked one by one.
const NEIGHBOURS: u32 = 3;

impl Walk {
    /// On so many steps of which larger ones meet what smaller ones do, or may not.
    pub(crate) const fn new(steps: usize, is_monotone: bool) -> Self {
        Self {
            misses: 0,
            meets: steps,
            way: if is_monotone { Way::Halves } else { Way::Up },
        }
    }

    /// From a guess; the last step where the guess lies beyond it.
    pub(crate) fn around(steps: usize, guess: usize, is_monotone: bool) -> Self {
        Self {
            misses: 0,
            meets: steps,
            way: Way::Around {
                guess: guess.min(steps.saturating_sub(1)),
                asked: 0,
                was_met: false,
                may_halve: is_monotone,
            },
        }
    }

    /// The step that is asked next; none where the end is known.
    pub(crate) const fn next(&self) -> Option<usize> {
        if self.meets <= self.misses {
            return None;
        }
        let middle = self.misses.midpoint(self.meets - 1);
        Some(match self.way {
            Way::Halves => middle,
            Way::Up => self.misses,
            Way::Around {
                guess, asked: 0, ..
            } => guess,
            Way::Around {
                asked, may_halve, ..
            } if may_halve && NEIGHBOURS < asked => middle,
            Way::Around { was_met: true, .. } => self.meets - 1,
            Way::Around { was_met: false, .. } => self.misses,
        })
    }

    /// Takes what was found of the step that was asked.
    pub(crate) fn learn(&mut self, step: usize, is_met: bool) {
        if is_met {
            self.meets = step;
        } else {
            self.misses = step + 1;
        }
        match &mut self.way {
            Way::Around { asked, was_met, .. } => {
                *asked += 1;
                *was_met = is_met;
            }
            Way::Up if is_met => self.misses = step,
            Way::Up | Way::Halves => {}
        }
    }

    /// The smallest step that meets; the number of all where none does.
    pub(crate) const fn end(&self) -> usize {
        self.meets
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The end of a walk over steps that meet or not, and how often it asked.
    fn walked(mut walk: Walk, meets: &[bool]) -> (usize, usize) {
        let mut asked = 0;
        while let Some(step) = walk.next() {
            walk.learn(step, meets[step]);
            asked += 1;
        }
        (walk.end(), asked)
    }

    #[test]
    fn the_smallest_is_found_from_every_guess() {
        for steps in 1..12_usize {
            for from in 0..=steps {
                let meets: Vec<bool> = (0..steps).map(|step| from <= step).collect();
                assert_eq!(walked(Walk::new(steps, true), &meets).0, from, "halving");
                assert_eq!(
                    walked(Walk::new(steps, false), &meets).0,
                    from,
                    "from below"
                );
                for guess in 0..=steps {
                    for may_halve in [false, true] {
                        let walk = Walk::around(steps, guess, may_halve);
                        let (end, asked) = walked(walk, &meets);
                        assert_eq!(end, from, "of {steps} from {guess}");
                        assert!(asked <= steps, "none is asked twice");
                    }
                }
            }
        }
    }

    #[test]
    fn a_right_guess_asks_twice() {
        let meets: Vec<bool> = (0..20).map(|step| 7 <= step).collect();
        assert_eq!(
            walked(Walk::around(20, 7, true), &meets),
            (7, 2),
            "it and the one below"
        );
    }

    /// Where a larger step misses again, what is found still meets, and the one below it misses.
    #[test]
    fn a_gap_does_not_mislead() {
        let meets = [false, false, true, false, true, true];
        assert_eq!(walked(Walk::new(6, false), &meets).0, 2, "from below");
        let (end, _) = walked(Walk::around(6, 5, false), &meets);
        assert!(
            meets[end] && !meets[end - 1],
            "{end} meets and the one below misses"
        );
    }
}
