//! What all pages share: head, styles, the title, the way back to the start page, the foot.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::report::handouts::Frame;

use super::pictures;

/// The styles of all pages.
const STYLES: &str = include_str!("page.css");

/// How a page uses its paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// As many sheets as it takes.
    AsItComes,
    /// One sheet: small print, two columns where they fit.
    OneSheet,
}

/// A whole page.
pub fn page(words: &Frame, title: &str, paper: Paper, inside: &Markup) -> String {
    let class = match paper {
        Paper::AsItComes => None,
        Paper::OneSheet => Some("one-sheet"),
    };
    let whole = html! {
        (DOCTYPE)
        html lang=(words.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) ", " (words.project) }
                style { (PreEscaped(STYLES)) (PreEscaped(pictures::CSS)) }
            }
            body class=[class] {
                header {
                    @if title != words.all {
                        nav { a href="index.html" { (words.all) } }
                    }
                    p.project { (words.project) }
                    h1 { (title) }
                }
                main { (inside) }
                footer { p { (words.foot) } }
            }
        }
    };
    whole.into_string()
}
