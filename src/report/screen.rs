//! The coordinator's screen: the verdict, who grows what, what is done when, what can wait, space, gaps,
//! what to decide, what to take care of, what was assumed, how sure it is, what was aimed at.

use std::path::Path;

use crate::checker::CheckedPlan;
use crate::explain::{self, StepSlack};
use crate::garden::Garden;

use super::page::{Page, Picture};
use super::view::View;
use super::words::Words;
use super::{
    aims, assumed, care, cautions, decisions, doubts, how_sure, manure, overview, packet_days,
    rotation, slack, space, timeline, verdict,
};

/// The whole plan, as `tureen plan` prints it.
#[must_use]
pub fn plan(garden: &Garden, checked: &CheckedPlan) -> Page {
    let slack = explain::slack(garden, checked);
    let mut page = Page::new();
    write(&View::new(garden, checked), &slack, &mut page);
    page
}

/// All that the coordinator reads of a plan.
pub(super) fn write(view: &View<'_>, slack: &[StepSlack], page: &mut Page) {
    let garden = view.garden;
    page.paragraph(&occasion(garden));
    doubts::write(garden, page);
    page.gap();
    page.title(&verdict::sentence(view));
    if let Some(text) = verdict::rain_date(view) {
        page.paragraph(&text);
    }
    overview::write(view, page);
    page.picture(Picture::Timeline(None));
    verdict::weak_points(view, page);
    packet_days::write(view, page);
    timeline::write(view, page);
    slack::write(view, slack, page);
    space::write(view, page);
    rotation::write(view, page);
    care::gaps(view, page);
    care::other_hands(view, page);
    decisions::write(view, page);
    cautions::write(garden, page);
    if let Some(text) = manure::of(view.plan, view.words) {
        page.item(&text);
    }
    assumed::write(garden, page);
    how_sure::write(view, page);
    aims::write(view, page);
}

/// What `tureen plan --out` adds.
#[must_use]
pub fn saved(project: &Path, plan: &Path) -> String {
    format!(
        "\nSaved: {plan}. To print one grade's page: tureen show {project} --plan {plan} --grade ID\n",
        plan = plan.display(),
        project = project.display()
    )
}

/// `Soup day, Larch Hill School: Fri 8 Oct 2027, 260 portions, in the kitchen by ...`.
pub(super) fn occasion(garden: &Garden) -> String {
    let feast = garden.feast;
    let words = Words::of(garden);
    format!(
        "{}: {}, {} portions, in the kitchen by {}.",
        whose(garden),
        words.full_day(feast.day),
        feast.portions,
        words.day(feast.deliver_by)
    )
}

/// `Soup day, Larch Hill School`.
pub(super) fn whose(garden: &Garden) -> String {
    match &garden.school {
        Some(school) => format!("{}, {school}", garden.name),
        None => garden.name.clone(),
    }
}
