//! How the work on a planting is done: depth, distances, what is done while it grows, by what it is seen
//! to be ready.

use crate::garden::{
    FrostResponse, Garden, Ingredient, Method, Ripe, Rows, Spacing, Store, Take, Tending,
};
use crate::plan::{Planting, Step, StepKind};
use crate::units::{Celsius, Centimetres};

use super::ours::Ours;

/// Frost as light as this comes on a clear night when a day is still mild; a cloth keeps it off
/// (common practice).
const CLOTH_HELPS: Celsius = Celsius(-2.0);

/// Least and most depth.
pub type Depth = Option<(Centimetres, Centimetres)>;

/// How far apart plants are set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Apart {
    /// From plant to plant in a row.
    pub in_row: Centimetres,
    /// From row to row; none where there is one row, along a trellis.
    pub between_rows: Option<Centimetres>,
}

/// One thing that is done, and how.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Act {
    /// Seed goes into flats.
    InFlats(Depth),
    /// Seed goes into the bed.
    InBed(Depth, Apart),
    /// Pieces, sets or cloves go into the bed.
    Pieces(Depth, Apart),
    /// Young plants go into pots.
    PotUp,
    /// Young plants go into the bed.
    Plants(Apart),
    /// Plants are thinned to this distance in the row.
    Thin(Centimetres),
    /// Something that is done while it grows.
    Tend(Tending),
    /// Air colder than this kills it: on such a night it is covered.
    Cover(Celsius),
    /// It is picked.
    Pick {
        /// By what it is seen to be ready.
        ripe: Ripe,
        /// How it is taken.
        take: Take,
        /// True if it bears only while somebody picks.
        again: bool,
        /// True if it is frozen on the same day.
        frozen: bool,
    },
}

/// How the work on one ingredient is done.
#[derive(Debug, Clone, PartialEq)]
pub struct HowTo<'a> {
    /// The ingredient.
    pub ingredient: &'a Ingredient,
    /// What is done, in the order in which it comes.
    pub acts: Vec<Act>,
    /// An ingredient before it that is taken in the same way.
    pub taken_like: Option<&'a Ingredient>,
}

/// How the work that a grade itself does is done, ingredient by ingredient; without those of which nothing
/// is known.
#[must_use]
pub fn of<'a>(garden: &Garden, ours: &Ours<'a>) -> Vec<HowTo<'a>> {
    let mut all: Vec<HowTo<'a>> = Vec::new();
    for (planting, ingredient, steps) in ours.with_steps() {
        let acts = acts(garden, (planting, ingredient), &steps);
        match all
            .iter_mut()
            .find(|h| h.ingredient.name == ingredient.name)
        {
            Some(known) => {
                let new = acts.into_iter().filter(|act| !known.acts.contains(act));
                let new: Vec<Act> = new.collect();
                known.acts.extend(new);
                known.acts.sort_by_key(|act| order(*act));
            }
            None => all.push(HowTo {
                ingredient,
                acts,
                taken_like: None,
            }),
        }
    }
    all.retain(|how| !how.acts.is_empty());
    let takes: Vec<(Option<Take>, &Ingredient)> =
        all.iter().map(|how| (how.take(), how.ingredient)).collect();
    for (at, how) in all.iter_mut().enumerate() {
        let before = takes.iter().take(at);
        let mut alike = before.filter(|(take, _)| take.is_some() && *take == how.take());
        how.taken_like = alike.next().map(|(_, ingredient)| *ingredient);
    }
    all
}

impl HowTo<'_> {
    /// How it is taken; `None` where this grade does not pick it.
    fn take(&self) -> Option<Take> {
        self.acts.iter().find_map(|act| match act {
            Act::Pick { take, .. } => Some(*take),
            Act::InFlats(_)
            | Act::InBed(..)
            | Act::Pieces(..)
            | Act::PotUp
            | Act::Plants(_)
            | Act::Thin(_)
            | Act::Tend(_)
            | Act::Cover(_) => None,
        })
    }
}

/// How far apart a planting is set where it stands.
fn apart(garden: &Garden, planting: &Planting, spacing: Spacing) -> Apart {
    let place = planting.places.first();
    let bed = place.and_then(|place| garden.bed_with_id(&place.bed));
    let in_one_row = bed.is_some_and(|at| garden[at].rows() == Rows::AlongTrellis);
    Apart {
        in_row: spacing.in_row,
        between_rows: (!in_one_row).then_some(spacing.between_rows),
    }
}

/// What is done for a planting, of which the grade does some steps. What is done while it grows begins when it
/// starts, so who takes it over later finds that done.
fn acts(
    garden: &Garden,
    (planting, ingredient): (&Planting, &Ingredient),
    steps: &[&Step],
) -> Vec<Act> {
    let crop = &ingredient.crop;
    let apart = apart(garden, planting, crop.spacing);
    let Some(how) = &crop.how else {
        return Vec::new();
    };
    let mut acts: Vec<Act> = Vec::new();
    for step in steps {
        let act = match step.kind {
            StepKind::Sow => match planting.method {
                Method::Indoor => Some(Act::InFlats(how.depth)),
                Method::Direct => Some(Act::InBed(how.depth, apart)),
                Method::Pieces => Some(Act::Pieces(how.depth, apart)),
                Method::Bought => Some(Act::Plants(apart)),
                Method::Seedlings | Method::Growing | Method::Patch => None,
            },
            StepKind::PotUp => Some(Act::PotUp),
            StepKind::PlantOut => Some(Act::Plants(apart)),
            StepKind::Thin => Some(Act::Thin(crop.spacing.in_row)),
            StepKind::Pick => Some(Act::Pick {
                ripe: how.ripe,
                take: how.take,
                again: crop.picking.keeps_bearing,
                frozen: crop.kitchen.store == Store::Freezer,
            }),
            StepKind::Harden | StepKind::Cure => None,
        };
        acts.extend(act.filter(|act| !acts.contains(act)));
    }
    let tends = planting.method != Method::Patch && steps.len() == planting.steps.len();
    acts.extend(how.tending.iter().filter(|_| tends).map(|t| Act::Tend(*t)));
    let tender = matches!(crop.frost, FrostResponse::Killed) && crop.frost_limit >= CLOTH_HELPS;
    acts.extend(tender.then_some(Act::Cover(crop.frost_limit)));
    acts.sort_by_key(|act| order(*act));
    acts
}

/// Its place among all that is done.
fn order(act: Act) -> u8 {
    match act {
        Act::InFlats(_) => 0,
        Act::PotUp => 1,
        Act::InBed(..) | Act::Pieces(..) | Act::Plants(_) => 2,
        Act::Thin(_) => 3,
        Act::Tend(_) => 4,
        Act::Cover(_) => 5,
        Act::Pick { .. } => 6,
    }
}
