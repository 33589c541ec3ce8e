//! A text as markup: harmless, and with places at which a long word may break.

use maud::{Markup, html};

use super::super::safe::steady;

/// Longer words may break, so that no page and no table gets wider for them.
const LONG: usize = 24;

/// A text of a person or of a report. Words that are too long for a narrow column may break.
pub fn said(text: &str) -> Markup {
    let text = steady(text);
    let words = text.split_inclusive([' ', '\u{a0}']);
    html! {
        @for word in words {
            @if word.chars().count() <= LONG { (word) } @else {
                @for (n, letter) in word.chars().enumerate() {
                    @if n > 0 && n % (LONG / 2) == 0 { wbr; }
                    (letter)
                }
            }
        }
    }
}
