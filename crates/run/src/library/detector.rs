//! The detector where nothing is known of it: generic figures that stand for no device.

use dewrun_quantity::{Power, RelativeHumidity, VolumeFlow};

use super::record::Record;
use super::{Entry, Read, Sources, Span, csv};

/// A detector that stands for no device; its own data are typed in.
#[derive(Debug, Clone, PartialEq)]
pub struct DetectorRow {
    /// The name by which project files refer to it.
    pub id: &'static str,
    /// What people call it.
    pub name: &'static str,
    /// Heat that its fan and electronics give to the air passing through.
    pub heat: Span<Power>,
    /// Highest relative humidity over water that it is rated for.
    pub humidity_rating: Span<RelativeHumidity>,
    /// Flow that its fan draws.
    pub flow: Span<VolumeFlow>,
    /// Volume of its chamber, L.
    pub chamber_volume_l: Span<f64>,
    pub(super) entries: Vec<Entry>,
}

/// Reads the detector.
pub(super) fn read(sources: &Sources) -> Read<Vec<DetectorRow>> {
    let text = include_str!("detectors.csv");
    csv::rows("detectors.csv", text, sources, detector_row)
}

fn detector_row(record: &mut Record) -> DetectorRow {
    DetectorRow {
        id: record.text("id"),
        name: record.text("name"),
        heat: record.span("heat_w").map(Power::watts),
        humidity_rating: record
            .span("humidity_rating_percent")
            .map(RelativeHumidity::percent),
        flow: record
            .span("volume_l_min")
            .map(VolumeFlow::litres_per_minute),
        chamber_volume_l: record.span("chamber_volume_l"),
        entries: record.take_entries(),
    }
}
