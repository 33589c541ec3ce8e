//! What becomes of a lesson that falls out, in a cell of a table, and what the words in that column mean.

use crate::explain::IfMissed;
use crate::facts::tasks::Task;

use super::step_words::CROWDED;
use super::view::View;

/// When a step can be made up for, or what is lost if it is not.
pub(crate) fn cell(view: &View<'_>, task: &Task<'_>, missed: Option<IfMissed>) -> String {
    match missed {
        None => String::new(),
        Some(IfMissed::Nothing) => "nothing is lost".to_owned(),
        Some(IfMissed::MadeUp(day)) => view.words.day(day),
        Some(IfMissed::AndThinned(day)) => format!("{}, thin later", view.words.day(day)),
        Some(IfMissed::Little { ready_years }) => {
            let now = view.ready_years(&task.ingredient.name);
            format!("ready in {ready_years}, not {now} years")
        }
        Some(IfMissed::Crowded) => "as soon as you can".to_owned(),
        Some(IfMissed::Lost) => "none".to_owned(),
    }
}

/// What the words in the last column mean, those that stand there.
pub(crate) fn legend(all: &[IfMissed]) -> String {
    let says = |is: fn(IfMissed) -> bool| all.iter().any(|missed| is(*missed));
    let mut text =
        "If it falls out: the day on which the same class can make up for it. \"None\": tell the \
                    coordinator at once."
            .to_owned();
    let nothing = says(|what| what == IfMissed::Nothing);
    let little = says(|what| matches!(what, IfMissed::Little { .. }));
    match (nothing, little) {
        (true, true) => {
            text += " \"Nothing is lost\", or a number of years: if the other days of picking are kept.";
        }
        (true, false) => text += " \"Nothing is lost\": if the other days of picking are kept.",
        (false, true) => text += " A number of years: if the other days of picking are kept.",
        (false, false) => {}
    }
    if says(|what| matches!(what, IfMissed::AndThinned(_))) {
        text +=
            " \"Thin later\": the planned day is then too early for it; ask the coordinator when.";
    }
    if says(|what| what == IfMissed::Crowded) {
        text += &format!(" \"As soon as you can\": no lesson comes in time, and {CROWDED}.");
    }
    text
}
