//! Tapped answers as they stand in a project's note: a line each. Whoever asks takes questions and words from here.

use crate::answers::{Answers, TouchedAnswer, TrapAnswer, TroubleAnswer, WhenAnswer};

/// A question that is answered by a tap, as it stands in a note.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// What begins its line.
    pub head: &'static str,
    /// Its answers, in the order in which they are offered.
    pub words: &'static [&'static str],
}

impl Asked {
    /// Which trouble comes back.
    pub const TROUBLE: Self = Self {
        head: "Trouble",
        words: &["airflow low", "airflow high", "alarm, no smoke"],
    };
    /// When it comes, mostly.
    pub const WHEN: Self = Self {
        head: "Mostly",
        words: &[
            "summer, by day",
            "summer, at night",
            "spring or autumn",
            "winter",
            "at any time",
        ],
    };
    /// Whether there is a trap, and water in it.
    pub const TRAP: Self = Self {
        head: "Trap and water",
        words: &["none there", "yes, water", "trap, dry", "not sure"],
    };
    /// When filter or fan were last touched.
    pub const TOUCHED: Self = Self {
        head: "Filter or fan touched",
        words: &["this year", "longer ago", "not sure"],
    };

    /// Which of its answers a note holds.
    #[must_use]
    pub fn answer(self, note: &str) -> Option<usize> {
        let word = note.lines().find_map(|line| self.word(line))?;
        self.words.iter().position(|one| *one == word)
    }

    /// What a line says of it.
    fn word(self, line: &str) -> Option<&str> {
        let rest = line.strip_prefix(self.head)?.strip_prefix(": ")?;
        rest.strip_suffix('.')
    }
}

const TROUBLE: [TroubleAnswer; 3] = [
    TroubleAnswer::AirflowLow,
    TroubleAnswer::AirflowHigh,
    TroubleAnswer::Alarm,
];
const WHEN: [WhenAnswer; 5] = [
    WhenAnswer::SummerDay,
    WhenAnswer::SummerNight,
    WhenAnswer::Between,
    WhenAnswer::Winter,
    WhenAnswer::AnyTime,
];
const TRAP: [TrapAnswer; 4] = [
    TrapAnswer::None,
    TrapAnswer::Water,
    TrapAnswer::Dry,
    TrapAnswer::NotSure,
];
const TOUCHED: [TouchedAnswer; 3] = [
    TouchedAnswer::ThisYear,
    TouchedAnswer::LongerAgo,
    TouchedAnswer::NotSure,
];

impl Answers {
    /// The answers that a project's note holds; what it does not hold is not answered.
    ///
    /// ```
    /// use dewrun_troubles::{Answers, TrapAnswer, TroubleAnswer};
    /// let answers = Answers::of_note("Trouble: airflow low.\nTrap and water: none there.");
    /// assert_eq!(answers.trouble, Some(TroubleAnswer::AirflowLow));
    /// assert_eq!((answers.trap, answers.when), (Some(TrapAnswer::None), None));
    /// ```
    #[must_use]
    pub fn of_note(note: &str) -> Self {
        Self {
            trouble: told(note, Asked::TROUBLE, &TROUBLE),
            when: told(note, Asked::WHEN, &WHEN),
            trap: told(note, Asked::TRAP, &TRAP),
            touched: told(note, Asked::TOUCHED, &TOUCHED),
            southern: false,
        }
    }

    /// Whether nothing was answered.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.trouble.is_none()
            && self.when.is_none()
            && self.trap.is_none()
            && self.touched.is_none()
    }
}

fn told<T: Copy>(note: &str, asked: Asked, answers: &[T]) -> Option<T> {
    answers.get(asked.answer(note)?).copied()
}
