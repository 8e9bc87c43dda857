//! Quantities as the numbers of an answer, in the units of their fields.

use dewrun_quantity::{Length, Mass, MassFlow, Pressure, Speed, Time, Volume, VolumeFlow};

use crate::output::Figure;

pub(super) const fn metres(length: Length) -> Figure {
    Figure(length.to_metres())
}

pub(super) const fn millimetres(length: Length) -> Figure {
    Figure(length.to_millimetres())
}

pub(super) const fn millilitres(volume: Volume) -> Figure {
    Figure(volume.to_millilitres())
}

pub(super) const fn mass(mass: Mass) -> Figure {
    Figure(mass.to_grams())
}

pub(super) const fn grams_per_hour(flow: MassFlow) -> Figure {
    Figure(flow.to_grams_per_hour())
}

pub(super) const fn litres(flow: VolumeFlow) -> Figure {
    Figure(flow.to_litres_per_minute())
}

pub(super) const fn pascals(pressure: Pressure) -> Figure {
    Figure(pressure.to_pascals())
}

pub(super) const fn speed(speed: Speed) -> Figure {
    Figure(speed.to_metres_per_second())
}

pub(super) const fn hours(time: Time) -> Figure {
    Figure(time.to_hours())
}

pub(super) const fn days(time: Time) -> Figure {
    Figure(time.to_days())
}

pub(super) const fn seconds(time: Time) -> Figure {
    Figure(time.to_seconds())
}

pub(super) const fn percent(share: f64) -> Figure {
    Figure(100.0 * share)
}

/// A share that may be none, as %.
pub(super) fn finite_percent(share: f64) -> Option<Figure> {
    share.is_finite().then(|| percent(share))
}
