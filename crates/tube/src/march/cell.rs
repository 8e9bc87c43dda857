//! One cell: the air at its end, and what the tube exchanged in between.
//!
//! The exchange is linear in the air about the middle of the cell; the linear decay is solved exactly,
//! and what the exchange departs from the line at both ends corrects its mean.
//! The weights are Simpson's in the cube root of the distance, in which the film is smooth up to the inlet, where it is singular.
//! The end state follows from the mean exchange, so that water and energy close in every cell.

use dewrun_numeric::fast::fast_ln;
use dewrun_numeric::fast_cbrt as cbrt;

use super::air::{Air, Content};
use super::fluxes::Fluxes;
use super::phi::{Matrix, Phi2};
use super::regime::Regime;
use crate::wall_balance::{Balance, Wall};

/// The air at one place, with everything that is exchanged there.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Node {
    pub(crate) x_m: f64,
    pub(crate) content: Content,
    pub(crate) air: Air,
    pub(crate) balance: Balance,
}

/// A cell that was tried.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cell {
    /// Mean of what was exchanged, per metre.
    pub(crate) mean: Fluxes,
    /// The air at its end.
    pub(crate) end: Node,
    /// Size of the correction: change of temperature, K, and of vapour, kg/kg, that it made at the end, and of what deposits inside and as sweat, kg/s.
    pub(crate) correction: (f64, f64, f64, f64),
    /// Decay of the fastest mode over the cell.
    pub(crate) stiffness: f64,
}

/// Linear course of the exchange about a state of the air.
struct Line {
    content: Content,
    fluxes: Fluxes,
    by_enthalpy: Fluxes,
    by_water: Fluxes,
}

impl Line {
    fn through(node: &Node) -> Self {
        let (by_t, by_w) = (node.balance.by_t, node.balance.by_w);
        let (t, w) = (node.air.t_by, node.air.w_by);
        Self {
            content: node.content,
            fluxes: node.balance.fluxes,
            by_enthalpy: by_t * t[0] + by_w * w[0],
            by_water: by_t * t[1] + by_w * w[1],
        }
    }

    fn at(&self, content: Content) -> Fluxes {
        self.fluxes
            + self.by_enthalpy * (content.enthalpy - self.content.enthalpy)
            + self.by_water * (content.water - self.content.water)
    }

    /// Sum of the decays of both modes over `dx_m / m`, near that of the faster.
    fn stiffness(&self, dx_per_kg_s: f64) -> f64 {
        (self.by_enthalpy.energy + self.by_water.vapour) * dx_per_kg_s
    }

    /// Energy and vapour that leave the air.
    fn rates(&self, content: Content) -> [f64; 2] {
        let h = content.enthalpy - self.content.enthalpy;
        let w = content.water - self.content.water;
        [
            self.fluxes.energy + self.by_enthalpy.energy * h + self.by_water.energy * w,
            self.fluxes.vapour + self.by_enthalpy.vapour * h + self.by_water.vapour * w,
        ]
    }

    /// Temperature of the outer surface, °C.
    fn surface_at(&self, content: Content) -> f64 {
        self.fluxes.surface_c
            + self.by_enthalpy.surface_c * (content.enthalpy - self.content.enthalpy)
            + self.by_water.surface_c * (content.water - self.content.water)
    }

    /// How enthalpy and water change over `dx_m / m`, by enthalpy and water.
    fn matrix(&self, dx_per_kg_s: f64) -> Matrix {
        [
            [
                -self.by_enthalpy.energy * dx_per_kg_s,
                -self.by_water.energy * dx_per_kg_s,
            ],
            [
                -self.by_enthalpy.vapour * dx_per_kg_s,
                -self.by_water.vapour * dx_per_kg_s,
            ],
        ]
    }
}

/// Simpson's rule in the cube root of the distance from the inlet.
struct Weights {
    start: f64,
    end: f64,
    middle_m: f64,
}

impl Weights {
    fn of(start_m: f64, end_m: f64) -> Self {
        let (start, end) = (cbrt(start_m), cbrt(end_m));
        let middle = 0.5 * (start + end);
        // dx = 3 s^2 ds, and Simpson's 1/6.
        let scale = 0.5 * (end - start) / (end_m - start_m);
        Self {
            start: start * start * scale,
            end: end * end * scale,
            middle_m: middle * middle * middle,
        }
    }
}

/// What a place is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Asked {
    /// The exchange alone.
    Exchange,
    /// Also how far it is from the borders of its regime.
    Borders,
}

impl Wall<'_> {
    /// The air and the exchange at a place, under the relations of a regime, found from an air and a surface temperature near it.
    pub(crate) fn node(
        &self,
        content: Content,
        x_m: f64,
        regime: Regime,
        near: (f64, f64),
        asked: Asked,
    ) -> Node {
        let air = match (regime.misty, asked) {
            (true, _) => content.misty(self.curve, near.0),
            (false, Asked::Borders) => content.clear(self.curve),
            (false, Asked::Exchange) => content.unsaturated(),
        };
        let balance = self.balance(&air, x_m, regime, near.1);
        let node = Node {
            x_m,
            content,
            air,
            balance,
        };
        match asked {
            Asked::Exchange => node,
            Asked::Borders => self.with_borders(node, regime),
        }
    }

    /// A node that knows how far its surfaces are from the borders of its regime.
    fn with_borders(&self, mut node: Node, regime: Regime) -> Node {
        let balance = &mut node.balance;
        let fluxes = &balance.fluxes;
        if !regime.wet {
            (balance.force, balance.force_slope) =
                self.force(fast_ln(1.0 + node.air.w), fluxes.wall_c);
        }
        (balance.sweat_force, balance.sweat_force_slope) =
            self.outside.sweat_force(fluxes.surface_c);
        balance.sweat_vapour = self.outside.vapour_around() + 1e-6;
        node
    }

    /// A cell of length `dx_m` from a node that was made under the same regime.
    pub(crate) fn cell(&self, start: &Node, dx_m: f64, regime: Regime) -> Cell {
        let dx_per_kg_s = dx_m / self.dry_air_kg_s;
        let end_m = start.x_m + dx_m;
        let weights = Weights::of(start.x_m, end_m);
        let from_start = Line::through(start);
        let early = Phi2::of(&from_start.matrix(dx_per_kg_s));
        let guess = mean_content(
            start.content,
            &early,
            &from_start,
            dx_per_kg_s,
            &Fluxes::NONE,
        );
        let near = (start.air.t_c, from_start.surface_at(guess));
        let middle = self.node(guess, weights.middle_m, regime, near, Asked::Exchange);
        let line = Line::through(&middle);
        let decay = Phi2::of(&line.matrix(dx_per_kg_s));

        let content = mean_content(start.content, &decay, &line, dx_per_kg_s, &Fluxes::NONE);
        let tried = advance(start.content, line.rates(content), dx_per_kg_s);
        let near = (middle.air.t_c, line.surface_at(tried));
        let end = self.node(tried, end_m, regime, near, Asked::Borders);
        let off_start = start.balance.fluxes - line.at(start.content);
        let off_end = end.balance.fluxes - line.at(end.content);
        let correction = off_start * weights.start + off_end * weights.end;
        let content = mean_content(start.content, &decay, &line, dx_per_kg_s, &correction);
        let mean = line.at(content) + correction;
        let final_content = advance(start.content, [mean.energy, mean.vapour], dx_per_kg_s);
        Cell {
            mean,
            end: moved(end, final_content),
            correction: (
                correction.energy * dx_per_kg_s * end.air.t_by[0].abs(),
                correction.vapour * dx_per_kg_s,
                correction.vapour * dx_m,
                correction.sweat * dx_m,
            ),
            stiffness: line.stiffness(dx_per_kg_s),
        }
    }

    /// The implicit cell that is taken where even the shortest cell is stiff: the exchange is that at its end.
    pub(crate) fn stiff_cell(&self, start: &Node, dx_m: f64, regime: Regime) -> Cell {
        let dx_per_kg_s = dx_m / self.dry_air_kg_s;
        let end_m = start.x_m + dx_m;
        let mut end = *start;
        let mut mean = start.balance.fluxes;
        for _ in 0..STIFF_STEPS {
            let near = (end.air.t_c, end.balance.fluxes.surface_c);
            end = self.node(end.content, end_m, regime, near, Asked::Borders);
            let line = Line::through(&end);
            let content = implicit(start.content, &line, dx_per_kg_s);
            mean = line.at(content);
            let last = end.content;
            end.content = advance(start.content, [mean.energy, mean.vapour], dx_per_kg_s);
            if (end.content.enthalpy - last.enthalpy).abs() < STIFF_CONVERGED_J {
                break;
            }
            // A line can lead far below no water at all; the next is laid a part of the way there.
            end.content.water = end.content.water.max(STIFF_LEAST_SHARE * last.water);
        }
        end.content = advance(start.content, [mean.energy, mean.vapour], dx_per_kg_s);
        let near = (end.air.t_c, end.balance.fluxes.surface_c);
        let end = self.node(end.content, end_m, regime, near, Asked::Borders);
        Cell {
            mean,
            end,
            correction: (0.0, 0.0, 0.0, 0.0),
            stiffness: 0.0,
        }
    }
}

/// A node moved by the little that a correction changes: by its slopes, without a new balance.
fn moved(node: Node, content: Content) -> Node {
    let fluxes = Line::through(&node).at(content);
    let air = node.air.moved(
        content.enthalpy - node.content.enthalpy,
        content.water - node.content.water,
    );
    let wall_k = fluxes.wall_c - node.balance.fluxes.wall_c;
    let bulk = (air.w - node.air.w) / (1.0 + node.air.w);
    let force = node.balance.force + bulk - node.balance.force_slope * wall_k;
    let surface_k = fluxes.surface_c - node.balance.fluxes.surface_c;
    let sweat_force = node.balance.sweat_force - node.balance.sweat_force_slope * surface_k;
    Node {
        content,
        air,
        balance: Balance {
            fluxes,
            force,
            sweat_force,
            ..node.balance
        },
        ..node
    }
}

/// Steps of the implicit cell; each is a Newton step.
const STIFF_STEPS: u32 = 12;
/// Share of the water that is kept in one step.
const STIFF_LEAST_SHARE: f64 = 0.1;
/// Change of enthalpy, J/kg, at which it has converged.
const STIFF_CONVERGED_J: f64 = 1e-7;

/// Mean content of a cell under a line and a constant correction.
fn mean_content(
    start: Content,
    decay: &Phi2,
    line: &Line,
    dx_per_kg_s: f64,
    correction: &Fluxes,
) -> Content {
    let [energy, vapour] = line.rates(start);
    let by = decay.times([
        -(energy + correction.energy) * dx_per_kg_s,
        -(vapour + correction.vapour) * dx_per_kg_s,
    ]);
    Content {
        enthalpy: start.enthalpy + by[0],
        water: start.water + by[1],
    }
}

/// The content after a cell in which energy and vapour left the air at these mean rates.
fn advance(start: Content, [energy, vapour]: [f64; 2], dx_per_kg_s: f64) -> Content {
    Content {
        enthalpy: start.enthalpy - energy * dx_per_kg_s,
        water: start.water - vapour * dx_per_kg_s,
    }
}

/// The content that satisfies `c = start - dx line(c) / m`.
fn implicit(start: Content, line: &Line, dx_per_kg_s: f64) -> Content {
    let [[a, b], [c, d]] = line.matrix(dx_per_kg_s);
    let forward = advance(start, [line.fluxes.energy, line.fluxes.vapour], dx_per_kg_s);
    let (h, w) = (
        forward.enthalpy - line.content.enthalpy,
        forward.water - line.content.water,
    );
    let (p, q, r, s) = (1.0 - a, -b, -c, 1.0 - d);
    let determinant = p * s - q * r;
    Content {
        enthalpy: line.content.enthalpy + (s * h - q * w) / determinant,
        water: line.content.water + (p * w - r * h) / determinant,
    }
}
