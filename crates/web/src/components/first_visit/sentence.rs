//! The sentence with blanks.

use leptos::prelude::*;

use crate::components::choice::{Choice, ChoiceOption};
use crate::components::fault_note::FaultNote;
use crate::components::parts::{flag, words};
use crate::components::text_field::TextField;
use crate::state::{Blank, Field, is_above, is_side_assumed, put_above, use_desk};

/// The words before each blank, and the blank.
const BLANKS: [(&str, Field); 7] = [
    ("Duct air of ", Field::DuctFirst),
    (" with a dew point of ", Field::DuctSecond),
    (" is drawn at ", Field::Flow),
    (" through ", Field::First(Blank::Length)),
    (" of ", Field::First(Blank::Bore)),
    (" bare tube through a space at ", Field::SpaceTemperature(0)),
    (", to a detector ", Field::First(Blank::Height)),
];

/// The sentence, and under it what can't be used of it.
#[component]
pub(super) fn Sentence() -> impl IntoView {
    let desk = use_desk();
    let blank = move |(before, field): (&'static str, Field)| {
        let unit = words(move || {
            let shown = desk.with(|project| field.show(project, desk.style()));
            shown.map_or_else(String::new, |(_, unit)| format!("\u{a0}{unit}"))
        });
        view! {
            {before}
            <span class="dw-unbroken"><TextField field=field in_table=true />{unit}</span>
        }
        .into_any()
    };
    let notes = BLANKS.map(|(_, field)| view! { <FaultNote field=field /> }.into_any());
    view! {
        <div class="dw-sentence" role="group" aria-label="The sentence to fill in">
            {BLANKS.map(blank).into_iter().collect_view()}
            " "
            <Side />
            " the duct."
        </div>
        <div>{notes.into_iter().collect_view()}</div>
    }
    .into_any()
}

/// Below or above.
#[component]
fn Side() -> impl IntoView {
    const SIDES: [&str; 2] = ["below", "above"];
    let desk = use_desk();
    let chosen = words(move || {
        let above = desk.with(is_above).unwrap_or_default();
        SIDES[usize::from(above)].to_owned()
    });
    let options = Signal::derive(|| {
        let option = |side: &str| ChoiceOption::new(side.to_owned(), side.to_owned());
        SIDES.map(option).to_vec()
    });
    let choose = Callback::new(move |side: String| {
        desk.change("side", |project| {
            // A detector level with the duct is on neither side.
            let _ = put_above(project, side == SIDES[1]);
        });
    });
    let is_assumed = flag(move || desk.with(is_side_assumed));
    view! {
        <span class="dw-sentence__side" class=("dw-sentence__side--assumed", is_assumed)>
            <Choice
                id="side-of-detector".to_owned()
                name="Side"
                whose=words(|| " of the duct on which the detector is".to_owned())
                options=options
                chosen=chosen
                choose=choose
                in_table=true
            />
        </span>
    }
}
