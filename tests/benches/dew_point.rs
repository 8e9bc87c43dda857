//! Dew points of a million states: throughput on one thread.

use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use dewrun_bench_page::air_states;
use dewrun_moist_air::fast;

const STATES: u32 = 1_000_000;

fn dew_point(criterion: &mut Criterion) {
    let states = air_states(STATES);
    let mut dew_points = vec![0.0; states.len()];
    let mut group = criterion.benchmark_group("dew_point");
    group.throughput(Throughput::Elements(u64::from(STATES)));
    group.sample_size(20);
    group.bench_function("million", |bench| {
        bench.iter(|| {
            for (state, dew_point) in black_box(&states).iter().zip(&mut dew_points) {
                *dew_point = fast::dew_point_c(state.t_c, state.rh, state.p_pa).unwrap_or(f64::NAN);
            }
            black_box(&mut dew_points);
        });
    });
    group.finish();
}

criterion_group!(benches, dew_point);
criterion_main!(benches);
