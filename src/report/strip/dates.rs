//! The table of a grade's dates: what is done on which day, by which class, in how long.

use crate::calendar::Date;
use crate::explain::{IfMissed, StepSlack};
use crate::facts::missed::if_missed;
use crate::facts::tasks::{Doer, Task};
use crate::plan::{Planting, StepKind};
use crate::units::Minutes;

use super::super::page::Page;
use super::super::tasks;
use super::super::view::View;
use super::super::words::{Words, list, minutes, natural};
use super::ours::Ours;

/// One thing to do on one day.
struct Job {
    day: Date,
    who: String,
    what: String,
    takes: Option<Minutes>,
    /// When it can be made up for.
    instead: String,
}

/// Writes everything in order of time; of what is taken over, only what comes after that.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, slack: &[StepSlack], page: &mut Page) {
    page.heading("Our dates");
    let own = ours
        .own
        .iter()
        .flat_map(|(p, _)| jobs(view, p, slack, None));
    let moves_up = view.garden.school_year.moves_up;
    let adopted = ours
        .adopted
        .iter()
        .flat_map(|(p, _)| jobs(view, p, slack, moves_up));
    let mut all: Vec<Job> = own.chain(adopted).collect();
    all.sort_by(|a, b| a.day.cmp(&b.day).then_with(|| natural(&a.who, &b.who)));
    let rows: Vec<Vec<String>> = all
        .chunk_by(|a, b| (a.day, &a.who) == (b.day, &b.who))
        .flat_map(|session| rows(view, session))
        .collect();
    let rows = together(rows);
    let header = ["Day", "Who", "What", "Takes", "If it falls out"];
    page.table(&header, &rows, &[3]);
    page.gap();
    page.line(&legend(&rows));
    let picks = |p: &Planting| p.steps.iter().filter(|s| s.kind == StepKind::Pick).count();
    if ours.all().any(|(p, _)| picks(p) > 1) {
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
fn instead(view: &View<'_>, task: &Task<'_>, slack: &[StepSlack]) -> String {
    match if_missed(task, slack) {
        None => String::new(),
        Some(IfMissed::Nothing) => NOTHING.to_owned(),
        Some(IfMissed::MadeUp(day)) => view.words.day(day),
        Some(IfMissed::AndThinned(day)) => format!("{}{THINNED}", view.words.day(day)),
        Some(IfMissed::Little { ready_years }) => {
            let now = view.ready_years(&task.ingredient.name);
            format!("ready in {ready_years}{OF}{now} years")
        }
        Some(IfMissed::Crowded) => CROWDED.to_owned(),
        Some(IfMissed::Lost) => "none".to_owned(),
    }
}

/// A pick that the other days make up for.
const NOTHING: &str = "nothing is lost";
/// Between the ready years that are left and those that were promised.
const OF: &str = ", not ";
/// Of a sowing that is not to be thinned on the planned day then.
const THINNED: &str = ", thin later";
/// A thinning that is late on any other day.
const CROWDED: &str = "as soon as you can";

/// What the words in the last column mean, those that stand there.
fn legend(rows: &[Vec<String>]) -> String {
    let says = |word: &str| {
        rows.iter()
            .filter_map(|r| r.last())
            .any(|c| c.contains(word))
    };
    let mut text =
        "If it falls out: the day on which the same class can make up for it, all else as \
                    planned. \"None\": tell the coordinator at once."
            .to_owned();
    if says(NOTHING) {
        text +=
            " \"Nothing is lost\": if the other days of picking are kept, they bring in as much.";
    }
    if says(OF) {
        text += " A number of years: if the other days of picking are kept, they bring in nearly as \
                 much.";
    }
    if says(THINNED) {
        text +=
            " \"Thin later\": the planned day is then too early for it; ask the coordinator when.";
    }
    if says(CROWDED) {
        text += " \"As soon as you can\": no lesson comes in time, and in a crowded row roots stay \
                 small (common practice).";
    }
    text
}

/// The rows of one class on one day. Of several jobs the last one tells what all take together:
/// minutes that are rounded job by job do not add up.
fn rows(view: &View<'_>, session: &[Job]) -> Vec<Vec<String>> {
    let timed = || session.iter().filter_map(|job| job.takes);
    let together = (timed().count() > 1).then(|| minutes(timed().sum()));
    let mut rows: Vec<Vec<String>> = session
        .iter()
        .map(|job| {
            let takes = job.takes.map_or_else(String::new, minutes);
            vec![
                view.words.day(job.day),
                job.who.clone(),
                job.what.clone(),
                takes,
                job.instead.clone(),
            ]
        })
        .collect();
    let last = rows.last_mut().and_then(|row| row.get_mut(TAKES));
    if let (Some(last), Some(together)) = (last, together) {
        last.push_str(&format!(" (in all {together})"));
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

/// The jobs of a planting from a day on.
fn jobs(view: &View<'_>, planting: &Planting, slack: &[StepSlack], from: Option<Date>) -> Vec<Job> {
    let own = |task: &&Task<'_>| std::ptr::eq(task.planting, planting);
    view.tasks
        .iter()
        .filter(own)
        .filter(|task| from.is_none_or(|from| task.from >= from))
        .map(|task| Job {
            day: task.from,
            who: tasks::who(view.garden, task.who),
            what: what(task, view.words),
            takes: task.takes,
            instead: instead(view, task, slack),
        })
        .collect()
}

/// What is done, with a class's part of the seeds or plants: `Sow in bed: carrot, about 109 of
/// 217 seeds`. Of what runs over days, until when; drying follows the pick, so its days are the
/// latest ones.
fn what(task: &Task<'_>, words: Words) -> String {
    let title = tasks::title(task);
    match (task.part, task.who) {
        (Some(part), _) => format!("{title}, {}", tasks::part(part)),
        (None, Doer::Anyone) if task.kind == StepKind::Cure => format!(
            "{title}, daily until {} (earlier if it was picked earlier)",
            words.day(task.to)
        ),
        (None, Doer::Anyone) => format!("{title}, daily until {}", words.day(task.to)),
        (None, _) => title,
    }
}
