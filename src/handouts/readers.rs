//! For whom a folder of handouts is written: the school, a grade or a class.

use crate::garden::{ClassAt, GradeAt};
use crate::report::handouts::Reader;

/// For whom a folder is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Readers {
    /// The whole school.
    All,
    /// One grade: its page, its children's page, and the calendars of its classes.
    Grade(GradeAt),
    /// One class: the pages of its grade, and its own calendar.
    Class(ClassAt),
}

impl Readers {
    /// True if a page is for them.
    pub(super) fn include(self, reader: Reader) -> bool {
        let grade = match self {
            Self::All => return true,
            Self::Grade(grade) => grade,
            Self::Class(class) => class.grade,
        };
        matches!(reader, Reader::Grade(at) | Reader::Children(at) if at == grade)
    }

    /// True if a class's calendar is for them.
    pub(super) fn include_class(self, class: ClassAt) -> bool {
        match self {
            Self::All => true,
            Self::Grade(grade) => class.grade == grade,
            Self::Class(own) => class == own,
        }
    }
}
