//! Lists of dated things as columns: a day with its hour, what is done, a box to tick, fields to fill.

use maud::{Markup, html};

use crate::page::{Agenda, AgendaEntry, Weight};

use super::said::said;

/// All lists, side by side where there is room.
pub fn markup(agendas: &[Agenda]) -> Markup {
    html! {
        div.agendas {
            @for agenda in agendas {
                section {
                    h2 { (said(&agenda.head)) }
                    ol { @for one in &agenda.entries { (entry(one)) } }
                }
            }
        }
    }
}

fn entry(entry: &AgendaEntry) -> Markup {
    let (class, ticked) = match entry.weight {
        Weight::Task | Weight::Crucial => ("task", true),
        Weight::Quiet => ("quiet", false),
        Weight::Rule => ("rule", false),
    };
    html! {
        li.(class).crucial[entry.weight == Weight::Crucial] {
            p.when { @for part in &entry.when { span { (said(part)) } " " } }
            div {
                p.what { (said(&entry.what)) }
                @for line in &entry.more { p { (said(line)) } " " }
                @for field in &entry.fields { p.field { (said(field)) ": " span {} } " " }
            }
            @if ticked { span.tick {} }
        }
    }
}
