//! The sessions on which nothing is due: how many there are, and what to look at and to tend
//! while the plants grow (common practice).

use crate::calendar::Date;
use crate::plan::{Planting, StepKind};

use super::super::page::Page;
use super::super::view::View;
use super::super::words::{count, list, sentence};
use super::ours::Ours;
use crate::facts::spans::{first_day, span_of};

/// Writes what to do when nothing is due.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    let plantings = || ours.all().map(|(p, _)| *p);
    // What is taken over is tended from the day on which the grades move up.
    let taken_over = view.garden.school_year.moves_up;
    let adopted = ours.adopted.iter().filter_map(|_| taken_over);
    let own = ours.own.iter().filter_map(|(p, _)| first_day(p));
    let from = own.chain(adopted).min();
    let to = plantings()
        .filter_map(|p| span_of(p, StepKind::Pick))
        .map(|(_, last)| last)
        .max();
    let (Some(from), Some(to)) = (from, to) else {
        return;
    };
    page.heading("When nothing is due");
    if let Some(text) = sessions(view, ours, from, to) {
        page.line(&text);
    }
    let raised = |p: &Planting| span_of(p, StepKind::PlantOut).is_some();
    let raised = ours.own.iter().any(|(p, _)| raised(p));
    page.item(if raised {
        "Seed and seedlings: keep them damp, turn the flats, write down the day on which the first \
         comes up, count how many do."
    } else {
        "Seed: keep it damp, write down the day on which the first comes up, count how many do."
    });
    page.item(
        "Plants in the bed: water, weed, mulch; look under the leaves for eggs and holes; measure \
         the tallest one and draw it.",
    );
    page.item(
        "Two weeks before a pick: look how ripe it is, write down what you see, tell the \
         coordinator if it is early or late.",
    );
}

/// `From 30 Apr to 6 Oct nothing is due in 12 sessions of 5a and 11 sessions of 5b.`
fn sessions(view: &View<'_>, ours: &Ours<'_>, from: Date, to: Date) -> Option<String> {
    let free = |class| {
        let name = &view.garden.class(class).name;
        let due = |day: &Date| ours.all().any(|(p, _)| is_due(p, name, *day));
        let days = view.garden.sessions(class).into_iter();
        let free = days.filter(|day| (from..=to).contains(day) && !due(day));
        let free = u32::try_from(free.count()).unwrap_or(u32::MAX);
        (free > 0).then(|| format!("{} of {name}", count(free, "session")))
    };
    let classes: Vec<String> = view
        .garden
        .classes_of(ours.grade)
        .filter_map(free)
        .collect();
    (!classes.is_empty()).then(|| {
        sentence(&format!(
            "from {} to {} nothing is due in {}.",
            view.words.short(from),
            view.words.short(to),
            list(&classes)
        ))
    })
}

/// True if a class has a step of a planting on a day.
fn is_due(planting: &Planting, class: &str, day: Date) -> bool {
    planting.steps.iter().any(|step| match &step.when {
        crate::plan::When::Sessions(visits) => {
            visits.iter().any(|v| v.class == class && v.date == day)
        }
        _ => false,
    })
}
