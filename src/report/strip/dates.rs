//! The table of a grade's dates: what is done on which day, by which class, in how long.

use crate::explain::{IfMissed, StepSlack};
use crate::facts::ours::{self, Job, Ours};
use crate::facts::tasks::{Doer, Task};

use crate::facts::order::natural;
use crate::page::Page;
use crate::words::view::View;
use crate::words::{Words, list, minutes, tasks};

/// Writes everything in order of time; of what is taken over, only what comes after that.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, slack: &[StepSlack], page: &mut Page) {
    page.heading("Our dates");
    let jobs = view.jobs(ours, slack);
    let mut all: Vec<(String, Job<'_>)> = jobs
        .into_iter()
        .map(|job| (tasks::who(view.garden, job.task.who), job))
        .collect();
    all.sort_by(|(a, first), (b, second)| {
        let days = first.task.from.cmp(&second.task.from);
        days.then_with(|| natural(a, b))
    });
    let rows: Vec<Vec<String>> = all
        .chunk_by(|(a, first), (b, second)| (first.task.from, a) == (second.task.from, b))
        .flat_map(|session| rows(view, session))
        .collect();
    let header = ["Day", "Who", "What", "Takes", "If it falls out"];
    page.table(&header, &together(rows), &[3]);
    page.gap();
    page.line(&legend(&all));
    if ours.has_chances() {
        page.line(
            "Look before each day of picking: pick on the first one on which it is ripe. The \
             later ones then fall away.",
        );
    }
}

/// The column of names.
const WHO: usize = 1;

/// The column of minutes.
const TAKES: usize = 3;

/// When a step can be made up for, or what is lost if it is not.
fn instead(view: &View<'_>, job: &Job<'_>) -> String {
    match job.if_missed {
        None => String::new(),
        Some(IfMissed::Nothing) => "nothing is lost".to_owned(),
        Some(IfMissed::MadeUp(day)) => view.words.day(day),
        Some(IfMissed::AndThinned(day)) => format!("{}, thin later", view.words.day(day)),
        Some(IfMissed::Little { ready_years }) => {
            let now = view.ready_years(&job.task.ingredient.name);
            format!("ready in {ready_years}, not {now} years")
        }
        Some(IfMissed::Crowded) => "as soon as you can".to_owned(),
        Some(IfMissed::Lost) => "none".to_owned(),
    }
}

/// What the words in the last column mean, those that stand there.
fn legend(all: &[(String, Job<'_>)]) -> String {
    let says = |is: fn(IfMissed) -> bool| all.iter().any(|(_, job)| job.if_missed.is_some_and(is));
    let mut text =
        "If it falls out: the day on which the same class can make up for it, all else as \
                    planned. \"None\": tell the coordinator at once."
            .to_owned();
    if says(|what| what == IfMissed::Nothing) {
        text +=
            " \"Nothing is lost\": if the other days of picking are kept, they bring in as much.";
    }
    if says(|what| matches!(what, IfMissed::Little { .. })) {
        text += " A number of years: if the other days of picking are kept, they bring in nearly as \
                 much.";
    }
    if says(|what| matches!(what, IfMissed::AndThinned(_))) {
        text +=
            " \"Thin later\": the planned day is then too early for it; ask the coordinator when.";
    }
    if says(|what| what == IfMissed::Crowded) {
        text += " \"As soon as you can\": no lesson comes in time, and in a crowded row roots stay \
                 small (common practice).";
    }
    text
}

/// The rows of one class on one day. Of several jobs the last one tells what all take together.
fn rows(view: &View<'_>, session: &[(String, Job<'_>)]) -> Vec<Vec<String>> {
    let row = |(who, job): &(String, Job<'_>)| {
        vec![
            view.words.day(job.task.from),
            who.clone(),
            what(job.task, view.words),
            job.task.takes.map_or_else(String::new, minutes),
            instead(view, job),
        ]
    };
    let mut rows: Vec<Vec<String>> = session.iter().map(row).collect();
    let jobs: Vec<Job<'_>> = session.iter().map(|(_, job)| *job).collect();
    let last = rows.last_mut().and_then(|row| row.get_mut(TAKES));
    if let (Some(last), Some(together)) = (last, ours::together(&jobs)) {
        last.push_str(&format!(" (in all {})", minutes(together)));
    }
    rows
}

/// Rows of one day in which only the class differs become one.
fn together(rows: Vec<Vec<String>>) -> Vec<Vec<String>> {
    let mut all: Vec<(Vec<String>, Vec<String>)> = Vec::new();
    for mut row in rows {
        let who = std::mem::take(&mut row[WHO]);
        match all.iter_mut().find(|(other, _)| *other == row) {
            Some((_, names)) => names.push(who),
            None => all.push((row, vec![who])),
        }
    }
    let join = |(mut row, names): (Vec<String>, Vec<String>)| {
        row[WHO] = list(&names);
        row
    };
    all.into_iter().map(join).collect()
}

/// What is done, with a class's part of the seeds or plants: `Sow in bed: carrot, about 109 of
/// 217 seeds`. Of what runs over days, until when; drying follows the pick, so its days are the
/// latest ones.
fn what(task: &Task<'_>, words: Words) -> String {
    let title = tasks::title(task);
    match (task.part, task.who) {
        (Some(part), _) => format!("{title}, {}", tasks::part(part)),
        (None, Doer::Anyone) if task.kind.follows_harvest() => format!(
            "{title}, daily until {} (earlier if it was picked earlier)",
            words.day(task.to)
        ),
        (None, Doer::Anyone) => format!("{title}, daily until {}", words.day(task.to)),
        (None, _) => title,
    }
}
