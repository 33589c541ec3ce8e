//! What comes out of some gardens, held as text. Other tests say whether it is right; this one notices
//! that it is no longer the same. A change of the rules or of the engine renews the text on purpose
//! (`INSTA_UPDATE=always cargo test unchanged`), and who made it reads what moved.

use std::fmt::Write;

use tureen::calendar::Date;
use tureen::candidates::Candidates;
use tureen::checker::check;
use tureen::checksum::digits;
use tureen::garden::Garden;
use tureen::model::{Outcome, Recorded, solve_and_record, solve_where};
use tureen::plan::{Plan, Planting, When};

use super::few;
use super::make::{CROWDED, TINY, TINY_CHOICE, garden, open_garden};
use super::{AMPLE, options};

#[test]
fn plans_of_tiny_gardens_are_what_they_were() {
    same("tiny-0", (0..8).map(|seed| (seed, garden(seed, &TINY))));
}

#[test]
fn plans_of_more_tiny_gardens_are_what_they_were() {
    same("tiny-8", (8..16).map(|seed| (seed, garden(seed, &TINY))));
}

#[test]
fn plans_of_yet_more_tiny_gardens_are_what_they_were() {
    same("tiny-16", (16..24).map(|seed| (seed, garden(seed, &TINY))));
}

#[test]
fn plans_of_gardens_with_open_grades_are_what_they_were() {
    same(
        "open-100",
        (100..108).map(|seed| (seed, open_garden(seed, &TINY_CHOICE))),
    );
}

#[test]
fn plans_of_more_gardens_with_open_grades_are_what_they_were() {
    same(
        "open-108",
        (108..116).map(|seed| (seed, open_garden(seed, &TINY_CHOICE))),
    );
}

#[test]
fn plans_of_crowded_gardens_are_what_they_were() {
    same("crowded-0", (0..16).map(|seed| (seed, crowded(seed))));
}

#[test]
fn plans_of_more_crowded_gardens_are_what_they_were() {
    same("crowded-16", (16..30).map(|seed| (seed, crowded(seed))));
}

#[test]
fn plans_of_yet_more_crowded_gardens_are_what_they_were() {
    same("crowded-32", (32..48).map(|seed| (seed, crowded(seed))));
}

#[test]
fn plans_of_other_crowded_gardens_are_what_they_were() {
    same("crowded-48", (48..64).map(|seed| (seed, crowded(seed))));
}

#[test]
fn plans_of_the_last_crowded_gardens_are_what_they_were() {
    same("crowded-64", (64..80).map(|seed| (seed, crowded(seed))));
}

/// A garden in which sowings are many and strips, flats and minutes few.
fn crowded(seed: u64) -> Garden {
    let mut garden = open_garden(seed, &CROWDED);
    for (at, ingredient) in garden.ingredients.iter_mut().enumerate() {
        ingredient.max_sowings = 1 + (seed as usize + at) as u32 % 2;
    }
    garden
}

/// Of gardens with a few ways of each ingredient, which are soon decided.
#[test]
fn plans_of_few_ways_are_what_they_were() {
    let mut text = String::new();
    for seed in 0..60 {
        let garden = few::garden(seed);
        let ways = few::ways(&garden, seed);
        let (count, all) = (ways.all.len(), digits(format!("{ways:?}").as_bytes()));
        writeln!(text, "\n## garden {seed}, {count} ways: {all}").unwrap();
        let found = solve_where(&garden, &options(seed, AMPLE), |c| ways.all.contains(c));
        outcome(&mut text, &garden, found);
    }
    compare("few", text);
}

/// Compares what comes out of gardens, each with its seed, with a text. They are so small that time decides
/// nothing.
fn same(name: &str, gardens: impl Iterator<Item = (u64, Garden)>) {
    let mut text = String::new();
    for (seed, garden) in gardens {
        writeln!(text, "\n## garden {seed}").unwrap();
        candidates(&mut text, &garden);
        let Recorded { outcome, programs } = solve_and_record(&garden, &options(seed, AMPLE));
        for solved in &programs {
            let digits = digits(format!("{solved:?}").as_bytes());
            let (aim, steps) = (solved.result.aim, solved.steps);
            writeln!(text, "program of {aim:?} {digits}, {steps} steps").unwrap();
        }
        self::outcome(&mut text, &garden, outcome);
    }
    compare(name, text);
}

fn compare(name: &str, text: String) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("../snapshots");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(format!("unchanged-{name}"), text));
}

/// How many candidates there are, and a checksum of all that is known of them.
fn candidates(text: &mut String, garden: &Garden) {
    let found = Candidates::enumerate(garden);
    let (count, dropped) = (found.all.len(), found.dropped.len());
    let all = digits(format!("{found:?}").as_bytes());
    writeln!(text, "{count} candidates, {dropped} dropped: {all}").unwrap();
}

fn outcome(text: &mut String, garden: &Garden, outcome: Outcome) {
    match outcome {
        Outcome::Planned(plan) => planned(text, garden, plan),
        other => writeln!(text, "{}", digits(format!("{other:?}").as_bytes())).unwrap(),
    }
}

fn planned(text: &mut String, garden: &Garden, plan: Plan) {
    for aim in &plan.aims {
        write!(text, "{:?} {}..{}; ", aim.aim, aim.value, aim.bound).unwrap();
    }
    writeln!(text).unwrap();
    for planting in &plan.plantings {
        writeln!(text, "{}", line(planting)).unwrap();
    }
    let checked = check(garden, plan).unwrap();
    let replay = digits(format!("{:?}", checked.replay()).as_bytes());
    writeln!(text, "replay {replay}").unwrap();
}

/// A planting in a line.
fn line(planting: &Planting) -> String {
    let places = planting.places.iter().map(|place| {
        let last = place.first_strip + place.strips - 1;
        format!(" {}/{}-{last}", place.bed, place.first_strip)
    });
    let steps = planting.steps.iter().map(|step| {
        let days: Vec<Date> = match &step.when {
            When::Sessions(visits) => visits.iter().map(|visit| visit.date).collect(),
            When::Families(day) | When::Adult(day) => vec![*day],
            When::Daily { from, to } => vec![*from, *to],
        };
        let days: String = days.iter().map(|day| format!(" {day}")).collect();
        let minutes = step.minutes.0;
        format!(
            "; {:?} by {:?}{days}, {minutes}",
            step.kind,
            step.when.hands()
        )
    });
    format!(
        "{} {} {:?}, {} plants {} seeds {} flats {}{}:{}{}",
        planting.ingredient,
        planting.grades.join("+"),
        planting.method,
        planting.plants,
        planting.seeds,
        planting.flats_sown,
        planting.flats_kept,
        if planting.on_mat { " on the mat" } else { "" },
        places.collect::<String>(),
        steps.collect::<String>(),
    )
}
