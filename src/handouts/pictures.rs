//! The pictures of the handouts: each a drawing with its data as text. Only
//! the drawing is here; what is drawn, and all words, come from `report::pictures`.

mod beds;
mod drawings;
mod labels;
mod lettering;
mod map;
mod pattern;
mod planting;
mod sheet;
mod space;
mod timeline;
mod weave;
mod weeks;

use maud::{Markup, html};

use crate::facts::life::Whose;
use crate::garden::GradeAt;
use crate::page::Picture;
use crate::report::handouts;
use crate::report::pictures::{self as words, Said};
use crate::words::view::View;

use super::blocks::rows;
use super::safe::steady;

use sheet::Paper;
pub use weave::{chip, hem};

/// The styles that the pictures need, for the page's `style`.
pub const CSS: &str = include_str!("pictures.css");

/// A picture with what is said of it.
pub struct Drawn {
    /// One `svg`, for sheets and wide screens.
    pub sheet: Markup,
    /// The same laid out anew for phones; the styles show one of them.
    pub phone: Markup,
    /// Title, description and the same data as rows of a table.
    pub said: Said,
}

/// A picture on both papers.
fn on_both(said: &Said, draw: impl Fn(Paper) -> Markup) -> Drawn {
    Drawn {
        sheet: draw(Paper::Sheet),
        phone: draw(Paper::Phone),
        said: said.clone(),
    }
}

/// A picture as a page shows it: what it shows in words under it, and the same as a table for
/// whoever cannot see it; `None` where there is nothing to draw.
#[must_use]
pub fn on_page(view: &View<'_>, picture: Picture) -> Option<Markup> {
    let drawn = match picture {
        Picture::Timeline(None) => timeline(view, Whose::All)?,
        Picture::Timeline(Some(grade)) => timeline(view, Whose::Of(grade))?,
        Picture::BedsByWeek => beds(view)?,
        Picture::Space => space(view)?,
        Picture::Map(stressed) => map(view, stressed)?,
        Picture::Pattern(grade) => planting(view, grade)?,
        Picture::Poster => poster(view)?,
        Picture::Plants(grade) => return Some(plants(view, grade)),
        Picture::Journal => {
            return Some(labels::journal(
                view.words.journal_head(),
                &view.words.journal(),
            ));
        }
        Picture::Labels => return labels(view),
    };
    let kind = match picture {
        Picture::Map(_) => "map",
        Picture::Pattern(_) => "plants",
        Picture::Poster => "wall",
        _ => "weeks",
    };
    let said = &drawn.said;
    Some(html! {
        figure class=(kind) {
            (drawn.sheet)
            (drawn.phone)
            figcaption {
                p { (steady(&said.description)) }
                // That of the whole map stands on its page anyway.
                @if picture != Picture::Map(None) {
                    details {
                        summary { (handouts::as_table(&steady(&said.title))) }
                        (rows(&said.title, &said.table.header, &said.table.rows))
                    }
                }
            }
        }
    })
}

/// The timeline of all grades or of one; `None` where nothing is planted.
#[must_use]
pub fn timeline(view: &View<'_>, whose: Whose) -> Option<Drawn> {
    let name = match whose {
        Whose::All => "timeline".to_owned(),
        Whose::Of(grade) => format!("timeline-{}", grade.0 + 1),
    };
    let shown = words::timeline::timeline(view, whose)?;
    Some(on_both(&shown.said, |paper| {
        timeline::draw(&name, &shown, paper)
    }))
}

/// The beds by week; `None` where no bed carries anything.
#[must_use]
pub fn beds(view: &View<'_>) -> Option<Drawn> {
    let shown = words::beds::beds(view)?;
    Some(on_both(&shown.said, |paper| {
        beds::draw("beds", &shown, paper)
    }))
}

/// Shelf and all beds by week; `None` where nothing is used.
#[must_use]
pub fn space(view: &View<'_>) -> Option<Drawn> {
    let shown = words::space::space(view)?;
    Some(on_both(&shown.said, |paper| {
        space::draw("space", &shown, paper)
    }))
}

/// The map of the garden, with what one grade grows stressed if asked for; `None` if there is
/// neither bed nor patch.
#[must_use]
pub fn map(view: &View<'_>, stressed: Option<GradeAt>) -> Option<Drawn> {
    let name = match stressed {
        None => "map".to_owned(),
        Some(grade) => format!("map-{}", grade.0 + 1),
    };
    let shown = words::map::map(view, stressed)?;
    Some(on_both(&shown.said, |paper| {
        map::draw(&name, &shown, paper)
    }))
}

/// How the plants of a grade stand; `None` where it grows nothing in beds.
#[must_use]
pub fn planting(view: &View<'_>, grade: GradeAt) -> Option<Drawn> {
    let name = format!("pattern-{}", grade.0 + 1);
    let shown = words::pattern::patterns(view, grade)?;
    Some(on_both(&shown.said, |paper| {
        planting::draw(&name, &shown, paper)
    }))
}

/// The timeline of all grades for a wall; `None` where nothing is planted.
#[must_use]
pub fn poster(view: &View<'_>) -> Option<Drawn> {
    let mut shown = words::timeline::timeline(view, Whose::All)?;
    shown.bands = false;
    Some(Drawn {
        sheet: timeline::draw("poster", &shown, Paper::Wall),
        phone: timeline::draw("poster", &shown, Paper::Phone),
        said: shown.said,
    })
}

/// The drawings of what a grade grows.
fn plants(view: &View<'_>, grade: GradeAt) -> Markup {
    let ours = view.ours(grade);
    let names = ours.own_names().into_iter();
    let all: Vec<_> = names
        .map(|name| (view.form_of(name), view.cloth_of(name)))
        .collect();
    labels::plants(&all)
}

/// Labels to cut out, as boxes of the page; `None` where nothing is planted.
#[must_use]
pub fn labels(view: &View<'_>) -> Option<Markup> {
    Some(labels::draw(&words::labels::labels(view)?))
}
