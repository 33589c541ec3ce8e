//! What usually helps when no plan is possible. These are suggestions, and they say so.

use std::collections::{BTreeMap, BTreeSet};

use crate::candidates::DropReason;
use crate::garden::{Garden, IngredientAt};
use crate::model::{Impossible, Pressure, Why};

use super::super::page::Page;
use super::super::words::{list, sentence};

/// What usually helps against what was found, with the ingredients that it would help.
pub(super) fn write(garden: &Garden, found: &Impossible, page: &mut Page) {
    let mut ideas: BTreeMap<Idea, BTreeSet<&str>> = BTreeMap::new();
    for limit in &found.pressure {
        let heaviest = |parts: &[(IngredientAt, u32)]| {
            let first = parts.first();
            first.map(|(at, _)| garden[*at].name.as_str())
        };
        let (idea, whom) = match limit {
            Pressure::Beds { parts, .. } | Pressure::Family { parts, .. } => {
                (Idea::FewerGrams, heaviest(parts))
            }
            Pressure::Shelf { parts, .. } => (Idea::ShelfRoom, heaviest(parts)),
            Pressure::Grades { .. } => (Idea::NamedGrades, Some("the grades")),
        };
        ideas.entry(idea).or_default().extend(whom);
    }
    for left_out in &found.left_out {
        if let Why::NoWay { reasons } = &left_out.why
            && let Some((reason, _)) = reasons.first()
        {
            let name = garden[left_out.ingredient].name.as_str();
            ideas
                .entry(Idea::against(*reason))
                .or_default()
                .insert(name);
        }
    }
    page.heading("What to try (not proved to be enough)");
    for (idea, names) in ideas {
        let names: Vec<&str> = names.into_iter().collect();
        page.item(&sentence(&format!("for {}: {}", list(&names), idea.text())));
    }
    page.item("Another crop in place of one that cannot be in the pot.");
    page.item("`tureen why` looks for changes that are enough, and plans and checks each.");
}

/// Something to try.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Idea {
    FewerGrams,
    ShelfRoom,
    LongerLesson,
    MoreSessions,
    LaterPick,
    BetterBed,
    WarmerPlace,
    AnotherDay,
    SomeoneThere,
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
            DropReason::NoBed | DropReason::Rotation => Self::BetterBed,
            DropReason::BedsTooSmall => Self::FewerGrams,
            DropReason::LessonTooShort => Self::LongerLesson,
            DropReason::RarelyReady => Self::AnotherDay,
        }
    }

    fn text(self) -> &'static str {
        match self {
            Self::FewerGrams => {
                "fewer grams in a portion or a smaller least share (the kitchen buys the rest), \
                 or one more bed."
            }
            Self::ShelfRoom => {
                "more room on the shelf, a second window, or plants bought ready to plant."
            }
            Self::LongerLesson => {
                "a longer session, helpers who prepare, or fewer seeds for each child."
            }
            Self::MoreSessions => "one more session in the tight weeks.",
            Self::LaterPick => {
                "a session of every class in the last days before the kitchen needs it, someone \
                 else who picks, or a crop that keeps longer."
            }
            Self::BetterBed => {
                "another bed or a container (sun, depth, trellis), or one that is free earlier \
                 or has not carried its family."
            }
            Self::WarmerPlace => "a heat mat or a warmer room for its seed.",
            Self::AnotherDay => {
                "another day for the dish, a quicker variety, a cover over the bed, or two \
                 sowings."
            }
            Self::SomeoneThere => "someone on site in the break.",
            Self::NamedGrades => {
                "name in the file which may grow what (`grade`), without those that have nothing \
                 in time."
            }
        }
    }
}
