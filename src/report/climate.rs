//! What `tureen climate` prints: a place's frosts, warmth, rain and light, and the weeks that
//! suit warm-season and cool-season crops, as its weather years show them.

mod chart;
mod warmth;
mod weeks;

use crate::garden::Garden;
use crate::growth::climate::{Spell, year_by_weeks};

use super::frost;
use super::page::Page;
use super::view::{kind_of_years, latitude};
use super::words::Words;

/// The climate of a garden's place.
#[must_use]
pub fn climate(garden: &Garden) -> Page {
    let (record, place) = (&garden.weather, garden.latitude);
    let weeks = year_by_weeks(record, place);
    let years = weeks.iter().map(|w| w.years).min().unwrap_or(0);
    let words = Words::of(garden);
    let mut page = Page::new();
    let whose = garden.school.as_ref().unwrap_or(&garden.name);
    page.title(&format!("The climate of {whose}, {}", latitude(place)));
    if years == 0 {
        page.paragraph(
            "The weather record does not hold every week of the year once, so only its frosts \
             can be told. Give daily weather of at least one whole year, better of thirty.",
        );
        frost::write(record, place, words, &mut page);
        return page;
    }
    page.paragraph(&format!(
        "As {years} {} show it{}. What was is no promise of what comes.",
        kind_of_years(garden),
        span(garden, &weeks)
    ));
    chart::write(&weeks, words, &mut page);
    weeks::windows(&weeks, words, &mut page);
    frost::write(record, place, words, &mut page);
    warmth::write(record, place, words, &mut page);
    weeks::table(&weeks, words, &mut page);
    page
}

/// ` (1982 to 2018)`; nothing for generated years, whose numbers mean nothing.
fn span(garden: &Garden, weeks: &[Spell]) -> String {
    use chrono::Datelike;
    let record = &garden.weather;
    if record.is_generated() || weeks.is_empty() {
        return String::new();
    }
    let last = crate::calendar::plus_days(record.first(), record.days().len() as i64 - 1);
    format!(" ({} to {})", record.first().year(), last.year())
}
