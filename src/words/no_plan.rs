//! Why there is no plan, in sentences.

use crate::facts::no_plan::{Hindrance, Limit, Scarce, Who};
use crate::garden::{Garden, GradeAt, IngredientAt};
use crate::pipeline::NoPlan;

use super::{Words, count, list, sentence};

/// Why a project has no plan, in a sentence or two.
pub(crate) fn why_none(garden: &Garden, why: &NoPlan) -> String {
    match why {
        NoPlan::Impossible(found) => verdict(garden, &Hindrance::of(garden, found)),
        NoPlan::OutOfTime => "No plan was found in the time allowed.".to_owned(),
        NoPlan::TooMany => "There are too many ways to choose from.".to_owned(),
        NoPlan::Failed(words) => format!("The search failed: {words}."),
        NoPlan::Refused(_) => "The plan that was made breaks rules; please report it.".to_owned(),
    }
}

/// The names of some ingredients.
pub(crate) fn names(garden: &Garden, ingredients: &[IngredientAt]) -> Vec<String> {
    ingredients
        .iter()
        .map(|at| garden[*at].name.clone())
        .collect()
}

/// What cannot be in the pot, and how sure that is.
pub(crate) fn verdict(garden: &Garden, found: &Hindrance) -> String {
    let out: Vec<IngredientAt> = found.left_out.iter().map(|l| l.ingredient).collect();
    let all = garden.ingredients.len();
    let fit = found.together.len();
    let proof = if found.proved {
        "more is not possible"
    } else {
        "more may be possible, but was not found in the time allowed"
    };
    if out.is_empty() {
        return format!("Not all {all} ingredients fit together.");
    }
    if fit == 0 && found.proved {
        return "None of its ingredients can be in the pot.".to_owned();
    }
    format!(
        "{} cannot be in the pot with the rest: {fit} of {all} ingredients fit, {proof}.",
        sentence(&list(&names(garden, &out)))
    )
}

/// What runs out first, and who wants it.
pub(crate) fn limit(garden: &Garden, limit: &Limit) -> String {
    let Limit { wanted, there, .. } = *limit;
    match &limit.scarce {
        Scarce::Beds(week) => format!(
            "Beds: {} of {there} are wanted{}{}.",
            count(wanted, "strip"),
            week.map_or_else(String::new, |week| format!(
                " in the week of {}",
                Words::of(garden).short(week)
            )),
            who_wants(garden, limit, "strip")
        ),
        Scarce::Family(family) => format!(
            "The {family} family: {} of {there} are wanted, and none carries the family twice \
             within its years{}.",
            count(wanted, "strip"),
            who_wants(garden, limit, "strip")
        ),
        Scarce::Grades(without) => format!(
            "Grades: {wanted} must grow something, as many as can by the file, but something works \
             for {there} only{}.",
            nothing_for(garden, without)
        ),
        Scarce::Shelf => format!(
            "Shelf: {} of {there} are wanted{}.",
            count(wanted, "flat"),
            who_wants(garden, limit, "flat")
        ),
    }
}

/// `; nothing works for Grade 3`.
fn nothing_for(garden: &Garden, grades: &[GradeAt]) -> String {
    let names: Vec<&str> = grades.iter().map(|g| garden[*g].name.as_str()).collect();
    match names.is_empty() {
        true => String::new(),
        false => format!("; nothing works for {}", list(&names)),
    }
}

/// `; bean and tomato alone want 154 of 72`, `; most of it for bean 57 strips`.
fn who_wants(garden: &Garden, limit: &Limit, thing: &str) -> String {
    match &limit.who {
        Who::Alone(enough, sum) => format!(
            "; {} alone {} {sum} of {}",
            list(&names(garden, enough)),
            if enough.len() == 1 { "wants" } else { "want" },
            limit.there
        ),
        Who::Most(most) if most.is_empty() => String::new(),
        Who::Most(most) => {
            let texts = most
                .iter()
                .map(|(at, n)| format!("{} {}", garden[*at].name, count(*n, thing)));
            format!("; most of it for {}", list(&texts.collect::<Vec<_>>()))
        }
    }
}
