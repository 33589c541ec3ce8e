//! The principal's sheet: the day, who does what, space against what there is, lesson time,
//! people to find, cost, cautions, what to decide by when.

use crate::explain::LeastSpace;
use crate::facts::lessons::Most;
use crate::facts::places;
use crate::garden::{Care, GradeAt, Ingredient};
use crate::page::{Page, Picture};
use crate::plan::Planting;
use crate::report::{care, cautions, decisions, idle, least_space, space, verdict};
use crate::words::occasion::occasion;
use crate::words::view::{View, figure};
use crate::words::{answers, promise};
use crate::words::{list, minutes};

/// Writes the sheet.
pub fn write(view: &View<'_>, least: Option<&LeastSpace>, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    page.title(&answers::whole_dish(view));
    if let Some(text) = answers::lessons(view) {
        page.paragraph(&text);
    }
    who(view, page);
    page.heading("Space");
    page.picture(Picture::Space);
    space::peaks(view, page);
    if let Some(least) = least {
        least_space::items(view, least, page);
    }
    care::gaps(view, page);
    breaks(view, page);
    cost(view, page);
    decisions::write_short(view, page);
    cautions::for_the_school(view.garden, page);
    page.heading("How sure it is");
    page.line(&promise::sentence(view));
    if let Some(text) = verdict::rain_date(view) {
        page.line(&text);
    }
}

/// A row for each grade that grows something, with what its classes give at the most.
fn who(view: &View<'_>, page: &mut Page) {
    page.heading("Who grows what, and how much lesson time it takes");
    let rows: Vec<Vec<String>> = view
        .garden
        .grade_positions()
        .filter_map(|grade| row(view, grade))
        .collect();
    let header = [
        "Grade",
        "Grows",
        "From the first to the last work",
        "Beds",
        "Ready",
        "Sessions",
        "Minutes in all",
        "Fullest session",
    ];
    page.table(&header, &rows, &[4, 5, 6, 7]);
    page.line(&format!(
        "Ready: in how many of {} enough of it is in the pot. Sessions and minutes are the most \
         of any class of the grade, in lessons that it has anyway.",
        view.years_of_column()
    ));
    for line in idle::lines(view) {
        page.line(&line);
    }
}

/// One grade; its ingredients line by line.
fn row(view: &View<'_>, grade: GradeAt) -> Option<Vec<String>> {
    let own = view
        .ingredients()
        .filter(|(_, i, _)| view.grown_by(i).has(grade));
    let own: Vec<_> = own.collect();
    if own.is_empty() {
        return None;
    }
    let lines = |of: &dyn Fn(&Ingredient) -> String| {
        let lines: Vec<String> = own.iter().map(|(_, i, _)| of(i)).collect();
        lines.join("\n")
    };
    let plantings = |i: &Ingredient| view.plantings_named(&i.name).collect::<Vec<_>>();
    let work = |i: &Ingredient| view.work_on(&i.name);
    let ready: Vec<String> = own
        .iter()
        .map(|(at, ..)| figure(view.promised_of(*at)))
        .collect();
    let most = view.most_of_grade(grade);
    let told = |of: &dyn Fn(Most) -> String| most.map_or_else(String::new, of);
    Some(vec![
        view.grade_name(grade).to_owned(),
        lines(&|i| i.name.clone()),
        lines(&|i| work(i).map_or_else(String::new, |(first, last)| view.words.span(first, last))),
        lines(&|i| beds(&plantings(i))),
        ready.join("\n"),
        told(&|most| most.sessions.to_string()),
        told(&|most| minutes(most.minutes)),
        told(&|most| minutes(most.fullest)),
    ])
}

/// `1, 9, 10`, each bed once.
fn beds(plantings: &[&Planting]) -> String {
    places::beds(plantings.iter().flat_map(|p| &p.places)).join(", ")
}

/// Who waters and picks in breaks.
fn breaks(view: &View<'_>, page: &mut Page) {
    for (pause, names) in view.cared_breaks() {
        let who = match pause.care {
            Care::Families => "families",
            Care::Staff | Care::Nobody => "staff",
        };
        let picks = match names.join(", ") {
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
    let known: f64 = view.bought_if_it_fails().filter_map(|(_, cost)| cost).sum();
    let names: Vec<&str> = view
        .bought_if_it_fails()
        .map(|(ingredient, _)| ingredient.name.as_str())
        .collect();
    let fails = match (names.is_empty(), known > 0.0) {
        (true, _) => "The file names nothing that is bought if it fails.".to_owned(),
        (false, true) => format!(
            "What is bought if it fails: {}; {known:.2} in all, as far as the file tells.",
            list(&names)
        ),
        (false, false) => format!("What is bought if it fails: {}.", list(&names)),
    };
    page.line(&format!(
        "{fails} Seed and plants are on the shopping list."
    ));
}
