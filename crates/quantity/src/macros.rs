//! One macro that makes a quantity: a private number in one raw unit, with doors named for units.

/// Defines a quantity whose units differ by a factor only.
///
/// Each unit gives a constructor (`Length::metres(2.0)`) and a reader (`.to_metres()`).
/// The first unit is the raw one and must have the factor 1.
/// Decimal parts of it stand under `parts` with their number in the raw unit: 9 mm are then 9/1000 m to the last bit,
/// which 9 times the nearest number to 0.001 is not.
macro_rules! quantity {
    (
        $(#[$meta:meta])*
        $name:ident {
            $( $(#[$unit_meta:meta])* $make:ident / $read:ident : $factor:expr ),+ $(,)?
        }
        $( parts { $( $part:ident / $read_part:ident : $number:expr ),+ $(,)? } )?
    ) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(pub(crate) f64);

        impl $name {
            /// Nothing of the quantity.
            pub const ZERO: Self = Self(0.0);

            $(
                #[doc = concat!("From a number of ", stringify!($make), ".")]
                $(#[$unit_meta])*
                #[must_use]
                #[inline]
                pub const fn $make(value: f64) -> Self {
                    Self(value * $factor)
                }

                #[doc = concat!("As a number of ", stringify!($make), ".")]
                #[must_use]
                #[inline]
                pub const fn $read(self) -> f64 {
                    self.0 / $factor
                }
            )+

            $($(
                #[doc = concat!("From a number of ", stringify!($part), ".")]
                #[must_use]
                #[inline]
                pub const fn $part(value: f64) -> Self {
                    Self(value / $number)
                }

                #[doc = concat!("As a number of ", stringify!($part), ".")]
                #[must_use]
                #[inline]
                pub const fn $read_part(self) -> f64 {
                    self.0 * $number
                }
            )+)?

            /// Neither NaN nor infinite.
            #[must_use]
            pub const fn is_finite(self) -> bool {
                self.0.is_finite()
            }

            /// The smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
        }

        impl core::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl core::ops::AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl core::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl core::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl core::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl core::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                Self(items.map(|item| item.0).sum())
            }
        }
    };
}

pub(crate) use quantity;
