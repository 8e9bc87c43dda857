//! A straight scale from a quantity to pixels and back.

/// Maps a quantity to pixels.
///
/// ```
/// let scale = dewrun_drawing::Scale::new((0.0, 10.0), (100.0, 300.0));
/// assert_eq!(scale.px(2.5), 150.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    from: f64,
    start: f64,
    per_unit: f64,
}

impl Scale {
    /// From the two ends of the quantity and where they lie, px.
    ///
    /// Where both ends are the same number everything lies at the first.
    #[must_use]
    pub fn new(ends: (f64, f64), px: (f64, f64)) -> Self {
        let span = ends.1 - ends.0;
        let per_unit = if span == 0.0 {
            0.0
        } else {
            (px.1 - px.0) / span
        };
        Self {
            from: ends.0,
            start: px.0,
            per_unit,
        }
    }

    /// Where a value lies, px.
    #[must_use]
    pub fn px(&self, value: f64) -> f64 {
        self.start + (value - self.from) * self.per_unit
    }

    /// The value that lies at `px`.
    #[must_use]
    pub fn value(&self, px: f64) -> f64 {
        if self.per_unit == 0.0 {
            return self.from;
        }
        self.from + (px - self.start) / self.per_unit
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back() {
        let scale = Scale::new((20.0, 32.0), (180.0, 0.0));
        for value in [20.0, 21.5, 32.0, 40.0] {
            let back = scale.value(scale.px(value));
            assert!((back - value).abs() < 1e-9, "{value} comes back as {back}");
        }
    }

    #[test]
    fn no_span_is_no_infinity() {
        let scale = Scale::new((5.0, 5.0), (0.0, 100.0));
        assert_eq!(scale.px(7.0), 0.0, "all at the start");
        assert_eq!(scale.value(50.0), 5.0, "all the one value");
    }
}
