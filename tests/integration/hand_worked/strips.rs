//! Strips: people count from 1, the program from 0, and every way between goes through one place.

use tureen::garden::{BedAt, StripAt, Strips};
use tureen::plan::{Place, PlantingAt, Stand};

fn strips(first: u32, count: u32) -> Strips {
    Strips {
        first: StripAt(first),
        count,
    }
}

#[test]
fn the_first_strip_is_number_one() {
    assert_eq!(StripAt(0).number(), 1);
    assert_eq!(StripAt::numbered(1), Some(StripAt(0)));
    assert_eq!(StripAt::numbered(0), None);
    assert_eq!(StripAt(6).to_string(), "7");
    for at in (0..50).map(StripAt) {
        assert_eq!(StripAt::numbered(at.number()), Some(at));
    }
}

#[test]
fn a_place_of_a_plan_is_the_same_strips_there_and_back() {
    for run in [strips(0, 1), strips(3, 4), strips(9, 2)] {
        let place = Place::of("7", run);
        assert_eq!(
            (place.first_strip, place.strips),
            (run.first.number(), run.count)
        );
        assert_eq!(
            (place.run(), place.last_number()),
            (run, run.last().number())
        );
    }
}

#[test]
fn a_place_that_begins_before_the_bed_has_only_the_strips_that_there_are() {
    let place = Place {
        bed: "7".to_owned(),
        first_strip: 0,
        strips: 3,
    };
    assert_eq!(place.run(), strips(0, 2));
    assert_eq!(strips(8, 5).within(10), strips(8, 2));
    assert_eq!(strips(12, 5).within(10).count, 0);
}

#[test]
fn neighbours_are_one_run() {
    let free = [0, 1, 2, 5, 7, 8].into_iter().map(StripAt);
    let runs = [strips(0, 3), strips(5, 1), strips(7, 2)];
    assert_eq!(Strips::runs(free), runs);
    let all: Vec<u32> = runs[2].iter().map(|strip| strip.0).collect();
    assert_eq!(all, [7, 8]);
}

#[test]
fn strips_meet_where_they_have_one_in_common() {
    for (a, b, meets) in [
        (strips(0, 3), strips(2, 1), true),
        (strips(0, 3), strips(3, 1), false),
        (strips(4, 2), strips(0, 9), true),
    ] {
        assert_eq!(a.meets(b), meets, "{a:?} {b:?}");
        assert_eq!(b.meets(a), meets, "{b:?} {a:?}");
        assert_eq!(a.iter().any(|strip| b.has(strip)), meets, "{a:?} {b:?}");
    }
}

#[test]
fn stands_share_strips_of_one_bed_at_whatever_time() {
    let stand = |bed: usize, strips: Strips, days| Stand {
        bed: BedAt(bed),
        strips,
        days,
        plantings: vec![PlantingAt(0), PlantingAt(2)],
    };
    let first = stand(0, strips(0, 4), (10, 20));
    assert!(first.shares_strips(&stand(0, strips(3, 4), (30, 40))));
    assert!(!first.shares_strips(&stand(1, strips(3, 4), (10, 20))));
    assert!(first.is_on(10) && first.is_on(20) && !first.is_on(21));
    assert!(first.holds(PlantingAt(2)) && !first.holds(PlantingAt(1)));
}
