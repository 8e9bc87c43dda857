//! What came of one file: rows that held, rows that did not, rows without a test.

use serde_json::{Map, Value};

use super::compare::Comparison;

/// Values by key.
pub type Values = Map<String, Value>;

/// What the product says for one row, beside what is expected of it.
#[derive(Debug, Default)]
pub struct Answer {
    /// The computed values, keys as in the row's expected ones.
    pub values: Values,
    /// Each with what it has to be.
    pub comparisons: Vec<Comparison>,
}

/// What came of one file.
#[derive(Debug)]
pub struct FileReport {
    name: String,
    held: usize,
    missed: usize,
    skipped: Vec<String>,
    misses: Vec<String>,
    /// Computed values by id.
    pub computed: Values,
}

impl FileReport {
    /// A file of which nothing was looked at yet.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            held: 0,
            missed: 0,
            skipped: Vec::new(),
            misses: Vec::new(),
            computed: Values::new(),
        }
    }

    /// Takes down the answer to a row, or why there is none.
    pub fn take(&mut self, id: &str, answer: Result<Answer, String>) {
        let answer = match answer {
            Ok(answer) => answer,
            Err(error) => {
                self.missed += 1;
                self.misses.push(format!("{id} no answer: {error}"));
                return;
            }
        };
        let misses: Vec<String> = answer
            .comparisons
            .iter()
            .flat_map(Comparison::misses)
            .map(|miss| format!("{id} {miss}"))
            .collect();
        if misses.is_empty() && !answer.comparisons.is_empty() {
            self.held += 1;
        } else {
            self.missed += 1;
            if answer.comparisons.is_empty() {
                self.misses.push(format!("{id} compares nothing"));
            }
        }
        self.misses.extend(misses);
        self.computed
            .insert(id.to_owned(), Value::Object(answer.values));
    }

    /// Takes down a row without a test.
    pub fn skip(&mut self, id: &str) {
        self.skipped.push(id.to_owned());
    }

    /// No row was missed.
    #[must_use]
    pub fn all_held(&self) -> bool {
        self.missed == 0
    }

    /// One line on the file, one on what was skipped, one for each miss.
    pub fn print(&self) {
        let all = self.held + self.missed + self.skipped.len();
        let (name, held, skipped) = (&self.name, self.held, self.skipped.len());
        println!("{name}: {held} of {all} held, {skipped} skipped");
        if !self.skipped.is_empty() {
            println!("{name} skipped: {}", self.skipped.join(", "));
        }
        for miss in &self.misses {
            println!("{miss}");
        }
    }
}
