//! Shelf, heat mat, age of seedlings, hardening off.

use crate::checker::Fault;

use super::references::planting;
use crate::words::{Words, count, sentence as capital};

/// The sentence of a fault of this group.
pub(super) fn sentence(fault: &Fault, words: Words) -> Option<String> {
    let text = match fault {
        Fault::ShelfClosed { planting: p, day } => format!(
            "{} is on the shelf on {}, when the shelf may not be used.",
            capital(&planting(p)),
            words.day(*day)
        ),
        Fault::ShelfFull {
            mat,
            day,
            expected,
            got,
        } => format!(
            "From {} the {} holds {} of the {expected} that fit.",
            words.day(*day),
            if *mat { "heat mat" } else { "shelf" },
            count(*got, "flat")
        ),
        Fault::Mat { planting: p } => {
            format!(
                "{} does not need a heat mat, or there is none.",
                capital(&planting(p))
            )
        }
        Fault::NeverUp { planting: p } => format!(
            "{} does not come up at the warmth of the room or mat.",
            capital(&planting(p))
        ),
        Fault::Age {
            planting: p,
            weeks_lo,
            weeks_hi,
            got,
        } => format!(
            "{} is planted out {} after sowing; {weeks_lo} to {weeks_hi} weeks are right.",
            capital(&planting(p)),
            count(*got, "week")
        ),
        Fault::HardensUnattended { planting: p, gap } => format!(
            "{} hardens off while nobody is on site ({}).",
            capital(&planting(p)),
            words.days(gap.from, gap.to)
        ),
        _ => return None,
    };
    Some(text)
}
