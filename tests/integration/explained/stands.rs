//! What stands where: the places of a plan for the days of its plantings, and no strip twice at a time.

use std::collections::BTreeSet;

use tureen::checker::check;
use tureen::garden::{BedAt, StripAt};

use super::aim::plans;
use crate::random_gardens::make::TINY;

#[test]
fn stands_are_the_places_of_a_plan_and_none_is_taken_twice_at_a_time() {
    let (mut seen, mut in_turn) = (0, 0);
    for (seed, garden, plan) in plans(10_000..10_080, &TINY) {
        let checked = check(&garden, plan.clone()).unwrap();
        let stands = checked.stands(&garden);
        let days = checked.in_bed(&garden);
        let horizon = garden.horizon();
        for (at, planting) in plan.numbered() {
            let own = || stands.iter().filter(|stand| stand.holds(at));
            let mut wanted: BTreeSet<(BedAt, StripAt)> = BTreeSet::new();
            for place in &planting.places {
                let bed = garden.bed_with_id(&place.bed).unwrap();
                let numbers = place.first_strip..place.first_strip + place.strips;
                wanted.extend(numbers.map(|number| (bed, StripAt(number - 1))));
            }
            let found = own().flat_map(|stand| stand.strips.iter().map(|strip| (stand.bed, strip)));
            assert_eq!(found.collect::<BTreeSet<_>>(), wanted, "seed {seed}");
            for stand in own() {
                let dates = (horizon.date(stand.days.0), horizon.date(stand.days.1));
                assert_eq!(Some(dates), days[at.0], "seed {seed}");
            }
            seen += wanted.len();
        }
        for (k, a) in stands.iter().enumerate() {
            for b in stands[..k].iter().filter(|b| a.shares_strips(b)) {
                assert!(a.days.0 > b.days.1 || b.days.0 > a.days.1, "seed {seed}");
                in_turn += 1;
            }
        }
    }
    assert!(seen > 100, "{seen} strips are few");
    assert!(in_turn > 0, "no strip carries two in turn");
}
