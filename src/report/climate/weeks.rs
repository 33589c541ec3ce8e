//! The weeks that suit warm-season and cool-season crops, in sentences, and all weeks with
//! their figures in a table.

use crate::facts::climate::{Climate, LIMITS, Part};
use crate::units::{Celsius, rounded};

use crate::page::Page;
use crate::words::{Words, count, list};

/// Writes what is meant by the windows, and when they are.
pub(super) fn windows(climate: &Climate, words: Words, page: &mut Page) {
    page.heading("When crops are at home");
    page.item(&format!(
        "Warm-season crops (tomato, bean, squash): {}. These are the weeks with a frost in at \
         most 1 year of 10 and soil of {:.0} C in more than half of the years (soil: University \
         of Georgia, 2000).",
        when(climate, words, |week| week.warm),
        LIMITS.warm_soil.0
    ));
    page.item(&format!(
        "Cool-season crops (lettuce, pea, cabbage): {}. These are the weeks with soil of {:.0} C \
         in more than half of the years, a frost of {:.0} C in at most half of them, and days that \
         get no warmer than {:.0} C on average (common practice). Hardy kinds stand colder weeks.",
        when(climate, words, |week| week.cool),
        LIMITS.workable.0,
        LIMITS.too_cold.0,
        LIMITS.too_warm.0
    ));
    let light = if climate.weeks.iter().any(|week| week.dark) {
        format!(
            "Days shorter than {:.0} hours, in which crops stand still even where it is mild \
             (common practice): {}.",
            LIMITS.standstill.0,
            when(climate, words, |week| week.dark)
        )
    } else {
        format!(
            "No day is shorter than {:.0} hours; crops can grow all year where it is warm enough.",
            LIMITS.standstill.0
        )
    };
    page.item(&light);
}

/// `12 May to 20 September (19 weeks)`, `all year`, `no week of the year`.
fn when(climate: &Climate, words: Words, holds: impl Fn(&Part) -> bool) -> String {
    if climate.weeks.iter().all(&holds) {
        return "all year".to_owned();
    }
    let stretches = climate.stretches(holds);
    if stretches.is_empty() {
        return "no week of the year".to_owned();
    }
    let texts = stretches.iter().map(|stretch| {
        format!(
            "{} to {} ({})",
            words.full_month(stretch.from),
            words.full_month(stretch.to),
            count(stretch.weeks, "week")
        )
    });
    list(&texts.collect::<Vec<_>>())
}

/// Writes the table of all weeks.
pub(super) fn table(weeks: &[Part], words: Words, page: &mut Page) {
    page.heading("All weeks in figures");
    let rows: Vec<Vec<String>> = weeks.iter().map(|week| row(week, words)).collect();
    let header = [
        "Week from",
        "Lowest",
        "Highest",
        "Soil",
        "Rain",
        "Daylight",
        "Frost in",
        "Hard frost in",
        "For",
    ];
    page.table(&header, &rows, &[1, 2, 3, 4, 5, 6, 7]);
    page.gap();
    page.line(
        "Lowest, highest: mean of the days. Soil: at sowing depth in an open bed, estimated from \
         the air of seven days. Frost in, hard frost in: years of all. For: the kinds of crops at \
         home in the week.",
    );
}

fn row(week: &Part, words: Words) -> Vec<String> {
    let suits = match (week.warm, week.cool) {
        (true, true) => "warm, cool",
        (true, false) => "warm",
        (false, true) => "cool",
        (false, false) => "",
    };
    vec![
        words.month_day(week.spell.first),
        whole_degrees(week.spell.low),
        whole_degrees(week.spell.high),
        whole_degrees(week.spell.soil),
        words.rain(week.spell.rain),
        format!("{:.1}\u{a0}h", week.spell.light.0),
        format!(
            "{}\u{a0}of\u{a0}{}",
            week.spell.frost_years, week.spell.years
        ),
        format!(
            "{}\u{a0}of\u{a0}{}",
            week.spell.hard_frost_years, week.spell.years
        ),
        suits.to_owned(),
    ]
}

/// `-4 C`.
fn whole_degrees(t: Celsius) -> String {
    format!("{}\u{a0}C", rounded(t.0.round(), 0))
}
