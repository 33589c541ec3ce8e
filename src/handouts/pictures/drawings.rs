//! The drawings of plants: one for each form, in the hue of its crop. They only repeat the name beside them.

use maud::{Markup, PreEscaped, html};

use crate::facts::cloth::{Cloth, Form};

use super::weave::hue;

/// A drawing as the page holds it; `class` says how large it is.
pub fn plant(form: Form, cloth: Cloth, class: &str) -> Markup {
    html! {
        svg.plant.(class).(hue(cloth)) viewBox="0 0 100 100" aria-hidden="true" { (lines(form)) }
    }
}

/// The same at a place within a picture.
pub fn within(form: Form, (x, y, size): (f64, f64, f64)) -> Markup {
    html! {
        svg.plant x=(format!("{x:.1}")) y=(format!("{y:.1}")) width=(format!("{size:.1}"))
            height=(format!("{size:.1}")) viewBox="0 0 100 100" { (lines(form)) }
    }
}

/// What is between the tags of a drawing's file.
fn lines(form: Form) -> Markup {
    let file = match form {
        Form::Root => include_str!("drawings/root.svg"),
        Form::Tuber => include_str!("drawings/tuber.svg"),
        Form::Bulb => include_str!("drawings/bulb.svg"),
        Form::Shaft => include_str!("drawings/shaft.svg"),
        Form::Leaves => include_str!("drawings/leaves.svg"),
        Form::Head => include_str!("drawings/head.svg"),
        Form::Pods => include_str!("drawings/pods.svg"),
        Form::Fruit => include_str!("drawings/fruit.svg"),
        Form::Gourd => include_str!("drawings/gourd.svg"),
        Form::Ear => include_str!("drawings/ear.svg"),
        Form::Herb => include_str!("drawings/herb.svg"),
        Form::Berries => include_str!("drawings/berries.svg"),
    };
    let inside = file
        .split_once('\n')
        .and_then(|(_, rest)| rest.rsplit_once("</svg>"));
    PreEscaped(inside.map_or("", |(lines, _)| lines).replace('\n', ""))
}
