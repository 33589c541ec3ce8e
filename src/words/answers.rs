//! The first line of a page: what its reader wants to know, in plain words. How it was counted stands at the end.

use crate::facts::verdict::Readiness;
use crate::units::Minutes;

use super::view::{View, readiness};
use super::{count, list, minutes};

/// An ingredient that is ready in fewer of a hundred years than this is called doubtful.
const SURE: usize = 95;

/// So few years say little: they are counted, not rounded.
const FEW: usize = 10;

/// `Expect the whole dish in about half of all years (46 of 100). Most doubtful: dry bean, then tomato.`
#[must_use]
pub fn whole_dish(view: &View<'_>) -> String {
    let promised = view.promised();
    let often = match promised.years {
        few if few < FEW => format!("in {} years", readiness(promised)),
        _ => format!("{} ({})", about(promised), readiness(promised)),
    };
    let doubtful = doubtful(view);
    let named: Vec<String> = doubtful
        .iter()
        .take(2)
        .map(|name| (*name).to_owned())
        .collect();
    let doubt = match named.as_slice() {
        [] => "Every single ingredient is nearly sure.".to_owned(),
        some => format!("Most doubtful: {}.", some.join(", then ")),
    };
    format!("Expect the whole dish {often}. {doubt}")
}

/// The ingredients that are not nearly sure, the most doubtful first.
fn doubtful<'a>(view: &View<'a>) -> Vec<&'a str> {
    let all = view.ingredients();
    let shares = all.map(|(at, ingredient, _)| {
        let promised = view.promised_of(at);
        (promised.of_hundred(), ingredient.name.as_str())
    });
    let mut doubtful: Vec<(usize, &str)> = shares.filter(|(share, _)| *share < SURE).collect();
    doubtful.sort_by_key(|(share, _)| *share);
    doubtful.into_iter().map(|(_, name)| name).collect()
}

/// A share of years as people say it: from 15 to 99 years of a hundred never more than 5 of them away.
#[must_use]
pub fn about(promised: Readiness) -> &'static str {
    match promised.of_hundred() {
        100 => "in every year that was counted",
        // Not what only rounds to it.
        90.. if promised.ready * 10 >= promised.years * 9 => "in at least 9 years of 10",
        85.. => "in nearly 9 years of 10",
        80.. => "in about 4 years of 5",
        70.. => "in about 3 years of 4",
        63.. => "in about 2 years of 3",
        56.. => "in about 3 years of 5",
        45.. => "in about half of all years",
        37.. => "in about 2 years of 5",
        30.. => "in about 1 year of 3",
        23.. => "in about 1 year of 4",
        15.. => "in about 1 year of 5",
        1.. => "in few years",
        0 => "in none of the years that were counted",
    }
}

/// What the principal has to give: `No class gives more than 9 lessons, and no lesson more than 12 min.`
#[must_use]
pub fn lessons(view: &View<'_>) -> Option<String> {
    let grades = view.garden.grade_positions();
    let most: Vec<_> = grades
        .filter_map(|grade| view.most_of_grade(grade))
        .collect();
    let sessions = most.iter().map(|most| most.sessions).max()?;
    let fullest = most.iter().map(|most| most.fullest.0).fold(0.0, f64::max);
    let people = match view.gaps.len() {
        0 => String::new(),
        1 => " For one span of days somebody must be found.".to_owned(),
        spans => format!(" For {spans} spans of days somebody must be found."),
    };
    Some(format!(
        "No class gives more than {}, and no lesson more than {}.{people}",
        count(sessions, "lesson"),
        minutes(Minutes(fullest))
    ))
}

/// What the kitchen has to do: what to order by when, what to ask about, when all is there.
#[must_use]
pub fn kitchen(view: &View<'_>) -> String {
    let missing = view.comes().iter().any(|comes| comes.missing.is_some());
    let order = missing.then(|| {
        let by = view.words.day(view.rest_ordered_by());
        format!("By {by} order what is missing in a poor year.")
    });
    let mut asked: Vec<(crate::calendar::Date, Vec<&str>)> = Vec::new();
    for ingredient in &view.garden.ingredients {
        let Some(fallback) = ingredient.fallback else {
            continue;
        };
        let by = view.bought_by(fallback);
        match asked.iter_mut().find(|(day, _)| *day == by) {
            Some((_, names)) => names.push(&ingredient.name),
            None => asked.push((by, vec![&ingredient.name])),
        }
    }
    asked.sort_by_key(|(day, _)| *day);
    let ask = asked
        .iter()
        .map(|(day, names)| format!("Ask about {} on {}.", list(names), view.words.day(*day)));
    let there = view.words.day(view.garden.feast.deliver_by);
    let there = format!("All is in the kitchen by {there}.");
    order
        .into_iter()
        .chain(ask)
        .chain([there])
        .collect::<Vec<_>>()
        .join(" ")
}
