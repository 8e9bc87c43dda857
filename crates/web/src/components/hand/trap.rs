//! Traps in the hand: one that is carried to the tube by its sign, and those that keys move.

use dewrun_desk::{add_trap, move_trap, trap_places};
use dewrun_drawing::{snapped_place, trap_name};
use dewrun_quantity::measure::TUBE_LENGTH;
use dewrun_quantity::{Length, Style};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

use super::Hand;

/// A trap that is let go of within this of the tube goes to it, px.
const DROP: f64 = 48.0;

impl Hand {
    /// Puts a trap at a place along the tube.
    pub(in crate::components) fn trap(self, along: Option<Length>) {
        let Some(along) = along else { return };
        let tube = self.tube();
        self.act("Trap", |project| {
            let _ = add_trap(project, tube, along);
        });
        self.told.set(named(along, untrack(|| self.desk.style())));
    }

    /// Moves a trap by a key.
    pub(in crate::components) fn step_trap(self, trap: usize, by_m: f64) {
        let tube = self.tube();
        let places = || {
            self.desk
                .with_untracked(|project| trap_places(project, tube))
        };
        let before = places();
        let Some(from) = before.get(trap).copied() else {
            return;
        };
        self.desk.change_in_a_row("trap by keys", |project| {
            move_trap(project, tube, trap, from + Length::metres(by_m));
        });
        if places() != before {
            self.is_keyed.set_value(true);
        }
        let words = untrack(|| self.viewed(|view| trap_name(view, trap)));
        self.told.set(words.unwrap_or_default());
    }

    /// The sign of a trap is taken from beside the drawing.
    pub(in crate::components) fn take_sign(self, event: &PointerEvent) {
        if event.button() == 0 {
            if let Some(sign) = event.current_target() {
                // Without it the sign is let go at its edge, which is no harm.
                let _ = sign
                    .unchecked_ref::<Element>()
                    .set_pointer_capture(event.pointer_id());
            }
            self.carried.set(Some(None));
        }
    }

    /// The sign is carried over the drawing.
    pub(in crate::components) fn carry(self, event: &PointerEvent) {
        if self.carried.with_untracked(Option::is_some) {
            let at = self.point(event);
            let near = untrack(|| self.with(|grips| grips.along(at)));
            let near = near.filter(|(_, away)| *away <= DROP);
            self.carried
                .set(Some(near.map(|(along, _)| snapped_place(along))));
        }
    }

    /// The browser has taken the finger for something else.
    pub(in crate::components) fn forget_sign(self) {
        self.carried.set(None);
    }

    /// The sign is let go of; it becomes a trap where it is over the tube. Says whether it was.
    pub(in crate::components) fn drop_sign(self) -> bool {
        let carried = self.carried.get_untracked().flatten();
        self.carried.set(None);
        self.trap(carried);
        carried.is_some()
    }
}

/// A trap at a place along the tube, in words.
pub(super) fn named(along: Length, style: Style) -> String {
    format!("Trap at {}", TUBE_LENGTH.show_entered(along, style))
}
