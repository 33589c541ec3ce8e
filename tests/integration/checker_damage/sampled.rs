//! A seeded sample of changes to the saved plans of the scenarios: each is refused, or what it
//! makes is as sound by a reason that is looked at here, in names and dates, without the checker.
//! `DAMAGES=2000 cargo test sampled` tries so many of each plan.

use std::collections::BTreeMap;

use serde_json::Value;
use tureen::calendar::{Date, plus_days};
use tureen::checker::{check_saved, promise};
use tureen::garden::{Bed, Care, Garden, Ingredient, Source};
use tureen::plan::saved::{self, Since};
use tureen::plan::{Aim, Place, Plan, Planting, Step, StepKind, When};

use super::leaves::{changes, is_step, move_all, parts, read_and_check};
use crate::random_gardens::dice::Dice;
use crate::scenarios::planned;
use crate::support::thinning::Rows;

/// Plans that are damaged, and how many changes are tried of each unless DAMAGES says otherwise.
const SCENARIOS: [(&str, usize); 4] = [
    ("autumn-down-under", 300),
    ("nine-grades", 30),
    ("soup-day", 60),
    ("wrap-day", 60),
];

/// Why a plan with one change is as sound as before; `None` if no reason is known.
fn as_sound(garden: &Garden, was: &Plan, is: &Plan) -> Option<&'static str> {
    if was.plantings == is.plantings && was.promise == is.promise {
        return claims_less(was, is);
    }
    let mut pairs = was.plantings.iter().zip(&is.plantings);
    let at = pairs.position(|(was, is)| was != is)?;
    let (before, after) = (&was.plantings[at], &is.plantings[at]);
    let mut all_but_it = is.clone();
    all_but_it.plantings[at] = before.clone();
    if all_but_it != *was {
        return None;
    }
    if *after == with(before, |p| p.places.clone_from(&after.places)) {
        return stands_alike(garden, is, at).then_some("it stands on other strips, as good");
    }
    if *after == with(before, |p| p.on_mat = false) {
        return Some("off the mat it comes up in time, too");
    }
    if *after == with(before, |p| p.steps.clone_from(&after.steps)) {
        return steps_alike(garden, is, before, after);
    }
    None
}

fn with(planting: &Planting, change: impl Fn(&mut Planting)) -> Planting {
    let mut changed = planting.clone();
    change(&mut changed);
    changed
}

/// The same plan, or one that says less of its aims.
fn claims_less(was: &Plan, is: &Plan) -> Option<&'static str> {
    let known = |aim| was.aims.iter().find(|a| a.aim == aim);
    let less = is.aims.iter().all(|a| {
        known(a.aim).is_some_and(|k| {
            let weaker = match a.aim.more_is_better() {
                true => a.bound >= k.bound,
                false => a.bound <= k.bound,
            };
            // A year that was given back may be left out of the value too: then it is what the plan has.
            (a.value == k.value || Some(a.value) == promised(is, a.aim)) && weaker
        })
    });
    match was.aims == is.aims {
        true => Some("it is the same plan, with another checksum"),
        false => less.then_some("it says less of its aims"),
    }
}

/// The years of an aim that a plan promises, whatever was reached when it was made.
fn promised(plan: &Plan, aim: Aim) -> Option<f64> {
    let years = || plan.promise.ingredients.iter().map(|p| p.ready_years);
    let years = match aim {
        Aim::WorstIngredient => years().min()?,
        Aim::AllIngredients => years().sum(),
        Aim::WholeDish => plan.promise.whole_dish_years,
        _ => return None,
    };
    Some(f64::from(years))
}

/// The days on which a planting takes its strips, a week to clear them included; `None` if it is in
/// no bed.
fn days_in_bed(garden: &Garden, planting: &Planting) -> Option<(Date, Date)> {
    let ingredient = ingredient(garden, planting);
    let of = |kind| {
        planting
            .steps
            .iter()
            .filter(move |s: &&Step| s.kind == kind)
    };
    let begun = of(StepKind::PlantOut).chain(of(StepKind::Sow)).next();
    let from = match ingredient.source {
        Source::Begun(at) => garden[at].since,
        _ => begun?.when.first()?,
    };
    let picked = of(StepKind::Pick).filter_map(|s| s.when.last()).max()?;
    Some((from, plus_days(picked, 7)))
}

fn ingredient<'g>(garden: &'g Garden, planting: &Planting) -> &'g Ingredient {
    let mut all = garden.ingredients.iter();
    all.find(|i| i.name == planting.ingredient).unwrap()
}

fn bed<'g>(garden: &'g Garden, place: &Place) -> &'g Bed {
    garden.beds.iter().find(|bed| bed.id == place.bed).unwrap()
}

/// True if no other planting wants its strips and every bed of it suits.
fn stands_alike(garden: &Garden, plan: &Plan, at: usize) -> bool {
    let planting = &plan.plantings[at];
    let crop = &ingredient(garden, planting).crop;
    let (from, to) = days_in_bed(garden, planting).unwrap();
    let strips = |place: &Place| -> Vec<(String, u32)> {
        let strips = place.first_strip..place.first_strip + place.strips;
        strips.map(|strip| (place.bed.clone(), strip)).collect()
    };
    let own: Vec<(String, u32)> = planting.places.iter().flat_map(strips).collect();
    let twice = own
        .iter()
        .any(|s| own.iter().filter(|t| *t == s).count() > 1);
    let others = plan.plantings.iter().enumerate().filter(|(k, _)| *k != at);
    let taken = others.clone().any(|(_, other)| {
        let span = days_in_bed(garden, other);
        let family = ingredient(garden, other).crop.rotation.family == crop.rotation.family;
        let at_once = |(a, b): (Date, Date)| a <= to && from <= b || family;
        span.is_some_and(at_once)
            && other
                .places
                .iter()
                .flat_map(strips)
                .any(|s| own.contains(&s))
    });
    let at = |place: &Place| garden.bed_with_id(&place.bed).unwrap();
    let suits = planting.places.iter().all(|place| {
        let bed = bed(garden, place);
        let length = match crop.needs.trellis {
            true => bed.trellis_strips(),
            false => bed.strips(),
        };
        bed.soil.0 >= crop.needs.soil.0
            && bed.sun >= crop.needs.sun
            && bed.is_open_to(garden.team_with_ids(&planting.grades).unwrap())
            && bed.width == self::bed(garden, &planting.places[0]).width
            && garden
                .free_from(at(place), place.run())
                .is_none_or(|free| free <= from)
            && place.first_strip >= 1
            && place.first_strip + place.strips - 1 <= length
            && !garden.is_tired_of((at(place), place.run()), crop, from)
    });
    !twice && !taken && suits
}

/// Why other days of a step, or a step less, do no harm.
fn steps_alike(
    garden: &Garden,
    plan: &Plan,
    before: &Planting,
    after: &Planting,
) -> Option<&'static str> {
    if after.steps.len() < before.steps.len() {
        let lost = before.steps.iter().find(|s| !after.steps.contains(s))?;
        let only = *after == with(before, |p| p.steps.retain(|s| s != lost));
        return match lost.kind {
            StepKind::Thin if only => Some("thinning is free to be done or not"),
            StepKind::Pick if only => Some("the other picks lose no year"),
            _ => None,
        };
    }
    let moved = after
        .steps
        .iter()
        .zip(&before.steps)
        .position(|(a, b)| a != b)?;
    let (step, old) = (&after.steps[moved], &before.steps[moved]);
    let ordered = after
        .steps
        .windows(2)
        .all(|pair| pair[0].when.last() < pair[1].when.first());
    let same = (step.kind, step.minutes) == (old.kind, old.minutes);
    if !ordered || !same {
        return None;
    }
    match (&step.when, &old.when) {
        (When::Sessions(visits), When::Sessions(_)) => {
            let held = visits
                .iter()
                .all(|v| lesson_holds(garden, plan, &v.class, v.date));
            held.then_some("each class does it in another lesson of the round")
        }
        (When::Adult(day), When::Adult(_)) => {
            let school = garden.school_year.school_is_in(*day);
            (Rows::of(garden).thinned_in_time(after) && school)
                .then_some("an adult thins on another school day")
        }
        (When::Families(day), When::Families(_)) => {
            let holiday = garden.school_year.break_on(*day);
            let there = holiday.is_some_and(|b| b.care == Care::Families);
            match step.kind {
                StepKind::Pick => {
                    there.then_some("families pick on another day on which they care")
                }
                StepKind::Thin => (Rows::of(garden).thinned_in_time(after) && there)
                    .then_some("families thin on another day on which they care"),
                _ => None,
            }
        }
        _ => None,
    }
}

/// True if the class meets on the day, and for as long as all steps that it has then take.
fn lesson_holds(garden: &Garden, plan: &Plan, class: &str, day: Date) -> bool {
    let mut classes = garden.grade_positions().flat_map(|g| garden.classes_of(g));
    let at = classes.find(|at| garden.class(*at).name == class).unwrap();
    let works = plan.plantings.iter().flat_map(|p| &p.steps).filter(|step| {
        matches!(&step.when, When::Sessions(v) if v.iter().any(|v| v.class == class && v.date == day))
    });
    let minutes: f64 = works.map(|step| step.minutes.0).sum();
    garden.sessions(at).contains(&day) && minutes <= garden.session_minutes(at, day).0 + 1e-6
}

/// A saved plan to be damaged.
struct Sound<'a> {
    garden: &'a Garden,
    plan: &'a Plan,
    document: Value,
    /// All its values with their pointers, and all its texts but dates.
    values: Vec<(String, Value)>,
    strings: Vec<String>,
}

/// What became of a change that passed: why it is as sound, or else what was done.
type Passed = Result<&'static str, String>;

impl Sound<'_> {
    /// A change of one value, by chance.
    fn change_one(&self, dice: &mut Dice) -> Option<Passed> {
        let (at, was) = &self.values[dice.below(self.values.len())];
        let all = changes(was, &self.strings);
        if all.is_empty() {
            return None;
        }
        let is = &all[dice.below(all.len())];
        let mut damaged = self.document.clone();
        *damaged.pointer_mut(at).unwrap() = is.clone();
        let found = read_and_check(self.garden, &damaged.to_string())?;
        assert!(found.plan().aims.is_empty(), "{at} {is}");
        let is_now: Plan = serde_json::from_value(damaged["plan"].clone()).unwrap();
        let why = as_sound(self.garden, self.plan, &is_now);
        Some(why.ok_or_else(|| format!("{at} was {was}, is {is}")))
    }

    /// A step moved by up to four weeks with the promise adapted, as a clever editor would.
    fn move_one(&self, dice: &mut Dice) -> Option<Passed> {
        let steps: Vec<&(String, Value)> =
            self.values.iter().filter(|(at, _)| is_step(at)).collect();
        let (at, _) = steps[dice.below(steps.len())];
        let days = i64::from(dice.int(1, 28)) * dice.one(&[1, -1]);
        let mut damaged = self.document.clone();
        move_all(damaged.pointer_mut(at).unwrap(), days);
        let plan: Plan = serde_json::from_value(damaged["plan"].clone()).unwrap();
        let promise = promise(self.garden, &plan);
        let aims = Vec::new();
        let plan = Plan {
            promise,
            aims,
            ..plan
        };
        check_saved(self.garden, plan.clone(), Since::Edited).ok()?;
        let was = Plan {
            promise: plan.promise.clone(),
            aims: Vec::new(),
            unseen: None,
            plantings: self.plan.plantings.clone(),
        };
        let why = as_sound(self.garden, &was, &plan);
        Some(why.ok_or_else(|| format!("{at} moved by {days} days")))
    }
}

#[test]
fn what_passes_of_a_sample_of_damages_is_as_sound() {
    let asked = std::env::var("DAMAGES")
        .ok()
        .map(|n| n.parse::<usize>().unwrap());
    let (mut changes, mut moves) = (BTreeMap::new(), BTreeMap::new());
    let mut unseen: Vec<String> = Vec::new();
    for (name, usual) in SCENARIOS {
        let (_, garden, checked) = planned().iter().find(|(n, ..)| *n == name).unwrap();
        let plan = checked.plan();
        let document: Value = serde_json::from_str(&saved::write(garden, plan)).unwrap();
        let (values, strings) = parts(&document);
        let sound = Sound {
            garden,
            plan,
            document,
            values,
            strings,
        };
        let dice = &mut Dice::new(12);
        for k in 0..asked.unwrap_or(usual) {
            let (found, list) = match k % 4 {
                3 => (sound.move_one(dice), &mut moves),
                _ => (sound.change_one(dice), &mut changes),
            };
            match found.unwrap_or(Ok("refused")) {
                Ok(why) => *list.entry(why).or_insert(0) += 1,
                Err(done) => unseen.push(format!("{name}: {done}")),
            }
        }
    }
    println!("changes: {changes:#?}; steps moved: {moves:#?}");
    assert!(unseen.is_empty(), "{unseen:#?}");
    // A sample of which nothing passes, or nothing is refused, would tell nothing.
    assert!(
        changes.len() > 3 && changes["refused"] > 100,
        "{changes:#?}"
    );
}
