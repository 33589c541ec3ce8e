//! In what water is measured out: litres and cans of 10, or US gallons and cans of 2.

use super::Words;
use crate::units::{Inches, Litres, Millimetres, SquareMetres};

/// A unit of water with the steps in which it is told. Cans of these sizes are common.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterMeasure {
    /// The unit, several of it: `litres`.
    pub unit: &'static str,
    /// How much a can holds, in that unit.
    pub can: f64,
    /// Figures of a week are told in steps of this.
    step: f64,
    /// What a small child carries.
    pub small: &'static str,
    /// What is read off a rain gauge at once: `millimetre`.
    pub gauge: &'static str,
    /// Rain of that depth.
    gauge_depth: Millimetres,
    /// Litres of the unit.
    litres: f64,
}

impl Words {
    /// How water is measured out.
    #[must_use]
    pub fn water(self) -> WaterMeasure {
        let british = WaterMeasure {
            unit: "litres",
            can: 10.0,
            step: 5.0,
            small: "two litres",
            gauge: "millimetre",
            gauge_depth: Millimetres(1.0),
            litres: 1.0,
        };
        let american = WaterMeasure {
            unit: "gallons",
            can: 2.0,
            step: 1.0,
            small: "half a gallon",
            gauge: "tenth of an inch",
            gauge_depth: Inches(0.1).to_millimetres(),
            litres: 1.0 / Litres(1.0).to_gallons().0,
        };
        self.choose(british, american)
    }
}

impl WaterMeasure {
    /// The same under the names of another language.
    #[must_use]
    pub fn called(self, unit: &'static str, small: &'static str, gauge: &'static str) -> Self {
        Self {
            unit,
            small,
            gauge,
            ..self
        }
    }

    /// A week's water, to the nearest step.
    #[must_use]
    pub fn told(self, water: Litres) -> f64 {
        // Adding nothing makes plain what is a negative nothing.
        (water.0 / self.litres / self.step).round() * self.step + 0.0
    }

    /// The cans that hold what is told of a week's water.
    #[must_use]
    pub fn cans(self, water: Litres) -> f64 {
        (self.told(water) / self.can).ceil()
    }

    /// A year's water, to the nearest ten; what is nothing has no sign.
    #[must_use]
    pub fn tens(self, water: Litres) -> f64 {
        (water.0 / self.litres / 10.0).round() * 10.0 + 0.0
    }

    /// What the rain of one line of the gauge saves on an area: `4.3`.
    #[must_use]
    pub fn saved_by_gauge(self, area: SquareMetres) -> String {
        format!("{:.1}", self.gauge_depth.on(area).0 / self.litres)
    }
}
