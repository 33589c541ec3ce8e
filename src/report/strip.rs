//! One grade's own page: its ingredients, beds and sessions, what each child does, who
//! takes over, what to take care of.

mod between;
mod classes;
mod dates;

use crate::checker::CheckedPlan;
use crate::explain::{self, StepSlack};
use crate::facts::Facts;
use crate::facts::things::Thing;
use crate::garden::{Garden, GradeAt};

use super::{how, idle, packet_days};
use crate::facts::ours::Ours;
use crate::facts::spans::by_children;
use crate::page::{Page, Picture};
use crate::words::occasion::occasion;
use crate::words::view::View;
use crate::words::{cautions, count, list, plantings, sentence, step_words, steps};

/// What `tureen show --grade` prints.
#[must_use]
pub fn grade(garden: &Garden, checked: &CheckedPlan, grade: GradeAt) -> Page {
    let slack = explain::slack(garden, checked);
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    page.title(&title(&view, grade));
    write(&view, grade, &slack, &mut page);
    page
}

/// `Grade 5: we grow tomato`.
pub(super) fn title(view: &View<'_>, grade: GradeAt) -> String {
    let ours = view.ours(grade);
    format!("{}: {}", view.grade_name(grade), what_we_grow(&ours))
}

/// All that a grade reads on the screen, under its title.
fn write(view: &View<'_>, grade: GradeAt, slack: &[StepSlack], page: &mut Page) {
    let ours = view.ours(grade);
    page.paragraph(&occasion(view.garden));
    idle::on_its_page(view, grade, page);
    if ours.all().next().is_none() {
        return;
    }
    together(view, &ours, page);
    dates::write(view, &ours, slack, page);
    beds(view, &ours, page);
    each_child(view, &ours, page);
    to_bring(&ours, page);
    how::write(view, &ours, page);
    between::write(view, &ours, page);
    if let Some(note) = plantings::hand_over(view, grade) {
        page.heading("Who takes over");
        page.line(&sentence(&note));
    }
    take_care(view, &ours, page);
}

/// The sheet of a grade's classes: first the lessons, how they are done and with what care, then the season and the bed.
/// Text fills the first side of the paper, so that the pictures have room on the second.
pub(super) fn sheet(view: &View<'_>, grade: GradeAt, slack: &[StepSlack], page: &mut Page) {
    let ours = view.ours(grade);
    page.paragraph(&occasion(view.garden));
    idle::on_its_page(view, grade, page);
    if ours.all().next().is_none() {
        return;
    }
    together(view, &ours, page);
    classes::write(view, &ours, slack, page);
    classes::others(view, &ours, slack, page);
    each_child(view, &ours, page);
    to_bring(&ours, page);
    how::write(view, &ours, page);
    between::keep_picked(view, &ours, page);
    take_care(view, &ours, page);
    page.heading("Our season");
    page.picture(Picture::Timeline(Some(grade)));
    beds(view, &ours, page);
    page.picture(Picture::Pattern(grade));
    page.picture(Picture::Map(Some(grade)));
}

/// Who else grows it.
fn together(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    for line in plantings::shared(view, ours) {
        page.paragraph(&line);
    }
}

fn what_we_grow(ours: &Ours<'_>) -> String {
    let names = ours.own_names();
    if names.is_empty() {
        "grows nothing of its own in this plan".to_owned()
    } else {
        format!("we grow {}", list(&names))
    }
}

/// Where it stands and what it brings.
fn beds(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    page.heading("Our bed");
    for (planting, _) in &ours.own {
        page.item(&sentence(&format!("{}.", plantings::title(view, planting))));
    }
    for (planting, _) in &ours.adopted {
        page.item(&format!(
            "Taken over from {}: {}.",
            view.team_name(view.left_by(planting)),
            plantings::title(view, planting)
        ));
    }
    let grown = |i| view.grown_by(i).has(ours.grade);
    for (at, ingredient, seen) in view.ingredients().filter(|(_, i, _)| grown(i)) {
        page.item(&format!(
            "It brings {} of {}, and is ready in {}.",
            view.words.mass_range(seen.low, seen.expected),
            ingredient.name,
            view.ready_in_years(at)
        ));
        if let Some(text) = packet_days::at_risk(view, at, ingredient, seen) {
            page.item(&text);
        }
    }
}

/// Seeds in each child's hand.
fn each_child(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    let shares = view.shares(ours);
    if shares.is_empty() {
        return;
    }
    page.heading("Each child");
    for share in shares {
        let planting = share.planting;
        let thing = steps::seed_of(&planting.ingredient, Thing::sown(planting.method));
        let which = plantings::sowing(view, planting);
        let which = which.map_or_else(String::new, |which| sentence(&which) + ": ");
        let text = match (share.each, share.rest) {
            (0, _) => format!(
                "{} for {} children: they share.",
                count(planting.seeds, &thing),
                share.children
            ),
            (each, 0) => format!("{} for every child.", count(each, &thing)),
            (each, rest) => format!(
                "{} for every child, and {rest} more to share out.",
                count(each, &thing)
            ),
        };
        page.item(&format!("{which}{text}"));
        if let Some(plants) = share.plants {
            page.item(&format!(
                "{} go into the bed; seedlings left over go home.",
                count(plants, &format!("{} plant", planting.ingredient))
            ));
        }
    }
}

/// What to have at hand, step by step.
fn to_bring(ours: &Ours<'_>, page: &mut Page) {
    let mut told: Vec<(&str, &str)> = Vec::new();
    for (planting, _, steps) in ours.with_steps() {
        for step in steps.into_iter().filter(|s| by_children(s)) {
            let name = step_words::name(planting.method, step.kind);
            let bring = step_words::of(step.kind).bring;
            let what = bring(planting.method).map(|what| (name, what));
            told.extend(what.filter(|line| !told.contains(line)));
        }
    }
    if told.is_empty() {
        return;
    }
    page.heading("What to bring");
    for (name, what) in told {
        page.item(&format!("{name}: {what}."));
    }
}

fn take_care(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    page.heading("Take care");
    for ingredient in ours.ingredients() {
        if let Some(text) = cautions::of(ingredient) {
            page.item(&text);
        }
        if let Some(allergen) = &ingredient.crop.caution.allergen {
            page.item(&format!(
                "Allergy: {allergen}. Follow what the school nurse says."
            ));
        }
    }
    for text in [cautions::HANDS, cautions::OUTDOORS, cautions::HEAT] {
        page.item(text);
    }
    page.item(&format!(
        "If a session is cancelled, tell the coordinator in the same week. The dish is on {}.",
        view.words.full_day(view.garden.feast.day)
    ));
}
