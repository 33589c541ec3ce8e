//! What stands beside the verdict: the rain date, and what fails in which years.

use std::cmp::Reverse;

use crate::facts::verdict::WeakPoint;
use crate::growth::Unready;

use crate::page::Page;
use crate::words::view::{View, readiness};
use crate::words::{count, list};

/// The readiness on the rain date, if there is one.
pub(super) fn rain_date(view: &View<'_>) -> Option<String> {
    let seen = view.on_rain_date()?;
    let most_often = seen.weakest.map_or_else(String::new, |(at, why)| {
        format!(
            " On that day {} fails most often, because {}.",
            view.garden[at].name,
            unready(why)
        )
    });
    let again = if seen.picked_again {
        " What keeps bearing is picked once more for it."
    } else {
        ""
    };
    Some(format!(
        "On the rain date, {}: ready in {}.{again}{most_often}",
        view.words.full_day(seen.day),
        readiness(seen.promised),
    ))
}

/// The same without what fails on it.
pub(super) fn rain_date_in_short(view: &View<'_>) -> Option<String> {
    let seen = view.on_rain_date()?;
    let day = view.words.full_day(seen.day);
    Some(format!(
        "On the rain date, {day}: ready in {}.",
        readiness(seen.promised)
    ))
}

/// What stands between the plan and every year, one line per ingredient that fails in some.
pub(super) fn weak_points(view: &View<'_>, page: &mut Page) {
    let points = view.weak_points();
    if points.is_empty() {
        return;
    }
    page.heading("What it hangs on");
    for point in &points {
        page.item(&weak_point(view, point));
    }
}

/// In how many years an ingredient fails, and why.
pub(super) fn weak_point(view: &View<'_>, point: &WeakPoint) -> String {
    format!(
        "{}: fails in {} of {}: {}.",
        view.garden[point.ingredient].name,
        point.failed,
        view.own_years(),
        reasons(point, !view.garden.weather.is_generated())
    )
}

/// `dry bean fails in 9 of 30 years (rots 3, not ripe 2).`
pub(super) fn weak_point_in_short(view: &View<'_>, point: &WeakPoint) -> String {
    let mut reasons: Vec<(usize, &str)> = point
        .reasons
        .iter()
        .map(|(why, years)| (years.len(), unready_in_short(*why)))
        .collect();
    reasons.sort_by_key(|(years, _)| Reverse(*years));
    let told: Vec<String> = match reasons.as_slice() {
        [(_, only)] => vec![(*only).to_owned()],
        several => several
            .iter()
            .map(|(n, why)| format!("{why} {n}"))
            .collect(),
    };
    format!(
        "{} fails in {} of {} ({}).",
        view.garden[point.ingredient].name,
        point.failed,
        view.own_years(),
        told.join(", ")
    )
}

/// Reasons with their numbers of years, or with the years themselves where they are few and
/// `named`.
fn reasons(point: &WeakPoint, named: bool) -> String {
    let text = |(why, years): &(Unready, Vec<i32>)| {
        let labels: Vec<String> = years.iter().map(ToString::to_string).collect();
        if named && years.len() <= 3 {
            format!("in {} {}", list(&labels), unready(*why))
        } else if point.reasons.len() == 1 {
            unready(*why).to_owned()
        } else {
            format!("in {} {}", count(years.len(), "year"), unready(*why))
        }
    };
    point
        .reasons
        .iter()
        .map(text)
        .collect::<Vec<_>>()
        .join("; ")
}

/// Why an ingredient is not ready, in words.
pub(super) fn unready(why: Unready) -> &'static str {
    match why {
        Unready::NotSown => "the ground is too cold for it on its day",
        Unready::NotPlanted => "the ground is too cold to plant on its day",
        Unready::NotUp => "it does not come up",
        Unready::Rotted => "it rots in ground too cold for it to come up",
        Unready::NotRipe => "it is not ripe at the last chance to pick",
        Unready::Frost => "frost kills it before it is picked",
        Unready::Bolted => "it runs to seed before it is picked",
        Unready::Heat => "it is too hot for it before it is picked",
        Unready::Past => "it is ripe too early and past when it could be picked",
        Unready::DoesNotKeep => "it is picked but does not keep until it is eaten",
    }
}

/// Why an ingredient is not ready, in a word or three.
fn unready_in_short(why: Unready) -> &'static str {
    match why {
        Unready::NotSown => "too cold to sow",
        Unready::NotPlanted => "too cold to plant",
        Unready::NotUp => "does not come up",
        Unready::Rotted => "rots before it is up",
        Unready::NotRipe => "not ripe in time",
        Unready::Frost => "frost",
        Unready::Bolted => "runs to seed",
        Unready::Heat => "too hot",
        Unready::Past => "past too early",
        Unready::DoesNotKeep => "does not keep",
    }
}
