//! Ten legs in steady state with water, airflow, all states and faults, on one thread.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use dewrun_bench_page::full_route;
use dewrun_run::{evaluate, water_and_air};

fn steady_full(criterion: &mut Criterion) {
    let (run, installation) = full_route().expect("the fan has a curve");
    criterion.bench_function("steady_full", |bench| {
        bench.iter(|| {
            let steady = evaluate(black_box(&run)).map(|answer| answer.value);
            steady.map(|steady| water_and_air(&run, black_box(&installation), &steady))
        });
    });
}

criterion_group!(benches, steady_full);
criterion_main!(benches);
