//! Where standing water is thought to be when a lane gets to it, by how it has moved lately.

use super::held::Held;

/// How what stands has moved in the last two steps, kg/s.
#[derive(Debug, Clone, Default)]
pub(super) struct Trend {
    last: Vec<f64>,
    before: Vec<f64>,
}

impl Trend {
    /// Time to a step that many hours ahead, s.
    #[expect(clippy::cast_precision_loss, reason = "a few hours")]
    pub(super) const fn ahead_s(&self, hours: usize, length_s: f64) -> f64 {
        hours as f64 * length_s
    }

    /// What will stand in each pool, then each flat stretch, if it goes on as in the slower of both steps, kg.
    pub(super) fn levels_kg(&self, held: &Held, ahead_s: f64, levels_kg: &mut Vec<f64>) {
        levels_kg.clear();
        for stand in 0..held.stands() {
            let kg = held.stand(stand).all();
            let rate = self.rate(stand);
            levels_kg.push((kg + rate * ahead_s).max(0.0));
        }
    }

    fn rate(&self, stand: usize) -> f64 {
        let of = |rates: &[f64]| rates.get(stand).copied().unwrap_or(0.0);
        let (last, before) = (of(&self.last), of(&self.before));
        if last * before <= 0.0 {
            return 0.0;
        }
        if last.abs() < before.abs() {
            last
        } else {
            before
        }
    }

    /// Takes down what a step has moved.
    pub(super) fn note(&mut self, was: &Held, is: &Held, seconds: f64) {
        core::mem::swap(&mut self.last, &mut self.before);
        self.last.clear();
        for stand in 0..is.stands() {
            let moved = is.stand(stand).all() - was.stand(stand).all();
            self.last.push(moved / seconds);
        }
    }
}
