//! The least space with which a plan still keeps its promise, against what there is.

use crate::explain::{Enough, LeastSpace};
use crate::facts::space::most;
use crate::plan::AimResult;

use super::space::weeks_of;
use crate::page::Page;
use crate::words::view::View;

/// Writes what would be enough of shelf and beds, and when all of that is full.
pub(super) fn write(view: &View<'_>, least: &LeastSpace, page: &mut Page) {
    page.heading("How little space would do");
    items(view, least, page);
    page.gap();
    page.line(
        "Would do: another plan with no more than that has as many ready years, of the most \
         doubtful ingredient, of all and of the whole dish, and no smaller least part grown. It \
         was planned and checked. Other things may be worse in it, and the plan above stays as it \
         is. Shelf and beds are each looked at with the other as it is.",
    );
    if view.plan.aims.is_empty() || !view.plan.aims.iter().all(AimResult::proved) {
        page.line("The plan itself is not proved best; what a better one would need is not known.");
    }
}

/// What would be enough, an item each.
pub(super) fn items(view: &View<'_>, least: &LeastSpace, page: &mut Page) {
    page.item(&flats(view, &least.flats));
    page.item(&match &least.strips {
        Some(strips) => beds(view, strips),
        None => "Beds: how few strips would do was not settled in the time allowed.".to_owned(),
    });
}

fn flats(view: &View<'_>, flats: &Enough) -> String {
    if flats.there == 0 {
        return "Shelf: there is none, and none is needed.".to_owned();
    }
    let stand = match flats.there {
        1 => "1 flat stands ready".to_owned(),
        n => format!("{n} flats stand ready"),
    };
    format!("Shelf: {stand}, {}{}", would_do(flats), full(view, flats))
}

fn beds(view: &View<'_>, strips: &Enough) -> String {
    let there = match strips.there {
        1 => "1 strip is there".to_owned(),
        n => format!("{n} strips are there"),
    };
    format!("Beds: {there}, {}{}", would_do(strips), full(view, strips))
}

/// `4 would do.`, `all are needed.`
fn would_do(space: &Enough) -> String {
    match (space.is_least(), space.enough) {
        (true, n) if n == space.there => "and all are needed.".to_owned(),
        (true, 0) => "and none is needed.".to_owned(),
        (true, n) => format!("{n} would do."),
        (false, n) if n == space.there => format!(
            "and no plan with fewer was found; fewer than {} would not do.",
            space.at_least
        ),
        (false, n) => format!(
            "{n} would do; whether fewer would was not settled, but fewer than {} would not.",
            space.at_least
        ),
    }
}

/// In which weeks most are in use.
fn full(view: &View<'_>, space: &Enough) -> String {
    let most = most(&space.by_week).unwrap_or(0);
    if most == 0 {
        return String::new();
    }
    let all = if most == space.enough {
        "All of them are".to_owned()
    } else {
        format!("The most at once, {most}, are")
    };
    let weeks = weeks_of(view, &space.by_week, |used| used == most);
    format!(" {all} in use in {}.", weeks.unwrap_or_default())
}
