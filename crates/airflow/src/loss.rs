//! The pressure that a part of the line costs, as a function of the mass flow through it.

use core::f64::consts::PI;

use crate::friction::friction_between;

/// A sum of losses of each kind; all go with the sign of the flow but the lift.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Loss {
    /// Pa/(kg/s)^2: fittings, ends, chamber.
    pub(crate) quadratic: f64,
    /// Pa/(kg/s): filter.
    pub(crate) linear: f64,
    /// Weight of the air in the part, less that of the room's air over the same height (Pa).
    pub(crate) lift_pa: f64,
    pub(crate) frictions: Vec<WallFriction>,
}

/// Friction of a wall, for a factor that depends on the flow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct WallFriction {
    /// `(L/D) / (2 rho A^2)`, Pa/(kg/s)^2 for a friction factor of 1.
    pub(crate) coefficient: f64,
    /// Reynolds number per mass flow [s/kg].
    pub(crate) reynolds_s_kg: f64,
    /// Roughness over (hydraulic) bore.
    pub(crate) roughness: f64,
    /// What it is multiplied by between laminar and turbulent flow.
    transition: f64,
}

impl WallFriction {
    /// Of a length with a cross-section and a hydraulic diameter; `Re = m Dh / (A mu)`.
    pub(crate) fn of(
        length_m: f64,
        section: Section,
        roughness_m: f64,
        density_kg_m3: f64,
        viscosity_pa_s: f64,
    ) -> Self {
        let Section { area_m2, bore_m } = section;
        Self {
            coefficient: length_m / bore_m / (2.0 * density_kg_m3 * area_m2 * area_m2),
            reynolds_s_kg: bore_m / (area_m2 * viscosity_pa_s),
            roughness: roughness_m / bore_m,
            transition: 1.0,
        }
    }

    /// The same, multiplied by a factor between laminar and turbulent flow.
    pub(crate) const fn taken(self, transition: f64) -> Self {
        Self { transition, ..self }
    }

    fn pressure_pa(&self, flow_kg_s: f64) -> f64 {
        let size = flow_kg_s.abs();
        let reynolds = self.reynolds_s_kg * size;
        // The factor is infinite where nothing flows, and its product with the flow is not.
        let factor_by_flow = if reynolds < 1.0 {
            64.0 / self.reynolds_s_kg
        } else {
            friction_between(reynolds, self.roughness, self.transition) * size
        };
        self.coefficient * factor_by_flow * flow_kg_s
    }
}

/// What is free of a bore: its area and its hydraulic diameter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Section {
    pub(crate) area_m2: f64,
    pub(crate) bore_m: f64,
}

impl Section {
    pub(crate) fn round(bore_m: f64) -> Self {
        Self {
            area_m2: 0.25 * PI * bore_m * bore_m,
            bore_m,
        }
    }
}

impl Loss {
    pub(crate) fn pressure_pa(&self, flow_kg_s: f64) -> f64 {
        let walls: f64 = self
            .frictions
            .iter()
            .map(|wall| wall.pressure_pa(flow_kg_s))
            .sum();
        self.quadratic * flow_kg_s * flow_kg_s.abs()
            + self.linear * flow_kg_s
            + self.lift_pa
            + walls
    }

    /// Takes up another loss that the same flow meets; walls alike are one.
    pub(crate) fn join(&mut self, other: &Self) {
        self.quadratic += other.quadratic;
        self.linear += other.linear;
        self.lift_pa += other.lift_pa;
        for wall in &other.frictions {
            let alike = self.frictions.iter_mut().find(|known| {
                known.reynolds_s_kg == wall.reynolds_s_kg
                    && known.roughness == wall.roughness
                    && known.transition == wall.transition
            });
            match alike {
                Some(known) => known.coefficient += wall.coefficient,
                None => self.frictions.push(*wall),
            }
        }
    }
}

/// `K / (2 rho A^2)`: what a loss coefficient costs, Pa/(kg/s)^2.
pub(crate) fn of_coefficient(loss_coefficient: f64, density_kg_m3: f64, area_m2: f64) -> f64 {
    loss_coefficient / (2.0 * density_kg_m3 * area_m2 * area_m2)
}
