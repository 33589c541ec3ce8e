//! How many ready years a step in the next round may lose: one in ten, no more.

use tureen::checker::{bearable, check, promise};
use tureen::plan::{Plan, PlantingAt, StepAt};

use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;
use crate::support::weather::{daily, steady_years};

#[test]
fn one_ready_year_in_ten_may_be_lost() {
    let years = [0, 1, 9, 10, 18, 19, 20, 27, 30, 39, 40];
    assert_eq!(years.map(bearable), [0, 0, 0, 1, 1, 1, 2, 2, 3, 3, 4]);
}

#[test]
fn a_sowing_that_loses_two_years_of_eighteen_is_without_slack() {
    // Sown a round later, on 30 March and 1 April, the bean is ripe on 14 and 16 May at 19 C, but at
    // 15 C on 29 and 31 May, after the last pick: so many years of 15 C it loses.
    for (lost, fragile) in [(1, false), (2, true)] {
        let year = |k| match k < lost {
            true => daily(10.0, 20.0),
            false => daily(14.0, 24.0),
        };
        let mut garden = tiny_garden();
        garden.weather = steady_years(&(0..18).map(year).collect::<Vec<_>>());
        let aims = Vec::new();
        let plan = Plan {
            aims,
            ..tiny_plan(&garden)
        };
        let promise = promise(&garden, &plan);
        assert_eq!(promise.whole_dish_years, 18);
        let checked = check(&garden, Plan { promise, ..plan }).unwrap();
        let sowing = StepAt {
            planting: PlantingAt(0),
            step: 0,
        };
        let found = checked.replay().fragile.contains(&sowing);
        assert_eq!(found, fragile, "{lost} of 18");
    }
}
