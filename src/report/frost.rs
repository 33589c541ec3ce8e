//! The frosts of a record in plain words: how often it still freezes after a day of spring, or
//! already before a day of autumn, and how long it stays free of frost between.

use crate::calendar::{Date, plus_days};
use crate::facts::climate::Climate;
use crate::weather::cold_days::ColdDays;

use crate::page::Page;
use crate::words::{Words, sentence};

/// The last frosts in a sentence: half of the years, and one year in ten.
#[must_use]
pub fn spring(frosts: &ColdDays, words: Words) -> String {
    let (frosty, all) = frosts.springs();
    match (frosty, all) {
        (_, 0) => return "The record holds no whole spring.".to_owned(),
        (0, _) => return "No frost in any spring of the record.".to_owned(),
        _ => {}
    }
    let after = |share| edge("after", frosts.still_after(share), words);
    format!(
        "Last frost: {} in half of the years, {} in one year of ten; {frosty} of {all} springs \
         had frost.",
        after(0.5),
        after(0.1)
    )
}

/// The first frosts in a sentence.
#[must_use]
pub fn autumn(frosts: &ColdDays, words: Words) -> String {
    let (frosty, all) = frosts.autumns();
    match (frosty, all) {
        (_, 0) => return "The record holds no whole autumn.".to_owned(),
        (0, _) => return "No frost in any autumn of the record.".to_owned(),
        _ => {}
    }
    let before = |share| edge("before", frosts.already_before(share), words);
    format!(
        "First frost: {} in half of the years, {} in one year of ten; {frosty} of {all} autumns \
         had frost.",
        before(0.5),
        before(0.1)
    )
}

/// `after 6 May`, or `none`.
fn edge(side: &str, day: Option<Date>, words: Words) -> String {
    day.map_or_else(
        || "none".to_owned(),
        |d| format!("{side} {}", words.full_month(d)),
    )
}

/// The frosts of `climate`: sentences for light and hard frosts, the season between, a table.
pub(super) fn write(climate: &Climate, words: Words, page: &mut Page) {
    let (light, hard) = (&climate.frosts, &climate.hard_frosts);
    page.heading("Frost");
    if light.springs().0 + light.autumns().0 == 0 {
        let years = light.springs().1.max(light.autumns().1);
        page.line(&format!(
            "None: in {years} years it was never 0 C or colder."
        ));
        return;
    }
    page.line(&format!(
        "Light frost is air of 0 C (32 F) or colder; it kills tomatoes, beans and squash. Hard \
         frost is -2.2 C (28 F) or colder; what stands it is called hardy, such as kale and leek. \
         The ground can freeze on a clear night when the air, {} up, does not.",
        words.height_of_a_thermometer()
    ));
    let spring = chances(
        [light, hard],
        "spring",
        "after",
        words,
        ColdDays::still_after,
    );
    let autumn = chances(
        [light, hard],
        "autumn",
        "before",
        words,
        ColdDays::already_before,
    );
    for text in spring.into_iter().chain(autumn) {
        page.item(&text);
    }
    if let Some(day) = light.still_after(0.1) {
        page.item(&format!(
            "So what frost kills is safe from {} on, until autumn, in 9 springs of 10: in those the \
             last frost comes on {} or before.",
            words.full_month(plus_days(day, 1)),
            words.full_month(day)
        ));
    }
    if let Some(text) = between(light) {
        page.item(&text);
    }
    page.gap();
    table(light, hard, words, page);
    page.gap();
    page.line(
        "Read a row so: in that many years of ten it freezes once more after the date of spring, \
         and has frozen before the date of autumn. Safe is the day after the \
         spring date of the first row, and until the day before its autumn date. \
         Each date is that of one of the years, the one nearest to the share when all are put \
         in order; years without such a frost count too. Sources: 32 and 28 F as in the tables \
         of the Minnesota DNR State Climatology Office (Freeze dates, 1991-2020); \"hard\" after \
         Knapp, Kansas State University, 2018.",
    );
}

/// When it freezes in a half-year: a sentence for light and one for hard frosts.
fn chances(
    [light, hard]: [&ColdDays; 2],
    half: &str,
    side: &str,
    words: Words,
    date: impl Fn(&ColdDays, f64) -> Option<Date>,
) -> [String; 2] {
    let again = if half == "spring" { "still" } else { "already" };
    let told = |frosts: &ColdDays, frost: &str| {
        let (with, all) = if half == "spring" {
            frosts.springs()
        } else {
            frosts.autumns()
        };
        let Some(day) = date(frosts, 0.1) else {
            return sentence(&format!("{frost} comes in {with} of {all} {half}s."));
        };
        let mut text = format!(
            "In 1 {half} of 10 {frost} {again} comes {side} {}",
            words.full_month(day)
        );
        let more = [
            (0.5, format!("in half of the {half}s")),
            (0.9, format!("in 9 {half}s of 10")),
        ];
        for (share, how_often) in more {
            if let Some(day) = date(frosts, share) {
                text.push_str(&format!("; {how_often} {side} {}", words.full_month(day)));
            }
        }
        match all - with {
            0 => text + ".",
            without => format!("{text}; in {without} of {all} not at all."),
        }
    };
    [told(light, "frost"), told(hard, "a hard frost")]
}

/// How long it stays free of light frost.
fn between(light: &ColdDays) -> Option<String> {
    Some(format!(
        "From the last frost of spring to the first of autumn there are {} days in the middle \
         year, fewer than {} in 1 year of 10 and more than {} in 1 of 10.",
        light.free_days(0.5)?,
        light.free_days(0.1)?,
        light.free_days(0.9)?
    ))
}

/// Rows of 1 to 9 years of ten.
fn table(light: &ColdDays, hard: &ColdDays, words: Words, page: &mut Page) {
    let cell = |day: Option<Date>| day.map_or_else(|| "none".to_owned(), |d| words.month_day(d));
    let rows: Vec<Vec<String>> = (1..10)
        .map(|tenths| {
            let share = f64::from(tenths) / 10.0;
            vec![
                format!("{tenths}\u{a0}of\u{a0}10"),
                cell(light.still_after(share)),
                cell(hard.still_after(share)),
                cell(light.already_before(share)),
                cell(hard.already_before(share)),
            ]
        })
        .collect();
    let header = [
        "In so many years",
        "spring: frost still after",
        "spring: hard frost still after",
        "autumn: frost already before",
        "autumn: hard frost already before",
    ];
    page.table(&header, &rows, &[1, 2, 3, 4]);
}
