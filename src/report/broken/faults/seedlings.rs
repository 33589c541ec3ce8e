//! Shelf, heat mat, age of seedlings, hardening off.

use crate::checker::Fault;

use super::super::super::words::{Dates, count, sentence as capital};
use super::references::planting;

/// The sentence of a fault of this group.
pub(super) fn sentence(fault: &Fault, dates: Dates) -> Option<String> {
    let text = match fault {
        Fault::ShelfClosed { planting: p, day } => format!(
            "{} is on the shelf on {}, when the shelf may not be used.",
            capital(&planting(p)),
            dates.day(*day)
        ),
        Fault::ShelfFull {
            mat,
            day,
            expected,
            got,
        } => format!(
            "From {} the {} holds {} of the {expected} that fit.",
            dates.day(*day),
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
            dates.days(gap.from, gap.to)
        ),
        _ => return None,
    };
    Some(text)
}
