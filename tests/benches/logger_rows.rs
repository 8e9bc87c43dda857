//! A million rows of a logger file: bytes in pieces to a series, on one thread.

use std::fmt::Write as _;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use dewrun_weather::{Reader, Understanding};

const ROWS: u32 = 1_000_000;
/// As a browser hands files over.
const PIECE: usize = 1 << 16;

/// A file as loggers write it: a number, a date with halves of the day, °F and %.
fn file() -> String {
    let mut text =
        "\"Plot Title: bench\"\n\"#\",\"Date Time, GMT-08:00\",\"Temp, °F\",\"RH, %\"\n".to_owned();
    for row in 0..ROWS {
        let (day, minute) = (row / 1440, row % 1440);
        let (year, month, day) = (21 + day / 336, day % 336 / 28 + 1, day % 28 + 1);
        let (hour, half) = (minute / 60 % 12, if minute < 720 { "AM" } else { "PM" });
        let hour = if hour == 0 { 12 } else { hour };
        let t = 30_000 + (row * 37) % 60_000;
        let rh = 20_000 + (row * 53) % 80_000;
        let _ = writeln!(
            text,
            "{},{month:02}/{day:02}/{year} {hour:02}:{:02}:00 {half},{}.{:03},{}.{:03}",
            row + 1,
            minute % 60,
            t / 1000,
            t % 1000,
            rh / 1000,
            rh % 1000
        );
    }
    text
}

fn logger_rows(criterion: &mut Criterion) {
    let text = file();
    let mut group = criterion.benchmark_group("logger_rows");
    group.sample_size(10);
    group.bench_function("million", |bench| {
        bench.iter(|| {
            let mut reader = Reader::new(Understanding::default());
            for piece in black_box(text.as_bytes()).chunks(PIECE) {
                reader.push(piece).expect("a logger file");
            }
            black_box(reader.finish().expect("a logger file").series.len())
        });
    });
    group.finish();
}

criterion_group!(benches, logger_rows);
criterion_main!(benches);
