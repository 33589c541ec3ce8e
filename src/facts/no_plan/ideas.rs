//! What usually helps when no plan is possible. None is proved to help.

use std::collections::BTreeMap;

use crate::candidates::DropReason;
use crate::garden::{Garden, IngredientAt};
use crate::model::{Impossible, Pressure, Why};

/// Something to try.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Idea {
    /// Fewer grams, or a smaller least share, or one more bed.
    FewerGrams,
    /// More room on the shelf, or plants from elsewhere.
    ShelfRoom,
    /// A longer session, or less to do in it.
    LongerLesson,
    /// One more session.
    MoreSessions,
    /// A session shortly before the kitchen needs the harvest.
    LaterPick,
    /// Another bed, or one that is free earlier.
    BetterBed,
    /// A bed of another grade opened to this one, or one more.
    OpenBed,
    /// More warmth for the seed.
    WarmerPlace,
    /// Another day for the dish, or a quicker variety.
    AnotherDay,
    /// It is put by when it is ripe.
    PutBy,
    /// Someone on site in the break.
    SomeoneThere,
    /// Grades named in the file; it helps all of them.
    NamedGrades,
}

impl Idea {
    fn against(reason: DropReason) -> Self {
        match reason {
            DropReason::NoSession => Self::MoreSessions,
            DropReason::NoPickSession => Self::LaterPick,
            DropReason::HardensUnattended => Self::SomeoneThere,
            DropReason::ShelfTooSmall => Self::ShelfRoom,
            DropReason::TooColdIndoors => Self::WarmerPlace,
            DropReason::NoBed | DropReason::NotFreeYet | DropReason::Rotation => Self::BetterBed,
            DropReason::NotItsBed => Self::OpenBed,
            DropReason::BedsTooSmall | DropReason::TooFewSeedlings => Self::FewerGrams,
            DropReason::LessonTooShort => Self::LongerLesson,
            DropReason::RarelyReady => Self::AnotherDay,
        }
    }
}

/// What usually helps against what was found, with the ingredients that it would help by name.
pub(super) fn ideas(garden: &Garden, found: &Impossible) -> Vec<(Idea, Vec<IngredientAt>)> {
    let mut ideas: BTreeMap<Idea, Vec<IngredientAt>> = BTreeMap::new();
    for limit in &found.pressure {
        let (idea, parts) = match limit {
            Pressure::Beds { parts, .. } | Pressure::Family { parts, .. } => {
                (Idea::FewerGrams, parts.as_slice())
            }
            Pressure::Shelf { parts, .. } => (Idea::ShelfRoom, parts.as_slice()),
            Pressure::Grades { .. } => (Idea::NamedGrades, [].as_slice()),
        };
        let heaviest = parts.first().map(|(at, _)| *at);
        ideas.entry(idea).or_default().extend(heaviest);
    }
    for left_out in &found.left_out {
        if let Why::NoWay { reasons } = &left_out.why
            && let Some((reason, _)) = reasons.first()
        {
            let idea = Idea::against(*reason);
            ideas.entry(idea).or_default().push(left_out.ingredient);
            // What is ripe at another time than that of the dish.
            let untimely = matches!(idea, Idea::LaterPick | Idea::AnotherDay);
            let keeps_longer = || garden[left_out.ingredient].crop.keeps_longer().next();
            if untimely && keeps_longer().is_some() {
                let put_by = ideas.entry(Idea::PutBy).or_default();
                put_by.push(left_out.ingredient);
            }
        }
    }
    for whom in ideas.values_mut() {
        whom.sort_by_key(|at| &garden[*at].name);
        whom.dedup();
    }
    ideas.into_iter().collect()
}
