//! Places on end that hold something.

use core::ops::Range;

/// The stretches of so many places in a row that hold something.
pub(super) fn stretches(places: usize, holds: impl Fn(usize) -> bool) -> Vec<Range<usize>> {
    let mut found: Vec<Range<usize>> = Vec::new();
    for at in (0..places).filter(|at| holds(*at)) {
        match found.last_mut() {
            Some(last) if last.end == at => last.end = at + 1,
            _ => found.push(at..at + 1),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::stretches;

    #[test]
    fn places_on_end_are_one_stretch() {
        let holds = [true, true, false, true, false, false, true];
        let found = stretches(holds.len(), |at| holds[at]);
        assert_eq!(found, [0..2, 3..4, 6..7], "the ends too");
        assert!(stretches(0, |_| true).is_empty(), "nowhere");
    }
}
