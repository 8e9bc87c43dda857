//! The pointer along the tube: dragged, moved by keys and by large buttons, with the flag that it reads out.

use dewrun_drawing::{BigStep, HANDLE, Mark, Rail, Step, View, big_steps};
use dewrun_quantity::Length;
use dewrun_quantity::format::machine;
use dewrun_run::Tube;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent, MouseEvent, PointerEvent};

use super::drawing::Drawn;
use super::parts::{button, flag, words};
use crate::element::{El, el};
use crate::state::Desk;

/// The left button of a mouse, a finger or a pen in contact.
const PRESSED: u16 = 1;

/// Where the pointer is and what moves it; free to copy.
#[derive(Clone, Copy)]
pub(super) struct Pointing {
    desk: Desk,
    /// What both drawings lie in.
    place: StoredValue<SendWrapper<El>>,
    drawn: Memo<Option<Drawn>>,
    /// Where somebody put it, and in which tube.
    put: RwSignal<Option<(Tube, Length)>>,
    mark: Memo<Option<Mark>>,
}

impl Pointing {
    pub(super) fn new(desk: Desk, place: &El, drawn: Memo<Option<Drawn>>) -> Self {
        let put = RwSignal::new(None);
        let mark = Memo::new(move |_| {
            if desk.is_held() {
                return None;
            }
            on_rail(desk, drawn, |rail, view| {
                let is_here = |(tube, _): &(Tube, Length)| *tube == view.tube;
                let at = put.get().filter(is_here).map(|(_, at)| at);
                rail.mark(view, at.unwrap_or_else(|| rail.start(view)))
            })
            .flatten()
        });
        Self {
            desk,
            place: StoredValue::new(SendWrapper::new(place.clone())),
            drawn,
            put,
            mark,
        }
    }

    /// Keeps the pointer under the finger until it is lifted.
    pub(super) fn hold(self, event: &PointerEvent) {
        let element = event.current_target();
        if let Some(element) = element.and_then(|element| element.dyn_into::<Element>().ok()) {
            // Without it the drag ends at the edge, which is no harm.
            let _ = element.set_pointer_capture(event.pointer_id());
        }
    }

    /// Moves the pointer as long as something is pressed.
    pub(super) fn drag(self, event: &PointerEvent) {
        if event.buttons() & PRESSED != 0 {
            self.point_at(event);
        }
    }

    /// Moves the pointer to where the event is.
    pub(super) fn point_at(self, event: &MouseEvent) {
        let left = self
            .place
            .with_value(|place| place.dom().get_bounding_client_rect().left());
        let px = f64::from(event.client_x()) - left;
        self.go(|rail, view, _| rail.at(view, px));
    }

    /// How far from the inlet it is.
    pub(super) fn along(self) -> Option<Length> {
        self.mark
            .with_untracked(|mark| mark.as_ref().map(|mark| mark.x))
    }

    fn step(self, step: Step) {
        self.go(|rail, view, from| rail.stepped(view, from, step));
    }

    fn go(self, to: impl FnOnce(&Rail, &View<'_>, Length) -> Length) {
        let from = self
            .mark
            .with_untracked(|mark| mark.as_ref().map(|mark| mark.x));
        let to = untrack(|| {
            on_rail(self.desk, self.drawn, |rail, view| {
                Some((view.tube, to(rail, view, from?)))
            })
        });
        if let Some(to) = to.flatten() {
            self.put.set(Some(to));
        }
    }

    fn key(self, event: &KeyboardEvent) {
        let (large, name) = (event.shift_key(), event.key());
        let even = |on| {
            if large {
                Step::Large { on }
            } else {
                Step::Small { on }
            }
        };
        let step = match name.as_str() {
            "ArrowRight" | "ArrowUp" => even(true),
            "ArrowLeft" | "ArrowDown" => even(false),
            "PageUp" => Step::Bound { on: true },
            "PageDown" => Step::Bound { on: false },
            "Home" => Step::End { on: false },
            "End" => Step::End { on: true },
            _ => return,
        };
        event.prevent_default();
        self.step(step);
    }

    /// Something of the mark, as text.
    fn read(self, read: fn(&Mark) -> String) -> Signal<String> {
        let mark = self.mark;
        words(move || mark.with(|mark| mark.as_ref().map(read).unwrap_or_default()))
    }
}

/// Looks at the rail together with the answer that it was drawn from.
fn on_rail<T>(
    desk: Desk,
    drawn: Memo<Option<Drawn>>,
    look: impl FnOnce(&Rail, &View<'_>) -> T,
) -> Option<T> {
    let answered = desk.drawn()?;
    let view = answered.view(desk.tube(), desk.style());
    drawn.with(|drawn| Some(look(drawn.as_ref()?.rail.as_ref()?, &view)))
}

/// The pointer itself, its line, its flag, and on a phone its buttons.
pub(super) fn pointer(pointing: Pointing) -> El {
    let desk = pointing.desk;
    // While a leg is drawn nothing is read out at a place that moves.
    let is_absent = flag(move || desk.is_held() || pointing.mark.with(Option::is_none));
    let name = words(move || match desk.tube() {
        Tube::Intake => "Pointer along the intake tube".to_owned(),
        Tube::Exhaust => "Pointer along the exhaust tube".to_owned(),
    });
    let handle = el("div")
        .class("dw-pointer")
        .attr("role", "slider")
        .attr("tabindex", "0")
        .attr("aria-orientation", "horizontal")
        .attr("aria-valuemin", "0")
        .live_attr("aria-label", name)
        .live_attr("aria-valuemax", pointing.read(|mark| mark.most.clone()))
        .live_attr("aria-valuenow", pointing.read(|mark| mark.value.clone()))
        .live_attr("aria-valuetext", pointing.read(|mark| mark.spoken.clone()))
        .inert(HANDLE)
        .on("keydown", move |event| pointing.key(event.unchecked_ref()))
        .on("pointerdown", move |event| {
            pointing.hold(event.unchecked_ref());
        })
        .on("pointermove", move |event| {
            pointing.drag(event.unchecked_ref());
        });
    let steps = el("div")
        .class("dw-pointer-steps")
        .attr("role", "group")
        .attr("aria-label", "Move the pointer")
        .child([0, 1, 2, 3].map(|at| big_step(pointing, at)));
    el("div")
        .class("dw-pointing")
        .flag("hidden", is_absent)
        .live_style("--x", pointing.read(|mark| px(mark.handle.x)))
        .live_style("--y", pointing.read(|mark| px(mark.handle.y)))
        .live_style("--flag-x", pointing.read(|mark| px(mark.flag_at.x)))
        .live_style("--flag-y", pointing.read(|mark| px(mark.flag_at.y)))
        .child(
            el("div")
                .class("dw-pointing__lines")
                .html(pointing.read(|mark| mark.lines.clone())),
        )
        .child(handle)
        .child(
            el("div")
                .class("dw-flag")
                .html(pointing.read(|mark| mark.flag.clone())),
        )
        .child(steps)
}

/// One of the large buttons.
fn big_step(pointing: Pointing, at: usize) -> El {
    let desk = pointing.desk;
    let step = move || -> BigStep { big_steps(desk.style())[at].clone() };
    button("dw-pointer-steps__step", move || {
        pointing.step(untrack(step).step);
    })
    .live_attr("aria-label", words(move || step().spoken))
    .child(words(move || step().words))
}

fn px(length: f64) -> String {
    format!("{}px", machine(length, 1))
}
