//! What all pages share: head, styles, the title, the way back to the start page, the foot.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::report::handouts::Frame;

use super::pictures;
use super::safe::steady;

/// The styles of all pages.
const STYLES: &str = include_str!("page.css");

/// How a page differs from others.
#[derive(Debug, Clone, Copy, Default)]
pub struct Looks {
    /// Printed small and in columns.
    pub compact: bool,
    /// The language of title and content, as in RFC 5646, where it is not that of all pages.
    pub language: Option<&'static str>,
}

/// A whole page.
pub fn page(words: &Frame, title: &str, looks: Looks, inside: &Markup) -> String {
    let whole = html! {
        (DOCTYPE)
        html.compact[looks.compact] lang=(words.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (steady(title)) ", " (steady(&words.project)) }
                style { (PreEscaped(STYLES)) (PreEscaped(pictures::CSS)) }
            }
            body {
                header {
                    @if title != words.all {
                        nav { a href="index.html" { (words.all) } }
                    }
                    p.project { (steady(&words.project)) }
                    h1 lang=[looks.language] { (steady(title)) }
                }
                main lang=[looks.language] { (inside) }
                footer { p { (words.foot) } }
            }
        }
    };
    whole.into_string()
}
