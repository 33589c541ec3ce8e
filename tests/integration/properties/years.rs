//! Weather years only count: a record in which every year comes three times gives the same
//! value of every aim and three times the years. Of plans that are equally good it may be another,
//! for three times the years weigh otherwise in the solver; mostly it is the same one.

use tureen::calendar::{Horizon, plus_days};
use tureen::garden::Garden;
use tureen::plan::{Aim, Plan};
use tureen::weather::{Daily, Record};

use super::{Made, first_difference, made_shortly};
use crate::random_gardens::make::{TINY, garden};
use crate::support::weather::daily;

/// Days before the span that the program looks back.
const LEAD: i64 = 14;

/// Records of which the span reads, year after year, what the given years hold. Between the
/// spans, and before a year that began with the record, it is 10 C.
pub fn record_of(years: &[Vec<Daily>], leads: &[Vec<Daily>], horizon: Horizon) -> Record {
    use chrono::Datelike;
    let first_label = horizon.first().year() - years.len() as i32 + 1;
    let start = |k: usize| {
        let label = first_label + k as i32;
        let first = horizon.first();
        let begins = first
            .with_year(label)
            .or_else(|| first.pred_opt()?.with_year(label));
        plus_days(begins.unwrap(), -LEAD)
    };
    let filler = daily(5.0, 15.0);
    let mut days: Vec<Daily> = Vec::new();
    for (k, (year, lead)) in years.iter().zip(leads).enumerate() {
        let since = (start(k) - start(0)).num_days() as usize;
        assert!(days.len() <= since, "spans do not overlap");
        days.resize(since + LEAD as usize - lead.len(), filler);
        days.extend(lead);
        days.extend(year);
    }
    Record::new(start(0), days, true)
}

/// The years of a garden's record, and the days before each.
pub fn years_of(garden: &Garden) -> (Vec<Vec<Daily>>, Vec<Vec<Daily>>) {
    let years = garden.weather.years(garden.horizon());
    years
        .iter()
        .map(|year| (year.days.to_vec(), year.lead.to_vec()))
        .unzip()
}

/// Every entry `times` times, in a row.
fn repeated<T: Clone>(list: &[T], times: usize) -> Vec<T> {
    list.iter()
        .flat_map(|entry| std::iter::repeat_n(entry.clone(), times))
        .collect()
}

/// The plan of a garden in whose record every year comes so many times.
fn made_with(garden: &Garden, times: usize) -> Made {
    let (years, leads) = years_of(garden);
    let weather = record_of(
        &repeated(&years, times),
        &repeated(&leads, times),
        garden.horizon(),
    );
    let repeated = Garden {
        weather,
        ..garden.clone()
    };
    let found = repeated.weather.years(repeated.horizon());
    assert_eq!(found.len(), years.len() * times);
    assert!(
        found
            .chunks(times)
            .zip(&years)
            .all(|(same, year)| same.iter().all(|y| y.days == year))
    );
    made_shortly(&repeated)
}

/// The plan as if every year had come `times` times.
fn counted(mut plan: Plan, times: u32) -> Plan {
    plan.promise.weather_years *= times;
    plan.promise.whole_dish_years *= times;
    for ingredient in &mut plan.promise.ingredients {
        ingredient.ready_years *= times;
    }
    for result in &mut plan.aims {
        if matches!(
            result.aim,
            Aim::WorstIngredient | Aim::AllIngredients | Aim::WholeDish
        ) {
            result.value *= f64::from(times);
            result.bound *= f64::from(times);
        }
    }
    plan
}

#[test]
fn every_year_three_times_is_as_good_and_counts_three_times() {
    let (mut plans, mut same, mut wrong) = (0, 0, Vec::new());
    for seed in 31_000..31_040 {
        let garden = garden(seed, &TINY);
        let (once, thrice) = match (made_with(&garden, 1), made_with(&garden, 3)) {
            (Made::Plan(once), Made::Plan(thrice)) => (counted(once, 3), thrice),
            (Made::Open, _) | (_, Made::Open) => continue,
            (once, thrice) => {
                if once != thrice {
                    wrong.push(format!("seed {seed}: {once:?} {thrice:?}"));
                }
                continue;
            }
        };
        plans += 1;
        let years = |plan: &Plan| plan.promise.weather_years;
        if years(&once) != years(&thrice) || first_difference(&once, &thrice).is_some() {
            wrong.push(format!("seed {seed}:\n{once:?}\n{thrice:?}"));
        }
        same += usize::from(once.plantings == thrice.plantings);
    }
    println!("{same} of {plans} plans are the same");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(plans > 15, "only {plans} plans");
    assert!(
        same * 4 > plans * 3,
        "only {same} of {plans} plans are the same"
    );
}
