//! Why one step is when it is: what it follows and what follows it, what forbids other weeks,
//! and what another week would cost.

use crate::checker::CheckedPlan;
use crate::explain::{Beside, Held, Start, WhyStep};
use crate::facts::Facts;
use crate::facts::compared::Ready;
use crate::facts::verdict::years_are_proved;
use crate::facts::weeks_apart;
use crate::garden::{Garden, Method};
use crate::plan::{AimResult, Planting, Step, When};

use super::step_by_step;
use crate::page::Page;
use crate::words::occasion::occasion;
use crate::words::view::View;
use crate::words::{binds, count, sentence, step_words, steps};

/// What `tureen why FILE STEP` prints.
#[must_use]
pub fn why_step(garden: &Garden, checked: &CheckedPlan, why: &WhyStep) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    let Some((planting, step)) = checked.plan().step(why.at) else {
        return page;
    };
    page.paragraph(&occasion(garden));
    page.title(&format!(
        "{}, {}: {}",
        sentence(&planting.ingredient),
        step_words::name(planting.method, step.kind).to_lowercase(),
        steps::when(&step.when, view.words)
    ));
    page.heading("Why then");
    around(&view, planting, why.at.step, &mut page);
    needs(&view, planting, step, &mut page);
    if let Some(start) = &why.start {
        page.item(&started(&view, planting, start));
    }
    page.item(&step_by_step::one(&view, &why.slack, planting, step));
    page.heading("What binds");
    page.line("This step alone on other days, all others as planned:");
    for beside in &why.beside {
        page.item(&bound(&view, planting, step, beside));
    }
    if why.beside.is_empty() {
        page.item("There are no other sessions in which it could be done.");
    }
    if !why.held.is_empty() {
        page.heading("What another week would cost");
        page.line(
            "All is planned anew with this step held to the nearest week for which there is a plan:",
        );
    }
    for held in &why.held {
        page.item(&cost(&view, planting, step, held));
    }
    page
}

/// The steps before and after it.
fn around(view: &View<'_>, planting: &Planting, at: usize, page: &mut Page) {
    let beside = |step: Option<&Step>| {
        let step = step?;
        let name = step_words::name(planting.method, step.kind).to_lowercase();
        Some(format!("{name}, {}", steps::when(&step.when, view.words)))
    };
    let before = at.checked_sub(1).and_then(|at| planting.steps.get(at));
    let texts = [
        ("Before it", before),
        ("After it", planting.steps.get(at + 1)),
    ];
    for (label, step) in texts {
        if let Some(text) = beside(step) {
            page.item(&format!("{label}: {text}."));
        }
    }
    page.item(&format!(
        "The dish is on {}, and the kitchen needs the harvest by {}.",
        view.words.day(view.garden.feast.day),
        view.words.day(view.garden.feast.deliver_by)
    ));
}

/// What the crop asks of seedlings.
fn needs(view: &View<'_>, planting: &Planting, step: &Step, page: &mut Page) {
    if let (Some(weeks), true) = (view.shelf_weeks(planting), step.kind.facts().raises) {
        page.item(&format!(
            "Its seedlings are planted out {} to {} weeks after sowing; here it is {}.",
            weeks.fewest,
            weeks.most,
            count(weeks.planned, "week")
        ));
    }
}

/// What comes of a start in the bed.
fn started(view: &View<'_>, planting: &Planting, start: &Start) -> String {
    let years = start.years;
    let day = |day: Option<crate::calendar::Date>| {
        day.map_or("never".to_owned(), |day| {
            format!("by {}", view.words.day(day))
        })
    };
    let up = match planting.method {
        Method::Direct | Method::Pieces => format!(
            "Sown then it comes up in {} of {years} years, in half of them {}",
            start.up_years,
            day(start.up)
        ),
        _ => format!(
            "The ground can be worked then in {} of {years} years",
            start.up_years
        ),
    };
    let frost = match start.frost_years {
        0 => "in none does frost end it before that".to_owned(),
        n => format!("in {n} frost ends it before that"),
    };
    let frost = match start.hot_years {
        0 => frost,
        n => format!("{frost}, in {n} heat"),
    };
    format!(
        "{up}; it is ripe in half of the years {}; {frost}.",
        day(start.ripe)
    )
}

/// What other days would bring, or what forbids them.
fn bound(view: &View<'_>, planting: &Planting, step: &Step, beside: &Beside) -> String {
    let away = away(step, &beside.when);
    let when = steps::when(&beside.when, view.words);
    let forbids = binds::sentences(view, step.kind, &beside.violations);
    let then = compared(view, planting, view.ready_in(planting, &beside.harvest));
    let what = match (beside.does, forbids.as_slice()) {
        (true, _) => format!("would do: {then}"),
        (false, []) => format!("costs too much: {then}"),
        (false, _) => forbids.join("; "),
    };
    format!("{} ({when}): {what}.", sentence(&away))
}

/// `carrot is ready in 28 of 30 years instead of 30, the whole dish in 20 instead of 21`.
fn compared(view: &View<'_>, planting: &Planting, then: Ready) -> String {
    let now = view.ready_now(planting);
    let of = |then: usize, now: usize| match then == now {
        true => " as well".to_owned(),
        false => format!(" instead of {now}"),
    };
    format!(
        "{} is ready in {} of {} years{}, the whole dish in {}{}",
        planting.ingredient,
        then.ingredient,
        view.years(),
        of(then.ingredient, now.ingredient),
        then.dish,
        of(then.dish, now.dish)
    )
}

/// What a plan with the step on other days costs.
fn cost(view: &View<'_>, planting: &Planting, step: &Step, held: &Held) -> String {
    let side = if held.earlier { "earlier" } else { "later" };
    let unsettled = match held.unsettled {
        0 => String::new(),
        n => format!(" Of {n} it was not settled in the time allowed."),
    };
    let Some((when, plan)) = &held.plan else {
        return match held.without_plan {
            0 => format!("There is no {side} week in which it could be done."),
            n => format!(
                "No plan in the {} that are {side}.{unsettled}",
                count(n, "round")
            ),
        };
    };
    let then = Facts::new(view.garden, plan).ready_now(planting);
    let nearer = match held.without_plan {
        0 => String::new(),
        1 => " Nearer by, 1 round has no plan.".to_owned(),
        n => format!(" Nearer by, {n} rounds have no plan."),
    };
    format!(
        "{} ({}): {}; {}.{nearer}{unsettled}",
        sentence(&away(step, when)),
        steps::when(when, view.words),
        compared(view, planting, then),
        proof(&plan.plan().aims)
    )
}

/// How far the years of a plan are proved.
fn proof(aims: &[AimResult]) -> &'static str {
    match years_are_proved(aims) {
        true => "proved best for that week",
        false => "the best found, not proved best",
    }
}

/// `a week later`, `3 weeks earlier`.
fn away(step: &Step, when: &When) -> String {
    let Some(away) = weeks_apart::away(step, when) else {
        return String::new();
    };
    let side = if away.earlier { "earlier" } else { "later" };
    match away.weeks {
        0 => format!("in the same week, {side}"),
        1 => format!("a week {side}"),
        n => format!("{n} weeks {side}"),
    }
}

/// What is said of a step that was asked for where there is no plan.
#[must_use]
pub fn step_without_plan(asked: &str) -> Page {
    let mut page = Page::new();
    page.paragraph(&format!(
        "There is no plan, so the step \"{asked}\" cannot be explained."
    ));
    page.gap();
    page
}
