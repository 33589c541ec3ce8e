//! Steps in words: what is done, when, by which class, with how much.

use crate::calendar::Date;
use crate::facts::things::{Thing, shared_out};
use crate::garden::Method;
use crate::plan::{Planting, Step, StepKind, When};
use crate::units::Minutes;

use super::step_words::name;
use crate::words::{Words, choice, count, list, minutes};

/// How a planting is grown.
pub(crate) fn how_grown(method: Method) -> &'static str {
    match method {
        Method::Direct => "seed in the bed",
        Method::Indoor => "sown indoors and planted out",
        Method::Pieces => "pieces, sets or cloves in the bed",
        Method::Bought => "bought plants",
        Method::Seedlings => "seedlings on the shelf, planted out",
        Method::Growing => "already growing",
        Method::Patch => "from a standing patch",
    }
}

/// When a step is done and by whom: `2a Tue 9 Feb, 2b Thu 18 Feb`.
pub(crate) fn when(when: &When, words: Words) -> String {
    match when {
        When::Sessions(visits) => {
            let mut days: Vec<Date> = visits.iter().map(|v| v.date).collect();
            days.sort_unstable();
            days.dedup();
            let on_day = |day: &Date| {
                let classes: Vec<&str> = visits
                    .iter()
                    .filter(|v| v.date == *day)
                    .map(|v| v.class.as_str())
                    .collect();
                format!("{}\u{a0}{}", list(&classes), words.day(*day))
            };
            days.iter().map(on_day).collect::<Vec<_>>().join(", ")
        }
        When::Families(day) => format!("families, {}", words.day(*day)),
        When::Adult(day) => format!("an adult, {}", words.day(*day)),
        When::Daily { from, to } => format!("every day from {}", words.days(*from, *to)),
    }
}

/// With how much: `80 seeds, 2 flats, 25 min`; empty where nothing is counted.
fn amount(planting: &Planting, step: &Step) -> String {
    let counted = count_of(planting, step);
    match (counted.is_empty(), step.minutes.0 > 0.0) {
        (_, false) => counted,
        (true, true) => minutes(step.minutes),
        (false, true) => format!("{counted}, {}", minutes(step.minutes)),
    }
}

/// How many seeds, flats and plants a step handles: `80 seeds, 2 flats`.
fn count_of(planting: &Planting, step: &Step) -> String {
    let mut parts: Vec<String> = shared_out(planting, step)
        .map(|(n, what)| count(n, thing(what)))
        .into_iter()
        .collect();
    match step.kind {
        StepKind::Sow => {
            if planting.flats_sown > 0 {
                parts.push(count(planting.flats_sown, "flat"));
            }
            if planting.on_mat {
                parts.push("on the heat mat until up".to_owned());
            }
        }
        StepKind::PotUp => parts.push(format!("into {}", count(planting.flats_kept, "flat"))),
        StepKind::Thin => parts.push(format!("to {}", count(planting.plants, "plant"))),
        StepKind::Harden | StepKind::PlantOut | StepKind::Pick | StepKind::Cure => {}
    }
    parts.join(", ")
}

/// What is counted: seed, seed piece, bought plant, plant.
pub(crate) fn thing(thing: Thing) -> &'static str {
    match thing {
        Thing::Seed => "seed",
        Thing::SeedPiece => "seed piece",
        Thing::BoughtPlant => "bought plant",
        Thing::Plant => "plant",
    }
}

/// What is sown of an ingredient: `carrot seed`, `potato seed piece`, `bought leek plant`.
pub(crate) fn seed_of(ingredient: &str, sown: Thing) -> String {
    match sown {
        Thing::BoughtPlant => format!("bought {ingredient} plant"),
        _ => format!("{ingredient} {}", thing(sown)),
    }
}

/// Lines of a planting's steps: name and text; all picks share one line.
pub(crate) fn lines(planting: &Planting, words: Words) -> Vec<(&'static str, String)> {
    let mut lines: Vec<(&'static str, String)> = Vec::new();
    let mut picks: Vec<&Step> = Vec::new();
    for step in &planting.steps {
        if step.kind.is_harvest() {
            if picks.is_empty() {
                lines.push((name(planting.method, step.kind), String::new()));
            }
            picks.push(step);
        } else {
            let text = match (step.kind.follows_harvest(), &step.when) {
                (true, When::Daily { from, to }) => cure_text(*from, *to, words),
                _ => with_amount(when(&step.when, words), amount(planting, step)),
            };
            lines.push((name(planting.method, step.kind), text));
        }
    }
    if let Some(line) = lines.iter_mut().find(|(_, text)| text.is_empty()) {
        line.1 = pick_text(planting, &picks, words);
    }
    lines
}

/// Curing follows the pick, whichever it is.
pub(crate) fn cure_text(from: Date, to: Date, words: Words) -> String {
    format!(
        "every day from the day after the pick, at the latest {}",
        words.days(from, to)
    )
}

/// The chances to pick, in order, in words.
fn pick_text(planting: &Planting, picks: &[&Step], words: Words) -> String {
    let longest = picks
        .iter()
        .map(|s| s.minutes)
        .fold(Minutes(0.0), Minutes::max);
    let takes = if longest.0 > 0.0 {
        minutes(longest)
    } else {
        String::new()
    };
    match picks {
        [only] => with_amount(when(&only.when, words), amount(planting, only)),
        many => with_amount(
            format!(
                "the first of these when it is ripe: {}",
                chances(many, words)
            ),
            takes,
        ),
    }
}

/// Chances with "or" between; those of families share one mention.
fn chances(picks: &[&Step], words: Words) -> String {
    let same_hands = |a: &&Step, b: &&Step| {
        matches!(
            (&a.when, &b.when),
            (When::Families(_), When::Families(_)) | (When::Adult(_), When::Adult(_))
        )
    };
    let one = |step: &&Step| match &step.when {
        When::Families(day) | When::Adult(day) => words.day(*day),
        other => when(other, words),
    };
    let group = |steps: &[&Step]| {
        let days = choice(&steps.iter().map(one).collect::<Vec<_>>());
        match steps.first().map(|s| &s.when) {
            Some(When::Families(_)) => format!("families on {days}"),
            Some(When::Adult(_)) => format!("an adult on {days}"),
            _ => days,
        }
    };
    picks
        .chunk_by(same_hands)
        .map(group)
        .collect::<Vec<_>>()
        .join("; or ")
}

/// Text and amount with a colon between, where there is an amount.
fn with_amount(text: String, amount: String) -> String {
    if amount.is_empty() {
        text
    } else {
        format!("{text}: {amount}")
    }
}
