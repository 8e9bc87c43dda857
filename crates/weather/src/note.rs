//! What a reader decided or met, in words, with the lines it concerns.

/// A decision or an oddity, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// What it is about.
    pub topic: Topic,
    /// What was decided or met, and why.
    pub sentence: String,
    /// Numbers of the first lines it concerns, from 1; none where it is about the whole file.
    pub lines: Vec<u64>,
    /// How many lines it concerns; 0 where it is about the whole file.
    pub count: u64,
}

/// What a note is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Topic {
    /// The form of the file, its letters, delimiters and numbers.
    Form,
    /// Which column is what.
    Columns,
    /// Units of columns.
    Units,
    /// Dates, times, steps and gaps.
    Time,
    /// Rows that are no readings.
    Rows,
    /// Readings that are missing.
    Missing,
    /// Temperatures.
    Temperature,
    /// Humidity.
    Humidity,
    /// Pressure.
    Pressure,
    /// The place.
    Place,
}

impl Topic {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Form => "form",
            Self::Columns => "columns",
            Self::Units => "units",
            Self::Time => "time",
            Self::Rows => "rows",
            Self::Missing => "missing",
            Self::Temperature => "temperature",
            Self::Humidity => "humidity",
            Self::Pressure => "pressure",
            Self::Place => "place",
        }
    }
}

/// So many line numbers stand in a note.
const SHOWN: usize = 5;

impl Note {
    /// About the whole file.
    pub(crate) fn of_file(topic: Topic, sentence: impl Into<String>) -> Self {
        Self {
            topic,
            sentence: sentence.into(),
            lines: Vec::new(),
            count: 0,
        }
    }
}

/// Lines of one kind, counted, the first few kept.
#[derive(Debug, Clone, Default)]
pub(crate) struct LinesMet {
    first: Vec<u64>,
    count: u64,
}

impl LinesMet {
    pub(crate) fn add(&mut self, line: u64) {
        if self.first.len() < SHOWN {
            self.first.push(line);
        }
        self.count += 1;
    }

    pub(crate) const fn count(&self) -> u64 {
        self.count
    }

    /// A note about these lines, none where there are none.
    pub(crate) fn note(&self, topic: Topic, sentence: impl FnOnce(u64) -> String) -> Option<Note> {
        (0 < self.count).then(|| Note {
            topic,
            sentence: sentence(self.count),
            lines: self.first.clone(),
            count: self.count,
        })
    }
}

/// `1 reading`, `2 readings`.
pub(crate) fn counted(count: u64, word: &str) -> String {
    format!("{count} {word}{}", if count == 1 { "" } else { "s" })
}
