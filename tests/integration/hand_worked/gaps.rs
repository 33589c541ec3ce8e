//! A sowing that needs nobody in the break against one of the same harvest that does, by hand.

use tureen::candidates::{Candidates, Scope};
use tureen::garden::{Garden, SeedSize};
use tureen::model::{Options, Outcome, solve};
use tureen::pipeline;
use tureen::plan::{Aim, StepKind};

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::weather::{daily, steady_years};

/// A bean alone that is ripe after 45 days at 15 C, in years of 19 C: up in five days, and in 400 /
/// 14 = 29 more ripe; it holds for 60. Nobody is there from 3 to 11 April.
fn beans() -> Garden {
    let mut garden = tiny_garden();
    garden.weather = steady_years(&[daily(14.0, 24.0); 4]);
    garden.ingredients.truncate(1);
    let crop = &mut garden.ingredients[0].crop;
    crop.ripening.days_from_sowing = Some(45.0);
    crop.seed_size = SeedSize::Large;
    crop.picking.holds_in_ground_days = 60;
    garden
}

#[test]
fn a_sowing_that_needs_someone_in_the_break_makes_none_needless_that_does_not() {
    // Sown on 30 March and 1 April it is up on 6 April and takes the bed for fewer days than when
    // sown on 16 and 18 March, when it is up on 23 March; ripe on 3 and 5 May, or on 19 and 21
    // April, both are picked in the rounds of 11 May and 25 May.
    let garden = beans();
    let all = Candidates::enumerate(&garden);
    let sown = |from: &str, of: &Candidates| {
        let on = |c: &&_| first_sown(c) == Some(day(from));
        let own: Vec<_> = of.all.iter().filter(on).cloned().collect();
        own
    };
    let early = sown("2027-03-16", &all);
    let late = sown("2027-03-30", &all);
    assert!(early.iter().all(|c| c.gaps.is_empty()));
    assert!(late.iter().all(|c| c.gaps.len() == 1));
    // But for the gap the later one serves as well as some earlier one, which still is kept.
    let serves = |a: &tureen::candidates::Candidate, b: &tureen::candidates::Candidate| {
        a.ready.covers(&b.ready)
            && a.fragile <= b.fragile
            && a.by_others <= b.by_others
            && a.idle_weeks <= b.idle_weeks
            && a.bed_days.0 >= b.bed_days.0
            && a.bed_days.1 <= b.bed_days.1
    };
    assert!(early.iter().any(|b| late.iter().any(|a| serves(a, b))));
    let kept = all.without_needless(&garden, Scope::Everything);
    assert!(!sown("2027-03-16", &kept).is_empty());
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("no plan")
    };
    let alone = plan.aims.iter().find(|a| a.aim == Aim::UnattendedDays);
    assert_eq!(alone.map(|a| a.value), Some(0.0));
}

fn first_sown(candidate: &tureen::candidates::Candidate) -> Option<tureen::calendar::Date> {
    let mut rounds = candidate.steps.rounds();
    let sow = rounds.find(|(kind, _)| *kind == StepKind::Sow);
    sow.map(|(_, round)| round.first())
}

/// In one year of four it comes up, in the others it is too cold for the seed. Care is meant for the
/// year in which something may come of it, and candidates and checker mean the same.
#[test]
fn a_seedbed_is_cared_for_though_it_comes_up_in_few_years() {
    let mut garden = beans();
    let cold = daily(2.0, 6.0);
    garden.weather = steady_years(&[daily(14.0, 24.0), cold, cold, cold]);
    // Sown on 30 March and 1 April it is up on 6 April, in the break; and there is no other round.
    garden.school_year.start = day("2027-03-20");
    garden.school_year.terms[0].from = day("2027-03-20");
    garden.ingredients[0].crop.ripening.days_from_sowing = Some(60.0);
    let all = Candidates::enumerate(&garden);
    assert!(!all.all.is_empty());
    for c in &all.all {
        let in_time = first_sown(c) == Some(day("2027-03-30"));
        assert_eq!(c.gaps.len(), usize::from(in_time), "{c:?}");
    }
    let checked = pipeline::plan(&garden, &Options::default()).unwrap();
    let sown = checked.plan().plantings[0].steps[0].when.first();
    let in_time = sown == Some(day("2027-03-30"));
    assert_eq!(checked.replay().unattended.len(), usize::from(in_time));
    assert!(in_time, "{sown:?}");
}

/// A bed is free from its day on, that day included.
#[test]
fn a_bed_takes_a_sowing_on_the_first_day_on_which_it_is_free() {
    for (free, taken) in [
        ("2027-03-15", true),
        ("2027-03-16", true),
        ("2027-03-17", false),
    ] {
        let mut garden = beans();
        garden.beds[1].free_from = Some(day(free));
        let all = Candidates::enumerate(&garden);
        let in_b = |c: &tureen::candidates::Candidate| {
            let mut plots = c.plots.iter().map(|plot| &garden[all[plot].bed].id);
            plots.any(|bed| bed == "B")
        };
        let early: Vec<_> = all
            .all
            .iter()
            .filter(|c| first_sown(c) == Some(day("2027-03-16")))
            .collect();
        assert!(!early.is_empty());
        assert!(early.iter().all(|c| in_b(c) == taken), "free from {free}");
    }
}

/// The last class sows two days after the first, so the seedbed is watched two days longer: sown on 16 and 18
/// March, up on 21 and 23 March. Nobody is there from the second of these days on, or from the day after.
#[test]
fn a_seedbed_is_watched_until_what_was_sown_last_is_up() {
    for (from, gaps) in [
        ("2027-03-21", 1),
        ("2027-03-22", 1),
        ("2027-03-23", 1),
        ("2027-03-24", 0),
    ] {
        let mut garden = beans();
        let nobody = &mut garden.school_year.breaks[0];
        (nobody.from, nobody.to) = (day(from), day("2027-03-26"));
        let all = Candidates::enumerate(&garden);
        let mut early = all.all.iter();
        let early = early.find(|c| first_sown(c) == Some(day("2027-03-16")));
        assert_eq!(early.map(|c| c.gaps.len()), Some(gaps), "from {from}");
    }
}
