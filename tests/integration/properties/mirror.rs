//! The south mirrors the north: the same garden on the other half of the earth, with every day
//! and its weather half a year (26 weeks) later, has the same plan half a year later.

use chrono::Datelike;
use tureen::calendar::{Date, plus_days};
use tureen::garden::Garden;
use tureen::plan::{Plan, When};
use tureen::units::{Hours, Latitude};
use tureen::weather::sun::day_length;

use super::years::{record_of, years_of};
use super::{Made, first_difference, is_proved, made_shortly};
use crate::random_gardens::make::{TINY, garden};

/// 26 weeks: weekdays stay what they are.
const HALF_A_YEAR: i64 = 182;

/// Below this day length crops stand still.
const STANDSTILL: Hours = Hours(10.0);

fn later(day: &mut Date) {
    *day = plus_days(*day, HALF_A_YEAR);
}

/// The garden with all dates half a year later, on the other half of the earth. What beds
/// grew is left out, since rotation counts calendar years and half a year may cross one.
fn mirrored(garden: &Garden) -> Garden {
    let mut other = garden.clone();
    other.latitude = Latitude(-garden.latitude.0);
    let (feast, year) = (&mut other.feast, &mut other.school_year);
    let feast_days = [&mut feast.day, &mut feast.deliver_by, &mut year.start];
    feast_days.into_iter().for_each(later);
    let maybe = [&mut feast.rain_date, &mut year.moves_up];
    maybe.into_iter().flatten().for_each(later);
    let terms = year.terms.iter_mut().flat_map(|t| [&mut t.from, &mut t.to]);
    let breaks = year
        .breaks
        .iter_mut()
        .flat_map(|b| [&mut b.from, &mut b.to]);
    terms
        .chain(breaks)
        .chain(&mut year.days_off)
        .chain(year.harvest_days.iter_mut().map(|harvest| &mut harvest.day))
        .for_each(later);
    let classes = other.grades.iter_mut().flat_map(|g| &mut g.classes);
    let slots = classes.flat_map(|c| &mut c.slots);
    slots.for_each(|slot| later(&mut slot.from));
    other.beds.iter_mut().for_each(|bed| {
        bed.grew.clear();
        bed.free_from.iter_mut().for_each(later);
    });
    other.begun.iter_mut().for_each(|b| later(&mut b.since));
    let patches = other.patches.iter_mut();
    patches
        .flat_map(|p| [&mut p.pick_from, &mut p.pick_to])
        .for_each(later);
    later(&mut other.shelf.from);
    other.shelf.until.iter_mut().for_each(later);
    let (years, leads) = years_of(garden);
    other.weather = record_of(&years, &leads, other.horizon());
    other
}

/// The plan with all dates half a year later.
fn mirrored_plan(mut plan: Plan) -> Plan {
    for step in plan.plantings.iter_mut().flat_map(|p| &mut p.steps) {
        match &mut step.when {
            When::Sessions(visits) => visits.iter_mut().for_each(|v| later(&mut v.date)),
            When::Families(day) | When::Adult(day) => later(day),
            When::Daily { from, to } => [from, to].into_iter().for_each(later),
        }
    }
    plan
}

/// True if the same days of both gardens are too short to grow in and long enough to bolt in.
/// FAO-56's sun is not quite symmetric, and half a year is not quite 182 days.
fn same_light(garden: &Garden, other: &Garden) -> bool {
    let bolting = garden.ingredients.iter().filter_map(|i| i.crop.bolting);
    let limits: Vec<Hours> = bolting.map(|b| b.day_length).chain([STANDSTILL]).collect();
    (0..garden.horizon().days()).all(|n| {
        let light = |garden: &Garden| {
            let ordinal = garden.horizon().date(n).ordinal();
            day_length(garden.latitude, ordinal)
        };
        let (here, there) = (light(garden), light(other));
        limits.iter().all(|h| (here < *h) == (there < *h))
    })
}

#[test]
fn half_the_earth_away_the_same_plan_half_a_year_later() {
    let (mut plans, mut same, mut other_light, mut wrong) = (0, 0, 0, Vec::new());
    for seed in 32_000..32_060 {
        let mut here = garden(seed, &TINY);
        here.beds.iter_mut().for_each(|bed| bed.grew.clear());
        let there = mirrored(&here);
        if !same_light(&here, &there) {
            other_light += 1;
            continue;
        }
        let (plan, other) = match (made_shortly(&here), made_shortly(&there)) {
            (Made::Plan(plan), Made::Plan(other)) => (mirrored_plan(plan), other),
            (Made::Open, _) | (_, Made::Open) => continue,
            (here, there) => {
                if here != there {
                    wrong.push(format!("seed {seed}: {here:?} {there:?}"));
                }
                continue;
            }
        };
        plans += 1;
        if let Some(difference) = first_difference(&plan, &other) {
            wrong.push(format!("seed {seed}: {difference:?}"));
        }
        same += usize::from(plan == other);
        if is_proved(&plan) && is_proved(&other) && plan != other {
            wrong.push(format!("seed {seed}: another plan"));
        }
    }
    println!("{same} of {plans} plans are the same; {other_light} gardens have other light");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(plans > 20, "only {plans} plans");
}
