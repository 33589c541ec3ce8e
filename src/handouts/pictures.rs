//! The pictures of the handouts: each a drawing in black on white, with its data as text. Only
//! the drawing is here; what is drawn, and all words, come from `report::pictures`.

mod beds;
mod labels;
mod lettering;
mod map;
mod pattern;
mod sheet;
mod space;
mod timeline;
mod weeks;

use maud::{Markup, html};

use crate::facts::life::Whose;
use crate::garden::GradeAt;
use crate::page::Picture;
use crate::report::handouts;
use crate::report::pictures::{self as words, Said};
use crate::words::view::View;

use super::blocks::{rows, wide};
use super::safe::steady;

/// The styles that the pictures need, for the page's `style`.
pub const CSS: &str = include_str!("pictures.css");

/// A picture with what is said of it.
pub struct Drawn {
    /// One `svg`. It scales to the width that it is given, and its letters are large enough on
    /// 18 cm of paper; on a narrow screen it should lie in a region that scrolls.
    pub svg: Markup,
    /// Title, description and the same data as rows of a table.
    pub said: Said,
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
        Picture::Labels => return labels(view),
    };
    let kind = match picture {
        Picture::Map(_) => "map",
        _ => "weeks",
    };
    let said = &drawn.said;
    Some(html! {
        figure class=(kind) {
            (wide(&said.title, &drawn.svg))
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
    let svg = timeline::draw(&name, &shown);
    let said = shown.said;
    Some(Drawn { svg, said })
}

/// The beds by week; `None` where no bed carries anything.
#[must_use]
pub fn beds(view: &View<'_>) -> Option<Drawn> {
    let shown = words::beds::beds(view)?;
    let svg = beds::draw("beds", &shown);
    let said = shown.said;
    Some(Drawn { svg, said })
}

/// Shelf and all beds by week; `None` where nothing is used.
#[must_use]
pub fn space(view: &View<'_>) -> Option<Drawn> {
    let shown = words::space::space(view)?;
    let svg = space::draw("space", &shown);
    let said = shown.said;
    Some(Drawn { svg, said })
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
    let svg = map::draw(&name, &shown);
    let said = shown.said;
    Some(Drawn { svg, said })
}

/// Labels to cut out, as boxes of the page; `None` where nothing is planted.
#[must_use]
pub fn labels(view: &View<'_>) -> Option<Markup> {
    Some(labels::draw(&words::labels::labels(view)?))
}
