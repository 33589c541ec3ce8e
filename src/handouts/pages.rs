//! The pages of the folder: one for each reader, and the start page that leads to them.

use maud::{Markup, html};

use crate::checker::CheckedPlan;
use crate::explain::LeastSpace;
use crate::garden::Garden;
use crate::report::handouts::{self, Handout, Reader};
use crate::report::view::View;

use super::blocks;
use super::frame::{self, Paper};
use super::pictures;

/// All pages, by file name; `least` as in `handouts::all`.
#[must_use]
pub fn pages(
    garden: &Garden,
    checked: &CheckedPlan,
    least: Option<&LeastSpace>,
) -> Vec<(String, String)> {
    let words = handouts::frame(garden);
    let handouts = handouts::all(garden, checked, least);
    let view = View::new(garden, checked);
    let start = start(garden, checked, &handouts);
    let mut pages = vec![(
        "index.html".to_owned(),
        frame::page(&words, words.all, Paper::AsItComes, &start),
    )];
    pages.extend(handouts.iter().map(|handout| {
        let draw = |picture| pictures::on_page(&view, picture);
        let inside = blocks::markup(&handout.page, &draw);
        let text = frame::page(&words, &handout.title, paper(handout.reader), &inside);
        (file(garden, handout.reader), text)
    }));
    pages
}

/// The name of a reader's page.
fn file(garden: &Garden, reader: Reader) -> String {
    match reader {
        Reader::Coordinator => "plan.html".to_owned(),
        Reader::Grade(grade) => format!("grade-{}.html", garden[grade].id),
        Reader::Principal => "principal.html".to_owned(),
        Reader::Kitchen => "kitchen.html".to_owned(),
        Reader::Helpers => "summer.html".to_owned(),
        Reader::Gardeners => "map.html".to_owned(),
        Reader::Buyers => "shopping.html".to_owned(),
    }
}

/// How much paper a reader's page may take.
fn paper(reader: Reader) -> Paper {
    match reader {
        Reader::Grade(_) | Reader::Principal | Reader::Kitchen => Paper::OneSheet,
        Reader::Coordinator | Reader::Helpers | Reader::Gardeners | Reader::Buyers => {
            Paper::AsItComes
        }
    }
}

/// The start page: the verdict, and a list of all other pages.
fn start(garden: &Garden, checked: &CheckedPlan, handouts: &[Handout]) -> Markup {
    let above = blocks::markup(&handouts::start(garden, checked), &|_| None);
    html! {
        (above)
        ul.handouts {
            @for handout in handouts {
                li {
                    a href=(file(garden, handout.reader)) { (handout.title) }
                    p { (handout.about) }
                }
            }
        }
    }
}
