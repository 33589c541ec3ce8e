//! What all pages share: head, styles, the title, the way back to the start page, the foot.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::facts::cloth::Cloth;
use crate::report::handouts::Frame;

use super::pictures;
use super::safe::steady;

/// The styles of all pages.
const STYLES: &str = concat!(include_str!("cloth.css"), include_str!("page.css"));

/// The class of a page for a wall, and the sheet that it is printed on.
pub const WALL: &str = "wall";
const ON_WALL: &str = include_str!("wall.css");

/// How a page differs from others.
#[derive(Debug, Clone, Default)]
pub struct Looks {
    /// A class of the whole page, where it is printed in a way of its own.
    pub kind: Option<&'static str>,
    /// The language of title and content, as in RFC 5646, where it is not that of all pages.
    pub language: Option<&'static str>,
    /// The cloths of all crops, for the hem.
    pub cloths: Vec<Cloth>,
}

/// A whole page.
pub fn page(words: &Frame, title: &str, looks: &Looks, inside: &Markup) -> String {
    let whole = html! {
        (DOCTYPE)
        html class=[looks.kind] lang=(words.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (steady(title)) ", " (steady(&words.project)) }
                style {
                    (PreEscaped(STYLES)) (PreEscaped(pictures::CSS))
                    @if looks.kind == Some(WALL) { (PreEscaped(ON_WALL)) }
                }
            }
            body {
                header {
                    (pictures::hem(&looks.cloths))
                    p.top {
                        span { (steady(&words.project)) }
                        @if title != words.all { a href="index.html" { (words.all) } }
                    }
                    h1 lang=[looks.language] { (steady(title)) }
                }
                main lang=[looks.language] { (inside) }
                footer { p { (words.foot) } }
            }
        }
    };
    whole.into_string()
}
