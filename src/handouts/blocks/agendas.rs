//! Lists of dated things as columns: a day with its hour, what is done, a box to tick, fields to fill.

use maud::{Markup, html};

use crate::page::{Agenda, AgendaEntry, Weight};

use super::said;

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
    let class = match entry.weight {
        Weight::Task => "task",
        Weight::Crucial => "task crucial",
        Weight::Quiet => "quiet",
        Weight::Rule => "rule",
    };
    let ticked = match entry.weight {
        Weight::Task | Weight::Crucial => true,
        Weight::Quiet | Weight::Rule => false,
    };
    html! {
        li class=(class) {
            p.when { @for part in &entry.when { span { (said(part)) } " " } }
            div {
                p.what { (said(&entry.what)) }
                @for line in &entry.more { p { (said(line)) } }
                @for field in &entry.fields { p.field { (said(field)) ": " span {} } }
            }
            @if ticked { span.tick {} }
        }
    }
}
