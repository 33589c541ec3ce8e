//! Why a saved plan cannot be used, and what to do about it.

use std::fmt;

use serde_json::error::Category;

use crate::calendar::Date;

/// The version before this one: the same form without checksums.
const BEFORE_CHECKSUMS: &str = "2";

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
        /// The version that this program reads.
        expected: u64,
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
    /// It goes on with something whose name the project does not know.
    NotKnown {
        /// What it should name.
        what: &'static str,
        /// The name.
        name: String,
    },
    /// Something of it was begun on a day that the project's calendar does not hold.
    OutsideCalendar {
        /// The day.
        day: Date,
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

impl SavedError {
    pub(super) fn new(error: serde_json::Error) -> Self {
        let (line, column) = (error.line(), error.column());
        let whole = error.to_string();
        let place = format!(" at line {line} column {column}");
        let what = whole.strip_suffix(&place).unwrap_or(&whole).to_owned();
        match error.classify() {
            Category::Data => Self::WrongField { line, column, what },
            Category::Syntax | Category::Eof | Category::Io => Self::NotJson { line, column, what },
        }
    }

    pub(super) fn not_known(what: &'static str, name: &str) -> Self {
        let name = name.to_owned();
        Self::NotKnown { what, name }
    }

    /// What to do about it.
    #[must_use]
    pub fn remedy(&self) -> &'static str {
        match self {
            Self::NotJson { .. } => {
                "Undo the last edit by hand, or save the plan again from the project file."
            }
            Self::NotAPlan => "Give a file that was written by saving a plan.",
            Self::OtherVersion { got, .. } if got == BEFORE_CHECKSUMS => {
                "Plan again and save. To go on with this very plan, set its `tureen_plan` to 3: it is \
                 then checked as one that was edited."
            }
            Self::OtherVersion { .. } => {
                "Save the plan again with this version of the program, or use the version that wrote it."
            }
            Self::WrongField { .. } => {
                "Correct the field, or save the plan again from the project file."
            }
            Self::NotKnown { .. } => "Give it its name again in the project file.",
            Self::OutsideCalendar { .. } => "Correct `start` or `feast` in the project file.",
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
            Self::OtherVersion { expected, got } => {
                write!(f, "saved in form {got}; this program reads form {expected}")
            }
            Self::WrongField { line, column, what } => {
                write!(f, "line {line}, column {column}: {what}")
            }
            Self::NotKnown { what, name } => {
                write!(
                    f,
                    "something of it has begun, and the project has no {what} \"{name}\""
                )
            }
            Self::OutsideCalendar { day } => write!(
                f,
                "something of it was begun on {day}, before the start of the project or after its feast"
            ),
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
