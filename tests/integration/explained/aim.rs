//! The steps without slack are those that the aim of that name counts.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock};
use std::time::Duration;

use tureen::checker::check;
use tureen::deadline::Deadline;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{Aim, Plan};

use crate::random_gardens::make::{LARGER, Size, TINY, garden};

/// The plans of some random gardens; several tests look at the same ones, so each is made once.
pub fn plans(
    seeds: std::ops::Range<u64>,
    size: &Size,
) -> impl Iterator<Item = (u64, Garden, Plan)> {
    seeds.filter_map(move |seed| {
        let garden = garden(seed, size);
        let plan = plan_of((seed, *size), &garden)?;
        Some((seed, garden, plan))
    })
}

/// A plan once it is made; `None` where there is none.
type Made = Arc<OnceLock<Option<Plan>>>;

/// Which random garden.
type Case = (u64, Size);

/// The plan of a garden.
fn plan_of(case: Case, garden: &Garden) -> Option<Plan> {
    static MADE: Mutex<BTreeMap<Case, Made>> = Mutex::new(BTreeMap::new());
    let made = Arc::clone(MADE.lock().unwrap().entry(case).or_default());
    let plan = made.get_or_init(|| {
        let options = Options::until(Deadline::after(Duration::from_secs(5)));
        match solve(garden, &options) {
            Outcome::Planned(plan) => Some(plan),
            _ => None,
        }
    });
    plan.clone()
}

/// The program counts steps without slack while it looks for a plan, the checker by moving each
/// step of the finished plan.
#[test]
fn the_aim_counts_the_steps_that_the_checker_finds() {
    let (mut plans_seen, mut fragile) = (0, 0);
    let tiny = plans(10_000..10_100, &TINY);
    for (seed, garden, plan) in tiny.chain(plans(0..8, &LARGER)) {
        let slack = plan.aims.iter().find(|a| a.aim == Aim::Slack).unwrap();
        let said = slack.value;
        let checked = check(&garden, plan).unwrap();
        let found = checked.replay().fragile.len();
        assert!(
            (said - found as f64).abs() < 1e-6,
            "seed {seed}: {said}, {found}"
        );
        plans_seen += 1;
        fragile += found;
    }
    assert!(plans_seen > 50 && fragile > 50, "{plans_seen}, {fragile}");
}
