//! Brings in what the commands need and a fresh machine may lack.

mod browser;
mod node;
mod program;
mod wasm_target;

pub(crate) use browser::Browser;
pub(crate) use node::{Node, wasm_opt};
pub(crate) use program::on_path;
pub(crate) use wasm_target::{WASM, wasm_target};
