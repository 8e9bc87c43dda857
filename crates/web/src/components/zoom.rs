//! The drawing larger than its place: by buttons, by two fingers and by the wheel; moved with a strip that shows where.

use dewrun_drawing::{Frame, Room};
use dewrun_quantity::format::machine;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, MouseEvent, PointerEvent, TouchEvent, WheelEvent};

use super::drawing::Drawn;
use super::hand::stop;
use super::parts::{button, flag, words};
use crate::element::{El, el};
use crate::hooks::element_width::ElementRoom;
use crate::state::Desk;

/// A tube that is longer than this is drawn so large that as much of it is seen, m.
const LONG_M: f64 = 25.0;
/// A button or a turn of the wheel makes it larger by this.
const STEP: f64 = 1.25;
/// It is never drawn larger than this many times its place.
const MOST: f64 = 8.0;

/// How large the drawing is; free to copy.
#[derive(Clone, Copy)]
pub(super) struct Zoom {
    desk: Desk,
    /// What the drawing is moved in.
    window: StoredValue<SendWrapper<El>>,
    seen: ReadSignal<ElementRoom>,
    /// What somebody has chosen.
    chosen: RwSignal<Option<f64>>,
    /// How far it has been moved to the left, px.
    moved: RwSignal<f64>,
    /// Between two fingers, px, and how large the drawing was when they came down.
    fingers: StoredValue<Option<(f64, f64)>>,
}

impl Zoom {
    pub(super) fn new(desk: Desk, window: &El, seen: ReadSignal<ElementRoom>) -> Self {
        Self {
            desk,
            window: StoredValue::new(SendWrapper::new(window.clone())),
            seen,
            chosen: RwSignal::new(None),
            moved: RwSignal::new(0.0),
            fingers: StoredValue::new(None),
        }
    }

    /// The width of the drawing over that of its place.
    pub(super) fn times(self) -> f64 {
        let length = || {
            let answered = self.desk.drawn()?;
            let view = answered.view(self.desk.tube(), self.desk.style());
            Some(view.length().to_metres())
        };
        let is_narrow = move || {
            let (width, text) = (self.seen.get().width, 1.0);
            Room { width, text }.is_narrow()
        };
        let usual = || {
            let long = length().unwrap_or(0.0) / LONG_M;
            // A phone shows long tubes whole: the drawing there says little more when it is larger.
            if is_narrow() { 1.0 } else { long }
        };
        within(self.chosen.get().unwrap_or_else(usual))
    }

    /// What moves the drawing and makes it larger.
    pub(super) fn over(self, window: El, drawn: Memo<Option<Drawn>>) -> El {
        window
            .class_if("dw-pan--moves", flag(move || 1.0 < self.times()))
            .on("scroll", move |_| self.follow())
            .on("wheel", move |event| {
                self.turn(drawn, event.unchecked_ref());
            })
            .on("touchstart", move |event| self.touch(&event))
            .on("touchmove", move |event| self.pinch(drawn, &event))
            .on("touchend", move |_| self.fingers.set_value(None))
    }

    /// The whole tube, and which part of it is seen; it is moved there by a press or a drag.
    pub(super) fn strip(self, drawn: Memo<Option<Drawn>>) -> El {
        let picture = words(move || {
            let width = self.seen.get().width;
            drawn
                .with(|drawn| drawn.as_ref().map(|drawn| drawn.grips.overview(width)))
                .unwrap_or_default()
        });
        let percent = |share: f64| format!("{}%", machine(100.0 * share, 2));
        let from = words(move || {
            let all = self.seen.get().width * self.times();
            percent(self.moved.get() / all.max(1.0))
        });
        let strip = el("div")
            .class("dw-overview")
            .attr("aria-hidden", "true")
            .flag("hidden", flag(move || self.times() <= 1.0))
            .child(el("div").html(picture))
            .child(
                el("div")
                    .class("dw-overview__seen")
                    .live_style("--from", from)
                    .live_style("--wide", words(move || percent(1.0 / self.times()))),
            );
        let catcher = strip.clone();
        let go = move |event: &MouseEvent| {
            let rect = catcher.dom().get_bounding_client_rect();
            let share = (f64::from(event.client_x()) - rect.left()) / rect.width();
            let width = untrack(|| self.seen.get().width);
            let all = width * untrack(|| self.times());
            self.scroll_to(share * all - width / 2.0);
        };
        let drag = go.clone();
        strip
            .on("pointerdown", move |event| {
                let event: &PointerEvent = event.unchecked_ref();
                if let Some(strip) = event.current_target() {
                    // Without it the drag ends at the edge, which is no harm.
                    let _ = strip
                        .unchecked_ref::<Element>()
                        .set_pointer_capture(event.pointer_id());
                }
                go(event);
            })
            .on("pointermove", move |event| {
                let event: &PointerEvent = event.unchecked_ref();
                if event.buttons() != 0 {
                    drag(event);
                }
            })
    }

    /// Larger or smaller, the middle staying where it is.
    fn step(self, drawn: Memo<Option<Drawn>>, by: f64) {
        let times = untrack(|| self.times());
        let middle = untrack(|| self.seen.get().width) / 2.0;
        self.make(drawn, times * by, middle);
    }

    fn turn(self, drawn: Memo<Option<Drawn>>, event: &WheelEvent) {
        // The wheel alone moves the page; two fingers on a pad come as a wheel with Ctrl.
        if !(event.ctrl_key() || event.meta_key()) || event.delta_y() == 0.0 {
            return;
        }
        event.prevent_default();
        let by = if event.delta_y() < 0.0 {
            STEP
        } else {
            1.0 / STEP
        };
        let times = untrack(|| self.times());
        self.make(drawn, times * by, self.beside(f64::from(event.client_x())));
    }

    fn touch(self, event: &Event) {
        if self.desk.is_held() {
            return;
        }
        let between = fingers(event.unchecked_ref());
        if let Some((apart, _)) = between {
            stop(event);
            let times = untrack(|| self.times());
            self.fingers.set_value(Some((apart.max(1.0), times)));
        }
    }

    fn pinch(self, drawn: Memo<Option<Drawn>>, event: &Event) {
        let begun = self.fingers.get_value();
        let now = fingers(event.unchecked_ref());
        if let (Some((apart, times)), Some((now, middle))) = (begun, now) {
            stop(event);
            self.make(drawn, times * now / apart, self.beside(middle));
        }
    }

    /// So large, what lies so far from the left edge of its place staying there.
    fn make(self, drawn: Memo<Option<Drawn>>, times: f64, at: f64) {
        let times = within(times);
        let frame =
            move || drawn.with_untracked(|drawn| drawn.as_ref().map(|drawn| drawn.grips.frame));
        let Some(before) = frame() else { return };
        let moved = self.window.with_value(|window| window.dom().scroll_left());
        let under = metres(&before, f64::from(moved) + at);
        self.chosen.set(Some(times));
        // Once the page has got the larger drawing.
        request_animation_frame(move || {
            if let Some(after) = frame() {
                self.scroll_to(after.px(under) - at);
            }
        });
    }

    fn scroll_to(self, px: f64) {
        self.window.with_value(|window| {
            let options = web_sys::ScrollToOptions::new();
            options.set_left(px);
            window.dom().scroll_to_with_scroll_to_options(&options);
        });
        self.follow();
    }

    fn follow(self) {
        let moved = self.window.with_value(|window| window.dom().scroll_left());
        self.moved.set(f64::from(moved));
    }

    /// How far from the left edge of the drawing's place.
    fn beside(self, client_x: f64) -> f64 {
        let left = self
            .window
            .with_value(|window| window.dom().get_bounding_client_rect().left());
        client_x - left
    }
}

/// Larger, smaller, whole.
pub(super) fn zoom_buttons(zoom: Zoom, drawn: Memo<Option<Drawn>>) -> El {
    let act = |word: &str, spoken: &str, act: Box<dyn FnMut()>| {
        button("dw-act", act).attr("aria-label", spoken).child(word)
    };
    el("div")
        .class("dw-zoom")
        .attr("role", "group")
        .attr("aria-label", "Size of the drawing")
        .child([
            act(
                "Larger",
                "Larger drawing",
                Box::new(move || zoom.step(drawn, STEP)),
            ),
            act(
                "Smaller",
                "Smaller drawing",
                Box::new(move || zoom.step(drawn, 1.0 / STEP)),
            ),
            act(
                "Whole",
                "Whole tube",
                Box::new(move || zoom.step(drawn, 0.0)),
            ),
        ])
}

fn within(times: f64) -> f64 {
    times.clamp(1.0, MOST)
}

/// The place on the axis, which may lie beyond its ends.
fn metres(frame: &Frame, px: f64) -> f64 {
    (px - frame.origin) / frame.px_per_m
}

/// How far two fingers are apart and where their middle lies, px; none with another number of fingers.
fn fingers(event: &TouchEvent) -> Option<(f64, f64)> {
    let touches = event.touches();
    if touches.length() != 2 {
        return None;
    }
    let (one, other) = (touches.get(0)?, touches.get(1)?);
    let dx = f64::from(one.client_x() - other.client_x());
    let dy = f64::from(one.client_y() - other.client_y());
    let middle = f64::from(one.client_x() + other.client_x()) / 2.0;
    Some(((dx * dx + dy * dy).sqrt(), middle))
}
