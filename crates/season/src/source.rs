//! The air of a duct at a moment: where it comes from, step by step.

use dewrun_duct_air::FogAir;
use dewrun_duct_air::process::{cooled, heated, humidified, mixed, of_humidity, recovered};
use dewrun_duct_air::schedule::Moment;
use dewrun_duct_air::space::Outdoors;

use crate::season::{Change, Room, Season, Source};

impl Season {
    /// The air of the duct at a moment, its fan running; `measured` is what was measured in it then.
    ///
    /// # Range
    /// Outdoor air from -60 to 95 °C.
    /// # Accuracy
    /// That of what is said of the source.
    /// # Source
    /// The processes of [`dewrun_duct_air::process`], one after the other.
    ///
    /// ```
    /// use dewrun_duct_air::FogAir;
    /// use dewrun_duct_air::process::Coil;
    /// use dewrun_duct_air::schedule::Moment;
    /// use dewrun_duct_air::space::Outdoors;
    /// use dewrun_season::{Change, Season, Source, Step};
    /// let coil = Change::Cooled(Coil { apparatus_c: 10.0, bypass: 0.12 });
    /// let season = Season {
    ///     source: Source::Outdoors,
    ///     steps: vec![Step { change: coil, when: vec![] }],
    ///     spaces: vec![],
    ///     fan_off: vec![],
    /// };
    /// let air = FogAir { t_c: 32.0, w: 0.018_12, mist: 0.0 };
    /// let noon = Moment { month: 7, weekday: 0, hour: 12 };
    /// let outdoors = Outdoors { air, p_pa: 101_325.0, wind_m_s: 2.0, sky_c: None, sun_w_m2: 0.0 };
    /// assert!((season.duct_air(noon, &outdoors, None).t_c - 12.66).abs() < 0.05);
    /// ```
    #[must_use]
    pub fn duct_air(
        &self,
        moment: Moment,
        outdoors: &Outdoors,
        measured: Option<FogAir>,
    ) -> FogAir {
        let p_pa = outdoors.p_pa;
        let start = match &self.source {
            Source::Outdoors => outdoors.air,
            Source::Room {
                temperature_c,
                humidity,
            } => of_humidity(temperature_c.at(moment), humidity.at(moment), p_pa),
            Source::Measured => measured.unwrap_or(outdoors.air),
        };
        let done = self.steps.iter().filter(|step| step.is_done(moment));
        done.fold(start, |air, step| changed(air, step.change, p_pa))
    }
}

fn changed(air: FogAir, change: Change, p_pa: f64) -> FogAir {
    let of = |room: Room| of_humidity(room.temperature_c, room.humidity, p_pa);
    match change {
        Change::Heated(to_c) => heated(air, to_c, p_pa),
        Change::Cooled(coil) => cooled(air, coil, p_pa).air,
        Change::Mixed(room, share) => mixed(&[(air, 1.0 - share), (of(room), share)], p_pa),
        Change::Humidified(to_rh, by) => humidified(air, to_rh, by, p_pa),
        Change::Recovered(room, heat, moisture) => recovered(air, of(room), heat, moisture, p_pa),
    }
}

#[cfg(test)]
mod tests {
    use dewrun_duct_air::schedule::{Rule, Schedule};

    use super::*;
    use crate::season::Step;

    const P_PA: f64 = 101_325.0;

    fn winter() -> Outdoors {
        Outdoors {
            air: FogAir {
                t_c: -4.0,
                w: 0.002,
                mist: 0.0,
            },
            p_pa: P_PA,
            wind_m_s: 0.0,
            sky_c: None,
            sun_w_m2: 0.0,
        }
    }

    fn season(source: Source, steps: Vec<Step>) -> Season {
        Season {
            source,
            steps,
            spaces: Vec::new(),
            fan_off: Vec::new(),
        }
    }

    /// By hand: -4 + 0.75 (22 - -4) = 15.5 °C behind the recovery, then heated to 20 °C by day only.
    #[test]
    fn steps_follow_each_other_where_they_are_done() {
        let extract = Room {
            temperature_c: 22.0,
            humidity: 0.4,
        };
        let by_day = Rule {
            hours: (6, 20),
            ..Rule::always(1.0)
        };
        let recovery = Step {
            change: Change::Recovered(extract, 0.75, 0.0),
            when: Vec::new(),
        };
        let heater = Step {
            change: Change::Heated(20.0),
            when: vec![by_day],
        };
        let season = season(Source::Outdoors, vec![recovery, heater]);
        let at = |hour| {
            let moment = Moment {
                month: 1,
                weekday: 2,
                hour,
            };
            season.duct_air(moment, &winter(), None)
        };
        assert!((at(3).t_c - 15.5).abs() < 1e-9, "{:?}", at(3));
        assert!((at(12).t_c - 20.0).abs() < 1e-9, "{:?}", at(12));
        assert_eq!(at(12).w, at(3).w, "its water is the same");
    }

    #[test]
    fn a_room_goes_by_its_schedule_and_what_was_measured_by_its_rows() {
        let moment = Moment {
            month: 1,
            weekday: 0,
            hour: 0,
        };
        let room = Source::Room {
            temperature_c: Schedule::fixed(30.0),
            humidity: Schedule::fixed(0.58),
        };
        let air = season(room, Vec::new()).duct_air(moment, &winter(), None);
        assert_eq!(air.t_c, 30.0, "whatever the weather");
        let read = FogAir {
            t_c: 9.0,
            w: 0.006,
            mist: 0.0,
        };
        let measured = season(Source::Measured, Vec::new());
        assert_eq!(measured.duct_air(moment, &winter(), Some(read)), read);
    }
}
