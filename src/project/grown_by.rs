//! Which grades may grow an ingredient: those that the file names, else all that are old enough
//! for the crop. Which of them does, the plan decides; unless all that are named do it together.

use crate::diagnostic::{Code, Findings, Given, Problem, Read, peek};
use crate::garden::{Crop, FARTHEST, Garden, Method, Team};

use super::assumed::Assumed;
use super::grade::GradeIds;
use super::ingredient::{Around, RawIngredient};
use super::names::{listed, quote};

/// The teams that the file names, in the order of the sections of grades; `None` if it leaves them open.
pub fn named(
    raw: &RawIngredient,
    around: &Around<'_>,
    findings: &mut Findings,
) -> Read<Option<Vec<Team>>> {
    let together = raw.together?.filter(|given| given.value);
    let given = peek(&raw.grade)?;
    let Some(given) = given else {
        return match together {
            Some(flag) => Err(findings.report(too_few(flag, "this ingredient names no grade"))),
            None => Ok(None),
        };
    };
    let grades = around.grades?.find_all(&given.value, findings)?;
    let Some(flag) = together else {
        return Ok(Some(grades.into_iter().map(Team::from).collect()));
    };
    if let Some(twice) = second_of_two(&given.value) {
        let cause = format!("grade {} is named twice", quote(&twice.value));
        let problem = Problem::new(Code::DuplicateId, cause).at(twice.span, "the second");
        return Err(findings.report(problem.remedy("name each grade that shares the crop once")));
    }
    let team: Team = grades.iter().copied().collect();
    match grades.len() {
        1 => Err(findings.report(too_few(flag, "this ingredient names only one grade"))),
        several if team.size() < several => Err(findings.report(too_far(flag))),
        _ => Ok(Some(vec![team])),
    }
}

fn too_far(flag: Given<bool>) -> Problem {
    let cause =
        "the sections of these grades, or of who adopts their plantings, stand too far apart";
    Problem::new(Code::OutOfRange, cause)
        .at(
            flag.span,
            format!("fewer than {FARTHEST} sections from first to last"),
        )
        .remedy("write these sections one after the other")
}

fn too_few(flag: Given<bool>, cause: &str) -> Problem {
    Problem::new(Code::KeyWithoutEffect, cause)
        .at(flag.span, "nobody to share the crop with")
        .remedy("name two or more, such as `grade = [\"1\", \"4\"]`, or remove `together`")
}

/// What stands in a list a second time.
fn second_of_two(ids: &[Given<String>]) -> Option<&Given<String>> {
    let stood_before = |at: usize| ids[..at].iter().any(|id| id.value == ids[at].value);
    (0..ids.len())
        .find(|at| stood_before(*at))
        .map(|at| &ids[at])
}

/// Grades that grow something together need weeks in which each of their classes has a lesson, and the file has them
/// near each other.
pub fn check_teams(garden: &Garden, raw: &[Given<RawIngredient>], findings: &mut Findings) {
    for (ingredient, raw) in garden.ingredients.iter().zip(raw) {
        let together = raw.value.together.ok().flatten();
        let (Some(flag), Some(team)) = (together, ingredient.only_team()) else {
            continue;
        };
        if !garden.stand_near(team) {
            findings.report(too_far(flag));
        } else if !garden.meets_together(team) {
            findings.report(never_meet(flag, &garden.ids_of(team)));
        }
    }
}

fn never_meet(flag: Given<bool>, ids: &[String]) -> Problem {
    let ids = listed(ids.iter().map(String::as_str));
    let cause = format!("the classes of grades {ids} never all have lessons in the same weeks");
    Problem::new(Code::NeverMeet, cause)
        .at(flag.span, "a step needs them all")
        .remedy("move a class's lessons (`day`, `every`, `from`), or remove `together`")
}

/// The grades that are old enough, where the file names none: a grade without an age always is,
/// and the oldest are if no other is.
pub fn chosen(
    name: &str,
    crop: &Crop,
    methods: &[Method],
    ids: &GradeIds,
    assumed: &mut Assumed,
) -> Vec<Team> {
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
    grades.into_iter().map(|(at, ..)| Team::from(at)).collect()
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
