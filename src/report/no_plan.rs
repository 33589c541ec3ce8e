//! No plan: which ingredients cannot be in the pot and why, what binds first, what fits
//! together, and what to try. Suggestions are not proved to help; they say so.

mod ideas;

use std::time::Duration;

use crate::facts::no_plan::{Hindrance, LeftOut, Limit, MOST_WAYS, Scarce, Who, most_ways};
use crate::garden::{Garden, GradeAt, IngredientAt};
use crate::pipeline::NoPlan;

use super::ran_out;
use crate::page::Page;
use crate::words::occasion::occasion;
use crate::words::{Words, count, drop_reasons, list, sentence};

/// How many limits are shown.
const LIMITS: usize = 5;

/// What `tureen plan` prints when no plan keeps the rules.
#[must_use]
pub fn no_plan(garden: &Garden, found: &Hindrance) -> Page {
    let mut page = Page::new();
    in_the_way(garden, found, &mut page);
    together(garden, found, &mut page);
    ideas::write(garden, found, &mut page);
    page
}

/// What stands in the way, with quantities.
pub(super) fn in_the_way(garden: &Garden, found: &Hindrance, page: &mut Page) {
    page.title(&format!("No plan. {}", verdict(garden, found)));
    page.paragraph(&occasion(garden));
    if !found.left_out.is_empty() {
        page.heading("What cannot be in the pot");
    }
    for left_out in found.worst_first() {
        reasons(garden, left_out, page);
    }
    limits(garden, &found.limits, page);
}

/// What `tureen plan` prints when the search ended before a plan was found: after so long, or where
/// it had looked at as much as it may.
#[must_use]
pub fn out_of_time(ran_out: Option<Duration>) -> Page {
    let mut page = Page::new();
    let (when, remedy) = match ran_out {
        Some(limit) => (
            ran_out::seconds(limit),
            "Allow more time with --time-limit, or make the task smaller",
        ),
        None => (
            "all that the search may look at".to_owned(),
            "More time would not help; make the task smaller",
        ),
    };
    page.title(&format!(
        "No plan found in {when}, and none proved impossible."
    ));
    page.paragraph(&format!("{remedy}: fewer sowings, fewer beds that differ."));
    page
}

/// So many ingredients are named that have the most ways.
const MOST_WAYS_NAMED: usize = 5;

/// What `tureen plan` prints where there are too many plantings to choose from.
#[must_use]
pub fn too_many(garden: &Garden) -> Page {
    let mut page = Page::new();
    page.title(&format!(
        "No plan was sought: there are more than {} ways to grow these ingredients.",
        MOST_WAYS
    ));
    page.paragraph(
        "A way is one crop, sown by one grade on certain days in one kind of bed and picked on \
         certain days. Most are made where many grades may grow an ingredient, in many ways and \
         in many kinds of beds:",
    );
    for ways in most_ways(garden).into_iter().take(MOST_WAYS_NAMED) {
        page.item(&format!(
            "{}: {}, {}, {}.",
            ways.ingredient.name,
            some(ways.grades, "grade"),
            some(ways.methods, "method"),
            some(ways.beds, "kind of bed")
        ));
    }
    page.paragraph(
        "Name the grade of more ingredients, and their method; give like beds the same width, \
         light and cover.",
    );
    page
}

/// `30 grades`.
fn some(n: usize, what: &str) -> String {
    match what.split_once(' ') {
        Some((first, rest)) if n != 1 => format!("{n} {first}s {rest}"),
        _ => count(n, what),
    }
}

/// Why a project has no plan, in a sentence or two.
pub(super) fn why_none(garden: &Garden, why: &NoPlan) -> String {
    match why {
        NoPlan::Impossible(found) => verdict(garden, &Hindrance::of(garden, found)),
        NoPlan::OutOfTime => "No plan was found in the time allowed.".to_owned(),
        NoPlan::TooMany => "There are too many ways to choose from.".to_owned(),
        NoPlan::Failed(words) => format!("The search failed: {words}."),
        NoPlan::Refused(_) => "The plan that was made breaks rules; please report it.".to_owned(),
    }
}

fn names(garden: &Garden, ingredients: &[IngredientAt]) -> Vec<String> {
    ingredients
        .iter()
        .map(|at| garden[*at].name.clone())
        .collect()
}

fn verdict(garden: &Garden, found: &Hindrance) -> String {
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

/// Why one ingredient is left out.
fn reasons(garden: &Garden, left_out: &LeftOut, page: &mut Page) {
    let name = &garden[left_out.ingredient].name;
    let wants = left_out.wants.map_or_else(String::new, |n| {
        format!(" Its least share wants {}.", count(n, "strip"))
    });
    let beside = match garden.ingredients.len() {
        1 => "",
        _ => " beside the rest",
    };
    match &left_out.tries {
        None => page.item(&format!(
            "{name}: its steps can be done, but not enough of it fits in{beside}.{wants}"
        )),
        Some(reasons) => {
            page.item(&format!("{name}: nothing that was tried works.{wants}"));
            for (reason, tries) in reasons {
                page.entry(
                    &format!("  {}", count(*tries, "try")),
                    14,
                    &format!("{}.", drop_reasons::why(*reason)),
                );
            }
        }
    }
}

fn limits(garden: &Garden, limits: &[Limit], page: &mut Page) {
    if limits.is_empty() {
        return;
    }
    page.heading("What runs out first");
    for limit in limits.iter().take(LIMITS) {
        page.item(&limit_text(garden, limit));
    }
}

fn limit_text(garden: &Garden, limit: &Limit) -> String {
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

fn together(garden: &Garden, found: &Hindrance, page: &mut Page) {
    page.heading("What fits together");
    if found.together.is_empty() {
        page.line("Nothing of this dish.");
        return;
    }
    page.line(&format!(
        "{}.",
        sentence(&list(&names(garden, &found.together)))
    ));
}
