//! Area and volume.

use crate::macros::quantity;

quantity! {
    /// An area, kept in square metres.
    ///
    /// ```
    /// use dewrun_quantity::Area;
    /// assert_eq!(Area::square_millimetres(250.0).to_square_centimetres(), 2.5);
    /// ```
    Area {
        square_metres / to_square_metres: 1.0,
        square_inches / to_square_inches: 0.0254 * 0.0254,
    } parts {
        square_centimetres / to_square_centimetres: 1e4,
        square_millimetres / to_square_millimetres: 1e6,
    }
}

quantity! {
    /// A volume, kept in cubic metres. The fluid ounce is that of the United States.
    ///
    /// ```
    /// use dewrun_quantity::Volume;
    /// assert!((Volume::fluid_ounces(1.0).to_millilitres() - 29.573_529_562_5).abs() < 1e-9);
    /// ```
    Volume {
        cubic_metres / to_cubic_metres: 1.0,
        fluid_ounces / to_fluid_ounces: 29.573_529_562_5e-6,
    } parts {
        litres / to_litres: 1e3,
        millilitres / to_millilitres: 1e6,
    }
}
