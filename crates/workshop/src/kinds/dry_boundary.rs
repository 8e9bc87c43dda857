//! The dry boundary of the dew square at the duct temperatures asked for, °C.

use dewrun_advice::dry_boundary;
use dewrun_desk::boundary_as_numbers;
use dewrun_quantity::Temperature;

use crate::answer::Answer;
use crate::asked::Asked;

pub(super) fn answer(asked: &Asked<'_>) -> Result<Answer, String> {
    let answered = &asked.open.answered;
    let at: Vec<_> = asked
        .numbers
        .iter()
        .copied()
        .map(Temperature::celsius)
        .collect();
    let found = dry_boundary(&answered.run, &answered.outcome, &at);
    found
        .map(|found| Answer::Numbers(boundary_as_numbers(&found)))
        .map_err(|error| error.to_string())
}
