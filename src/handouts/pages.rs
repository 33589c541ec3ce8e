//! The pages of the folder: one for each reader, and the start page that leads to them.

use maud::{Markup, html};

use crate::garden::{ClassAt, Garden, GradeAt, Tongue};
use crate::page::Page;
use crate::report::calendar_name;
use crate::report::handouts::{self, Handout, Reader};
use crate::words::view::View;

use super::blocks;
use super::file_name::FileNames;
use super::files::class_files;
use super::folder::File;
use super::frame::{self, Looks};
use super::pictures;
use super::readers::Readers;
use super::safe::steady;

/// The coordinator's page, which only the folder of the whole school holds.
pub const COORDINATOR: &str = "plan.html";

/// The pages of some readers. `others` are the files that the start page leads to besides.
pub fn pages(
    view: &View<'_>,
    handouts: &[Handout],
    others: &[File],
    readers: Readers,
) -> Vec<File> {
    let words = handouts::frame(view.garden);
    let names = names(view.garden, handouts).into_iter().zip(handouts);
    let named: Vec<(String, &Handout)> = names
        .filter(|(_, handout)| readers.include(handout.reader))
        .collect();
    let classes: Vec<(ClassAt, String)> = class_files(view.garden)
        .into_iter()
        .filter(|(class, _)| readers.include_class(*class))
        .collect();
    let start = start(view, &named, others);
    let looks = |kind, language| Looks {
        kind,
        language,
        cloths: view.cloths().to_vec(),
    };
    let start = frame::page(&words, words.all, &looks(None, None), &start);
    let mut pages = vec![file("index.html", start)];
    pages.extend(named.iter().map(|(name, handout)| {
        let inside = html! {
            (shown(view, &handout.page))
            @if let Reader::Grade(grade) = handout.reader {
                (calendars(view.garden, words.calendars, grade, &classes))
            }
        };
        let looks = looks(kind(handout.reader), handout.tongue().map(Tongue::tag));
        file(name, frame::page(&words, &handout.title, &looks, &inside))
    }));
    pages
}

/// How a page is printed, where that is its own: on few sheets, large for children, on a wall.
fn kind(reader: Reader) -> Option<&'static str> {
    match reader {
        Reader::Grade(_) | Reader::Principal | Reader::Kitchen => Some("compact"),
        Reader::Children(_) => Some("children"),
        Reader::Wall => Some(frame::WALL),
        Reader::Coordinator | Reader::Helpers | Reader::HelpersIn(_) => None,
        Reader::Gardeners | Reader::Buyers => None,
    }
}

fn file(path: &str, text: String) -> File {
    File {
        path: path.to_owned(),
        bytes: text.into_bytes(),
    }
}

/// The names of the readers' pages.
fn names(garden: &Garden, handouts: &[Handout]) -> Vec<String> {
    let mut names = FileNames::default();
    let mut name = |reader| match reader {
        Reader::Coordinator => COORDINATOR.to_owned(),
        Reader::Grade(grade) => names.name("grade", &garden[grade].id, "html"),
        Reader::Children(grade) => names.name("children", &garden[grade].id, "html"),
        Reader::Wall => "poster.html".to_owned(),
        Reader::Principal => "principal.html".to_owned(),
        Reader::Kitchen => "kitchen.html".to_owned(),
        Reader::Helpers => "summer.html".to_owned(),
        Reader::HelpersIn(tongue) => format!("summer-{}.html", tongue.tag()),
        Reader::Gardeners => "map.html".to_owned(),
        Reader::Buyers => "shopping.html".to_owned(),
    };
    handouts.iter().map(|h| name(h.reader)).collect()
}

/// The calendars of a grade's classes, to be imported on a phone.
fn calendars(
    garden: &Garden,
    about: &str,
    grade: GradeAt,
    classes: &[(ClassAt, String)],
) -> Markup {
    html! {
        p.calendars {
            (about)
            @for (class, path) in classes.iter().filter(|(class, _)| class.grade == grade) {
                " " a href=(path) { (steady(&calendar_name(garden, Some(*class)))) }
            }
        }
    }
}

/// The start page: the verdict, and lists of all other pages and files.
fn start(view: &View<'_>, named: &[(String, &Handout)], others: &[File]) -> Markup {
    let others = handouts::others(others.iter().map(|file| file.path.as_str()));
    html! {
        (shown(view, &handouts::start(view)))
        ul.handouts {
            @for (name, handout) in named {
                li {
                    a href=(name) hreflang=[handout.tongue().map(Tongue::tag)] { (steady(&handout.title)) }
                    p { (steady(&handout.about)) }
                }
            }
        }
        @for group in &others {
            section {
                h2 { (group.title) }
                p { (group.about) }
                ul { @for path in &group.files { li { a href=(path) { (path) } } } }
            }
        }
    }
}

/// The blocks of a page with their pictures.
fn shown(view: &View<'_>, page: &Page) -> Markup {
    let is_ingredient = |name: &&str| view.garden.ingredient_named(name).is_some();
    let chip = |name: &str| {
        let known = Some(name).filter(is_ingredient);
        known.map(|name| pictures::chip(view.cloth_of(name)))
    };
    let draw = blocks::Draw {
        picture: &|picture| pictures::on_page(view, picture),
        chip: &chip,
    };
    blocks::markup(page, &draw)
}
