//! The days on which a row may be thinned, and the years in which a planting must be ready: every
//! day and every number of years is tried.

use tureen::calendar::days_between;
use tureen::checker::{DayLimit, Fault, Subject, check, promise};
use tureen::garden::{Break, Care, Garden};
use tureen::plan::{Plan, StepKind, When};

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{
    bare_plan, fill_in, place, sessions, step, tiny_bean, tiny_plan, tiny_tomato,
};
use crate::support::weather::{daily, steady_years};

/// The days on which the bean is thinned by others and the plan passes. It is sown on 16 and 18 March, by a
/// class each, and comes up 5, 5, 6 and 9 days later in the four years: in the median 6 days. It is thinned from 8 to
/// 28 days after that, from 30 March to 19 April what the first class has sown, from 1 to 21 April what the
/// second has.
fn passing(garden: &Garden, by: impl Fn(tureen::calendar::Date) -> When) -> Vec<String> {
    let mut found = Vec::new();
    for day in days_between(day("2027-03-01"), day("2027-06-11")) {
        let mut plan = tiny_plan(garden);
        plan.plantings[0].steps[1] = step(StepKind::Thin, by(day));
        match check(garden, plan) {
            Ok(_) => found.push(day.format("%d.%m.").to_string()),
            Err(violations) => assert!(!violations.is_empty()),
        }
    }
    found
}

#[test]
fn a_row_is_thinned_when_all_of_it_is_up_for_so_many_days_and_on_no_other_day() {
    let mut garden = tiny_garden();
    // Weekdays but those of the break from 5 to 9 April.
    let expected = [
        "01.04.", "02.04.", "12.04.", "13.04.", "14.04.", "15.04.", "16.04.", "19.04.",
    ];
    assert_eq!(passing(&garden, When::Adult), expected);
    // Families, in a break that begins before it is time, and in one that is over when it is.
    garden.school_year.breaks[0].care = Care::Families;
    for (from, to) in [("2027-03-23", "2027-03-26"), ("2027-03-31", "2027-04-02")] {
        garden.school_year.breaks.push(Break {
            name: "Spring days".to_owned(),
            from: day(from),
            to: day(to),
            care: Care::Families,
        });
    }
    let expected = [
        "01.04.", "02.04.", "05.04.", "06.04.", "07.04.", "08.04.", "09.04.",
    ];
    assert_eq!(passing(&garden, When::Families), expected);
}

/// Each class thins what it has sown.
#[test]
fn classes_thin_each_in_its_time() {
    let garden = tiny_garden();
    for (days, passes) in [
        (["2027-03-23", "2027-03-25"], false),
        (["2027-03-30", "2027-04-01"], true),
        (["2027-04-13", "2027-04-15"], true),
        (["2027-04-20", "2027-04-22"], false),
    ] {
        let mut plan = tiny_plan(&garden);
        plan.plantings[0].steps[1] = sessions(StepKind::Thin, &[("1a", days[0]), ("1b", days[1])]);
        fill_in(&garden, &mut plan.plantings[0]);
        let violations = check(&garden, plan).err().unwrap_or_default();
        assert_eq!(violations.is_empty(), passes, "{days:?}: {violations:?}");
    }
}

/// What the plan breaks on a day on which an adult thins the bean.
fn thinned_on(garden: &Garden, mut plan: Plan, day: tureen::calendar::Date) -> Vec<Fault> {
    plan.plantings[0].steps[1] = step(StepKind::Thin, When::Adult(day));
    let violations = check(garden, plan).err().unwrap_or_default();
    let faults = violations.into_iter().map(|v| v.fault);
    let of_thinning = |fault: &Fault| {
        let limit = DayLimit::Thinning;
        matches!(fault, Fault::Day { limit: found, .. } if *found == limit)
    };
    faults.filter(of_thinning).collect()
}

#[test]
fn rows_sown_five_weeks_apart_are_never_thinned_on_one_day() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[0].steps[0] =
        sessions(StepKind::Sow, &[("1a", "2027-03-02"), ("1b", "2027-04-08")]);
    for day in days_between(day("2027-03-09"), day("2027-05-10")) {
        assert_eq!(thinned_on(&garden, plan.clone(), day).len(), 1, "{day}");
    }
}

/// The rows of the first class are up on 22 March. With a pick on 20 April, 29 days later, they are
/// thinned within 19 days of these: until 10 April.
#[test]
fn nothing_is_thinned_in_the_last_third_before_the_pick() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    let early = sessions(
        StepKind::Pick,
        &[("1a", "2027-04-20"), ("1b", "2027-04-22")],
    );
    plan.plantings[0].steps.insert(2, early);
    for (on, faults) in [("2027-04-02", 0), ("2027-04-10", 0), ("2027-04-12", 1)] {
        let found = thinned_on(&garden, plan.clone(), day(on));
        assert_eq!(found.len(), faults, "{on}: {found:?}");
    }
}

/// A garden of so many years, in as many of which, as of 19 C, bean and tomato get ripe; all
/// others are of 11 C, in which nothing does.
fn hoping(warm: usize, years: usize) -> Garden {
    let year = |k| match k < warm {
        true => daily(14.0, 24.0),
        false => daily(6.0, 16.0),
    };
    let mut garden = tiny_garden();
    garden.weather = steady_years(&(0..years).map(year).collect::<Vec<_>>());
    garden
}

/// The tiny plan with what it can promise in a garden, and nothing said of aims.
fn promising(garden: &Garden, plan: Plan) -> Plan {
    let aims = Vec::new();
    let plan = Plan { aims, ..plan };
    let promise = promise(garden, &plan);
    Plan { promise, ..plan }
}

/// The faults of a plan that are about too few years: whose, the fewest that would do, and how many
/// there are. There are no others.
fn too_rarely(garden: &Garden, plan: Plan) -> Vec<(String, usize, usize)> {
    let violations = check(garden, promising(garden, plan))
        .err()
        .unwrap_or_default();
    let told = violations.iter().map(|v| match &v.fault {
        Fault::TooRarely {
            of, expected, got, ..
        } => match of {
            Subject::Planting(planting) => (format!("{planting:?}"), *expected, *got),
            Subject::Ingredient(name) => (name.clone(), *expected, *got),
            other => panic!("{other:?}"),
        },
        other => panic!("{other:?}"),
    });
    told.collect()
}

#[test]
fn what_is_ready_in_fewer_than_a_tenth_of_the_years_is_refused() {
    for (years, least) in [
        (1, 1),
        (9, 1),
        (10, 1),
        (11, 2),
        (20, 2),
        (21, 3),
        (30, 3),
        (31, 4),
    ] {
        for warm in 0..=least {
            let garden = hoping(warm, years);
            let found = too_rarely(&garden, tiny_plan(&garden));
            let expected = if warm < least { 2 } else { 0 };
            assert_eq!(found.len(), expected, "{warm} of {years}: {found:?}");
            assert!(found.iter().all(|(_, e, got)| (*e, *got) == (least, warm)));
        }
    }
}

#[test]
fn a_pick_that_comes_too_soon_in_every_year_is_refused_whatever_is_promised() {
    // At 19 C the bean is ripe on 30 April and 2 May at the soonest.
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    let bean = &mut plan.plantings[0];
    bean.steps.remove(3);
    bean.steps[2] = sessions(
        StepKind::Pick,
        &[("1a", "2027-04-27"), ("1b", "2027-04-29")],
    );
    bean.steps[3] = crate::support::plans::from_to(StepKind::Cure, "2027-04-30", "2027-05-02");
    fill_in(&garden, &mut plan.plantings[0]);
    let found = too_rarely(&garden, plan);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!((found[0].1, found[0].2), (1, 0));
}

#[test]
fn several_sowings_are_held_to_it_each_and_together() {
    // The first is ready at 15 and 19 C, the second at 19 C alone; each gives less than the least
    // share. Of 30 years 25 are of 15 C and `warm` of 19 C.
    for (warm, expected) in [(2, 2), (3, 0)] {
        let mut garden = tiny_garden();
        garden.ingredients[0].max_sowings = 2;
        let year = |k| match k {
            k if k < warm => daily(14.0, 24.0),
            k if k < 28 => daily(10.0, 20.0),
            _ => daily(6.0, 16.0),
        };
        garden.weather = steady_years(&(0..30).map(year).collect::<Vec<_>>());
        let mut first = tiny_bean();
        first.plants = 24;
        first.places = vec![place("B", 1, 2)];
        first.steps.remove(1);
        let mut second = first.clone();
        second.places = vec![place("B", 3, 2)];
        second.steps[0] = sessions(StepKind::Sow, &[("1a", "2027-03-30"), ("1b", "2027-04-01")]);
        let plan = bare_plan(&garden, vec![first, second, tiny_tomato()], Vec::new(), 0);
        let found = too_rarely(&garden, plan);
        assert_eq!(found.len(), expected, "{found:?}");
        assert!(found.iter().all(|(_, e, got)| (*e, *got) == (3, warm)));
    }
}
