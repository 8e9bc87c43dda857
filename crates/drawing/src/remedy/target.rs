//! A target as a sentence.

use dewrun_quantity::Style;
use dewrun_quantity::format::{amount, entered};
use dewrun_remedies::{DesignHour, Target};

use crate::wording;

/// What counts as dry enough.
#[must_use]
pub fn target_sentence(target: &Target, style: Style) -> String {
    let mut parts: Vec<String> = Vec::new();
    if let Some(hour) = target.dry_in {
        parts.push(format!("no water in {}", hour_words(hour)));
    }
    if let Some(hours) = target.wet_hours {
        parts.push(format!("at most {} wet hours", entered(hours)));
    }
    if let Some(kg) = target.formed_kg {
        parts.push(format!(
            "at most {} of water",
            wording::volume(1e3 * kg, style)
        ));
    }
    if let Some(hours) = target.blind_hours {
        let hours = if hours <= 0.0 {
            "no".to_owned()
        } else {
            format!("at most {}", entered(hours))
        };
        parts.push(format!("{hours} blind hours"));
    }
    if target.no_frost {
        parts.push("no ice on a wall".to_owned());
    }
    if let Some(margin) = target.chamber_margin {
        let percent = amount(100.0 * margin, 0, style.mark);
        parts.push(format!(
            "the chamber {percent}\u{a0}% below its humidity rating"
        ));
    }
    if let Some(days) = target.trap_days {
        parts.push(format!(
            "traps emptied no more often than every {} days",
            entered(days)
        ));
    }
    if parts.is_empty() {
        return "Nothing is asked for.".to_owned();
    }
    format!("Dry enough means: {}.", parts.join(", "))
}

/// A design hour in words.
const fn hour_words(hour: DesignHour) -> &'static str {
    match hour {
        DesignHour::Entered => "the conditions entered",
        DesignHour::Wettest04 => "the 0.4\u{a0}% design hour",
        DesignHour::Wettest1 => "the 1\u{a0}% design hour",
        DesignHour::Wettest2 => "the 2\u{a0}% design hour",
    }
}
