//! Where the readings are from.

/// A place, as far as the file says; SI inside.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Place {
    /// Its name.
    pub name: Option<String>,
    /// Degrees north.
    pub latitude_deg: Option<f64>,
    /// Degrees east.
    pub longitude_deg: Option<f64>,
    /// Metres above sea level.
    pub elevation_m: Option<f64>,
    /// Hours that the clock of the place is ahead of UTC, summer time left out.
    pub zone_h: Option<f64>,
}

impl Place {
    /// Numbers beyond the earth are taken for missing.
    pub(crate) fn plausible(mut self) -> Self {
        let within = |value: Option<f64>, least: f64, most: f64| {
            value.filter(|value| (least..=most).contains(value))
        };
        self.latitude_deg = within(self.latitude_deg, -90.0, 90.0);
        self.longitude_deg = within(self.longitude_deg, -180.0, 360.0);
        self.elevation_m = within(self.elevation_m, -500.0, 9000.0);
        self.zone_h = within(self.zone_h, -14.0, 14.0);
        self
    }
}
