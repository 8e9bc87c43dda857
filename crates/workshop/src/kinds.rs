//! The kinds of question and how each is answered.

mod airflow;
mod answer;
mod calculation;
mod dew_square;
mod doubt;
mod elevation;
mod entries;
mod opened;
mod remedies;
mod sheets;
mod site_card;
mod staying_dry;
mod stopwatch;
mod visits;
mod year_of;

use dewrun_desk::Work;
use dewrun_drawing::svg;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::job::Job;

/// What a question comes to.
pub(crate) enum Found {
    /// Its answer.
    Answer(Answer),
    /// Long work that leads to it.
    Job(Box<dyn Job>),
}

/// Answers a question of a kind, or begins the work that does.
///
/// # Errors
/// Why there is no answer, as a sentence.
pub(crate) fn found(work: Work, asked: &Asked<'_>) -> Result<Found, String> {
    Ok(match work {
        Work::StayingDry => Found::Job(staying_dry::begun(asked)),
        Work::StayingDryTold => text(staying_dry::told(asked)),
        Work::DryBoundary => Found::Answer(dew_square::boundary(asked)?),
        Work::DewSquare => text(dew_square::drawn(asked)?),
        Work::DewSquareTables => text(dew_square::tables(asked)?),
        Work::Doubt => Found::Job(doubt::begun(asked)),
        Work::Sentence => text(answer::sentence(asked)?),
        Work::PlainSentence => text(answer::plain_sentence(asked)?),
        Work::Beside => text(answer::beside(asked)?),
        Work::RestsOn => text(answer::rests_on(asked)),
        Work::More => text(answer::more(asked)?),
        Work::Opened => text(opened::html(asked)?),
        Work::Elevation => text(svg(&elevation::drawn(asked)?.scene)),
        Work::ElevationNote => text(elevation::drawn(asked)?.scale_note.clone()),
        Work::ElevationPlaces => Found::Answer(Answer::Numbers(elevation::drawn(asked)?.places())),
        Work::Airflow => text(airflow::part(asked, airflow::sentence)?),
        Work::AirflowCharts => text(airflow::part(asked, airflow::charts)?),
        Work::AirflowLimits => text(airflow::part(asked, airflow::judged)?),
        Work::AirflowTables => text(airflow::part(asked, airflow::as_tables)?),
        Work::Remedies => text(remedies::rows(asked)?),
        Work::Remedied => text(remedies::made(asked)?),
        Work::Sheets => text(sheets::html(asked)?),
        Work::Calculation => text(calculation::body(asked)?),
        Work::CalculationDocument => text(calculation::whole_document(asked)?),
        Work::SiteCard => text(site_card::body(asked)?),
        Work::SiteDocument => text(site_card::whole_document(asked)?),
        Work::ServiceCard => text(site_card::service_body(asked)?),
        Work::ServiceDocument => text(site_card::service_document(asked)?),
        Work::VisitTold => text(visits::told(asked)?),
        Work::WithVisit => text(visits::with_visit(asked)?),
        Work::Stopwatch => text(stopwatch::told(asked)?),
        Work::YearOf => text(year_of::told(asked)?),
        Work::Entries => text(entries::fields(asked)),
        Work::Entered => text(entries::entered(asked)?),
        Work::YearEntries => text(entries::year_fields(asked)),
        Work::YearEntered => text(entries::year_entered(asked)?),
        Work::Target => text(entries::target(asked)),
        Work::TargetEntered => text(entries::target_entered(asked)?),
    })
}

const fn text(text: String) -> Found {
    Found::Answer(Answer::Text(text))
}
