//! The engine's bits on the machine that built this, and here.

mod bits;

/// What the building machine computed: name and bits of each outcome.
pub const NATIVE: &[(&str, Option<u64>)] = &include!(concat!(env!("OUT_DIR"), "/native.rs"));

/// Names of the outcomes whose bits differ here.
#[must_use]
pub fn differing() -> Vec<String> {
    let here = bits::all();
    let others = NATIVE
        .iter()
        .zip(&here)
        .filter(|((name, native), (also, bits))| name != also || native != bits);
    let mut names: Vec<String> = others.map(|(_, (name, _))| name.clone()).collect();
    if NATIVE.len() != here.len() {
        names.push(format!(
            "{} outcomes there, {} here",
            NATIVE.len(),
            here.len()
        ));
    }
    names
}
