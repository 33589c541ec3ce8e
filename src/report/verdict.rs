//! The verdict: in how many weather years the whole dish is ready, what to expect of it,
//! whether anything better is possible, and what fails in the other years.

use std::collections::BTreeMap;

use crate::checker::Standing;
use crate::growth::Unready;
use crate::plan::{Aim, AimResult};

use super::page::Page;
use super::ran_out;
use super::view::View;
use super::words::{count, list};
use crate::facts::interval::further_years_95;

/// The sentence at the head of every plan.
pub(super) fn sentence(view: &View<'_>) -> String {
    let ready = view.replay.whole_dish_years();
    let years = view.years();
    let (fewest, most) = further_years_95(ready, years);
    let unless = if view.garden.weather.is_generated() {
        " (if the monthly means are right)"
    } else {
        ""
    };
    format!(
        "The whole dish is ready in {ready} of {years} {}, so expect it in {fewest} to {most} of {years} \
         more{unless}{}.",
        view.kind_of_years(),
        proof(view, ready)
    )
}

/// How far the number of ready years is proved, as the end of the sentence. What a plan that was
/// read says of its aims was proved when it was made; one that was edited, or whose project has
/// changed, says nothing of them.
fn proof(view: &View<'_>, ready: usize) -> String {
    let aims = &view.plan.aims;
    let years = view.years();
    let saved = *view.checked.standing() == Standing::Saved;
    let when = if saved { " when it was planned" } else { "" };
    let are = if saved { "were" } else { "are" };
    let Some(at) = aims.iter().position(|a| a.aim == Aim::WholeDish) else {
        return String::new();
    };
    let (before, rest) = aims.split_at(at);
    let Some(whole) = rest.first() else {
        return String::new();
    };
    let before_proved = before.iter().all(AimResult::proved);
    let best = whole.value.round().max(0.0) as usize;
    // Where its worst ingredient allows no more, the dish is at its best whatever its own bound.
    let most = ran_out::most_years(aims, years).unwrap_or(years).max(ready);
    if !before_proved && most > ready {
        format!("; the best plan found, not proved best; at most {most} years {are} possible{when}")
    } else if !before_proved {
        format!("; the best plan found, not proved best{when}")
    } else if !whole.proved() && most > ready {
        format!("; the best plan found; at most {most} years {are} possible{when}")
    } else if ready >= best {
        format!("; proved best{when}")
    } else {
        let given = u32::try_from(best - ready).unwrap_or(u32::MAX);
        format!(
            "; {best} {are} possible{when}, {} given up for the aims that come after it",
            count(given, "year")
        )
    }
}

/// The readiness on the rain date, if there is one.
pub(super) fn rain_date(view: &View<'_>) -> Option<String> {
    let day = view.garden.feast.rain_date?;
    let ready = view.replay.dish_ready_on_rain_date.as_ref()?;
    let most_often = rain_date_failure(view).map_or_else(String::new, |(name, why)| {
        format!(
            " On that day {name} fails most often, because {}.",
            unready(why)
        )
    });
    let bears_on = view
        .ingredients()
        .any(|(_, i, _)| i.crop.picking.keeps_bearing);
    let again = if bears_on {
        " What keeps bearing is picked once more for it."
    } else {
        ""
    };
    Some(format!(
        "On the rain date, {}: ready in {} of {}.{again}{most_often}",
        view.words.full_day(day),
        ready.iter().filter(|r| **r).count(),
        ready.len(),
    ))
}

/// The ingredient and reason that fail most often on the rain date.
fn rain_date_failure<'a>(view: &View<'a>) -> Option<(&'a str, Unready)> {
    let mut failures: BTreeMap<(usize, Unready), u32> = BTreeMap::new();
    for (at, _, seen) in view.ingredients() {
        let reasons = seen.ready_on_rain_date.iter().flatten();
        for why in reasons.filter_map(|r| r.err()) {
            *failures.entry((at.0, why)).or_default() += 1;
        }
    }
    let ((at, why), _) = failures
        .into_iter()
        .max_by_key(|(key, n)| (*n, std::cmp::Reverse(*key)))?;
    Some((&view.garden.ingredients.get(at)?.name, why))
}

/// What stands between the plan and every year, one line per ingredient that fails in some.
pub(super) fn weak_points(view: &View<'_>, page: &mut Page) {
    let mut lines = Vec::new();
    for (_, ingredient, seen) in view.ingredients() {
        let mut reasons: BTreeMap<Unready, Vec<i32>> = BTreeMap::new();
        for (year, outcome) in view.replay.years.iter().zip(&seen.ready) {
            if let Err(why) = outcome {
                reasons.entry(*why).or_default().push(*year);
            }
        }
        if reasons.is_empty() {
            continue;
        }
        lines.push(format!(
            "{}: fails in {} of {} years: {}.",
            ingredient.name,
            view.years() - seen.ready_years(),
            view.years(),
            reasons_in(&reasons, !view.garden.weather.is_generated())
        ));
    }
    if lines.is_empty() {
        return;
    }
    page.heading("What it hangs on");
    for line in lines {
        page.item(&line);
    }
}

/// Reasons with their numbers of years, or with the years themselves where they are few and
/// `named`.
fn reasons_in(reasons: &BTreeMap<Unready, Vec<i32>>, named: bool) -> String {
    let text = |(why, years): (&Unready, &Vec<i32>)| {
        let labels: Vec<String> = years.iter().map(ToString::to_string).collect();
        let n = u32::try_from(years.len()).unwrap_or(u32::MAX);
        if named && years.len() <= 3 {
            format!("in {} {}", list(&labels), unready(*why))
        } else if reasons.len() == 1 {
            unready(*why).to_owned()
        } else {
            format!("in {} {}", count(n, "year"), unready(*why))
        }
    };
    reasons.iter().map(text).collect::<Vec<_>>().join("; ")
}

/// Why an ingredient is not ready, in words.
pub(super) fn unready(why: Unready) -> &'static str {
    match why {
        Unready::NotSown => "the ground is too cold to sow on its day",
        Unready::NotPlanted => "the ground is too cold to plant on its day",
        Unready::NotUp => "it does not come up",
        Unready::NotRipe => "it is not ripe at the last chance to pick",
        Unready::Frost => "frost kills it before it is picked",
        Unready::Bolted => "it runs to seed before it is picked",
        Unready::Past => "it is ripe too early and past when it could be picked",
        Unready::DoesNotKeep => "it is picked but does not keep until it is eaten",
    }
}
