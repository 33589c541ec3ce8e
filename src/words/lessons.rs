//! What stands on the sheet of a class: what to do where nothing is due, what a cancelled lesson costs, what to write down.

use crate::explain::IfMissed;
use crate::facts::class_sheet::Quiet;
use crate::facts::hand_over::HandedOver;
use crate::facts::tasks::{Chance, Spot, Task};
use crate::garden::HandOver;
use crate::plan::StepKind;

use super::step_words::CROWDED;
use super::view::View;
use super::{minutes, sentence, tasks};

/// One thing to look after (common practice).
#[must_use]
pub fn quiet(what: Quiet) -> &'static str {
    match what {
        Quiet::TurnFlats => "Water the flats and turn them.",
        Quiet::CountSeedlings => "Count the seedlings.",
        Quiet::Seedbed => "Keep it damp; count what is up.",
        Quiet::Weed => "Pull the weeds.",
        Quiet::Leaves => "Look under the leaves for eggs.",
        Quiet::Measure => "Measure and draw the tallest plant.",
        Quiet::Mulch => "Water if it is dry; mulch.",
        Quiet::KeepPicked => "Pick all that is ripe: so it goes on bearing.",
        Quiet::Ripeness => "Ripe soon? Tell the coordinator.",
    }
}

/// `In all of bed 1, about 4 of 8 plants. 11 of 40 min.`
#[must_use]
pub fn details(view: &View<'_>, task: &Task<'_>) -> String {
    // Where it stands is told where something is set there; what is picked there is seen.
    let place = match task.spot {
        Spot::Strips if task.part.is_some() => {
            Some(format!("in {}", tasks::spot(view.garden, task)))
        }
        Spot::Strips | Spot::Shelf | Spot::NearShelf | Spot::DryingPlace | Spot::Patch => None,
    };
    let told: Vec<String> = place
        .into_iter()
        .chain(task.part.map(tasks::part))
        .collect();
    let takes = task.takes.zip(task.session).map(|(takes, session)| {
        format!(
            "{} of {}.",
            minutes(takes).replace("\u{a0}min", ""),
            minutes(session)
        )
    });
    let told = (!told.is_empty()).then(|| sentence(&format!("{}.", told.join(", "))));
    told.into_iter().chain(takes).collect::<Vec<_>>().join(" ")
}

/// `First of 3 days: only if it is ripe.`
#[must_use]
pub fn chance(chance: Chance) -> String {
    let Chance { number, of } = chance;
    match number {
        last if last == of => format!("Last of {of} days, unless it was picked before."),
        _ => format!(
            "{} of {of} days: only if it is ripe.",
            sentence(tasks::ordinal(number))
        ),
    }
}

/// What it costs if the lesson falls out, as the replay of the plan has it.
#[must_use]
pub fn if_cancelled(view: &View<'_>, task: &Task<'_>, missed: IfMissed) -> String {
    let told = match missed {
        IfMissed::Nothing => "nothing is lost".to_owned(),
        IfMissed::MadeUp(day) => format!("make it up on {}", view.words.day(day)),
        IfMissed::AndThinned(day) => {
            format!("make it up on {}, and thin later", view.words.day(day))
        }
        IfMissed::Little { ready_years } => format!(
            "ready in {ready_years} years, not {}",
            view.ready_years(&task.ingredient.name)
        ),
        IfMissed::Crowded => "as soon as you can".to_owned(),
        IfMissed::Lost => return "No other day makes up for it.".to_owned(),
    };
    format!("If it is cancelled: {told}.")
}

/// What the sheet means by that, of what stands there.
#[must_use]
pub fn legend(all: &[IfMissed]) -> String {
    let says = |is: fn(&IfMissed) -> bool| all.iter().any(is);
    let crowded = sentence(&format!("{CROWDED}."));
    let mut told: Vec<&str> = Vec::new();
    if says(|missed| matches!(missed, IfMissed::Lost)) {
        told.push(
            "A bar before the day: if this lesson is cancelled, tell the coordinator the same day.",
        );
    }
    if says(|missed| matches!(missed, IfMissed::Nothing | IfMissed::Little { .. })) {
        told.push("What is said of picking holds if the other days of picking are kept.");
    }
    if says(|missed| matches!(missed, IfMissed::AndThinned(_))) {
        told.push("\"Thin later\": the planned day is then too early; ask the coordinator when.");
    }
    if says(|missed| matches!(missed, IfMissed::Crowded)) {
        told.push(&crowded);
    }
    told.join(" ")
}

/// What is written down when a step is done.
#[must_use]
pub fn fields(kind: StepKind, words: super::Words) -> Vec<String> {
    match kind {
        StepKind::Sow => vec!["First one up on".to_owned()],
        StepKind::Pick => vec![format!("Picked, {}", words.unit_of_mass())],
        StepKind::PotUp | StepKind::Harden | StepKind::PlantOut | StepKind::Thin => Vec::new(),
        StepKind::Cure => Vec::new(),
    }
}

/// What the day of moving up means for the children of a grade.
#[must_use]
pub fn moves_up(view: &View<'_>, over: Option<HandedOver>, adopted: &[String]) -> String {
    let own = over.map(|over| match over.to {
        HandOver::SameChildren => "these children are one grade up and carry on.".to_owned(),
        HandOver::SameGrade => format!(
            "the children who then enter {} carry on.",
            view.grade_name(over.grade)
        ),
        HandOver::Leaves { adopter } => format!("{} takes over.", view.grade_name(adopter)),
    });
    let adopted =
        (!adopted.is_empty()).then(|| format!("you also look after {}.", super::list(adopted)));
    let told: Vec<String> = own.into_iter().chain(adopted).collect();
    format!("From this day {}", told.join(" And "))
}
