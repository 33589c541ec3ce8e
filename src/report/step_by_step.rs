//! The slack of every step, what is lost if it is missed, and the ways out of each ingredient.

use std::time::Duration;

use crate::checker::CheckedPlan;
use crate::explain::{Rescue, RescueLadder, StepSlack};
use crate::facts::Facts;
use crate::facts::slack::{range, weeks_to, with_thinning};
use crate::facts::step_slack::{self, Lost, Mark, fewer_years, is_one_of_several};
use crate::garden::{Garden, Method};
use crate::plan::{Planting, Step, When};

use super::ran_out;
use super::slack::{NO_SLACK, promise, weeks_apart};
use crate::page::Page;
use crate::words::handling::or_instead;
use crate::words::occasion::occasion;
use crate::words::view::{View, kind_of_years};
use crate::words::{list, plantings, sentence, step_words, steps};

/// Width of the column of step names.
const LABEL: usize = 12;

/// What `tureen show --slack` prints.
#[must_use]
pub fn slack(
    garden: &Garden,
    checked: &CheckedPlan,
    slack: &[StepSlack],
    ladders: &[RescueLadder],
    ran_out: Option<Duration>,
) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    page.paragraph(&occasion(garden));
    page.title("What can wait, and what to do when a step fails");
    if let Some(limit) = ran_out {
        page.paragraph(&format!(
            "Time ran out after {}: of steps and ways out that are not here nothing is known. \
             --time-limit gives more time.",
            ran_out::seconds(limit)
        ));
    }
    page.paragraph(&format!(
        "Each step is moved alone, all others as planned; the plan was replayed each time. The \
         earliest and latest sessions are those with which every rule still holds and {}; where \
         there are fewer, the plan's promise of years no longer holds.",
        promise(&view)
    ));
    for (_, planting) in view.by_grade() {
        page.gap();
        page.line(&plantings::with_grades(&view, planting));
        let own = slack.iter().filter_map(|s| Some((s, view.step_of(s)?)));
        for (slack, (_, step)) in own.filter(|(_, (p, _))| *p == planting) {
            let name = step_words::name(planting.method, step.kind);
            page.entry(name, LABEL, &one(&view, slack, planting, step));
        }
    }
    page.heading("If it fails");
    page.line(
        "With the rest of the plan as it stands. Each way out was put into the plan and checked; \
         it counts if the ingredient is then ready in at least half of the promised years.",
    );
    let names = garden.ingredients.iter().map(|i| i.name.chars().count());
    let width = names.max().unwrap_or(0);
    for ladder in ladders {
        ladder_of(&view, ladder, width, &mut page);
    }
    page
}

/// All that is said of one step.
pub(super) fn one(view: &View<'_>, slack: &StepSlack, planting: &Planting, step: &Step) -> String {
    let mut parts = vec![format!("{}.", steps::when(&step.when, view.words))];
    // Of several chances to pick, only how long they may go on says anything.
    match is_one_of_several(planting, step) {
        true => parts.extend(last_chance(view, slack)),
        false => parts.push(span(view, slack)),
    }
    parts.extend(if_thinning_moves(view, slack));
    parts.extend(mark(slack, planting, step));
    parts.extend(missed(view, slack, planting, step));
    parts.join(" ")
}

/// Until when a chance to pick may be put off.
fn last_chance(view: &View<'_>, slack: &StepSlack) -> Option<String> {
    let weeks = weeks_apart(range(slack).1, "later")?;
    let last = steps::when(slack.days.last()?, view.words);
    Some(format!("At the latest {last} ({weeks})."))
}

/// The earliest and the latest sessions.
fn span(view: &View<'_>, slack: &StepSlack) -> String {
    let (earlier, later) = range(slack);
    let side = |weeks, side, at: usize| {
        let weeks = weeks_apart(weeks, side)?;
        let when = steps::when(slack.days.get(at)?, view.words);
        Some(format!("{when} ({weeks}{})", fewer(slack, at)))
    };
    let first = side(earlier, "earlier", 0);
    let last = side(later, "later", slack.days.len().saturating_sub(1));
    let mut text = match (first, last) {
        (None, None) if slack.days.len() > 1 => "May move by days within the week.".to_owned(),
        (None, None) if with_thinning(slack).iter().any(Option::is_some) => {
            "By itself it can be moved to no other week.".to_owned()
        }
        (None, None) => "It can be moved to no other week.".to_owned(),
        (Some(first), None) => format!("Not later; at the earliest {first}."),
        (None, Some(last)) => format!("Not earlier; at the latest {last}."),
        (Some(first), Some(last)) => format!("From {first} to {last}."),
    };
    if !slack.not_between.is_empty() {
        let days = slack.not_between.iter().filter_map(When::first);
        let days: Vec<String> = days.map(|day| view.words.day(day)).collect();
        text += &format!(" Not in the round from {}.", list(&days));
    }
    text
}

/// The ready years of other days, where they are fewer.
fn fewer(slack: &StepSlack, at: usize) -> String {
    fewer_years(slack, at).map_or_else(String::new, |(then, now)| {
        format!(", ready in {then} years instead of {now}")
    })
}

/// How much further a sowing may move if its thinning moves too.
fn if_thinning_moves(view: &View<'_>, slack: &StepSlack) -> Option<String> {
    let side = |when: Option<&When>, side| {
        let weeks = weeks_apart(weeks_to(slack, when), side)?;
        Some(format!("{} ({weeks})", steps::when(when?, view.words)))
    };
    let [first, last] = with_thinning(slack);
    let sides = [side(first, "earlier"), side(last, "later")];
    let sides: Vec<String> = sides.into_iter().flatten().collect();
    (!sides.is_empty()).then(|| format!("If the thinning moves too: {}.", list(&sides)))
}

/// Why it is marked, if it is.
fn mark(slack: &StepSlack, planting: &Planting, step: &Step) -> Option<String> {
    let name = &planting.ingredient;
    let text = match step_slack::mark(slack, planting, step.kind)? {
        Mark::TooLate => (step_words::of(step.kind).too_late)(planting.method),
        Mark::AnotherSowing => {
            "by itself it fails in the next round; another sowing makes up for it"
        }
        Mark::CostsYears => {
            "in the next round, with every class later, too many ready years are lost"
        }
        Mark::CostsTogether => {
            return Some(format!(
                "Not in the next round: {name} would bear it by itself, but with all that goes into \
                 the pot too many ready years are lost."
            ));
        }
        Mark::NoRoom { thinning } => {
            let thinning = match thinning {
                true => ", or the class has no session in which to thin it in time",
                false => "",
            };
            return Some(format!(
                "No room: {name} would bear the next round, but lessons, shelf or beds are \
                 full{thinning}."
            ));
        }
    };
    Some(format!("{}: {text}.", sentence(NO_SLACK)))
}

/// What is lost if it is missed.
fn missed(view: &View<'_>, slack: &StepSlack, planting: &Planting, step: &Step) -> Option<String> {
    let name = &planting.ingredient;
    let years = format!(
        "{name} is then ready in {} of {} instead of {}, the whole dish in {} instead of {}",
        slack.missed.ready_years,
        view.own_years(),
        view.ready_years(name),
        slack.missed.whole_dish_years,
        view.replay.whole_dish_years()
    );
    Some(match view.lost(slack, planting, step)? {
        Lost::LeftOut => {
            let left_out = step_words::of(step.kind).left_out?;
            format!("If it is missed: the rules ask nothing more, but {left_out}.")
        }
        Lost::Nothing => "If it falls out: nothing is lost.".to_owned(),
        Lost::Pick { with_others: true } => {
            format!("If it falls out, for all sowings that are picked then: {years}.")
        }
        Lost::Pick { with_others: false } => format!("If it falls out: {years}."),
        Lost::Planting {
            with_others,
            low,
            expected,
        } => {
            let lost = view.words.mass_range(low, expected);
            let what = match with_others {
                false => "this planting is lost",
                true => "this planting is lost, and what another sowing needs that day",
            };
            format!("If it is missed: {what}, {lost} of {name}; {years}.")
        }
    })
}

/// The ways out of one ingredient.
fn ladder_of(view: &View<'_>, ladder: &RescueLadder, width: usize, page: &mut Page) {
    let ingredient = &view.garden[ladder.ingredient];
    let mut parts: Vec<String> = Vec::new();
    for rung in &ladder.rungs {
        let again = matches!(
            rung.checked.plan().plantings.iter().find(|p| p.ingredient == ingredient.name),
            Some(p) if p.method == Method::Indoor
        );
        let what = match &rung.rescue {
            Rescue::SowAgain if again => "sow again indoors".to_owned(),
            Rescue::SowAgain => "sow again in the bed".to_owned(),
            Rescue::BoughtPlants => "plant bought plants".to_owned(),
            Rescue::QuickCrop(crop) => format!("sow {crop} in its place"),
        };
        parts.push(format!(
            "{what} until {} (ready in {} of {} {})",
            steps::when(&rung.until, view.words),
            rung.ready_years,
            view.years(),
            kind_of_years(view.garden)
        ));
    }
    let or = or_instead(ingredient);
    let buy = match ingredient.fallback {
        Some(fallback) => format!(
            "buy it{or}, by {}",
            view.words.full_day(view.bought_by(fallback))
        ),
        None => format!("buy it{or}"),
    };
    let text = match parts.as_slice() {
        [] => buy,
        _ => format!("{}; then {buy}", parts.join("; ")),
    };
    page.entry(&ingredient.name, width, &sentence(&format!("{text}.")));
}
