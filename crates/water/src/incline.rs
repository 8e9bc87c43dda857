//! How steep a leg is, free of the form in which people write its fall.

use dewrun_quantity::Length;

/// The steepness of a straight leg: its sine and its cosine, so that both kinds of slope come out exactly.
///
/// The sign is that of the fall in the sense in which it was made; [`Incline::size`] takes it away.
///
/// ```
/// use dewrun_water::Incline;
/// let one_in_five = Incline::per_horizontal(0.2);
/// assert!((one_in_five.sine() - 0.196_116).abs() < 1e-6);
/// assert!((Incline::per_length(0.2).unwrap().tangent() - 0.204_124).abs() < 1e-6);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Incline {
    sine: f64,
    cosine: f64,
}

impl Incline {
    /// No slope at all.
    pub const LEVEL: Self = Self {
        sine: 0.0,
        cosine: 1.0,
    };
    /// Straight down.
    pub const UPRIGHT: Self = Self {
        sine: 1.0,
        cosine: 0.0,
    };

    /// From the fall per horizontal length, the tangent of its angle.
    #[must_use]
    pub fn per_horizontal(tangent: f64) -> Self {
        if tangent.is_infinite() {
            let sine = tangent.signum();
            return Self { sine, cosine: 0.0 };
        }
        let cosine = 1.0 / (1.0 + tangent * tangent).sqrt();
        Self {
            sine: tangent * cosine,
            cosine,
        }
    }

    /// From the fall per length of tube, the sine of its angle; none beyond upright.
    #[must_use]
    pub fn per_length(sine: f64) -> Option<Self> {
        let cosine = ((1.0 - sine) * (1.0 + sine)).sqrt();
        cosine.is_finite().then_some(Self { sine, cosine })
    }

    /// Of a leg of that length along the tube and that fall from its start to its end; none beyond upright.
    #[must_use]
    pub fn of(length: Length, fall: Length) -> Option<Self> {
        Self::per_length(fall / length)
    }

    /// Fall per horizontal length; infinite where the leg is upright.
    #[must_use]
    pub fn tangent(self) -> f64 {
        self.sine / self.cosine
    }

    /// Fall per length of tube.
    #[must_use]
    pub const fn sine(self) -> f64 {
        self.sine
    }

    /// Horizontal length per length of tube.
    #[must_use]
    pub const fn cosine(self) -> f64 {
        self.cosine
    }

    /// The same steepness as a fall.
    #[must_use]
    pub const fn size(self) -> Self {
        Self {
            sine: self.sine.abs(),
            cosine: self.cosine,
        }
    }

    /// Steeper than 45 degrees.
    #[must_use]
    pub const fn is_steep(self) -> bool {
        self.cosine < self.sine.abs()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_upright_leg_has_no_horizontal_length() {
        let upright = Incline::of(Length::metres(1.5), Length::metres(1.5));
        assert_eq!(upright, Some(Incline::UPRIGHT), "it drops all it is long");
        let tangent = Incline::UPRIGHT.tangent();
        assert_eq!(
            Incline::per_horizontal(tangent),
            Incline::UPRIGHT,
            "and back"
        );
    }

    #[test]
    fn beyond_upright_there_is_no_leg() {
        let beyond = Incline::of(Length::metres(1.0), Length::metres(1.01));
        assert_eq!(beyond, None, "it drops more than it is long");
        let nothing = Incline::of(Length::ZERO, Length::ZERO);
        assert_eq!(nothing, None, "nothing has no slope");
    }

    #[test]
    fn both_slopes_agree() {
        for tangent in [-2.0, -0.01, 0.0, 0.02, 0.2, 1.0, 30.0] {
            let incline = Incline::per_horizontal(tangent);
            let again = Incline::per_length(incline.sine()).map(Incline::tangent);
            let off = again.map(|again| (again - tangent).abs());
            assert!(
                off.is_some_and(|off| off <= 1e-12 * (1.0 + tangent * tangent)),
                "{tangent} became {again:?}"
            );
        }
    }
}
