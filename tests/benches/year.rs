//! A year of a whole route on one thread: air, heat and film, and the same with its water and the air that follows it.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use dewrun_bench_page::{year_full_route, year_route};
use dewrun_year::{Grid, March, Steps};

fn year(criterion: &mut Criterion) {
    let (route, hours) = year_route().expect("the route can be evaluated");
    criterion.bench_function("year", |bench| {
        bench.iter(|| {
            let mut march = March::new(black_box(&route), &hours, Grid::PRODUCT, Steps::Whole);
            march.advance(&hours, usize::MAX);
            march
        });
    });
}

fn year_full(criterion: &mut Criterion) {
    let (route, hours, water) = year_full_route().expect("the route can be evaluated");
    let how = (Grid::PRODUCT, Steps::Whole);
    criterion.bench_function("year_full", |bench| {
        bench.iter(|| {
            let mut march = March::with_water(black_box(&route), &hours, how, water.clone());
            march.advance(&hours, usize::MAX);
            march
        });
    });
}

criterion_group!(benches, year, year_full);
criterion_main!(benches);
