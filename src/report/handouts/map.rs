//! The map page: the garden from above, what stands in each bed and when, labels.

use crate::checker::CheckedPlan;
use crate::report::page::{Page, Picture};
use crate::report::view::View;

/// Writes the page.
pub fn write(view: &View<'_>, checked: &CheckedPlan, page: &mut Page) {
    page.picture(Picture::Map(None));
    page.heading("What stands in each bed");
    let in_bed = checked.in_bed(view.garden);
    let planted = || view.plan.plantings.iter().zip(&in_bed);
    let rows: Vec<Vec<String>> = view
        .garden
        .beds
        .iter()
        .flat_map(|bed| {
            let mut here: Vec<_> = planted()
                .flat_map(|(p, days)| p.places.iter().map(move |place| (p, place, days)))
                .filter(|(_, place, _)| place.bed == bed.id)
                .collect();
            here.sort_by_key(|(_, place, days)| (**days, place.first_strip));
            here.into_iter().map(|(planting, place, days)| {
                vec![
                    bed.id.clone(),
                    planting.ingredient.clone(),
                    view.grade_of(planting)
                        .map_or_else(String::new, |grade| view.grade_name(grade).to_owned()),
                    strips(place.first_strip, place.strips),
                    days.map_or_else(String::new, |(from, to)| view.words.span(from, to)),
                ]
            })
        })
        .collect();
    page.table(
        &[
            "Bed",
            "Ingredient",
            "Grade",
            "Strips",
            "Taken, clearing included",
        ],
        &rows,
        &[],
    );
    page.heading("Labels");
    page.picture(Picture::Labels);
}

/// `1 to 6`, or one number.
fn strips(first: u32, strips: u32) -> String {
    match strips {
        1 => first.to_string(),
        n => format!("{first} to {}", first + n - 1),
    }
}
