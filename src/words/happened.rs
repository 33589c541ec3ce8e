//! What the diary tells, in words.

use crate::calendar::Date;
use crate::facts::record::{grown_through, share_below};
use crate::garden::{Care, Garden};
use crate::plan::StepKind;
use crate::project::diary::Happened;
use crate::units::{Celsius, Kilograms, Millimetres};
use crate::weather::Daily;

use super::view::kind_of_years;
use super::{Words, list};

/// One entry.
#[must_use]
pub fn happened(what: &Happened, words: Words) -> String {
    match what {
        Happened::Done {
            step,
            ingredient,
            class,
            count,
            kg,
        } => {
            let by = class
                .as_ref()
                .map_or_else(String::new, |class| format!(" by {class}"));
            let count = count.map_or_else(String::new, |count| format!(", {count}"));
            let kg = kg.map_or_else(String::new, |kg| format!(", {}", words.mass(Kilograms(kg))));
            format!("{ingredient} {}{by}{count}{kg}", done(*step))
        }
        Happened::Missed {
            step,
            ingredient,
            class,
        } => format!(
            "{class} missed its lesson: {ingredient} not {}",
            done(*step)
        ),
        Happened::Up {
            ingredient,
            count,
            of,
        } => {
            let of = of.map_or_else(String::new, |of| format!(" of {of}"));
            format!("{count}{of} {ingredient} plants are up")
        }
        Happened::Lost {
            ingredient,
            share,
            cause,
        } => {
            let colon = if cause.is_empty() { "" } else { ": " };
            format!("{:.0} % of {ingredient} lost{colon}{cause}", share * 100.0)
        }
        Happened::Closed { from, to, care } => {
            let who = cares(*care);
            format!("school closed {}, {who}", words.span(*from, *to))
        }
        Happened::NoLesson { class, day } => {
            format!("no lesson of {class} on {}", words.short(*day))
        }
        Happened::Weather {
            low,
            high,
            rain,
            frost,
        } => weather((*low, *high), *rain, *frost, words),
        Happened::Words(said) => said.clone(),
        Happened::TakenBack(number) => format!("entry {number} does not count"),
    }
}

fn cares(care: Care) -> &'static str {
    match care {
        Care::Nobody => "nobody cares for the plants",
        Care::Staff => "staff care for the plants",
        Care::Families => "families care for the plants",
    }
}

fn weather(
    (low, high): (Option<f64>, Option<f64>),
    rain: Option<f64>,
    frost: bool,
    words: Words,
) -> String {
    let at = |t: f64| words.temperatures(Celsius(t), Celsius(t));
    let told = [
        low.map(|t| format!("lowest {}", at(t))),
        high.map(|t| format!("highest {}", at(t))),
        rain.map(|rain| format!("{} of rain", words.rain(Millimetres(rain)))),
        frost.then(|| "frost".to_owned()),
    ];
    list(&told.into_iter().flatten().collect::<Vec<String>>())
}

/// What was done to a crop.
fn done(step: StepKind) -> &'static str {
    match step {
        StepKind::Sow => "sown",
        StepKind::PotUp => "potted up",
        StepKind::Harden => "hardened off",
        StepKind::PlantOut => "planted out",
        StepKind::Thin => "thinned",
        StepKind::Pick => "picked",
        StepKind::Cure => "dried",
    }
}

/// How a day's weather lies among the days about its date in all years: the weather of a day beside the climate of the
/// place. Empty where no temperature was written down, or the record is short.
#[must_use]
pub fn among_the_years(what: &Happened, on: Date, garden: &Garden, words: Words) -> String {
    let Happened::Weather { low, high, .. } = what else {
        return String::new();
    };
    type Side = (Option<f64>, fn(&Daily) -> Celsius, [&'static str; 3]);
    let sides: [Side; 2] = [
        (*high, |day| day.tmax, ["day", "warmer", "cooler"]),
        (*low, |day| day.tmin, ["night", "milder", "colder"]),
    ];
    let mut told = String::new();
    for (value, of, [day, above, below]) in sides {
        let Some(value) = value.map(Celsius) else {
            continue;
        };
        let Some(share) = share_below(garden, on, value, of) else {
            continue;
        };
        let tenths = (share.0 * 10.0).round();
        let among = match tenths {
            10.0 => format!("{above} than nearly every {day}"),
            n if n >= 6.0 => format!("{above} than {n} of 10 {day}s"),
            0.0 => format!("{below} than nearly every {day}"),
            n if n <= 4.0 => format!("{below} than {} of 10 {day}s", 10.0 - n),
            _ => format!("an ordinary {day}"),
        };
        told += &format!(
            "{} is {among} about {}.\n",
            words.temperatures(value, value),
            words.full_month(on)
        );
    }
    match told.is_empty() {
        true => told,
        false => {
            let (years, kind) = (grown_through(garden).years, kind_of_years(garden));
            format!(
                "{told}That is among the {years} {kind}: a day is weather, and what all years have in common is climate.\n"
            )
        }
    }
}
