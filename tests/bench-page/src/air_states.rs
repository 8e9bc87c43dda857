//! A million states of moist air, spread evenly over what ducts carry.

/// One state: temperature, relative humidity over water and pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirState {
    /// Temperature in °C, -20 to 60.
    pub t_c: f64,
    /// Relative humidity over water, 0.05 to 1.
    pub rh: f64,
    /// Pressure in Pa, 80 to 110 kPa.
    pub p_pa: f64,
}

/// Steps of the additive recurrence: powers of the real root of x^4 = x + 1, which spreads points evenly in three
/// dimensions without a random number (M. Roberts, "The unreasonable effectiveness of quasirandom sequences", 2018).
const STEPS: [f64; 3] = [
    0.819_172_513_396_164_4,
    0.671_043_606_703_789_2,
    0.549_700_477_901_970_3,
];

/// The first `count` states; the same on every machine.
#[must_use]
pub fn air_states(count: u32) -> Vec<AirState> {
    (0..count).map(air_state).collect()
}

fn air_state(index: u32) -> AirState {
    let [t, rh, p] = STEPS.map(|step| (0.5 + f64::from(index) * step).fract());
    AirState {
        t_c: -20.0 + 80.0 * t,
        rh: 0.05 + 0.95 * rh,
        p_pa: 80e3 + 30e3 * p,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn states_fill_their_ranges() {
        let states = air_states(1000);
        let quarter = |low: f64, high: f64| {
            let inside = states
                .iter()
                .filter(|state| low <= state.t_c && state.t_c < high);
            inside.count()
        };
        for low in [-20.0, 0.0, 20.0, 40.0] {
            let count = quarter(low, low + 20.0);
            assert!(
                (245..=255).contains(&count),
                "{count} of 1000 states from {low} degC up"
            );
        }
        let inside = |state: &AirState| {
            (0.05..=1.0).contains(&state.rh) && (80e3..=110e3).contains(&state.p_pa)
        };
        assert!(
            states.iter().all(inside),
            "humidity and pressure stay in their ranges"
        );
    }

    #[test]
    fn steps_are_powers_of_the_root() {
        let [one, two, three] = STEPS;
        let root = 1.0 / one;
        assert!(
            (root * root * root * root - root - 1.0).abs() < 1e-12,
            "root of x^4 = x + 1"
        );
        assert!((two - one * one).abs() < 1e-15, "second power");
        assert!((three - one * one * one).abs() < 1e-15, "third power");
    }
}
