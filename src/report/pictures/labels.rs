//! Labels to cut out: for beds, and for plants.

use crate::facts::spans::span_of;
use crate::facts::stands::Carries;
use crate::plan::{Planting, StepKind};
use crate::report::places;
use crate::report::steps;
use crate::report::view::View;

use super::grade_at;
use super::timeline::{numbered, numbered_at};

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
    let label = |Carries { bed, stands, .. }: &Carries| {
        let bed = &view.garden[*bed];
        Label {
            large: format!("Bed {}", bed.id),
            below: view.words.ground_in_both(bed.length, bed.width),
            lines: stands
                .iter()
                .map(|stand| {
                    let name = numbered_at(view, stand.planting);
                    let span = view.words.span(stand.from, stand.to);
                    format!("{name} ({}), {span}", grade_at(view, stand.planting))
                })
                .collect(),
        }
    };
    let labels = view.carried();
    let labels = labels.iter().filter(|bed| !bed.stands.is_empty());
    labels.map(label).collect()
}

/// The steps that stand on a plant's label.
const TOLD: [StepKind; 3] = [StepKind::Sow, StepKind::PlantOut, StepKind::Pick];

fn plant(view: &View<'_>, planting: &Planting) -> Label {
    let told = TOLD.iter().filter_map(|kind| {
        let (from, to) = span_of(planting, *kind)?;
        let name = steps::name(planting.method, *kind);
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
