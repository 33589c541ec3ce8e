//! What a crop's figures mean for a project's place: when it is safe to start it, and when it
//! then gets ripe, in the weather years of the project.

use chrono::Datelike;

use crate::calendar::Date;
use crate::facts::outlook::{HOPE, HarmfulFrosts, Lost, Outlook, Safe, Start, Up, Way, WayAhead};
use crate::garden::{Crop, FrostResponse, Garden};

use crate::page::Page;
use crate::words::Words;
use crate::words::view::{kind_of_years, latitude};

/// Writes what a crop means for the garden's place. `own`: the project gives figures of its own.
pub(super) fn write(garden: &Garden, crop: &Crop, own: bool, page: &mut Page) {
    let whose = garden.school.as_ref().unwrap_or(&garden.name);
    page.heading(&format!("At {whose}"));
    let outlook = Outlook::of(garden, crop);
    if outlook.years == 0 {
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
        outlook.years,
        kind_of_years(garden),
    ));
    let words = Words::of(garden);
    frost(&outlook.frosts, crop, words, page);
    for way in &outlook.ways {
        safe(way, crop, words, page);
    }
    for way in &outlook.ways {
        page.gap();
        starts(way, words, page);
    }
    if crop.methods.is_empty() {
        page.item("It stands for years, so there is no day to sow it on.");
    } else {
        page.gap();
        page.line("Which of these days suits your feast, your lessons and your beds: tureen plan.");
    }
}

/// The frosts that harm it.
fn frost(frosts: &HarmfulFrosts, crop: &Crop, words: Words, page: &mut Page) {
    let limit = crop.frost_limit.0;
    let harms = match crop.frost {
        FrostResponse::Killed => "kills it",
        FrostResponse::SetBack { .. } => "sets it back",
    };
    let (springs, autumns) = (frosts.springs, frosts.autumns);
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
        edge(frosts.after, "after", "spring", springs),
        edge(frosts.before, "before", "autumn", autumns)
    ));
}

/// The first day on which a start is safe.
fn safe(ahead: &WayAhead, crop: &Crop, words: Words, page: &mut Page) {
    let what = match ahead.way {
        Way::Pieces => "Planted in the bed",
        Way::Sown => "Sown in the bed",
        Way::Plants => "Planted out",
    };
    let up = match ahead.up_within {
        _ if !ahead.way.comes_up() => String::new(),
        Some(days) => format!("is up within {days} days and "),
        None => "comes up and ".to_owned(),
    };
    let frost = match crop.frost {
        FrostResponse::Killed => "no frost of that spring kills it",
        FrostResponse::SetBack { .. } => "frost does not kill it",
    };
    let from = match ahead.safe {
        Safe::Never => {
            page.item(&format!(
                "{what}: on no day of spring can you be sure in 9 years of 10 that it {up}lives."
            ));
            return;
        }
        Safe::FromMidwinter => "from the middle of winter on".to_owned(),
        Safe::From(day) => format!("from {} on", words.full_month(day)),
    };
    page.item(&format!(
        "{what} {from}, it {up}lives in 9 springs of 10: the soil has {} C and more, and {frost}.",
        ahead.least_soil.0
    ));
}

/// A table of starts: when it is ripe, and in how many years.
fn starts(ahead: &WayAhead, words: Words, page: &mut Page) {
    let started = match ahead.way {
        Way::Pieces => "Planted",
        Way::Sown => "Sown",
        Way::Plants => "Planted out",
    };
    if ahead.starts.is_empty() {
        page.line(&format!(
            "{started} on any day of the year, it gets ripe here in fewer than 1 year of {HOPE}."
        ));
        return;
    }
    let rows: Vec<Vec<String>> = ahead.starts.iter().map(|s| row(s, words)).collect();
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
    if ahead.others {
        page.line(&format!(
            "At other times of the year it gets ripe in fewer than 1 year of {HOPE}."
        ));
    }
}

fn row(start: &Start, words: Words) -> Vec<String> {
    let day = |day: Date| words.month_day(day);
    let shelf = match start.shelf {
        None => String::new(),
        Some((from, to)) if from == to => day(from),
        Some((from, to)) => format!("{} - {}", day(from), day(to)),
    };
    let [earliest, half, latest] = start
        .ripe
        .map(|ripe| ripe.map_or_else(String::new, |ripe| ripe_day(start.day, ripe, words)));
    vec![
        day(start.day),
        shelf,
        match start.up {
            None => String::new(),
            Some(Up::After(days)) => format!("{days}\u{a0}days"),
            Some(Up::Waits) => "the cold".to_owned(),
        },
        earliest,
        half,
        latest,
        format!("{}\u{a0}of\u{a0}{}", start.ripe_years, start.years),
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
    let lost = start.lost.iter().filter(|(_, years)| *years > 0);
    let texts = lost.map(|(what, years)| {
        let what = match what {
            Lost::Frost => "frost",
            Lost::NotUp => "too cold",
            Lost::Rotted => "rotted",
            Lost::Bolted => "flowered",
            Lost::Heat => "too hot",
            Lost::NotRipe => "not ripe",
        };
        format!("{what}\u{a0}{years}")
    });
    texts.collect::<Vec<_>>().join(", ")
}
