//! What every reader of a result must know: this is a life-safety device.

use leptos::prelude::*;

const FIRST: &str = "Advice for competent people. The detector\u{2019}s listing and instructions, the local code and the authority having jurisdiction come first.";

const CAUTIONS: [&str; 7] = [
    "Impair a detector only under the site\u{2019}s impairment procedure.",
    "Test the function with smoke, or listed aerosol, at least once a year; a magnet or an electronic test does not replace it. Smoke put in at the detector\u{2019}s own test opening does not prove the tube: check the airflow too, and smoke at the duct end.",
    "After any change to tube, trap or filter measure the airflow again and test again.",
    "Never widen an airflow limit to cure water; limits stay inside the device\u{2019}s listed range.",
    "Tube, insulation and heating cable in an air-handling space are of a kind that the code allows there; penetrations of fire barriers are sealed; the exhaust goes back to the same duct.",
    "A drain valve under suction draws air in when it is opened: fan off under the impairment procedure, or a pot between two valves.",
    "Work at height, rotating plant, electric heat tracing (residual-current protection, surface limits) and ice need the usual care.",
];

const OUT_OF_SCOPE: &str = "Dewrun does not say whether a duct needs a detector, how smoke moves in the duct, how the sensor sees it, or how the alarm panel is programmed. Nothing you enter leaves this device.";

/// The foot of the page.
#[component]
pub(crate) fn Cautions() -> impl IntoView {
    let items = CAUTIONS.map(|caution| view! { <li>{caution}</li> });
    view! {
        <footer class="dw-cautions" aria-label="Cautions">
            <p><b>{FIRST}</b></p>
            <ul class="dw-cautions__list">{items.into_iter().collect_view()}</ul>
            <p>{OUT_OF_SCOPE}</p>
        </footer>
    }
}
