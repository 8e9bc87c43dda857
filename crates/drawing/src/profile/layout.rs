//! Where plot, strip and lanes of a profile lie, and the scales of both plots.

use dewrun_quantity::measure::{TEMPERATURE, WATER_PER_LENGTH};
use dewrun_quantity::{MassFlowPerLength, Temperature};
use dewrun_run::TubeOutcome;

use super::axis::whole;
use crate::frame::Frame;
use crate::geometry::Rect;
use crate::scale::Scale;
use crate::states::{State, StateStretch};
use crate::ticks::{Ticks, rounded_span};
use crate::view::View;

/// Everything in its place.
#[derive(Debug, Clone)]
pub(crate) struct Plan {
    pub(crate) frame: Frame,
    pub(crate) plot: Rect,
    pub(crate) strip: Rect,
    /// Top edge of each lane.
    pub(crate) lanes: Vec<Lane>,
    /// Base of the axis with its ticks.
    pub(crate) axis: f64,
    pub(crate) height: f64,
    /// From the unit shown to px.
    pub(crate) temperature: Scale,
    pub(crate) temperature_ticks: Ticks,
    pub(crate) water: Scale,
    pub(crate) water_ticks: Ticks,
    read_temperature: fn(Temperature) -> f64,
    read_water: fn(MassFlowPerLength) -> f64,
}

/// A lane of bars over the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Lane {
    pub(crate) what: Place,
    pub(crate) rect: Rect,
}

/// Where water is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// On the inner wall.
    Inside,
    /// In the air.
    Air,
    /// On the outer surface.
    Outside,
}

impl Place {
    /// Where a state is.
    pub(crate) fn of(state: State) -> Self {
        match state {
            State::Water | State::Frost => Self::Inside,
            State::Mist => Self::Air,
            State::Sweat => Self::Outside,
        }
    }
}

impl Plan {
    /// Where a temperature lies, px.
    pub(crate) fn y(&self, temperature: Temperature) -> f64 {
        self.temperature.px((self.read_temperature)(temperature))
    }

    /// Where an amount of water per length lies, px.
    pub(crate) fn y_water(&self, water: MassFlowPerLength) -> f64 {
        self.water.px((self.read_water)(water))
    }
}

/// Plans the profile of a tube.
pub(crate) fn plan(
    view: &View<'_>,
    frame: &Frame,
    answer: &TubeOutcome,
    found: &[StateStretch],
) -> Plan {
    let (left, width) = (frame.origin, frame.end() - frame.origin);
    let row = 16.0 * frame.text;
    let (plot_height, strip_height) = match (frame.narrow, frame.on_paper) {
        (true, _) => (132.0, 34.0),
        (false, true) => (76.0, 26.0),
        (false, false) => (180.0, f64::max(44.0, 32.0 * frame.text)),
    };
    let plot = Rect::new(left, 20.0 * frame.text, width, plot_height);
    // Room for the strip's head between the lowest number of the plot and the highest of the strip.
    let between = 24.0 * frame.text + 2.0;
    let strip = Rect::new(left, plot.bottom() + between, width, strip_height);
    let lanes = lanes(found, frame, strip.bottom() + 10.0);
    let axis = lanes
        .last()
        .map_or(strip.bottom() + 10.0, |lane| lane.rect.bottom());
    let read_temperature = TEMPERATURE.unit(view.style.units).read;
    let read_water = WATER_PER_LENGTH.unit(view.style.units).read;
    let (low, high) = temperatures(view, answer, read_temperature);
    let apart = match (frame.narrow, frame.on_paper) {
        (true, _) => 26.0,
        (false, true) => 17.0,
        (false, false) => 22.0,
    };
    let most = whole(plot_height / (apart * frame.text));
    let (low, high, temperature_ticks) = rounded_span(low, high, most);
    let wettest = answer
        .profile
        .iter()
        .map(|point| read_water(point.deposit))
        .fold(0.0, f64::max);
    // A dry strip keeps a scale, so that nothing is seen to be nothing.
    let wettest = if 0.0 < wettest { wettest } else { 1.0 };
    let (_, most_water, water_ticks) = rounded_span(0.0, wettest, 3);
    Plan {
        frame: *frame,
        plot,
        strip,
        lanes,
        axis,
        height: axis + 14.0 + row,
        temperature: Scale::new((low, high), (plot.bottom(), plot.y)),
        temperature_ticks,
        water: Scale::new((0.0, most_water), (strip.bottom(), strip.y)),
        water_ticks,
        read_temperature,
        read_water,
    }
}

/// One lane for each place where there is water, the inside always.
fn lanes(found: &[StateStretch], frame: &Frame, top: f64) -> Vec<Lane> {
    let high = 13.0 * frame.text;
    let wanted = |place: Place| {
        place == Place::Inside
            || found
                .iter()
                .any(|stretch| Place::of(stretch.state) == place)
    };
    let mut y = top;
    [Place::Inside, Place::Air, Place::Outside]
        .into_iter()
        .filter(|place| wanted(*place))
        .map(|what| {
            let rect = Rect::new(frame.origin, y, frame.end() - frame.origin, high);
            y += high;
            Lane { what, rect }
        })
        .collect()
}

/// The lowest and highest temperature that is plotted, in the unit shown, and never the same.
fn temperatures(view: &View<'_>, answer: &TubeOutcome, read: fn(Temperature) -> f64) -> (f64, f64) {
    let along = answer.profile.iter().flat_map(|point| {
        let dew_point = point.dew_point.unwrap_or(point.inner_wall);
        [point.air, point.inner_wall, dew_point]
    });
    let around = view
        .legs()
        .iter()
        .filter_map(|leg| view.run.spaces.get(leg.space))
        .map(|space| space.temperature);
    let (low, high) = along
        .chain(around)
        .map(read)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), t| {
            (low.min(t), high.max(t))
        });
    let short = (2.0 - (high - low)).max(0.0) / 2.0;
    (low - short, high + short)
}
