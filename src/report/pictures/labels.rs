//! Labels to cut out: for beds, and for plants.

use crate::facts::cloth::{Cloth, Form};
use crate::facts::spans::span_of;
use crate::facts::stands::Carries;
use crate::garden::ClassAt;
use crate::plan::{Planting, PlantingAt, StepKind};
use crate::words::view::View;
use crate::words::{places, step_words};

use super::beds::names_of;
use super::timeline::numbered_at;
use super::{grades_at, grades_of};

/// One label in large print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// What is read from afar.
    pub large: String,
    /// The line under it.
    pub below: String,
    /// Smaller lines.
    pub lines: Vec<String>,
    /// The drawing and the look of what it names.
    pub look: Option<(Form, Cloth)>,
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
    /// A label for every planting and class.
    pub plants: Vec<Label>,
}

/// The labels; `None` where nothing is planted.
#[must_use]
pub fn labels(view: &View<'_>) -> Option<Labels> {
    let plantings = view.plan.numbered();
    let plants: Vec<Label> = plantings
        .flat_map(|(at, p)| of_classes(view, at, p))
        .collect();
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
                    let name = names_of(view, &stand.stand);
                    let span = view.words.span(stand.from, stand.to);
                    format!("{name} ({}), {span}", grades_of(view, &stand.stand))
                })
                .collect(),
            look: None,
        }
    };
    let labels = view.carried();
    let labels = labels.iter().filter(|bed| !bed.stands.is_empty());
    labels.map(label).collect()
}

/// A label for each class that sets a planting; one of the grades where none does.
fn of_classes(view: &View<'_>, at: PlantingAt, planting: &Planting) -> Vec<Label> {
    let classes = view.classes_that_set(at);
    let name = |class: &ClassAt| view.garden.class(*class).name.as_str();
    let names: Vec<&str> = classes.iter().map(name).collect();
    match names.as_slice() {
        [] => vec![plant(view, at, planting, &grades_at(view, at))],
        names => names
            .iter()
            .map(|name| plant(view, at, planting, name))
            .collect(),
    }
}

fn plant(view: &View<'_>, at: PlantingAt, planting: &Planting, whose: &str) -> Label {
    let told = StepKind::ALL.iter().filter_map(|kind| {
        let words = step_words::of(*kind);
        let (from, to) = span_of(planting, *kind).filter(|_| words.on_label)?;
        let name = (words.name)(planting.method);
        Some(format!("{name}: {}", view.words.span(from, to)))
    });
    let place =
        (!planting.places.is_empty()).then(|| places::in_words(view.garden, &planting.places));
    Label {
        large: numbered_at(view, at),
        below: whose.to_owned(),
        look: Some((
            view.form_of(&planting.ingredient),
            view.cloth_of(&planting.ingredient),
        )),
        lines: told
            .chain(place.map(|place| crate::words::sentence(&place)))
            .collect(),
    }
}
