//! The engine gives the same bits natively and in the browser.

#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::wasm_bindgen_test as test;

#[cfg(target_arch = "wasm32")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

#[test]
fn the_same_bits_here_as_on_the_building_machine() {
    assert_eq!(
        dewrun_same_bits::differing(),
        Vec::<String>::new(),
        "outcomes with other bits"
    );
}

#[test]
fn solved_cases_and_routes_are_among_them() {
    let with_bits = dewrun_same_bits::NATIVE
        .iter()
        .filter(|(_, bits)| bits.is_some());
    assert!(500 < with_bits.count(), "most outcomes have bits");
    let solved = dewrun_same_bits::NATIVE
        .iter()
        .filter(|(name, bits)| name.starts_with("steady-") && bits.is_some());
    assert_eq!(solved.count(), 40, "the random ones of the solved cases");
}
