//! What calendars and grades' pages say of a lesson of picking that falls out, against the plan
//! without it: the visit is taken away, or made up for later, by hand, and the checker replays it.

use tureen::calendar::{Date, plus_days};
use tureen::checker::{CheckedPlan, DayLimit, Fault, Quantity, check, promise};
use tureen::explain::slack;
use tureen::facts::Facts;
use tureen::facts::tasks::{Doer, Task};
use tureen::garden::{Garden, GradeAt, Method};
use tureen::page::Look;
use tureen::plan::{Plan, Planting, Step, StepKind, When};
use tureen::report::entries::{Entry, entries};
use tureen::report::grade;
use tureen::words::Words;
use tureen::words::tasks::{title, who};
use tureen::words::view::View;

use super::aim::plans;
use super::steps_by_hand::{Said, bears, choices, spans_follow};
use crate::random_gardens::make::{LARGER, TINY};
use crate::scenarios;

/// What a sentence says.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Meaning {
    Nothing,
    MadeUp(Date),
    Little,
    Lost,
}

struct Case {
    name: String,
    garden: Garden,
    checked: CheckedPlan,
    /// Ready years of the ingredients, then of the whole dish.
    planned: Vec<usize>,
}

impl Case {
    fn new(name: String, garden: Garden, checked: CheckedPlan) -> Self {
        let planned = ready(&garden, checked.plan());
        Self {
            name,
            garden,
            checked,
            planned,
        }
    }

    fn plan(&self) -> &Plan {
        self.checked.plan()
    }

    fn ingredient(&self, task: &Task<'_>) -> usize {
        let mut names = self.garden.ingredients.iter();
        names.position(|i| i.name == task.ingredient.name).unwrap()
    }

    /// Days after a task on which the same hands are there.
    fn later(&self, task: &Task<'_>) -> Vec<Date> {
        let days = match task.who {
            Doer::Class(class) => self.garden.sessions(class),
            _ => {
                let planting = &self.plan().plantings[task.at.planting.0];
                let choices = choices(&self.garden, planting, task.at.step);
                choices.iter().filter_map(When::first).collect()
            }
        };
        days.into_iter().filter(|day| *day > task.from).collect()
    }
}

/// True if a pick is one of those that a task means: of its ingredient, hands and day.
fn falls_out(garden: &Garden, task: &Task<'_>, planting: &Planting, step: &Step) -> bool {
    let hands = match &step.when {
        When::Sessions(visits) => visits
            .iter()
            .any(|v| v.date == task.from && v.class == who(garden, task.who)),
        When::Families(day) => task.who == Doer::Families && *day == task.from,
        _ => false,
    };
    planting.ingredient == task.ingredient.name && step.kind == StepKind::Pick && hands
}

/// The plan if a task's hands do not come on its day: they are put on the first day of the plan, on
/// which nothing is ripe. A patch always bears, so it is lost if they pick it on no other day.
/// With what they would pick of other sowings, or only of the task's own.
fn without(case: &Case, task: &Task<'_>, others: bool) -> Plan {
    let mut plan = case.plan().clone();
    let name = who(&case.garden, task.who);
    for (at, planting) in plan.plantings.iter_mut().enumerate() {
        if !others && at != task.at.planting.0 {
            continue;
        }
        let hit: Vec<bool> = planting
            .steps
            .iter()
            .map(|step| falls_out(&case.garden, task, planting, step))
            .collect();
        let others = planting.steps.iter().zip(&hit).filter(|(_, hit)| !**hit);
        let picked = others
            .filter(|(s, _)| s.kind == StepKind::Pick)
            .any(|(s, _)| own_day(&s.when, &name).is_some() || matches!(s.when, When::Families(_)));
        if planting.method == Method::Patch && hit.contains(&true) && !picked {
            planting.steps.clear();
        }
        for (step, _) in planting.steps.iter_mut().zip(hit).filter(|(_, hit)| *hit) {
            put(step, &name, task.from, case.garden.school_year.start);
        }
    }
    plan.plantings.retain(|p| !p.steps.is_empty());
    plan
}

/// Ready years of the ingredients, then of the whole dish, whatever rules a plan breaks.
fn ready(garden: &Garden, plan: &Plan) -> Vec<usize> {
    let promise = promise(garden, plan);
    let ingredients = promise.ingredients.iter().map(|p| p.ready_years);
    let all = ingredients.chain([promise.whole_dish_years]);
    all.map(|years| years as usize).collect()
}

fn own_day(when: &When, class: &str) -> Option<Date> {
    match when {
        When::Sessions(visits) => visits.iter().find(|v| v.class == class).map(|v| v.date),
        _ => None,
    }
}

/// Puts a class's visit on another day.
fn put(step: &mut Step, class: &str, from: Date, to: Date) {
    match &mut step.when {
        When::Sessions(visits) => {
            for visit in visits
                .iter_mut()
                .filter(|v| v.class == class && v.date == from)
            {
                visit.date = to;
            }
        }
        When::Families(day) if *day == from => *day = to,
        _ => {}
    }
}

/// The plan with one task on a later day: its ready years, if it keeps every rule but that of
/// rounds.
fn made_up(case: &Case, task: &Task<'_>, day: Date) -> Option<Vec<usize>> {
    let mut plan = case.plan().clone();
    let planting = &mut plan.plantings[task.at.planting.0];
    put(
        &mut planting.steps[task.at.step],
        &who(&case.garden, task.who),
        task.from,
        day,
    );
    spans_follow(&case.garden, planting);
    plan.aims.clear();
    let faults = check(&case.garden, plan.clone()).err().unwrap_or_default();
    let forgiven = |fault: &Fault| match fault {
        Fault::Day { limit, .. } => *limit == DayLimit::Round,
        Fault::Number { what, .. } => matches!(
            what,
            Quantity::ReadyYears | Quantity::LowKilograms | Quantity::ExpectedKilograms
        ),
        _ => false,
    };
    let kept = faults.iter().all(|violation| forgiven(&violation.fault));
    kept.then(|| ready(&case.garden, &plan))
}

/// What a calendar's entry says.
fn meaning(case: &Case, task: &Task<'_>, entry: &Entry<'_>) -> Meaning {
    let text = entry
        .lines
        .iter()
        .find(|line| line.starts_with("If it is cancelled"));
    let text = text.unwrap_or_else(|| panic!("{}: nothing is said: {entry:?}", case.name));
    let day = Words::of(&case.garden);
    let made_up = |day_: &Date| text.ends_with(&format!("make up for it on {}.", day.day(*day_)));
    match case.later(task).into_iter().find(made_up) {
        Some(day) => Meaning::MadeUp(day),
        None if text.contains("nothing is lost") => Meaning::Nothing,
        None if text.contains("nearly as much") => Meaning::Little,
        None if text.contains("tell the coordinator at once") => Meaning::Lost,
        None => panic!("{}: {text}", case.name),
    }
}

/// The entry of a task.
fn entry_of<'e>(garden: &Garden, task: &Task<'_>, all: &'e [Entry<'e>]) -> &'e Entry<'e> {
    let chance = task.chance.map_or(String::new(), |c| c.number.to_string());
    let own = |e: &&Entry<'_>| match e.entry.key.as_slice() {
        [what, ingredient, sowing, kind, _, doer, number] => {
            what == "step"
                && *ingredient == task.ingredient.name
                && *sowing == task.sowing.number.to_string()
                && kind == "pick"
                && *doer == who(garden, task.who)
                && *number == chance
                && e.entry.span.first() == task.from
        }
        _ => false,
    };
    all.iter().find(own).unwrap()
}

/// The sentence means what the replay shows.
fn holds(case: &Case, task: &Task<'_>, meaning: Meaning) {
    let at = case.ingredient(task);
    let left = ready(&case.garden, &without(case, task, true));
    let lost = |ready: &[usize]| case.planned[at].saturating_sub(ready[at]);
    let years = case.checked.replay().years.len();
    let borne = |ready: &Vec<usize>| {
        let ingredients = &ready[..case.garden.ingredients.len()];
        let said = Said {
            breaks_rules: false,
            too_rarely: ingredients.iter().any(|y| 10 * y < years || *y == 0),
            ready: ready.clone(),
        };
        bears(&case.planned, &said)
    };
    let makes_up = |day: Date| {
        made_up(case, task, day).is_some_and(|then| borne(&then) && lost(&then) < lost(&left))
    };
    // Of several sowings another can hide what one of them loses.
    let single = task.sowing.of == 1;
    let context = format!("{}: {task:?}\n{meaning:?}: {left:?}", case.name);
    match meaning {
        // Each sowing has its own line.
        Meaning::Nothing => {
            let own = ready(&case.garden, &without(case, task, false));
            assert_eq!(lost(&own), 0, "{context}");
        }
        Meaning::MadeUp(day) if single => {
            assert!(makes_up(day), "{context}");
            let earlier = case.later(task).into_iter().filter(|other| *other < day);
            let mut earlier = earlier.filter(|other| makes_up(*other));
            assert_eq!(earlier.next(), None, "{context}");
        }
        Meaning::MadeUp(day) => {
            let then = made_up(case, task, day);
            assert!(then.is_some_and(|then| borne(&then)), "{context}");
        }
        Meaning::Little => assert!(borne(&left), "{context}"),
        Meaning::Lost => {
            assert!(!borne(&left), "{context}");
            let day = case.later(task).into_iter().find(|day| makes_up(*day));
            assert_eq!(day, None, "{context}");
        }
    }
}

/// Every page of a grade that shows the task says the same in its last column.
fn on_the_page(case: &Case, task: &Task<'_>, meaning: Meaning, pages: &[String]) -> usize {
    let words = Words::of(&case.garden);
    let plain = |day| words.day(day).replace('\u{a0}', " ");
    let (day, who) = (plain(task.from), who(&case.garden, task.who));
    let title = title(task);
    // What families do week after week stands in one row, from its first day to its last.
    let in_weeks = |text: &str, side: i64| {
        let days = (0..53).map(|weeks| plus_days(task.from, side * 7 * weeks));
        days.map(plain).any(|other| other == text)
    };
    let is_of_the_day = |cell: &str| match cell.split_once(", weekly to ") {
        Some((first, last)) => in_weeks(first, -1) && in_weeks(last, 1),
        None => cell == day,
    };
    let told = |line: &&str| {
        let line = line.trim_start();
        let cells: Vec<&str> = line
            .split("  ")
            .map(str::trim)
            .filter(|c| !c.is_empty())
            .collect();
        cells.first().is_some_and(|cell| is_of_the_day(cell))
            && cells.get(1).is_some_and(|c| {
                c.split(", ")
                    .flat_map(|c| c.split(" and "))
                    .any(|c| c == who)
            })
            && cells.get(2) == Some(&title.as_str())
    };
    let lines: Vec<&str> = pages
        .iter()
        .flat_map(|page| page.lines())
        .filter(told)
        .collect();
    for line in &lines {
        let right = match meaning {
            Meaning::Nothing => line.ends_with("  nothing is lost"),
            Meaning::MadeUp(day) => line.ends_with(&format!("  {}", plain(day))),
            Meaning::Little => line.contains("  ready in ") && line.ends_with(" years"),
            Meaning::Lost => line.ends_with("  none"),
        };
        assert!(right, "{}: {meaning:?}, but \"{line}\"", case.name);
    }
    lines.len()
}

#[test]
fn what_is_said_of_a_missed_pick_is_what_the_replay_loses() {
    let tiny = plans(10_000..10_120, &TINY).chain(plans(0..6, &LARGER));
    let random = tiny.map(|(seed, garden, plan)| {
        let checked = check(&garden, plan).unwrap();
        Case::new(format!("seed {seed}"), garden, checked)
    });
    let bundled = scenarios::planned().iter().map(|(name, garden, checked)| {
        Case::new((*name).to_owned(), garden.clone(), checked.clone())
    });
    let (mut seen, mut lines) = ([0; 4], 0);
    for case in bundled.chain(random) {
        let slack = slack(&case.garden, &case.checked);
        let facts = Facts::new(&case.garden, &case.checked);
        let all = entries(&View::of(&facts), &slack);
        let look = Look {
            width: 400,
            color: false,
        };
        let page = |at: GradeAt| grade(&case.garden, &case.checked, at).text(look);
        let pages: Vec<String> = case.garden.grade_positions().map(page).collect();
        for task in &facts.tasks {
            if task.kind != StepKind::Pick {
                continue;
            }
            let meaning = meaning(&case, task, entry_of(&case.garden, task, &all));
            holds(&case, task, meaning);
            let told = on_the_page(&case, task, meaning, &pages);
            assert!(told > 0, "{}: no page tells of {task:?}", case.name);
            lines += told;
            seen[match meaning {
                Meaning::Nothing => 0,
                Meaning::MadeUp(_) => 1,
                Meaning::Little => 2,
                Meaning::Lost => 3,
            }] += 1;
        }
    }
    println!("nothing, made up, little, lost: {seen:?} on {lines} lines of pages");
    assert!(seen.iter().all(|n| *n > 0), "{seen:?}");
}
