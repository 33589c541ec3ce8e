//! A crop that bears on because somebody keeps it picked: the checker sees where nobody does.

use tureen::checker::{self, Fault, Quantity, check};
use tureen::garden::{Break, Care, Garden, WhilePicked};
use tureen::growth::Unready;
use tureen::plan::Plan;

use super::refused;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{bare_plan, tiny_tomato};

/// The tiny garden with its tomato alone, which bears for five days if nobody picks, and for 40 if somebody does every
/// week. In the year of 19 C it is ripe on 18 May, and is picked on 31 May.
fn garden() -> Garden {
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

fn plan(garden: &Garden) -> Plan {
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
