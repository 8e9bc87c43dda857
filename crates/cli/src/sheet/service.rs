//! `dewrun sheet service`: the service card, with the cause where weather is known.

use std::io::{self, Write};

use dewrun_document::Project;
use dewrun_drawing::troubles::{Found, in_words};
use dewrun_sheet::{CauseTold, service_card};

use super::cards;
use crate::args::ServiceSheet;
use crate::exit::Ending;
use crate::project::{complain_of, load_packed, name_of};
use crate::troubles::{Asked, found_of, log_of};
use crate::weather::given;
use crate::year::files::Files;

/// The cards of all runs asked for; a log that can't be read is said on the standard error.
pub(super) fn service(args: &ServiceSheet, out: &mut impl Write) -> io::Result<Ending> {
    let log = match args.log.as_deref().map(log_of).transpose() {
        Ok(log) => log,
        Err(error) => {
            eprintln!("dewrun: {error}");
            return Ok(Ending::Failed);
        }
    };
    let name = name_of(&args.card.project);
    // Read once: the standard input is there no second time.
    let (project, files) = match load_packed(&args.card.project) {
        Ok(packed) => (Ok(packed.project), packed.files),
        Err(error) => (Err(error), Vec::new()),
    };
    let said = match given(&args.said, args.card.units) {
        Ok(said) => said,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    let files = Files::new(&args.card.project, files).with(args.weather.as_deref(), said);
    let cause = |project: &Project, position: usize| {
        let has_weather = project.weather.is_some() || args.weather.is_some();
        if !has_weather {
            return CauseTold::default();
        }
        let asked = Asked {
            said: None,
            members: args.members,
            log: log.as_deref(),
        };
        match found_of(&asked, (project, position), &files) {
            Ok((found, _)) if found.is_looked_for(&project.note) => {
                CauseTold::of_text(&in_words(&Found {
                    log: found.log.as_ref(),
                    ranking: &found.ranking,
                    spans: &found.spans,
                    checks: &found.checks,
                    low_point: found.low_point,
                    style: args.card.units.style(),
                }))
            }
            Ok(_) => CauseTold::default(),
            Err(error) => {
                complain_of(&name, &error);
                CauseTold::default()
            }
        }
    };
    cards(&args.card, project, out, |told, options| {
        let cause = cause(told.project, told.run_index);
        service_card(told, &cause, options)
    })
}
