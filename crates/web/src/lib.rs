//! The page: a run is entered, evaluated at each keystroke and drawn.
//!
//! One signal holds the project; everything shown is derived from it by memos.
//! The outer world (address, size of the window) is reached by the hooks only.

mod app;
mod components;
mod element;
mod hooks;
mod state;

pub use app::{page, start};
pub use components::text_field;
pub use element::{El, Root};
pub use state::Desk;
