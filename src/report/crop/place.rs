//! What a crop's figures mean for a project's place: when it is safe to start it, and when it
//! then gets ripe, in the weather years of the project.

use chrono::Datelike;

use crate::calendar::{Date, plus_days};
use crate::garden::{Crop, FrostResponse, Garden, IndoorStart, Method};
use crate::growth::HOPE;
use crate::growth::outlook::{Outlook, Start, Way};
use crate::weather::cold_days::ColdDays;

use super::super::page::Page;
use super::super::view::{kind_of_years, latitude};
use super::super::words::Words;
use super::line::{as_plants, in_bed};

/// Days after which seed in the ground is at risk from more than cold (common practice).
const LONG_IN_THE_GROUND: usize = 60;

/// Writes what a crop means for the garden's place. `own`: the project gives figures of its own.
pub(super) fn write(garden: &Garden, crop: &Crop, own: bool, page: &mut Page) {
    let whose = garden.school.as_ref().unwrap_or(&garden.name);
    page.heading(&format!("At {whose}"));
    let outlook = Outlook::new(
        crop,
        &garden.weather,
        garden.latitude,
        garden.feast.day.year(),
    );
    if outlook.years() == 0 {
        page.line(
            "The weather record is too short to tell: it takes two whole years to see what is \
             started at any time of the year get ripe.",
        );
        return;
    }
    let figures = if own {
        "with your own figures from the project file"
    } else {
        "with the figures below"
    };
    page.line(&format!(
        "In an open bed without a cover at {}, in {} {}, each grown on into the next, {figures}. \
         A bed with a cover or warmer soil is earlier.",
        latitude(garden.latitude),
        outlook.years(),
        kind_of_years(garden),
    ));
    let words = Words::of(garden);
    frost(garden, crop, page);
    for (way, possible) in [(Way::Sown, in_bed(crop)), (Way::Planted, as_plants(crop))] {
        if possible {
            safe(&outlook, crop, (way, words), page);
        }
    }
    for (way, possible) in [(Way::Sown, in_bed(crop)), (Way::Planted, as_plants(crop))] {
        if possible {
            page.gap();
            starts(&outlook, crop, (way, words), page);
        }
    }
    if crop.methods.is_empty() {
        page.item("It stands for years, so there is no day to sow it on.");
    } else {
        page.gap();
        page.line("Which of these days suits your feast, your lessons and your beds: tureen plan.");
    }
}

/// The frosts that harm it.
fn frost(garden: &Garden, crop: &Crop, page: &mut Page) {
    let words = Words::of(garden);
    let days = garden.weather.days();
    let harmful = ColdDays::of(&garden.weather, garden.latitude, |day| {
        days[day].tmin < crop.frost_limit
    });
    let limit = crop.frost_limit.0;
    let harms = match crop.frost {
        FrostResponse::Killed => "kills it",
        FrostResponse::SetBack { .. } => "sets it back",
    };
    let (springs, autumns) = (harmful.springs(), harmful.autumns());
    if springs.0 + autumns.0 == 0 {
        page.item(&format!(
            "Air colder than {limit} C, which {harms}, never came in {} years.",
            springs.1.max(autumns.1)
        ));
        return;
    }
    let edge = |day: Option<Date>, side: &str, half: &str, (with, all): (usize, usize)| match day {
        Some(day) => format!(
            "in 1 {half} of 10 it comes {side} {}",
            words.full_month(day)
        ),
        None => format!("it came in {with} {half}s of {all}"),
    };
    page.item(&format!(
        "Air colder than {limit} C {harms}: {}, {}.",
        edge(harmful.still_after(0.1), "after", "spring", springs),
        edge(harmful.already_before(0.1), "before", "autumn", autumns)
    ));
}

/// The first day on which a start is safe.
fn safe(outlook: &Outlook, crop: &Crop, (way, words): (Way, Words), page: &mut Page) {
    let what = match way {
        Way::Sown if !crop.methods.contains(&Method::Direct) => "Planted in the bed",
        Way::Sown => "Sown in the bed",
        Way::Planted => "Planted out",
    };
    let up = match (way, outlook.up_within()) {
        (Way::Sown, Some(days)) => format!("is up within {days} days and "),
        (Way::Sown, None) => "comes up and ".to_owned(),
        (Way::Planted, _) => String::new(),
    };
    let frost = match crop.frost {
        FrostResponse::Killed => "no frost of that spring kills it",
        FrostResponse::SetBack { .. } => "frost does not kill it",
    };
    let Some(day) = outlook.first_safe(way) else {
        page.item(&format!(
            "{what}: on no day of spring can you be sure in 9 years of 10 that it {up}lives."
        ));
        return;
    };
    let from = if outlook.begins_on(day) {
        "from the middle of winter on".to_owned()
    } else {
        format!("from {} on", words.full_month(day))
    };
    page.item(&format!(
        "{what} {from}, it {up}lives in 9 springs of 10: the soil can be worked, and {frost}."
    ));
}

/// A table of starts: when it is ripe, and in how many years.
fn starts(outlook: &Outlook, crop: &Crop, (way, words): (Way, Words), page: &mut Page) {
    let all = outlook.starts(way);
    let hopeful: Vec<&Start> = all
        .iter()
        .filter(|s| !s.ripe.is_empty() && s.ripe.len() * HOPE >= s.years())
        .collect();
    let started = match way {
        Way::Sown if !crop.methods.contains(&Method::Direct) => "Planted",
        Way::Sown => "Sown",
        Way::Planted => "Planted out",
    };
    if hopeful.is_empty() {
        page.line(&format!(
            "{started} on any day of the year, it gets ripe here in fewer than 1 year of {HOPE}."
        ));
        return;
    }
    let indoor = crop
        .indoor
        .filter(|_| way == Way::Planted && crop.methods.contains(&Method::Indoor));
    let rows: Vec<Vec<String>> = hopeful
        .iter()
        .map(|start| row(start, indoor.as_ref(), (way, words)))
        .collect();
    let header = [
        started,
        "On the shelf from",
        "Up after",
        "Ripe: earliest",
        "Half by",
        "Latest",
        "Gets ripe",
        "Else",
    ];
    page.table(&header, &rows, &[2, 6]);
    if rows.iter().flatten().any(|cell| cell.ends_with('*')) {
        page.line("*: in the next calendar year.");
    }
    let lies_long = |start: &&Start| {
        start
            .up
            .last()
            .is_some_and(|days| *days >= LONG_IN_THE_GROUND)
    };
    if way == Way::Sown && hopeful.iter().any(lies_long) {
        page.line(
            "What lies in the ground for two months and more is often lost to rot, birds and mice; \
             that is not counted here.",
        );
    }
    if hopeful.len() < all.len() {
        page.line(&format!(
            "At other times of the year it gets ripe in fewer than 1 year of {HOPE}."
        ));
    }
}

fn row(start: &Start, indoor: Option<&IndoorStart>, (way, words): (Way, Words)) -> Vec<String> {
    let ripe = |share| {
        start
            .ripe_by(share)
            .map_or_else(String::new, |day| ripe_day(start.day, day, words))
    };
    let shelf = indoor.map_or_else(String::new, |indoor| {
        let sown = |weeks: u32| words.month_day(plus_days(start.day, -7 * i64::from(weeks)));
        if indoor.weeks_lo == indoor.weeks_hi {
            sown(indoor.weeks_lo)
        } else {
            format!("{} - {}", sown(indoor.weeks_hi), sown(indoor.weeks_lo))
        }
    });
    let up = match (way, crate::weather::rank::nearest_rank(&start.up, 0.5)) {
        (Way::Sown, Some(days)) => format!("{days}\u{a0}days"),
        _ => String::new(),
    };
    vec![
        words.month_day(start.day),
        shelf,
        up,
        ripe(0.0),
        ripe(0.5),
        ripe(1.0),
        format!("{}\u{a0}of\u{a0}{}", start.ripe.len(), start.years()),
        lost(start),
    ]
}

/// The day, with a star if it is in the year after the start.
fn ripe_day(start: Date, ripe: Date, words: Words) -> String {
    let star = if ripe.year() > start.year() { "*" } else { "" };
    format!("{}{star}", words.month_day(ripe))
}

/// `frost 3, not up 1`: what happened in the other years.
fn lost(start: &Start) -> String {
    [
        ("frost", start.frost),
        ("not up", start.not_up),
        ("flowered", start.bolted),
        ("not ripe", start.not_ripe),
    ]
    .iter()
    .filter(|(_, years)| *years > 0)
    .map(|(what, years)| format!("{what}\u{a0}{years}"))
    .collect::<Vec<_>>()
    .join(", ")
}
