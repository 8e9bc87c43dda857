//! What a run would still take dry, one limit a turn.

use std::rc::Rc;

use dewrun_advice::{
    BoundaryError, Limit, SpaceLimit, StayingDry, coldest_space, longest_tube, most_humid_duct_air,
};
use dewrun_desk::{limits_as_numbers, limits_of, style_of};
use dewrun_drawing::{dry_limits, html};
use dewrun_quantity::Temperature;
use dewrun_run::Tube;

use crate::answer::{Answer, Turn};
use crate::asked::Asked;
use crate::job::Job;
use crate::open::Open;

/// The limits as rows of a table.
pub(super) fn told(asked: &Asked<'_>) -> String {
    let (style, found) = style_of(asked.numbers);
    let view = asked.open.answered.view(Tube::Intake, style);
    limits_of(found).map_or_else(String::new, |found| {
        html::staying_dry(&dry_limits(&view, &found))
    })
}

pub(super) fn begun(asked: &Asked<'_>) -> Box<dyn Job> {
    Box::new(Searching {
        open: Rc::clone(&asked.open),
        duct_air: None,
        space: None,
    })
}

/// The search for three limits, and those found.
struct Searching {
    open: Rc<Open>,
    duct_air: Option<Limit<Temperature>>,
    space: Option<SpaceLimit>,
}

impl Searching {
    fn search(&mut self) -> Result<Turn, BoundaryError> {
        let (run, now) = (&self.open.answered.run, &self.open.answered.outcome);
        let duct_temperature = now.duct_air.temperature;
        let Some(duct_air) = self.duct_air else {
            self.duct_air = Some(most_humid_duct_air(run, now, duct_temperature)?);
            return Ok(Turn::Going(1.0 / 3.0));
        };
        let Some(space) = self.space.take() else {
            self.space = Some(coldest_space(run, now)?);
            return Ok(Turn::Going(2.0 / 3.0));
        };
        let found = StayingDry {
            duct_temperature,
            duct_air,
            space,
            tube: longest_tube(run, now)?,
        };
        Ok(Turn::Done(Answer::Numbers(limits_as_numbers(&found))))
    }
}

impl Job for Searching {
    fn turn(&mut self) -> Turn {
        self.search()
            .unwrap_or_else(|error| Turn::Done(Answer::Sentence(error.to_string())))
    }
}
