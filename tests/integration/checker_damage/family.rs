//! A crop family within its years: in the bed before the plan, and on a strip of the plan itself.

use tureen::checker::{Fault, Violation, check};
use tureen::garden::{
    BedAt, Begun, BegunAt, Garden, GradeAt, Method, Reached, Source, Spot, Strips,
};
use tureen::plan::{Place, Plan, Planting, StepKind};

use crate::support::crops::sown_crop;
use crate::support::day;
use crate::support::gardens::{bed, tiny_garden};
use crate::support::plans::{
    bare_plan, place, planting, promise, sessions, tiny_plan, tiny_tomato,
};

/// The faults of a plan about families.
fn families(garden: &Garden, plan: Plan) -> Vec<Fault> {
    let violations: Vec<Violation> = check(garden, plan).err().unwrap_or_default();
    let faults = violations.into_iter().map(|v| v.fault);
    let about = |f: &Fault| matches!(f, Fault::Rotation { .. } | Fault::FamilyAgain { .. });
    faults.filter(about).collect()
}

#[test]
fn candidates_and_checker_bar_a_bed_for_the_same_years() {
    let (mut barred, mut free) = (0, 0);
    for years_hard in 0..=6 {
        for grew in 2018..=2028 {
            let mut garden = tiny_garden();
            garden.ingredients[1].crop.rotation.years_hard = years_hard;
            garden.beds[0].grew = vec![(grew, vec!["nightshade".to_owned()])];
            let plan = tiny_plan(&garden);
            let crop = &garden.ingredients[1].crop;
            let strips = Strips::from_start(1);
            let tired = garden.is_tired_of((BedAt(0), strips), crop, day("2027-04-19"));
            let faults = families(&garden, plan);
            assert_eq!(tired, !faults.is_empty(), "{years_hard} years, {grew}");
            barred += u32::from(tired);
            free += u32::from(!tired);
        }
    }
    // A limit of n years bars the n years before this one and this one; of none it bars nothing.
    assert_eq!((barred, free), (2 + 3 + 4 + 5 + 6 + 7, 77 - 27));
}

/// Beans that are ripe 20 days after sowing, and two sowings of them; the first is off the bed on
/// 22 April.
fn two_sowings(places: [Place; 2]) -> (Garden, Vec<Planting>) {
    let mut garden = tiny_garden();
    garden.beds.push(bed("C", 4, 0));
    garden.ingredients[0].max_sowings = 2;
    garden.ingredients[0].crop = sown_crop("bean", 20.0);
    garden.ingredients[0].crop.picking.storage_days = 70;
    let dates = [
        (["2027-03-16", "2027-03-18"], ["2027-04-13", "2027-04-15"]),
        (["2027-04-27", "2027-04-29"], ["2027-05-25", "2027-05-27"]),
    ];
    let by = |kind, [a, b]: [&str; 2]| sessions(kind, &[("1a", a), ("1b", b)]);
    let sowing = |((sow, pick), place)| {
        let steps = vec![by(StepKind::Sow, sow), by(StepKind::Pick, pick)];
        planting("bean", Method::Direct, 48, vec![place], steps)
    };
    let sowings = dates.into_iter().zip(places).map(sowing);
    (garden, sowings.chain([tiny_tomato()]).collect())
}

fn plan(garden: &Garden, plantings: &[Planting]) -> Plan {
    let promises = vec![
        promise("bean", 3, 1.92, 2.88),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, plantings.to_vec(), promises, 3)
}

#[test]
fn a_family_does_not_follow_itself_on_a_strip_of_the_plan() {
    let (mut garden, plantings) = two_sowings([place("B", 1, 4), place("B", 1, 4)]);
    let of = |garden: &Garden| families(garden, plan(garden, &plantings));
    let found = of(&garden);
    let [
        Fault::FamilyAgain {
            bed,
            strip: 1,
            cleared,
            before,
            years_hard: 1,
            ..
        },
    ] = found.as_slice()
    else {
        panic!("{found:?}")
    };
    assert_eq!((bed.as_str(), before.number), ("B", 1));
    assert_eq!(*cleared, day("2027-04-22"));
    garden.ingredients[0].crop.rotation.years_hard = 0;
    assert_eq!(of(&garden), []);
    assert!(check(&garden, plan(&garden, &plantings)).is_ok());
}

#[test]
fn one_strip_in_common_is_enough_and_none_is_no_fault() {
    for (second, strip) in [(place("C", 1, 4), None), (place("B", 4, 4), Some(4))] {
        let (garden, plantings) = two_sowings([place("B", 1, 4), second]);
        let found = families(&garden, plan(&garden, &plantings));
        let strips: Vec<u32> = found
            .iter()
            .filter_map(|fault| match fault {
                Fault::FamilyAgain { strip, .. } => Some(*strip),
                _ => None,
            })
            .collect();
        assert_eq!(strips, strip.into_iter().collect::<Vec<u32>>());
    }
}

/// It is the later crop whose years count, and another family is none of its business.
#[test]
fn the_years_are_those_of_the_later_crop() {
    let (mut garden, mut plantings) = two_sowings([place("B", 1, 4), place("B", 1, 4)]);
    let mut other = garden.ingredients[0].clone();
    other.name = "pea".to_owned();
    other.teams = vec![GradeAt(0).into()];
    garden.ingredients.push(other);
    plantings[1].ingredient = "pea".to_owned();
    let count = |earlier, later, family: &str| {
        let mut garden = garden.clone();
        garden.ingredients[0].crop.rotation.years_hard = earlier;
        garden.ingredients[2].crop.rotation.years_hard = later;
        garden.ingredients[2].crop.rotation.family = family.to_owned();
        families(&garden, plan(&garden, &plantings)).len()
    };
    let same = garden.ingredients[0].crop.rotation.family.clone();
    assert_eq!(count(0, 2, &same), 1);
    assert_eq!(count(2, 0, &same), 0);
    assert_eq!(count(2, 2, "another"), 0);
}

/// What stands there at the start counts as well.
#[test]
fn a_family_does_not_follow_what_stood_there_at_the_start() {
    let (mut garden, mut plantings) = two_sowings([place("B", 1, 4), place("B", 1, 4)]);
    let mut standing = garden.ingredients[0].clone();
    standing.name = "pea".to_owned();
    standing.source = Source::Begun(BegunAt(0));
    standing.methods = vec![Method::Growing];
    garden.ingredients.push(standing);
    garden.begun.push(Begun {
        spot: Spot::Bed {
            bed: BedAt(1),
            strips: Strips::from_start(4),
        },
        reached: Reached::Sown,
        since: day("2027-03-01"),
    });
    plantings[0].ingredient = "pea".to_owned();
    plantings[0].method = Method::Growing;
    plantings[0].steps.remove(0);
    let found = families(&garden, plan(&garden, &plantings));
    assert!(
        matches!(found.as_slice(), [Fault::FamilyAgain { strip: 1, .. }]),
        "{found:?}"
    );
}

/// Where the family must not wait but should, the plan passes, and the replay tells of it; only where
/// both have a strip in common.
#[test]
fn a_family_that_follows_itself_too_soon_for_the_wish_is_told() {
    for (second, wished, told) in [
        (place("B", 1, 4), 1, true),
        (place("B", 1, 4), 0, false),
        (place("C", 1, 4), 1, false),
    ] {
        let (mut garden, plantings) = two_sowings([place("B", 1, 4), second]);
        let rotation = &mut garden.ingredients[0].crop.rotation;
        (rotation.years_hard, rotation.years_wished) = (0, wished);
        let checked = check(&garden, plan(&garden, &plantings)).unwrap();
        let missed = checked.replay().rotation_wishes_missed.iter();
        let own: Vec<_> = missed.filter(|miss| miss.ingredient == "bean").collect();
        let there: Vec<_> = own.iter().map(|m| (m.bed.as_str(), m.grew_in)).collect();
        assert_eq!(there, if told { vec![("B", 2027)] } else { vec![] });
    }
}
