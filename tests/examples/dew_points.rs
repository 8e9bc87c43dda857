//! Our side of the comparison with other libraries: reads states from a file, times their dew points, writes them.
//!
//! `dew_points STATES DEW_POINTS`: both files hold little-endian 64-bit numbers,
//! the first t [°C], relative humidity [-] and p [Pa] of each state, the second its dew point [°C];
//! below 0.01 °C humidity is over ice and the dew point is the frost point, as the other libraries take them.
//! Prints `ns_per_state VALUE`, the median of nine passes on one thread.

use std::fs;
use std::hint::black_box;
use std::time::Instant;

use dewrun_moist_air::fast;

const PASSES: usize = 9;

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [states_path, dew_points_path] = arguments.as_slice() else {
        return Err("two files are needed: the states and where their dew points go".into());
    };
    let states = read_states(&fs::read(states_path)?)?;
    let mut dew_points = vec![f64::NAN; states.len()];
    let mut seconds: Vec<f64> = (0..PASSES)
        .map(|_| pass(&states, &mut dew_points))
        .collect();
    seconds.sort_by(f64::total_cmp);
    let bytes: Vec<u8> = dew_points
        .iter()
        .flat_map(|value| value.to_le_bytes())
        .collect();
    fs::write(dew_points_path, bytes)?;
    let count = f64::from(u32::try_from(states.len())?);
    println!("ns_per_state {:.3}", seconds[PASSES / 2] * 1e9 / count);
    Ok(())
}

fn read_states(bytes: &[u8]) -> Result<Vec<[f64; 3]>, Failure> {
    let (numbers, rest) = bytes.as_chunks::<8>();
    let numbers: Vec<f64> = numbers
        .iter()
        .map(|number| f64::from_le_bytes(*number))
        .collect();
    let (states, left) = numbers.as_chunks::<3>();
    if !rest.is_empty() || !left.is_empty() || states.is_empty() {
        return Err("the file of states does not hold whole states".into());
    }
    Ok(states.to_vec())
}

/// One pass over all states [s].
fn pass(states: &[[f64; 3]], dew_points: &mut [f64]) -> f64 {
    let begun = Instant::now();
    for ([t_c, rh, p_pa], dew_point) in black_box(states).iter().zip(&mut *dew_points) {
        *dew_point = fast::dew_or_frost_point_c(*t_c, *rh, *p_pa).unwrap_or(f64::NAN);
    }
    black_box(&*dew_points);
    begun.elapsed().as_secs_f64()
}
