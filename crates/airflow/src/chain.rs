//! A section made ready for many trials: parts that the same flow meets are one.

use crate::fan::Running;
use crate::loss::Loss;
use crate::part::{End, Opening, Part, Section};

/// A section as the search for its flow takes it.
///
/// A trial value is the mass flow into an open start, or the pressure at a closed start with its sign turned.
/// Either way more of it is more flow everywhere and less pressure everywhere, so that what is left at the end
/// falls with it as long as the fan's pressure does not rise.
#[derive(Debug)]
pub(crate) struct Chain<'a> {
    start: End,
    links: Vec<Link>,
    end: End,
    fan: Option<AtDetector<'a>>,
}

/// The fan in the air of the detector.
#[derive(Debug, Clone, Copy)]
pub(crate) struct AtDetector<'a> {
    pub(crate) fan: Running<'a>,
    pub(crate) density_kg_m3: f64,
}

impl AtDetector<'_> {
    pub(crate) fn pressure_pa(&self, flow_kg_s: f64) -> f64 {
        self.fan.pressure_pa(flow_kg_s / self.density_kg_m3)
    }
}

#[derive(Debug)]
enum Link {
    Resist(Loss),
    Leak(Opening),
    Fan,
}

/// What comes of a trial.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Trial {
    /// Pressure left at an open end (Pa), or flow into a closed one with its sign turned [kg/s].
    pub(crate) left: f64,
    /// Mass flow through the fan [kg/s].
    pub(crate) fan_kg_s: f64,
}

impl<'a> Chain<'a> {
    pub(crate) fn of(section: &Section, fan: Option<AtDetector<'a>>) -> Self {
        let mut links: Vec<Link> = Vec::with_capacity(8);
        for part in &section.parts {
            match part {
                Part::Piece(piece) => match links.last_mut() {
                    Some(Link::Resist(loss)) => loss.join(&piece.loss),
                    _ => links.push(Link::Resist(piece.loss.clone())),
                },
                Part::Leak(opening) => links.push(Link::Leak(*opening)),
                Part::Fan => links.push(Link::Fan),
                Part::Place(_) | Part::Break(..) => {}
            }
        }
        Self {
            start: section.start,
            links,
            end: section.end,
            fan,
        }
    }

    /// Nothing can flow: both ends are closed and there is no leak.
    pub(crate) fn is_sealed(&self) -> bool {
        self.start == End::Closed && self.end == End::Closed && !self.leaks()
    }

    /// The trial value is itself the flow through the fan.
    pub(crate) fn begins_with_the_flow(&self) -> bool {
        let before_fan = self
            .links
            .iter()
            .take_while(|link| !matches!(link, Link::Fan));
        self.start != End::Closed
            && !before_fan
                .into_iter()
                .any(|link| matches!(link, Link::Leak(_)))
    }

    /// Nothing flows through the fan, whatever the trial value.
    pub(crate) fn is_still(&self) -> bool {
        let before_fan = self
            .links
            .iter()
            .take_while(|link| !matches!(link, Link::Fan));
        self.start == End::Closed
            && !before_fan
                .into_iter()
                .any(|link| matches!(link, Link::Leak(_)))
    }

    pub(crate) fn starts_closed(&self) -> bool {
        self.start == End::Closed
    }

    pub(crate) fn try_out(&self, value: f64) -> Trial {
        let (mut flow, mut pressure) = begin(&self.start, value);
        let mut fan_kg_s = 0.0;
        for link in &self.links {
            match link {
                Link::Resist(loss) => pressure -= loss.pressure_pa(flow),
                Link::Leak(opening) => flow += opening.inflow_kg_s(pressure),
                Link::Fan => {
                    fan_kg_s = flow;
                    pressure += self.fan.map_or(0.0, |fan| fan.pressure_pa(flow));
                }
            }
        }
        let left = match &self.end {
            End::Open(mouth) => pressure - mouth.behind_pa(-flow),
            End::Closed => -flow,
        };
        Trial { left, fan_kg_s }
    }

    fn leaks(&self) -> bool {
        self.links.iter().any(|link| matches!(link, Link::Leak(_)))
    }
}

/// Flow and pressure behind a section's start for a trial value.
pub(crate) fn begin(start: &End, value: f64) -> (f64, f64) {
    match start {
        End::Open(mouth) => (value, mouth.behind_pa(value)),
        End::Closed => (0.0, -value),
    }
}
