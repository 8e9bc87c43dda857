//! A log of troubles: what came when, and over which time it speaks.

/// What an entry is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum EventKind {
    /// The airflow was low.
    AirflowLow,
    /// The airflow was high.
    AirflowHigh,
    /// An alarm without smoke.
    Alarm,
    /// Water was found.
    WaterFound,
    /// A trap or a low point was emptied.
    Emptied,
    /// The filter was changed.
    FilterChanged,
    /// The detector was replaced.
    DetectorReplaced,
    /// Something else.
    Other,
}

/// An entry of a log.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// When, s since 1970 on the clock of the weather; of a day without an hour its start.
    pub at_s: i64,
    /// Hour of the day on the wall, where it is known: what is switched by the clock goes by it.
    pub wall_hour: Option<u8>,
    /// What.
    pub kind: EventKind,
    /// Water that was found or let out, g.
    pub grams: Option<f64>,
    /// What the panel showed of the airflow, % of that as fitted; of airflow troubles only.
    pub percent: Option<f64>,
}

/// Entries in order of time, and the time that they speak of.
#[derive(Debug, Clone, PartialEq)]
pub struct Log {
    entries: Vec<Entry>,
    from_s: i64,
    until_s: i64,
    left_out: usize,
}

/// No log speaks of more than so long before its end, s: four years.
const LONGEST_S: i64 = 4 * 366 * DAY_S;
/// A log whose first and last day are not said speaks of so much more at either end, s.
const MARGIN_S: i64 = 7 * DAY_S;
/// Seconds of a day.
pub(crate) const DAY_S: i64 = 86_400;

impl EventKind {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::AirflowLow,
        Self::AirflowHigh,
        Self::Alarm,
        Self::WaterFound,
        Self::Emptied,
        Self::FilterChanged,
        Self::DetectorReplaced,
        Self::Other,
    ];
    /// Those that are a trouble by themselves, and not what somebody did.
    pub const TROUBLES: [Self; 4] = [
        Self::AirflowLow,
        Self::AirflowHigh,
        Self::Alarm,
        Self::WaterFound,
    ];

    /// A short name that stands for it in files.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::AirflowLow => "airflow_low",
            Self::AirflowHigh => "airflow_high",
            Self::Alarm => "alarm_without_smoke",
            Self::WaterFound => "water_found",
            Self::Emptied => "emptied",
            Self::FilterChanged => "filter_changed",
            Self::DetectorReplaced => "detector_replaced",
            Self::Other => "other",
        }
    }

    /// What it is, in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::AirflowLow => "airflow low",
            Self::AirflowHigh => "airflow high",
            Self::Alarm => "alarm without smoke",
            Self::WaterFound => "water found",
            Self::Emptied => "trap emptied",
            Self::FilterChanged => "filter changed",
            Self::DetectorReplaced => "detector replaced",
            Self::Other => "other",
        }
    }

    /// Its position among the troubles; none of what somebody did.
    #[must_use]
    pub fn trouble(self) -> Option<usize> {
        Self::TROUBLES.iter().position(|one| *one == self)
    }
}

impl Entry {
    /// What the panel showed of the airflow, %; none where a percent stands beside anything else.
    pub(crate) fn shown_percent(&self) -> Option<f64> {
        let is_airflow = matches!(self.kind, EventKind::AirflowLow | EventKind::AirflowHigh);
        self.percent
            .filter(|percent| is_airflow && percent.is_finite())
    }

    /// Whether only its day is known.
    #[must_use]
    pub const fn is_day_only(&self) -> bool {
        self.wall_hour.is_none()
    }
}

impl Log {
    /// A log in any order; where its first and last moment are not said, a week more at either end of its entries. None of no entry and no time.
    #[must_use]
    pub fn new(mut entries: Vec<Entry>, period: Option<(i64, i64)>) -> Option<Self> {
        entries.sort_by(|one, other| {
            let key = |entry: &Entry| (entry.at_s, entry.kind);
            let shown = |entry: &Entry| entry.percent.unwrap_or(-1.0);
            let by_shown = || shown(one).total_cmp(&shown(other));
            key(one).cmp(&key(other)).then_with(by_shown)
        });
        let ends = entries.first().zip(entries.last());
        let around =
            ends.map(|(first, last)| (first.at_s - MARGIN_S, last.at_s + DAY_S + MARGIN_S));
        let (from_s, until_s) = period.or(around)?;
        let from_s = from_s.max(until_s - LONGEST_S);
        let all = entries.len();
        entries.retain(|entry| from_s <= entry.at_s && entry.at_s < until_s);
        (from_s < until_s).then_some(Self {
            left_out: all - entries.len(),
            entries,
            from_s,
            until_s,
        })
    }

    /// Its entries in order of time.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The time that it speaks of, s since 1970: silence within it counts as well.
    #[must_use]
    pub const fn period(&self) -> (i64, i64) {
        (self.from_s, self.until_s)
    }

    /// Entries that lie outside of its time, which is four years at the most.
    #[must_use]
    pub const fn left_out(&self) -> usize {
        self.left_out
    }

    /// How many entries are a trouble by themselves.
    #[must_use]
    pub fn troubles(&self) -> usize {
        self.entries
            .iter()
            .filter(|entry| entry.kind.trouble().is_some())
            .count()
    }
}
