//! The table of a grade's dates: what is done on which day, by which class, in how long.

use crate::calendar::{Date, plus_days};
use crate::explain::{IfMissed, StepSlack};
use crate::facts::ours::{self, Job, Ours};
use crate::facts::tasks::{Doer, Task};

use crate::facts::order::natural;
use crate::page::Page;
use crate::words::view::View;
use crate::words::{Words, instead, list, minutes, tasks};

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
    let (by_families, in_sessions): (Vec<_>, Vec<_>) = all
        .iter()
        .cloned()
        .partition(|(_, job)| job.task.who == Doer::Families);
    let mut rows: Vec<Dated> = in_sessions
        .chunk_by(|(a, first), (b, second)| (first.task.from, a) == (second.task.from, b))
        .flat_map(|session| rows(view, session))
        .collect();
    rows.extend(week_by_week(view, &by_families));
    rows.sort_by_key(|(day, _)| *day);
    let header = ["Day", "Who", "What", "Takes", "If it falls out"];
    page.table(&header, &together(rows), &[3]);
    page.gap();
    let missed: Vec<IfMissed> = all.iter().filter_map(|(_, job)| job.if_missed).collect();
    page.line(&instead::legend(&missed));
    if ours.has_chances() {
        page.line(
            "Look before each day of picking: pick on the first one on which it is ripe. The \
             later ones then fall away.",
        );
    }
}

/// A row with the day on which it begins.
type Dated = (Date, Vec<String>);

/// The column of days.
const DAY: usize = 0;

/// The column of names.
const WHO: usize = 1;

/// The column of minutes.
const TAKES: usize = 3;

/// The row of one job.
fn row(view: &View<'_>, (who, job): &(String, Job<'_>)) -> Dated {
    let row = vec![
        view.words.day(job.task.from),
        who.clone(),
        what(job.task, view.words),
        job.task.takes.map_or_else(String::new, minutes),
        instead::cell(view, job.task, job.if_missed),
    ];
    (job.task.from, row)
}

/// What families do is no lesson of anyone: the same thing week after week is one row.
fn week_by_week(view: &View<'_>, jobs: &[(String, Job<'_>)]) -> Vec<Dated> {
    let mut runs: Vec<(Date, Date, Vec<String>)> = Vec::new();
    for (day, row) in jobs.iter().map(|job| row(view, job)) {
        let goes_on = |(_, last, of): &&mut (Date, Date, Vec<String>)| {
            plus_days(*last, 7) == day && of[WHO..] == row[WHO..]
        };
        match runs.iter_mut().find(goes_on) {
            Some((_, last, _)) => *last = day,
            None => runs.push((day, day, row)),
        }
    }
    let told = |(first, last, mut row): (Date, Date, Vec<String>)| {
        if first != last {
            row[DAY] = format!("{}, weekly to {}", row[DAY], view.words.day(last));
        }
        (first, row)
    };
    runs.into_iter().map(told).collect()
}

/// The rows of one class on one day. Of several jobs the last one tells what all take together.
fn rows(view: &View<'_>, session: &[(String, Job<'_>)]) -> Vec<Dated> {
    let mut rows: Vec<Dated> = session.iter().map(|job| row(view, job)).collect();
    let jobs: Vec<Job<'_>> = session.iter().map(|(_, job)| *job).collect();
    let last = rows.last_mut().and_then(|(_, row)| row.get_mut(TAKES));
    if let (Some(last), Some(together)) = (last, ours::together(&jobs)) {
        last.push_str(&format!(" (in all {})", minutes(together)));
    }
    rows
}

/// Rows of one day in which only the class differs become one.
fn together(rows: Vec<Dated>) -> Vec<Vec<String>> {
    let mut all: Vec<(Vec<String>, Vec<String>)> = Vec::new();
    for (_, mut row) in rows {
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
