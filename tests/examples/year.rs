//! Our side of the comparison with NumPy: writes the hours of the bench's year to a file and times that year.
//!
//! `year HOURS`: the file holds little-endian 64-bit numbers, for each hour t [°C], W [kg/kg], p [Pa] and dry air [kg/s] of the duct's air.
//! Prints `ms VALUE`, the median of nine passes with all that is carried over on one thread,
//! and `litres VALUE`, what deposits when nothing is carried over from hour to hour.

use std::fs;
use std::hint::black_box;
use std::time::Instant;

use dewrun_bench_page::year_route;
use dewrun_year::{Grid, Hours, March, Route, Steps};

const PASSES: usize = 9;

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let path = std::env::args()
        .nth(1)
        .ok_or("a file is needed for the hours")?;
    let (route, hours) = year_route().ok_or("the bench has no year")?;
    let bytes: Vec<u8> = (0..hours.len())
        .filter_map(|position| hours.hour(position))
        .flat_map(|hour| [hour.air_c, hour.w, hour.p_pa, hour.dry_air_kg_s])
        .flat_map(f64::to_le_bytes)
        .collect();
    fs::write(path, bytes)?;
    let mut seconds: Vec<f64> = (0..PASSES).map(|_| pass(&route, &hours)).collect();
    seconds.sort_by(f64::total_cmp);
    println!("ms {:.3}", seconds[PASSES / 2] * 1e3);
    let mut alone = March::new(&route, &hours, Grid::PRODUCT, Steps::Whole).without_carry_over();
    alone.advance(&hours, usize::MAX);
    let litres: f64 = alone.hours().iter().map(|hour| hour.condensed_kg).sum();
    println!("litres {litres:.4}");
    Ok(())
}

/// One pass over the year [s].
fn pass(route: &Route, hours: &Hours) -> f64 {
    let begun = Instant::now();
    let mut march = March::new(black_box(route), hours, Grid::PRODUCT, Steps::Whole);
    march.advance(hours, usize::MAX);
    black_box(&march);
    begun.elapsed().as_secs_f64()
}
