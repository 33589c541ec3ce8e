//! One grade's own page: its ingredients, beds and sessions, what each child does, who
//! takes over, what to take care of.

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::garden::{Garden, GradeAt, Ingredient};
use crate::plan::{Planting, StepKind, When};

use super::page::{Look, Page};
use super::screen::occasion;
use super::steps;
use super::view::{View, ready_years};
use super::words::{count, full_day, list, mass_range, minutes, sentence};
use super::{cautions, timeline};

/// What `tureen show --grade` prints.
#[must_use]
pub fn grade(garden: &Garden, checked: &CheckedPlan, grade: GradeAt, look: Look) -> String {
    let view = View::new(garden, checked);
    let mut page = Page::new(look);
    let ours: Vec<(&Planting, &Ingredient)> =
        view.planted().filter(|(_, i)| i.grade == grade).collect();
    page.title(&format!("{}: {}", garden[grade].name, what_we_grow(&ours)));
    page.paragraph(&occasion(garden));
    if ours.is_empty() {
        return page.finish();
    }
    beds(&view, &ours, &mut page);
    dates(&view, &ours, &mut page);
    each_child(&view, grade, &ours, &mut page);
    if let Some(note) = timeline::hand_over(&view, grade) {
        page.heading("Who takes over");
        page.line(&sentence(&note));
    }
    take_care(garden, grade, &mut page);
    page.finish()
}

fn what_we_grow(ours: &[(&Planting, &Ingredient)]) -> String {
    let mut names: Vec<&str> = ours.iter().map(|(_, i)| i.name.as_str()).collect();
    names.dedup();
    if names.is_empty() {
        "grows nothing in this plan".to_owned()
    } else {
        format!("we grow {}", list(&names))
    }
}

/// Where it stands and what it brings.
fn beds(view: &View<'_>, ours: &[(&Planting, &Ingredient)], page: &mut Page) {
    page.heading("Our bed");
    for (planting, _) in ours {
        page.item(&sentence(&format!("{}.", timeline::title(view, planting))));
    }
    for (_, ingredient, seen) in view.ingredients() {
        if ours.iter().any(|(_, i)| i.name == ingredient.name) {
            page.item(&format!(
                "We bring {} of {}; it was ready in {} of {} {}.",
                mass_range(seen.low, seen.expected),
                ingredient.name,
                ready_years(seen),
                view.years(),
                view.kind_of_years()
            ));
        }
    }
}

/// One thing to do on one day.
struct Job {
    day: Date,
    who: String,
    what: String,
    minutes: String,
}

/// Every session with something to do, in order of time; then what others do.
fn dates(view: &View<'_>, ours: &[(&Planting, &Ingredient)], page: &mut Page) {
    page.heading("Our dates");
    let mut jobs: Vec<Job> = Vec::new();
    for (planting, ingredient) in ours {
        for step in &planting.steps {
            jobs.extend(jobs_of(view, planting, ingredient, step));
        }
    }
    jobs.sort_by(|a, b| (a.day, &a.who).cmp(&(b.day, &b.who)));
    let rows: Vec<Vec<String>> = jobs
        .into_iter()
        .map(|j| vec![view.dates.day(j.day), j.who, j.what, j.minutes])
        .collect();
    page.table(&["Day", "Who", "What", "Takes"], &rows, &[3]);
    let many_picks = ours
        .iter()
        .any(|(p, _)| p.steps.iter().filter(|s| s.kind == StepKind::Pick).count() > 1);
    if many_picks {
        page.gap();
        page.line("Pick on the first of the picking days on which it is ripe; look at it before.");
    }
}

fn jobs_of(
    view: &View<'_>,
    planting: &Planting,
    ingredient: &Ingredient,
    step: &crate::plan::Step,
) -> Vec<Job> {
    let name = steps::name(planting.method, step.kind);
    let counted = steps::count_of(planting, step);
    let colon = if counted.is_empty() { "" } else { ": " };
    let what = format!("{name}, {}{colon}{counted}", ingredient.name);
    let takes = if step.minutes.0 > 0.0 {
        minutes(step.minutes)
    } else {
        String::new()
    };
    let job = |day: Date, who: &str, what: String| Job {
        day,
        who: who.to_owned(),
        what,
        minutes: takes.clone(),
    };
    match &step.when {
        When::Sessions(visits) => visits
            .iter()
            .map(|v| job(v.date, &v.class, what.clone()))
            .collect(),
        When::Families(day) => vec![job(*day, "families", what)],
        When::Adult(day) => vec![job(*day, "an adult", what)],
        When::Daily { from, to } => {
            let what = format!("{what} (daily until {})", view.dates.day(*to));
            vec![job(*from, "whoever is there", what)]
        }
    }
}

/// Seeds in each child's hand.
fn each_child(view: &View<'_>, grade: GradeAt, ours: &[(&Planting, &Ingredient)], page: &mut Page) {
    let children = view.garden.children_of(grade);
    let sown: Vec<&(&Planting, &Ingredient)> = ours
        .iter()
        .filter(|(p, _)| p.steps.iter().any(|s| s.kind == StepKind::Sow) && p.seeds > 0)
        .collect();
    if children == 0 || sown.is_empty() {
        return;
    }
    page.heading("Each child");
    for (planting, ingredient) in sown {
        let thing = steps::seed_of(&ingredient.name, planting.method);
        let share = planting.seeds / children;
        let rest = planting.seeds % children;
        let text = match (share, rest) {
            (0, _) => format!(
                "{} for {}: some work in pairs.",
                count(planting.seeds, &thing),
                children_word(children)
            ),
            (_, 0) => format!("{} for every child.", count(share, &thing)),
            _ => format!(
                "{} for every child, and {rest} more to share out.",
                count(share, &thing)
            ),
        };
        page.item(&text);
        if planting.flats_kept > 0 {
            page.item(&format!(
                "{} of {} are planted in the bed; what is left over goes home.",
                planting.plants, ingredient.name
            ));
        }
    }
}

fn children_word(children: u32) -> String {
    if children == 1 {
        "1 child".to_owned()
    } else {
        format!("{children} children")
    }
}

fn take_care(garden: &Garden, grade: GradeAt, page: &mut Page) {
    page.heading("Take care");
    for ingredient in garden.ingredients.iter().filter(|i| i.grade == grade) {
        if let Some(text) = cautions::of(ingredient) {
            page.item(&text);
        }
        if let Some(allergen) = &ingredient.crop.caution.allergen {
            page.item(&format!(
                "Allergy: {allergen}. Follow what the school nurse says."
            ));
        }
    }
    page.item(cautions::HANDS);
    page.item(&format!(
        "A session that is cancelled: tell the coordinator the same week. The dish is on {}.",
        full_day(garden.feast.day)
    ));
}
