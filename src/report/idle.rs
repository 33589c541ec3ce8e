//! Grades that grow nothing in a plan: why, and what they can do all the same.

use crate::garden::GradeAt;

use super::page::Page;
use super::view::View;
use super::words::list;

/// Why a grade grows nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Idle {
    /// The file gives every ingredient to other grades.
    GivenToOthers,
    /// Of the ingredients whose grade the file leaves open none is for its age.
    TooYoung,
    /// More grades could grow something than there are ingredients for them.
    TooFewIngredients,
}

/// Why a grade grows nothing of its own in a plan; `None` if it grows something.
#[must_use]
pub fn why(view: &View<'_>, grade: GradeAt) -> Option<Idle> {
    if view.planted_by(grade).next().is_some() {
        return None;
    }
    let ingredients = &view.garden.ingredients;
    let may = ingredients.iter().any(|i| i.grades.contains(&grade));
    let open = ingredients.iter().any(|i| i.only_grade().is_none());
    Some(match (may, open) {
        (true, _) => Idle::TooFewIngredients,
        (false, true) => Idle::TooYoung,
        (false, false) => Idle::GivenToOthers,
    })
}

/// What a grade without an ingredient can do (common practice).
const INSTEAD: &str = "mulch, weed and water the beds, look after the compost, write the labels, keep a diary of \
     weather and growth, and help to pick, wash and serve (common practice)";

impl Idle {
    /// Why, with what stands for the grade in the sentence.
    fn because(self, whom: &str) -> String {
        match self {
            Self::GivenToOthers => "the file gives every ingredient to another grade".to_owned(),
            Self::TooYoung => format!(
                "the file gives {whom} no ingredient, and those whose grade it leaves open are for \
                 older children"
            ),
            Self::TooFewIngredients => "there are more grades than ingredients for them".to_owned(),
        }
    }
}

/// A line for each reason, with the grades of which it is true.
pub(super) fn lines(view: &View<'_>) -> Vec<String> {
    let grades = view.garden.grade_positions();
    let idle = grades.filter_map(|grade| Some((why(view, grade)?, view.grade_name(grade))));
    let mut idle: Vec<(Idle, &str)> = idle.collect();
    // Stable: grades of one reason stay in the order of the file.
    idle.sort_by_key(|(why, _)| *why);
    let same = idle.chunk_by(|a, b| a.0 == b.0);
    same.filter_map(|same| {
        let names: Vec<&str> = same.iter().map(|(_, name)| *name).collect();
        let (why, _) = same.first()?;
        let [grow, they, whom] = match names.len() {
            1 => ["grows", "It", "it"],
            _ => ["grow", "They", "them"],
        };
        Some(format!(
            "{} {grow} nothing of {whose} own: {}. {they} can {INSTEAD}. To change that, add an \
             ingredient, or name another grade in the `grade` of one.",
            list(&names),
            why.because(whom),
            whose = if names.len() == 1 { "its" } else { "their" },
        ))
    })
    .collect()
}

/// What its own page says.
pub(super) fn on_its_page(view: &View<'_>, grade: GradeAt, page: &mut Page) {
    if let Some(why) = why(view, grade) {
        page.heading("What we do instead");
        page.line(&format!(
            "We grow nothing of our own: {}. We can {INSTEAD}. Ask the coordinator when.",
            why.because("us")
        ));
    }
}
