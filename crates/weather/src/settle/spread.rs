//! Middle values.

/// The middle value of the finite ones; of an even number the lower of the two.
pub(crate) fn median(values: impl Iterator<Item = f64>) -> Option<f64> {
    let mut finite: Vec<f64> = values.filter(|value| value.is_finite()).collect();
    let middle = finite.len().checked_sub(1)? / 2;
    let (_, median, _) = finite.select_nth_unstable_by(middle, f64::total_cmp);
    Some(*median)
}

/// The middle one of whole numbers; of an even number the lower of the two.
pub(crate) fn middle(mut values: Vec<i64>) -> Option<i64> {
    let at = values.len().checked_sub(1)? / 2;
    let (_, middle, _) = values.select_nth_unstable(at);
    Some(*middle)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn middles() {
        assert_eq!(
            median([3.0, f64::NAN, 1.0, 2.0].into_iter()),
            Some(2.0),
            "odd"
        );
        assert_eq!(median([4.0, 1.0, 2.0, 3.0].into_iter()), Some(2.0), "even");
        assert_eq!(median(core::iter::empty()), None, "none");
        assert_eq!(middle(vec![600, 3000, 600]), Some(600), "whole");
        assert_eq!(middle(Vec::new()), None, "none");
    }
}
