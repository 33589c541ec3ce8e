//! What the program understood of a project file: the day, the grades and their sessions,
//! the dish, beds and shelf, the weather, what was assumed, the cautions.

mod place;

use crate::facts::terms::{rounds_by_term, sessions_by_term, terms};
use crate::garden::{Care, Garden, GradeAt, Ingredient, Locale, Slot, Source, Spot, Team, Term};

use super::{assumed, cautions, doubts};
use crate::page::Page;
use crate::words::occasion::occasion;
use crate::words::{Words, choice, count, list, minutes};

/// What `tureen check` prints for a valid file.
#[must_use]
pub fn understood(garden: &Garden) -> Page {
    let mut page = Page::new();
    page.title("The file is valid. This is what it says:");
    page.paragraph(&occasion(garden));
    doubts::write(garden, &mut page);
    if garden.locale != Locale::default() {
        page.paragraph(&Words::of(garden).customs());
    }
    dish(garden, &mut page);
    sessions(garden, &mut page);
    breaks(garden, &mut page);
    place::beds(garden, &mut page);
    place::shelf(garden, &mut page);
    place::weather(garden, &mut page);
    assumed::write(garden, &mut page);
    cautions::write(garden, &mut page);
    page
}

fn dish(garden: &Garden, page: &mut Page) {
    page.heading("The dish");
    let words = Words::of(garden);
    let rows: Vec<Vec<String>> = garden
        .ingredients
        .iter()
        .map(|i| {
            vec![
                i.name.clone(),
                grown_by(garden, i),
                words.portion(i.grams_per_portion),
                words.mass(i.target(garden.feast.portions)),
                words.mass(i.least(garden.feast.portions)),
                source(garden, i),
            ]
        })
        .collect();
    let header = [
        "Ingredient",
        "Grown by",
        "A portion",
        "Target",
        "At least",
        "From",
    ];
    page.table(&header, &rows, &[2, 3, 4]);
}

/// `Grade 2`, `Grade 2 or Grade 3`, `any grade`: what the plan then chooses among; `Grade 1 and Grade 4` together.
fn grown_by(garden: &Garden, ingredient: &Ingredient) -> String {
    let name = |team: &Team| {
        let grades = team.grades().map(|grade| garden[grade].name.as_str());
        list(&grades.collect::<Vec<_>>())
    };
    let names: Vec<String> = ingredient.teams.iter().map(name).collect();
    match names.len() {
        n if n > 1 && n == garden.grades.len() => "any grade".to_owned(),
        _ => choice(&names),
    }
}

fn source(garden: &Garden, ingredient: &Ingredient) -> String {
    match ingredient.source {
        Source::Sown => "sown or planted".to_owned(),
        Source::Begun(at) => match garden[at].spot {
            Spot::Bed { bed, .. } => format!("stands in bed {}", garden[bed].id),
            Spot::Shelf { seedlings } => {
                format!("{} on the shelf", count(seedlings, "seedling"))
            }
        },
        Source::Patch(at) => format!("patch {}", garden[at].id),
    }
}

/// A row per class: children, slot and sessions per term until the feast.
fn sessions(garden: &Garden, page: &mut Page) {
    page.heading("Grades, classes and sessions");
    let words = Words::of(garden);
    let terms = terms(garden);
    let mut header = vec!["Grade", "Class", "Children", "Meets"];
    header.extend(terms.iter().map(|t| t.name.as_str()));
    let mut rows = Vec::new();
    for grade in garden.grade_positions() {
        for at in garden.classes_of(grade) {
            let class = garden.class(at);
            let mut row = vec![
                garden[grade].name.clone(),
                class.name.clone(),
                class.children.to_string(),
                meets(&class.slots, &terms, words),
            ];
            let sessions = sessions_by_term(garden, at, &terms);
            row.extend(sessions.iter().map(ToString::to_string));
            rows.push(row);
        }
    }
    let numbers: Vec<usize> = [2].into_iter().chain(4..header.len()).collect();
    page.table(&header, &rows, &numbers);
    page.gap();
    let steps: Vec<String> = garden
        .grade_positions()
        .map(|g| format!("{}: {}", garden[g].name, rounds(garden, g, &terms)))
        .collect();
    page.line(&format!(
        "The columns of the terms count sessions up to the feast. A step of the work takes one \
         session of every class of the grade. At most so many steps find time - {}.",
        steps.join("; ")
    ));
}

/// The slot of the first term, and of each later one in which it is another.
fn meets(slots: &[Slot], terms: &[&Term], words: Words) -> String {
    let texts: Vec<String> = slots.iter().map(|s| slot(s, words)).collect();
    let changes = texts.windows(2).zip(terms.iter().skip(1));
    let later = changes
        .filter(|(pair, _)| pair[0] != pair[1])
        .map(|(pair, term)| format!("{}: {}", term.name, pair[1]));
    texts
        .first()
        .cloned()
        .into_iter()
        .chain(later)
        .collect::<Vec<_>>()
        .join("; ")
}

/// `Tue 10:15, weekly, 30 min`.
fn slot(slot: &Slot, words: Words) -> String {
    let rhythm = if slot.every_weeks == 1 {
        "weekly".to_owned()
    } else {
        format!("every {} weeks", slot.every_weeks)
    };
    let at = slot.at.map_or_else(String::new, |at| words.at(at));
    format!(
        "{}{at}, {rhythm}, {}",
        slot.day,
        crate::words::minutes(slot.minutes)
    )
}

/// How often all classes of a grade can have met, per term: `11 in Spring, 3 in Autumn`.
fn rounds(garden: &Garden, grade: GradeAt, terms: &[&Term]) -> String {
    let rounds = rounds_by_term(garden, grade, terms);
    let texts = rounds.iter().zip(terms);
    let texts = texts.map(|(rounds, term)| format!("{rounds} in {}", term.name));
    texts.collect::<Vec<_>>().join(", ")
}

fn breaks(garden: &Garden, page: &mut Page) {
    page.heading("Breaks");
    let words = Words::of(garden);
    let year = &garden.school_year;
    for b in year.breaks.iter().filter(|b| b.from <= garden.last_day()) {
        let care = match b.care {
            Care::Nobody => "nobody is on site",
            Care::Staff => "staff water, and pick only so that plants go on bearing",
            Care::Families => "families water and pick",
        };
        page.item(&format!(
            "{}, {}: {care}.",
            b.name,
            words.days(b.from, b.to)
        ));
    }
    for day in &year.days_off {
        page.item(&format!("No school on {}.", words.day(*day)));
    }
    for harvest in &year.harvest_days {
        let (day, long) = (words.day(harvest.day), minutes(harvest.minutes));
        page.item(&format!(
            "On {day} all classes meet for the harvest, for {long}."
        ));
    }
    if let Some(day) = year.moves_up {
        page.item(&format!("The grades move up on {}.", words.day(day)));
    }
}
