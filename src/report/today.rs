//! What `tureen today` and `tureen note` print: the week by classes, what is late, what to decide, water; and the diary.

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::explain::{IfMissed, StepSlack};
use crate::facts::Facts;
use crate::facts::due::Due;
use crate::facts::forecast::Expected;
use crate::facts::missed::if_missed;
use crate::facts::tasks::Task;
use crate::garden::Garden;
use crate::page::Page;
use crate::project::diary::{Diary, Entry};
use crate::units::Millimetres;
use crate::words::decisions::short;
use crate::words::happened::happened;
use crate::words::kept_picked::kept_picked;
use crate::words::view::View;
use crate::words::{self, Words, instead, sentence, tasks};

use super::decisions;

/// What a day's week asks for.
#[must_use]
pub fn today(
    garden: &Garden,
    checked: &CheckedPlan,
    slack: &[StepSlack],
    (diary, day): (&Diary, Date),
    forecast: &[(Date, Expected)],
) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let due = Due::on(&facts, diary, day);
    let mut page = Page::new();
    let monday = view.words.full_day(due.monday);
    page.title(&format!("{}: the week of {monday}", garden.name));
    let ahead = words::forecast::ahead(&facts.ahead(forecast), view.words);
    if !ahead.is_empty() {
        page.heading("The weather ahead");
        ahead.iter().for_each(|text| page.item(text));
    }
    jobs(&view, &due, &mut page);
    late(&view, &due.late, (slack, day), &mut page);
    if !due.decisions.is_empty() {
        page.heading("Decide");
        let lines = due
            .decisions
            .iter()
            .map(|decision| (decision.by, short(&view, &decision.topic)));
        decisions::entries(&view, &lines.collect::<Vec<_>>(), &mut page);
    }
    for (name, share) in &due.lost {
        let part = format!("{:.0} % of {name} is lost.", share * 100.0);
        page.item(&format!(
            "{part} To plan the rest again: tureen plan FILE. What can still be done, and until when: tureen show FILE \
             --slack."
        ));
    }
    for shut in &due.shut {
        let told = sentence(&happened(shut, view.words));
        page.item(&format!(
            "{told}. To plan the rest again: tureen plan FILE."
        ));
    }
    if let Some(need) = due.water {
        page.heading("Water");
        let rain = match due.rain > 0.0 {
            true => format!(
                " {} of rain fell; take that off.",
                view.words.rain(Millimetres(due.rain))
            ),
            false => String::new(),
        };
        page.item(&format!(
            "All beds together: {} in an ordinary week, {} in a dry one.{rain} Bed by bed: tureen show FILE --water.",
            view.words.volume(need.ordinary),
            view.words.volume(need.dry)
        ));
    }
    page
}

fn jobs(view: &View<'_>, due: &Due<'_, '_>, page: &mut Page) {
    page.heading("This week");
    if due.week.is_empty() && due.kept_picked.is_empty() {
        page.item("Nothing is planned.");
    }
    let row = |task: &&Task<'_>| {
        let at = task
            .begins
            .map_or_else(String::new, |at| format!(" {}", view.words.time(at)));
        [cells(view, task, &at), vec![tasks::spot(view.garden, task)]].concat()
    };
    let rows: Vec<Vec<String>> = due.week.iter().map(row).collect();
    if !rows.is_empty() {
        page.table(&["Day", "Who", "What", "Where"], &rows, &[]);
    }
    let kept = due.kept_picked.iter();
    kept.for_each(|kept| page.item(&kept_picked(view, kept)));
}

/// When, who and what.
fn cells(view: &View<'_>, task: &Task<'_>, at: &str) -> Vec<String> {
    let day = format!("{}{at}", view.words.day(task.from));
    vec![day, tasks::who(view.garden, task.who), tasks::title(task)]
}

fn late(view: &View<'_>, late: &[&Task<'_>], (slack, day): (&[StepSlack], Date), page: &mut Page) {
    if late.is_empty() {
        return;
    }
    page.heading("Not written down as done");
    let row = |task: &&Task<'_>| {
        let made_up = match if_missed(task, slack) {
            Some(IfMissed::MadeUp(past)) if past < day => {
                format!("past since {}", view.words.day(past))
            }
            missed => instead::cell(view, task, missed),
        };
        [cells(view, task, ""), vec![made_up]].concat()
    };
    let rows: Vec<Vec<String>> = late.iter().map(row).collect();
    page.table(&["Was due", "Who", "What", "Can be made up"], &rows, &[]);
    page.line("Done all the same? Write it down: tureen note FILE sowed carrot --on DATE.");
}

/// All entries of a diary.
#[must_use]
pub fn diary(diary: &Diary, words: Words) -> Page {
    let mut page = Page::new();
    page.title("The diary");
    let row = |(number, entry): &(usize, Entry)| {
        let by = entry.by.clone().unwrap_or_default();
        vec![
            number.to_string(),
            words.day(entry.on),
            happened(&entry.what, words),
            by,
        ]
    };
    let rows: Vec<Vec<String>> = diary.entries.iter().map(row).collect();
    match rows.is_empty() {
        true => page.line("Nothing is written down yet."),
        false => page.table(&["No.", "Day", "What", "By"], &rows, &[0]),
    }
    page
}
