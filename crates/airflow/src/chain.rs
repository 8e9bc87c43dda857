//! A section made ready for many trials: parts that the same flow meets are one.

use crate::fan::Running;
use crate::loss::Loss;
use crate::part::{End, Mouth, Opening, Part, Section};

/// A section as the search for its flow takes it.
///
/// A trial value is the mass flow into an open start; behind a closed one that into the first leak, or, where there is none,
/// the pressure with its sign turned. Each way more of it is more flow everywhere and less pressure everywhere, so that what is left at the end
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
        let first = FirstLeak::of(section);
        let start = first.map_or(section.start, |first| End::Open(first.mouth));
        let moving = section
            .parts
            .get(first.map_or(0, |first| first.place + 1)..);
        for part in moving.into_iter().flatten() {
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
            start,
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
        self.start == End::Closed || !self.links.iter().any(|link| matches!(link, Link::Fan))
    }

    pub(crate) fn starts_closed(&self) -> bool {
        self.start == End::Closed
    }

    /// The pressures that are balanced at an open end, all in all; none where the end is closed.
    pub(crate) fn pressure_at_work_pa(&self) -> Option<f64> {
        let End::Open(end) = &self.end else {
            return None;
        };
        let start_pa = match &self.start {
            End::Open(start) => start.pressure_pa.abs(),
            End::Closed => 0.0,
        };
        let fan_pa = self.fan.map_or(0.0, |fan| fan.pressure_pa(0.0).abs());
        let spaces = self.links.iter().map(|link| match link {
            Link::Leak(opening) => opening.space_pa.abs(),
            Link::Resist(loss) => loss.lift_pa.abs(),
            Link::Fan => 0.0,
        });
        Some(start_pa + end.pressure_pa.abs() + fan_pa + spaces.sum::<f64>())
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

/// How a section begins.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Begin {
    pub(crate) flow_kg_s: f64,
    pub(crate) pressure_pa: f64,
    /// Into the first leak behind a closed start. Nearly at rest it is known better than the pressure that it follows from.
    pub(crate) first_inflow_kg_s: Option<f64>,
}

impl Begin {
    /// At a trial value.
    pub(crate) fn of(section: &Section, value: f64, fan: Option<AtDetector<'_>>) -> Self {
        let Some(first) = FirstLeak::of(section) else {
            let (flow_kg_s, pressure_pa) = begin(&section.start, value);
            return Self {
                flow_kg_s,
                pressure_pa,
                first_inflow_kg_s: None,
            };
        };
        let still = section.parts.iter().take(first.place);
        let fallen_pa: f64 = still
            .map(|part| match part {
                Part::Piece(piece) => piece.loss.pressure_pa(0.0),
                Part::Fan => -fan.map_or(0.0, |fan| fan.pressure_pa(0.0)),
                _ => 0.0,
            })
            .sum();
        Self {
            flow_kg_s: 0.0,
            pressure_pa: first.mouth.behind_pa(value) + fallen_pa,
            first_inflow_kg_s: Some(value),
        }
    }
}

/// Behind a closed start nothing flows as far as the first leak, which is where the flow begins.
#[derive(Debug, Clone, Copy)]
struct FirstLeak {
    place: usize,
    mouth: Mouth,
}

impl FirstLeak {
    fn of(section: &Section) -> Option<Self> {
        if section.start != End::Closed {
            return None;
        }
        section.parts.iter().enumerate().find_map(|(place, part)| {
            let Part::Leak(opening) = part else {
                return None;
            };
            let mouth = opening.mouth()?;
            Some(Self { place, mouth })
        })
    }
}

fn begin(start: &End, value: f64) -> (f64, f64) {
    match start {
        End::Open(mouth) => (value, mouth.behind_pa(value)),
        End::Closed => (0.0, -value),
    }
}
