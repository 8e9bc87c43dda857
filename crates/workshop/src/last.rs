//! What was made last, and the numbers that asked for it.

use std::cell::{Ref, RefCell};

/// Keeps what one question made for those after it that ask the same.
pub(crate) struct Last<T>(RefCell<Option<(Vec<f64>, T)>>);

impl<T> Default for Last<T> {
    fn default() -> Self {
        Self(RefCell::default())
    }
}

impl<T> Last<T> {
    /// What these numbers ask for: the last one where it is that, else made anew.
    ///
    /// # Errors
    /// Why it can't be made.
    pub(crate) fn of(
        &self,
        numbers: &[f64],
        make: impl FnOnce() -> Result<T, String>,
    ) -> Result<Ref<'_, T>, String> {
        let is_that = |(asked, _): &(Vec<f64>, T)| asked == numbers;
        if !self.0.borrow().as_ref().is_some_and(is_that) {
            *self.0.borrow_mut() = Some((numbers.to_vec(), make()?));
        }
        let last = Ref::filter_map(self.0.borrow(), |last| last.as_ref().map(|(_, made)| made));
        last.map_err(|_| "nothing was made".to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::Last;

    #[test]
    fn the_same_question_is_answered_once() {
        let last = Last::default();
        let mut made = 0;
        for (numbers, expected) in [([1.0], 1), ([1.0], 1), ([2.0], 2), ([1.0], 3)] {
            let found = last.of(&numbers, || {
                made += 1;
                Ok(made)
            });
            assert_eq!(found.map(|found| *found), Ok(expected), "of {numbers:?}");
        }
        let refused = last.of(&[9.0], || Err("no".to_owned()));
        assert_eq!(refused.map(|found| *found), Err("no".to_owned()), "why");
    }
}
