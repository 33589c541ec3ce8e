//! The handouts: who reads each, what it is called, and what stands on it.

mod kitchen;
mod map;
mod principal;
mod shopping;

use crate::explain::{LeastSpace, StepSlack};
use crate::garden::{Garden, GradeAt, Tongue};

use super::{screen, standing, strip, water};
use crate::page::{Page, Picture};
use crate::words::occasion::{occasion, whose};
use crate::words::view::View;
use crate::words::{answers, children, list, promise};

/// Who a page is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reader {
    /// The coordinator: the whole plan.
    Coordinator,
    /// The teachers of a grade.
    Grade(GradeAt),
    /// Its children.
    Children(GradeAt),
    /// Whoever passes a wall.
    Wall,
    /// The principal.
    Principal,
    /// The kitchen.
    Kitchen,
    /// Families and staff who water and pick in breaks.
    Helpers,
    /// The same in a second language.
    HelpersIn(Tongue),
    /// Whoever sets up the garden.
    Gardeners,
    /// Whoever orders.
    Buyers,
}

/// One page.
#[derive(Debug, Clone, PartialEq)]
pub struct Handout {
    /// Who it is for.
    pub reader: Reader,
    /// What it is called.
    pub title: String,
    /// Who it is for and what it tells, in a sentence.
    pub about: String,
    /// What stands on it, under its title.
    pub page: Page,
}

impl Handout {
    /// The second language, if it is written in one.
    #[must_use]
    pub fn tongue(&self) -> Option<Tongue> {
        match self.reader {
            Reader::HelpersIn(tongue) => Some(tongue),
            Reader::Coordinator | Reader::Grade(_) | Reader::Principal | Reader::Kitchen => None,
            Reader::Children(_) | Reader::Wall => None,
            Reader::Helpers | Reader::Gardeners | Reader::Buyers => None,
        }
    }
}

/// Files that are no pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Group {
    /// What they are.
    pub title: &'static str,
    /// What they are for.
    pub about: &'static str,
    /// Their paths in the folder.
    pub files: Vec<String>,
}

/// The files that are no pages, by what they are for.
#[must_use]
pub fn others<'a>(paths: impl Iterator<Item = &'a str> + Clone) -> Vec<Group> {
    let group = |title, about, ending: &[&str]| Group {
        title,
        about,
        files: paths
            .clone()
            .filter(|path| ending.iter().any(|ending| path.ends_with(ending)))
            .map(str::to_owned)
            .collect(),
    };
    let mut groups = vec![
        group(
            "Calendars",
            "To import into the calendar of a class, best into one of its own that can be thrown \
             away: what a new plan no longer has stays where it was imported.",
            &[".ics"],
        ),
        group(
            "Tables",
            "For a spreadsheet: every step, every planting, shelf and beds week by week.",
            &[".csv", ".xlsx"],
        ),
        group(
            "Data",
            "The whole plan for other programs, and what stands where in it (JSON Schema).",
            &[".json"],
        ),
    ];
    groups.retain(|group| !group.files.is_empty());
    groups
}

/// The way from a picture to the same in a table.
#[must_use]
pub fn as_table(picture: &str) -> String {
    format!("{picture}, as a table")
}

/// What all pages share.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frame {
    /// The language of all sentences, as in RFC 5646.
    pub language: &'static str,
    /// The project and the school.
    pub project: String,
    /// The title of the start page, and of the way back to it.
    pub all: &'static str,
    /// What leads to the calendars of a class.
    pub calendars: &'static str,
    /// What stands at the foot.
    pub foot: String,
}

/// What is said on all pages.
#[must_use]
pub fn frame(garden: &Garden) -> Frame {
    Frame {
        language: garden.locale.tag(),
        project: whose(garden),
        all: "All handouts",
        calendars: "To import into a calendar:",
        foot: format!(
            "Made by tureen {} from {}; frost, heat and rain of this year may want other days. The \
             rules of school and district come first.",
            env!("CARGO_PKG_VERSION"),
            crate::words::view::kind_of_years(garden)
        ),
    }
}

/// The start page, but for the list of all others.
#[must_use]
pub fn start(view: &View<'_>) -> Page {
    let mut page = Page::new();
    standing::write(view, &mut page);
    page.paragraph(&occasion(view.garden));
    page.title(&answers::whole_dish(view));
    page.line(&promise::sentence(view));
    page
}

/// All other pages, in the order of the start page. `least` is how little space would do, where
/// that was worked out.
#[must_use]
pub fn all(view: &View<'_>, slack: &[StepSlack], least: Option<&LeastSpace>) -> Vec<Handout> {
    let garden = view.garden;
    let mut handouts = vec![handout(
        view,
        (Reader::Coordinator, "The whole plan".to_owned()),
        "For the coordinator: who grows what and when, what can wait, what to decide by when, and \
         how sure it is."
            .to_owned(),
        |page| {
            standing::figures(view, page);
            screen::write(view, slack, page);
        },
    )];
    handouts.extend(garden.grade_positions().map(|grade| {
        handout(
            view,
            (Reader::Grade(grade), strip::title(view, grade)),
            format!(
                "For the teachers of {}: the dates of every class, what each child does, what to \
                 take care of.",
                view.grade_name(grade)
            ),
            |page| strip::sheet(view, grade, slack, page),
        )
    }));
    let grows = |grade: &GradeAt| !view.ours(*grade).own.is_empty();
    let growing = garden.grade_positions().filter(grows);
    handouts.extend(growing.map(|grade| for_children(view, grade)));
    handouts.extend(for_the_school(view, least));
    handouts.extend(
        garden
            .families_also
            .map(|tongue| in_second_language(view, tongue)),
    );
    handouts
}

/// The children's page of a grade: drawings, what we do when, a journal to fill.
fn for_children(view: &View<'_>, grade: GradeAt) -> Handout {
    let ours = view.ours(grade);
    handout(
        view,
        (
            Reader::Children(grade),
            format!("We grow {}", list(&ours.own_names())),
        ),
        format!(
            "For the children of {}: what we do when, and frames to write and draw in.",
            view.grade_name(grade)
        ),
        |page| {
            page.picture(Picture::Plants(grade));
            children::steps(view, &ours)
                .iter()
                .for_each(|step| page.item(step));
            page.picture(Picture::Journal);
        },
    )
}

/// What families read, in a second language.
fn in_second_language(view: &View<'_>, tongue: Tongue) -> Handout {
    let language = match tongue {
        Tongue::Spanish => "Spanish",
    };
    handout(
        view,
        (Reader::HelpersIn(tongue), water::title_in(view, tongue)),
        format!(
            "The watering list in {language}. Its sentences were not checked yet: before it is handed \
             out, somebody at the school who speaks {language} reads it."
        ),
        |page| water::write_in(view, tongue, page),
    )
}

/// The pages that belong to no grade.
fn for_the_school(view: &View<'_>, least: Option<&LeastSpace>) -> [Handout; 6] {
    [
        handout(
            view,
            (Reader::Wall, "Wall poster".to_owned()),
            "For a wall, on A3: who grows what, week by week, up to the day.".to_owned(),
            |page| {
                page.paragraph(&occasion(view.garden));
                page.picture(Picture::Poster);
            },
        ),
        handout(
            view,
            (Reader::Principal, "For the principal".to_owned()),
            "One sheet: the day, who does what, space, lesson time, people, cost, what to decide \
             by when."
                .to_owned(),
            |page| principal::write(view, least, page),
        ),
        handout(
            view,
            (Reader::Kitchen, "For the kitchen".to_owned()),
            "How much of each ingredient comes and when, what to order by when, in what state it \
             comes, crates and cold space, cautions."
                .to_owned(),
            |page| kitchen::write(view, page),
        ),
        handout(
            view,
            (Reader::Helpers, water::title(view)),
            format!(
                "For families and staff, to hang up: {} for each bed and week, what to pick in \
                 breaks, room for names.",
                view.words.water().unit
            ),
            |page| water::write(view, page),
        ),
        handout(
            view,
            (Reader::Gardeners, "Map and labels".to_owned()),
            "For whoever sets up the garden: what stands where, and labels for beds and plants to \
             cut out."
                .to_owned(),
            |page| map::write(view, page),
        ),
        handout(
            view,
            (Reader::Buyers, "Seed and shopping list".to_owned()),
            "For whoever orders: seed, pieces and plants with the day to order by, flats and mix, \
             what the beds want."
                .to_owned(),
            |page| shopping::write(view, page),
        ),
    ]
}

/// A page, which opens with what happened since the plan was made.
fn handout(
    view: &View<'_>,
    (reader, title): (Reader, String),
    about: String,
    write: impl FnOnce(&mut Page),
) -> Handout {
    let mut page = Page::new();
    standing::notice(view, &mut page);
    write(&mut page);
    Handout {
        reader,
        title,
        about,
        page,
    }
}
