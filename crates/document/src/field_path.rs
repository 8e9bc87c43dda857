//! Where in a document something stands: `runs[0].intake.legs[2].length_m`.

use core::fmt;

/// Where in a document something stands, written as `runs[0].intake.legs[2].length_m`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct FieldPath(String);

impl FieldPath {
    /// The document as a whole.
    #[must_use]
    pub const fn root() -> Self {
        Self(String::new())
    }

    /// The field of that name in what stands here; a dotted name goes several fields down.
    #[must_use]
    pub fn field(mut self, name: &str) -> Self {
        if !self.0.is_empty() && !name.is_empty() {
            self.0.push('.');
        }
        self.0.push_str(name);
        self
    }

    /// The entry at that position, counted from 0, in the list that stands here.
    #[must_use]
    pub fn index(mut self, at: usize) -> Self {
        self.0.push_str(&format!("[{at}]"));
        self
    }

    /// As text; empty for the document as a whole.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for FieldPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0.is_empty() {
            return f.write_str("the document");
        }
        f.write_str(&self.0)
    }
}

/// A path that is only written out when an error needs it.
#[derive(Clone, Copy)]
pub(crate) struct Here<'a> {
    parent: Option<&'a Here<'a>>,
    step: Step,
}

#[derive(Clone, Copy)]
enum Step {
    Field(&'static str),
    Index(usize),
}

impl<'a> Here<'a> {
    /// The document as a whole.
    pub(crate) const ROOT: Self = Self::at("");

    pub(crate) const fn at(name: &'static str) -> Self {
        Self {
            parent: None,
            step: Step::Field(name),
        }
    }

    pub(crate) const fn field(&'a self, name: &'static str) -> Self {
        Self {
            parent: Some(self),
            step: Step::Field(name),
        }
    }

    pub(crate) const fn index(&'a self, at: usize) -> Self {
        Self {
            parent: Some(self),
            step: Step::Index(at),
        }
    }

    pub(crate) fn path(&self) -> FieldPath {
        let above = self.parent.map_or_else(FieldPath::root, Here::path);
        match self.step {
            Step::Field(name) => above.field(name),
            Step::Index(at) => above.index(at),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{FieldPath, Here};

    #[test]
    fn a_path_reads_like_the_document() {
        let runs = Here::at("runs");
        let run = runs.index(0);
        let intake = run.field("intake");
        let legs = intake.field("legs");
        let leg = legs.index(2);
        let path = leg.field("length_m").path();
        assert_eq!(
            path.as_str(),
            "runs[0].intake.legs[2].length_m",
            "dots and brackets"
        );
    }

    #[test]
    fn the_whole_has_a_name() {
        assert_eq!(
            FieldPath::root().to_string(),
            "the document",
            "where there is no field"
        );
    }
}
