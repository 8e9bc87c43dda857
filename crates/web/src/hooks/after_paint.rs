//! A value that follows another only after the page has been painted, so that what is computed from it never holds up typing.

use core::time::Duration;

use leptos::prelude::*;

/// Follows `source` one frame later; of values that come faster than frames only the last.
pub(crate) fn use_after_paint<T: Clone + Default + Send + Sync + 'static>(
    source: Signal<T>,
) -> ReadSignal<T> {
    let (value, set_value) = signal(T::default());
    let turn = StoredValue::new(0_u32);
    Effect::new(move |_| {
        let now = source.get();
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        request_animation_frame(move || {
            // After the frame's own callbacks comes the paint, and after that this.
            let then = move || {
                if turn.try_get_value() == Some(mine) {
                    set_value.set(now);
                }
            };
            set_timeout(then, Duration::ZERO);
        });
    });
    value
}
