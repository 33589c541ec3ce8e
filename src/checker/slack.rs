//! Steps that a cancelled session would lose: the aim `Slack` counts them. Each planting is looked
//! at by itself: what others leave of lessons, shelf and beds does not count here.

use crate::garden::Method;
use crate::growth::least_ready_years;
use crate::plan::{
    self, Needed, Plan, Planting as Planned, PlantingAt, Promise, Rule, StepAt, Visit,
};

use super::edit::moved;
use super::fault::Fault;
use super::harvest::{Harvest, Ready, Seasons, grown, grown_all};
use super::planting::{Planting, Step, Visit as Visited, When};
use super::rules;
use super::run::Run;
use super::thinned::Grown;

/// One ready year in so many may be lost: that is bearable.
const BEARABLE: usize = 10;

/// How many of so many ready years may be lost. It is a share of these, not of all weather
/// years: of what is ready in 3 of 30 years, 3 are all there is.
pub fn bearable(ready_years: usize) -> usize {
    ready_years / BEARABLE
}

/// True if what is ready in `then` years instead of `now` has lost no more than is bearable.
pub fn bears(now: usize, then: usize) -> bool {
    then + bearable(now) >= now
}

/// The steps of a sound plan without slack, in order: those that break a rule, or cost their
/// planting more than one of its ready years in ten, in the next round; and picks without another beside
/// them. A patch is there whenever it is picked, and a plan without thinning keeps the rules.
pub fn fragile(run: &Run<'_>, seasons: &[Seasons]) -> Vec<StepAt> {
    let ready = grown_all(run, seasons, run.garden.feast.day);
    let mut found = Vec::new();
    for (at, planting) in run.plantings.iter().enumerate() {
        let only_pick = planting.picks().count() == 1 && planting.plan.method != Method::Patch;
        // What has begun cannot fall out any more.
        for step in planting.steps.iter().filter(|step| !run.has_begun(step)) {
            let fragile = match step.plan.kind.facts().needed {
                Needed::OneOfSeveral => only_pick,
                Needed::Never => false,
                Needed::Always => late_fails(run, planting, step, &seasons[at], &ready[at]),
            };
            found.extend(fragile.then_some(StepAt {
                planting: PlantingAt(at),
                step: step.name.number - 1,
            }));
        }
    }
    found
}

/// True if a step that children do fails in the next round.
fn late_fails(
    run: &Run<'_>,
    planting: &Planting<'_>,
    step: &Step<'_>,
    seasons: &Seasons,
    ready: &[Ready],
) -> bool {
    let When::Sessions(visits) = &step.when else {
        return false;
    };
    let Some(late) = next_round(run, planting, visits) else {
        return true;
    };
    let mut late = moved(
        run.garden,
        planting.plan,
        step.name.number - 1,
        plan::When::Sessions(late),
    );
    // Thinning goes with its sowing: it is planned anew.
    late.steps
        .retain(|other| !other.kind.is_counted_from(step.plan.kind));
    let late = alone(late);
    let (late, unknown) = Run::new(run.garden, &late);
    let broken = !unknown.is_empty() || breaks_a_rule(&late);
    let Some(planting) = late.plantings.first().filter(|_| !broken) else {
        return true;
    };
    let count = |ready: &[Ready]| ready.iter().filter(|r| r.is_ok()).count();
    let late = count(&grown(&late, planting, seasons, run.garden.feast.day));
    !bears(count(ready), late) || late < least_ready_years(ready.len())
}

/// The first sessions of the same classes, each later than now, that lie in one round.
fn next_round(run: &Run<'_>, planting: &Planting<'_>, visits: &[Visited]) -> Option<Vec<Visit>> {
    let garden = run.garden;
    let first = visits.iter().map(|visit| visit.day).min()?;
    let tending = garden.tending(planting.team, run.horizon.date(first));
    let days = garden.round_weeks(tending) as usize * 7;
    let sessions = |visit: &Visited| -> Vec<usize> {
        let days = garden.sessions(visit.class).into_iter();
        days.filter_map(|day| run.horizon.day_number(day))
            .filter(|day| *day > visit.day)
            .collect()
    };
    let left: Vec<Vec<usize>> = visits.iter().map(sessions).collect();
    let within = |week: usize| -> Option<Vec<usize>> {
        let fits = |day: &&usize| (week * 7..week * 7 + days).contains(*day);
        left.iter()
            .map(|own| own.iter().find(fits).copied())
            .collect()
    };
    let round = (first / 7..run.horizon.weeks()).find_map(within)?;
    let visit = |(visit, day): (&Visited, usize)| Visit {
        class: garden.class(visit.class).name.clone(),
        date: run.horizon.date(day),
    };
    Some(visits.iter().zip(round).map(visit).collect())
}

/// A plan of one planting that promises nothing.
pub fn alone(planting: Planned) -> Plan {
    Plan {
        plantings: vec![planting],
        promise: Promise {
            weather_years: 0,
            whole_dish_years: 0,
            ingredients: Vec::new(),
        },
        aims: Vec::new(),
        unseen: None,
    }
}

/// True if the only planting of a plan breaks a rule about days. Minutes, flats and which grades
/// grow something hang on how much there is and on other plantings; numbers are those of the sound plan.
fn breaks_a_rule(run: &Run<'_>) -> bool {
    let nothing = Harvest::put_together(run, &[], None);
    let about_days = |fault: &Fault| {
        !matches!(
            fault,
            Fault::Number { .. }
                | Fault::SessionOverfull { .. }
                | Fault::ShelfFull { .. }
                | Fault::GradesLeftOut { .. }
        )
    };
    [
        Rule::Readiness,
        Rule::Sessions,
        Rule::Participation,
        Rule::Care,
        Rule::Shelf,
    ]
    .into_iter()
    .flat_map(|rule| rules::faults(rule, run, &nothing, &Grown::WhenAsked))
    .any(|fault| about_days(&fault))
}
