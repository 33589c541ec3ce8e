//! What hangs on packet days: at which mean temperature they are taken to hold, and what
//! becomes of the plan if they are a tenth out.

use std::collections::BTreeMap;

use crate::checker::{DaysOut, IngredientReplay, OUT_BY};
use crate::garden::{Garden, Ingredient, IngredientAt, Method, Source};
use crate::growth::Unready;
use crate::growth::requirement::days_at;
use crate::plan::Planting;
use crate::units::Celsius;

use super::page::Page;
use super::verdict::unready;
use super::view::View;
use super::words::count;

/// More years lost or won than one in so many are told in a sentence; fewer are noise.
const ONE_YEAR_IN: usize = 15;

/// Writes the table and what it means.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    let rows: Vec<Vec<String>> = view
        .ingredients()
        .filter(|(_, ingredient, _)| is_grown(ingredient))
        .map(|(at, ingredient, seen)| row(view, at, ingredient, seen))
        .collect();
    if rows.is_empty() {
        return;
    }
    page.heading("If packet days are out");
    let [less, more] = ["fewer", "more"].map(|way| format!("{:.0}\u{a0}% {way}", OUT_BY * 100.0));
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
    let out = &view.replay.packet_days;
    page.item(&sentence(view, "fewer", &out.fewer));
    page.item(&sentence(view, "more", &out.more));
}

/// True if it has days to ripe at all.
fn is_grown(ingredient: &Ingredient) -> bool {
    !matches!(ingredient.source, Source::Patch(_))
}

fn row(
    view: &View<'_>,
    at: IngredientAt,
    ingredient: &Ingredient,
    seen: &IngredientReplay,
) -> Vec<String> {
    let out = &view.replay.packet_days;
    let planting = view.plantings_named(&ingredient.name).next();
    let [days, hold, colder] = planting.map_or_else(Default::default, |planting| {
        days(ingredient, as_plants(view.garden, ingredient, planting))
    });
    vec![
        ingredient.name.clone(),
        days,
        hold,
        colder,
        format!("{}/{}", seen.ready_years(), view.years()),
        out.fewer.ready_years(at.0).to_string(),
        out.more.ready_years(at.0).to_string(),
    ]
}

/// True if its days are counted from planting.
fn as_plants(garden: &Garden, ingredient: &Ingredient, planting: &Planting) -> bool {
    match (planting.method, ingredient.source) {
        (Method::Indoor | Method::Bought, _) => true,
        (_, Source::Begun(at)) => garden[at].as_plants(),
        _ => false,
    }
}

/// The days, the temperature at which they hold, and how many more a degree less makes.
fn days(ingredient: &Ingredient, as_plants: bool) -> [String; 3] {
    let ripening = &ingredient.crop.ripening;
    let reference = ripening.reference;
    let from = if as_plants { "planting" } else { "sowing" };
    let at = |mean| days_at(&ingredient.crop, as_plants, mean);
    let Some(days) = at(reference) else {
        return Default::default();
    };
    let colder = at(reference - Celsius(1.0)).map_or_else(
        || "it does not grow".to_owned(),
        |colder| {
            let later = (colder - days).round().max(0.0) as u32;
            format!("{} later", count(later, "day"))
        },
    );
    let mark = match ripening.thermal_from_sowing {
        Some(sum) if !as_plants => format!(" ({:.0} degree-days)", sum.0),
        _ => String::new(),
    };
    [
        format!("{days:.0} from {from}{mark}"),
        format!("{}\u{a0}C", reference.0),
        colder,
    ]
}

/// `If crops take 10 % more days than that: dry bean is ready in 11 of 30 years instead of 24 ...`.
fn sentence(view: &View<'_>, way: &str, out: &DaysOut) -> String {
    let years = view.years();
    let mut told = Vec::new();
    let mut others = 0;
    for (at, ingredient, seen) in view.ingredients().filter(|(_, i, _)| is_grown(i)) {
        let (planned, ready) = (seen.ready_years(), out.ready_years(at.0));
        let change = planned.abs_diff(ready);
        if change * ONE_YEAR_IN > years {
            told.push(format!(
                "{} is ready in {ready} of {years} years instead of {planned}{}",
                ingredient.name,
                why(out, at, seen)
            ));
        } else {
            others = others.max(change);
        }
    }
    let whole = view.replay.whole_dish_years();
    let rest = match (told.is_empty(), others) {
        (true, 0) => "nothing changes".to_owned(),
        (true, n) => format!("no ingredient changes by more than {}", a_number(n, "year")),
        (false, 0) => "nothing else changes".to_owned(),
        (false, n) => format!("all others change by at most {}", a_number(n, "year")),
    };
    told.push(rest);
    let dish = if out.dish_if_all == whole {
        format!("The whole dish stays at {whole} of {years} years.")
    } else {
        format!(
            "The whole dish is then ready in {} of {years} years instead of {whole}.",
            out.dish_if_all
        )
    };
    format!(
        "If crops take {:.0}\u{a0}% {way} days than that: {}. {dish}",
        OUT_BY * 100.0,
        told.join("; ")
    )
}

fn a_number(n: usize, thing: &str) -> String {
    count(u32::try_from(n).unwrap_or(u32::MAX), thing)
}

/// `, mostly because it is not ripe at the last chance to pick`: what fails most often in the
/// years that are lost; of two, what comes nearest to the pot.
fn why(out: &DaysOut, at: IngredientAt, seen: &IngredientReplay) -> String {
    if out.ready_years(at.0) >= seen.ready_years() {
        return String::new();
    }
    let now = out.ready.get(at.0).into_iter().flatten();
    let years = seen.ready.iter().zip(now);
    let lost = years.filter(|(planned, _)| planned.is_ok());
    let mut reasons: BTreeMap<Unready, usize> = BTreeMap::new();
    for why in lost.filter_map(|(_, now)| now.err()) {
        *reasons.entry(why).or_default() += 1;
    }
    let most = reasons.iter().max_by_key(|(why, n)| (**n, **why));
    let mostly = if reasons.len() > 1 { "mostly " } else { "" };
    most.map_or_else(String::new, |(why, _)| {
        format!(", {mostly}because {}", unready(*why))
    })
}

/// For a grade's own page: what becomes of its ingredient, if that is much.
pub(super) fn at_risk(
    view: &View<'_>,
    at: IngredientAt,
    ingredient: &Ingredient,
    seen: &IngredientReplay,
) -> Option<String> {
    let planned = seen.ready_years();
    let out = &view.replay.packet_days;
    let ways = [("more", &out.more), ("fewer", &out.fewer)];
    let (way, ready) = ways
        .map(|(way, out)| (way, out.ready_years(at.0)))
        .into_iter()
        .min_by_key(|(_, ready)| *ready)?;
    let lost = planned.saturating_sub(ready);
    (lost * ONE_YEAR_IN > view.years()).then(|| {
        format!(
            "If {} takes {:.0}\u{a0}% {way} days than we count on, it is ready in {ready} of {} \
             years only: look often, and tell the coordinator early.",
            ingredient.name,
            OUT_BY * 100.0,
            view.years()
        )
    })
}
