//! What runs out first where not everything can be in the pot, by hand in the tiny garden: its bean
//! wants 3 strips (0.5 kg, 0.24 kg a strip), its tomato 4 strips (1 kg, 0.5 kg two strips) and 3 flats
//! (a seed for each of 10 children, 4 cells a flat).

use tureen::garden::{
    BedAt, Begun, BegunAt, Garden, GradeAt, IngredientAt, Method, Reached, Source, Spot, Strips,
};
use tureen::model::{Options, Outcome, Pressure, solve};
use tureen::units::Metres;

use crate::support::day;
use crate::support::gardens::tiny_garden;

const BEAN: IngredientAt = IngredientAt(0);
const TOMATO: IngredientAt = IngredientAt(1);

/// The tiny garden with one bed of so many strips, the first four with a trellis.
fn one_bed(strips: u32) -> Garden {
    let mut garden = tiny_garden();
    garden.beds.truncate(1);
    garden.beds[0].length = Metres(f64::from(strips) * 0.3);
    garden
}

/// What presses in a garden; nothing if it has a plan.
fn pressure(garden: &Garden) -> Vec<Pressure> {
    match solve(garden, &Options::default()) {
        Outcome::Impossible(why) => why.pressure,
        Outcome::Planned(_) => Vec::new(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_flats_of_the_least_shares_are_told_where_there_are_fewer() {
    for flats in 0..=4 {
        let mut garden = tiny_garden();
        garden.shelf.flats = flats;
        let short = Pressure::Shelf {
            wanted: 3,
            flats,
            parts: vec![(TOMATO, 3)],
        };
        let expected = if flats < 3 { vec![short] } else { vec![] };
        assert_eq!(pressure(&garden), expected, "{flats} flats");
    }
}

#[test]
fn the_strips_of_the_least_shares_are_told_where_all_stand_there_at_once() {
    // Both stand there in the middle of May, whenever they are sown.
    let found = pressure(&one_bed(6));
    let [
        Pressure::Beds {
            wanted,
            strips,
            week,
            parts,
        },
    ] = found.as_slice()
    else {
        panic!("{found:?}")
    };
    assert_eq!((*wanted, *strips), (7, 6));
    assert_eq!(*parts, [(TOMATO, 4), (BEAN, 3)]);
    assert!(week.is_some());
    assert_eq!(pressure(&one_bed(7)), []);
    // By itself it has no way at all, so there is no week.
    let mut garden = one_bed(2);
    garden.ingredients.truncate(1);
    let alone = Pressure::Beds {
        wanted: 3,
        strips: 2,
        week: None,
        parts: vec![(BEAN, 3)],
    };
    assert_eq!(pressure(&garden), [alone]);
}

#[test]
fn a_family_of_which_a_strip_carries_one_is_told() {
    let family = |garden: &Garden| {
        let mut found = pressure(garden).into_iter();
        found.find(|p| matches!(p, Pressure::Family { .. }))
    };
    let mut garden = one_bed(5);
    let mut pea = garden.ingredients[BEAN.0].clone();
    (pea.name, pea.teams) = ("pea".to_owned(), vec![GradeAt(1).into()]);
    garden.ingredients[1] = pea;
    let both = Pressure::Family {
        family: "bean".to_owned(),
        wanted: 6,
        strips: 5,
        parts: vec![(BEAN, 3), (IngredientAt(1), 3)],
    };
    assert_eq!(family(&garden), Some(both));
    garden.ingredients[1].crop.rotation.family = "pea".to_owned();
    assert_eq!(family(&garden), None);
}

/// A strip on which one of the family stands already is none for the others, and what stands there wants no other.
#[test]
fn what_stands_already_keeps_its_strips_to_itself() {
    let strips = |strips: u32| {
        let mut garden = one_bed(strips);
        for name in ["pea", "early pea"] {
            let mut other = garden.ingredients[BEAN.0].clone();
            (other.name, other.teams) = (name.to_owned(), vec![GradeAt(1).into()]);
            garden.ingredients.push(other);
        }
        garden.ingredients.remove(TOMATO.0);
        let early = &mut garden.ingredients[2];
        (early.source, early.methods) = (Source::Begun(BegunAt(0)), vec![Method::Growing]);
        // 48 beans of 20 g on 4 strips are more than half of a kilogram.
        let spot = Spot::Bed {
            bed: BedAt(0),
            strips: Strips::from_start(4),
        };
        garden.begun.push(Begun {
            spot,
            reached: Reached::Sown,
            since: day("2027-03-01"),
        });
        let mut found = pressure(&garden).into_iter();
        found.find(|p| matches!(p, Pressure::Family { .. }))
    };
    let both = Pressure::Family {
        family: "bean".to_owned(),
        wanted: 6,
        strips: 5,
        parts: vec![(BEAN, 3), (IngredientAt(1), 3)],
    };
    assert_eq!(strips(9), Some(both));
    assert_eq!(strips(10), None);
}
