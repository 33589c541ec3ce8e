//! A season that is under way against trying everything: a tiny garden is planned, something happens, and the rest is
//! planned again. No other choice of what is still open is ready in more years and moves fewer dates.

use std::collections::BTreeMap;

use tureen::calendar::{Date, plus_days};
use tureen::candidates::{Candidate, Candidates, PickDay, Thinning};
use tureen::checker::check;
use tureen::garden::{Care, Garden, IngredientAt, Printed, Turn};
use tureen::model::{Outcome, solve};
use tureen::pipeline::{Unfolded, unfold};
use tureen::plan::{Aim, Plan, StepKind, When};
use tureen::project::diary::{Diary, Entry, Happened};

use crate::random_gardens::begun::{garden_turned_over, garden_with_seedlings};
use crate::random_gardens::dice::Dice;
use crate::random_gardens::make::{TINY, garden};

use super::takes::Choice;
use super::{MOST_NODES, Same, Tried, compare, options, try_all};

/// So many gardens are looked at, of which in some seedlings stand on the shelf at the start or something in the beds.
const SEEDS: u64 = 400;
const SEEDS_WITH_SEEDLINGS: u64 = 200;
const SEEDS_TURNED_OVER: u64 = 60;

/// Who comes on which days.
type Days = BTreeMap<Turn, Vec<Date>>;

/// True if exactly one of some plantings goes on with each of an ingredient that have begun.
pub fn goes_on(garden: &Garden, at: IngredientAt, choices: &[Choice<'_>]) -> bool {
    let Some(season) = &garden.season else {
        return true;
    };
    season.begun_of(at).all(|(which, _)| {
        let same = choices.iter().filter(|c| c.candidate.given == Some(which));
        same.count() == 1
    })
}

/// How many years an aim that reached a value gives back: no more than the printed plan has fewer.
pub fn given_back(garden: &Garden, aim: Aim, value: f64, concession: u32) -> f64 {
    let Some(season) = &garden.season else {
        return concession.into();
    };
    let had: f64 = match aim {
        Aim::WorstIngredient => season.years.worst.into(),
        Aim::AllIngredients => season.years.all.into(),
        _ => season.years.dish.into(),
    };
    if value > had {
        (value - had).min(concession.into())
    } else {
        0.0
    }
}

/// Printed dates that a planting moves, and by how many days: from the one with which it goes on, else from the
/// nearest of its ingredient that has not begun.
pub fn moved(garden: &Garden, candidate: &Candidate) -> (u32, u32) {
    let Some(season) = &garden.season else {
        return (0, 0);
    };
    let from = |printed: &Printed| -> (u32, u32) {
        let mut sum = (0, 0);
        for kind in [
            StepKind::Sow,
            StepKind::PotUp,
            StepKind::PlantOut,
            StepKind::Thin,
            StepKind::Pick,
        ] {
            let (old, new) = (
                of_printed(printed, kind, season.as_of),
                of_candidate(candidate, kind, season.as_of),
            );
            let turns: Vec<Turn> = old.keys().chain(new.keys()).copied().collect();
            let turns: std::collections::BTreeSet<Turn> = turns.into_iter().collect();
            for turn in turns {
                let list = |days: &Days| days.get(&turn).cloned().unwrap_or_default();
                let (mut was, mut is) = (list(&old), list(&new));
                let both: Vec<Date> = was.iter().copied().filter(|day| is.contains(day)).collect();
                was.retain(|day| !both.contains(day));
                is.retain(|day| !both.contains(day));
                was.sort();
                is.sort();
                sum.0 += was.len().max(is.len()) as u32;
                for k in 0..was.len().min(is.len()) {
                    sum.1 += (is[k] - was[k]).num_days().unsigned_abs() as u32;
                }
            }
        }
        sum
    };
    match candidate.given {
        Some(which) => from(&season.printed[which.0]),
        None => {
            let own = season
                .printed
                .iter()
                .filter(|p| p.ingredient == candidate.ingredient);
            let waiting = own.filter(|p| p.steps().all(|s| s.first().unwrap() >= season.as_of));
            waiting.map(from).min().unwrap_or((0, 0))
        }
    }
}

fn of_printed(printed: &Printed, kind: StepKind, as_of: Date) -> Days {
    let steps: Vec<_> = match kind {
        StepKind::Sow => printed.sow.iter().collect(),
        StepKind::PotUp => printed.pot_up.iter().collect(),
        StepKind::PlantOut => printed.plant_out.iter().collect(),
        StepKind::Thin => printed.thin.iter().collect(),
        _ => printed.picks.iter().collect(),
    };
    let mut days = Days::new();
    for step in steps {
        if step.0.iter().all(|(_, day)| *day >= as_of) {
            for (turn, day) in &step.0 {
                days.entry(*turn).or_default().push(*day);
            }
        }
    }
    days
}

fn of_candidate(candidate: &Candidate, kind: StepKind, as_of: Date) -> Days {
    let steps = &candidate.steps;
    let round = |round: &tureen::candidates::Round| -> Vec<(Turn, Date)> {
        round
            .visits
            .iter()
            .map(|(class, day)| (Turn::Class(*class), *day))
            .collect()
    };
    let each: Vec<Vec<(Turn, Date)>> = match kind {
        StepKind::Sow => steps.sow.iter().map(round).collect(),
        StepKind::PotUp => steps.pot_up.iter().map(round).collect(),
        StepKind::PlantOut => steps.plant_out.iter().map(round).collect(),
        StepKind::Thin => steps
            .thin
            .iter()
            .map(|thin| match thin {
                Thinning::Round(own) => round(own),
                Thinning::Adult(day) => vec![(Turn::Adult, *day)],
                Thinning::Families(day) => vec![(Turn::Families, *day)],
            })
            .collect(),
        _ => steps
            .picks
            .iter()
            .map(|pick| match pick {
                PickDay::Round(own) => round(own),
                PickDay::Families(day) => vec![(Turn::Families, *day)],
            })
            .collect(),
    };
    let mut days = Days::new();
    for step in each
        .iter()
        .filter(|step| step.iter().all(|(_, day)| *day >= as_of))
    {
        for (turn, day) in step {
            days.entry(*turn).or_default().push(*day);
        }
    }
    days
}

/// Something that happens to a plan by a day: a loss of a part or of all, a step done later, a class that missed one, or
/// school that falls out.
fn news(plan: &Plan, on: Date, dice: &mut Dice) -> Option<Happened> {
    let begun = |p: &&tureen::plan::Planting| {
        let first = p
            .steps
            .iter()
            .filter(|s| !s.kind.is_span())
            .find_map(|s| s.when.first());
        first.is_some_and(|first| first < on)
    };
    let begun: Vec<_> = plan.plantings.iter().filter(begun).collect();
    if begun.is_empty() {
        return None;
    }
    let planting = begun[dice.below(begun.len())];
    let ingredient = planting.ingredient.clone();
    let step = planting.steps.iter().rfind(|s| {
        !s.kind.is_span() && !s.kind.is_harvest() && s.when.first().is_some_and(|first| first < on)
    });
    Some(match (dice.below(6), step.map(|s| (s.kind, &s.when))) {
        (0, Some((step, When::Sessions(visits)))) => Happened::Missed {
            step,
            ingredient,
            class: visits[dice.below(visits.len())].class.clone(),
        },
        (1, Some((step, When::Sessions(_)))) => Happened::Done {
            step,
            ingredient,
            class: None,
            count: None,
            kg: None,
        },
        // Closed from some days ago on; a lesson of this week or of one of the next.
        (2, _) => Happened::Closed {
            from: plus_days(on, -i64::from(dice.int(0, 9))),
            to: plus_days(on, i64::from(dice.int(0, 12))),
            care: [Care::Nobody, Care::Staff, Care::Families][dice.below(3)],
        },
        (3, Some((_, When::Sessions(visits)))) => Happened::NoLesson {
            class: visits[dice.below(visits.len())].class.clone(),
            day: plus_days(on, i64::from(dice.int(0, 20)) - 6),
        },
        (4, _) => Happened::Lost {
            ingredient,
            share: 0.3,
            cause: String::new(),
        },
        _ => Happened::Lost {
            ingredient,
            share: 1.0,
            cause: String::new(),
        },
    })
}

/// A tiny garden that was planned, and what has happened in it by a day in the middle of its season.
fn under_way(garden: &Garden, seed: u64, concession: u32) -> Option<Unfolded> {
    let Outcome::Planned(plan) = solve(garden, &options(concession)) else {
        return None;
    };
    let dice = &mut Dice::new(seed + 1_000);
    let first = plan
        .plantings
        .iter()
        .filter_map(|p| p.steps.first()?.when.first())
        .min()?;
    let on = plus_days(first, i64::from(dice.int(1, 70)));
    if on >= garden.feast.day {
        return None;
    }
    let entry = |what| Entry {
        on: plus_days(on, -1),
        by: None,
        what,
    };
    let what = match dice.chance(0.8) {
        true => news(&plan, plus_days(on, -1), dice)?,
        false => Happened::Words("Nothing".to_owned()),
    };
    let diary = Diary {
        entries: vec![(1, entry(what))],
        sections: 1,
    };
    unfold(garden, (&plan, None), &diary, on).unwrap()
}

/// What came of the gardens.
#[derive(Debug, Default)]
struct Seen {
    full: u32,
    none: u32,
    moved: u32,
    wrong: Vec<String>,
}

impl Seen {
    /// A plan that was made again passes the checker, and where nothing has happened it is there and moves nothing.
    fn looks_at(&mut self, seed: u64, unfolded: &Unfolded, found: &Outcome) {
        let nothing = unfolded.counted.is_empty();
        match found {
            Outcome::Planned(plan) => {
                if let Err(violations) = check(&unfolded.garden, plan.clone()) {
                    let news = &unfolded.counted;
                    self.wrong
                        .push(format!("seed {seed}: refused: {violations:?}; {news:?}"));
                }
                let mut aims = plan.aims.iter();
                let dates = aims.find(|r| r.aim == Aim::MovedDates).unwrap().value;
                self.moved += u32::from(dates > 0.0);
                if nothing && dates > 0.0 {
                    self.wrong
                        .push(format!("seed {seed}: {dates} dates move for nothing"));
                }
            }
            none if nothing => self.wrong.push(format!("seed {seed}: no plan: {none:?}")),
            _ => {}
        }
    }

    /// The plan is as good by every aim as the best of all that were tried.
    fn compares(&mut self, seed: u64, (tried, found): (&Tried, Outcome), unfolded: &Unfolded) {
        match (tried, found) {
            // Of what fits together without all in the pot no more is told than that all does not.
            (Tried::Together(_), Outcome::Impossible(_)) => self.none += 1,
            (_, found) => match compare(tried, found) {
                Ok(Same::Proved) => self.full += 1,
                Ok(Same::OutOfTime) => {}
                Err(words) => {
                    let news = &unfolded.counted;
                    self.wrong.push(format!("seed {seed}: {words}; {news:?}"));
                }
            },
        }
    }
}

/// Looks at the gardens of so many seeds.
fn all(seeds: u64, garden: impl Fn(u64) -> Garden) -> Seen {
    let mut seen = Seen::default();
    for seed in 0..seeds {
        let concession = (seed % 2) as u32;
        let Some(unfolded) = under_way(&garden(seed), seed, concession) else {
            continue;
        };
        let garden = &unfolded.garden;
        let found = solve(garden, &options(concession));
        seen.looks_at(seed, &unfolded, &found);
        let all = Candidates::enumerate(garden);
        if let Ok(tried) = try_all(garden, &all, concession, MOST_NODES) {
            seen.compares(seed, (&tried, found), &unfolded);
        }
    }
    println!(
        "{} planned, {} impossible, in {} dates move",
        seen.full, seen.none, seen.moved
    );
    let wrong = &seen.wrong;
    assert!(
        wrong.is_empty(),
        "{} of them:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    seen
}

#[test]
fn the_rest_of_a_season_is_planned_as_trying_everything_does() {
    let seen = all(SEEDS, |seed| garden(seed, &TINY));
    let Seen {
        full, none, moved, ..
    } = seen;
    assert!(
        full > 40 && none > 4 && moved > 10,
        "{full}, {none}, {moved}"
    );
}

/// The same of gardens in which seedlings stand on the shelf when the plan begins.
#[test]
fn begun_seedlings_go_on_as_trying_everything_does() {
    let seen = all(SEEDS_WITH_SEEDLINGS, |seed| {
        garden_with_seedlings(seed, &TINY)
    });
    assert!(seen.full > 10, "{seen:?}");
}

/// The same of gardens in which something stands in the beds when the plan begins.
#[test]
fn what_stood_in_beds_goes_on_as_trying_everything_does() {
    let seen = all(SEEDS_TURNED_OVER, |seed| garden_turned_over(seed, &TINY));
    assert!(seen.full > 10, "{seen:?}");
}
