//! The curve by which the cases of weather files were counted: Hyland & Wexler 1983, over water also below freezing.

use dewrun_numeric::elementary::{exp, ln};
use dewrun_weather::Series;

/// Saturation pressure over water, Pa: ASHRAE Handbook Fundamentals (2021), chapter 1, equation 6.
fn saturation_pa(t_c: f64) -> f64 {
    let t_k = t_c + 273.15;
    exp(
        -5.800_220_6e3 / t_k + 1.391_499_3 - 4.864_023_9e-2 * t_k + 4.176_476_8e-5 * t_k * t_k
            - 1.445_209_3e-8 * t_k * t_k * t_k
            + 6.545_967_3 * ln(t_k),
    )
}

/// The dew point over water by halving, °C.
fn dew_point_c(t_c: f64, rh: f64) -> f64 {
    let vapour_pa = rh * saturation_pa(t_c);
    let (mut low, mut high) = (-100.0, t_c);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if saturation_pa(middle) < vapour_pa {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// Dew points of temperature and relative humidity, less those of the file, K; no number where one is missing.
pub(super) fn recomputed_less_file_k(series: &Series) -> Vec<f64> {
    let air = series.temperature_c.iter().zip(&series.relative_percent);
    air.zip(&series.dew_point_c)
        .map(|((t_c, percent), file)| dew_point_c(*t_c, percent / 100.0) - file)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// psychrolib 2.5.0 (PyPI), `GetSatVapPres`, which is the same equation.
    #[test]
    fn the_curve_is_that_of_the_handbook() {
        for (t_c, pa) in [(20.0, 2_338.803_700_073_98), (50.0, 12_349.856_466_723_7)] {
            let got = saturation_pa(t_c);
            assert!((got - pa).abs() < 1e-12 * pa, "{t_c} °C: {got} Pa");
        }
        assert!((dew_point_c(20.0, 1.0) - 20.0).abs() < 1e-9, "saturated");
    }
}
