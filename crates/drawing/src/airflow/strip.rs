//! Where everything lies on the chart of limits, states and faults.

use super::rows::Row;
use crate::geometry::kept;
use crate::measure::text_width;
use crate::scale::Scale;
use crate::text::Size;

/// Readings up to this are always shown, % of that as fitted.
const LEAST_MOST: f64 = 140.0;
/// None beyond this is: an arrow stands for it.
const MOST_MOST: f64 = 200.0;
/// The axis ends at a multiple of this.
const STEP: f64 = 20.0;
/// Narrower than this, over the size of the text, names stand over their marks.
const NARROW: f64 = 640.0;

/// The chart's places, px.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Strip {
    pub(super) width: f64,
    pub(super) text: f64,
    pub(super) narrow: bool,
    /// From percent of the reading as fitted.
    pub(super) scale: Scale,
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) most: f64,
    /// Top and bottom of the tolerance strip.
    pub(super) band: (f64, f64),
    /// Where the rows of the states begin.
    pub(super) states: f64,
    /// Where those of the faults do.
    pub(super) faults: f64,
    /// Where they end.
    pub(super) bottom: f64,
    /// Height of a state's and of a fault's row.
    pub(super) rows: (f64, f64),
    /// Right edges of the two columns of figures.
    pub(super) columns: [f64; 2],
}

impl Strip {
    pub(super) fn new(
        (width, text): (f64, f64),
        states: &[Row],
        faults: &[Row],
        verdicts: f64,
    ) -> Self {
        let narrow = width / text < NARROW;
        let all = || states.iter().chain(faults);
        let largest = all().map(|row| 100.0 * row.reading).fold(0.0, f64::max);
        let most = kept(
            ((largest + 4.0) / STEP).ceil() * STEP,
            LEAST_MOST,
            MOST_MOST,
        );
        let px = Size::Label.px() * text;
        let names = all().map(|row| text_width(&row.name, px));
        let names = names.fold(150.0 * text, f64::max).min(width * 0.3);
        let columns = [names + 48.0 * text, names + 100.0 * text];
        let (left, right) = if narrow {
            (0.0, width)
        } else {
            (columns[1] + 14.0 * text, width - verdicts - 16.0 * text)
        };
        let edge = 10.0;
        let scale = Scale::new((0.0, most), (left + edge, right - edge));
        let rows = if narrow {
            (32.0 * text, 46.0 * text)
        } else {
            (20.0 * text, 20.0 * text)
        };
        let band = (38.0 * text, 54.0 * text);
        let head = if narrow { 22.0 } else { 12.0 } * text;
        let states_top = band.1 + head;
        let faults_top = count(states.len()) * rows.0 + states_top + 28.0 * text;
        Self {
            width,
            text,
            narrow,
            scale,
            left,
            right,
            most,
            band,
            states: states_top,
            faults: faults_top,
            bottom: faults_top + count(faults.len()) * rows.1 + 4.0,
            rows,
            columns,
        }
    }

    /// Where a reading lies, at the edge where it lies beyond.
    pub(super) fn px(&self, reading: f64) -> f64 {
        self.scale.px(kept(100.0 * reading, 0.0, self.most))
    }

    /// Height of the whole chart.
    pub(super) fn height(&self) -> f64 {
        self.bottom + 40.0 * self.text
    }

    /// Where the row of a state or fault begins.
    pub(super) fn row(&self, is_fault: bool, number: usize) -> f64 {
        if is_fault {
            self.faults + count(number) * self.rows.1
        } else {
            self.states + count(number) * self.rows.0
        }
    }
}

/// A count as a number to reckon with.
pub(super) fn count(things: usize) -> f64 {
    (0..things).fold(0.0, |sum, _| sum + 1.0)
}
