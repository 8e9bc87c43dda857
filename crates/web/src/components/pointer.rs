//! The pointer along the tube: dragged, moved by keys and by large buttons, with the flag that it reads out.

use dewrun_drawing::{BigStep, HANDLE, Mark, Rail, Step, View, big_steps};
use dewrun_quantity::Length;
use dewrun_quantity::format::machine;
use dewrun_run::Tube;
use leptos::ev::{KeyboardEvent, MouseEvent, PointerEvent};
use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::drawing::Drawn;
use super::parts::{flag, words};
use crate::state::Desk;

/// The left button of a mouse, a finger or a pen in contact.
const PRESSED: u16 = 1;

/// Where the pointer is and what moves it; free to copy.
#[derive(Clone, Copy)]
pub(super) struct Pointing {
    desk: Desk,
    /// What both drawings lie in.
    place: NodeRef<Div>,
    drawn: Memo<Option<Drawn>>,
    /// Where somebody put it, and in which tube.
    put: RwSignal<Option<(Tube, Length)>>,
    mark: Memo<Option<Mark>>,
}

impl Pointing {
    pub(super) fn new(desk: Desk, place: NodeRef<Div>, drawn: Memo<Option<Drawn>>) -> Self {
        let put = RwSignal::new(None);
        let mark = Memo::new(move |_| {
            on_rail(desk, drawn, |rail, view| {
                let is_here = |(tube, _): &(Tube, Length)| *tube == view.tube;
                let at = put.get().filter(is_here).map(|(_, at)| at);
                rail.mark(view, at.unwrap_or_else(|| rail.start(view)))
            })
            .flatten()
        });
        Self {
            desk,
            place,
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
        let Some(place) = self.place.get_untracked() else {
            return;
        };
        let px = f64::from(event.client_x()) - place.get_bounding_client_rect().left();
        self.go(|rail, view, _| rail.at(view, px));
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
    let answered = desk.answered()?;
    let view = answered.view(desk.tube(), desk.style());
    drawn.with(|drawn| Some(look(drawn.as_ref()?.rail.as_ref()?, &view)))
}

/// The pointer itself, its line, its flag, and on a phone its buttons.
#[component]
pub(super) fn Pointer(
    /// Where it is.
    pointing: Pointing,
) -> impl IntoView {
    let desk = pointing.desk;
    let is_absent = flag(move || pointing.mark.with(Option::is_none));
    let name = words(move || match desk.tube() {
        Tube::Intake => "Pointer along the intake tube".to_owned(),
        Tube::Exhaust => "Pointer along the exhaust tube".to_owned(),
    });
    view! {
        <div
            class="dw-pointing"
            hidden=is_absent
            style=("--x", pointing.read(|mark| px(mark.handle.x)))
            style=("--y", pointing.read(|mark| px(mark.handle.y)))
            style=("--flag-x", pointing.read(|mark| px(mark.flag_at.x)))
            style=("--flag-y", pointing.read(|mark| px(mark.flag_at.y)))
        >
            <div class="dw-pointing__lines" inner_html=pointing.read(|mark| mark.lines.clone()) />
            <div
                class="dw-pointer"
                role="slider"
                tabindex="0"
                aria-label=name
                aria-orientation="horizontal"
                aria-valuemin="0"
                aria-valuemax=pointing.read(|mark| mark.most.clone())
                aria-valuenow=pointing.read(|mark| mark.value.clone())
                aria-valuetext=pointing.read(|mark| mark.spoken.clone())
                inner_html=HANDLE
                on:keydown=move |event| pointing.key(&event)
                on:pointerdown=move |event| pointing.hold(&event)
                on:pointermove=move |event| pointing.drag(&event)
            />
            <div class="dw-flag" inner_html=pointing.read(|mark| mark.flag.clone()) />
            <div class="dw-pointer-steps" role="group" aria-label="Move the pointer">
                {[0, 1, 2, 3].map(|at| big_step(pointing, at))}
            </div>
        </div>
    }
    .into_any()
}

/// One of the large buttons.
fn big_step(pointing: Pointing, at: usize) -> AnyView {
    let desk = pointing.desk;
    let button = move || -> BigStep { big_steps(desk.style())[at].clone() };
    let spoken = words(move || button().spoken);
    view! {
        <button
            type="button"
            class="dw-pointer-steps__step"
            aria-label=spoken
            on:click=move |_| pointing.step(untrack(button).step)
        >
            {words(move || button().words)}
        </button>
    }
    .into_any()
}

fn px(length: f64) -> String {
    format!("{}px", machine(length, 1))
}
