//! Grades that grow nothing in a plan: why, and what they can do all the same.

use crate::facts::idle::Idle;

/// What a grade without an ingredient can do (common practice).
pub(crate) const INSTEAD: &str = "mulch, weed and water the beds, look after the compost, write the labels, keep a diary of \
     weather and growth, and help to pick, wash and serve (common practice)";

/// Why, with what stands for the grade in the sentence.
pub(crate) fn because(idle: Idle, whom: &str) -> String {
    match idle {
        Idle::GivenToOthers => "the file gives every ingredient to another grade".to_owned(),
        Idle::TooYoung => format!(
            "the file gives {whom} no ingredient, and those whose grade it leaves open are for older \
             children"
        ),
        Idle::TooFewIngredients => "there are more grades than ingredients for them".to_owned(),
    }
}
