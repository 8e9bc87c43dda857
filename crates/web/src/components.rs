//! The components of the page, one a file, each with its style sheet beside it.

mod air;
mod answer_band;
mod cautions;
mod choice;
mod drawing;
mod fault_note;
mod humidity_kind;
mod leg_actions;
mod leg_card;
mod leg_row;
mod legs;
mod legs_table;
mod open_file;
mod origins;
mod page_head;
mod parts;
mod route;
mod section_head;
mod sensor;
mod space_of_leg;
mod spaces_table;
mod stale_note;
mod text_field;
mod toggle;
mod wordmark;
mod worked_cases;

pub(crate) use air::Air;
pub(crate) use answer_band::AnswerBand;
pub(crate) use cautions::Cautions;
pub(crate) use legs::Legs;
pub(crate) use open_file::RefusedFile;
pub(crate) use page_head::PageHead;
pub(crate) use route::Route;
pub(crate) use sensor::Sensor;
pub use text_field::TextField;
pub(crate) use worked_cases::WorkedCases;
