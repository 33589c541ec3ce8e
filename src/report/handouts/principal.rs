//! The principal's sheet: the day, who does what, space against what there is, lesson time,
//! people to find, cost, cautions, what to decide by when.

use crate::explain::LeastSpace;
use crate::garden::{Care, Ingredient};
use crate::plan::{Planting, When};
use crate::report::page::{Page, Picture};
use crate::report::screen::occasion;
use crate::report::view::{View, first_day};
use crate::report::words::sentence;
use crate::report::{care, cautions, decisions, least_space, lessons, space, verdict};

/// Writes the sheet.
pub fn write(view: &View<'_>, least: Option<&LeastSpace>, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    page.title(&verdict::sentence(view));
    if let Some(text) = verdict::rain_date(view) {
        page.paragraph(&text);
    }
    who(view, page);
    page.heading("Space");
    page.picture(Picture::Space);
    space::peaks(view, &space::shelf_rows(view), &space::all_beds(view), page);
    if let Some(least) = least {
        least_space::items(view, least, page);
    }
    lessons::by_grade(view, page);
    care::gaps(view, page);
    breaks(view, page);
    cost(view, page);
    decisions::write(view, page);
    cautions::for_the_school(view.garden, page);
}

/// A row for each ingredient.
fn who(view: &View<'_>, page: &mut Page) {
    page.heading("Who grows what");
    let rows: Vec<Vec<String>> = view
        .ingredients()
        .map(|(_, ingredient, seen)| {
            let plantings: Vec<&Planting> = view.plantings_named(&ingredient.name).collect();
            let mut beds: Vec<&str> = plantings
                .iter()
                .flat_map(|p| &p.places)
                .map(|place| place.bed.as_str())
                .collect();
            beds.sort_unstable();
            beds.dedup();
            vec![
                view.grown_by(ingredient)
                    .map_or_else(String::new, |grade| view.grade_name(grade).to_owned()),
                ingredient.name.clone(),
                work(view, &plantings),
                beds.join(", "),
                format!("{}/{}", seen.ready_years(), view.years()),
            ]
        })
        .collect();
    let header = [
        "Grade",
        "Ingredient",
        "From the first to the last work",
        "Beds",
        "Ready",
    ];
    page.table(&header, &rows, &[4]);
}

/// From the first day to the last on which anything is done.
fn work(view: &View<'_>, plantings: &[&Planting]) -> String {
    let first = plantings.iter().filter_map(|p| first_day(p)).min();
    let steps = plantings.iter().flat_map(|p| &p.steps);
    let last = steps.filter_map(|step| step.when.last()).max();
    first
        .zip(last)
        .map_or_else(String::new, |(first, last)| view.words.span(first, last))
}

/// Who waters and picks in breaks.
fn breaks(view: &View<'_>, page: &mut Page) {
    let plan = view.plan.plantings.iter();
    let first = plan.filter_map(first_day).min();
    let picked = |from, to| {
        let steps = view
            .planted()
            .flat_map(|(p, i)| p.steps.iter().map(move |s| (s, i)));
        let mut names: Vec<&str> = steps
            .filter(
                |(step, _)| matches!(step.when, When::Families(day) if (from..=to).contains(&day)),
            )
            .map(|(_, ingredient): (_, &Ingredient)| ingredient.name.as_str())
            .collect();
        names.dedup();
        names.join(", ")
    };
    let breaks = view.garden.school_year.breaks.iter();
    let cared = breaks.filter(|b| {
        b.care != Care::Nobody
            && first.is_some_and(|first| first <= b.to)
            && b.from <= view.garden.last_day()
    });
    for pause in cared {
        let who = match pause.care {
            Care::Families => "families",
            Care::Staff | Care::Nobody => "staff",
        };
        let picks = match picked(pause.from, pause.to) {
            names if names.is_empty() => String::new(),
            names => format!(" and pick {names}"),
        };
        page.item(&format!(
            "{}, {}: {who} water{picks}; the watering list has room for names.",
            pause.name,
            view.words.days(pause.from, pause.to)
        ));
    }
}

/// What is known of the cost.
fn cost(view: &View<'_>, page: &mut Page) {
    page.heading("Cost");
    let fallbacks = || {
        let ingredients = view.garden.ingredients.iter();
        ingredients.filter_map(|i| Some((i, i.fallback?)))
    };
    let known: f64 = fallbacks().filter_map(|(_, f)| f.cost).sum();
    let names: Vec<&str> = fallbacks().map(|(i, _)| i.name.as_str()).collect();
    if names.is_empty() {
        page.line("The file names no cost. Seed and plants are on the shopping list.");
    } else {
        page.line(&sentence(&format!(
            "if they fail, {} are bought for {known:.2} in all, as far as the file tells. Seed and \
             plants are on the shopping list.",
            crate::report::words::list(&names)
        )));
    }
}
