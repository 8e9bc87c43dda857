//! The page: a run is entered, evaluated at each keystroke and drawn.
//!
//! One signal holds the project; everything shown is derived from it by memos.
//! The outer world (address, size of the window) is reached by the hooks only.

#[allow(
    unreachable_pub,
    reason = "the component macro makes the props of each component public"
)]
mod app;
#[allow(
    unreachable_pub,
    reason = "the component macro makes the props of each component public"
)]
mod components;
mod examples;
mod hooks;
mod state;

pub use app::{App, start};
pub use components::TextField;
pub use examples::{EXAMPLES, Example, example};
pub use state::{Blank, Desk, Field, TubeName};
