//! A project with changes made to it on trial, and the plan that then comes out.

use std::time::Duration;

use rayon::prelude::*;

use crate::checker::CheckedPlan;
use crate::diagnostic::Problems;
use crate::garden::Garden;
use crate::model::{Options, Possible, possible};
use crate::pipeline::{self, NoPlan};
use crate::project::Change;

/// So long it is asked whether a change helps: most are settled in far less, and one that is
/// not counts as no help.
const EACH: Duration = Duration::from_secs(2);

/// A project on which changes are tried; its file stays as it is.
#[derive(Clone, Copy)]
pub struct Workbench<'a> {
    /// Reads the project with some changes made.
    pub load: &'a (dyn Fn(&[Change]) -> Result<Garden, Problems> + Sync),
    /// How trials are solved; all of them together end with its deadline.
    pub options: Options,
}

/// What came of some changes.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    /// The changes; none for the file as it stands.
    pub changes: Vec<Change>,
    /// The changed project.
    pub garden: Garden,
    /// Its plan, or why there is none.
    pub outcome: Result<CheckedPlan, NoPlan>,
}

impl Workbench<'_> {
    /// Makes some changes together and plans the changed project.
    ///
    /// # Errors
    /// What is wrong with the changes, or with the project that they make.
    pub fn trial(&self, changes: &[Change]) -> Result<Trial, Problems> {
        let garden = (self.load)(changes)?;
        Ok(Trial {
            changes: changes.to_vec(),
            outcome: pipeline::plan(&garden, &self.options),
            garden,
        })
    }

    /// Tries several sets of changes side by side, each by itself; results stand in the order
    /// of the sets. `done` is called after each. Then what they promise is counted, for all or for none,
    /// because they are compared.
    pub fn trials(
        &self,
        sets: &[Vec<Change>],
        done: &(dyn Fn() + Sync),
    ) -> Vec<Result<Trial, Problems>> {
        let gardens: Vec<_> = sets.par_iter().map(|set| (self.load)(set)).collect();
        let mut each = gardens.iter().flatten();
        let search = match each.any(pipeline::is_counted_in_turn) {
            true => self.with_part_of_the_time(2),
            false => *self,
        };
        let given = sets.iter().zip(gardens).collect();
        let mut trials = search.in_shares(given, |(changes, garden), options| {
            let trial = garden.map(|garden| Trial {
                changes: changes.clone(),
                outcome: pipeline::decide(&garden, options),
                garden,
            });
            done();
            trial
        });
        let counted = self.in_shares(trials.iter().collect(), |trial, options| {
            let trial = trial.as_ref().ok()?;
            let checked = trial.outcome.as_ref().ok()?.clone();
            Some(pipeline::counted(&trial.garden, options, checked, 1))
        });
        let mut plans = counted.iter().flatten();
        if plans.all(|plan| plan.unseen().is_some()) {
            for (trial, counted) in trials.iter_mut().zip(counted) {
                if let (Ok(trial), Some(counted)) = (trial, counted) {
                    trial.outcome = Ok(counted);
                }
            }
        }
        trials
    }

    /// Does the same with several things, side by side, each in its share of the time.
    fn in_shares<T: Send, R: Send>(
        &self,
        things: Vec<T>,
        act: impl Fn(T, &Options) -> R + Sync,
    ) -> Vec<R> {
        let with = |deadline| Options {
            deadline,
            ..self.options
        };
        let act = |thing, deadline| act(thing, &with(deadline));
        self.options.deadline.side_by_side(things, act)
    }

    /// True if the changed project is proved to have a plan with every ingredient. A change
    /// that makes no valid project does not help either.
    pub(super) fn helps(&self, changes: &[Change]) -> bool {
        let in_time = !self.options.deadline.is_over();
        in_time && (self.load)(changes).is_ok_and(|garden| self.possible(&garden) == Possible::Yes)
    }

    /// Whether every ingredient of a garden can be in the pot at once.
    pub(super) fn possible(&self, garden: &Garden) -> Possible {
        let options = Options {
            deadline: self.options.deadline.at_most(EACH),
            ..self.options
        };
        possible(garden, &options)
    }

    /// The same workbench with a part of the time that is left.
    pub(super) fn with_part_of_the_time(&self, part: usize) -> Self {
        let deadline = self.options.deadline.shared_by(part);
        Self {
            options: Options {
                deadline,
                ..self.options
            },
            ..*self
        }
    }
}
