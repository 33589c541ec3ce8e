//! The sections [[grade]]: classes with their slots, and who carries on after moving up.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span, peek};
use crate::garden::{Class, Grade, GradeAt, HandOver, SchoolYear};

use super::assumed::Assumed;
use super::figures::count;
use super::kind::{text, word};
use super::lists::some;
use super::names::{listed, near, quote};
use super::order::in_order;
use super::slot::{RawClass, check_slots, read_class};
use super::table::{Table, table};

/// What the file says about handing over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Hand {
    SameChildren,
    SameGrade,
    Leaves,
}

const HANDS: [(&str, Hand); 3] = [
    ("same children", Hand::SameChildren),
    ("same grade", Hand::SameGrade),
    ("leaves", Hand::Leaves),
];

/// One section as given.
pub struct RawGrade {
    span: Span,
    id: Read<Given<String>>,
    name: Read<Option<Given<String>>>,
    age: Read<Option<Given<u32>>>,
    classes: Read<Given<Vec<Given<RawClass>>>>,
    hand_over: Read<Option<Given<Hand>>>,
    adopted_by: Read<Option<Given<String>>>,
}

/// Reads one section.
pub fn read(t: &mut Table<'_, '_>) -> RawGrade {
    let example = "[{ name = \"2a\", children = 20, day = \"Tue\" }]";
    RawGrade {
        span: t.span(),
        id: t.need("id", "its short name, in quotes", "\"2\"", text()),
        name: t.maybe("name", "its full name", "Grade and the `id`", text()),
        age: t.maybe(
            "age",
            "of most of its children when the plan begins",
            "none is too young",
            count(3..=25),
        ),
        classes: t.need(
            "classes",
            "its classes, and when they have garden lessons",
            example,
            some(table("this class", read_class)),
        ),
        hand_over: t.maybe(
            "hand_over",
            "who goes on with its plants when the grades move up",
            "same children",
            word(&HANDS),
        ),
        adopted_by: t.maybe(
            "adopted_by",
            "the `id` of the grade that takes over; needed with \"leaves\"",
            "none",
            text(),
        ),
    }
}

/// The grades' ids with their positions, and the ages of their children.
pub struct GradeIds {
    ids: BTreeMap<String, usize>,
    ages: Vec<Option<u32>>,
}

impl GradeIds {
    /// Gathers the ids; reports those that stand twice.
    pub fn of(raw: &[Given<RawGrade>], findings: &mut Findings) -> Self {
        let ids = raw.iter().map(|grade| grade.value.id.as_ref().ok());
        let age = |grade: &Given<RawGrade>| Some(grade.value.age.ok()??.value);
        Self {
            ids: unique("grades", "id", ids, findings),
            ages: raw.iter().map(age).collect(),
        }
    }

    /// All grades whose id is sound, in the order of the file: position, id and age.
    pub fn all(&self) -> Vec<(GradeAt, &str, Option<u32>)> {
        let ids = self.ids.iter();
        let mut all: Vec<_> = ids
            .map(|(id, at)| {
                (
                    GradeAt(*at),
                    id.as_str(),
                    self.ages.get(*at).copied().flatten(),
                )
            })
            .collect();
        all.sort_by_key(|(at, ..)| *at);
        all
    }

    /// The positions of some grades, each once, in the order of their sections.
    pub fn find_all(&self, ids: &[Given<String>], findings: &mut Findings) -> Read<Vec<GradeAt>> {
        let found: Vec<Read<GradeAt>> = ids.iter().map(|id| self.find(id, findings)).collect();
        let mut grades: Vec<GradeAt> = found.into_iter().collect::<Read<_>>()?;
        grades.sort_unstable();
        grades.dedup();
        Ok(grades)
    }

    /// The position of a grade; reports it if there is none.
    pub fn find(&self, id: &Given<String>, findings: &mut Findings) -> Read<GradeAt> {
        self.ids
            .get(&id.value)
            .map(|at| GradeAt(*at))
            .ok_or_else(|| {
                let cause = format!("there is no grade with the id {}", quote(&id.value));
                findings.report(
                    Problem::new(Code::NoSuchGrade, cause)
                        .at(id.span, "")
                        .remedy(self.hint(&id.value)),
                )
            })
    }

    fn hint(&self, id: &str) -> String {
        let list = self.list();
        match near(id, self.ids.keys().map(String::as_str)) {
            Some(other) => format!("did you mean {}? The grades are {list}", quote(other)),
            None => format!("the grades are {list}"),
        }
    }

    /// All ids, for messages.
    fn list(&self) -> String {
        listed(self.ids.keys().map(String::as_str))
    }
}

/// Positions by id or name; reports those that stand twice.
pub fn unique<'g>(
    whose: &str,
    key: &str,
    ids: impl Iterator<Item = Option<&'g Given<String>>>,
    findings: &mut Findings,
) -> BTreeMap<String, usize> {
    let mut seen: BTreeMap<&str, (usize, Span)> = BTreeMap::new();
    for (at, id) in ids.enumerate() {
        let Some(id) = id else { continue };
        match seen.get(id.value.as_str()) {
            Some((_, first)) => {
                let cause = format!("two {whose} have the {key} {}", quote(&id.value));
                findings.report(
                    Problem::new(Code::DuplicateId, cause)
                        .at(id.span, "the second")
                        .also(*first, "the first")
                        .remedy("give one of them another name"),
                );
            }
            None => {
                seen.insert(&id.value, (at, id.span));
            }
        }
    }
    seen.into_iter()
        .map(|(id, (at, _))| (id.to_owned(), at))
        .collect()
}

/// The grades, if every part of them is sound. `moving` tells that they move up within the plan.
pub fn check(
    raw: Vec<Given<RawGrade>>,
    ids: &GradeIds,
    year: Read<&SchoolYear>,
    moving: bool,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Vec<Grade>> {
    check_class_names(&raw, findings);
    let leaving: Vec<bool> = raw
        .iter()
        .map(|g| matches!(&g.value.hand_over, Ok(Some(hand)) if hand.value == Hand::Leaves))
        .collect();
    let grades: Vec<Read<Grade>> = raw
        .into_iter()
        .map(|raw| {
            let hand_over = check_hand_over(&raw.value, ids, &leaving, moving, findings, assumed);
            let classes = raw.value.classes;
            let classes = classes.and_then(|classes| {
                let classes = classes.value.into_iter();
                let checked: Vec<Read<Class>> = classes
                    .map(|class| check_class(class.value, year, findings, assumed))
                    .collect();
                checked.into_iter().collect()
            });
            let id = raw.value.id?.value;
            Ok(Grade {
                name: raw
                    .value
                    .name?
                    .map_or_else(|| format!("Grade {id}"), |n| n.value),
                id,
                age: raw.value.age?.map(|age| age.value),
                classes: classes?,
                hand_over: hand_over?,
            })
        })
        .collect();
    grades.into_iter().collect()
}

/// Class names are unique in the whole school.
fn check_class_names(raw: &[Given<RawGrade>], findings: &mut Findings) {
    let names = raw
        .iter()
        .filter_map(|grade| grade.value.classes.as_ref().ok())
        .flat_map(|classes| &classes.value)
        .map(|class| class.value.name.as_ref().ok());
    unique("classes", "name", names, findings);
}

/// A class that first meets after the feast has a slip in its date.
pub fn check_first_days(
    raw: &[Given<RawGrade>],
    feast: Read<Given<Date>>,
    findings: &mut Findings,
) {
    let Ok(feast) = feast else { return };
    let classes = raw
        .iter()
        .filter_map(|grade| grade.value.classes.as_ref().ok());
    for class in classes.flat_map(|classes| &classes.value) {
        if let Some(from) = class.value.first_day() {
            // What is wrong is told; nothing else hangs on it.
            let _ = in_order(("from", from), ("feast", feast), findings);
        }
    }
}

fn check_class(
    raw: RawClass,
    year: Read<&SchoolYear>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Class> {
    let slots = year.and_then(|year| check_slots(&raw, year, findings, assumed));
    Ok(Class {
        name: raw.name?.value,
        children: raw.children?.value,
        slots: slots?,
        falls_out: Vec::new(),
    })
}

fn check_hand_over(
    raw: &RawGrade,
    ids: &GradeIds,
    leaving: &[bool],
    moving: bool,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<HandOver> {
    let (hand, adopted_by) = (raw.hand_over?, peek(&raw.adopted_by)?);
    match (hand.map(|hand| hand.value), adopted_by) {
        (Some(Hand::Leaves), Some(id)) => {
            let adopter = ids.find(id, findings)?;
            if leaving.get(adopter.0) == Some(&true) {
                let cause = format!("grade {} leaves the school itself", quote(&id.value));
                return Err(findings.report(
                    Problem::new(Code::AdopterLeaves, cause)
                        .at(id.span, "it cannot take over")
                        .remedy("name a grade that stays"),
                ));
            }
            Ok(HandOver::Leaves { adopter })
        }
        (Some(Hand::Leaves), None) => Err(findings.report(
            Problem::new(Code::MissingKey, "this grade leaves, but nobody takes over")
                .at(hand.map_or(raw.span, |hand| hand.span), "")
                .remedy("add `adopted_by = \"...\"` with the id of a grade that stays"),
        )),
        (_, Some(id)) => Err(findings.report(
            Problem::new(
                Code::KeyWithoutEffect,
                "`adopted_by` is only for a grade that leaves",
            )
            .at(id.span, "")
            .remedy("remove it, or add `hand_over = \"leaves\"`"),
        )),
        (Some(Hand::SameGrade), None) => Ok(HandOver::SameGrade),
        (Some(Hand::SameChildren), None) => Ok(HandOver::SameChildren),
        (None, None) => {
            if let (true, Ok(id)) = (moving, &raw.id) {
                let why = "those who sow shall also pick";
                assumed.note_for(&id.value, "hand_over = \"same children\"", why);
            }
            Ok(HandOver::SameChildren)
        }
    }
}
