//! Shelf, heat mat, age of seedlings, hardening off.

use crate::checker::Fault;

use super::references::planting;
use super::told::Told;
use crate::words::{Words, count};

/// The words of a fault of this group.
pub(super) fn told(fault: &Fault, words: Words) -> Option<Told> {
    let told = match fault {
        Fault::ShelfClosed { planting: p, day } => Told::of(
            &planting(p),
            format!("the shelf may not be used on {}", words.day(*day)),
        ),
        Fault::ShelfFull {
            mat,
            day,
            expected,
            got,
        } => Told::alone(format!(
            "{} are wanted on the {} from {} on, and {expected} stand ready",
            count(*got, "flat"),
            if *mat { "heat mat" } else { "shelf" },
            words.day(*day)
        )),
        Fault::Mat { planting: p } => Told::of(
            &planting(p),
            "it does not need a heat mat, or there is none",
        ),
        Fault::NeverUp { planting: p } => Told::of(
            &planting(p),
            "it does not come up at the warmth of the room or mat",
        ),
        Fault::TooFewSeedlings {
            planting: p,
            expected,
            got,
        } => Told::of(
            &planting(p),
            format!(
                "{} are to be planted out, and {expected} stand on the shelf",
                count(*got, "seedling")
            ),
        ),
        Fault::Age {
            planting: p,
            weeks_lo,
            weeks_hi,
            got,
        } => Told::of(&planting(p), age(*weeks_lo, *weeks_hi, *got)),
        Fault::HardensUnattended { planting: p, gap } => Told::of(
            &planting(p),
            format!(
                "the seedlings harden off while nobody is on site ({})",
                words.days(gap.from, gap.to)
            ),
        ),
        _ => return None,
    };
    Some(told)
}

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
