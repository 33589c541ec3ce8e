//! A project with changes made to it on trial, and the plan that then comes out.

use rayon::prelude::*;

use crate::checker::CheckedPlan;
use crate::diagnostic::Problems;
use crate::garden::Garden;
use crate::model::{Options, Possible, possible};
use crate::pipeline::{self, NoPlan};
use crate::project::Change;

/// A project on which changes are tried; its file stays as it is.
#[derive(Clone, Copy)]
pub struct Workbench<'a> {
    /// Reads the project with some changes made.
    pub load: &'a (dyn Fn(&[Change]) -> Result<Garden, Problems> + Sync),
    /// How each trial is solved.
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
    /// of the sets. `done` is called after each.
    pub fn trials(
        &self,
        sets: &[Vec<Change>],
        done: &(dyn Fn() + Sync),
    ) -> Vec<Result<Trial, Problems>> {
        sets.par_iter()
            .map(|changes| {
                let trial = self.trial(changes);
                done();
                trial
            })
            .collect()
    }

    /// True if the changed project is proved to have a plan with every ingredient. A change
    /// that makes no valid project does not help either.
    pub(super) fn helps(&self, changes: &[Change]) -> bool {
        (self.load)(changes).is_ok_and(|garden| possible(&garden, &self.options) == Possible::Yes)
    }
}
