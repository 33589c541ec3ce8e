//! Saving: every place is tried before the work, so that nothing is worked out in vain, and written
//! after it.

use std::path::{Path, PathBuf};

use crate::disk::{Author, FilePlace, Parents, Refused};
use crate::facts::program::Program;
use crate::garden::Garden;
use crate::handouts::mps;
use crate::model::AimProgram;
use crate::plan::Aim;
use crate::report;

use super::answer::{Exit, Trouble};

/// Whose a file is that stands at the place, as its bytes tell.
type Whose = fn(&[u8]) -> Author;

/// A file that is to be written.
pub(super) struct Output {
    path: PathBuf,
    place: FilePlace,
    /// The folders on the way that were made for it.
    parents: Option<Parents>,
}

impl Output {
    /// Tries the place. With `replace` anybody's file may go.
    pub fn tried(path: &Path, whose: Whose, replace: bool) -> Result<Self, Trouble> {
        let place = FilePlace::tried(path, whose, replace);
        Ok(Self {
            path: path.to_owned(),
            place: place.map_err(|refused| Trouble::place(&refused))?,
            parents: None,
        })
    }

    /// Tries the place in a folder, which is made if it is not there.
    pub fn in_folder(
        folder: &Path,
        name: &str,
        whose: Whose,
        replace: bool,
    ) -> Result<Self, Trouble> {
        let parents = parents(folder)?;
        let output = Self::tried(&folder.join(name), whose, replace)?;
        Ok(Self {
            parents: Some(parents),
            ..output
        })
    }

    /// Tries the place of a project that is begun, in a folder, which is made if it is not there: nobody's file is
    /// replaced, for a project is begun once.
    pub fn begun(folder: &Path, name: &str) -> Result<Self, Trouble> {
        let parents = parents(folder)?;
        let path = folder.join(name);
        let place = FilePlace::tried(&path, |_| Author::Other, false);
        let place = place.map_err(|refused| match refused {
            Refused::NotOurs(_) => Trouble::new(
                Exit::Usage,
                &refused,
                "Give another folder, or move the file away.",
            ),
            Refused::IsAFolder(_) | Refused::Failed(_) => Trouble::place(&refused),
        })?;
        Ok(Self {
            path,
            place,
            parents: Some(parents),
        })
    }

    /// Where it is written.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Writes it; tells what was done beside.
    pub fn save(self, text: &str) -> Result<String, Trouble> {
        let Self {
            path,
            place,
            parents,
        } = self;
        let saved = place.write(text.as_bytes());
        let saved = saved.map_err(|refused| Trouble::writing(&refused))?;
        parents.map_or(Ok(()), keep)?;
        Ok(report::saved_beside(&path, &saved))
    }

    /// Leaves nothing there; tells what was done beside.
    fn vacate(self) -> Result<String, Trouble> {
        let saved = self.place.vacate();
        let saved = saved.map_err(|refused| Trouble::writing(&refused))?;
        Ok(report::saved_beside(&self.path, &saved))
    }
}

/// A folder with a file for the program of each aim.
pub(super) struct ProgramsOutput {
    folder: PathBuf,
    files: Vec<(Aim, Output)>,
    parents: Parents,
}

impl ProgramsOutput {
    /// Tries the folder, which is made if it is not there, and all places in it.
    pub fn tried(folder: &Path, replace: bool) -> Result<Self, Trouble> {
        let parents = parents(folder)?;
        let file = |aim| {
            let path = folder.join(mps::file_name(aim));
            Ok((aim, Output::tried(&path, mps::author_of, replace)?))
        };
        Ok(Self {
            folder: folder.to_owned(),
            files: Aim::ALL.into_iter().map(file).collect::<Result<_, _>>()?,
            parents,
        })
    }

    /// Writes a file for each program. What an earlier run wrote for other aims is removed, so
    /// that all files in the folder are of one run.
    pub fn save(self, garden: &Garden, programs: &[AimProgram]) -> Result<String, Trouble> {
        let mut told = report::programs_written(&self.folder, programs.len());
        for (aim, output) in self.files {
            told += &match programs.iter().find(|program| program.result.aim == aim) {
                Some(program) => output.save(&mps::mps(garden, &Program::of(program)))?,
                None => output.vacate()?,
            };
        }
        keep(self.parents)?;
        Ok(told)
    }
}

fn parents(folder: &Path) -> Result<Parents, Trouble> {
    Parents::make(folder).map_err(|failed| Trouble::place(&failed.into()))
}

fn keep(parents: Parents) -> Result<(), Trouble> {
    parents
        .keep()
        .map_err(|failed| Trouble::writing(&failed.into()))
}
