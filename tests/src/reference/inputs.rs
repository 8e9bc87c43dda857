//! The inputs of a row, read by name; what is missing is said by name.

use serde_json::Value;

/// The inputs of a row, and what is expected of it where a check starts from that.
#[derive(Debug, Clone, Copy)]
pub struct Inputs<'a> {
    given: &'a Value,
    expected: &'a Value,
}

impl<'a> Inputs<'a> {
    /// Inputs on their own.
    #[must_use]
    pub const fn of(given: &'a Value) -> Self {
        Self {
            given,
            expected: &Value::Null,
        }
    }

    /// Those of a row of `checks.json`.
    #[must_use]
    pub fn of_row(row: &'a Value) -> Self {
        Self {
            given: &row["inputs"],
            expected: &row["expected"],
        }
    }

    /// The inputs as they stand.
    #[must_use]
    pub const fn raw(&self) -> &'a Value {
        self.given
    }

    /// The expected values, to start a second check from.
    #[must_use]
    pub const fn expected(&self) -> Self {
        Self::of(self.expected)
    }

    /// A number.
    ///
    /// # Errors
    /// A sentence where there is none of that name.
    pub fn number(&self, name: &str) -> Result<f64, String> {
        self.given[name]
            .as_f64()
            .ok_or_else(|| format!("input {name} is not a number"))
    }

    /// A list of numbers.
    ///
    /// # Errors
    /// A sentence where there is none of that name.
    pub fn list(&self, name: &str) -> Result<Vec<f64>, String> {
        let items = self.given[name]
            .as_array()
            .ok_or_else(|| format!("input {name} is not a list"))?;
        items
            .iter()
            .map(|item| {
                item.as_f64()
                    .ok_or_else(|| format!("input {name} holds {item}"))
            })
            .collect()
    }

    /// Inputs within an input.
    #[must_use]
    pub fn within(&self, name: &str) -> Inputs<'a> {
        Inputs::of(&self.given[name])
    }

    /// A function of each number of a list.
    ///
    /// # Errors
    /// A sentence where there is no such list.
    pub fn each(&self, name: &str, of: impl Fn(f64) -> f64) -> Result<Value, String> {
        Ok(self.list(name)?.into_iter().map(of).collect())
    }
}
