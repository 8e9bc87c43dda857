//! A whole route in steady state, on one thread.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use dewrun_bench_page::steady_route;
use dewrun_run::evaluate;

fn steady(criterion: &mut Criterion) {
    let run = steady_route();
    criterion.bench_function("steady", |bench| bench.iter(|| evaluate(black_box(&run))));
}

criterion_group!(benches, steady);
criterion_main!(benches);
