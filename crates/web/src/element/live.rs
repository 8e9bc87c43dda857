//! What follows signals for as long as the part of the page lives that made it.

use leptos::prelude::*;
use leptos::reactive::effect::RenderEffect;
use send_wrapper::SendWrapper;

/// Does something now, and again whenever a signal that it read changes.
pub(super) fn follow(act: impl FnMut() + 'static) {
    boxed(Box::new(act));
}

/// The same for what is boxed, so that it stands in the program once.
fn boxed(mut act: Box<dyn FnMut()>) {
    let effect = SendWrapper::new(RenderEffect::new(move |_: Option<()>| act()));
    on_cleanup(move || drop(effect));
}
