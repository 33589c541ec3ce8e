//! What a year leaves to the next, and what it changes in the file.

use crate::calendar::Date;

/// How every remark begins that is written into the new file. The next time those of the year before go.
pub const MARK: &str = "# carried over: ";

/// Something that grew in a bed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Grown {
    /// The id of the bed.
    pub bed: String,
    /// The year in which it was cleared.
    pub year: i32,
    /// The crop, or its family.
    pub crop: String,
}

/// What a year leaves to the next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Left {
    /// What grew in the beds.
    pub grown: Vec<Grown>,
    /// What grew before this year keeps nothing away any more.
    pub since: i32,
    /// What is to be said at the head of the file, line by line.
    pub remarks: Vec<String>,
}

/// The children of a grade in the next year.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Children {
    /// The grade's name.
    pub grade: String,
    /// The name of the grade in which they were; `None` where that is not known, and the count is the old one.
    pub were: Option<String>,
    /// How many they are.
    pub count: u32,
    /// True if they were in another number of classes, and are shared out evenly.
    pub in_other_classes: bool,
}

/// Something that stood in a bed or on the shelf, and is over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gone {
    /// What it was.
    pub what: What,
    /// The id of its bed.
    pub bed: Option<String>,
}

/// What is over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// A crop that stood for the dish before the plan began.
    ForTheDish(String),
    /// A crop that stood for no ingredient.
    ForNone(String),
    /// Seedlings.
    Seedlings(String),
    /// Something until `free_from`, of which the file does not tell what it is.
    Unknown,
}

/// The file of the next year, and what changed in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CarriedOver {
    /// The file.
    pub text: String,
    /// What the day is called.
    pub name: String,
    /// The day of the next feast.
    pub feast: Date,
    /// The children, grade by grade.
    pub children: Vec<Children>,
    /// What is over.
    pub gone: Vec<Gone>,
    /// The weather file that the old one names, and the name of its copy.
    pub weather: Option<(String, String)>,
}
