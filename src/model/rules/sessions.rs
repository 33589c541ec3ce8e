//! Sessions: the steps of all plantings fit into the minutes of a class's session. Whether one
//! step fits by itself is the candidates' affair.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::candidates::{Candidate, CandidateAt, Candidates, crowded_sessions};
use crate::garden::ClassAt;
use crate::growth::Effort;
use crate::model::program::{Program, Terms};

use crate::model::setting::Setting;

use super::capacity::{Capacities, rounded};

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    let mut tasks: BTreeMap<(ClassAt, Date), Vec<(CandidateAt, Effort)>> = BTreeMap::new();
    for (k, c) in candidates.numbered() {
        for task in &c.tasks {
            tasks
                .entry((task.class, task.date))
                .or_default()
                .push((k, task.effort));
        }
    }
    let crowded = crowded_sessions(garden, &candidates.all);
    let mut companions = Capacities::default();
    for (session, second) in &columns.second_steps {
        let Some(tasks) = tasks.get(session) else {
            continue;
        };
        let mut steps: Terms = tasks
            .iter()
            .map(|(k, _)| (columns.made[k.0], 1.0))
            .collect();
        steps.push((*second, -1.0));
        program.at_most(steps, 1.0);

        if !crowded.contains(session) {
            continue;
        }
        let minutes = garden.session_minutes(session.0, session.1);
        let mut row: Terms = Vec::new();
        for (k, effort) in tasks {
            add_minutes(program, setting, *k, effort, &mut row);
        }
        program.at_most(row, minutes.0);
        let least: Vec<_> = tasks
            .iter()
            .map(|(k, effort)| {
                (
                    columns.made[k.0],
                    hundredths(least_minutes(candidates, *k, effort)),
                )
            })
            .collect();
        for (row, rhs) in rounded(&least, hundredths(minutes.0)) {
            companions.push(row, rhs);
        }
    }
    companions.add_rows(program);
}

/// The minutes of a task of the fewest blocks.
fn least_minutes(candidates: &Candidates, which: CandidateAt, effort: &Effort) -> f64 {
    let amounts = &candidates[which].amounts;
    effort.minutes(amounts.blocks.0 * amounts.block.plants).0
}

/// Whole hundredths of minutes; leaving out the rest keeps a row valid.
fn hundredths(minutes: f64) -> u32 {
    (minutes * 100.0 + 1e-6).floor() as u32
}

/// Adds the minutes of a task to a row: the time around it, and the greater of the least work
/// and the work by plants.
fn add_minutes(
    program: &mut Program,
    setting: &Setting<'_>,
    which: CandidateAt,
    effort: &Effort,
    row: &mut Terms,
) {
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    let candidate: &Candidate = &candidates[which];
    let amounts = &candidate.amounts;
    let made = columns.made[which.0];
    let per_block = effort.per_plant.0 * f64::from(amounts.block.plants);
    row.push((made, effort.around.0));
    // Where one of the two is the greater for every amount, the row needs no column for that.
    if per_block * f64::from(amounts.blocks.0) >= effort.least.0 {
        row.push(columns.blocks_of(candidates, which, per_block));
    } else if per_block * f64::from(amounts.blocks.1) <= effort.least.0 {
        row.push((made, effort.least.0));
    } else {
        let by_plants = vec![columns.blocks_of(candidates, which, per_block)];
        let most = per_block * f64::from(amounts.blocks.1);
        let work = program.greater_of([vec![(made, effort.least.0)], by_plants], most);
        row.push((work, 1.0));
    }
}
