//! How sure an answer is, some cases a turn.

use dewrun_advice::{SteadyDoubts, seed_of};

use crate::answer::{Answer, Turn};
use crate::asked::Asked;
use crate::doubted::doubt_as_numbers;
use crate::job::Job;

/// So many cases say how sure an answer is, within 2 of 100.
pub(super) const CASES: u32 = 1024;
/// So many are taken in a turn: some milliseconds.
const A_TURN: u32 = 128;

pub(super) fn begun(asked: &Asked<'_>) -> Box<dyn Job> {
    let answered = &asked.open.answered;
    let seed = seed_of(&answered.names.run);
    Box::new(Taking {
        cases: SteadyDoubts::new(&answered.run, &answered.givens, seed),
        taken: 0,
    })
}

struct Taking {
    cases: SteadyDoubts,
    taken: u32,
}

impl Job for Taking {
    fn turn(&mut self) -> Turn {
        self.cases.take(A_TURN);
        self.taken += A_TURN;
        if self.taken < CASES {
            return Turn::Going(f64::from(self.taken) / f64::from(CASES));
        }
        let found = self.cases.so_far();
        Turn::Done(found.map_or_else(
            || Answer::Sentence("no plausible case has an answer".to_owned()),
            |doubt| Answer::Numbers(doubt_as_numbers(&doubt)),
        ))
    }
}
