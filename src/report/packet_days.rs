//! What hangs on packet days: at which mean temperature they are taken to hold, and what
//! becomes of the plan if they are a tenth out.

use crate::checker::IngredientReplay;
use crate::facts::packet_days::{Changed, Days, IfOut, OUT_BY, Out, Row};
use crate::garden::{Ingredient, IngredientAt};

use super::verdict::unready;
use crate::page::Page;
use crate::words::count;
use crate::words::view::View;

/// `fewer`, `more`.
fn way(out: Out) -> &'static str {
    match out {
        Out::Fewer => "fewer",
        Out::More => "more",
    }
}

/// `10 %`.
fn out_by() -> String {
    format!("{:.0}\u{a0}%", OUT_BY * 100.0)
}

/// Writes the table and what it means.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    let rows: Vec<Vec<String>> = view.packet_rows().iter().map(|r| row(view, r)).collect();
    if rows.is_empty() {
        return;
    }
    page.heading("If packet days are out");
    let [less, more] = [Out::Fewer, Out::More].map(|out| format!("{} {}", out_by(), way(out)));
    let header = [
        "Ingredient",
        "Days to ripe",
        "They hold at",
        "One degree colder",
        "Ready",
        &less,
        &more,
    ];
    page.table(&header, &rows, &[4, 5, 6]);
    page.gap();
    page.line(
        "Days to ripe hold at that mean temperature, by the built-in figures or yours (reference_c \
         in the file). Ready: in how many years, as planned and if the days are out.",
    );
    for out in [Out::Fewer, Out::More] {
        page.item(&sentence(view, &view.if_days_are_out(out)));
    }
}

fn row(view: &View<'_>, row: &Row) -> Vec<String> {
    let [told, hold, colder] = row.days.as_ref().map_or_else(Default::default, days);
    vec![
        view.garden[row.ingredient].name.clone(),
        told,
        hold,
        colder,
        format!("{}/{}", row.planned, view.years()),
        row.fewer.to_string(),
        row.more.to_string(),
    ]
}

/// The days, the temperature at which they hold, and how many more a degree less makes.
fn days(days: &Days) -> [String; 3] {
    let from = match days.from_planting {
        true => "planting",
        false => "sowing",
    };
    let mark = days
        .warmth
        .map_or_else(String::new, |sum| format!(" ({:.0} degree-days)", sum.0));
    [
        format!("{:.0} from {from}{mark}", days.days),
        format!("{}\u{a0}C", days.hold_at.0),
        days.later.map_or_else(
            || "it does not grow".to_owned(),
            |later| format!("{} later", count(later, "day")),
        ),
    ]
}

/// `If crops take 10 % more days than that: dry bean is ready in 11 of 30 years instead of 24 ...`.
fn sentence(view: &View<'_>, if_out: &IfOut) -> String {
    let years = view.own_years();
    let whole = view.replay.whole_dish_years();
    let mut told: Vec<String> = if_out.changed.iter().map(|c| changed(view, c)).collect();
    told.push(match (told.is_empty(), if_out.others) {
        (true, 0) => "nothing changes".to_owned(),
        (true, n) => format!("no ingredient changes by more than {}", count(n, "year")),
        (false, 0) => "nothing else changes".to_owned(),
        (false, n) => format!("all others change by at most {}", count(n, "year")),
    });
    let dish = if if_out.dish == whole {
        format!("The whole dish stays at {whole} of {years}.")
    } else {
        format!("The whole dish is then {}.", instead(view, if_out))
    };
    format!(
        "If crops take {} {} days than that: {}. {dish}",
        out_by(),
        way(if_out.out),
        told.join("; ")
    )
}

/// `ready in 11 of 30 years instead of 20`: the whole dish.
fn instead(view: &View<'_>, if_out: &IfOut) -> String {
    let (years, whole) = (view.own_years(), view.replay.whole_dish_years());
    format!("ready in {} of {years} instead of {whole}", if_out.dish)
}

/// What becomes of the whole dish if packet days are out that way; nothing where it stays as it is.
pub(super) fn whole_dish(view: &View<'_>, out: Out) -> Option<String> {
    let if_out = view.if_days_are_out(out);
    let changes = if_out.dish != view.replay.whole_dish_years();
    changes.then(|| {
        format!(
            "If all crops take {} {} days than their packets say, the dish is {}.",
            out_by(),
            way(out),
            instead(view, &if_out)
        )
    })
}

/// `dry bean is ready in 11 of 30 years instead of 24, mostly because it is not ripe`.
fn changed(view: &View<'_>, changed: &Changed) -> String {
    let because = changed.why.map_or_else(String::new, |(why, others)| {
        let mostly = if others { "mostly " } else { "" };
        format!(", {mostly}because {}", unready(why))
    });
    format!(
        "{} is ready in {} of {} instead of {}{because}",
        view.garden[changed.ingredient].name,
        changed.ready,
        view.own_years(),
        changed.planned
    )
}

/// For a grade's own page: what becomes of its ingredient, if that is much.
pub(super) fn at_risk(
    view: &View<'_>,
    at: IngredientAt,
    ingredient: &Ingredient,
    seen: &IngredientReplay,
) -> Option<String> {
    let (out, ready) = view.at_risk_of_days(at, seen)?;
    Some(format!(
        "If {} takes {} {} days than we count on, it is ready in {ready} of {} only: look often, and \
         tell the coordinator early.",
        ingredient.name,
        out_by(),
        way(out),
        view.own_years()
    ))
}
