//! Flats on the shelf and its mat, day by day and as the model shares them out, by hand.

use tureen::candidates::{Candidate, Candidates, Round, ShelfDays, greatest_use};
use tureen::garden::{Garden, GradeAt};
use tureen::model::{Options, Outcome, solve};
use tureen::plan::Plan;
use tureen::units::Celsius;

use crate::support::day;
use crate::support::gardens::tiny_garden;

#[test]
fn flats_stand_there_from_sowing_to_planting_out() {
    let days = ShelfDays {
        sown: 10,
        potted: (20, 22),
        out: 30,
        warm_until: Some(14),
    };
    let on = |sown, kept| move |day: usize| days.flats_on(day, sown, kept);
    // More after potting up, and fewer: while the classes pot up both may stand there.
    let found: Vec<u32> = [9, 10, 19, 20, 22, 23, 30, 31].map(on(2, 5)).into();
    assert_eq!(found, [0, 2, 2, 5, 5, 5, 5, 0]);
    let found: Vec<u32> = [9, 10, 19, 20, 22, 23, 30, 31].map(on(5, 2)).into();
    assert_eq!(found, [0, 5, 5, 5, 5, 2, 2, 0]);
    let warm = [9, 10, 14, 15].map(|day| days.warm_on(day));
    assert_eq!(warm, [false, true, true, false]);
    let spans: Vec<(usize, usize)> = days.spans().collect();
    assert_eq!(spans, [(10, 19), (20, 22), (23, 30), (10, 14)]);
    // Not potted up and in no warmth: one span.
    let plain = ShelfDays {
        potted: (31, 31),
        warm_until: None,
        ..days
    };
    assert_eq!(plain.spans().collect::<Vec<_>>(), [(10, 30)]);
    assert_eq!([10, 30, 31].map(|day| plain.flats_on(day, 2, 5)), [2, 2, 0]);
    assert!(!plain.warm_on(10));
}

/// The tiny garden in years that are warm enough, in which the tomato is raised for three weeks or more.
fn raised(weeks: (u32, u32)) -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients.remove(0);
    let indoor = garden.ingredients[0].crop.indoor.as_mut().unwrap();
    (indoor.weeks_lo, indoor.weeks_hi) = weeks;
    garden.shelf.flats = 20;
    garden.shelf.warm_flats = 20;
    garden
}

fn days(from: &Round, to: &Round) -> i64 {
    (to.first() - from.last()).num_days()
}

/// Class 2a meets every Monday: potted up two weeks after sowing at the soonest, and planted out ten
/// days after that, that is, in the second week.
#[test]
fn seedlings_are_potted_up_as_soon_and_as_late_as_they_may() {
    let all = Candidates::enumerate(&raised((4, 6)));
    let found = all.all.iter().filter_map(|c| {
        let steps = &c.steps;
        let (sow, pot, out) = (
            steps.sow.as_ref()?,
            steps.pot_up.as_ref()?,
            steps.plant_out.as_ref()?,
        );
        Some((days(sow, out), days(sow, pot), days(pot, out)))
    });
    let mut found: Vec<(i64, i64, i64)> = found.collect();
    found.sort_unstable();
    found.dedup();
    let expected = [
        (28, 14, 14),
        (35, 14, 21),
        (35, 21, 14),
        (42, 14, 28),
        (42, 21, 21),
        (42, 28, 14),
    ];
    assert_eq!(found, expected);
}

/// With a second class in the same week the last pots up on its day, and the first plants out on the second
/// Monday after: from Thursday eleven days, from Friday just ten. From a Wednesday they are twelve.
#[test]
fn the_last_class_pots_up_ten_days_before_the_first_plants_out() {
    use chrono::Weekday::{Fri, Thu, Wed};
    for (weekday, least) in [(Wed, 12), (Thu, 11), (Fri, 10)] {
        let mut garden = raised((4, 6));
        let mut second = garden.grades[1].classes[0].clone();
        second.name = "2b".to_owned();
        second.slots[0].day = weekday;
        garden.grades[1].classes.push(second);
        let all = Candidates::enumerate(&garden);
        let gaps = all.all.iter().filter_map(|c| {
            let (pot, out) = (c.steps.pot_up.as_ref()?, c.steps.plant_out.as_ref()?);
            Some(days(pot, out))
        });
        assert_eq!(gaps.min(), Some(least), "{weekday}");
    }
}

/// Two kinds of tomato, one for each grade, on trellis of eight strips each.
fn two_kinds(flats: u32) -> Garden {
    let mut garden = raised((6, 6));
    for bed in &mut garden.beds {
        bed.length = tureen::units::Metres(2.4);
        bed.trellis = bed.length;
        bed.grew.clear();
    }
    for grade in &mut garden.grades {
        grade.classes.truncate(1);
        let class = &mut grade.classes[0];
        class.children = 2;
        class.slots[0].every_weeks = 1;
    }
    let tomato = &mut garden.ingredients[0];
    tomato.least_share.0 = 0.25;
    tomato.crop.rotation.years_hard = 0;
    // An ordinary year brings no more than a poor one, so every block counts up to the target.
    tomato.crop.yields.expected = tomato.crop.yields.low;
    let mut second = tomato.clone();
    second.name = "other".to_owned();
    second.crop.rotation.family = "other".to_owned();
    second.teams = vec![GradeAt(0).into()];
    garden.ingredients.push(second);
    garden.shelf.flats = flats;
    garden
}

fn plan(garden: &Garden) -> Plan {
    match solve(garden, &Options::default()) {
        Outcome::Planned(plan) => plan,
        other => panic!("{other:?}"),
    }
}

/// Each flat holds four pots. As much as the shelf allows is grown of both: what more flats would bring
/// is known from trying every number of blocks of each.
#[test]
fn a_shelf_that_is_too_small_for_all_is_filled() {
    let roomy = Candidates::enumerate(&two_kinds(20));
    let levels = |at: usize| {
        let mut own = roomy.all.iter().filter(|c| c.ingredient.0 == at);
        let own: &Candidate = own.next().unwrap();
        let blocks = own.amounts.blocks.0..=own.amounts.blocks.1;
        let most = |b: u32| {
            let level = own.amounts.level(b).unwrap();
            level.sown.max(level.kept)
        };
        blocks.map(|b| (b, most(b))).collect::<Vec<_>>()
    };
    let (one, other) = (levels(0), levels(1));
    assert!(one.len() > 2 && one.first().map(|l| l.1) < one.last().map(|l| l.1));
    for flats in 2..=8 {
        let pairs = one
            .iter()
            .flat_map(|a| other.iter().map(move |b| (a, b)))
            .filter(|(a, b)| a.1 + b.1 <= flats);
        // The least share first, then both together.
        let best = pairs.map(|(a, b)| (a.0.min(b.0), a.0 + b.0)).max();
        let Some(best) = best else { continue };
        let plan = plan(&two_kinds(flats));
        let blocks: Vec<u32> = plan.plantings.iter().map(|p| p.plants / 2).collect();
        let found = (blocks.iter().copied().min(), blocks.iter().sum::<u32>());
        assert_eq!(found, (Some(best.0), best.1), "{flats} flats: {blocks:?}");
    }
}

#[test]
fn the_greatest_use_counts_as_many_as_may_be_sown() {
    let mut garden = tiny_garden();
    let all = Candidates::enumerate(&garden).all;
    let first = |at: usize| all.iter().find(|c| c.ingredient.0 == at).unwrap().clone();
    let (bean, tomato) = (first(0), first(1));
    let uses = [
        (&bean, 3),
        (&bean, 5),
        (&bean, 4),
        (&tomato, 7),
        (&tomato, 0),
    ];
    let mut list = Vec::new();
    for (candidate, used) in uses {
        let mut candidate = candidate.clone();
        candidate.idle_weeks = used;
        list.push(candidate);
    }
    let mut greatest = |sowings: u32| {
        garden.ingredients[0].max_sowings = sowings;
        greatest_use(&garden, &list, |c| c.idle_weeks)
    };
    assert_eq!([1, 2, 3, 4].map(&mut greatest), [12, 16, 19, 19]);
}

/// The tiny tomato is raised on the mat; a shelf that is lent or not yet free takes none.
#[test]
fn the_shelf_is_used_on_its_days_only() {
    let starts = |garden: &Garden| {
        let all = Candidates::enumerate(garden).all;
        let raised = all.iter().filter(|c| c.shelf.is_some());
        let sown = raised.filter_map(|c| {
            let steps = &c.steps;
            Some((
                steps.sow.as_ref()?.first(),
                steps.plant_out.as_ref()?.last(),
            ))
        });
        let (first, last): (Vec<_>, Vec<_>) = sown.unzip();
        (first.into_iter().min(), last.into_iter().max())
    };
    // Planted out on 12 April it would harden off in the break.
    let (first, last) = starts(&tiny_garden());
    assert_eq!(first, Some(day("2027-03-08")));
    let from = |from: &str| {
        let mut garden = tiny_garden();
        garden.shelf.from = day(from);
        starts(&garden).0
    };
    assert_eq!(from("2027-03-08"), Some(day("2027-03-08")));
    assert_eq!(from("2027-03-09"), Some(day("2027-03-15")));
    let until = |until: &str| {
        let mut garden = tiny_garden();
        garden.shelf.until = Some(day(until));
        starts(&garden).1
    };
    assert!(last > Some(day("2027-04-19")), "{last:?}");
    assert_eq!(until("2027-04-19"), Some(day("2027-04-19")));
    assert_eq!(until("2027-04-18"), None);
}

/// Two sowings of the same days, one on the mat and one beside it, are two plantings: where they were taken for
/// one, a later step of the decision lost one of them, and the plan gave half of what it promised.
#[test]
fn a_planting_on_the_mat_is_another_than_one_beside_it() {
    let mut garden = raised((4, 6));
    garden.shelf.room = garden.ingredients[0].crop.indoor.unwrap().warm_below - Celsius(1.0);
    let all = Candidates::enumerate(&garden).all;
    let on_mat = |c: &Candidate| c.shelf.is_some_and(|shelf| shelf.warm_until.is_some());
    let mut pairs = 0;
    for warm in all.iter().filter(|c| on_mat(c)) {
        assert!(warm.is_same_planting(&warm.clone()));
        let beside = all.iter().filter(|c| !on_mat(c) && c.steps == warm.steps);
        for beside in beside {
            assert!(!warm.is_same_planting(beside));
            pairs += 1;
        }
    }
    assert!(pairs > 0);
}
