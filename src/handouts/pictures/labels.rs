//! Labels to cut out, as boxes of the page with dashed edges.

use maud::{Markup, html};

use crate::harmless::plain;
use crate::report::pictures::labels::{Label, Labels};

/// Beds first, then plants.
pub fn draw(labels: &Labels) -> Markup {
    html! {
        @if !labels.beds.is_empty() { (part(labels.beds_title, &labels.beds)) }
        (part(labels.plants_title, &labels.plants))
    }
}

fn part(title: &str, labels: &[Label]) -> Markup {
    html! {
        h3 { (title) }
        ul.labels {
            @for label in labels {
                li {
                    strong { bdi { (plain(&label.large)) } }
                    span { bdi { (plain(&label.below)) } }
                    @for line in &label.lines { p { bdi { (plain(line)) } } }
                }
            }
        }
    }
}
