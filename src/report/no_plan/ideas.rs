//! What usually helps when no plan is possible. These are suggestions, and they say so.

use crate::facts::no_plan::{Hindrance, Idea};
use crate::garden::Garden;

use crate::page::Page;
use crate::words::{list, sentence};

/// What usually helps against what was found, with the ingredients that it would help.
pub(super) fn write(garden: &Garden, found: &Hindrance, page: &mut Page) {
    page.heading("What to try (not proved to be enough)");
    for (idea, whom) in &found.ideas {
        let whom = match idea {
            Idea::NamedGrades => "the grades".to_owned(),
            _ => {
                let names = whom.iter().map(|at| garden[*at].name.as_str());
                list(&names.collect::<Vec<_>>())
            }
        };
        page.item(&sentence(&format!("for {whom}: {}", text(*idea))));
    }
    page.item("Another crop in place of one that cannot be in the pot.");
    page.item("`tureen why` looks for changes that are enough, and plans and checks each.");
}

fn text(idea: Idea) -> &'static str {
    match idea {
        Idea::FewerGrams => {
            "fewer grams in a portion or a smaller least share (the kitchen buys the rest), \
             or one more bed."
        }
        Idea::ShelfRoom => {
            "more room on the shelf, a second window, or plants bought ready to plant."
        }
        Idea::LongerLesson => {
            "a longer session, helpers who prepare, or fewer seeds for each child."
        }
        Idea::MoreSessions => "one more session in the tight weeks.",
        Idea::LaterPick => {
            "a session of every class in the last days before the kitchen needs it \
             (`harvest_days`), someone else who picks, or a crop that keeps longer."
        }
        Idea::BetterBed => {
            "another bed or a container (sun, depth, trellis), or one that is free earlier \
             or has not carried its family."
        }
        Idea::OpenBed => {
            "a bed that belongs to another grade, opened to this one too (`grade` of the bed), or \
             one more that suits it."
        }
        Idea::WarmerPlace => "a heat mat or a warmer room for its seed.",
        Idea::AnotherDay => {
            "another day for the dish, a quicker variety, a cover over the bed, or two \
             sowings."
        }
        Idea::PutBy => "frozen or dried when it is ripe, for the day (`kept`).",
        Idea::SomeoneThere => "someone on site in the break.",
        Idea::NamedGrades => {
            "name in the file which may grow what (`grade`), without those that have nothing \
             in time."
        }
    }
}
