//! What each rule of a plan says.

use crate::plan::Rule;

/// What a rule says, in a sentence for the coordinator.
#[must_use]
pub fn rule_sentence(rule: Rule) -> &'static str {
    match rule {
        Rule::Space => "A strip of bed carries one planting at a time, after the bed is free.",
        Rule::Shelf => "Seedlings fit on the shelf, and warm ones on the heat mat.",
        Rule::Sessions => "Children work only when their class meets, and within its minutes.",
        Rule::Rotation => "A crop family keeps away from a bed for its years.",
        Rule::Amount => "Every ingredient reaches its least share of the target.",
        Rule::Readiness => "Steps follow one another as the crop needs, so that it is ready.",
        Rule::Participation => {
            "Every class of a grade takes part in its steps, and as many grades as can be \
             grow something."
        }
        Rule::Care => "Nothing hardens off while nobody is on site.",
        Rule::Happened => "What has begun goes on as it was begun, and nothing else has begun.",
    }
}
