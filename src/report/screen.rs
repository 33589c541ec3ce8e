//! The coordinator's screen: the verdict, who grows what, what is done when, what can wait, space, gaps,
//! what to decide, what to take care of, what was assumed, how sure it is, what was aimed at.

use std::path::Path;
use std::time::Duration;

use crate::checker::CheckedPlan;
use crate::explain::{self, StepSlack};
use crate::facts::Facts;
use crate::garden::Garden;
use crate::harmless;

use super::{
    aims, assumed, care, cautions, decisions, doubts, how_sure, manure, overview, packet_days,
    ran_out, rotation, slack, space, timeline, verdict,
};
use crate::page::{Page, Picture};
use crate::words::occasion::occasion;
use crate::words::promise;
use crate::words::view::View;

/// The whole plan, as `tureen plan` prints it.
#[must_use]
pub fn plan(garden: &Garden, checked: &CheckedPlan) -> Page {
    plan_with(garden, checked, &explain::slack(garden, checked), None)
}

/// The same with what is known of the slack, and the time after which the search was ended.
#[must_use]
pub fn plan_with(
    garden: &Garden,
    checked: &CheckedPlan,
    slack: &[StepSlack],
    ran_out: Option<Duration>,
) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    if let Some(text) = ran_out.and_then(|limit| ran_out::of_a_plan(&view, limit)) {
        page.title(&text);
    }
    write(&view, slack, &mut page);
    page
}

/// All that the coordinator reads of a plan.
pub(super) fn write(view: &View<'_>, slack: &[StepSlack], page: &mut Page) {
    let garden = view.garden;
    page.paragraph(&occasion(garden));
    doubts::write(garden, page);
    page.gap();
    page.title(&promise::sentence(view));
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
    rotation::turned_over(view, page);
    rotation::family_again(view, page);
    care::gaps(view, page);
    care::other_hands(view, page);
    decisions::write(view, page);
    cautions::write(garden, page);
    if let Some(text) = manure::of(view) {
        page.item(&text);
    }
    assumed::write(garden, page);
    how_sure::write(view, page);
    aims::write(view, page);
}

/// The end of a whole plan on a screen: its last lines are those that a reader sees first.
#[must_use]
pub fn at_the_end(garden: &Garden, checked: &CheckedPlan) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    page.heading("In short");
    page.line(&promise::sentence(&view));
    if let Some(text) = verdict::rain_date(&view) {
        page.line(&text);
    }
    page
}

/// What `tureen plan --out` adds.
#[must_use]
pub fn saved(project: &Path, plan: &Path) -> String {
    format!(
        "\nSaved: {plan}. To print one grade's page: tureen show {project} --plan {plan} --grade ID\n",
        plan = harmless::path(plan),
        project = harmless::path(project)
    )
}
