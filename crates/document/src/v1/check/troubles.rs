//! Limits of what a run's troubles go by.

use dewrun_troubles::{Check, EventKind};

use super::year::{is_whole, sha256, told};
use super::{Checked, many, text, within};
use crate::field_path::Here;
use crate::limits;
use crate::v1::{ClockChange, LogReading, LogReference, TroublesKept};

pub(in crate::v1) fn troubles(at: &Here<'_>, kept: &TroublesKept) -> Checked {
    if let Some(log) = &kept.log {
        reference(&at.field("log"), log)?;
    }
    let at = at.field("seen");
    many(&at, kept.seen.len(), limits::CHECKS_SEEN)?;
    for (position, seen) in kept.seen.iter().enumerate() {
        let at = at.index(position);
        let check = Check::ALL.into_iter().find(|one| one.id() == seen.check);
        let Some(check) = check else {
            let known = Check::ALL.map(Check::id).join(", ");
            return told(
                &at.field("check"),
                format!("is no check, must be one of {known}"),
            );
        };
        let most = check.outcome_names().len();
        let is_one = (1..=most).any(|number| {
            u32::try_from(number).is_ok_and(|number| f64::from(number) == seen.outcome)
        });
        if !is_one {
            return told(
                &at.field("outcome"),
                format!("must be a whole number from 1 to {most}"),
            );
        }
    }
    Ok(())
}

fn reference(at: &Here<'_>, log: &LogReference) -> Checked {
    text(&at.field("file"), &log.file, 1, limits::NAME)?;
    within(&at.field("rows"), log.rows, &limits::LOG_ROWS)?;
    sha256(at, &log.sha256)?;
    log.reading
        .as_ref()
        .map_or(Ok(()), |said| reading(&at.field("reading"), said))
}

fn reading(at: &Here<'_>, said: &LogReading) -> Checked {
    let columns = [
        ("date_column", said.date_column),
        ("kind_column", said.kind_column),
    ];
    for (name, column) in columns {
        if let Some(column) = column {
            within(&at.field(name), column, &limits::COLUMN)?;
            is_whole(&at.field(name), column, "number")?;
        }
    }
    if let Some(hours) = said.utc_offset_h {
        within(&at.field("utc_offset_h"), hours, &limits::UTC_OFFSET_H)?;
    }
    if let Some(changes) = &said.daylight_saving {
        let at = at.field("daylight_saving");
        change(&at.field("starts"), &changes.starts)?;
        change(&at.field("ends"), &changes.ends)?;
    }
    let at = at.field("words");
    many(&at, said.words.len(), limits::LOG_WORDS)?;
    for (position, one) in said.words.iter().enumerate() {
        let at = at.index(position);
        text(&at.field("words"), &one.words, 1, limits::NAME)?;
        if EventKind::ALL.iter().all(|kind| kind.id() != one.kind) {
            let known = EventKind::ALL.map(EventKind::id).join(", ");
            return told(
                &at.field("kind"),
                format!("is no kind of entry, must be one of {known}"),
            );
        }
    }
    Ok(())
}

fn change(at: &Here<'_>, change: &ClockChange) -> Checked {
    within(&at.field("which"), change.which, &limits::WHICH_DAY)?;
    is_whole(&at.field("which"), change.which, "number")?;
    within(&at.field("hour"), change.hour, &limits::CHANGE_HOUR)?;
    is_whole(&at.field("hour"), change.hour, "hour")
}
