//! Labels to cut out: for beds, and for plants.

use crate::garden::Bed;
use crate::plan::{Planting, StepKind};
use crate::report::places;
use crate::report::step_words;
use crate::report::view::{View, span_of};

use super::beds::{Shown, stands};
use super::timeline::numbered;

/// One label in large print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// What is read from afar.
    pub large: String,
    /// The line under it.
    pub below: String,
    /// Smaller lines.
    pub lines: Vec<String>,
}

/// All labels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Labels {
    /// Over the labels of the beds.
    pub beds_title: &'static str,
    /// A label for every bed that carries something.
    pub beds: Vec<Label>,
    /// Over the labels of the plants.
    pub plants_title: &'static str,
    /// A label for every planting.
    pub plants: Vec<Label>,
}

/// The labels; `None` where nothing is planted.
#[must_use]
pub fn labels(view: &View<'_>) -> Option<Labels> {
    let plants: Vec<Label> = view.plan.plantings.iter().map(|p| plant(view, p)).collect();
    (!plants.is_empty()).then_some(Labels {
        beds_title: "Labels for the beds",
        beds: beds(view),
        plants_title: "Labels for the plants",
        plants,
    })
}

fn beds(view: &View<'_>) -> Vec<Label> {
    let label = |(bed, stands): (&Bed, Vec<Shown>)| Label {
        large: format!("Bed {}", bed.id),
        below: view.words.ground_in_both(bed.length, bed.width),
        lines: stands
            .iter()
            .map(|stand| {
                let span = view.words.span(stand.from, stand.to);
                format!("{} ({}), {span}", stand.name, stand.grade_names(view))
            })
            .collect(),
    };
    let labels = view.garden.beds.iter().zip(stands(view)).map(label);
    labels.filter(|label| !label.lines.is_empty()).collect()
}

fn plant(view: &View<'_>, planting: &Planting) -> Label {
    let told = StepKind::ALL.iter().filter_map(|kind| {
        let words = step_words::of(*kind);
        let (from, to) = span_of(planting, *kind).filter(|_| words.on_label)?;
        let name = (words.name)(planting.method);
        Some(format!("{name}: {}", view.words.span(from, to)))
    });
    let place =
        (!planting.places.is_empty()).then(|| places::in_words(view.garden, &planting.places));
    let grade = view.grade_of(planting);
    Label {
        large: numbered(view, planting),
        below: grade.map_or_else(String::new, |g| view.grade_name(g).to_owned()),
        lines: told
            .chain(place.map(|place| crate::report::words::sentence(&place)))
            .collect(),
    }
}
