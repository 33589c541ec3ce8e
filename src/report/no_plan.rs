//! No plan: which ingredients cannot be in the pot and why, what binds first, what fits
//! together, and what to try. Suggestions are not proved to help; they say so.

mod ideas;

use std::time::Duration;

use crate::facts::no_plan::{Hindrance, LeftOut, Limit, MOST_WAYS, most_ways};
use crate::garden::Garden;

use super::ran_out;
use crate::page::Page;
use crate::words::no_plan::{self, names, verdict};
use crate::words::occasion::occasion;
use crate::words::{count, drop_reasons, list, sentence};

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

/// What has no plan, such as a day or a dish, with the reason; those of one reason together.
pub(super) fn not_possible(whys: impl Iterator<Item = (String, String)>, page: &mut Page) {
    let mut reasons: Vec<(String, Vec<String>)> = Vec::new();
    for (name, why) in whys {
        match reasons.iter_mut().find(|(known, _)| *known == why) {
            Some((_, same)) => same.push(name),
            None => reasons.push((why, vec![name])),
        }
    }
    if !reasons.is_empty() {
        page.heading("Not possible");
    }
    for (why, same) in &reasons {
        page.item(&format!("{}: {why}", list(same)));
    }
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
        page.item(&no_plan::limit(garden, limit));
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
