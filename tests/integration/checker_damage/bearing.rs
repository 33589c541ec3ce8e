//! A crop that bears on because somebody keeps it picked: the checker sees where nobody does.

use chrono::Weekday;
use tureen::checker::{self, Fault, Quantity, check};
use tureen::garden::{Break, Care, Garden, WhilePicked};
use tureen::growth::Unready;
use tureen::plan::Plan;

use super::refused;
use crate::support::day;
use crate::support::gardens::{class, tiny_garden};
use crate::support::plans::{bare_plan, sessions, tiny_tomato};
use crate::support::weather::{daily, steady_years};

/// The tiny garden with its tomato alone, which bears for five days if nobody picks, and for 40 if somebody does every
/// week. In the year of 19 C it is ripe on 18 May, and is picked on 31 May.
pub fn garden() -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients.remove(0);
    let picking = &mut garden.ingredients[0].crop.picking;
    picking.holds_in_ground_days = 5;
    picking.while_picked = Some(WhilePicked {
        every_days: 7,
        bears_days: 40,
    });
    garden
}

/// The same with a break from 19 to 28 May.
fn with_break(care: Care) -> Garden {
    let mut garden = garden();
    garden.school_year.breaks.push(Break {
        name: "Late break".to_owned(),
        from: day("2027-05-19"),
        to: day("2027-05-28"),
        care,
    });
    garden
}

pub fn plan(garden: &Garden) -> Plan {
    let mut plan = bare_plan(garden, vec![tiny_tomato()], Vec::new(), 0);
    plan.promise = checker::promise(garden, &plan);
    plan
}

/// Whether the tomato is ready in the year of 19 C.
fn ready(garden: &Garden) -> Result<(), Unready> {
    let checked = check(garden, plan(garden)).unwrap();
    checked.replay().ingredients[0].ready[1]
}

#[test]
fn it_is_ready_where_somebody_picks() {
    assert_eq!(ready(&garden()), Ok(()));
    assert_eq!(ready(&with_break(Care::Staff)), Ok(()));
    assert_eq!(ready(&with_break(Care::Families)), Ok(()));
    assert_eq!(ready(&with_break(Care::Nobody)), Err(Unready::Past));
    let mut never = garden();
    never.ingredients[0].crop.picking.while_picked = None;
    assert_eq!(ready(&never), Err(Unready::Past));
}

#[test]
fn a_promise_that_counts_on_nobody_is_found() {
    let plan = plan(&garden());
    let fault = |f: &Fault| {
        matches!(
            f,
            Fault::Number {
                what: Quantity::ReadyYears,
                ..
            }
        )
    };
    for care in [Care::Staff, Care::Families] {
        assert!(check(&with_break(care), plan.clone()).is_ok(), "{care:?}");
    }
    let violations = refused(&with_break(Care::Nobody), plan);
    assert!(
        violations.iter().any(|v| fault(&v.fault)),
        "{violations:#?}"
    );
}

#[test]
fn it_is_told_who_has_to_pick_and_in_how_many_years_that_counts() {
    // Ripe on 18 and 29 May and 6 June in the three years in which it is ripe at all.
    let garden = garden();
    let checked = check(&garden, plan(&garden)).unwrap();
    let [kept] = checked.replay().kept_picked.as_slice() else {
        panic!("one planting")
    };
    assert_eq!((kept.from, kept.to), (day("2027-05-29"), day("2027-06-07")));
    assert_eq!(kept.counts, 1);
}

/// A second class does all four days later, and both pick in the weeks from 24 and 31 May. What is picked on 24 May does not
/// keep for the 18 days until the feast: in years of 19 C the part of the first class fails, though that of the second,
/// ripe on 22 May, is picked on 28 May only because it was kept picked. In the one year of 15 C both are picked within
/// five days of ripeness.
#[test]
fn a_year_counts_only_if_every_part_is_ready() {
    let mut garden = garden();
    let warm = daily(14.0, 24.0);
    garden.weather = steady_years(&[daily(10.0, 20.0), warm, warm, warm]);
    let second = class("2b", 2, Weekday::Fri, 1, day("2027-03-05"));
    garden.grades[1].classes.push(second);
    let mut tomato = tiny_tomato();
    let kind = |at: usize| tomato.steps[at].kind;
    let both = |at, a, b| (at, sessions(kind(at), &[("2a", a), ("2b", b)]));
    let steps = [
        both(0, "2027-03-08", "2027-03-12"),
        both(1, "2027-03-29", "2027-04-02"),
        both(3, "2027-04-19", "2027-04-23"),
        both(4, "2027-05-24", "2027-05-28"),
        both(5, "2027-05-31", "2027-06-04"),
    ];
    for (at, step) in steps {
        tomato.steps[at] = step;
    }
    let mut plan = bare_plan(&garden, vec![tomato], Vec::new(), 0);
    plan.promise = checker::promise(&garden, &plan);
    let checked = check(&garden, plan).unwrap_or_else(|found| panic!("{found:#?}"));
    let ready = &checked.replay().ingredients[0].ready;
    let fails = Err(Unready::DoesNotKeep);
    assert_eq!(*ready, [Ok(()), fails, fails, fails]);
    let [kept] = checked.replay().kept_picked.as_slice() else {
        panic!("one planting")
    };
    assert_eq!(kept.counts, 0);
}
