//! More to choose never makes a plan worse: with two sowings of every ingredient, or with any grade that
//! is old enough, all aims, read in their order, come out at least as good as before, at the usual limit.
//! Against one sowing of each that holds whether they are proved or not; against the file's own mix, some
//! ingredients with two sowings and some with one, and its own grades, as far as both are proved.

use std::collections::BTreeSet;
use std::time::Duration;

use tureen::deadline::Deadline;
use tureen::garden::{Garden, GradeAt, Source, Team};
use tureen::model::{Options, USUAL_TIME};
use tureen::plan::{Aim, Plan};

use super::{Made, made_shortly, made_until};
use crate::random_gardens::make::{LARGER, Size, TINY, TINY_CHOICE, garden, open_garden};
use crate::scenarios;

/// The usual time, in a build that is some three times slower than the program: what ends a search are its steps.
const IN_TESTS: Duration = USUAL_TIME.saturating_mul(3);

/// The garden with two sowings of all that is sown, or more where it may have more.
fn sown_twice(garden: &Garden) -> Garden {
    let mut freed = garden.clone();
    for ingredient in &mut freed.ingredients {
        if ingredient.source == Source::Sown {
            ingredient.max_sowings = ingredient.max_sowings.max(2);
        }
    }
    freed
}

/// The garden with one sowing of everything.
fn sown_once(garden: &Garden) -> Garden {
    let mut fewer = garden.clone();
    for ingredient in &mut fewer.ingredients {
        ingredient.max_sowings = 1;
    }
    fewer
}

/// The garden in which every grade may grow everything that is sown.
fn with_open_grades(garden: &Garden) -> Garden {
    let mut freed = garden.clone();
    let all: Vec<Team> = garden.grade_positions().map(Team::from).collect();
    for ingredient in &mut freed.ingredients {
        if ingredient.source == Source::Sown {
            ingredient.teams.clone_from(&all);
        }
    }
    freed
}

/// True if a garden's grades are a choice that it has with open grades, too: then as many grades as can
/// be must grow something.
fn as_many_grades_as_can_be(garden: &Garden) -> bool {
    let all = garden.ingredients.iter().flat_map(|i| &i.teams);
    let grades: BTreeSet<GradeAt> = all.flat_map(|team| team.grades()).collect();
    grades.len() == with_open_grades(garden).most_grades()
}

/// The first aim in order in which a plan differs from another, if it is worse there. Where years may be
/// given back, those that are taken back after slack may differ, so later aims tell nothing.
fn worse(plan: &Plan, than: &Plan, concession_years: u32) -> Option<String> {
    let told = |aim: Aim| concession_years == 0 || aim <= Aim::Slack;
    let pairs = plan.aims.iter().zip(&than.aims);
    let mut pairs = pairs.take_while(|(a, _)| told(a.aim));
    let (has, had) = pairs.find(|(a, b)| (a.value - b.value).abs() > 1e-5)?;
    let better = (has.value > had.value) == has.aim.more_is_better();
    (!better).then(|| format!("{had:?} became {has:?}"))
}

/// What is wrong with the freed garden's plan, against that of the garden.
fn wrong(
    garden: &Garden,
    freed: &Garden,
    (concession_years, limit): (u32, Duration),
) -> Result<bool, String> {
    let options = || Options {
        concession_years,
        ..Options::until(Deadline::after(limit))
    };
    let Made::Plan(plan) = made_until(garden, &options()) else {
        return Ok(false);
    };
    match made_until(freed, &options()) {
        Made::Plan(free) => worse(&free, &plan, concession_years).map_or(Ok(true), Err),
        _ => Err("no plan any more".to_owned()),
    }
}

fn never_worse(gardens: impl Iterator<Item = Garden>, least: u32, limit: Duration) {
    let (mut compared, mut all) = (0, Vec::new());
    for (k, garden) in (0..).zip(gardens) {
        match wrong(&garden, &sown_twice(&garden), (k % 2, limit)) {
            Ok(planned) => compared += u32::from(planned),
            Err(words) => all.push(format!("{}: {words}", garden.name)),
        }
    }
    println!("{compared} compared");
    assert!(all.is_empty(), "{}", all.join("\n"));
    assert!(compared >= least, "only {compared} plans to compare");
}

fn gardens(size: &'static Size, seeds: std::ops::Range<u64>) -> impl Iterator<Item = Garden> {
    seeds.map(|seed| garden(seed, size))
}

#[test]
fn two_sowings_of_random_gardens() {
    never_worse(gardens(&TINY, 50_000..50_080), 40, IN_TESTS);
}

#[test]
fn two_sowings_of_random_gardens_with_open_grades() {
    never_worse(
        (50_000..50_030).map(|seed| open_garden(seed, &TINY)),
        10,
        IN_TESTS,
    );
}

/// The same with other freedom, with nothing given back and as far as both plans are proved.
fn proved_is_never_worse(
    gardens: impl Iterator<Item = Garden>,
    freed: impl Fn(&Garden) -> Garden,
    least: u32,
) {
    let mut compared = 0;
    for garden in gardens.filter(as_many_grades_as_can_be) {
        let Made::Plan(mut plan) = made_shortly(&garden) else {
            continue;
        };
        let Made::Plan(mut free) = made_shortly(&freed(&garden)) else {
            continue;
        };
        let both = plan.aims.iter().zip(&free.aims);
        let proved = both.take_while(|(a, b)| a.proved() && b.proved()).count();
        plan.aims.truncate(proved);
        free.aims.truncate(proved);
        assert_eq!(worse(&free, &plan, 0), None, "{}", garden.name);
        compared += u32::from(proved == Aim::of(&garden).count());
    }
    println!("{compared} compared with all aims");
    assert!(compared >= least, "only {compared} plans to compare");
}

/// The file's own mix of sowings, with its own grades against all of them.
#[test]
fn open_grades_of_random_gardens() {
    proved_is_never_worse(gardens(&TINY_CHOICE, 50_000..50_040), with_open_grades, 4);
}

/// All at once.
#[test]
fn two_sowings_and_open_grades_of_random_gardens() {
    let both = |garden: &Garden| with_open_grades(&sown_twice(garden));
    proved_is_never_worse(gardens(&TINY_CHOICE, 50_100..50_140), both, 2);
}

/// Against one sowing of everything: these are too crowded to be proved, and only that plan is what the
/// search begins from.
#[test]
fn two_sowings_of_larger_random_gardens() {
    never_worse(
        gardens(&LARGER, 50_000..50_008).map(|g| sown_once(&g)),
        2,
        USUAL_TIME,
    );
}

/// Against one sowing of everything, not only against what the file has.
#[test]
fn two_sowings_of_the_scenarios() {
    let load = |name: &&str| scenarios::load(name, "garden.toml");
    never_worse(scenarios::ALL.iter().map(load), 5, USUAL_TIME);
    never_worse(
        scenarios::ALL.iter().map(load).map(|g| sown_once(&g)),
        5,
        USUAL_TIME,
    );
}

/// The comparison finds what is worse, and only that.
#[test]
fn a_worse_plan_is_told() {
    let garden = scenarios::load("two-beds", "garden.toml");
    let Made::Plan(plan) = made_until(&garden, &Options::default()) else {
        panic!("no plan");
    };
    assert_eq!(worse(&plan, &plan, 0), None);
    for (at, aim) in plan.aims.iter().enumerate() {
        let mut other = plan.clone();
        other.aims[at].value += if aim.aim.more_is_better() { -1.0 } else { 1.0 };
        assert!(worse(&other, &plan, 0).is_some(), "{aim:?}");
        assert!(worse(&plan, &other, 0).is_none(), "{aim:?}");
        assert_eq!(worse(&other, &plan, 1).is_some(), aim.aim <= Aim::Slack);
    }
}
