//! What the lanes hold while they march: the hour of each, the air it has reached, and all that is solved at its cell.
//!
//! Each number of eight lanes lies in a line of the cache of its own: the widest vectors that are read across two take twice as long.

use super::lanes::{LANES, Lanes};
use super::tally::Tally;

/// One number of each lane, nought.
const NOUGHT: Lanes = [0.0; LANES];

/// The hour of each lane, and the space that it is in.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct Given {
    /// Length of the step, s, and its reciprocal; nought of a lane without an hour.
    pub(super) seconds: Lanes,
    pub(super) per_second: Lanes,
    /// Pressure, Pa, its reciprocal, and its cube root.
    pub(super) p_pa: Lanes,
    pub(super) per_pa: Lanes,
    pub(super) p_root: Lanes,
    /// Dry air, kg/s, and its reciprocal.
    pub(super) flow: Lanes,
    pub(super) per_flow: Lanes,
    /// Whether hardly any air passes (1): what is marched then is the air that stands in the tube.
    pub(super) still: Lanes,
    /// Air of the space, °C, and surfaces around, K.
    pub(super) air_c: Lanes,
    pub(super) radiant_k: Lanes,
    /// Nusselt number of the wind by powers of the film temperature less the air's.
    pub(super) wind: [Lanes; 3],
    /// `ln(1 + W)` of the space's air; until its dew point has been asked for (1) the vapour itself, kg/kg, which is no less: on surfaces that are still too warm to be asked for, neither deposits anything.
    pub(super) around: Lanes,
    pub(super) asked: Lanes,
    /// Above this the surface is dry, °C.
    pub(super) dry_above_c: Lanes,
    /// Air with no more vapour than `clear_w`, kg/kg, has its dew or frost point surely below this, °C.
    pub(super) clear_above_c: Lanes,
    pub(super) clear_w: Lanes,
    /// Outer diameter over height of the riser, and what both make of its slenderness; nought of lanes that are in none.
    pub(super) slim: Lanes,
    pub(super) shape: Lanes,
}

/// The air that each lane has reached.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct Reached {
    pub(super) t_c: Lanes,
    pub(super) w: Lanes,
    pub(super) mist: Lanes,
    /// Middle of the last cell's wall, °C; at the start of a leg no colder than the air.
    pub(super) wall_c: Lanes,
    /// The surface in the middle of the last cell, or as guessed at the start of a leg, °C, and how it and the inner wall change there, K per m.
    pub(super) surface_c: Lanes,
    pub(super) surface_slope: Lanes,
    pub(super) wall_slope: Lanes,
    /// By how much these fade along the tube, as a part per m, and from the middle of that cell to its end, m; nought at the start of a leg.
    pub(super) fades: Lanes,
    pub(super) half_before: Lanes,
    /// What deposited in the last cell, kg/(s m).
    pub(super) vapour: Lanes,
}

/// What is known of a cell before its balance is solved.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct Film {
    /// Water on the wall, kg/m2.
    pub(super) water: Lanes,
    /// Ice on the wall, kg/m2.
    pub(super) frost: Lanes,
    /// Free surface of water that stands there over that of the wall, and that water, kg per m2 of wall.
    pub(super) pool: Lanes,
    pub(super) pooled: Lanes,
    /// Share of both that is ice.
    pub(super) ice: Lanes,
    /// Whether there is ice, or water that stands, in any lane.
    pub(super) ice_or_pools: bool,
    /// Of both what the wall keeps as a film, kg/m2, and its cube root.
    pub(super) wet: Lanes,
    pub(super) root: Lanes,
    /// `ln(1 + W)` of the air at the start.
    pub(super) ln_vapour: Lanes,
    /// Middle of the cell as first guessed, °C, kg/kg, and its mole fraction of vapour.
    pub(super) middle_c: Lanes,
    pub(super) middle_w: Lanes,
    pub(super) middle_x: Lanes,
    /// Reciprocals of its heat capacity, J/(kg K), and of its mass, both per kg of dry air.
    pub(super) per_heat_capacity: Lanes,
    pub(super) per_moist: Lanes,
    /// Moist air over the bore, `4 m / (pi D)`, kg/(s m), and the scaled roots of the film.
    pub(super) moving: Lanes,
    pub(super) heat_root: Lanes,
    pub(super) mass_root: Lanes,
    /// Viscosity, Pa s, conductivity, W/(m K), heat capacity over that, and density times diffusivity, kg/(m s).
    pub(super) viscosity: Lanes,
    pub(super) conductivity: Lanes,
    pub(super) per_conductivity: Lanes,
    pub(super) diffusive: Lanes,
    /// Whether any lane is not laminar; and then how much slower a laminar film were, the share that is turbulent, and Gnielinski's two factors.
    pub(super) any_regime: bool,
    pub(super) slower: Lanes,
    pub(super) turbulent: Lanes,
    pub(super) drive: Lanes,
    pub(super) rough: Lanes,
    /// Coefficients per metre: heat, W/(m K), vapour, kg/(s m).
    pub(super) heat: Lanes,
    pub(super) mass: Lanes,
}

/// The balance while it is solved.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct Solving {
    /// Outer surface that is tried, °C.
    pub(super) surface_c: Lanes,
    /// Natural convection outside: number, and its exponent on the difference.
    pub(super) number: Lanes,
    pub(super) exponent: Lanes,
    /// Sweat, kg/(s m), its heat, W/m, and the slope of that.
    pub(super) sweat: Lanes,
    pub(super) sweat_heat: Lanes,
    pub(super) sweat_slope: Lanes,
    /// Inner wall, °C, how it follows the surface, and the share of a deposit that freezes there.
    pub(super) wall_c: Lanes,
    pub(super) by_surface: Lanes,
    pub(super) frozen: Lanes,
    /// `ln(1 + W)` at saturation at the wall, and its slope.
    pub(super) ln_wall: Lanes,
    pub(super) ln_wall_slope: Lanes,
    /// The wall as properties are asked at it, °C, and the heat that the air has to give, W/m.
    pub(super) held_c: Lanes,
    pub(super) from_air: Lanes,
    /// Heat that a kilogram of deposit gives up, J/kg, and its slope.
    pub(super) deposit: Lanes,
    pub(super) deposit_slope: Lanes,
    /// Heat that freezing gives to the wall, or thaw takes, W/m, and its slope with the wall.
    pub(super) fusing: Lanes,
    pub(super) fusing_slope: Lanes,
    /// Heat that is missing, W/m, and its slope with the surface.
    pub(super) missing: Lanes,
    pub(super) slope: Lanes,
    /// What deposits, kg/(s m), how it follows the force, and the heat of it, J/kg.
    pub(super) vapour: Lanes,
    pub(super) vapour_slope: Lanes,
    pub(super) per_kg: Lanes,
    /// Slope of the heat to the outside with the surface, W/(m K).
    pub(super) outward: Lanes,
    /// Mean difference over that at the start, and what the slope of the wall adds: of temperature and of vapour.
    pub(super) mean_heat: Lanes,
    pub(super) added_heat: Lanes,
    pub(super) mean_mass: Lanes,
    pub(super) added_mass: Lanes,
    /// Mean over the cell of `ln(1 + W)` in the air over that at saturation at the wall that is tried.
    pub(super) force: Lanes,
    /// Where nothing is wet: transfer units of heat, and what the slope of the wall adds of its change.
    pub(super) heat_units: Lanes,
    pub(super) bent_heat: Lanes,
    /// Change of the wall's temperature along the cell, K.
    pub(super) wall_change: Lanes,
    /// By how much the last trial has changed that, K.
    pub(super) wall_turn: Lanes,
    /// The next step of the search, K, and whether it was the last (1).
    pub(super) step: Lanes,
    pub(super) done: Lanes,
    /// Whether the means are settled (1).
    pub(super) settled: Lanes,
    pub(super) low: Lanes,
    pub(super) high: Lanes,
}

/// What came of a cell.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct Settled {
    /// Change of the water on the wall, kg/m2.
    pub(super) change: Lanes,
    /// Water on the wall when the step is over, what has run off taken away, kg/m2.
    pub(super) water: Lanes,
    /// Ice on the wall then, kg/m2.
    pub(super) frost: Lanes,
    /// What has run off, kg/m2.
    pub(super) drained: Lanes,
    /// Change of the water that stands there, kg per m2 of wall; it only dries.
    pub(super) pooled: Lanes,
    /// Inner wall, °C, and, of a wall that may be wet, `ln(1 + W)` at saturation there.
    pub(super) wall_c: Lanes,
    pub(super) ln_wall: Lanes,
    /// The air at the end.
    pub(super) t_c: Lanes,
    pub(super) w: Lanes,
    /// Heat that has left the air but for the vapour's own at 0 °C, W/m.
    pub(super) taken_w_m: Lanes,
    /// Not below zero where the air at the end is surely without mist: `ln(1 + W)` that saturation exceeds at least, less that of the air, or, where nothing is wet, K.
    pub(super) clear_by: Lanes,
    /// Below zero where the wall does not dry: `ln(1 + W)` at saturation there, less that of the air at the start, or, where nothing is wet, 1.
    pub(super) dries_by: Lanes,
}

/// All of it.
#[derive(Debug, Clone)]
#[repr(align(64))]
pub(super) struct State {
    pub(super) given: Given,
    pub(super) reached: Reached,
    pub(super) film: Film,
    pub(super) solving: Solving,
    pub(super) settled: Settled,
    pub(super) tally: Tally,
}

impl State {
    /// Lanes that stand idle in some air.
    pub(super) const fn idle() -> Self {
        const SOME_C: Lanes = [15.0; LANES];
        const SOME_W: Lanes = [0.005; LANES];
        Self {
            given: Given {
                seconds: NOUGHT,
                per_second: NOUGHT,
                p_pa: [1e5; LANES],
                per_pa: [1e-5; LANES],
                p_root: [46.4; LANES],
                flow: [6e-4; LANES],
                per_flow: [1.0 / 6e-4; LANES],
                still: NOUGHT,
                air_c: SOME_C,
                radiant_k: [288.15; LANES],
                wind: [NOUGHT; 3],
                around: SOME_W,
                asked: [1.0; LANES],
                dry_above_c: [-200.0; LANES],
                clear_above_c: SOME_C,
                clear_w: NOUGHT,
                slim: NOUGHT,
                shape: NOUGHT,
            },
            reached: Reached {
                t_c: SOME_C,
                w: SOME_W,
                mist: NOUGHT,
                wall_c: SOME_C,
                surface_c: SOME_C,
                surface_slope: NOUGHT,
                wall_slope: NOUGHT,
                fades: NOUGHT,
                half_before: NOUGHT,
                vapour: NOUGHT,
            },
            film: Film {
                water: NOUGHT,
                frost: NOUGHT,
                pool: NOUGHT,
                pooled: NOUGHT,
                ice: NOUGHT,
                ice_or_pools: false,
                wet: NOUGHT,
                root: NOUGHT,
                ln_vapour: NOUGHT,
                middle_c: SOME_C,
                middle_w: SOME_W,
                middle_x: NOUGHT,
                per_heat_capacity: NOUGHT,
                per_moist: NOUGHT,
                moving: NOUGHT,
                heat_root: NOUGHT,
                mass_root: NOUGHT,
                viscosity: NOUGHT,
                conductivity: NOUGHT,
                per_conductivity: NOUGHT,
                diffusive: NOUGHT,
                any_regime: false,
                slower: NOUGHT,
                turbulent: NOUGHT,
                drive: NOUGHT,
                rough: NOUGHT,
                heat: NOUGHT,
                mass: NOUGHT,
            },
            solving: Solving {
                surface_c: SOME_C,
                number: NOUGHT,
                exponent: NOUGHT,
                sweat: NOUGHT,
                sweat_heat: NOUGHT,
                sweat_slope: NOUGHT,
                wall_c: SOME_C,
                by_surface: NOUGHT,
                frozen: NOUGHT,
                ln_wall: NOUGHT,
                ln_wall_slope: NOUGHT,
                held_c: SOME_C,
                from_air: NOUGHT,
                deposit: NOUGHT,
                deposit_slope: NOUGHT,
                fusing: NOUGHT,
                fusing_slope: NOUGHT,
                missing: NOUGHT,
                slope: NOUGHT,
                vapour: NOUGHT,
                vapour_slope: NOUGHT,
                per_kg: NOUGHT,
                outward: NOUGHT,
                mean_heat: NOUGHT,
                added_heat: NOUGHT,
                mean_mass: NOUGHT,
                added_mass: NOUGHT,
                force: NOUGHT,
                heat_units: NOUGHT,
                bent_heat: NOUGHT,
                wall_change: NOUGHT,
                wall_turn: NOUGHT,
                step: NOUGHT,
                done: NOUGHT,
                settled: NOUGHT,
                low: NOUGHT,
                high: NOUGHT,
            },
            settled: Settled {
                change: NOUGHT,
                water: NOUGHT,
                frost: NOUGHT,
                drained: NOUGHT,
                pooled: NOUGHT,
                wall_c: SOME_C,
                ln_wall: NOUGHT,
                t_c: SOME_C,
                w: SOME_W,
                taken_w_m: NOUGHT,
                clear_by: NOUGHT,
                dries_by: NOUGHT,
            },
            tally: Tally::NONE,
        }
    }
}
