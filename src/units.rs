//! Units as types: a mass is not a length, a share is not a count.
//! Every quantity that crosses a module border wears one of these.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Div, Mul, Sub};

use serde::{Deserialize, Serialize};

/// Defines a quantity held as `f64` in one fixed unit.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $symbol:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub f64);

        impl $name {
            /// The unit's symbol, as printed.
            pub const SYMBOL: &'static str = $symbol;

            /// The smaller of two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
                Self(iter.map(|q| q.0).sum())
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                match f.precision() {
                    Some(digits) => write!(f, "{} {}", rounded(self.0, digits), $symbol),
                    None => write!(f, "{} {}", self.0, $symbol),
                }
            }
        }
    };
}

/// A figure with so many digits after the point, as all rounded figures are written: what rounds
/// to nothing has no sign.
#[must_use]
pub fn rounded(figure: f64, digits: usize) -> String {
    let text = format!("{figure:.digits$}");
    let nothing = |text: &str| text.bytes().all(|b| matches!(b, b'0' | b'.'));
    match text.strip_prefix('-') {
        Some(figure) if nothing(figure) => figure.to_owned(),
        _ => text,
    }
}

quantity!(
    /// A temperature, or a difference of temperatures, in degrees Celsius.
    Celsius,
    "C"
);
quantity!(
    /// Thermal time in degree-days Celsius.
    DegreeDays,
    "C-days"
);
quantity!(
    /// A mass in kilograms.
    Kilograms,
    "kg"
);
quantity!(
    /// A length in metres.
    Metres,
    "m"
);
quantity!(
    /// A length in centimetres: spacings and depths.
    Centimetres,
    "cm"
);
quantity!(
    /// Rain or evaporation in millimetres; on 1 m2 this is as many litres.
    Millimetres,
    "mm"
);
quantity!(
    /// A volume of water in litres.
    Litres,
    "L"
);
quantity!(
    /// An area of bed in square metres.
    SquareMetres,
    "m2"
);
quantity!(
    /// Hours, used for day length.
    Hours,
    "h"
);
quantity!(
    /// Radiation that falls on a square metre in one day, in megajoules.
    Radiation,
    "MJ/m2"
);
quantity!(
    /// Degrees of latitude, north positive, -66 to 66.
    Latitude,
    "deg"
);
quantity!(
    /// Minutes of a lesson.
    Minutes,
    "min"
);

quantity!(
    /// A mass in avoirdupois pounds, of 0.45359237 kg.
    Pounds,
    "lb"
);
quantity!(
    /// A length in international feet, of 0.3048 m.
    Feet,
    "ft"
);
quantity!(
    /// A length, or a depth of rain, in inches, of 2.54 cm.
    Inches,
    "in"
);
quantity!(
    /// A volume in US liquid gallons, of 231 cubic inches.
    Gallons,
    "gal"
);

impl Metres {
    /// The area of a rectangle with this side and another.
    #[must_use]
    pub fn by(self, other: Self) -> SquareMetres {
        SquareMetres(self.0 * other.0)
    }
}

impl Millimetres {
    /// The water of this depth on an area: one millimetre on one square metre is one litre.
    #[must_use]
    pub fn on(self, area: SquareMetres) -> Litres {
        Litres(self.0 * area.0)
    }
}

impl Metres {
    /// The same length in centimetres.
    #[must_use]
    pub fn to_centimetres(self) -> Centimetres {
        Centimetres(self.0 * 100.0)
    }
}

impl Centimetres {
    /// The same length in metres.
    #[must_use]
    pub fn to_metres(self) -> Metres {
        Metres(self.0 / 100.0)
    }
}

// The sizes of the customary units are exact. Source: NIST Special Publication 811, 2008,
// appendix B.8.

/// Kilograms of a pound.
pub const POUND: f64 = 0.453_592_37;
/// Metres of a foot.
pub const FOOT: f64 = 0.3048;
/// Centimetres of an inch.
pub const INCH: f64 = 2.54;
/// Kilograms of an ounce.
pub const OUNCE: f64 = POUND / 16.0;
/// Metres of a mile.
pub const MILE: f64 = 5280.0 * FOOT;
/// Litres of a US gallon.
const GALLON: f64 = 3.785_411_784;

impl Pounds {
    /// Ounces of a pound.
    const OUNCES: f64 = 16.0;

    /// The same mass in avoirdupois ounces, 16 to the pound.
    #[must_use]
    pub fn ounces(self) -> f64 {
        self.0 * Self::OUNCES
    }
}

impl Kilograms {
    /// The same mass in pounds.
    #[must_use]
    pub fn to_pounds(self) -> Pounds {
        Pounds(self.0 / POUND)
    }
}

impl Metres {
    /// The same length in feet.
    #[must_use]
    pub fn to_feet(self) -> Feet {
        Feet(self.0 / FOOT)
    }
}

impl Centimetres {
    /// The same length in inches.
    #[must_use]
    pub fn to_inches(self) -> Inches {
        Inches(self.0 / INCH)
    }
}

impl Millimetres {
    /// The same depth in inches.
    #[must_use]
    pub fn to_inches(self) -> Inches {
        Inches(self.0 / (10.0 * INCH))
    }
}

impl Inches {
    /// The same depth in millimetres.
    #[must_use]
    pub fn to_millimetres(self) -> Millimetres {
        Millimetres(self.0 * 10.0 * INCH)
    }
}

impl Litres {
    /// The same volume in US gallons.
    #[must_use]
    pub fn to_gallons(self) -> Gallons {
        Gallons(self.0 / GALLON)
    }
}

/// A part of a whole, 0 to 1 (an expected amount may exceed its target and then passes 1).
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Share(pub f64);

impl fmt::Display for Share {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} %", rounded(self.0 * 100.0, 0))
    }
}

/// The length of bed that one strip takes: beds are shared in whole strips across their width.
pub const STRIP: Metres = Metres(0.30);
