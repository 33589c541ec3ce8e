//! What stands in the way of a plan: which ingredients stay out and why, what runs out and who wants
//! it, and what may help.

mod ideas;

use std::cmp::Reverse;

use crate::calendar::Date;
use crate::candidates::{DropReason, MOST_CANDIDATES, bed_classes};
use crate::garden::{Garden, GradeAt, Ingredient, IngredientAt};
use crate::model::{self, Impossible, Pressure, Why};

pub use ideas::Idea;

/// More ways to grow the ingredients than this are not looked at.
pub const MOST_WAYS: usize = MOST_CANDIDATES;

/// An ingredient that cannot be in the pot with the rest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// Which.
    pub ingredient: IngredientAt,
    /// The strips that its least share wants, where beds run out.
    pub wants: Option<u32>,
    /// Why nothing that was tried works, with the number of tries, the most frequent first; `None` if
    /// it could be grown, but not enough of it fits in.
    pub tries: Option<Vec<(DropReason, u32)>>,
}

/// What runs out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Scarce {
    /// Strips of bed, in the week of this Monday; without one, at all times.
    Beds(Option<Date>),
    /// Strips that do not carry a crop family again within its years.
    Family(String),
    /// Grades that can grow something; nothing works for these.
    Grades(Vec<GradeAt>),
    /// Flats on the shelf.
    Shelf,
}

/// Who wants what runs out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Who {
    /// The fewest ingredients that pass the limit by themselves, with what they want together.
    Alone(Vec<IngredientAt>, u32),
    /// The weightiest of many, each with what it wants; perhaps none.
    Most(Vec<(IngredientAt, u32)>),
}

/// A limit that is passed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Limit {
    /// What runs out.
    pub scarce: Scarce,
    /// How much is wanted.
    pub wanted: u32,
    /// How much there is.
    pub there: u32,
    /// Who wants it.
    pub who: Who,
}

/// What stands in the way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hindrance {
    /// The most ingredients that fit together.
    pub together: Vec<IngredientAt>,
    /// True if it is proved that no more do.
    pub proved: bool,
    /// The others.
    pub left_out: Vec<LeftOut>,
    /// What runs out, the tightest first.
    pub limits: Vec<Limit>,
    /// What may help, each with the ingredients that it would help.
    pub ideas: Vec<(Idea, Vec<IngredientAt>)>,
}

/// So many of many that want something are told.
const WEIGHTIEST: usize = 3;

impl Hindrance {
    /// What stands in the way, as the search found it.
    #[must_use]
    pub fn of(garden: &Garden, found: &Impossible) -> Self {
        let left_out = found.left_out.iter();
        Self {
            together: found.possible_together.clone(),
            proved: found.proved,
            left_out: left_out
                .map(|l| self::left_out(l, &found.pressure))
                .collect(),
            limits: found.pressure.iter().map(limit).collect(),
            ideas: ideas::ideas(garden, found),
        }
    }

    /// What is left out: first what works in no way, then what wants most room.
    #[must_use]
    pub fn worst_first(&self) -> Vec<&LeftOut> {
        let mut all: Vec<&LeftOut> = self.left_out.iter().collect();
        all.sort_by_key(|l| (l.tries.is_none(), Reverse(l.wants)));
        all
    }
}

fn left_out(found: &model::LeftOut, pressure: &[Pressure]) -> LeftOut {
    LeftOut {
        ingredient: found.ingredient,
        wants: wanted_strips(found.ingredient, pressure),
        tries: match &found.why {
            Why::Crowded => None,
            Why::NoWay { reasons } => Some(reasons.clone()),
        },
    }
}

fn wanted_strips(ingredient: IngredientAt, pressure: &[Pressure]) -> Option<u32> {
    pressure.iter().find_map(|limit| match limit {
        Pressure::Beds { parts, .. } => parts
            .iter()
            .find(|(at, _)| *at == ingredient)
            .map(|(_, strips)| *strips),
        Pressure::Family { .. } | Pressure::Shelf { .. } | Pressure::Grades { .. } => None,
    })
}

fn limit(found: &Pressure) -> Limit {
    let (scarce, wanted, there, parts) = match found {
        Pressure::Beds {
            wanted,
            strips,
            parts,
            week,
        } => (Scarce::Beds(*week), *wanted, *strips, parts.as_slice()),
        Pressure::Family {
            family,
            wanted,
            strips,
            parts,
        } => (
            Scarce::Family(family.clone()),
            *wanted,
            *strips,
            parts.as_slice(),
        ),
        Pressure::Grades {
            wanted,
            can,
            without,
        } => (
            Scarce::Grades(without.clone()),
            *wanted,
            *can,
            [].as_slice(),
        ),
        Pressure::Shelf {
            wanted,
            flats,
            parts,
        } => (Scarce::Shelf, *wanted, *flats, parts.as_slice()),
    };
    Limit {
        scarce,
        wanted,
        there,
        who: who(parts, there),
    }
}

fn who(parts: &[(IngredientAt, u32)], there: u32) -> Who {
    let mut sum = 0;
    let mut enough = Vec::new();
    for (at, wanted) in parts {
        sum += wanted;
        enough.push(*at);
        if sum > there {
            return Who::Alone(enough, sum);
        }
    }
    Who::Most(parts.iter().take(WEIGHTIEST).copied().collect())
}

/// In how many ways an ingredient may be grown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ways<'a> {
    /// The ingredient.
    pub ingredient: &'a Ingredient,
    /// Grades of which one may grow it, or 1 where there is nothing to choose.
    pub grades: usize,
    /// Its methods.
    pub methods: usize,
    /// Kinds of beds that differ.
    pub beds: usize,
}

/// The ingredients with their ways, those with the most first.
#[must_use]
pub fn most_ways(garden: &Garden) -> Vec<Ways<'_>> {
    let beds = bed_classes(garden).len();
    let ways = garden.ingredients.iter().map(|ingredient| Ways {
        ingredient,
        grades: ingredient.teams.len(),
        methods: ingredient.methods.len(),
        beds,
    });
    let mut ways: Vec<Ways<'_>> = ways.collect();
    ways.sort_by_key(|w| Reverse(w.grades * w.methods));
    ways
}
