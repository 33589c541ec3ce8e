//! What forbids other days for a step, in the words of someone who stands in the garden.

use crate::checker::{DayLimit, Fault, PlaceFault, Violation};
use crate::plan::{StepKind, TiedTo};
use crate::units::Minutes;

use super::broken;
use super::day_limits::told;
use super::step_words;
use super::view::View;
use crate::words::{count, minutes};

/// The sentences of all that forbids some days for a step of a kind, each once.
pub(super) fn sentences(view: &View<'_>, kind: StepKind, violations: &[Violation]) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for violation in violations {
        let text = match &violation.fault {
            Fault::Day {
                step,
                limit: DayLimit::Order,
                ..
            } if step.kind.facts().tied_to == Some(TiedTo::Before(kind)) => {
                let tied = step_words::of(step.kind).doing;
                format!("{tied} would begin before the step before it is over")
            }
            Fault::Day {
                step,
                limit: DayLimit::Order,
                ..
            } if step.kind != kind => {
                format!(
                    "it would not be over before \"{}\"",
                    step_words::of(step.kind).plain
                )
            }
            fault => sentence(view, fault),
        };
        if !found.contains(&text) {
            found.push(text);
        }
    }
    found
}

fn sentence(view: &View<'_>, fault: &Fault) -> String {
    let words = view.words;
    match fault {
        Fault::Age {
            weeks_lo,
            weeks_hi,
            got,
            ..
        } => age(*weeks_lo, *weeks_hi, *got),
        Fault::ShelfFull {
            mat,
            day,
            expected,
            got,
        } => format!(
            "from {} {} are wanted {}, {expected} stand ready",
            words.day(*day),
            count(*got, "flat"),
            if *mat {
                "on the heat mat"
            } else {
                "on the shelf"
            }
        ),
        Fault::ShelfClosed { day, .. } => {
            format!("the shelf may not be used on {}", words.day(*day))
        }
        Fault::HardensUnattended { gap, .. } => format!(
            "the seedlings would harden off while nobody is on site ({})",
            words.days(gap.from, gap.to)
        ),
        Fault::Day {
            limit, from, to, ..
        } => day(view, *limit, *from, *to),
        other => in_bed_or_lesson(view, other),
    }
}

/// What is wrong with the age of seedlings.
fn age(least: u32, most: u32, got: u32) -> String {
    let weeks = count(got, "week");
    match got > most {
        true => format!("the seedlings are {weeks} old when they are planted out, at most {most}"),
        false => {
            format!(
                "the seedlings are only {weeks} old when they are planted out, at least {least}"
            )
        }
    }
}

/// What is wrong with beds and lessons.
fn in_bed_or_lesson(view: &View<'_>, fault: &Fault) -> String {
    let words = view.words;
    match fault {
        Fault::SessionOverfull {
            class,
            day,
            expected,
            got,
        } => format!(
            "class {class} has {} of work on {}, in a session of {}",
            minutes(Minutes(*got)),
            words.day(*day),
            minutes(Minutes(*expected))
        ),
        Fault::StripTakenTwice {
            bed,
            strip,
            day,
            first,
            second,
        } => format!(
            "on {} {} and {} want the same strip {strip} of bed {bed}",
            words.day(*day),
            first.ingredient,
            second.ingredient
        ),
        Fault::Visits {
            class, expected: 0, ..
        } => format!("it is not the turn of class {class}"),
        Fault::Visits { class, .. } => format!("class {class} would not take part"),
        Fault::Rotation { .. } | Fault::FamilyAgain { .. } => family(view, fault),
        Fault::TooRarely { got, years, .. } => {
            format!("it would be ready in only {got} of {years} weather years")
        }
        Fault::Place {
            bed,
            why: PlaceFault::NotFreeUntil(day),
            ..
        } => format!("bed {bed} is not free until {}", words.day(*day)),
        other => broken::in_words(other, words),
    }
}

/// What is wrong with a crop family.
fn family(view: &View<'_>, fault: &Fault) -> String {
    match fault {
        Fault::Rotation {
            bed,
            family,
            grew_in,
            years_hard,
            ..
        } => format!(
            "bed {bed} carried the {family} family in {grew_in}, which must keep away for {}",
            count(*years_hard, "year")
        ),
        Fault::FamilyAgain {
            bed,
            strip,
            family,
            before,
            years_hard,
            ..
        } => format!(
            "strip {strip} of bed {bed} carries {} before, also of the {family} family, which \
             must keep away for {}",
            before.ingredient,
            count(*years_hard, "year")
        ),
        other => broken::in_words(other, view.words),
    }
}

/// Why a day is wrong.
fn day(
    view: &View<'_>,
    limit: DayLimit,
    from: Option<crate::calendar::Date>,
    to: Option<crate::calendar::Date>,
) -> String {
    let why = told(limit).forbids;
    match (from, to) {
        (Some(from), Some(to)) if limit == DayLimit::Thinning => {
            format!("{why} (possible {})", view.words.days(from, to))
        }
        (_, Some(to)) => format!("{why} (until {})", view.words.day(to)),
        (Some(from), None) => format!("{why} (possible from {} on)", view.words.day(from)),
        (None, None) => why.to_owned(),
    }
}
