//! The watering list: a row for each week in which something stands, and what belongs to the
//! weeks of a break.

use std::collections::BTreeSet;

use chrono::{Datelike, Weekday};

use crate::calendar::{Date, days_between, monday_of, plus_days};
use crate::checker::{WaterNeed, Watering};
use crate::garden::{Bed, BedAt, Break, Care, Store};
use crate::plan::When;
use crate::units::Litres;

use super::kept_picked::{Picker, Turn};
use super::order::natural;
use super::space::in_week;
use super::{Facts, places};

/// One row: a week, or weeks in a row that need next to nothing.
pub struct Row<'a> {
    /// The Monday of its first week.
    pub monday: Date,
    /// All beds together; `None` where nothing stands in them.
    pub all: Option<WaterNeed>,
    /// The beds that are used at some time, in the order of the garden; of several weeks the most.
    pub beds: Vec<Option<WaterNeed>>,
    /// What belongs to it besides.
    pub note: Option<Note<'a>>,
}

/// What belongs to a row besides its water.
pub enum Note<'a> {
    /// A week of a break.
    Break(BreakWeek<'a>),
    /// The row is that of all weeks until this day, and what it tells is the most of each.
    Until(Date),
}

/// A week of the plan that lies in a break.
pub struct BreakWeek<'a> {
    /// The break.
    pub pause: &'a Break,
    /// Which week of the break it is, from 1.
    pub number: usize,
    /// How many it has.
    pub of: usize,
    /// What families pick in it, day by day.
    pub picks: Vec<BreakPick<'a>>,
    /// Of these, what is frozen on the same day.
    pub frozen: Vec<&'a str>,
    /// What whoever cares in it keeps picked, so that it goes on bearing.
    pub kept_picked: Vec<&'a str>,
    /// The ingredients whose seedbeds need a look every day.
    pub damp: Vec<&'a str>,
    /// True if seedlings stand on the shelf.
    pub seedlings: bool,
}

/// What families pick on a day of a break.
pub struct BreakPick<'a> {
    /// The ingredient.
    pub ingredient: &'a str,
    /// The day.
    pub day: Date,
    /// The beds, in the order of their names; none for a patch.
    pub beds: Vec<&'a str>,
}

impl BreakWeek<'_> {
    /// True if something is to be done beside watering the beds.
    fn asks_for_more(&self) -> bool {
        let lists = [
            self.picks.is_empty(),
            self.kept_picked.is_empty(),
            self.damp.is_empty(),
        ];
        self.seedlings || lists.contains(&false)
    }
}

/// Less water in a week is told as none.
const NOTHING: Litres = Litres(2.5);

/// A break in which families are asked to water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked<'a> {
    /// The break.
    pub pause: &'a Break,
    /// Its weeks in which there is something to do.
    pub weeks: usize,
    /// All its weeks.
    pub of: usize,
    /// What the thirstiest of them takes.
    pub most: Option<WaterNeed>,
}

/// All breaks in which families are asked to water, in order.
#[must_use]
pub fn asked_of_families<'a>(facts: &'a Facts<'a>) -> Vec<Asked<'a>> {
    let mut asked: Vec<Asked<'_>> = Vec::new();
    for row in rows(facts, |_| false) {
        let Some(Note::Break(week)) = row.note else {
            continue;
        };
        let thirsty = row.all.filter(|need| need.dry > NOTHING);
        if week.pause.care != Care::Families || (thirsty.is_none() && !week.asks_for_more()) {
            continue;
        }
        match asked.last_mut() {
            Some(last) if last.pause == week.pause => {
                last.weeks += 1;
                last.most = most(last.most.into_iter().chain(thirsty));
            }
            _ => asked.push(Asked {
                pause: week.pause,
                weeks: 1,
                of: week.of,
                most: thirsty,
            }),
        }
    }
    asked
}

/// The beds that need water at some time, in the order of the garden.
#[must_use]
pub fn used_beds<'a>(facts: &Facts<'a>) -> Vec<(BedAt, &'a Bed)> {
    let garden = facts.garden;
    let beds = garden.bed_positions().zip(&facts.watering().beds);
    beds.filter(|(_, weeks)| weeks.iter().any(Option::is_some))
        .map(|(at, _)| (at, &garden[at]))
        .collect()
}

/// Weeks in which something stands, or in which seedlings on the shelf are alone in a break.
/// Weeks in a row that need no more than `little` in a dry year, outside breaks, share one row.
#[must_use]
pub fn rows<'a>(facts: &'a Facts<'a>, little: impl Fn(Litres) -> bool) -> Vec<Row<'a>> {
    let watering = facts.watering();
    let used: Vec<BedAt> = used_beds(facts).into_iter().map(|(at, _)| at).collect();
    let mut spans: Vec<(usize, usize)> = Vec::new();
    let mut joins = false;
    for week in 0..watering.weeks.len() {
        let stands = used.iter().any(|b| watering.beds[b.0][week].is_some());
        let in_break = break_of(facts, week).is_some();
        if !stands && (!in_break || flats(facts, week) == 0) {
            joins = false;
            continue;
        }
        let needs_little = !in_break && little(watering.weeks[week].dry);
        match spans.last_mut() {
            Some((_, last)) if joins && needs_little => *last = week,
            _ => spans.push((week, week)),
        }
        joins = needs_little;
    }
    let row = |(from, to)| row(facts, watering, &used, (from, to));
    spans.into_iter().map(row).collect()
}

fn row<'a>(
    facts: &'a Facts<'a>,
    watering: &Watering,
    used: &[BedAt],
    (from, to): (usize, usize),
) -> Row<'a> {
    let horizon = facts.garden.horizon();
    let of_bed = |bed: &BedAt| most(watering.beds[bed.0][from..=to].iter().filter_map(|n| *n));
    let beds: Vec<Option<WaterNeed>> = used.iter().map(of_bed).collect();
    let all = most(watering.weeks[from..=to].iter().copied());
    let note = match from < to {
        true => Some(Note::Until(plus_days(horizon.monday(to), 6))),
        false => break_week(facts, from).map(Note::Break),
    };
    Row {
        monday: horizon.monday(from),
        all: all.filter(|_| beds.iter().any(Option::is_some)),
        beds,
        note,
    }
}

/// The greatest figures of several weeks.
fn most(weeks: impl Iterator<Item = WaterNeed>) -> Option<WaterNeed> {
    weeks.reduce(|a, b| WaterNeed {
        ordinary: a.ordinary.max(b.ordinary),
        dry: a.dry.max(b.dry),
    })
}

fn flats(facts: &Facts<'_>, week: usize) -> u32 {
    in_week(&facts.replay.flats_by_week, week)
}

/// The break that a week lies in, one that takes at least one of its school days; which of its
/// weeks that is, and of how many.
fn break_of<'a>(facts: &Facts<'a>, week: usize) -> Option<(&'a Break, usize, usize)> {
    let monday = facts.garden.horizon().monday(week);
    let pause = (0..5).find_map(|day| {
        let day = plus_days(monday, day);
        facts.garden.school_year.break_on(day)
    })?;
    let weeks = mondays(pause);
    let number = weeks.iter().position(|m| *m == monday)? + 1;
    Some((pause, number, weeks.len()))
}

/// The Mondays of the weeks of a break that hold at least one school day of it.
fn mondays(pause: &Break) -> Vec<Date> {
    let mut mondays: Vec<Date> = days_between(pause.from, pause.to)
        .filter(|day| !matches!(day.weekday(), Weekday::Sat | Weekday::Sun))
        .map(monday_of)
        .collect();
    mondays.dedup();
    mondays
}

fn break_week<'a>(facts: &'a Facts<'a>, week: usize) -> Option<BreakWeek<'a>> {
    let (pause, number, of) = break_of(facts, week)?;
    let monday = facts.garden.horizon().monday(week);
    let sunday = plus_days(monday, 6);
    let seedbeds = facts.watering().seedbeds.iter();
    let damp = seedbeds.filter(|s| s.from <= sunday && s.up >= monday);
    let picks = picks(facts, monday, sunday);
    Some(BreakWeek {
        pause,
        number,
        of,
        frozen: frozen(facts, &picks),
        picks,
        kept_picked: kept_picked(facts, monday, sunday),
        damp: damp.map(|s| s.ingredient.as_str()).collect(),
        seedlings: flats(facts, week) > 0,
    })
}

/// The ingredients of some picks that are frozen on the same day, each once.
fn frozen<'a>(facts: &Facts<'a>, picks: &[BreakPick<'a>]) -> Vec<&'a str> {
    let garden = facts.garden;
    let is_frozen = |name: &&str| {
        let at = garden.ingredient_named(name);
        at.is_some_and(|at| garden[at].crop.kitchen.store == Store::Freezer)
    };
    let names: BTreeSet<&str> = picks.iter().map(|pick| pick.ingredient).collect();
    names.into_iter().filter(is_frozen).collect()
}

/// What is kept picked in a week of a break, in the order of the plan.
fn kept_picked<'a>(facts: &Facts<'a>, monday: Date, sunday: Date) -> Vec<&'a str> {
    let then = |turn: &Turn| {
        let by_carers = matches!(turn.who, Picker::Families | Picker::Staff);
        by_carers && turn.from <= sunday && monday <= turn.to
    };
    let kept = facts.kept_picked().iter();
    let kept = kept.filter(|kept| kept.turns.iter().any(then));
    let mut names: Vec<&str> = kept.map(|kept| kept.planting.ingredient.as_str()).collect();
    names.dedup();
    names
}

/// What families pick in a week, in order of time; on one day by the names of the ingredients.
fn picks<'a>(facts: &Facts<'a>, monday: Date, sunday: Date) -> Vec<BreakPick<'a>> {
    let plan = facts.plan;
    let mut picks: Vec<BreakPick<'a>> = Vec::new();
    for planting in &plan.plantings {
        for step in planting.picks() {
            let When::Families(day) = step.when else {
                continue;
            };
            if monday <= day && day <= sunday {
                picks.push(BreakPick {
                    ingredient: &planting.ingredient,
                    day,
                    beds: places::beds(&planting.places),
                });
            }
        }
    }
    picks.sort_by(|a, b| {
        let by_name = || natural(a.ingredient, b.ingredient);
        let by_beds = || natural(&a.beds.join(" "), &b.beds.join(" "));
        a.day.cmp(&b.day).then_with(by_name).then_with(by_beds)
    });
    picks
}

/// What the weeks alone add up to: ordinary and dry. Middle figures do not add up to that of the
/// sums, nor do those that one in ten passes.
#[must_use]
pub fn added_up(watering: &Watering) -> WaterNeed {
    let sum = |of: fn(&WaterNeed) -> Litres| watering.weeks.iter().map(of).sum::<Litres>();
    WaterNeed {
        ordinary: sum(|week| week.ordinary),
        dry: sum(|week| week.dry),
    }
}
