//! The saved plan: versioned JSON that a person can read and edit. `{"tureen_plan": 3, "program":
//! version, "project": name, "feast": date, "garden": checksum, "season": {...}, "plan": {...}, "checksum":
//! of all before it}`, the season only where one was under way.

mod error;
mod mark;
mod seal;
pub mod season;
pub mod shut;

use serde::{Deserialize, Serialize};

use crate::calendar::Date;
use crate::disk::Author;
use crate::garden::Garden;

use super::Plan;

pub use error::SavedError;
use mark::mark;
use season::Season;

/// The version of the form that is written, and the only one that is read.
pub const VERSION: u64 = 3;

/// The version of the program.
const PROGRAM: &str = env!("CARGO_PKG_VERSION");

/// The form of the file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct File<N: Default, P> {
    tureen_plan: u64,
    #[serde(default)]
    program: N,
    project: N,
    feast: Date,
    #[serde(default)]
    garden: N,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    season: Option<Season>,
    plan: P,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    checksum: Option<String>,
}

/// A plan as it was saved, with the project that it was made for.
#[derive(Debug, Clone, PartialEq)]
pub struct SavedPlan {
    /// The version of the program that wrote it.
    pub program: String,
    /// The project's name.
    pub project: String,
    /// The day of the feast.
    pub feast: Date,
    /// The checksum of the garden that it was made for.
    pub garden: String,
    /// The season in which it was made; `None` if nothing had begun.
    pub season: Option<Season>,
    /// The plan.
    pub plan: Plan,
    /// True if nothing in the file was changed since the program wrote it.
    pub unchanged: bool,
}

/// What happened since a plan was saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Since {
    /// Nothing that touches it.
    Nothing,
    /// The project is not what it was, though of the same name and day.
    ProjectChanged,
    /// The program is another, which may read the same project otherwise; perhaps the project has
    /// changed as well.
    ProgramChanged,
    /// The file was edited.
    Edited,
}

/// Writes a plan for a project. Fields stand in a fixed order, each on its own line.
#[must_use]
pub fn write(garden: &Garden, plan: &Plan) -> String {
    let mark = mark(garden);
    let mut file = File {
        tureen_plan: VERSION,
        program: PROGRAM,
        project: garden.name.as_str(),
        feast: garden.feast.day,
        garden: mark.as_str(),
        season: Season::of(garden),
        plan,
        checksum: None,
    };
    file.checksum = Some(seal::seal(&json(&file)));
    let mut text = json(&file);
    text.push('\n');
    text
}

/// Names, numbers and lists in memory: there is nothing here that can fail. Should it fail after
/// all, the file says so and is refused when it is read.
fn json(file: &File<&str, &Plan>) -> String {
    serde_json::to_string_pretty(file).unwrap_or_else(|e| e.to_string())
}

/// True if a text is a saved plan, of whatever version and project, just as the program wrote it:
/// only white space may differ. False for a plan that was edited, one of a form without a checksum,
/// and anything else. It guards against edits and mistakes, not against forgers.
#[must_use]
pub fn is_as_written(text: &str) -> bool {
    seal::is_sealed(text)
}

/// Whose a file is that stands where a plan is to be saved.
#[must_use]
pub fn author(bytes: &[u8]) -> Author {
    match std::str::from_utf8(bytes) {
        Ok(text) if is_as_written(text) => Author::Program,
        // It may be no JSON any more, but it was a plan.
        Ok(text) if text.contains("\"tureen_plan\"") => Author::Edited,
        _ => Author::Other,
    }
}

/// Reads a saved plan.
///
/// # Errors
/// The first thing that is wrong, with its place where it has one.
pub fn read(text: &str) -> Result<SavedPlan, SavedError> {
    let value: serde_json::Value = serde_json::from_str(text).map_err(SavedError::new)?;
    let version = value.get("tureen_plan").ok_or(SavedError::NotAPlan)?;
    if *version != VERSION {
        return Err(SavedError::OtherVersion {
            expected: VERSION,
            got: version.to_string(),
        });
    }
    let file: File<String, Plan> = serde_json::from_str(text).map_err(SavedError::new)?;
    Ok(SavedPlan {
        program: file.program,
        project: file.project,
        feast: file.feast,
        garden: file.garden,
        season: file.season,
        plan: file.plan,
        unchanged: is_as_written(text),
    })
}

impl SavedPlan {
    /// The plan, if it was made for this project and this day, and what happened since.
    ///
    /// # Errors
    /// `OtherProject` or `OtherFeast`.
    pub fn for_garden(self, garden: &Garden) -> Result<(Plan, Since), SavedError> {
        if self.project != garden.name {
            return Err(SavedError::OtherProject {
                expected: garden.name.clone(),
                got: self.project,
            });
        }
        if self.feast != garden.feast.day {
            return Err(SavedError::OtherFeast {
                expected: garden.feast.day,
                got: self.feast,
            });
        }
        let since = if !self.unchanged {
            Since::Edited
        } else if self.garden == mark(garden) {
            Since::Nothing
        } else if self.program == PROGRAM {
            Since::ProjectChanged
        } else {
            Since::ProgramChanged
        };
        Ok((self.plan, since))
    }
}
