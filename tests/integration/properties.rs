//! What holds whatever the garden and the weather: warmth hastens, more room or freedom never hurts, the
//! south mirrors the north, weather years only count, and the order of a file means nothing.

mod freedom;
mod mirror;
mod more;
mod sections;
mod warmth;
mod years;

use std::time::Duration;

use tureen::checker::check;
use tureen::deadline::Deadline;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{AimResult, Plan};

/// What is not proved by then is not compared further.
const SHORT: Duration = Duration::from_secs(2);

/// What the program makes of a garden.
#[derive(Debug, PartialEq)]
enum Made {
    /// A plan that passes the checker.
    Plan(Plan),
    /// Proved impossible.
    Impossible,
    /// Neither in the time allowed.
    Open,
}

/// What comes of a garden.
fn made(garden: &Garden, concession_years: u32, time_limit: Duration) -> Made {
    let options = Options {
        deadline: Deadline::after(time_limit),
        concession_years,
    };
    made_until(garden, &options)
}

/// The same with options whose time has begun.
fn made_until(garden: &Garden, options: &Options) -> Made {
    match solve(garden, options) {
        Outcome::Planned(plan) => match check(garden, plan) {
            Ok(checked) => Made::Plan(checked.plan().clone()),
            Err(violations) => panic!("{}: {violations:?}", garden.name),
        },
        Outcome::Impossible(why) if why.proved => Made::Impossible,
        Outcome::Impossible(_) | Outcome::OutOfTime => Made::Open,
        Outcome::TooMany => panic!("{}: too many", garden.name),
        Outcome::Failed(words) => panic!("{}: {words}", garden.name),
    }
}

/// The plan of a small garden with nothing given back.
fn made_shortly(garden: &Garden) -> Made {
    made(garden, 0, SHORT)
}

/// True if every aim is proved.
fn is_proved(plan: &Plan) -> bool {
    plan.aims.iter().all(AimResult::proved)
}

/// The first aim in order in which two plans differ. Aims after one that is not proved say
/// nothing; of that one itself, no value may pass the other's bound.
fn first_difference<'a>(one: &'a Plan, other: &'a Plan) -> Option<(&'a AimResult, &'a AimResult)> {
    let pairs = one.aims.iter().zip(&other.aims);
    let open = |(a, b): &(&AimResult, &AimResult)| !a.proved() || !b.proved();
    let proved = pairs.clone().position(|pair| open(&pair));
    let differ = |(a, b): &(&AimResult, &AimResult)| (a.value - b.value).abs() > 1e-5;
    let found = pairs
        .clone()
        .take(proved.unwrap_or(usize::MAX))
        .find(differ);
    let passes = |(a, b): &(&AimResult, &AimResult)| {
        let sign = if a.aim.more_is_better() { 1.0 } else { -1.0 };
        let past = |value: f64, bound: f64| sign * (value - bound) > 1e-5;
        past(a.value, b.bound) || past(b.value, a.bound)
    };
    found.or_else(|| pairs.clone().nth(proved?).filter(passes))
}
