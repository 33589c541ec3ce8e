//! Why ways of growing were thrown out, in words.

use crate::candidates::DropReason;

/// Why a way of growing was thrown out.
#[must_use]
pub fn why(reason: DropReason) -> &'static str {
    match reason {
        DropReason::NoSession => "the classes' sessions do not allow all its steps in order",
        DropReason::HardensUnattended => "it would harden off while nobody is on site",
        DropReason::ShelfTooSmall => "the shelf is closed or too small for the least amount",
        DropReason::TooColdIndoors => "the shelf is too cold or too warm for the seed to come up",
        DropReason::TooFewSeedlings => {
            "fewer seedlings stand on the shelf than the least amount takes"
        }
        DropReason::NoBed => "no bed suits it (sun, depth of soil, trellis, width)",
        DropReason::NotItsBed => "every bed that suits it belongs to another grade",
        DropReason::NotFreeYet => "what stood there before still takes every bed that suits it",
        DropReason::Rotation => "every bed that suits it carried its family too recently",
        DropReason::BedsTooSmall => "the beds that suit it are too small for the least amount",
        DropReason::LessonTooShort => {
            "a step takes longer than a session, even for the least amount"
        }
        DropReason::NoPickSession => {
            "no session lies where it could be picked, dried or cured in time, and kept"
        }
        DropReason::RarelyReady => "it would be ready in fewer than one weather year of ten",
    }
}
