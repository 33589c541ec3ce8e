//! Frost and warmth of the past years, week by week along a plan.

use crate::calendar::{Date, plus_days};
use crate::report::view::View;
use crate::units::{Celsius, rounded};
use crate::weather::cold_days::{ColdDays, FREEZING};
use crate::weather::rank::nearest_rank;

/// One week of the plan as the weather years saw it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Week {
    /// Share of the years in which it still freezes in this week or later in spring, or has
    /// frozen by the end of it in autumn.
    pub frost: f64,
    /// The week's mean warmth that one year in ten is colder than.
    pub cold: Celsius,
    /// That of the middle year.
    pub middle: Celsius,
    /// That which one year in ten is warmer than.
    pub warm: Celsius,
}

/// Both bands with their words.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    /// The weeks of the plan.
    pub weeks: Vec<Week>,
    /// Beside the frost, two lines.
    pub frost_label: [&'static str; 2],
    /// Beside the warmth, two lines.
    pub warmth_label: [&'static str; 2],
    /// Every tick of warmth: degrees Celsius, and what stands there.
    pub ticks: Vec<(f64, String)>,
    /// The ends of the scale of frost: all years, no year.
    pub frost_ticks: [&'static str; 2],
    /// What they mean and what they show, in sentences.
    pub description: String,
}

/// What the bands mean.
const NOTE: &str = "Frost: the share of the years in which it still freezes later that spring, or has frozen \
                    already that autumn. Warmth: the mean of each week; the line is the middle \
                    year, the band holds 8 years of 10.";

/// Degrees between two ticks of warmth, in a picture of all grades and in that of one.
const TICK: f64 = 10.0;
const WIDE_TICK: f64 = 20.0;

impl Climate {
    /// Along the plan of a view; `None` without a whole weather year.
    #[must_use]
    pub fn of(view: &View<'_>) -> Option<Self> {
        Self::with_ticks(view, TICK)
    }

    /// The same for a lower picture.
    #[must_use]
    pub fn small(view: &View<'_>) -> Option<Self> {
        Self::with_ticks(view, WIDE_TICK)
    }

    fn with_ticks(view: &View<'_>, tick: f64) -> Option<Self> {
        let garden = view.garden;
        let horizon = garden.horizon();
        let frosts = ColdDays::frosts(&garden.weather, garden.latitude, FREEZING);
        let years = garden.weather.years(horizon);
        let weeks: Vec<Week> = (0..horizon.weeks())
            .map(|week| {
                let monday = horizon.monday(week);
                let frost = share(&frosts, monday)?;
                let mut means: Vec<f64> = years
                    .iter()
                    .filter_map(|year| year.days.get(week * 7..week * 7 + 7))
                    .map(|days| days.iter().map(|d| d.mean().0).sum::<f64>() / 7.0)
                    .collect();
                means.sort_by(f64::total_cmp);
                let at = |share| nearest_rank(&means, share).map(Celsius);
                Some(Week {
                    frost,
                    cold: at(0.1)?,
                    middle: at(0.5)?,
                    warm: at(0.9)?,
                })
            })
            .collect::<Option<_>>()?;
        Some(Self {
            description: description(view, &weeks, &frosts),
            ticks: ticks(&weeks, tick),
            weeks,
            frost_ticks: ["100 %", "0 %"],
            frost_label: ["Frost: share", "of the years"],
            warmth_label: ["Warmth", "of a week"],
        })
    }
}

/// The greater share of the week's first and last day: in spring it is the first day's, in
/// autumn the last one's.
fn share(frosts: &ColdDays, monday: Date) -> Option<f64> {
    let ends = [monday, plus_days(monday, 6)];
    let shares = ends.iter().filter_map(|day| frosts.share_around(*day));
    shares.reduce(f64::max)
}

/// Ticks that hold all weeks.
fn ticks(weeks: &[Week], apart: f64) -> Vec<(f64, String)> {
    let low = weeks.iter().map(|w| w.cold.0).fold(f64::MAX, f64::min);
    let high = weeks.iter().map(|w| w.warm.0).fold(f64::MIN, f64::max);
    let (first, last) = ((low / apart).floor() as i32, (high / apart).ceil() as i32);
    (first..=last.max(first + 1))
        .map(|tick| {
            let c = f64::from(tick) * apart;
            let [told, f] = [c, c * 1.8 + 32.0].map(|t| rounded(t, 0));
            (c, format!("{told} C, {f} F"))
        })
        .collect()
}

fn description(view: &View<'_>, weeks: &[Week], frosts: &ColdDays) -> String {
    let day = |day: Option<Date>| {
        day.map_or_else(|| "no day".to_owned(), |day| view.words.month_day(day))
    };
    let coldest = weeks.iter().map(|w| w.middle.0).fold(f64::MAX, f64::min);
    let warmest = weeks.iter().map(|w| w.middle.0).fold(f64::MIN, f64::max);
    let in_both = |c: f64| {
        let [c, f] = [c, c * 1.8 + 32.0].map(|t| rounded(t, 0));
        format!("{c} C ({f} F)")
    };
    format!(
        "Frost of the {}: in half of them it freezes once more after {} in spring, in 1 of 10 \
         after {}; in autumn it has frozen before {} in 1 of 10 and before {} in half. In the \
         middle year a week's mean warmth lies between {} and {}. {NOTE}",
        view.kind_of_years(),
        day(frosts.still_after(0.5)),
        day(frosts.still_after(0.1)),
        day(frosts.already_before(0.1)),
        day(frosts.already_before(0.5)),
        in_both(coldest),
        in_both(warmest),
    )
}
