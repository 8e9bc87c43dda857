//! The project on the desk, as a person edits it: what its fields hold, what can be picked, what can be undone and what is shown of it.
//!
//! Nothing here knows a browser or a signal, so that all of it is tested natively.

mod answered;
mod edit;
mod entries;
mod examples;
mod fault;
mod field;
mod first_visit;
mod history;
mod humidity;
mod kept;
mod kind;
mod legs;
mod levelling;
mod notes;
mod open_project;
mod pick;
mod record;
mod remedies;
mod rows;
mod runs;
mod shown;
mod stage;
mod stopwatch;
mod store;
mod target;
mod traps;
mod visit_form;
mod ways;
mod work;
mod year_entries;

pub use answered::Answered;
pub use edit::Edit;
pub use entries::{enter, entries_html, set_limits};
pub use examples::{EXAMPLES, Example, example};
pub use fault::Fault;
pub use field::{Blank, Field, FieldShown, Refused, TubeName, leg_number, leg_way, route};
pub use first_visit::{is_above, is_side_assumed, project as first_project, put_above};
pub use history::{History, Step};
pub use humidity::{HumidOf, HumidityKind};
pub use kept::Kept;
pub use legs::{
    add_leg, delete_leg, leg_at, leg_shape, move_leg, shape_leg, split_leg, split_leg_at,
};
pub use levelling::{Levelling, measured_fall, measurer};
pub use notes::{note_html, notes_html};
pub use open_project::OpenProject;
pub use pick::{Pick, PickOption, same_tube_everywhere};
pub use record::{QUICK, Record, Unkept, read_record, record_text};
pub use remedies::make_changes;
pub use runs::{add_run, add_variant, delete_run, layouts, rename_project, rename_run, runs};
pub use shown::{Failure, Shown};
pub use stage::Stage;
pub use stopwatch::Stopwatch;
pub use store::Store;
pub use target::{enter_target, target_html};
pub use traps::{add_trap, delete_trap, move_trap, trap_places};
pub use visit_form::{VisitField, VisitPlaces, filter_at, occasion, visit_of, water_g};
pub use ways::{Question, Way, humid_with, passing, weathers};
pub use work::{
    ElevationAsked, SquareAsked, Work, boundary_as_numbers, boundary_of, count_as_number, count_of,
    limits_as_numbers, limits_of, project_text, style_as_numbers, style_of,
};
pub use year_entries::{enter_year, year_entries_html};
