//! The coordinator's screen: the verdict, who grows what, what is done when, what can wait, space, gaps,
//! what to decide, what to take care of, what was assumed, how sure it is, what was aimed at.

use std::path::Path;

use crate::checker::CheckedPlan;
use crate::explain;
use crate::garden::Garden;

use super::page::{Look, Page};
use super::view::View;
use super::words::Words;
use super::{
    aims, assumed, care, cautions, decisions, how_sure, manure, overview, packet_days, rotation,
    slack, space, timeline, verdict,
};

/// The whole plan, as `tureen plan` prints it.
#[must_use]
pub fn plan(garden: &Garden, checked: &CheckedPlan, look: Look) -> String {
    let view = View::new(garden, checked);
    let mut page = Page::new(look);
    page.paragraph(&occasion(garden));
    page.gap();
    page.title(&verdict::sentence(&view));
    if let Some(text) = verdict::rain_date(&view) {
        page.paragraph(&text);
    }
    overview::write(&view, &mut page);
    verdict::weak_points(&view, &mut page);
    packet_days::write(&view, &mut page);
    timeline::write(&view, &mut page);
    slack::write(&view, &explain::slack(garden, checked), &mut page);
    space::write(&view, &mut page);
    rotation::write(&view, &mut page);
    care::gaps(&view, &mut page);
    care::other_hands(&view, &mut page);
    decisions::write(&view, &mut page);
    cautions::write(garden, &mut page);
    if let Some(text) = manure::of(checked, view.words) {
        page.item(&text);
    }
    assumed::write(garden, &mut page);
    how_sure::write(&view, &mut page);
    aims::write(&view, &mut page);
    page.finish()
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
    let school = garden
        .school
        .as_ref()
        .map_or_else(String::new, |s| format!(", {s}"));
    let feast = garden.feast;
    let words = Words::of(garden);
    format!(
        "{}{school}: {}, {} portions, in the kitchen by {}.",
        garden.name,
        words.full_day(feast.day),
        feast.portions,
        words.day(feast.deliver_by)
    )
}
