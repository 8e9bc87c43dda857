//! A hand on the drawing: it draws the ends of legs, moves traps, splits legs where it is pressed twice or long, and chooses them.

mod trap;

use core::time::Duration;

use dewrun_desk::{
    OpenProject, TubeName, leg_at, leg_shape, move_trap, route, shape_leg, split_leg_at,
};
use dewrun_drawing::{
    Grips, Held, Point, Pull, Shape, Touched, View, leg_shape as in_words, snapped_place, trap_name,
};
use dewrun_quantity::Length;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement, MouseEvent, PointerEvent};

use super::drawing::Drawn;
use crate::element::El;
use crate::state::Desk;

/// A press that lasts so long splits a leg.
const LONG_PRESS: Duration = Duration::from_millis(550);
/// A finger that has moved by this is no press any more, px.
const SLIPPED: f64 = 8.0;

/// What draws legs; free to copy.
#[derive(Clone, Copy)]
pub(super) struct Hand {
    pub(super) desk: Desk,
    /// What the drawing lies in.
    place: StoredValue<SendWrapper<El>>,
    pub(super) drawn: Memo<Option<Drawn>>,
    /// What the drawing keeps while a leg is drawn.
    held: RwSignal<Option<Held>>,
    pulled: RwSignal<Option<Pulled>>,
    pressed: StoredValue<Option<Pressed>>,
    /// Where a new trap would come, or that it is too far from the tube.
    carried: RwSignal<Option<Option<Length>>>,
    /// Keys have changed the leg whose handle has the focus.
    is_keyed: StoredValue<bool>,
    /// What those who listen are told.
    pub(super) told: RwSignal<String>,
}

/// What a hand holds.
#[derive(Clone, Copy, PartialEq)]
enum Grip {
    /// The end of a leg.
    Leg(usize, Pull),
    /// A trap.
    Trap(usize),
}

/// Something that is in a hand.
#[derive(Clone, Copy, PartialEq)]
struct Pulled {
    pointer: i32,
    grip: Grip,
    /// A second finger rests on the drawing.
    is_free: bool,
}

/// A finger on the tube that has not moved yet.
#[derive(Clone, Copy, PartialEq)]
struct Pressed {
    pointer: i32,
    at: Point,
}

impl Hand {
    pub(super) fn new(
        desk: Desk,
        place: &El,
        drawn: Memo<Option<Drawn>>,
        held: RwSignal<Option<Held>>,
    ) -> Self {
        Self {
            desk,
            place: StoredValue::new(SendWrapper::new(place.clone())),
            drawn,
            held,
            pulled: RwSignal::new(None),
            pressed: StoredValue::new(None),
            carried: RwSignal::new(None),
            is_keyed: StoredValue::new(false),
            told: RwSignal::new(String::new()),
        }
    }

    /// Looks at what can be taken hold of.
    pub(super) fn with<T>(self, look: impl FnOnce(&Grips) -> T) -> Option<T> {
        self.drawn
            .with(|drawn| drawn.as_ref().map(|drawn| look(&drawn.grips)))
    }

    /// How many legs there are.
    pub(super) fn count(self) -> usize {
        self.with(|grips| grips.handles.len()).unwrap_or(0)
    }

    /// Looks at it together with the answer that it was drawn from.
    pub(super) fn viewed<T>(self, look: impl FnOnce(&View<'_>) -> T) -> Option<T> {
        let answered = self.desk.drawn()?;
        Some(look(&answered.view(self.desk.tube(), self.desk.style())))
    }

    /// What is in the hand, in words, and where they stand.
    pub(super) fn read(self) -> Option<(Point, String)> {
        if let Some(Some(along)) = self.carried.get() {
            let at = self.with(|grips| grips.point(along))?;
            return Some((at, trap::named(along, self.desk.style())));
        }
        match self.pulled.get()?.grip {
            Grip::Leg(leg, _) => {
                let at = self.with(|grips| grips.handles.get(leg).map(|handle| handle.at));
                Some((at??, self.viewed(|view| in_words(view, leg))?))
            }
            Grip::Trap(trap) => {
                let at = self.with(|grips| grips.traps.get(trap).map(|trap| trap.at));
                Some((at??, self.viewed(|view| trap_name(view, trap))?))
            }
        }
    }

    pub(super) fn down(self, event: &PointerEvent) {
        let at = self.point(event);
        if let Some(mut pulled) = self.pulled.get_untracked() {
            pulled.is_free = pulled.pointer != event.pointer_id();
            self.pulled.set(Some(pulled));
            return;
        }
        if event.button() != 0 {
            return;
        }
        match untrack(|| self.with(|grips| grips.touched(at))).flatten() {
            Some(Touched::Handle(leg)) => {
                let pull = untrack(|| self.with(|grips| grips.pull(leg, at))).flatten();
                if let Some(pull) = pull {
                    self.desk.select(self.tube(), leg);
                    self.take(event, Grip::Leg(leg, pull), ".dw-handle", leg);
                }
            }
            Some(Touched::Trap(trap)) => self.take(event, Grip::Trap(trap), ".dw-trap", trap),
            Some(Touched::Place { .. }) => self.press(event.pointer_id(), at),
            None => {}
        }
    }

    pub(super) fn moved(self, event: &PointerEvent) {
        let at = self.point(event);
        let slipped = |pressed: &Pressed| SLIPPED < pressed.at.distance(at);
        if self.pressed.get_value().as_ref().is_some_and(slipped) {
            self.pressed.set_value(None);
        }
        let Some(pulled) = self.pulled.get_untracked() else {
            return;
        };
        if pulled.pointer != event.pointer_id() {
            return;
        }
        match pulled.grip {
            Grip::Leg(leg, pull) => {
                let is_free = pulled.is_free || event.shift_key();
                let style = untrack(|| self.desk.style());
                self.shape(leg, pull.shape(at, is_free, style));
            }
            Grip::Trap(trap) => {
                let along = untrack(|| self.with(|grips| grips.along(at).0));
                let (tube, along) = (self.tube(), along.unwrap_or_default());
                self.desk
                    .draw(|project| move_trap(project, tube, trap, along));
            }
        }
    }

    /// The finger or button is lifted.
    pub(super) fn up(self, event: &PointerEvent) {
        self.pressed.set_value(None);
        let Some(mut pulled) = self.pulled.get_untracked() else {
            return;
        };
        if pulled.pointer != event.pointer_id() {
            pulled.is_free = false;
            self.pulled.set(Some(pulled));
            return;
        }
        let words = untrack(|| self.read()).map(|(_, words)| words);
        self.told.set(words.unwrap_or_default());
        self.drop_it();
        self.desk.let_go();
    }

    /// As it was before: Escape, or the browser has taken the finger for something else.
    pub(super) fn give_up(self) -> bool {
        self.pressed.set_value(None);
        let is_pulling = self.pulled.with_untracked(Option::is_some);
        if is_pulling {
            self.drop_it();
            self.desk.put_back();
        }
        is_pulling
    }

    /// A press on the tube chooses the leg.
    pub(super) fn choose(self, event: &MouseEvent) {
        if let Some((leg, _)) = self.met(event) {
            self.desk.select(self.tube(), leg);
        }
    }

    /// Two presses on the tube split the leg there.
    pub(super) fn split(self, event: &MouseEvent) {
        if let Some((leg, from_start)) = self.met(event) {
            self.split_at(leg, from_start);
        }
    }

    /// The leg at a place along the tube that is shown, and how far from its start.
    pub(super) fn place(self, along: Option<Length>) -> Option<(usize, Length)> {
        let tube = self.tube();
        self.desk
            .with_untracked(|project| leg_at(project, tube, along?))
    }

    /// Splits a leg so far from its start.
    pub(super) fn split_at(self, leg: usize, from_start: Length) {
        let tube = self.tube();
        let place = snapped_place(from_start);
        self.act("Split", |project| split_leg_at(project, tube, leg, place));
        self.desk.select(tube, leg);
        self.tell(leg);
    }

    /// Changes the project in a step of its own.
    pub(super) fn act(self, about: &str, change: impl FnOnce(&mut OpenProject)) {
        self.is_keyed.set_value(false);
        self.desk.change(about, change);
    }

    /// Where a leg ends along the tube.
    pub(super) fn end_of(self, leg: usize) -> Option<Length> {
        let tube = self.tube();
        self.desk.with_untracked(|project| {
            let legs = route(project, tube)?.legs.iter().take(leg + 1);
            Some(legs.map(|leg| Length::metres(leg.length_m.value)).sum())
        })
    }

    /// Splits a leg in its middle.
    pub(super) fn split_middle(self, leg: usize) {
        let shape = self
            .desk
            .with_untracked(|project| leg_shape(project, self.tube(), leg));
        if let Some(shape) = shape {
            self.split_at(leg, shape.length * 0.5);
        }
    }

    /// Takes back what keys have done since the handle was reached; says whether there was anything.
    pub(super) fn take_back(self) -> bool {
        let is_keyed = self.is_keyed.get_value();
        if is_keyed {
            self.is_keyed.set_value(false);
            self.desk.take_back();
        }
        is_keyed
    }

    /// Keys have left a handle: what they did is a step of its own.
    pub(super) fn left(self) {
        self.is_keyed.set_value(false);
        self.desk.end_row();
    }

    /// Gives the keys to the handle of a leg.
    pub(super) fn focus(self, leg: usize) {
        self.place
            .with_value(|place| focus_one(place.dom(), ".dw-handle", leg));
    }

    /// Gives a leg another length and fall on the way.
    fn shape(self, leg: usize, shape: Shape) {
        let tube = self.tube();
        self.desk
            .draw(|project| shape_leg(project, tube, leg, shape));
    }

    /// One step by a key.
    pub(super) fn step(self, leg: usize, step: impl FnOnce(Shape) -> Shape) {
        let tube = self.tube();
        let before = self
            .desk
            .with_untracked(|project| leg_shape(project, tube, leg));
        self.desk.change_in_a_row("drawn by keys", |project| {
            if let Some(shape) = leg_shape(project, tube, leg) {
                shape_leg(project, tube, leg, step(shape));
            }
        });
        let after = self
            .desk
            .with_untracked(|project| leg_shape(project, tube, leg));
        if before != after {
            self.is_keyed.set_value(true);
        }
        self.tell(leg);
    }

    /// Says length and fall of a leg to those who listen.
    pub(super) fn tell(self, leg: usize) {
        let words = untrack(|| self.viewed(|view| in_words(view, leg)));
        self.told.set(words.unwrap_or_default());
    }

    pub(super) fn tube(self) -> TubeName {
        untrack(|| self.desk.tube())
    }

    fn take(self, event: &PointerEvent, grip: Grip, handles: &str, which: usize) {
        let catcher = event
            .current_target()
            .and_then(|element| element.dyn_into::<Element>().ok());
        if let Some(catcher) = catcher {
            // Without it the leg is let go at the edge, which is no harm.
            let _ = catcher.set_pointer_capture(event.pointer_id());
            focus_one(&catcher, handles, which);
        }
        event.prevent_default();
        self.desk.hold();
        self.held.set(untrack(|| self.with(|grips| grips.held)));
        self.pulled.set(Some(Pulled {
            pointer: event.pointer_id(),
            grip,
            is_free: false,
        }));
    }

    fn drop_it(self) {
        self.pulled.set(None);
        self.held.set(None);
    }

    fn press(self, pointer: i32, at: Point) {
        let pressed = Pressed { pointer, at };
        self.pressed.set_value(Some(pressed));
        set_timeout(
            move || {
                if self.pressed.try_get_value().flatten() == Some(pressed) {
                    self.pressed.set_value(None);
                    let met = untrack(|| self.with(|grips| grips.place(at))).flatten();
                    if let Some((leg, from_start)) = met.and_then(in_leg) {
                        self.split_at(leg, from_start);
                    }
                }
            },
            LONG_PRESS,
        );
    }

    /// The leg under an event, and how far from its start; none at a diamond.
    fn met(self, event: &MouseEvent) -> Option<(usize, Length)> {
        let at = self.point(event);
        let met = untrack(|| self.with(|grips| grips.touched(at)));
        met.flatten().and_then(in_leg)
    }

    fn point(self, event: &MouseEvent) -> Point {
        let rect = self
            .place
            .with_value(|place| place.dom().get_bounding_client_rect());
        Point::new(
            f64::from(event.client_x()) - rect.left(),
            f64::from(event.client_y()) - rect.top(),
        )
    }
}

fn in_leg(met: Touched) -> Option<(usize, Length)> {
    match met {
        Touched::Place {
            leg, from_start, ..
        } => Some((leg, from_start)),
        Touched::Handle(_) | Touched::Trap(_) => None,
    }
}

/// Keys go to what the hand has.
fn focus_one(catcher: &Element, handles: &str, which: usize) {
    let handles = catcher.query_selector_all(handles).ok();
    let handle = u32::try_from(which)
        .ok()
        .and_then(|which| handles.and_then(|handles| handles.item(which)));
    if let Some(handle) = handle.and_then(|handle| handle.dyn_into::<HtmlElement>().ok()) {
        let _ = handle.focus();
    }
}

/// Nothing of the browser's own comes of it.
pub(super) fn stop(event: &Event) {
    event.prevent_default();
    event.stop_propagation();
}
