//! School that falls out in the season that a saved plan is of, in names and dates.

use serde::{Deserialize, Serialize};

use crate::calendar::Date;
use crate::garden::{self, Break, Care, ClassAt, Garden};
use crate::plan::Visit;

use super::error::SavedError;

/// What a closure that the project file does not know of is called.
const CLOSED: &str = "Closure";

/// School that falls out.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Shut {
    /// Days on which the school is closed.
    pub closed: Vec<Closed>,
    /// Lessons of single classes.
    pub no_lesson: Vec<Visit>,
}

/// Days on which the school is closed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Closed {
    /// The first day.
    pub from: Date,
    /// The last day.
    pub to: Date,
    /// Who cares for plants.
    pub care: Care,
}

impl Shut {
    /// That of a garden, in names.
    pub(super) fn of(garden: &Garden, shut: &garden::Shut) -> Self {
        let closed = |closed: &Break| Closed {
            from: closed.from,
            to: closed.to,
            care: closed.care,
        };
        let visit = |(class, date): &(ClassAt, Date)| Visit {
            class: garden.class(*class).name.clone(),
            date: *date,
        };
        Self {
            closed: shut.closed.iter().map(closed).collect(),
            no_lesson: shut.lessons.iter().map(visit).collect(),
        }
    }

    /// The same without classes that a garden does not know by name.
    pub(super) fn as_far_as_known(&self, garden: &Garden) -> Self {
        let lessons = self.no_lesson.iter();
        let lessons = lessons.filter(|visit| garden.class_named(&visit.class).is_some());
        Self {
            no_lesson: lessons.cloned().collect(),
            ..self.clone()
        }
    }

    /// The same in positions of a garden.
    ///
    /// # Errors
    /// A class that the project does not know.
    pub fn in_garden(&self, garden: &Garden) -> Result<garden::Shut, SavedError> {
        let closed = self.closed.iter().map(|closed| Break {
            name: CLOSED.to_owned(),
            from: closed.from,
            to: closed.to,
            care: closed.care,
        });
        let lessons = self.no_lesson.iter().map(|visit| {
            let class = garden.class_named(&visit.class);
            let class = class.ok_or_else(|| SavedError::not_known("class", &visit.class))?;
            Ok((class, visit.date))
        });
        Ok(garden::Shut {
            closed: closed.collect(),
            lessons: lessons.collect::<Result<_, _>>()?,
        })
    }
}
