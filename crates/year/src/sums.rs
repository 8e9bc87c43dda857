//! What came of an hour: sums over the route and over each leg.

/// One leg in one hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LegSum {
    /// What deposited on the wall, kg.
    pub condensed_kg: f64,
    /// What dried off it, kg.
    pub evaporated_kg: f64,
    /// What ran off, kg.
    pub drained_kg: f64,
    /// What deposited outside, kg.
    pub sweat_kg: f64,
    /// Water on the wall at the end, kg; ice is counted by itself.
    pub film_kg: f64,
    /// Ice on the wall at the end, kg.
    pub frost_kg: f64,
    /// What ran off of ice that thawed, kg: it comes at once.
    pub slug_kg: f64,
    /// Lowest mean temperature of a cell's inner wall from one bore behind an inlet on, °C.
    pub coldest_wall_c: f64,
}

impl LegSum {
    /// This part of the hour and the next.
    pub(crate) fn then(self, next: &Self) -> Self {
        Self {
            condensed_kg: self.condensed_kg + next.condensed_kg,
            evaporated_kg: self.evaporated_kg + next.evaporated_kg,
            drained_kg: self.drained_kg + next.drained_kg,
            sweat_kg: self.sweat_kg + next.sweat_kg,
            film_kg: next.film_kg,
            frost_kg: next.frost_kg,
            slug_kg: self.slug_kg + next.slug_kg,
            coldest_wall_c: self.coldest_wall_c.min(next.coldest_wall_c),
        }
    }
}

/// A state of the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirState {
    /// Temperature, °C.
    pub t_c: f64,
    /// Vapour, kg per kg of dry air.
    pub w: f64,
    /// Suspended water, kg per kg of dry air.
    pub mist: f64,
}

impl AirState {
    const NONE: Self = Self {
        t_c: 0.0,
        w: 0.0,
        mist: 0.0,
    };

    fn plus(self, other: Self, weight: f64) -> Self {
        Self {
            t_c: self.t_c + weight * other.t_c,
            w: self.w + weight * other.w,
            mist: self.mist + weight * other.mist,
        }
    }
}

/// The whole route in one hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HourSum {
    /// Its length, s.
    pub seconds: f64,
    /// Water that entered with the air, kg, and that left with it, mist included.
    pub water_in_kg: f64,
    /// Water that left with the air at the end, mist included, kg.
    pub water_out_kg: f64,
    /// Dry air that flowed, kg.
    pub dry_air_kg: f64,
    /// What deposited on the walls, kg.
    pub condensed_kg: f64,
    /// What dried off them, kg.
    pub evaporated_kg: f64,
    /// What ran off, kg.
    pub drained_kg: f64,
    /// Water on the walls at the end, kg; ice is counted by itself.
    pub film_kg: f64,
    /// Ice on the walls at the end, kg.
    pub frost_kg: f64,
    /// What ran off of ice that thawed, kg: it comes at once.
    pub slug_kg: f64,
    /// Most that deposited anywhere, kg per hour and metre.
    pub wettest_kg_hm: f64,
    /// Most water on any wall at the end, kg/m2.
    pub most_film_kg_m2: f64,
    /// Most ice on any wall at the end, kg/m2.
    pub most_frost_kg_m2: f64,
    /// The air at the end of the route; the hour's mean.
    pub outlet: AirState,
    /// The air around the sensor, warmed; the hour's mean.
    pub chamber: AirState,
    /// Lowest mean temperature of a cell's inner wall from one bore behind an inlet on, °C.
    pub coldest_wall_c: f64,
    /// Steps that it was marched in.
    pub parts: u32,
}

impl HourSum {
    /// Nothing yet.
    pub(crate) const NONE: Self = Self {
        seconds: 0.0,
        water_in_kg: 0.0,
        water_out_kg: 0.0,
        dry_air_kg: 0.0,
        condensed_kg: 0.0,
        evaporated_kg: 0.0,
        drained_kg: 0.0,
        film_kg: 0.0,
        frost_kg: 0.0,
        slug_kg: 0.0,
        wettest_kg_hm: 0.0,
        most_film_kg_m2: 0.0,
        most_frost_kg_m2: 0.0,
        outlet: AirState::NONE,
        chamber: AirState::NONE,
        coldest_wall_c: f64::INFINITY,
        parts: 0,
    };

    /// Water and ice on the walls at the end, kg.
    #[must_use]
    pub fn on_walls_kg(&self) -> f64 {
        self.film_kg + self.frost_kg
    }

    /// This part of the hour and the next.
    pub(crate) fn then(self, next: &Self) -> Self {
        let seconds = self.seconds + next.seconds;
        let (before, after) = (self.seconds / seconds, next.seconds / seconds);
        let mean =
            |one: AirState, other: AirState| AirState::NONE.plus(one, before).plus(other, after);
        Self {
            seconds,
            water_in_kg: self.water_in_kg + next.water_in_kg,
            water_out_kg: self.water_out_kg + next.water_out_kg,
            dry_air_kg: self.dry_air_kg + next.dry_air_kg,
            condensed_kg: self.condensed_kg + next.condensed_kg,
            evaporated_kg: self.evaporated_kg + next.evaporated_kg,
            drained_kg: self.drained_kg + next.drained_kg,
            film_kg: next.film_kg,
            frost_kg: next.frost_kg,
            slug_kg: self.slug_kg + next.slug_kg,
            wettest_kg_hm: self.wettest_kg_hm.max(next.wettest_kg_hm),
            most_film_kg_m2: next.most_film_kg_m2,
            most_frost_kg_m2: next.most_frost_kg_m2,
            outlet: mean(self.outlet, next.outlet),
            chamber: mean(self.chamber, next.chamber),
            coldest_wall_c: self.coldest_wall_c.min(next.coldest_wall_c),
            parts: self.parts + next.parts,
        }
    }
}
