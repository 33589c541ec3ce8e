//! What `tureen climate` prints: a place's frosts, warmth, rain and light, and the weeks that
//! suit warm-season and cool-season crops, as its weather years show them.

mod chart;
mod warmth;
mod weeks;

use crate::facts::climate::Climate;
use crate::garden::Garden;

use super::frost;
use crate::page::Page;
use crate::words::Words;
use crate::words::view::{kind_of_years, latitude};

/// The climate of a garden's place.
#[must_use]
pub fn climate(garden: &Garden) -> Page {
    let climate = Climate::of(garden);
    let words = Words::of(garden);
    let mut page = Page::new();
    let whose = garden.school.as_ref().unwrap_or(&garden.name);
    page.title(&format!(
        "The climate of {whose}, {}",
        latitude(garden.latitude)
    ));
    if climate.years == 0 {
        page.paragraph(
            "The weather record does not hold every week of the year once, so only its frosts \
             can be told. Give daily weather of at least one whole year, better of thirty.",
        );
        frost::write(&climate, words, &mut page);
        return page;
    }
    let measured = climate.measured;
    let span = measured.map_or_else(String::new, |(from, to)| format!(" ({from} to {to})"));
    page.paragraph(&format!(
        "As {} {} show it{span}. What was is no promise of what comes.",
        climate.years,
        kind_of_years(garden),
    ));
    chart::write(&climate.weeks, words, &mut page);
    weeks::windows(&climate, words, &mut page);
    frost::write(&climate, words, &mut page);
    warmth::write(garden, &climate, words, &mut page);
    weeks::table(&climate.weeks, words, &mut page);
    page
}
