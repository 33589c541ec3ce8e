//! School that falls out in the season: days on which all is closed, and single lessons.

use crate::calendar::Date;

use super::at::ClassAt;
use super::school_year::Break;

/// What falls out that the file does not know of.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Shut {
    /// Days on which the school is closed, and who cares for plants then.
    pub closed: Vec<Break>,
    /// Lessons of single classes.
    pub lessons: Vec<(ClassAt, Date)>,
}
