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

/// A percent beside one of these words is no reading of the airflow.
const NOT_AIRFLOW: [&str; 12] = [
    "rh", "humidity", "feuchte", "limit", "limits", "grenze", "battery", "speed", "below", "under",
    "less", "too",
];
/// A panel shows no more of the airflow as fitted, %.
const MOST_PERCENT: f64 = 300.0;

/// What a text says that the panel showed of the airflow, % of that as fitted: `72 %`, `72,5%`, `at 72 percent`; or a bare number under a heading that names the unit.
///
/// ```
/// use dewrun_troubles::percent_of;
/// assert_eq!(percent_of("airflow low 74 %", ""), Some(74.0));
/// assert_eq!(percent_of("reset at 72,5 percent", ""), Some(72.5));
/// assert_eq!(percent_of("61", "airflow (%)"), Some(61.0));
/// assert_eq!(percent_of("RH 85 %, low limit 80 %, 210 mL", ""), None);
/// ```
#[must_use]
pub fn percent_of(text: &str, heading: &str) -> Option<f64> {
    let heading = heading.to_ascii_lowercase();
    let (text, mut before) = (text.to_ascii_lowercase(), "");
    let mut rest = text.as_str();
    while let Some(at) = rest.find(|sign: char| sign.is_ascii_digit()) {
        let (words, from) = rest.split_at(at);
        let end = from
            .find(|sign: char| !(sign.is_ascii_digit() || sign == '.' || sign == ','))
            .unwrap_or(from.len());
        let (number, after) = from.split_at(end);
        before = if words.trim().is_empty() {
            before
        } else {
            words
        };
        let is_alone = before.trim().is_empty() && after.trim().is_empty();
        let behind = if is_alone {
            let names_it = is_percent(unit_in(&heading)).is_some();
            (names_it && !words_of(&heading).any(is_not_airflow)).then_some("")
        } else {
            is_percent(after)
        };
        if let Some(behind) = behind {
            let last = words_of(before).last().unwrap_or("");
            let next = words_of(behind).next().unwrap_or("");
            // What is less by so much says not of what.
            let is_less = words.ends_with(['-', '+', '\u{2212}']);
            let is_airflow = !is_less && !is_not_airflow(last) && !is_not_airflow(next);
            if let Some(percent) = plain(number).filter(|_| is_airflow) {
                return Some(percent).filter(|percent| *percent <= MOST_PERCENT);
            }
            before = "";
        }
        rest = after;
    }
    None
}

/// What follows the sign or the word of percent that a text begins with.
fn is_percent(text: &str) -> Option<&str> {
    const SIGNS: [&str; 7] = [
        "%",
        "percent",
        "per cent",
        "pct",
        "prozent",
        "pour cent",
        "por ciento",
    ];
    let text = text.trim_start();
    SIGNS.iter().find_map(|sign| text.strip_prefix(sign))
}

fn words_of(text: &str) -> impl Iterator<Item = &str> {
    // Letters of other scripts are not told from signs: the words that are looked for have none.
    let words = text.split(|sign: char| sign.is_ascii() && !sign.is_ascii_alphabetic());
    words.filter(|word| !word.is_empty())
}

fn is_not_airflow(word: &str) -> bool {
    NOT_AIRFLOW.contains(&word)
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
    fn readings_in_words() {
        let cases = [
            ("airflow low 74 %", "", Some(74.0)),
            ("72%", "", Some(72.0)),
            ("72 %", "note", Some(72.0)),
            ("72,5 %", "", Some(72.5)),
            ("at 72 percent", "", Some(72.0)),
            ("reset at 06:40, shows 101.5 %.", "", Some(101.5)),
            ("Luftstrom tief, 68 Prozent", "", Some(68.0)),
            ("0 %", "", Some(0.0)),
            ("62", "airflow_percent", Some(62.0)),
            ("62", "Reading [%]", Some(62.0)),
            ("62", "note", None),
            ("62", "RH (%)", None),
            ("rh 85 %, panel 71 %", "", Some(71.0)),
            ("85 % RH", "", None),
            ("low limit 80 %", "", None),
            ("20 % below", "", None),
            ("-20 %", "", None),
            ("1200 %", "", None),
            ("210 mL", "", None),
            ("3 visits", "airflow %", None),
            ("", "airflow %", None),
        ];
        for (text, heading, percent) in cases {
            assert_eq!(percent_of(text, heading), percent, "{text} {heading}");
        }
        assert_eq!(
            grams_of("emptied 210 mL, then 95 %", ""),
            Some(210.0),
            "amounts as before"
        );
        assert_eq!(grams_of("95 %", ""), None, "no amount");
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
