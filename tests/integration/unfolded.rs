//! A season with a diary, replayed week by week: what has happened stays, where nothing has happened nothing moves, every
//! plan passes the checker, is read again as it was saved, and tells what each surprise costs. From the words of an
//! entry to the screen.

mod reading;

use std::collections::BTreeSet;

use tureen::calendar::{Date, plus_days};
use tureen::checker::{CheckedPlan, Standing, check_saved};
use tureen::garden::Garden;
use tureen::model::Options;
use tureen::page::Look;
use tureen::pipeline::{self, Unfolded, unfold};
use tureen::plan::saved;
use tureen::plan::{Plan, Planting, StepKind, When};
use tureen::project::diary::{Diary, Entry, Names, phrase, read};
use tureen::{facts, report};

use crate::scenarios::load;
use crate::support::day;

/// The diary of a school: entries as they are typed, each on its day.
struct Told {
    garden: Garden,
    text: String,
}

impl Told {
    fn note(&mut self, on: Date, words: &str) {
        let what = phrase(words, &Names::of(&self.garden), on).unwrap();
        let entry = Entry { on, by: None, what };
        self.text += &entry.text();
    }

    fn until(&self, on: Date) -> Diary {
        let days = (self.garden.start(), on);
        let (diary, problems) = read("diary.toml", &self.text, &Names::of(&self.garden), days);
        assert!(problems.is_empty());
        diary
    }
}

/// A plan as it was saved, with its season.
struct Saved(String);

impl Saved {
    fn unfold(&self, told: &Told, on: Date) -> Option<Unfolded> {
        let saved = saved::read(&self.0).unwrap();
        let season = saved.season.clone();
        let (plan, _) = saved.for_garden(&told.garden).unwrap();
        unfold(&told.garden, (&plan, season.as_ref()), &told.until(on), on).unwrap()
    }
}

fn planned(garden: &Garden) -> CheckedPlan {
    pipeline::decide(garden, &Options::default()).unwrap()
}

/// All days before one on which something is done, with who does what.
fn past(plan: &Plan, before: Date) -> BTreeSet<(String, StepKind, String, Date)> {
    let of = |p: &Planting| {
        let steps = p.steps.iter().filter(|step| !step.kind.is_span());
        let days = steps.flat_map(|step| {
            let turns = step.when.turns().into_iter();
            turns.map(|(by, date)| {
                let class = by.class().unwrap_or_default().to_owned();
                (p.ingredient.clone(), step.kind, class, date)
            })
        });
        days.collect::<Vec<_>>()
    };
    let all = plan.plantings.iter().flat_map(of);
    all.filter(|(.., date)| *date < before).collect()
}

/// Reads a saved plan again: it is worth what it was, in the same season.
fn reads_as_saved(told: &Told, checked: &CheckedPlan, garden: &Garden) -> Saved {
    let text = saved::write(garden, checked.plan());
    let read = saved::read(&text).unwrap();
    let season = read
        .season
        .as_ref()
        .map(|s| s.in_garden(&told.garden).unwrap());
    let (plan, since) = read.for_garden(&told.garden).unwrap();
    let again = match season {
        Some(season) => pipeline::in_season(told.garden.clone(), season),
        None => told.garden.clone(),
    };
    assert_eq!(again, *garden);
    let read = check_saved(&again, plan, since).unwrap();
    assert_eq!(read.standing(), &Standing::Saved);
    assert_eq!(read.plan().plantings, checked.plan().plantings);
    Saved(text)
}

fn screen(unfolded: &Unfolded, checked: &CheckedPlan) -> String {
    let page = report::plan_in_short(&unfolded.garden, checked, &[], None);
    let page = report::unfolded(checked, unfolded, page);
    page.text(Look {
        width: 100,
        color: false,
    })
}

/// The visit of a class at a step, by its position.
fn visit(plan: &Plan, ingredient: &str, kind: StepKind, which: usize) -> (String, Date) {
    let planting = plan
        .plantings
        .iter()
        .find(|p| p.ingredient == ingredient)
        .unwrap();
    match &planting.steps_of(kind).next().unwrap().when {
        When::Sessions(visits) => (visits[which].class.clone(), visits[which].date),
        other => panic!("{other:?}"),
    }
}

/// The season of the soup under way.
struct Replay {
    told: Told,
    saved: Saved,
    plan: Plan,
}

impl Replay {
    /// A week ends in which something happened to an ingredient, or nothing did: the rest is planned. Gives how many days
    /// change, and the screen; `None` before the first step.
    fn week(&mut self, on: Date, named: Option<&str>) -> Option<(usize, String)> {
        let unfolded = self.saved.unfold(&self.told, on)?;
        let checked = planned(&unfolded.garden);
        let now = checked.plan();
        let others = |plan: &Plan| {
            let all = past(plan, on).into_iter();
            let others = all.filter(|(of, ..)| Some(of.as_str()) != named);
            others.collect::<Vec<_>>()
        };
        assert_eq!(others(now), others(&self.plan), "{on}");
        let changes = facts::unfolded::changes(&unfolded, now);
        let mut all = changes.iter();
        assert!(
            all.all(|c| Some(c.ingredient) == named && c.cause.is_some()),
            "{on}: {changes:?}"
        );
        let screen = screen(&unfolded, &checked);
        assert_eq!(
            changes.is_empty(),
            screen.contains("No date moves."),
            "{screen}"
        );
        self.saved = reads_as_saved(&self.told, &checked, &unfolded.garden);
        self.plan = now.clone();
        Some((changes.len(), screen))
    }
}

#[test]
fn a_season_replayed_week_by_week() {
    let garden = load("soup-day", "garden.toml");
    let told = Told {
        garden: garden.clone(),
        text: "# The diary\n".to_owned(),
    };
    let first = planned(&garden);
    let (late, missed_on) = visit(first.plan(), "leek", StepKind::Sow, 1);
    let (_, potted_on) = visit(first.plan(), "tomato", StepKind::PotUp, 0);
    let surprises = [
        (missed_on, format!("missed {late} sowed leek"), "leek"),
        (
            day("2027-05-20"),
            "lost carrot 100 % slugs".to_owned(),
            "carrot",
        ),
        (
            plus_days(potted_on, 3),
            "potted tomato".to_owned(),
            "tomato",
        ),
        (day("2027-07-01"), "lost potato 30 %".to_owned(), "potato"),
    ];
    let mut replay = Replay {
        saved: reads_as_saved(&told, &first, &garden),
        told,
        plan: first.plan().clone(),
    };
    let mut costs = Vec::new();
    let mut on = day("2027-02-22");
    while on < day("2027-10-04") {
        let last = plus_days(on, -7);
        let news = surprises.iter().find(|(day, ..)| last <= *day && *day < on);
        match news {
            Some((day, words, _)) => replay.told.note(*day, words),
            None => replay.told.note(last, "weather 4 to 15 rain 3"),
        }
        let cost = replay.week(on, news.map(|(.., name)| *name));
        costs.extend(news.and(cost));
        on = plus_days(on, 7);
    }
    let [(leek, _), (carrot, lost), (tomato, _), (potato, part)] = &costs[..] else {
        panic!("four surprises: {costs:?}");
    };
    assert!(*leek >= 1 && *carrot >= 2 && *tomato >= 1, "{costs:?}");
    assert!(lost.contains("100 % of carrot lost: slugs"), "{lost}");
    assert_eq!(*potato, 0, "a third less moves no date: {part}");
}

/// 30 % of the potatoes are lost: what the plan promises of them is 30 % less, on the screen too.
#[test]
fn a_part_that_is_lost_is_missing_in_the_harvest() {
    let garden = load("soup-day", "garden.toml");
    let first = planned(&garden);
    let mut told = Told {
        garden: garden.clone(),
        text: String::new(),
    };
    let saved = reads_as_saved(&told, &first, &garden);
    told.note(day("2027-07-01"), "lost potato 30 % beetles");
    let unfolded = saved.unfold(&told, day("2027-07-05")).unwrap();
    let checked = planned(&unfolded.garden);
    let low = |plan: &Plan| {
        let mut all = plan.promise.ingredients.iter();
        all.find(|own| own.ingredient == "potato").unwrap().low.0
    };
    let (before, now) = (low(first.plan()), low(checked.plan()));
    assert!((now - 0.7 * before).abs() < 1e-6, "{before} {now}");
}

/// Without a diary, or before the first step, there is no season, and the plan is that of the file.
#[test]
fn before_the_first_step_nothing_is_under_way() {
    let garden = load("soup-day", "garden.toml");
    let first = planned(&garden);
    let mut told = Told {
        garden: garden.clone(),
        text: String::new(),
    };
    let saved = reads_as_saved(&told, &first, &garden);
    assert!(saved.unfold(&told, day("2027-02-01")).is_none());
    told.note(day("2027-01-15"), "words The shelf is up");
    assert!(saved.unfold(&told, day("2027-02-01")).is_none());
    assert!(saved.unfold(&told, day("2027-05-24")).is_some());
}
