//! The sheets of a grade's classes, side by side: what each does in which lesson, what it costs if the lesson falls out,
//! what to do where nothing is due.

use crate::explain::{IfMissed, StepSlack};
use crate::facts::class_sheet::{ClassSheet, Entry};
use crate::facts::ours::{Job, Ours};
use crate::page::{Agenda, AgendaEntry, Page, Weight};
use crate::words::view::View;
use crate::words::{lessons, sentence, tasks};

/// Writes a column for each class.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, slack: &[StepSlack], page: &mut Page) {
    let sheets = view.class_sheets(ours, slack);
    page.agendas(
        sheets
            .iter()
            .map(|sheet| agenda(view, ours, sheet))
            .collect(),
    );
    let entries = sheets.iter().flat_map(|sheet| &sheet.entries);
    let missed: Vec<IfMissed> = entries.filter_map(Entry::if_missed).collect();
    let legend = lessons::legend(&missed);
    if !legend.is_empty() {
        page.line(&legend);
    }
}

/// Writes what is done by no class of the grade.
pub(super) fn others(view: &View<'_>, ours: &Ours<'_>, slack: &[StepSlack], page: &mut Page) {
    let others = view.jobs_of_others(ours, slack);
    if others.is_empty() {
        return;
    }
    page.heading("What others do");
    for job in others {
        let who = sentence(&tasks::who(view.garden, job.task.who));
        let days = view.words.days(job.task.from, job.task.to);
        page.item(&format!("{who}, {days}: {}.", tasks::title(job.task)));
    }
}

fn agenda(view: &View<'_>, ours: &Ours<'_>, sheet: &ClassSheet<'_>) -> Agenda {
    let entries = sheet.entries.iter();
    Agenda {
        head: view.garden.class(sheet.class).name.clone(),
        entries: entries.map(|entry| written(view, ours, *entry)).collect(),
    }
}

fn written(view: &View<'_>, ours: &Ours<'_>, entry: Entry<'_>) -> AgendaEntry {
    let day = view.words.day(entry.day());
    let (when, what, weight) = match entry {
        Entry::Job(job) => return task(view, job, day),
        Entry::Quiet(_, what) => (vec![day], lessons::quiet(what).to_owned(), Weight::Quiet),
        Entry::MovesUp(_) => {
            let adopted = ours
                .adopted
                .iter()
                .map(|(p, i)| format!("{} of {}", i.name, view.team_name(view.left_by(p))));
            let adopted: Vec<String> = adopted.collect();
            let what = lessons::moves_up(view, view.handed_over(ours.grade), &adopted);
            (vec![day], what, Weight::Rule)
        }
    };
    AgendaEntry {
        when,
        what,
        more: Vec::new(),
        fields: Vec::new(),
        weight,
    }
}

fn task(view: &View<'_>, job: Job<'_>, day: String) -> AgendaEntry {
    let task = job.task;
    let hour = task.begins.map(|at| view.words.time(at));
    let chance = task.chance.map(lessons::chance);
    let missed = job.if_missed;
    let costs = missed.map(|missed| lessons::if_cancelled(view, task, missed));
    let more = [lessons::details(view, task)]
        .into_iter()
        .chain(chance)
        .chain(costs);
    AgendaEntry {
        when: [day].into_iter().chain(hour).collect(),
        what: format!("{}.", tasks::title(task)),
        more: vec![
            more.filter(|line| !line.is_empty())
                .collect::<Vec<_>>()
                .join(" "),
        ],
        fields: lessons::fields(task.kind, view.words),
        weight: match missed {
            Some(IfMissed::Lost) => Weight::Crucial,
            _ => Weight::Task,
        },
    }
}
