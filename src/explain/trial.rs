//! A project file with changes made to it on trial, and the plan that then comes out.

use std::path::Path;

use rayon::prelude::*;

use crate::catalogue::Catalogue;
use crate::checker::CheckedPlan;
use crate::diagnostic::Problems;
use crate::garden::Garden;
use crate::model::Options;
use crate::pipeline::{self, NoPlan};
use crate::project::{self, Change};

/// A project file on which changes are tried; the file itself stays as it is.
#[derive(Debug, Clone, Copy)]
pub struct Workbench<'a> {
    /// The project file.
    pub path: &'a Path,
    /// The crops.
    pub catalogue: &'a Catalogue,
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
        let garden = project::load_changed(self.path, changes, self.catalogue)?;
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
}
