//! Questions about the place and the school: where it lies, when it is in, who comes when.

use super::question::{Question, far_away, words};
use crate::garden::Care;
use crate::project::draft::{self, Draft, Measures, Span};
use crate::units::Latitude;
use crate::weather::normals::{Longitude, nearest};
use crate::words::list;

/// So many weather stations are told.
const STATIONS: usize = 3;

/// Where the school is, and what it is called.
pub(super) fn place() -> Vec<Question> {
    vec![measures(), latitude(), name()]
}

/// When school is in, and the classes.
pub(super) fn all() -> Vec<Question> {
    vec![terms(), breaks(), classes(), portions()]
}

fn measures() -> Question {
    Question {
        ask: |_, _| "Metres and Celsius, or feet and Fahrenheit? Write metres or feet.".to_owned(),
        take: |draft, _, line| {
            draft.measures = match line.to_lowercase().chars().next() {
                Some('m' | 'c') => Measures::Metric,
                Some('f') => Measures::Feet,
                _ => return Err("write metres or feet".to_owned()),
            };
            Ok(())
        },
        told: |draft| match draft.measures {
            Measures::Metric => "metres".to_owned(),
            Measures::Feet => "feet".to_owned(),
        },
        lines: None,
    }
}

fn latitude() -> Question {
    Question {
        ask: |_, _| {
            "Where is the garden? Latitude and longitude in degrees, as a map shows them:\n   44.3 N 93.2 W".to_owned()
        },
        take: |draft, _, line| {
            let (latitude, longitude) = draft::place(line)?;
            draft.latitude = Some(latitude);
            draft.near = longitude.map_or_else(Vec::new, |degrees| {
                nearest(Latitude(latitude), Longitude(degrees), STATIONS)
            });
            Ok(())
        },
        told: |draft| {
            let side = if draft.south() { "S" } else { "N" };
            let place = format!("{} {side}", draft.latitude().abs());
            match draft.near.first() {
                Some((far, station)) => {
                    format!("{place}, {} from {}", far_away(draft, *far), station.name)
                }
                None => place,
            }
        },
        lines: None,
    }
}

fn name() -> Question {
    Question {
        ask: |_, _| "What is the school called? It stands on every page.".to_owned(),
        take: |draft, _, line| {
            draft.school = Some(line.to_owned());
            Ok(())
        },
        told: |draft| draft.school.clone().unwrap_or_else(|| "no name".to_owned()),
        lines: None,
    }
}

fn span(draft: &Draft, span: &Span) -> String {
    format!("{}: {}", span.name, words(draft).days(span.from, span.to))
}

fn terms() -> Question {
    Question {
        ask: |_, _| {
            "When is school in? One term on a line, its first and last day:\n   Spring: 11 Jan 2027 - 18 Jun 2027"
                .to_owned()
        },
        take: |draft, _, line| {
            let name = format!("Term {}", draft.terms.len() + 1);
            let after = draft.terms.last().map_or(draft.today, |term| term.to);
            let term = draft::span(line, &name, after, draft.measures)?;
            draft.terms.push(term);
            draft.terms.sort_by_key(|term| term.from);
            Ok(())
        },
        told: |draft| {
            let terms: Vec<String> = draft.terms().iter().map(|term| span(draft, term)).collect();
            terms.join("; ")
        },
        lines: Some(|draft| draft.terms.clear()),
    }
}

fn breaks() -> Question {
    Question {
        ask: |_, _| {
            "Which breaks are there, between terms too, and who looks after the garden\n   then: nobody, staff or families? One on a line:\n   Summer: 19 Jun - 29 Aug, families"
                .to_owned()
        },
        take: |draft, _, line| {
            let after = draft.terms().first().map_or(draft.today, |term| term.from);
            let time_off = draft::time_off(line, after, draft.measures)?;
            draft.breaks.push(time_off);
            Ok(())
        },
        told: |draft| {
            let one = |(time_off, care): &(Span, Care)| {
                let who = match care {
                    Care::Nobody => "nobody",
                    Care::Staff => "staff",
                    Care::Families => "families",
                };
                format!("{}, {who}", span(draft, time_off))
            };
            match draft.breaks.as_slice() {
                [] => "none".to_owned(),
                breaks => breaks.iter().map(one).collect::<Vec<String>>().join("; "),
            }
        },
        lines: Some(|draft| draft.breaks.clear()),
    }
}

fn classes() -> Question {
    Question {
        ask: |_, _| {
            "Which classes garden? One on a line: its name, children, day and hour of\n   its lesson:\n   3a 22 Tue 10:15\n   With \"every 2\" behind it, it comes every second week."
                .to_owned()
        },
        take: |draft, _, line| {
            let class = draft::class(line)?;
            if draft.classes.iter().any(|other| other.name == class.name) {
                return Err(format!("there is a class {} already", class.name));
            }
            draft.classes.push(class);
            Ok(())
        },
        told: |draft| {
            let each = draft.classes();
            let each = each.iter().map(|class| {
                let every = if class.every == 2 {
                    ", every second week"
                } else {
                    ""
                };
                let at = class
                    .at
                    .map_or(String::new(), |at| format!(" {}", at.format("%H:%M")));
                format!(
                    "{} ({} children, {}{at}{every})",
                    class.name, class.children, class.day
                )
            });
            list(&each.collect::<Vec<String>>())
        },
        lines: Some(|draft| draft.classes.clear()),
    }
}

fn portions() -> Question {
    Question {
        ask: |_, _| "How many people eat, children and adults?".to_owned(),
        take: |draft, _, line| {
            draft.portions = Some(draft::eaters(line)?);
            Ok(())
        },
        told: |draft| draft.portions().to_string(),
        lines: None,
    }
}
