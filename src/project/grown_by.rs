//! Which grades may grow an ingredient: those that the file names, else all that are old enough
//! for the crop. Which of them does, the plan decides.

use crate::diagnostic::{Findings, Read};
use crate::garden::{Crop, GradeAt, Method};

use super::assumed::Assumed;
use super::grade::GradeIds;
use super::ingredient::{Around, RawIngredient};
use super::names::listed;

/// The grades that the file names, in the order of their sections; `None` if it leaves them open.
pub fn named(
    raw: &RawIngredient,
    around: &Around<'_>,
    findings: &mut Findings,
) -> Read<Option<Vec<GradeAt>>> {
    let Some(given) = raw.grade.as_ref().map_err(|reported| *reported)? else {
        return Ok(None);
    };
    around.grades?.find_all(&given.value, findings).map(Some)
}

/// The grades that are old enough, where the file names none: a grade without an age always is,
/// and the oldest are if no other is.
pub fn chosen(
    name: &str,
    crop: &Crop,
    methods: &[Method],
    ids: &GradeIds,
    assumed: &mut Assumed,
) -> Vec<GradeAt> {
    let all = ids.all();
    let least = crop.ages.least(methods).unwrap_or(0);
    let old_enough = |from: u32| {
        let mut grades = all.clone();
        grades.retain(|(_, _, age)| age.is_none_or(|age| age >= from));
        grades
    };
    let mut grades = old_enough(least);
    let none_is = grades.is_empty();
    if none_is {
        let oldest = all.iter().filter_map(|(_, _, age)| *age).max();
        grades = old_enough(oldest.unwrap_or(0));
    }
    let left_out = grades.len() < all.len();
    let ages_known = all.iter().any(|(_, _, age)| age.is_some());
    let why = match work_by_age(crop, methods) {
        Some(work) if none_is => format!("{work}; no grade is, so the oldest"),
        Some(work) if left_out => format!("{work}; the program chooses among these"),
        Some(work) if !ages_known => {
            format!("the program chooses; {work}, but no grade has an `age` in the file")
        }
        _ => "the program chooses".to_owned(),
    };
    let ids = listed(grades.iter().map(|(_, id, _)| *id));
    let what = match grades.len() {
        1 => format!("grade = {ids}"),
        _ => format!("grade = [{ids}]"),
    };
    assumed.note_for(name, what, &why);
    grades.into_iter().map(|(at, ..)| at).collect()
}

/// `by common practice children are 7 to sow tiny seed`: the work that is not for all ages.
fn work_by_age(crop: &Crop, methods: &[Method]) -> Option<String> {
    let sowing = crop.ages.to_sow(methods);
    let sowing = sowing.map(|age| format!("{age} and older to sow fine seed"));
    let harvest = crop.ages.to_harvest();
    let harvest = harvest.map(|age| format!("{age} and older to cut with a knife"));
    let work: Vec<String> = sowing.into_iter().chain(harvest).collect();
    (!work.is_empty()).then(|| format!("by common practice children are {}", work.join(", ")))
}
