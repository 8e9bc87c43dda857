//! Names of months and days as files write them.

/// Beginnings of month names without accents, in the languages of most loggers; longer ones first where one begins another.
const MONTHS: &[(&str, u16)] = &[
    ("jan", 1),
    ("gen", 1),
    ("ene", 1),
    ("sty", 1),
    ("led", 1),
    ("tam", 1),
    ("feb", 2),
    ("fev", 2),
    ("lut", 2),
    ("uno", 2),
    ("hel", 2),
    ("mar", 3),
    ("maa", 3),
    ("mae", 3),
    ("mrt", 3),
    ("mrz", 3),
    ("bre", 3),
    ("apr", 4),
    ("avr", 4),
    ("abr", 4),
    ("kwi", 4),
    ("dub", 4),
    ("huh", 4),
    ("may", 5),
    ("mai", 5),
    ("maj", 5),
    ("mei", 5),
    ("mag", 5),
    ("kve", 5),
    ("tou", 5),
    ("juin", 6),
    ("jun", 6),
    ("giu", 6),
    ("cze", 6),
    ("kes", 6),
    ("juil", 7),
    ("jul", 7),
    ("lug", 7),
    ("lip", 7),
    ("hei", 7),
    ("aug", 8),
    ("aou", 8),
    ("ago", 8),
    ("sie", 8),
    ("srp", 8),
    ("elo", 8),
    ("sep", 9),
    ("set", 9),
    ("wrz", 9),
    ("zar", 9),
    ("syy", 9),
    ("oct", 10),
    ("okt", 10),
    ("ott", 10),
    ("out", 10),
    ("paz", 10),
    ("lok", 10),
    ("nov", 11),
    ("lis", 11),
    ("dec", 12),
    ("dez", 12),
    ("dic", 12),
    ("des", 12),
    ("gru", 12),
];

/// Beginnings of the names of days, and small words between parts of a date.
const PASSED_OVER: [&str; 24] = [
    "mon", "tue", "wed", "thu", "fri", "sat", "sun", "die", "mit", "don", "fre", "sam", "son",
    "lun", "mer", "jeu", "ven", "dim", "mie", "jue", "vie", "sab", "dom", "gio",
];
const SHORT: [&str; 15] = [
    "ma", "wo", "zo", "st", "nd", "rd", "th", "of", "de", "den", "der", "di", "mo", "do", "fr",
];

/// What clocks are called, with the hours that they are ahead of UTC.
const ZONES: &[(&str, i16)] = &[
    ("utc", 0),
    ("gmt", 0),
    ("wet", 0),
    ("west", 1),
    ("bst", 1),
    ("cet", 1),
    ("mez", 1),
    ("cest", 2),
    ("mesz", 2),
    ("eet", 2),
    ("eest", 3),
    ("est", -5),
    ("edt", -4),
    ("cst", -6),
    ("cdt", -5),
    ("mst", -7),
    ("mdt", -6),
    ("pst", -8),
    ("pdt", -7),
    ("akst", -9),
    ("akdt", -8),
    ("hst", -10),
    ("aest", 10),
    ("aedt", 11),
    ("acst", 9),
    ("awst", 8),
    ("nzst", 12),
    ("nzdt", 13),
    ("jst", 9),
    ("kst", 9),
];

/// Hours ahead of UTC of the clock that a word names.
pub(crate) fn zone(word: &str) -> Option<i16> {
    ZONES
        .iter()
        .find(|(name, _)| *name == word)
        .map(|(_, hours)| *hours)
}

/// The month that a word begins like.
pub(super) fn month(word: &str) -> Option<u16> {
    if word.len() < 3 {
        return None;
    }
    MONTHS
        .iter()
        .find(|(name, _)| word.starts_with(name))
        .map(|(_, month)| *month)
}

/// A word that says nothing which the numbers don't.
pub(super) fn is_passed_over(word: &str) -> bool {
    SHORT.contains(&word) || PASSED_OVER.iter().any(|name| word.starts_with(name))
}
