//! What each step came to, listed at the end.

use std::time::{Duration, Instant};

use anyhow::{Result, bail};

/// The steps run so far.
pub(super) struct Report {
    steps: Vec<Step>,
}

struct Step {
    name: String,
    passed: bool,
    took: Duration,
}

impl Report {
    pub(super) fn new() -> Self {
        Self { steps: Vec::new() }
    }

    /// Runs one step and remembers what it came to; a failure does not stop the steps after it.
    pub(super) fn step(&mut self, name: &str, run: impl FnOnce() -> Result<()>) {
        println!("\n== {name}");
        let begun = Instant::now();
        let outcome = run();
        if let Err(error) = &outcome {
            eprintln!("{name} failed: {error:#}");
        }
        self.steps.push(Step {
            name: name.to_owned(),
            passed: outcome.is_ok(),
            took: begun.elapsed(),
        });
    }

    /// Lists the steps.
    ///
    /// # Errors
    /// At least one failed.
    pub(super) fn close(&self) -> Result<()> {
        println!("\n== steps");
        for Step { name, passed, took } in &self.steps {
            let word = if *passed { "passed" } else { "FAILED" };
            println!("{word}  {:>6.1} s  {name}", took.as_secs_f64());
        }
        let failed = self.steps.iter().filter(|step| !step.passed).count();
        if 0 < failed {
            bail!("{failed} of {} steps failed", self.steps.len());
        }
        println!("All {} steps passed.", self.steps.len());
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_failure_fails_the_whole_but_not_the_rest() {
        let mut report = Report::new();
        let mut ran = false;
        report.step("first", || bail!("no"));
        report.step("second", || {
            ran = true;
            Ok(())
        });
        assert!(ran, "the step after a failed one runs");
        assert!(report.close().is_err(), "one failed step fails the run");
    }

    #[test]
    fn all_passed_passes() {
        let mut report = Report::new();
        report.step("only", || Ok(()));
        assert!(report.close().is_ok(), "passed steps pass the run");
    }
}
