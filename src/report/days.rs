//! How the dish would fare on other days: a line a week, with a small chart, and the ingredient
//! that holds each day back.

use crate::calendar::Date;
use crate::explain::OtherDay;
use crate::facts::Facts;
use crate::facts::compared::{best_day, of_trial};
use crate::facts::verdict::{CountedOn, Readiness};
use crate::garden::Garden;

use super::no_plan::not_possible;
use super::ran_out;
use crate::page::Page;
use crate::words::no_plan::why_none;
use crate::words::occasion::occasion;
use crate::words::other_plans::{bar, held_back_by};
use crate::words::view::{View, figure, kind_of_promise, kind_of_years, readiness};
use crate::words::{Words, promise};

/// A day with its plan.
struct Planned<'a> {
    day: &'a OtherDay,
    view: View<'a>,
    /// How often the whole dish is ready.
    whole: Readiness,
}

/// What `tureen days` prints.
#[must_use]
pub fn days(garden: &Garden, days: &[OtherDay]) -> Page {
    let mut page = Page::new();
    page.paragraph(&occasion(garden));
    let words = Words::of(garden);
    let trials = days
        .iter()
        .filter_map(|day| Some((words.day(day.day), day.trial.as_ref()?)));
    ran_out::of_trials(trials, &mut page);
    let facts: Vec<(&OtherDay, Facts<'_>)> = days
        .iter()
        .filter_map(|day| Some((day, of_trial(day.trial.as_ref()?)?)))
        .collect();
    let planned: Vec<Planned<'_>> = facts.iter().map(planned).collect();
    page.gap();
    page.title(&best(garden, &planned));
    page.heading("The whole dish");
    whole_dish(garden, &planned, &mut page);
    let has_plan = |day: &OtherDay| planned.iter().any(|p| p.day.day == day.day);
    let without = days.iter().filter(|day| !has_plan(day));
    not_possible(
        without.map(|day| (words.day(day.day), no_plan(day))),
        &mut page,
    );
    if !planned.is_empty() {
        page.heading("Each ingredient");
        ingredients(garden, &planned, &mut page);
    }
    page.gap();
    page.line(
        "The file stays as it is: each week has a plan of its own here, and the day by which the \
         kitchen needs the harvest moves along.",
    );
    page
}

fn planned<'a>((day, facts): &'a (&'a OtherDay, Facts<'a>)) -> Planned<'a> {
    let view = View::of(facts);
    let whole = view.promised();
    Planned { day, view, whole }
}

/// A line a day: ready years, a bar, and what holds the day back.
fn whole_dish(garden: &Garden, planned: &[Planned<'_>], page: &mut Page) {
    let words = Words::of(garden);
    let rows: Vec<Vec<String>> = planned
        .iter()
        .map(|planned| {
            let day = planned.day.day;
            let mark = if day == garden.feast.day { "*" } else { "" };
            vec![
                format!("{}{mark}", words.day(day)),
                readiness(planned.whole),
                bar(planned.whole),
                held_back_by(&planned.view),
            ]
        })
        .collect();
    page.table(&["Day", "Ready", "", "Held back by"], &rows, &[1]);
    let first = planned.first();
    let years = first.map_or("years", |p| kind_of_promise(garden, p.whole.on));
    page.line(&format!(
        "Ready: in how many {years} the whole dish is ready. * is the day in the file."
    ));
    if let Some(text) = first.and_then(|p| promise::only_own_years(&p.view)) {
        page.line(text);
    }
}

fn no_plan(day: &OtherDay) -> String {
    match &day.trial {
        None => "no school on that day.".to_owned(),
        Some(trial) => trial
            .outcome
            .as_ref()
            .err()
            .map_or_else(String::new, |why| why_none(&trial.garden, why)),
    }
}

/// Ready years of every ingredient, a line a day.
fn ingredients(garden: &Garden, planned: &[Planned<'_>], page: &mut Page) {
    let mut header = vec!["Day"];
    header.extend(garden.ingredients.iter().map(|i| i.name.as_str()));
    let rows: Vec<Vec<String>> = planned
        .iter()
        .map(|p| {
            let ready = p.view.ingredients();
            let ready = ready.map(|(at, ..)| figure(p.view.promised_of(at)));
            std::iter::once(Words::of(garden).day(p.day.day))
                .chain(ready)
                .collect()
        })
        .collect();
    let right: Vec<usize> = (1..header.len()).collect();
    page.table(&header, &rows, &right);
}

/// The day on which the dish does best.
fn best(garden: &Garden, planned: &[Planned<'_>]) -> String {
    let plans: Vec<(Date, &Facts<'_>)> = planned.iter().map(|p| (p.day.day, &*p.view)).collect();
    let best = best_day(&plans, garden.feast.day).and_then(|at| planned.get(at));
    let Some(best) = best else {
        return "On no day of the span is there a plan.".to_owned();
    };
    let same = match best.day.day == garden.feast.day {
        true => ", the day in the file",
        false => "",
    };
    let years = match best.whole.on {
        CountedOn::Fresh => "years",
        CountedOn::Own | CountedOn::InTurn => kind_of_years(garden),
    };
    format!(
        "Best on {}{same}: the whole dish is ready in {} {years}.",
        Words::of(garden).full_day(best.day.day),
        readiness(best.whole)
    )
}
