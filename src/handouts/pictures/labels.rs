//! Labels to cut out, as boxes of the page with dashed edges, and what children fill: drawings, frames of a journal.

use maud::{Markup, html};

use crate::facts::cloth::{Cloth, Form};
use crate::harmless::plain;
use crate::report::pictures::labels::{Label, Labels};
use crate::words::children::Frame;

use super::super::safe::steady;
use super::drawings;
use super::weave::hem;

/// How many frames of a journal fill a sheet under its head.
const FRAMES: usize = 4;

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
        ul.labels { @for label in labels { (one(label)) } }
    }
}

fn one(label: &Label) -> Markup {
    html! {
        li {
            @if let Some((form, cloth)) = label.look {
                (hem(&[cloth]))
                (drawings::plant(form, cloth, "on-label"))
            }
            strong { bdi { (plain(&label.large)) } }
            span { bdi { (plain(&label.below)) } }
            @for line in &label.lines { p { bdi { (plain(line)) } } }
        }
    }
}

/// The drawings of some crops side by side.
pub fn plants(all: &[(Form, Cloth)]) -> Markup {
    html! { div.plants-drawn { @for (form, cloth) in all { (drawings::plant(*form, *cloth, "large")) } } }
}

/// The frames of a journal, to write and draw in.
pub fn journal([head, name]: [&str; 2], frame: &Frame) -> Markup {
    html! {
        h2 { (head) }
        p.field { (name) ": " span {} }
        div.journal {
            @for _ in 0..FRAMES {
                div.frame {
                    p.field { (frame.date) ": " span {} }
                    div.blank {}
                    p.sky { @for sky in frame.sky { span { span.ring {} " " (sky) } " " } }
                    @for (what, unit) in frame.measured { p.field { (steady(what)) ": " span {} " " (unit) } }
                }
            }
        }
    }
}
