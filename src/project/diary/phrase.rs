//! What happened in a few plain words, as they are typed: `sowed carrot 3a`, `picked kale 3.2 kg`,
//! `up carrot 12 of 44`, `lost tomato 20 % slugs`, `missed 3a sowed carrot`, `weather -1 to 14 rain 5`.

use super::super::meant;
use super::super::names::{listed, near, quote};
use super::entry::{Happened, Names};
use crate::calendar::Date;
use crate::garden::Care;
use crate::plan::StepKind;

/// How an entry may begin.
const FORMS: &str = "write one of: sowed carrot 3a; potted, planted, thinned carrot; picked kale 3.2 kg; up carrot 12 of 44; \
                     lost tomato 20 % slugs; missed 3a sowed carrot; no lesson 3a; closed to 2027-05-28 families; \
                     weather -1 to 14 rain 5; frost; words ...";

/// Reads a phrase.
///
/// # Errors
/// What is wrong with it, and how it is written.
pub fn phrase(text: &str, names: &Names, on: Date) -> Result<Happened, String> {
    let mut words: Vec<&str> = text.split_whitespace().collect();
    let first = words
        .first()
        .map(|word| word.to_lowercase())
        .unwrap_or_default();
    words.drain(..1.min(words.len()));
    let rest = words.join(" ");
    if let Some(step) = step(&first) {
        return done(step, &rest, names);
    }
    match first.as_str() {
        "missed" => missed(&rest, names),
        "up" => up(&rest, names),
        "lost" => lost(&rest, names),
        "closed" => closed(&rest, on),
        "no" => no_lesson(&rest, names, on),
        "weather" => weather(&rest),
        "frost" => Ok(Happened::Weather {
            low: None,
            high: None,
            rain: None,
            frost: true,
        }),
        "words" if !rest.is_empty() => Ok(Happened::Words(rest)),
        _ => Err(FORMS.to_owned()),
    }
}

/// The step that a word tells of.
fn step(word: &str) -> Option<StepKind> {
    let mut kinds = StepKind::ALL.iter().copied();
    kinds.find(|kind| kind.facts().told_by.contains(&word))
}

/// The ingredient with which a text begins, and what follows.
fn ingredient<'t>(text: &'t str, names: &Names) -> Result<(String, &'t str), String> {
    // "out" and "up" belong to the verb: planted out, potted up.
    let text = ["out ", "up "]
        .iter()
        .find_map(|word| text.strip_prefix(word))
        .unwrap_or(text);
    let lower = text.to_lowercase();
    let begins = |name: &&String| {
        let rest = lower.strip_prefix(&name.to_lowercase());
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    let longest = names
        .ingredients
        .iter()
        .filter(begins)
        .max_by_key(|name| name.len());
    if text.is_empty() {
        return Err(format!(
            "name an ingredient of the dish: {}",
            listed(names.ingredients.iter().map(String::as_str))
        ));
    }
    let Some(name) = longest else {
        let all = || names.ingredients.iter().map(String::as_str);
        let word = text.split_whitespace().next().unwrap_or_default();
        return Err(match near(word, all()) {
            Some(other) => format!(
                "the dish has no {}; did you mean {}?",
                quote(word),
                quote(other)
            ),
            None => format!("name an ingredient of the dish: {}", listed(all())),
        });
    };
    let rest = text.get(name.len()..).unwrap_or_default();
    Ok((name.clone(), rest.trim()))
}

/// A class that a word names.
fn class(word: &str, names: &Names) -> Option<String> {
    let mut classes = names.classes.iter();
    classes
        .find(|name| name.eq_ignore_ascii_case(word))
        .cloned()
}

fn done(step: StepKind, rest: &str, names: &Names) -> Result<Happened, String> {
    let (ingredient, rest) = ingredient(rest, names)?;
    let (mut by, mut count, mut kg) = (None, None, None);
    let mut words = rest.split_whitespace().peekable();
    while let Some(word) = words.next() {
        if let Some(class) = class(word, names) {
            by = Some(class);
            continue;
        }
        let (figure, unit) = meant::figure(word).ok_or_else(|| unknown(word, names))?;
        let unit = match (unit, words.peek()) {
            ("", Some(next)) if meant::is_unit(&next.to_lowercase()) => {
                words.next().unwrap_or_default()
            }
            (unit, _) => unit,
        };
        match unit {
            "" => count = Some(whole(figure)?),
            unit if !meant::is_unit(&unit.to_lowercase()) => return Err(unknown(word, names)),
            unit => {
                kg = Some(
                    meant::converted(figure, unit, Some("kg"))
                        .ok_or_else(|| format!("{} is no weight", quote(unit)))?,
                )
            }
        }
    }
    Ok(Happened::Done {
        step,
        ingredient,
        class: by,
        count,
        kg,
    })
}

fn missed(rest: &str, names: &Names) -> Result<Happened, String> {
    let form = || "write it so: missed 3a sowed carrot".to_owned();
    let (word, rest) = rest.split_once(' ').ok_or_else(form)?;
    let class = class(word, names).ok_or_else(|| unknown(word, names))?;
    let (verb, rest) = rest.split_once(' ').ok_or_else(form)?;
    let step = step(&verb.to_lowercase()).ok_or_else(form)?;
    let (ingredient, _) = ingredient(rest, names)?;
    Ok(Happened::Missed {
        step,
        ingredient,
        class,
    })
}

/// `2027-05-17 to 2027-05-28 families`: the school is closed, and families care.
fn closed(rest: &str, on: Date) -> Result<Happened, String> {
    let form = || {
        "write the last day, and who cares for the plants: closed to 2027-05-28 families; or closed 2027-05-17 to \
         2027-05-28 staff, or nobody"
            .to_owned()
    };
    let (mut days, mut care) = (Vec::new(), Care::Nobody);
    let rest = rest.to_lowercase();
    for word in rest.split_whitespace().filter(|word| *word != "to") {
        match (word, word.parse::<Date>()) {
            (_, Ok(day)) => days.push(day),
            ("families", _) => care = Care::Families,
            ("staff", _) => care = Care::Staff,
            ("nobody" | "none", _) => care = Care::Nobody,
            _ => return Err(form()),
        }
    }
    let (from, to) = match days[..] {
        [to] => (on, to),
        [from, to] => (from, to),
        _ => return Err(form()),
    };
    match from <= to {
        true => Ok(Happened::Closed { from, to, care }),
        false => Err(form()),
    }
}

/// `lesson 3a`, on the day of the entry or on another: it falls out.
fn no_lesson(rest: &str, names: &Names, on: Date) -> Result<Happened, String> {
    let form = || "write it so: no lesson 3a, or no lesson 3a 2027-05-20".to_owned();
    let rest = rest.strip_prefix("lesson ").ok_or_else(form)?;
    let (word, day) = rest.split_once(' ').unwrap_or((rest, ""));
    let class = class(word, names).ok_or_else(|| unknown(word, names))?;
    let day = match day.trim() {
        "" => on,
        day => day.parse().map_err(|_| form())?,
    };
    Ok(Happened::NoLesson { class, day })
}

fn up(rest: &str, names: &Names) -> Result<Happened, String> {
    let (ingredient, rest) = ingredient(rest, names)?;
    let figures: Vec<&str> = rest
        .split_whitespace()
        .filter(|word| *word != "of")
        .collect();
    let numbers: Result<Vec<u32>, String> = figures.iter().map(|word| number(word)).collect();
    match numbers?.as_slice() {
        [count] => Ok(Happened::Up {
            ingredient,
            count: *count,
            of: None,
        }),
        [count, of] => Ok(Happened::Up {
            ingredient,
            count: *count,
            of: Some(*of),
        }),
        _ => Err("write how many are up: up carrot 12 of 44".to_owned()),
    }
}

fn lost(rest: &str, names: &Names) -> Result<Happened, String> {
    let (ingredient, rest) = ingredient(rest, names)?;
    let rest = rest.replace('%', " % ");
    let mut words = rest.split_whitespace().peekable();
    let share = match words.peek().map(|word| word.to_lowercase()) {
        Some(word) if word == "all" => {
            words.next();
            1.0
        }
        Some(word) => {
            let (figure, _) =
                meant::figure(&word).ok_or("write how much: lost tomato 20 % slugs")?;
            words.next();
            if words.peek() == Some(&"%") {
                words.next();
            }
            figure / 100.0
        }
        None => {
            return Err(
                "write how much: lost tomato 20 % slugs, or lost tomato all frost".to_owned(),
            );
        }
    };
    if !(0.0..=1.0).contains(&share) {
        return Err("a loss is 0 to 100 %".to_owned());
    }
    let cause = words.collect::<Vec<_>>().join(" ");
    Ok(Happened::Lost {
        ingredient,
        share,
        cause,
    })
}

fn weather(rest: &str) -> Result<Happened, String> {
    let form = "write it so: weather -1 to 14 rain 5 frost";
    let text = rest.to_lowercase().replace('\u{2212}', "-");
    let (mut low, mut high, mut rain, mut frost) = (None, None, None, false);
    let mut words = text
        .split_whitespace()
        .filter(|word| !matches!(*word, "to" | "c" | "mm"));
    while let Some(word) = words.next() {
        match word {
            "frost" => frost = true,
            "rain" => rain = Some(figure(words.next().ok_or(form)?)?),
            word if low.is_none() => low = Some(figure(word)?),
            word if high.is_none() => high = Some(figure(word)?),
            _ => return Err(form.to_owned()),
        }
    }
    if let (Some(least), Some(most)) = (low, high)
        && least > most
    {
        return Err("the lowest comes first".to_owned());
    }
    match low.is_some() || rain.is_some() || frost {
        true => Ok(Happened::Weather {
            low,
            high,
            rain,
            frost,
        }),
        false => Err(form.to_owned()),
    }
}

fn figure(word: &str) -> Result<f64, String> {
    let read = meant::figure(word).filter(|(figure, _)| figure.is_finite());
    read.map(|(figure, _)| figure)
        .ok_or_else(|| format!("{} is no figure", quote(word)))
}

fn number(word: &str) -> Result<u32, String> {
    word.parse()
        .map_err(|_| format!("{} is no whole number", quote(word)))
}

fn whole(figure: f64) -> Result<u32, String> {
    match figure.fract() == 0.0 && (1.0..=100_000.0).contains(&figure) {
        true => Ok(figure as u32),
        false => Err(format!(
            "{figure} is no number of plants; of weights write the unit too: 3.2 kg"
        )),
    }
}

/// A word that is no class and no amount.
fn unknown(word: &str, names: &Names) -> String {
    let classes = || names.classes.iter().map(String::as_str);
    format!(
        "{} is no class and no amount; the classes are {}",
        quote(word),
        listed(classes())
    )
}
