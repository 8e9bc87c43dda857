//! Measures of a tube and of the water in it.

use super::{Measure, Shown, unit};
use crate::{Conductivity, Length, MassFlow, MassFlowPerLength, Power, PowerPerLength};

/// A length or a place along a tube.
pub const TUBE_LENGTH: Measure<Length> = Measure {
    name: "length",
    si: unit!("m", [], Length::metres, Length::to_metres, 1),
    inch_pound: unit!("ft", ["'"], Length::feet, Length::to_feet, 1),
    others: &[
        unit!("mm", [], Length::millimetres, Length::to_millimetres, 0),
        unit!("in", ["\""], Length::inches, Length::to_inches, 1),
    ],
    shown: Shown::Fixed,
};

/// A bore, an outside diameter, a thickness, a drop.
pub const BORE: Measure<Length> = Measure {
    name: "diameter",
    si: unit!("mm", [], Length::millimetres, Length::to_millimetres, 1),
    inch_pound: unit!("in", ["\""], Length::inches, Length::to_inches, 3),
    others: &[
        unit!("m", [], Length::metres, Length::to_metres, 3),
        unit!("ft", ["'"], Length::feet, Length::to_feet, 3),
    ],
    shown: Shown::Significant,
};

/// Water that forms, in all.
pub const WATER: Measure<MassFlow> = Measure {
    name: "water",
    si: unit!(
        "g/h",
        [],
        MassFlow::grams_per_hour,
        MassFlow::to_grams_per_hour,
        1
    ),
    inch_pound: unit!(
        "oz/h",
        [],
        MassFlow::ounces_per_hour,
        MassFlow::to_ounces_per_hour,
        2
    ),
    others: &[],
    shown: Shown::Amount,
};

/// Water that forms per length of tube.
pub const WATER_PER_LENGTH: Measure<MassFlowPerLength> = Measure {
    name: "water per length",
    si: unit!(
        "g/(h m)",
        [],
        MassFlowPerLength::grams_per_hour_metre,
        MassFlowPerLength::to_grams_per_hour_metre,
        2
    ),
    inch_pound: unit!(
        "oz/(h ft)",
        [],
        MassFlowPerLength::ounces_per_hour_foot,
        MassFlowPerLength::to_ounces_per_hour_foot,
        3
    ),
    others: &[],
    shown: Shown::Amount,
};

/// A power.
pub const HEAT: Measure<Power> = Measure {
    name: "heat",
    si: unit!("W", [], Power::watts, Power::to_watts, 1),
    inch_pound: unit!("Btu/h", [], Power::btu_per_hour, Power::to_btu_per_hour, 1),
    others: &[],
    shown: Shown::Significant,
};

/// Heat per length of tube.
pub const HEAT_TRACING: Measure<PowerPerLength> = Measure {
    name: "heat tracing",
    si: unit!(
        "W/m",
        [],
        PowerPerLength::watts_per_metre,
        PowerPerLength::to_watts_per_metre,
        1
    ),
    inch_pound: unit!(
        "W/ft",
        [],
        PowerPerLength::watts_per_foot,
        PowerPerLength::to_watts_per_foot,
        2
    ),
    others: &[],
    shown: Shown::Significant,
};

/// Conductivity of a wall or insulation.
pub const CONDUCTIVITY: Measure<Conductivity> = Measure {
    name: "conductivity",
    si: unit!(
        "W/(m K)",
        ["W/mK"],
        Conductivity::watts_per_metre_kelvin,
        Conductivity::to_watts_per_metre_kelvin,
        3
    ),
    inch_pound: unit!(
        "Btu in/(h ft² °F)",
        ["Btu in/(h ft2 F)"],
        Conductivity::btu_inch_per_hour_square_foot_fahrenheit,
        Conductivity::to_btu_inch_per_hour_square_foot_fahrenheit,
        3
    ),
    others: &[],
    shown: Shown::Significant,
};
