//! A year of a whole route, air, heat and film, on one thread.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use dewrun_bench_page::year_route;
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

criterion_group!(benches, year);
criterion_main!(benches);
