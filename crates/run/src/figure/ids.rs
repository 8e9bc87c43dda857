//! The ids of all figures, and what each measures.

use super::Kind;

macro_rules! figures {
    ($($(#[$meta:meta])* $name:ident = $id:literal, $kind:ident;)+) => {
        /// A figure that is shown, or an input that it follows from.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub enum Figure {
            $($(#[$meta])* $name,)+
        }

        impl Figure {
            /// Every figure, computed ones first.
            pub const ALL: &'static [Self] = &[$(Self::$name,)+];

            /// The name by which files and pages refer to it.
            #[must_use]
            pub const fn id(self) -> &'static str {
                match self { $(Self::$name => $id,)+ }
            }

            /// What is measured, and so its unit.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self { $(Self::$name => Kind::$kind,)+ }
            }
        }
    };
}

figures! {
    /// Water formed in the tube.
    TubeWater = "tube-water", Water;
    /// Of it as frost.
    TubeFrost = "tube-frost", Water;
    /// Sweat on the outside.
    TubeSweat = "tube-sweat", Water;
    /// Wet from.
    WetFrom = "wet-from", Place;
    /// Wet to.
    WetTo = "wet-to", Place;
    /// Wet stretches.
    WetStretches = "wet-stretches", Count;
    /// Frost from.
    FrostFrom = "frost-from", Place;
    /// Coldest inner wall.
    ColdestWall = "coldest-wall", Temperature;
    /// Place of the coldest wall.
    ColdestWallAt = "coldest-wall-at", Place;
    /// Most mist.
    MostMist = "most-mist", Mist;
    /// Vapour over saturation near the wall.
    NearWallRatio = "near-wall-ratio", Number;
    /// Place of the most excess near the wall.
    NearWallAt = "near-wall-at", Place;
    /// Most mist near the wall.
    NearWallBound = "near-wall-bound", Water;
    /// Leg begins at.
    LegFrom = "leg-from", Place;
    /// Leg ends at.
    LegTo = "leg-to", Place;
    /// Water formed.
    LegWater = "leg-water", Water;
    /// Of it frost.
    LegFrost = "leg-frost", Water;
    /// Sweat outside.
    LegSweat = "leg-sweat", Water;
    /// Of it rime.
    LegRime = "leg-rime", Water;
    /// Wet from.
    LegWetFrom = "leg-wet-from", Place;
    /// Lowest wall.
    LowestWall = "lowest-wall", Temperature;
    /// Air at end.
    AirAtEnd = "air-at-end", Temperature;
    /// Vapour at end.
    RatioAtEnd = "ratio-at-end", Ratio;
    /// Mist at end.
    MistAtEnd = "mist-at-end", Mist;
    /// Relative humidity at end.
    HumidityAtEnd = "humidity-at-end", Relative;
    /// Dew point at end.
    DewPointAtEnd = "dew-point-at-end", Temperature;
    /// Heat to the space.
    HeatToSpace = "heat-to-space", Heat;
    /// Place along the tube.
    PlaceAlong = "place-along", Place;
    /// Air.
    AirAlong = "air-along", Temperature;
    /// Inner wall.
    WallAlong = "wall-along", Temperature;
    /// Outer surface.
    SurfaceAlong = "surface-along", Temperature;
    /// Dew point.
    DewPointAlong = "dew-point-along", Temperature;
    /// Vapour.
    RatioAlong = "ratio-along", Ratio;
    /// Relative humidity.
    HumidityAlong = "humidity-along", Relative;
    /// Formed so far.
    FormedSoFar = "formed-so-far", Water;
    /// Runs past.
    RunsPast = "runs-past", Water;
    /// Mist.
    MistAlong = "mist-along", Mist;
    /// Water formed per metre.
    Deposit = "deposit", WaterPerLength;
    /// Share that freezes.
    FrozenShare = "frozen-share", Number;
    /// Sweat per metre.
    SweatAlong = "sweat-along", WaterPerLength;
    /// Duct air.
    InletTemperature = "inlet-temperature", Temperature;
    /// Vapour in the duct.
    InletRatio = "inlet-ratio", Ratio;
    /// Mist in the duct.
    InletMist = "inlet-mist", Mist;
    /// Relative humidity in the duct.
    InletHumidity = "inlet-humidity", Relative;
    /// Duct dew point.
    InletDewPoint = "inlet-dew-point", Temperature;
    /// Dry air.
    DryAir = "dry-air", AirMass;
    /// Air at the sensor.
    SensorTemperature = "sensor-temperature", Temperature;
    /// Vapour at the sensor.
    SensorRatio = "sensor-ratio", Ratio;
    /// Mist at the sensor.
    SensorMist = "sensor-mist", Mist;
    /// Relative humidity at the sensor.
    SensorHumidity = "sensor-humidity", Relative;
    /// Dew point at the sensor.
    SensorDewPoint = "sensor-dew-point", Temperature;
    /// Vapour drawn in.
    WaterIn = "water-in", Water;
    /// Vapour not accounted for.
    WaterLeftOver = "water-left-over", Water;
    /// Energy turned over.
    EnergyTurnedOver = "energy-turned-over", Heat;
    /// Energy not accounted for.
    EnergyLeftOver = "energy-left-over", Heat;
    /// Reynolds number.
    Reynolds = "reynolds", Number;
    /// Prandtl number.
    Prandtl = "prandtl", Number;
    /// Schmidt number.
    Schmidt = "schmidt", Number;
    /// Nusselt number.
    Nusselt = "nusselt", Number;
    /// Sherwood number.
    Sherwood = "sherwood", Number;
    /// Inside film.
    FilmInside = "film-inside", Film;
    /// Outside film.
    FilmOutside = "film-outside", Film;
    /// Radiation.
    Radiation = "radiation", Film;
    /// Wall and insulation.
    WallResistance = "wall-resistance", Resistance;
    /// Diffusivity of vapour.
    Diffusivity = "diffusivity", Diffusivity;
    /// Viscosity of the air.
    Viscosity = "viscosity", Viscosity;
    /// Conductivity of the air.
    AirConductivity = "air-conductivity", Conductivity;
    /// Density of the air.
    Density = "density", Density;
    /// Saturation pressure.
    SaturationAir = "saturation-air", VapourPressure;
    /// Saturation pressure at the wall.
    Saturation = "saturation", VapourPressure;
    /// Heat of deposition.
    HeatOfDeposition = "heat-of-deposition", Enthalpy;
    /// Temperature of a state.
    StateTemperature = "state-temperature", Temperature;
    /// Humidity ratio of a state.
    HumidityRatio = "humidity-ratio", Ratio;
    /// Relative humidity of a state over water.
    HumidityOverWater = "humidity-over-water", Relative;
    /// Dew point of a state.
    DewPoint = "dew-point", Temperature;
    /// Vapour pressure.
    VapourPressure = "vapour-pressure", VapourPressure;
    /// Frost point.
    FrostPoint = "frost-point", Temperature;
    /// Relative humidity over ice.
    HumidityOverIce = "humidity-over-ice", Relative;
    /// Degree of saturation.
    SaturationDegree = "saturation-degree", Relative;
    /// Wet bulb.
    WetBulb = "wet-bulb", Temperature;
    /// Enthalpy.
    Enthalpy = "enthalpy", Enthalpy;
    /// Specific volume.
    SpecificVolume = "specific-volume", SpecificVolume;
    /// Most humid duct air that stays dry.
    BoundaryDewPoint = "boundary-dew-point", Temperature;
    /// Coldest space that stays dry.
    BoundarySpace = "boundary-space", Temperature;
    /// Longest tube that stays dry.
    BoundaryLength = "boundary-length", Place;
    /// Fall of a leg.
    LegFall = "leg-fall", Percent;
    /// Drop of a leg.
    LegDrop = "leg-drop", Diameter;
    /// Water a leg holds before any runs.
    LegHolds = "leg-holds", Mass;
    /// Largest hanger spacing.
    HangerLargest = "hanger-largest", Place;
    /// Sag between hangers.
    HangerSag = "hanger-sag", Diameter;
    /// Steepest slope of the sag.
    HangerSlope = "hanger-slope", Percent;
    /// Air speed in a leg.
    AirSpeed = "air-speed", Speed;
    /// Speed that holds water up.
    FloodingSpeed = "flooding-speed", Speed;
    /// Low point.
    LowPoint = "low-point", Place;
    /// Water into a low point.
    LowPointWater = "low-point-water", Water;
    /// Water that closes the bore.
    SealVolume = "seal-volume", Volume;
    /// Most that stands there.
    PoolCapacity = "pool-capacity", Volume;
    /// Water that throws slugs.
    SlugVolume = "slug-volume", Volume;
    /// Time to first slugs.
    TimeToSlugs = "time-to-slugs", Hours;
    /// Time to the low limit.
    TimeToLimit = "time-to-limit", Hours;
    /// Time to sealed.
    TimeToSeal = "time-to-seal", Hours;
    /// Water standing.
    PoolStanding = "pool-standing", Mass;
    /// Depth of water.
    PoolDepth = "pool-depth", Diameter;
    /// Pressure that holds air back.
    BubblingPressure = "bubbling-pressure", Gauge;
    /// Time to freeze.
    FreezingTime = "freezing-time", Hours;
    /// Water into a trap.
    TrapWater = "trap-water", Water;
    /// Time to full.
    TrapFull = "trap-full", Days;
    /// Pressure at a trap.
    TrapPressure = "trap-pressure", Gauge;
    /// Drop it needs.
    TrapDropNeeded = "trap-drop-needed", Diameter;
    /// Seal it needs.
    TrapSealNeeded = "trap-seal-needed", Diameter;
    /// Time to dry out.
    TrapDries = "trap-dries", Days;
    /// Water that the suction holds.
    DrainHead = "drain-head", Diameter;
    /// What runs out.
    DrainRunsOut = "drain-runs-out", Mass;
    /// Place for a trap.
    TrapProposed = "trap-proposed", Place;
    /// Trap over the low point.
    TrapOver = "trap-over", Diameter;
    /// Water left below a trap.
    TrapLeaves = "trap-leaves", Volume;
    /// Size of a trap.
    TrapSize = "trap-size", Volume;
    /// Runs out of an end.
    RunsOut = "runs-out", Water;
    /// Time to trouble.
    TimeToTrouble = "time-to-trouble", Hours;
    /// Drain interval.
    DrainIntervalProposed = "drain-interval-proposed", Days;
    /// Most frost at.
    FrostMostAt = "frost-most-at", Place;
    /// Time to iced.
    TimeToIce = "time-to-ice", Hours;
    /// Free of frost.
    FrostFreeShare = "frost-free-share", Percent;
    /// Water at thaw.
    ThawSlug = "thaw-slug", Mass;
    /// Speed of the generic fan.
    FanSpeed = "fan-speed", Number;
    /// Airflow.
    SensorFlow = "sensor-flow", Flow;
    /// From the duct.
    SampleShare = "sample-share", Percent;
    /// Reading.
    FlowReading = "flow-reading", Percent;
    /// First smoke.
    TransportFirst = "transport-first", Seconds;
    /// Transport time.
    TransportPlug = "transport-plug", Seconds;
    /// Nine tenths of the smoke.
    TransportNinety = "transport-ninety", Seconds;
    /// Total pressure.
    LinePressure = "line-pressure", Gauge;
    /// Pressure given or spent.
    PressureBudget = "pressure-budget", Gauge;
    /// Tightest low limit.
    LimitLow = "limit-low", Percent;
    /// Tightest high limit.
    LimitHigh = "limit-high", Percent;
    /// Place of a fault.
    FaultPlace = "fault-place", Place;
    /// States without one flow.
    StatesOpen = "states-open", Count;
    /// Plausible cases that are wet, of a hundred.
    DoubtWet = "doubt-wet", Count;
    /// Cases that were computed.
    DoubtCases = "doubt-cases", Count;
    /// Cases without an answer.
    DoubtUnanswered = "doubt-unanswered", Count;
    /// What a tenth of the cases stays under.
    DoubtLow = "doubt-low", Water;
    /// What half of the cases stay under.
    DoubtMiddle = "doubt-middle", Water;
    /// What nine tenths of the cases stay under.
    DoubtHigh = "doubt-high", Water;
    /// The same of mist at the sensor.
    DoubtMist = "doubt-mist", Ratio;
    /// Part of the spread.
    DoubtShare = "doubt-share", Percent;
    /// Air pressure.
    Pressure = "pressure", Pressure;
    /// Altitude.
    Altitude = "altitude", Place;
    /// Duct air.
    DuctTemperature = "duct-temperature", Temperature;
    /// Relative humidity of the duct air.
    DuctRelative = "duct-relative", Relative;
    /// Duct dew point.
    DuctDewPoint = "duct-dew-point", Temperature;
    /// Duct frost point.
    DuctFrostPoint = "duct-frost-point", Temperature;
    /// Vapour in the duct.
    DuctRatio = "duct-ratio", Ratio;
    /// Duct wet bulb.
    DuctWetBulb = "duct-wet-bulb", Temperature;
    /// Duct enthalpy.
    DuctEnthalpy = "duct-enthalpy", Enthalpy;
    /// Airflow.
    Flow = "flow", Flow;
    /// Air in the space.
    SpaceTemperature = "space-temperature", Temperature;
    /// Relative humidity of the space.
    SpaceRelative = "space-relative", Relative;
    /// Dew point of the space.
    SpaceDewPoint = "space-dew-point", Temperature;
    /// Frost point of the space.
    SpaceFrostPoint = "space-frost-point", Temperature;
    /// Vapour in the space.
    SpaceRatio = "space-ratio", Ratio;
    /// Wet bulb of the space.
    SpaceWetBulb = "space-wet-bulb", Temperature;
    /// Enthalpy of the space.
    SpaceEnthalpy = "space-enthalpy", Enthalpy;
    /// Surfaces around the tube.
    RadiantTemperature = "radiant-temperature", Temperature;
    /// Air speed across the tube.
    Wind = "wind", Speed;
    /// Length.
    Length = "length", Place;
    /// Rise.
    Rise = "rise", Place;
    /// Bore.
    Bore = "bore", Diameter;
    /// Outside diameter.
    OutsideDiameter = "outside-diameter", Diameter;
    /// Conductivity of the tube.
    TubeConductivity = "tube-conductivity", Conductivity;
    /// Emissivity of the surface.
    Emissivity = "emissivity", Number;
    /// Insulation.
    InsulationThickness = "insulation-thickness", Diameter;
    /// Conductivity of the insulation.
    InsulationConductivity = "insulation-conductivity", Conductivity;
    /// Heat tracing.
    Tracing = "tracing", HeatPerLength;
    /// Heat of the detector.
    DetectorHeat = "detector-heat", Heat;
    /// Humidity rating.
    HumidityRating = "humidity-rating", Relative;
    /// Static pressure in the duct.
    DuctStatic = "duct-static", Gauge;
    /// Velocity pressure in the duct.
    DuctVelocity = "duct-velocity", Gauge;
    /// Share of the velocity pressure met.
    Catch = "catch", Number;
    /// Pressure in the space.
    SpacePressure = "space-pressure", Gauge;
    /// Roughness of the bore.
    Roughness = "roughness", Diameter;
    /// Long-term modulus.
    Modulus = "modulus", Modulus;
    /// Density of the wall.
    TubeDensity = "tube-density", Density;
    /// Water between ribs.
    Corrugations = "corrugations", MassPerLength;
    /// Hanger spacing.
    HangerSpacing = "hanger-spacing", Place;
    /// Loss of a fitting.
    FittingLoss = "fitting-loss", Number;
    /// Place of a trap.
    TrapPlace = "trap-place", Place;
    /// Capacity of a trap.
    TrapCapacity = "trap-capacity", Volume;
    /// Seal of a trap.
    TrapSeal = "trap-seal", Diameter;
    /// Drop of a trap's outlet.
    TrapDrop = "trap-drop", Diameter;
    /// Sampling holes.
    HoleCount = "hole-count", Number;
    /// Diameter of a hole.
    HoleDiameter = "hole-diameter", Diameter;
    /// Discharge of a hole.
    HoleDischarge = "hole-discharge", Number;
    /// Resistance of the filter.
    FilterResistance = "filter-resistance", FilterResistance;
    /// Filter after a year.
    FilterDust = "filter-dust", Number;
    /// Loss of the chamber.
    ChamberLoss = "chamber-loss", Number;
    /// Volume of the chamber.
    ChamberVolume = "chamber-volume", Volume;
    /// Pressure of the fan.
    FanPressure = "fan-pressure", Gauge;
    /// Flow of the fan.
    FanFlow = "fan-flow", Flow;
    /// Suction at start.
    StartSuction = "start-suction", Gauge;
    /// Airflow limit.
    AirflowLimit = "airflow-limit", Percent;
    /// Margin of the limits.
    LimitMargin = "limit-margin", Percent;
    /// Drain interval.
    DrainInterval = "drain-interval", Days;
    /// Film on the wall.
    RetainedFilm = "film-retained", MassPerArea;
    /// Swing of the season.
    Season = "season", Kelvin;
}
