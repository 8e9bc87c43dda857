//! Troubles: how likely a log is under hazards, and shares of causes.

use dewrun_troubles::{Penalty, best_background_and_scale, best_scale, log_likelihood, shares};
use serde_json::{Value, json};

use super::{Computed, Rows};
use crate::reference::inputs::Inputs;

pub(super) const ROWS: Rows = &[
    ("TRB-51", likelihood_of_a_log),
    ("TRB-52", shares_of_causes),
];

fn numbers(inputs: &Inputs<'_>, name: &str) -> Result<Vec<f64>, String> {
    let values = inputs.raw()[name].as_array();
    let values = values.ok_or_else(|| format!("{name} is missing"))?;
    let numbers: Option<Vec<f64>> = values.iter().map(Value::as_f64).collect();
    numbers.ok_or_else(|| format!("{name} is not of numbers"))
}

fn likelihood_of_a_log(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let hazard = numbers(inputs, "hazard_per_h")?;
    let events = numbers(inputs, "events_in_hour")?;
    let scaled = best_scale(&hazard, &events).ok_or("no hazard")?;
    let even = vec![1.0; hazard.len()];
    let constant = best_scale(&even, &events).ok_or("no hour")?;
    let both = best_background_and_scale(&hazard, &events).ok_or("no hazard")?;
    Ok(Computed::of([
        ("logL_as_is", log_likelihood(&hazard, &events).into()),
        ("scale_best", scaled.scale.into()),
        ("logL_scaled", scaled.log_likelihood.into()),
        ("logL_constant", constant.log_likelihood.into()),
        (
            "background_and_scale_best",
            json!([both.background, both.scale]),
        ),
        ("logL_background", both.log_likelihood.into()),
    ]))
}

fn shares_of_causes(inputs: &Inputs<'_>) -> Result<Computed, String> {
    let logs = numbers(inputs, "logL")?;
    let free = numbers(inputs, "free_parameters")?;
    let events = inputs.raw()["events"]
        .as_u64()
        .ok_or("events are missing")?;
    let events = usize::try_from(events).map_err(|error| error.to_string())?;
    let by = |penalty| json!(shares(&logs, &free, events, penalty));
    Ok(Computed::of([
        ("share_AIC", by(Penalty::Akaike)),
        ("share_BIC", by(Penalty::Bayes)),
    ]))
}
