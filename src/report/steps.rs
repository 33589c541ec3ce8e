//! Steps in words: what is done, when, by which class, with how much.

use crate::calendar::Date;
use crate::garden::Method;
use crate::plan::{Place, Planting, Step, StepKind, When};

use super::words::{Dates, count, list, minutes};

/// What a step is called, for the way in which the planting is grown.
pub(super) fn name(method: Method, kind: StepKind) -> &'static str {
    match (kind, method) {
        (StepKind::Sow, Method::Indoor) => "Sow indoors",
        (StepKind::Sow, Method::Pieces | Method::Bought) => "Plant in bed",
        (StepKind::Sow, Method::Direct | Method::Growing | Method::Patch) => "Sow in bed",
        (StepKind::PotUp, _) => "Pot up",
        (StepKind::Harden, _) => "Harden off",
        (StepKind::PlantOut, _) => "Plant out",
        (StepKind::Thin, _) => "Thin",
        (StepKind::Pick, _) => "Pick",
        (StepKind::Cure, _) => "Dry or cure",
    }
}

/// When a step is done and by whom: `2a Tue 9 Feb, 2b Thu 18 Feb`.
pub(super) fn when(when: &When, dates: Dates) -> String {
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
                format!("{} {}", list(&classes), dates.day(*day))
            };
            days.iter().map(on_day).collect::<Vec<_>>().join(", ")
        }
        When::Families(day) => format!("families, {}", dates.day(*day)),
        When::Adult(day) => format!("an adult, {}", dates.day(*day)),
        When::Daily { from, to } => format!("every day from {}", dates.days(*from, *to)),
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
pub(super) fn count_of(planting: &Planting, step: &Step) -> String {
    match step.kind {
        StepKind::Sow => {
            let mut parts = vec![count(planting.seeds, seed_word(planting.method))];
            if planting.flats_sown > 0 {
                parts.push(count(planting.flats_sown, "flat"));
            }
            if planting.on_mat {
                parts.push("on the heat mat until up".to_owned());
            }
            parts.join(", ")
        }
        StepKind::PotUp => format!("into {}", count(planting.flats_kept, "flat")),
        StepKind::PlantOut if planting.method == Method::Bought => {
            count(planting.seeds, "bought plant")
        }
        StepKind::PlantOut => count(planting.plants, "plant"),
        StepKind::Thin => format!("to {}", count(planting.plants, "plant")),
        StepKind::Harden | StepKind::Pick | StepKind::Cure => String::new(),
    }
}

/// What is sown: seeds, pieces or plants.
pub(super) fn seed_word(method: Method) -> &'static str {
    match method {
        Method::Direct | Method::Indoor | Method::Growing | Method::Patch => "seed",
        Method::Pieces => "seed piece",
        Method::Bought => "bought plant",
    }
}

/// Lines of a planting's steps: name and text; all picks share one line.
pub(super) fn lines(planting: &Planting, dates: Dates) -> Vec<(&'static str, String)> {
    let mut lines: Vec<(&'static str, String)> = Vec::new();
    let mut picks: Vec<&Step> = Vec::new();
    for step in &planting.steps {
        if step.kind == StepKind::Pick {
            if picks.is_empty() {
                lines.push((name(planting.method, step.kind), String::new()));
            }
            picks.push(step);
        } else {
            lines.push((
                name(planting.method, step.kind),
                with_amount(when(&step.when, dates), amount(planting, step)),
            ));
        }
    }
    if let Some(line) = lines.iter_mut().find(|(_, text)| text.is_empty()) {
        line.1 = pick_text(planting, &picks, dates);
    }
    lines
}

/// The chances to pick, in order, in words.
fn pick_text(planting: &Planting, picks: &[&Step], dates: Dates) -> String {
    let text = |step: &Step| with_amount(when(&step.when, dates), amount(planting, step));
    match picks {
        [only] => text(only),
        many => {
            let chances: Vec<String> = many.iter().map(|s| when(&s.when, dates)).collect();
            let longest = many
                .iter()
                .map(|s| s.minutes)
                .fold(crate::units::Minutes(0.0), crate::units::Minutes::max);
            let chances = chances.join("; or ");
            let chances = if longest.0 > 0.0 {
                format!("{chances}: {}", minutes(longest))
            } else {
                chances
            };
            format!("the first of these when it is ripe: {chances}")
        }
    }
}

/// Text and amount with a colon between, where there is an amount.
fn with_amount(text: String, amount: String) -> String {
    if amount.is_empty() {
        text
    } else {
        format!("{text}: {amount}")
    }
}

/// Where a planting stands: `bed 3, strips 1 to 6`.
pub(super) fn place(places: &[Place]) -> String {
    let one = |p: &Place| match p.strips {
        1 => format!("bed {}, strip {}", p.bed, p.first_strip),
        n => format!(
            "bed {}, strips {} to {}",
            p.bed,
            p.first_strip,
            p.first_strip + n - 1
        ),
    };
    list(&places.iter().map(one).collect::<Vec<_>>())
}
