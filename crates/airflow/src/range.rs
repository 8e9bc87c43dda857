//! What numbers make sense on an airflow line.

use dewrun_quantity::Limits;

pub(crate) const DENSITY: Limits = Limits::new("density of the air", "kg/m3", 0.05, 20.0);
pub(crate) const VISCOSITY: Limits = Limits::new("viscosity of the air", "µPa s", 1.0, 100.0);
pub(crate) const PRESSURE: Limits = Limits::new("pressure", "Pa", -50_000.0, 50_000.0);
pub(crate) const FAN_FLOW: Limits = Limits::new("flow at the fan", "L/min", -100_000.0, 100_000.0);
pub(crate) const FAN_SPEED: Limits = Limits::new("fan speed", "", 0.01, 10.0);
pub(crate) const LENGTH: Limits = Limits::new("length", "m", 0.0, 2000.0);
pub(crate) const BORE: Limits = Limits::new("bore", "mm", 0.5, 500.0);
pub(crate) const ROUGHNESS: Limits = Limits::new("roughness over bore", "", 0.0, 0.5);
/// What friction between laminar and turbulent flow is multiplied by.
pub(crate) const TRANSITION: Limits = Limits::new("factor on friction", "", 0.7, 1.4);
/// Roughness over bore to which friction factors were measured.
pub(crate) const MEASURED_ROUGHNESS: f64 = 0.05;
pub(crate) const LOSS_COEFFICIENT: Limits = Limits::new("loss coefficient", "", 0.0, 10_000.0);
pub(crate) const HOLE: Limits = Limits::new("diameter of a hole", "mm", 0.0, 500.0);
pub(crate) const DISCHARGE: Limits = Limits::new("discharge coefficient", "", 0.0, 1.0);
pub(crate) const OPEN_SHARE: Limits = Limits::new("open share of a hole", "", 0.0, 10.0);
pub(crate) const FILTER: Limits = Limits::new("resistance of the filter", "Pa per L/min", 0.0, 1e5);
pub(crate) const DUST: Limits = Limits::new("dust factor of the filter", "", 0.0, 1e4);
pub(crate) const VOLUME: Limits = Limits::new("volume", "mL", 0.0, 1e6);
pub(crate) const FALL: Limits = Limits::new("fall per horizontal length", "", 1e-6, 1e3);
pub(crate) const DEPTH: Limits = Limits::new("depth of water", "mm", 0.0, 1e5);
pub(crate) const MARGIN: Limits = Limits::new("margin of the airflow limits", "", 0.0, 1.0);
pub(crate) const READING: Limits =
    Limits::new("reading as a part of that as fitted", "", -100.0, 100.0);
