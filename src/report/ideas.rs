//! What could be cooked on a day instead: a line for each dish, the best first, and who would grow what.

use std::cmp::Reverse;

use crate::explain::Idea;
use crate::facts::Facts;
use crate::facts::compared::{does, of_trial};
use crate::garden::Garden;
use crate::project::dish_in_lines;

use super::no_plan::not_possible;
use super::ran_out;
use crate::page::Page;
use crate::words::Words;
use crate::words::no_plan::why_none;
use crate::words::other_plans::{AS_IT_IS, TO_TAKE_IT, bar, dish_of, held_back_by, who_grows_what};
use crate::words::view::{View, kind_of_promise, readiness};

/// So many of the best dishes are told in full.
const TOLD: usize = 3;

/// What `tureen ideas` prints.
#[must_use]
pub fn ideas(garden: &Garden, ideas: &[Idea]) -> Page {
    let mut page = Page::new();
    let plans = ideas.iter().map(|idea| (dish_of(idea), &idea.trial));
    ran_out::of_trials(plans, &mut page);
    let mut planned: Vec<(&Idea, Facts<'_>)> = ideas
        .iter()
        .filter_map(|idea| Some((idea, of_trial(&idea.trial)?)))
        .collect();
    planned.sort_by_key(|(_, facts)| Reverse(does(facts)));
    let day = ideas
        .first()
        .map_or(garden, |idea| &idea.trial.garden)
        .feast
        .day;
    let day = Words::of(garden).full_day(day);
    match planned.first() {
        Some((best, facts)) => {
            let ready = readiness(View::of(facts).promised());
            page.title(&format!(
                "Best on {day}: {}, ready in {ready} years.",
                dish_of(best)
            ));
            dishes(&planned, &mut page);
        }
        None => page.title(&format!("No dish has a plan for {day}.")),
    }
    let why = |idea: &Idea| {
        let why = idea.trial.outcome.as_ref().err()?;
        Some((dish_of(idea), why_none(&idea.trial.garden, why)))
    };
    not_possible(ideas.iter().filter_map(why), &mut page);
    if let Some((best, _)) = planned.first().filter(|(best, _)| best.dish.is_some()) {
        page.heading(&format!("To cook {}", dish_of(best)));
        page.line(TO_TAKE_IT);
        for line in dish_in_lines(&best.trial.garden) {
            page.line(&line);
        }
    }
    page.gap();
    page.line(AS_IT_IS);
    page
}

/// The dishes that can be had, and who would grow the best of them.
fn dishes(planned: &[(&Idea, Facts<'_>)], page: &mut Page) {
    let row = |(idea, facts): &(&Idea, Facts<'_>)| {
        let view = View::of(facts);
        let whole = view.promised();
        vec![
            dish_of(idea),
            readiness(whole),
            bar(whole),
            held_back_by(&view),
        ]
    };
    page.heading("Dishes");
    let rows: Vec<Vec<String>> = planned.iter().map(row).collect();
    page.table(&["Dish", "Ready", "", "Held back by"], &rows, &[1]);
    if let Some((_, facts)) = planned.first() {
        let years = kind_of_promise(facts.garden, facts.promised().on);
        page.line(&format!(
            "Ready: in how many {years} the whole dish is ready."
        ));
    }
    page.heading("Who would grow what");
    for (idea, facts) in planned.iter().take(TOLD) {
        page.item(&format!(
            "{}: {}.",
            dish_of(idea),
            who_grows_what(&View::of(facts))
        ));
    }
}
