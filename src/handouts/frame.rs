//! What all pages share: head, styles, the title, the way back to the start page, the foot.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::report::handouts::Frame;

use super::pictures;
use super::safe::steady;

/// The styles of all pages.
const STYLES: &str = include_str!("page.css");

/// A whole page; `class` names the styles of one that has to
/// go on one sheet.
pub fn page(words: &Frame, title: &str, class: Option<&str>, inside: &Markup) -> String {
    let whole = html! {
        (DOCTYPE)
        html.one-sheet[class.is_some()] lang=(words.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (steady(title)) ", " (steady(&words.project)) }
                style { (PreEscaped(STYLES)) (PreEscaped(pictures::CSS)) }
            }
            body class=[class] {
                header {
                    @if title != words.all {
                        nav { a href="index.html" { (words.all) } }
                    }
                    p.project { (steady(&words.project)) }
                    h1 { (steady(title)) }
                }
                main { (inside) }
                footer { p { (words.foot) } }
            }
        }
    };
    whole.into_string()
}
