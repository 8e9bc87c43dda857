//! What people call things in a log, in a few languages: found by looking, told, and open to be said otherwise.

use crate::log::EventKind;

/// Words of each kind, small letters; the first kind of which one stands in a text is taken.
const WORDS: [(EventKind, &[&str]); 7] = [
    (EventKind::FilterChanged, &["filter", "filtre", "filtro"]),
    (
        EventKind::DetectorReplaced,
        &[
            "detector replaced",
            "replaced detector",
            "new detector",
            "detector changed",
            "melder getauscht",
            "neuer melder",
            "détecteur remplacé",
            "detector cambiado",
        ],
    ),
    (
        EventKind::Emptied,
        &[
            "emptied",
            "drained",
            "drain opened",
            "entleert",
            "abgelassen",
            "vidang",
            "purg",
            "vaciad",
        ],
    ),
    (
        EventKind::WaterFound,
        &["water", "wasser", "eau", "agua", "acqua"],
    ),
    (
        EventKind::AirflowHigh,
        &[
            "airflow high",
            "flow high",
            "high flow",
            "airflow_high",
            "flow too high",
            "high airflow",
            "luftstrom hoch",
            "luftstrom zu hoch",
            "débit haut",
            "débit élevé",
            "flujo alto",
            "caudal alto",
        ],
    ),
    (
        EventKind::AirflowLow,
        &[
            "airflow low",
            "flow low",
            "low flow",
            "airflow_low",
            "flow too low",
            "low airflow",
            "airflow fault",
            "flow fault",
            "luftstrom tief",
            "luftstrom niedrig",
            "luftstrom zu",
            "débit bas",
            "débit faible",
            "flujo bajo",
            "caudal bajo",
        ],
    ),
    (
        EventKind::Alarm,
        &["alarm", "alarme", "alarma", "false fire"],
    ),
];

/// The kind of which a text speaks; none where no word of it is known.
///
/// ```
/// use dewrun_troubles::{EventKind, kind_of};
/// assert_eq!(kind_of("Airflow LOW, reset"), Some(EventKind::AirflowLow));
/// assert_eq!(kind_of("somebody was here"), None);
/// ```
#[must_use]
pub fn kind_of(text: &str) -> Option<EventKind> {
    let text = text.to_ascii_lowercase();
    let named = EventKind::ALL
        .into_iter()
        .find(|kind| text.trim() == kind.id());
    let in_words = || {
        let mut kinds = WORDS.iter();
        let found = kinds.find(|(_, words)| words.iter().any(|word| stands_in(&text, word)));
        found.map(|(kind, _)| *kind)
    };
    named.or_else(in_words)
}

/// Whether a word stands in a text at the start of a word.
fn stands_in(text: &str, word: &str) -> bool {
    text.match_indices(word).any(|(at, _)| {
        let before = text.get(..at).and_then(|before| before.chars().next_back());
        before.is_none_or(|sign| sign.is_ascii() && !sign.is_ascii_alphanumeric())
    })
}

/// Water of which a text speaks, g: `210 mL`, `0,3 l`, `180g`; or a bare number under a heading that names the unit.
///
/// ```
/// use dewrun_troubles::grams_of;
/// assert_eq!(grams_of("emptied, 210 mL", ""), Some(210.0));
/// assert_eq!(grams_of("0,3 l", ""), Some(300.0));
/// assert_eq!(grams_of("180", "amount (g)"), Some(180.0));
/// assert_eq!(grams_of("at 3 o'clock", "note"), None);
/// ```
#[must_use]
pub fn grams_of(text: &str, heading: &str) -> Option<f64> {
    let text = text.to_ascii_lowercase();
    let mut rest = text.as_str();
    while let Some(at) = rest.find(|sign: char| sign.is_ascii_digit()) {
        let from = rest.get(at..)?;
        let end = from
            .find(|sign: char| !(sign.is_ascii_digit() || sign == '.' || sign == ','))
            .unwrap_or(from.len());
        let (number, after) = from.split_at(end);
        let unit = after.trim_start();
        let unit = if at == 0 && unit.is_empty() {
            unit_in(heading)
        } else {
            unit
        };
        if let (Some(number), Some(grams)) = (plain(number), grams_each(unit)) {
            return Some(number * grams).filter(|grams| *grams <= 1e5);
        }
        rest = after;
    }
    None
}

/// What a heading says in brackets, or behind its last word.
fn unit_in(heading: &str) -> &str {
    let words = heading.rsplit(['(', '[', '_', ' ', ',']);
    let last = words.into_iter().next().unwrap_or("");
    last.trim_end_matches([')', ']'])
}

/// Grams of water in a unit that a text begins with.
fn grams_each(text: &str) -> Option<f64> {
    let end = text
        .find(|sign: char| !sign.is_ascii_alphabetic())
        .unwrap_or(text.len());
    match text.get(..end)? {
        "ml" | "g" | "cc" | "gram" | "grams" => Some(1.0),
        "cl" => Some(10.0),
        "dl" => Some(100.0),
        "l" | "kg" | "litre" | "litres" | "liter" => Some(1000.0),
        "oz" => Some(28.349_523_125),
        _ => None,
    }
}

/// A number with a point or a comma.
fn plain(text: &str) -> Option<f64> {
    let text = text.trim_end_matches(['.', ',']);
    let (mut value, mut scale, mut is_behind) = (0.0, 1.0, false);
    for sign in text.bytes() {
        match sign {
            b'0'..=b'9' => {
                value = 10.0 * value + f64::from(sign & 0xf);
                scale *= if is_behind { 10.0 } else { 1.0 };
            }
            _ if is_behind => return None,
            _ => is_behind = true,
        }
    }
    (!text.is_empty() && value.is_finite()).then_some(value / scale)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kinds_are_known_by_their_words() {
        let cases = [
            ("airflow_low", EventKind::AirflowLow),
            ("airflow low", EventKind::AirflowLow),
            ("airflow high; reset", EventKind::AirflowHigh),
            ("Low airflow trouble", EventKind::AirflowLow),
            ("AIRFLOW HIGH", EventKind::AirflowHigh),
            ("Alarm, no smoke", EventKind::Alarm),
            ("water found at the trap", EventKind::WaterFound),
            ("trap emptied, 210 ml of water", EventKind::Emptied),
            ("Filter changed", EventKind::FilterChanged),
            ("detector replaced", EventKind::DetectorReplaced),
            ("Luftstrom tief", EventKind::AirflowLow),
            ("Wasser gefunden", EventKind::WaterFound),
            ("other", EventKind::Other),
        ];
        for (text, kind) in cases {
            assert_eq!(kind_of(text), Some(kind), "{text}");
        }
        assert_eq!(kind_of("plateau"), None, "no water in it");
    }

    #[test]
    fn amounts_in_words() {
        assert_eq!(
            grams_of("2 visits, then 0.25 l", ""),
            Some(250.0),
            "the second number"
        );
        assert_eq!(grams_of("240", "found_ml"), Some(240.0), "by its heading");
        assert_eq!(grams_of("1.2.3 g", ""), None, "no number");
        assert_eq!(grams_of("", "ml"), None, "nothing");
    }
}
