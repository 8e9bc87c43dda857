//! What the hours bring: the duct's air, its flow, and what surrounds the legs.

/// One step of time: means that hold all through it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hour {
    /// Its length, s.
    pub seconds: f64,
    /// The duct's air, °C.
    pub air_c: f64,
    /// Its vapour, kg per kg of dry air; what exceeds saturation enters as mist.
    pub w: f64,
    /// Pressure, Pa, the same all along.
    pub p_pa: f64,
    /// Dry air that flows, kg/s; above zero.
    pub dry_air_kg_s: f64,
}

/// What surrounds a leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Around {
    /// Temperature of the air, °C.
    pub air_c: f64,
    /// Humidity ratio of the air, kg/kg; no more than saturation.
    pub w: f64,
    /// Temperature of the surfaces that the tube sees, °C.
    pub radiant_c: f64,
    /// Air speed across the tube, m/s.
    pub wind_m_s: f64,
}

/// A row of hours with the spaces of each.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Hours {
    hours: Vec<Hour>,
    around: Vec<Around>,
    spaces: usize,
    /// Hours in which the duct's fan stands, rising.
    still: Vec<usize>,
}

impl Hours {
    /// No hours yet, each of which will have so many spaces.
    #[must_use]
    pub const fn of_spaces(spaces: usize) -> Self {
        Self {
            hours: Vec::new(),
            around: Vec::new(),
            spaces,
            still: Vec::new(),
        }
    }

    /// The same, with room for so many.
    #[must_use]
    pub fn with_room(spaces: usize, hours: usize) -> Self {
        Self {
            hours: Vec::with_capacity(hours),
            around: Vec::with_capacity(hours * spaces),
            ..Self::of_spaces(spaces)
        }
    }

    /// Adds an hour and what its spaces are like; spaces beyond the number agreed on are left out, and missing ones are like the last.
    pub fn push(&mut self, hour: Hour, spaces: impl IntoIterator<Item = Around>) {
        let before = self.around.len();
        self.around.extend(spaces.into_iter().take(self.spaces));
        while self.around.len() < before + self.spaces {
            let Some(&last) = self.around.last() else {
                break;
            };
            self.around.push(last);
        }
        self.hours.push(hour);
    }

    /// The duct's own fan stands in the hour that was added last.
    pub fn duct_stands(&mut self) {
        if let Some(last) = self.hours.len().checked_sub(1) {
            self.still.push(last);
        }
    }

    /// Whether the duct's own fan runs in one of them.
    #[must_use]
    pub fn duct_runs(&self, position: usize) -> bool {
        self.still.binary_search(&position).is_err()
    }

    /// Their number.
    #[must_use]
    pub fn len(&self) -> usize {
        self.hours.len()
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.hours.is_empty()
    }

    /// Spaces in each of them.
    #[must_use]
    pub const fn spaces(&self) -> usize {
        self.spaces
    }

    /// One of them.
    #[must_use]
    pub fn hour(&self, position: usize) -> Option<&Hour> {
        self.hours.get(position)
    }

    /// A space in one of them.
    #[must_use]
    pub fn around(&self, position: usize, space: usize) -> Option<&Around> {
        self.around.get(position * self.spaces + space)
    }
}
