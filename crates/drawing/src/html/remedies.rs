//! What to do: remedies with what is left before and after each, and a button that applies it.

use dewrun_advice::{Change, Left, Remedy, RemedyKind};
use dewrun_quantity::{Length, Style};
use dewrun_run::{Drain, Run, Tube, WET_TUBE_G_H};

use super::element;
use crate::geometry::Rect;
use crate::scene::Scene;
use crate::svg::overlay;
use crate::wording;

/// Width and height of a bar, px.
const BAR: (f64, f64) = (96.0, 18.0);
/// Less than this stands nowhere, g.
const NOTHING_G: f64 = 1.0;

/// The rows, each with a button that has `data-remedy`; nothing where none helps.
#[must_use]
pub fn remedies(run: &Run, remedies: &[Remedy], style: Style) -> String {
    let most = remedies
        .iter()
        .map(|one| {
            one.before
                .standing
                .to_grams()
                .max(one.after.standing.to_grams())
        })
        .fold(0.0, f64::max);
    let row = |(place, remedy): (usize, &Remedy)| {
        let what = change_words(run, remedy.kind, &remedy.changes, style);
        let what = element("b", "", &what);
        let left = element("span", " class=\"dw-remedy__left\"", &left(remedy, style));
        let solid = if place == 0 { " dw-button--solid" } else { "" };
        format!(
            "<li class=\"dw-remedy\"><span class=\"dw-remedy__what\">{what}</span>{}{left}<button type=\"button\" class=\"dw-button{solid}\" data-remedy=\"{place}\">Apply<span class=\"dw-spoken\"> remedy {}</span></button></li>",
            bar(
                remedy.after.standing.to_grams(),
                remedy.before.standing.to_grams(),
                most
            ),
            place + 1
        )
    };
    let rows: String = remedies.iter().enumerate().map(row).collect();
    if rows.is_empty() {
        return rows;
    }
    format!("<ol class=\"dw-remedies\" aria-label=\"What to do\">{rows}</ol>")
}

/// What a remedy changes, and what is left with it, in words.
#[must_use]
pub fn remedy_words(run: &Run, remedy: &Remedy, style: Style) -> [String; 2] {
    let what = change_words(run, remedy.kind, &remedy.changes, style);
    [what, left(remedy, style)]
}

/// How much is left: before dashed, after solid, all rows to one scale; nothing where even the most is hardly any.
pub(crate) fn bar(after: f64, before: f64, most: f64) -> String {
    if most < NOTHING_G {
        return "<span class=\"dw-remedy__bar\"></span>".to_owned();
    }
    let mut scene = Scene::bare("remedy", BAR.0, BAR.1);
    let long = |amount: f64| (BAR.0 - 2.0) * amount / most;
    let after = Rect::new(1.0, 3.0, long(after), BAR.1 - 6.0);
    scene.rect("dw-s-water", &after);
    let before = Rect::new(1.0, 2.0, long(before), BAR.1 - 4.0);
    scene.rect("dw-d-planned", &before);
    scene.line(
        "dw-d-seen",
        crate::geometry::Point::new(1.0, 0.0),
        crate::geometry::Point::new(1.0, BAR.1),
    );
    format!("<span class=\"dw-remedy__bar\">{}</span>", overlay(&scene))
}

/// What changes of geometry of one kind do, as a sentence without a full stop.
pub(crate) fn change_words(
    run: &Run,
    kind: RemedyKind,
    changes: &[Change],
    style: Style,
) -> String {
    let told: Vec<String> = match kind {
        RemedyKind::Traps => changes.iter().map(|one| trap(one, style)).collect(),
        RemedyKind::Hangers => changes.iter().map(|one| hangers(run, one, style)).collect(),
        RemedyKind::Regrade => return regrade(run, changes, style),
    };
    wording::capital(&told.join("; "))
}

fn trap(change: &Change, style: Style) -> String {
    let Change::Trap {
        tube,
        at,
        drain,
        capacity,
        seal,
        outlet_drop,
    } = change
    else {
        return String::new();
    };
    let place = wording::metres(at.to_metres(), style);
    let how = match drain {
        Drain::ByItself => format!(
            "draining itself, outlet {} below the tube, seal {}",
            wording::at_least(*outlet_drop, style),
            wording::at_least(*seal, style)
        ),
        Drain::ByHand | Drain::OpenStub => {
            format!(
                "{}, emptied by hand",
                wording::volume(capacity.to_grams(), style)
            )
        }
    };
    format!("put a trap at {place}{}: {how}", of_exhaust(*tube))
}

fn hangers(run: &Run, change: &Change, style: Style) -> String {
    let Change::Hangers { tube, leg, spacing } = change else {
        return String::new();
    };
    let spacing = wording::metres(spacing.to_metres(), style);
    format!("hang leg {} every {spacing}", number(run, *tube, *leg))
}

fn regrade(run: &Run, changes: &[Change], style: Style) -> String {
    let mut told = Vec::new();
    for change in changes {
        let Change::Leg {
            tube,
            leg,
            rise,
            length,
        } = change
        else {
            continue;
        };
        let number = number(run, *tube, *leg);
        let legs = match tube {
            Tube::Intake => &run.intake,
            Tube::Exhaust => &run.exhaust,
        };
        let before = legs.get(*leg).map_or(Length::ZERO, |leg| leg.length);
        if *length == before {
            let (l, r) = (length.to_metres(), rise.to_metres());
            let across = ((l - r) * (l + r)).max(0.0).sqrt();
            let one_in =
                dewrun_quantity::format::significant(across / r.abs().max(1e-9), 2, 0, style.mark);
            let way = if r < 0.0 {
                "falling with the air"
            } else {
                "falling against the air"
            };
            told.push(format!("regrade leg {number} to 1:{one_in}, {way}"));
        } else {
            let longer = *length - before;
            let size = wording::metres(longer.to_metres().abs(), style);
            let way = if longer < Length::ZERO {
                "shorter"
            } else {
                "longer"
            };
            told.push(format!("leg {number} gets {size} {way}"));
        }
    }
    wording::capital(&told.join("; "))
}

/// What is left with it, in words.
fn left(remedy: &Remedy, style: Style) -> String {
    let (before, after) = (&remedy.before, &remedy.after);
    let mut told = Vec::new();
    let volume = |left: &Left| wording::volume(left.standing.to_grams(), style);
    let stands = |left: &Left| NOTHING_G <= left.standing.to_grams();
    match (stands(before), stands(after)) {
        (true, false) => told.push(format!("nothing stands, not {}", volume(before))),
        (true, true) => told.push(format!("{} stand, not {}", volume(after), volume(before))),
        _ => {}
    }
    match (before.sealed, after.sealed) {
        (Some(_), None) => told.push("never sealed".to_owned()),
        (_, Some(time)) => told.push(format!("sealed after {}", wording::time(time, style))),
        _ => {}
    }
    let runs_in = |left: &Left| WET_TUBE_G_H < left.into_detector.to_grams_per_hour();
    if runs_in(before) && !runs_in(after) {
        told.push("no water into the detector".to_owned());
    } else if runs_in(after) {
        let rate = wording::water(after.into_detector, style);
        told.push(format!("{rate} into the detector"));
    }
    if after.sagging < before.sagging {
        told.push(match after.sagging {
            0 => "no leg sags".to_owned(),
            some => format!("{some} legs still sag"),
        });
    }
    if WET_TUBE_G_H < after.into_traps.to_grams_per_hour() {
        let rate = wording::water(after.into_traps, style);
        told.push(format!("{rate} drained"));
    }
    if after.blind.is_some() {
        told.push("may still be blind".to_owned());
    }
    told.join("; ")
}

fn number(run: &Run, tube: Tube, leg: usize) -> usize {
    match tube {
        Tube::Intake => leg + 1,
        Tube::Exhaust => run.intake.len() + leg + 1,
    }
}

const fn of_exhaust(tube: Tube) -> &'static str {
    match tube {
        Tube::Intake => "",
        Tube::Exhaust => " of the exhaust tube",
    }
}
