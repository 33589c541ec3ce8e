//! Keys in feet, inches, pounds, ounces and degrees Fahrenheit: each stands in the place of a key of the
//! file in metric units.

use std::ops::RangeInclusive;

use crate::units::{FOOT, INCH, OUNCE, POUND};

const FEET: Scale = Scale(FOOT, 0.0);
const INCHES_AS_CM: Scale = Scale(INCH, 0.0);
const INCHES_AS_MM: Scale = Scale(10.0 * INCH, 0.0);
const POUNDS: Scale = Scale(POUND, 0.0);
const OUNCES_AS_G: Scale = Scale(1000.0 * OUNCE, 0.0);
const FAHRENHEIT: Scale = Scale(1.0 / 1.8, -32.0 / 1.8);
/// Degrees between two temperatures, not a temperature.
const FAHRENHEIT_APART: Scale = Scale(1.0 / 1.8, 0.0);

/// `a` and `b` of `metric = a * figure + b`.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Scale(f64, f64);

/// A key in another unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OtherUnit {
    /// The key in whose place it stands.
    metric: &'static str,
    /// Its name in the file.
    pub key: &'static str,
    scale: Scale,
}

/// The metric key, the key in its place, and how a figure of this becomes one of that.
const OTHERS: [(&str, &str, Scale); 28] = [
    ("length_m", "length_ft", FEET),
    ("width_m", "width_ft", FEET),
    ("trellis_m", "trellis_ft", FEET),
    ("x_m", "x_ft", FEET),
    ("y_m", "y_ft", FEET),
    ("soil_cm", "soil_in", INCHES_AS_CM),
    ("trellis_depth_cm", "trellis_depth_in", INCHES_AS_CM),
    ("in_row_cm", "in_row_in", INCHES_AS_CM),
    ("between_row_cm", "between_row_in", INCHES_AS_CM),
    ("rain_mm", "rain_in", INCHES_AS_MM),
    ("grams_per_portion", "ounces_per_portion", OUNCES_AS_G),
    ("low_kg", "low_lb", POUNDS),
    ("expected_kg", "expected_lb", POUNDS),
    ("yield_low_kg", "yield_low_lb", POUNDS),
    ("yield_expected_kg", "yield_expected_lb", POUNDS),
    ("crate_kg", "crate_lb", POUNDS),
    ("tmin_c", "tmin_f", FAHRENHEIT),
    ("tmax_c", "tmax_f", FAHRENHEIT),
    ("room_c", "room_f", FAHRENHEIT),
    ("reference_c", "reference_f", FAHRENHEIT),
    ("base_c", "base_f", FAHRENHEIT),
    ("upper_c", "upper_f", FAHRENHEIT),
    ("frost_limit_c", "frost_limit_f", FAHRENHEIT),
    ("sowing_soil_c", "sowing_soil_f", FAHRENHEIT),
    ("planting_soil_c", "planting_soil_f", FAHRENHEIT),
    ("soil_bonus_c", "soil_bonus_f", FAHRENHEIT_APART),
    ("keeps_off_c", "keeps_off_f", FAHRENHEIT_APART),
    ("warms_soil_c", "warms_soil_f", FAHRENHEIT_APART),
];

impl OtherUnit {
    /// A figure of this key as one of the metric key.
    #[must_use]
    pub fn metric(&self, figure: f64) -> f64 {
        let Scale(a, b) = self.scale;
        a * figure + b
    }

    /// The range of the metric key in this unit.
    #[must_use]
    pub fn range(&self, metric: &RangeInclusive<f64>) -> RangeInclusive<f64> {
        let Scale(a, b) = self.scale;
        (metric.start() - b) / a..=(metric.end() - b) / a
    }
}

/// The key that may stand in the place of a metric one.
pub fn instead_of(metric: &str) -> Option<OtherUnit> {
    find(|other| other.metric == metric)
}

/// The key in another unit that has this name.
pub fn named(key: &str) -> Option<OtherUnit> {
    find(|other| other.key == key)
}

/// The key that means the same in the other unit, metric or not.
pub fn same_as(key: &str) -> Option<&'static str> {
    let other = instead_of(key).map(|other| other.key);
    other.or_else(|| named(key).map(|other| other.metric))
}

fn find(is_it: impl Fn(&OtherUnit) -> bool) -> Option<OtherUnit> {
    let mut all = OTHERS.iter().map(|(metric, key, scale)| OtherUnit {
        metric,
        key,
        scale: *scale,
    });
    all.find(is_it)
}
