//! Questions about the garden: beds, shelf, and the weather of the place.

use super::question::{Question, far_away, words};
use crate::calendar::MONTHS;
use crate::project::draft::{self, Beds, Draft, Element, Means, Measures};
use crate::units::Metres;
use crate::weather::normals::Normals;
use crate::words::{count, list};

pub(super) fn all() -> Vec<Question> {
    vec![
        beds(),
        trellises(),
        flats(),
        station(),
        means(Element::Low),
        means(Element::High),
        means(Element::Rain),
    ]
}

fn beds() -> Question {
    Question {
        ask: |draft, _| {
            let example = match draft.measures {
                Measures::Metric => "4 beds 3.6 x 1.2",
                Measures::Feet => "4 beds 12 x 4",
            };
            format!(
                "Which beds are there? Beds of one size on a line: how many, length, width:\n   {example}"
            )
        },
        take: |draft, _, line| {
            let beds = draft::beds(line, draft.measures)?;
            draft.beds.push(beds);
            Ok(())
        },
        told: |draft| {
            let unit = match draft.measures {
                Measures::Metric => "m",
                Measures::Feet => "ft",
            };
            let size = |beds: &Beds| {
                format!(
                    "{} of {} x {} {unit}",
                    count(beds.count, "bed"),
                    beds.length,
                    beds.width
                )
            };
            list(&draft.beds().iter().map(size).collect::<Vec<String>>())
        },
        lines: Some(|draft| draft.beds.clear()),
    }
}

fn trellises() -> Question {
    Question {
        ask: |_, _| {
            "How many of the beds have a trellis, or could have one? Tomatoes, pole beans\n   and peas climb.".to_owned()
        },
        take: |draft, _, line| {
            let number = line
                .parse()
                .map_err(|_| "write a whole number".to_owned())?;
            if number > draft.bed_count() {
                return Err(format!(
                    "there are only {}",
                    count(draft.bed_count(), "bed")
                ));
            }
            draft.trellises = Some(number);
            Ok(())
        },
        told: |draft| draft.trellises().to_string(),
        lines: None,
    }
}

fn flats() -> Question {
    Question {
        ask: |draft, _| {
            let size = match draft.measures {
                Measures::Metric => "28 x 54 cm",
                Measures::Feet => "11 x 21 in",
            };
            format!("For how many seed trays of {size} is there light indoors? 0 for none.")
        },
        take: |draft, _, line| {
            let flats = line.parse().ok().filter(|flats| *flats <= 200);
            draft.flats = Some(flats.ok_or("write a whole number up to 200")?);
            Ok(())
        },
        told: |draft| draft.flats().to_string(),
        lines: None,
    }
}

/// What is asked of a row of means.
fn row(which: &str, unit: &str) -> String {
    format!(
        "{which} of each month\n   in your town, in {unit}? Twelve figures, January first, typed or pasted."
    )
}

/// The nearest stations, to choose from.
fn station() -> Question {
    Question {
        ask: |draft, _| {
            let line = |(at, (far, station)): (usize, &(Metres, Normals))| {
                let height = words(draft).length(station.height);
                let far = far_away(draft, *far);
                format!(
                    "   {}  {}, {}: {far} away, {height} above the sea",
                    at + 1,
                    station.name,
                    station.country
                )
            };
            match draft.near.as_slice() {
                [] => "Which weather? Without a longitude no weather station is known: the next\n   three questions ask for your town's means.".to_owned(),
                near => {
                    let lines: Vec<String> = near.iter().enumerate().map(line).collect();
                    format!("Which weather station is most like the garden?\n{}", lines.join("\n"))
                }
            }
        },
        take: |draft, _, line| {
            let number = line
                .parse::<usize>()
                .ok()
                .and_then(|number| number.checked_sub(1));
            let number = number.filter(|at| *at < draft.near.len());
            draft.station = number.ok_or("write the number of one of them, or nothing")?;
            Ok(())
        },
        told: |draft| {
            draft
                .station()
                .map_or("none", |(_, station)| station.name)
                .to_owned()
        },
        lines: None,
    }
}

fn degrees(draft: &Draft) -> &'static str {
    match draft.measures {
        Measures::Metric => "degrees C",
        Measures::Feet => "degrees F",
    }
}

fn depth(draft: &Draft) -> &'static str {
    match draft.measures {
        Measures::Metric => "mm",
        Measures::Feet => "inches",
    }
}

/// The least and the most of a row, with their months.
fn extremes(draft: &Draft, row: usize, unit: &str) -> String {
    if draft.is_of_no_place() && draft.means == Means::default() {
        return "of no real place, until you put your own into the file".to_owned();
    }
    let rows = draft.rows();
    let all = || rows.get(row).into_iter().flatten().zip(MONTHS);
    let least = all().min_by(|a, b| a.0.total_cmp(b.0));
    let most = all().max_by(|a, b| a.0.total_cmp(b.0));
    let told = |at: Option<(&f64, &str)>| {
        at.map_or(String::new(), |(figure, month)| {
            format!("{figure} {unit} in {month}")
        })
    };
    format!("from {} to {}", told(least), told(most))
}

fn means(element: Element) -> Question {
    match element {
        Element::Low => Question {
            ask: |draft, _| row("What is the mean daily LOWEST temperature", degrees(draft)),
            take: |draft, _, line| draft.means.take(Element::Low, line, draft.measures),
            told: |draft| extremes(draft, 0, degrees(draft)),
            lines: None,
        },
        Element::High => Question {
            ask: |draft, _| row("What is the mean daily HIGHEST temperature", degrees(draft)),
            take: |draft, _, line| draft.means.take(Element::High, line, draft.measures),
            told: |draft| extremes(draft, 1, degrees(draft)),
            lines: None,
        },
        Element::Rain => Question {
            ask: |draft, _| row("How much RAIN falls in the course", depth(draft)),
            take: |draft, _, line| draft.means.take(Element::Rain, line, draft.measures),
            told: |draft| extremes(draft, 2, depth(draft)),
            lines: None,
        },
    }
}
