//! The saved plan: versioned JSON that a person can read and edit.
//! `{"tureen_plan": 2, "project": name, "feast": date, "plan": {...}}`

use std::fmt;

use serde::{Deserialize, Serialize};
use serde_json::error::Category;

use crate::calendar::Date;
use crate::garden::Garden;

use super::Plan;

/// The version of the form that is written, and the only one that is read.
pub const VERSION: u64 = 2;

/// The form of the file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct File<N, P> {
    tureen_plan: u64,
    project: N,
    feast: Date,
    plan: P,
}

/// A plan as it was saved, with the project that it was made for.
#[derive(Debug, Clone, PartialEq)]
pub struct SavedPlan {
    /// The project's name.
    pub project: String,
    /// The day of the feast.
    pub feast: Date,
    /// The plan.
    pub plan: Plan,
}

/// Why a saved plan cannot be used. Lines and columns count from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SavedError {
    /// The text is not JSON.
    NotJson {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// It is JSON, but not a saved plan.
    NotAPlan,
    /// It was written in a form that this program does not know.
    OtherVersion {
        /// The version in the file, as written.
        got: String,
    },
    /// A field is missing, unknown or of a wrong kind.
    WrongField {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// It was made for another project.
    OtherProject {
        /// The project's name.
        expected: String,
        /// The name in the file.
        got: String,
    },
    /// It was made for another day.
    OtherFeast {
        /// The day of the feast.
        expected: Date,
        /// The day in the file.
        got: Date,
    },
}

/// Writes a plan for a project. Fields stand in a fixed order, each on its own line.
#[must_use]
pub fn write(garden: &Garden, plan: &Plan) -> String {
    let file = File {
        tureen_plan: VERSION,
        project: garden.name.as_str(),
        feast: garden.feast.day,
        plan,
    };
    // Names, numbers and lists in memory: there is nothing here that can fail. Should it
    // fail after all, the file says so and is refused when it is read.
    let mut text = serde_json::to_string_pretty(&file).unwrap_or_else(|e| e.to_string());
    text.push('\n');
    text
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
            got: version.to_string(),
        });
    }
    let file: File<String, Plan> = serde_json::from_str(text).map_err(SavedError::new)?;
    Ok(SavedPlan {
        project: file.project,
        feast: file.feast,
        plan: file.plan,
    })
}

impl SavedPlan {
    /// The plan, if it was made for this project and this day.
    ///
    /// # Errors
    /// `OtherProject` or `OtherFeast`.
    pub fn for_garden(self, garden: &Garden) -> Result<Plan, SavedError> {
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
        Ok(self.plan)
    }
}

impl SavedError {
    fn new(error: serde_json::Error) -> Self {
        let (line, column) = (error.line(), error.column());
        let whole = error.to_string();
        let place = format!(" at line {line} column {column}");
        let what = whole.strip_suffix(&place).unwrap_or(&whole).to_owned();
        match error.classify() {
            Category::Data => Self::WrongField { line, column, what },
            Category::Syntax | Category::Eof | Category::Io => Self::NotJson { line, column, what },
        }
    }

    /// What to do about it.
    #[must_use]
    pub fn remedy(&self) -> &'static str {
        match self {
            Self::NotJson { .. } => {
                "Undo the last edit by hand, or save the plan again from the project file."
            }
            Self::NotAPlan => "Give a file that was written by saving a plan.",
            Self::OtherVersion { .. } => {
                "Save the plan again with this version of the program, or use the version that wrote it."
            }
            Self::WrongField { .. } => {
                "Correct the field, or save the plan again from the project file."
            }
            Self::OtherProject { .. } => {
                "Give the project file that the plan was made for, or make a new plan."
            }
            Self::OtherFeast { .. } => {
                "Set the feast back to the plan's day, or make a new plan for the new day."
            }
        }
    }
}

impl fmt::Display for SavedError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotJson { line, column, what } => {
                write!(f, "line {line}, column {column}: not valid JSON: {what}")
            }
            Self::NotAPlan => write!(f, "not a saved plan: it has no field `tureen_plan`"),
            Self::OtherVersion { got } => {
                write!(f, "saved in form {got}; this program reads form {VERSION}")
            }
            Self::WrongField { line, column, what } => {
                write!(f, "line {line}, column {column}: {what}")
            }
            Self::OtherProject { expected, got } => {
                write!(f, "the plan was made for \"{got}\", not for \"{expected}\"")
            }
            Self::OtherFeast { expected, got } => {
                write!(
                    f,
                    "the plan was made for {got}, but the feast is on {expected}"
                )
            }
        }
    }
}

impl std::error::Error for SavedError {}
