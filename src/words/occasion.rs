//! What is cooked, by whom, on which day and for how many: how every page opens.

use super::Words;
use crate::garden::Garden;

/// `Soup day, Larch Hill School: Fri 8 Oct 2027, 260 portions, in the kitchen by ...`.
pub(crate) fn occasion(garden: &Garden) -> String {
    let feast = garden.feast;
    let words = Words::of(garden);
    format!(
        "{}: {}, {} portions, in the kitchen by {}.",
        whose(garden),
        words.full_day(feast.day),
        feast.portions,
        words.day(feast.deliver_by)
    )
}

/// `Soup day, Larch Hill School`.
pub(crate) fn whose(garden: &Garden) -> String {
    match &garden.school {
        Some(school) => format!("{}, {school}", garden.name),
        None => garden.name.clone(),
    }
}
