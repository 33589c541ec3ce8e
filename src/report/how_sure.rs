//! How sure the numbers of ready years are, and what they leave out.

use chrono::Datelike;

use crate::calendar::Date;
use crate::plan::{Planting, StepKind};
use crate::units::Hours;
use crate::weather::WeatherYear;
use crate::weather::cold_days::{ColdDays, FREEZING};
use crate::weather::sun::day_length;
use crate::weather::trend::trend;

use super::page::Page;
use super::view::View;
use super::words::list;
use crate::facts::interval::further_years_95;
use crate::facts::spans::span_of;

/// A record that ends so many years before the feast is called old.
const OLD_YEARS: i32 = 10;

/// Writes what to expect of each ingredient, by which method, and what it does not know.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    let years = view.years();
    page.heading("How sure this is");
    let parts: Vec<String> = view
        .ingredients()
        .map(|(_, ingredient, seen)| {
            let (fewest, most) = further_years_95(seen.ready_years(), years);
            format!("{} in {fewest} to {most}", ingredient.name)
        })
        .collect();
    page.item(&format!(
        "Of {years} more years expect {}. Nineteen times in twenty it comes out so, if the \
         weather goes on as it was.",
        parts.join(", ")
    ));
    page.item(
        "A plan suits the years it was made from better than others. In tests on years that the \
         plans had not seen, the whole dish was ready less often than promised, by five to \
         ten years in a hundred on average.",
    );
    if let Some(late) = autumn_light(view) {
        page.item(&late);
    }
    page.item(&climate(view));
    page.item("Method: 95 % prediction interval by joint sampling, Krishnamoorthy and Peng 2011.");
}

/// Day and night are equal.
const EQUINOX: Hours = Hours(12.0);

/// The ingredients that ripen in the weakening light of autumn, which degree-days do not know.
fn autumn_light(view: &View<'_>) -> Option<String> {
    let light = |day: Date| day_length(view.garden.latitude, day.ordinal());
    let into_bed = |p: &Planting| {
        let plants = span_of(p, StepKind::PlantOut);
        plants.or_else(|| span_of(p, StepKind::Sow)).map(|s| s.0)
    };
    let late = |p: &&Planting| {
        let days = into_bed(p).zip(span_of(p, StepKind::Pick));
        days.is_some_and(|(from, (_, to))| {
            let next = from.succ_opt().unwrap_or(from);
            light(next) < light(from) && light(to) < EQUINOX
        })
    };
    let mut names: Vec<String> = Vec::new();
    for planting in view.plan.plantings.iter().filter(late) {
        if !names.contains(&planting.ingredient) {
            names.push(planting.ingredient.clone());
        }
    }
    (!names.is_empty()).then(|| {
        format!(
            "What is sown or planted after midsummer and picked after the day and night are equal \
             grows in weakening light, of which these figures know too little: {}. A crop of \
             65 days may then take 80 (rule of A. McDaniel, Virginia Tech). Where you can, start it \
             a week or two earlier.",
            list(&names)
        )
    })
}

/// What the years themselves cannot tell: whether the climate is still theirs.
fn climate(view: &View<'_>) -> String {
    let garden = view.garden;
    if garden.weather.is_generated() {
        let (frosty, all) = ColdDays::frosts(&garden.weather, garden.latitude, FREEZING).springs();
        let mild = if 2 * frosty < all {
            " Where it seldom freezes, as here, made-up days differ more from one another than \
             real ones: a record of your own place tells far better."
        } else {
            ""
        };
        return format!(
            "The years are made up from monthly means. A station's record may have more years \
             far from the mean, and the climate changes.{mild}"
        );
    }
    let years = garden.weather.years(garden.horizon());
    let (Some(first), Some(last)) = (years.first(), years.last()) else {
        return "No weather year covers the plan.".to_owned();
    };
    let age = garden.horizon().first().year() - last.label;
    let old = if age >= OLD_YEARS {
        format!(", the last of them {age} years before this one")
    } else {
        String::new()
    };
    let means: Vec<f64> = years.iter().map(mean).collect();
    let change = match trend(&means).map(|per_year| per_year * 10.0) {
        Some(more) if more > 0.0 => format!(
            "In these weeks it grew warmer, by {more:.1} C in ten years (Sen's slope; certain by \
             the Mann-Kendall test), so the later years tell more than the early ones."
        ),
        Some(less) => format!(
            "In these weeks it grew cooler, by {:.1} C in ten years (Sen's slope; certain by the \
             Mann-Kendall test), so the later years tell more than the early ones.",
            -less
        ),
        None => {
            "No trend of warmth is certain in them; the climate may change all the same.".to_owned()
        }
    };
    format!(
        "The years are {} to {}{old}. {change}",
        first.label, last.label
    )
}

/// Mean temperature of the plan's span.
fn mean(year: &WeatherYear<'_>) -> f64 {
    let sum: f64 = year.days.iter().map(|day| day.mean().0).sum();
    sum / year.days.len().max(1) as f64
}
