//! Every figure has an entry that leads down to what was entered, and its values are those of the answer.

mod inputs;
#[path = "../plain/mod.rs"]
mod plain;
mod sample;
mod table;
mod values;
