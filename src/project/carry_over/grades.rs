//! The children of a file move up: the classes of a grade have as many as those of the grade below it had.

use toml::de::DeTable;

use crate::garden::{Class, Garden, GradeAt};

use super::edits::Edits;
use super::tables::{int_span, key_span, tables};
use super::told::{Children, MARK};

/// The most children that the file lets a class have.
const MOST: u32 = 60;

/// Moves all children up, and tells what each grade has now.
pub fn move_up(file: &DeTable<'_>, garden: &Garden, edits: &mut Edits<'_>) -> Vec<Children> {
    let raw: Vec<&DeTable<'_>> = tables(file, "grade").map(|(table, _)| table).collect();
    let mut told = Vec::new();
    for (at, table) in garden.grade_positions().zip(raw) {
        let now = below(garden, at).and_then(|below| Some((below, moved(garden, below, at)?)));
        let (were, counts) =
            now.map_or((None, Vec::new()), |(below, counts)| (Some(below), counts));
        for ((class, _), count) in tables(table, "classes").zip(&counts) {
            if let Some(place) = int_span(class, "children") {
                edits.put(place, count.to_string());
            }
        }
        let classes = |at: GradeAt| garden[at].classes.len();
        let own = Children {
            grade: garden[at].name.clone(),
            were: were.map(|below| garden[below].name.clone()),
            count: match were {
                Some(_) => counts.iter().sum(),
                None => garden.children_of(at),
            },
            in_other_classes: were.is_some_and(|below| classes(below) != classes(at)),
        };
        if let (Some(remark), Some(place)) = (remark(&own), key_span(table, "classes")) {
            edits.line_before(place.start, &format!("{MARK}{remark}"));
        }
        told.push(own);
    }
    told
}

/// What is said where it has to be looked at.
fn remark(own: &Children) -> Option<&'static str> {
    match (&own.were, own.in_other_classes) {
        (None, _) => Some(
            "how many children begin here is not known yet; these are as many as the year before.",
        ),
        (Some(_), true) => {
            Some("these children were in another number of classes: part them as they will be.")
        }
        (Some(_), false) => None,
    }
}

/// The grade whose children come into a grade: by its number the one before, else the one that stands before it. Of
/// a grade that has no such neighbour in the garden nobody knows.
fn below(garden: &Garden, at: GradeAt) -> Option<GradeAt> {
    let number = |at: GradeAt| garden[at].id.parse::<u32>().ok();
    let before = at.0.checked_sub(1).map(GradeAt);
    match number(at) {
        Some(own) => {
            let mut all = garden.grade_positions();
            let numbered = all.find(|other| number(*other).is_some_and(|other| other + 1 == own));
            // The first grade with a number comes after those without, such as a kindergarten.
            let youngest = || before.filter(|before| own <= 1 && number(*before).is_none());
            numbered.or_else(youngest)
        }
        None => before.filter(|before| number(*before).is_none()),
    }
}

/// How many children each class of a grade has when those below have moved up: class by class, or shared out evenly
/// where they were in more or fewer classes. `None` where that would make too large a class.
fn moved(garden: &Garden, below: GradeAt, at: GradeAt) -> Option<Vec<u32>> {
    let (were, are) = (&garden[below].classes, garden[at].classes.len());
    if were.len() == are {
        return Some(were.iter().map(|class: &Class| class.children).collect());
    }
    let (all, classes) = (garden.children_of(below), u32::try_from(are).ok()?);
    let (each, rest) = (all.checked_div(classes)?, all.checked_rem(classes)?);
    let counts: Vec<u32> = (0..classes).map(|k| each + u32::from(k < rest)).collect();
    counts
        .iter()
        .all(|count| (1..=MOST).contains(count))
        .then_some(counts)
}
