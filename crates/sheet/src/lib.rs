//! Sheets of paper as HTML text, made without a browser and without a clock: the site card and the service card with their printed code, and the calculation sheet.

mod calculation;
mod left_out;
mod markup;
mod paper;
mod printed_code;
mod service_card;
mod site_card;
mod standalone;
mod text_lines;
mod title_block;
mod told;

pub use calculation::{
    Calculation, CalculationOptions, Further, Worked, YearWorked, calculation,
    calculation_document, further,
};
pub use left_out::LeftOut;
pub use paper::Paper;
pub use printed_code::{CODE_MM, PrintedCode, QUIET_MODULES, SMALLEST_MODULE_MM, printed_code};
pub use service_card::{CauseTold, service_card};
pub use site_card::{CardOptions, SiteCard, document, site_card};
pub use standalone::drawing_alone;
pub use told::Told;
