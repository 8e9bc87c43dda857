//! The section Airflow: what comes through, where the pressure goes, and whether the limits would notice.

mod budget;
mod head;
mod judged;
mod limits;
mod path;
mod put;
mod rows;
mod strip;
mod tables;
mod transport;

use dewrun_advice::OverDuct;
use dewrun_quantity::Style;
use dewrun_run::{Run, Whole};

pub use head::head;
pub use limits::limits;
pub use path::path;
pub use tables::tables;

use crate::frame::Room;
use crate::scene::Scene;
use crate::svg::{escaped, svg};

/// What the section shows.
#[derive(Debug, Clone, Copy)]
pub struct Shown<'a> {
    /// The run.
    pub run: &'a Run,
    /// What water and air do in it.
    pub whole: &'a Whole,
    /// How numbers are shown.
    pub style: Style,
    /// The limits under the handles, low and high, as parts of the reading as fitted; none where nothing flows.
    pub limits: Option<[f64; 2]>,
    /// The limits that are set now.
    pub set: Option<[f64; 2]>,
    /// What becomes of faults over the duct pressures that are plausible; empty where the pressure is known.
    pub over_duct: &'a [OverDuct],
}

impl<'a> Shown<'a> {
    /// What is shown of a run under the limits that are set, or under those recommended.
    #[must_use]
    pub fn new(run: &'a Run, whole: &'a Whole, style: Style) -> Self {
        let pair = |limits: dewrun_run::told::AirflowLimits| [limits.low(), limits.high()];
        let set = whole.airflow.given.as_ref().map(|given| pair(given.limits));
        let recommended = whole.airflow.recommended.map(|(limits, ..)| pair(limits));
        Self {
            run,
            whole,
            style,
            limits: set.or(recommended),
            set,
            over_duct: &[],
        }
    }

    /// The limits that are advised.
    fn advised(&self) -> Option<[f64; 2]> {
        let found = self.whole.airflow.recommended;
        found.map(|(limits, ..)| [limits.low(), limits.high()])
    }
}

/// A chart under its name.
fn chart(name: &str, what: &str, scene: &Scene) -> String {
    let (name, what) = (escaped(name), escaped(what));
    format!(
        "<figure class=\"dw-chart\"><figcaption class=\"dw-chart__name\"><b>{name}</b> {what}</figcaption>{}</figure>",
        svg(scene)
    )
}

/// An empty chart.
fn blank(prefix: &'static str, room: Room, height: f64) -> Scene {
    Scene {
        prefix,
        width: room.width,
        height,
        title: String::new(),
        description: String::new(),
        items: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use dewrun_run::{evaluate, water_and_air};
    use dewrun_tests::{installations, routes};

    use super::*;
    use crate::geometry::Rect;
    use crate::scene::Item;

    /// All that is written in a chart and what it covers.
    fn written(scene: &Scene, scale: f64) -> Vec<(String, Rect)> {
        let balloons: Vec<Rect> = scene
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Circle {
                    class: "dw-d-balloon",
                    centre,
                    radius,
                } => Some(Rect::new(centre.x, centre.y, 0.0, 0.0).grown(*radius)),
                _ => None,
            })
            .collect();
        let texts = scene.items.iter().filter_map(|item| match item {
            Item::Text(text) => Some((text.words.clone(), text.rect(scale))),
            _ => None,
        });
        texts
            .filter(|(_, rect)| !balloons.iter().any(|balloon| balloon.holds(rect)))
            .collect()
    }

    /// The first text that leaves the chart or lies over another.
    fn fault(scene: &Scene, scale: f64) -> Option<String> {
        let written = written(scene, scale);
        let bounds = scene.bounds().grown(0.5);
        let outside = written.iter().find(|(_, rect)| !bounds.holds(rect));
        if let Some((words, rect)) = outside {
            return Some(format!("{}: `{words}` at {rect:?} leaves", scene.prefix));
        }
        let mut all = written.iter().enumerate();
        all.find_map(|(place, (words, rect))| {
            let mut others = written.iter().skip(place + 1);
            let (other, at) = others.find(|(_, other)| rect.overlaps(&other.grown(-0.5)))?;
            Some(format!(
                "{}: `{words}` at {rect:?} lies over `{other}` at {at:?}",
                scene.prefix
            ))
        })
    }

    #[test]
    fn nothing_lies_over_anything_in_any_chart() {
        let (mut answered, mut marked) = (0, 0);
        for seed in 0..300 {
            let run = routes::route(seed);
            let built = installations::installation(&run, seed);
            let Ok(outcome) = evaluate(&run) else {
                continue;
            };
            let Ok(whole) = water_and_air(&run, &built, &outcome.value) else {
                continue;
            };
            answered += 1;
            let mut shown = Shown::new(&run, &whole, Style::default());
            shown.set = Some([0.7, 1.3]);
            shown.limits = [shown.limits, Some([0.65, 1.25]), Some([0.9, 0.95])][answered % 3];
            for (width, text) in [(328.0, 1.0), (752.0, 1.0), (1392.0, 1.0), (1392.0, 2.0)] {
                let room = Room { width, text };
                let scenes = [
                    path::scene(&shown, room),
                    budget::draw(&shown, room),
                    limits::drawn(&shown, room).1,
                ];
                let band = transport::draw(&shown, room);
                for scene in scenes.iter().chain(&band) {
                    let fault = fault(scene, text);
                    assert!(fault.is_none(), "run {seed} at {width} px: {fault:?}");
                    marked += usize::from(2 < scene.items.len());
                }
            }
        }
        assert!(
            200 < answered && 3000 < marked,
            "of 300 runs {answered} are answered, {marked} charts hold something"
        );
    }
}
