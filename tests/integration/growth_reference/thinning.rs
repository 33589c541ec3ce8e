//! The days on which rows are thinned, worked out by hand.

use tureen::garden::Thinning;
use tureen::growth::{Emergence, ThinningDays};

const TEN_TO_TWENTY: Thinning = Thinning {
    after: 10,
    before: 20,
};

fn up(usual: usize, late: usize) -> Option<Emergence> {
    Some(Emergence { usual, late })
}

#[test]
fn the_usual_and_the_late_day_are_of_the_years_in_which_it_comes_up() {
    let of = |days: &[Option<usize>]| Emergence::of(days.iter().copied());
    assert_eq!(of(&[]), None);
    assert_eq!(of(&[None, None]), None);
    assert_eq!(of(&[Some(7), None]), up(7, 7));
    assert_eq!(of(&[Some(9), Some(5), None, Some(7)]), up(7, 9));
    // Of eleven years the later six hold the median; ten of eleven are up by day 20, in the last on day 50.
    let years = [30, 12, 11, 13, 10, 14, 20, 16, 15, 17, 50].map(Some);
    assert_eq!(of(&years), up(15, 30));
    let thirty: Vec<Option<usize>> = (1..=30).map(Some).collect();
    assert_eq!(of(&thirty), up(16, 27));
}

#[test]
fn the_span_is_counted_from_coming_up_and_waits_for_late_years() {
    for (emergence, first_pick, span) in [
        // From 10 to 20 days after day 40.
        (up(40, 44), 200, (50, 60)),
        // The late years are up on day 52: not before the day after, and 10 days after still.
        (up(40, 52), 200, (53, 62)),
        // 24 days until the pick: within 16 of these.
        (up(40, 44), 64, (50, 56)),
        // 15 days until the pick: within 10 of these, which leaves one day.
        (up(40, 44), 55, (50, 50)),
        // The pick comes before it could be thinned.
        (up(40, 44), 54, (50, 49)),
        (up(40, 44), 30, (50, 40)),
    ] {
        let days = ThinningDays::of(TEN_TO_TWENTY, &[emergence], first_pick);
        assert_eq!(days.of_all(), Some(span), "{emergence:?} {first_pick}");
        assert_eq!(days.are_there(), span.0 <= span.1);
        for day in 0..100 {
            let missed = (day < span.0 || day > span.1).then_some((day, span));
            assert_eq!(days.missed_by(&[day]), missed);
        }
    }
}

#[test]
fn every_class_thins_its_own_rows_and_others_thin_all() {
    let days = ThinningDays::of(TEN_TO_TWENTY, &[up(40, 40), up(44, 44)], 200);
    assert_eq!(days.of_all(), Some((54, 60)));
    assert_eq!(days.missed_by(&[50, 64]), None);
    assert_eq!(days.missed_by(&[64, 50]), Some((64, (50, 60))));
    assert_eq!(days.missed_by(&[57]), None);
    assert_eq!(days.missed_by(&[52]), Some((52, (54, 64))));
    // Two classes sowed and three thin: the third thins what the first sowed.
    assert_eq!(days.missed_by(&[50, 64, 60]), None);
    assert_eq!(days.missed_by(&[50, 64, 61]), Some((61, (50, 60))));
    // A part that never comes up asks for nothing.
    let one = ThinningDays::of(TEN_TO_TWENTY, &[up(40, 40), None], 200);
    assert_eq!(one.of_all(), Some((50, 60)));
    assert_eq!(ThinningDays::of(TEN_TO_TWENTY, &[None], 200).of_all(), None);
}
