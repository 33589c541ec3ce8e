//! Sizes of the customary units.

use tureen::units::{Centimetres, Kilograms, Litres, Metres, Millimetres};

use super::check::{Check, EXACT};

pub fn checks() -> Vec<Check> {
    // An inch is 25.4 mm exactly, a foot twelve of them, a gallon 231 cubic inches.
    let gallon = 231.0 * 2.54_f64.powi(3) / 1000.0;
    [
        (
            "kilograms of a pound",
            0.453_592_37,
            Kilograms(1.0).to_pounds().0,
        ),
        ("metres of a foot", 0.3048, Metres(1.0).to_feet().0),
        (
            "centimetres of an inch",
            2.54,
            Centimetres(1.0).to_inches().0,
        ),
        (
            "millimetres of an inch",
            25.4,
            Millimetres(1.0).to_inches().0,
        ),
        (
            "litres of a US gallon",
            3.785_411_784,
            Litres(1.0).to_gallons().0,
        ),
        (
            "a US gallon by its inches",
            gallon,
            Litres(1.0).to_gallons().0,
        ),
    ]
    .into_iter()
    .map(|(what, printed, a_unit)| Check::number(what, 1.0 / a_unit, printed, EXACT, "NIST-SP811"))
    .collect()
}
