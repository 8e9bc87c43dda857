//! What becomes of water that stands, in words.

use dewrun_year::WaterTrouble;

/// A trouble in words.
#[must_use]
pub const fn trouble_name(trouble: WaterTrouble) -> &'static str {
    match trouble {
        WaterTrouble::Iced => "frost or ice closes a bore",
        WaterTrouble::Sealed => "a low point is sealed",
        WaterTrouble::Blind => "the detector may not be sampling the duct",
        WaterTrouble::LowFlow => "the airflow lies under its low limit",
        WaterTrouble::HighFlow => "the airflow lies over its high limit",
        WaterTrouble::Slugs => "the air throws slugs of water",
        WaterTrouble::TrapFull => "a trap is full",
    }
}
