//! What there is to say of what the browser keeps: that it keeps nothing, or what of it can't be used.

use super::parts::button;
use crate::element::{El, each, el};
use crate::hooks::save::save;
use crate::state::{SetAside, use_keeping};

/// Quiet sentences under the head of the page; none where all is well.
pub(crate) fn kept_notes() -> El {
    let keeping = use_keeping();
    let told = each(move || {
        let note = |sentence: String| el("p").class("dw-kept__note").child(sentence);
        keeping.told().sentences().into_iter().map(note).collect()
    });
    let aside = each(move || {
        keeping
            .told()
            .set_aside
            .into_iter()
            .map(set_aside)
            .collect()
    });
    el("div")
        .class("dw-kept")
        .attr("role", "status")
        .child(told)
        .child(aside)
}

fn set_aside(one: SetAside) -> El {
    let keeping = use_keeping();
    let SetAside { name, text, why } = one;
    let sentence =
        format!("Something kept by this browser can\u{2019}t be opened and is set aside. {why}");
    let take = move || {
        // A browser that refuses leaves it where it is.
        let _ = save("set-aside.txt", &text);
    };
    el("p")
        .class("dw-kept__note")
        .child(sentence)
        .child(button("dw-button", take).child("Save it as a file"))
        .child(button("dw-button", move || keeping.forget(name.clone())).child("Delete it"))
}
