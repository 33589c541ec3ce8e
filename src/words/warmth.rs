//! The words of frost and warmth of the past years, week by week along a plan.

use crate::calendar::{Date, Horizon};
use crate::facts::weather_weeks::{WeatherWeeks, Week};
use crate::units::{Celsius, rounded};
use crate::words::view::View;

/// Both bands with their words.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    /// The weeks of the plan.
    pub weeks: Vec<Week>,
    /// Beside the frost, two lines.
    pub frost_label: [&'static str; 2],
    /// Beside the warmth, two lines.
    pub warmth_label: [&'static str; 2],
    /// Every tick of warmth, and what stands there.
    pub ticks: Vec<(Celsius, String)>,
    /// The ends of the scale of frost: all years, no year.
    pub frost_ticks: [&'static str; 2],
    /// What they mean and what they show, in sentences.
    pub description: String,
}

/// What the bands mean.
const NOTE: &str = "Frost: the share of the years in which it still freezes later that spring, or has frozen \
                    already that autumn. Warmth: the mean of each week; the line is the middle \
                    year, the band holds 8 years of 10.";

/// Between two ticks of warmth.
const TICK: Celsius = Celsius(10.0);

impl Climate {
    /// Along the plan of a view; `None` without a whole weather year.
    #[must_use]
    pub fn of(view: &View<'_>) -> Option<Self> {
        let seen = view.weather_weeks()?;
        let ticks = seen.ticks(TICK).into_iter();
        Some(Self {
            description: description(view, &seen),
            ticks: ticks
                .map(|t| {
                    let (c, f) = degrees(t);
                    (t, format!("{c} C, {f} F"))
                })
                .collect(),
            weeks: seen.weeks,
            frost_ticks: ["100 %", "0 %"],
            frost_label: ["Frost: share", "of the years"],
            warmth_label: ["Warmth", "of a week"],
        })
    }
}

impl Climate {
    /// The same along a part of the plan.
    #[must_use]
    pub fn over(mut self, plan: Horizon, part: Horizon) -> Self {
        let before = plan.day(part.first()) / 7;
        self.weeks = self
            .weeks
            .into_iter()
            .skip(before)
            .take(part.weeks())
            .collect();
        self
    }
}

/// Whole degrees in C and in F.
fn degrees(t: Celsius) -> (String, String) {
    (rounded(t.0, 0), rounded(t.0 * 1.8 + 32.0, 0))
}

fn description(view: &View<'_>, seen: &WeatherWeeks) -> String {
    let day = |day: Option<Date>| {
        day.map_or_else(|| "no day".to_owned(), |day| view.words.month_day(day))
    };
    let in_both = |t: Celsius| {
        let (c, f) = degrees(t);
        format!("{c} C ({f} F)")
    };
    let (coldest, warmest) = seen.middle_range();
    let [last_in_half, last_in_tenth] = seen.last_frosts.map(day);
    let [first_in_tenth, first_in_half] = seen.first_frosts.map(day);
    format!(
        "Frost of the {}: in half of them it freezes once more after {last_in_half} in spring, in \
         1 of 10 after {last_in_tenth}; in autumn it has frozen before {first_in_tenth} in 1 of 10 \
         and before {first_in_half} in half. In the middle year a week's mean warmth lies between \
         {} and {}. {NOTE}",
        view.kind_of_years(),
        in_both(coldest),
        in_both(warmest),
    )
}
