//! Water at low points against SciPy's quadrature of circular segments, and back from volume to depth.
//!
//! The rows are `tests/cases/pool_volumes.csv`, written by `tests/generate/pool_volumes.py`.

use std::fs;
use std::path::Path;

use dewrun_quantity::Length;
use dewrun_water::Incline;
use dewrun_water::pool::{Piece, PoolShape, Side};

struct Row {
    id: String,
    shape: PoolShape,
    depth: Length,
    volume_ml: f64,
    tolerance: f64,
}

fn rows() -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("cases/pool_volumes.csv");
    let text = fs::read_to_string(path).expect("the rows are committed");
    text.lines().skip(1).map(row).collect()
}

fn row(line: &str) -> Row {
    let fields: Vec<&str> = line.split(',').collect();
    let [id, _source, numbers @ .., tolerance, kind, _why] = fields.as_slice() else {
        panic!("a row has an id, a source, numbers, a tolerance, its kind and a reason: {line}");
    };
    assert_eq!(*kind, "relative", "the only kind of tolerance here: {line}");
    let number = |text: &str| -> f64 {
        text.parse()
            .unwrap_or_else(|_| panic!("a number in {line}"))
    };
    let numbers: Vec<f64> = numbers.iter().map(|text| number(text)).collect();
    let [
        bore_mm,
        before,
        after,
        before_m,
        after_m,
        level_m,
        depth_mm,
        volume_ml,
    ] = numbers.as_slice()
    else {
        panic!("eight numbers in {line}");
    };
    let piece = |side, slope: f64, length_m: f64| Piece {
        side,
        foot: Length::ZERO,
        incline: Incline::per_horizontal(slope),
        length: Length::metres(length_m),
        bore: Length::millimetres(*bore_mm),
    };
    let pieces = vec![
        piece(Side::Before, *before, *before_m),
        piece(Side::After, 0.0, *level_m),
        piece(Side::After, *after, *after_m),
    ];
    Row {
        id: (*id).to_owned(),
        shape: PoolShape::of(pieces, Length::metres(f64::INFINITY)).expect("a low point"),
        depth: Length::millimetres(*depth_mm),
        volume_ml: *volume_ml,
        tolerance: number(tolerance),
    }
}

#[test]
fn volumes_are_those_of_quadrature() {
    let rows = rows();
    assert!(50 <= rows.len(), "only {} rows", rows.len());
    let misses: Vec<String> = rows
        .iter()
        .map(|row| (row, row.shape.volume(row.depth).to_millilitres()))
        .filter(|(row, got)| {
            let off = (got / row.volume_ml - 1.0).abs();
            off.is_nan() || row.tolerance < off
        })
        .map(|(row, got)| format!("{} got {got} expected {}", row.id, row.volume_ml))
        .collect();
    assert!(misses.is_empty(), "{}", misses.join("\n"));
}

#[test]
fn depths_come_back_from_volumes() {
    for row in rows() {
        let volume = row.shape.volume(row.depth);
        let depth = row.shape.depth(volume).map(Length::to_metres);
        // Where both sides end under water a little volume is much depth, so compare what stands there.
        let again = depth.map(|depth_m| row.shape.volume(Length::metres(depth_m)) / volume);
        assert!(
            again.is_ok_and(|again| (again - 1.0).abs() <= 1e-9),
            "{}: {again:?} of {volume:?}",
            row.id
        );
    }
}
