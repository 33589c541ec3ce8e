//! Why a planting was not worth considering. Nothing is left out without a reason.

use std::collections::BTreeMap;

/// Why a planting was thrown out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DropReason {
    /// No round of sessions fits all its steps one after the other.
    NoSession,
    /// It would harden off while nobody is on site.
    HardensUnattended,
    /// The shelf is not open, or too small for the least amount.
    ShelfTooSmall,
    /// The seed does not come up at the shelf's warmth.
    TooColdIndoors,
    /// Fewer seedlings stand on the shelf than the least amount takes.
    TooFewSeedlings,
    /// No bed suits it: sun, depth, trellis, width.
    NoBed,
    /// Every bed that suits it belongs to other grades.
    NotItsBed,
    /// On every strip that suits it something of before still stands.
    NotFreeYet,
    /// Every bed that suits it carried the family too recently.
    Rotation,
    /// The beds that suit it are too small for the least amount.
    BedsTooSmall,
    /// A step takes more minutes than a session has, even for the least amount.
    LessonTooShort,
    /// No pick session is left that leaves time to cure and keeps until the feast.
    NoPickSession,
    /// Ready in too few weather years.
    RarelyReady,
}

/// Reasons with how often each threw out a planting.
pub type Dropped = BTreeMap<DropReason, u32>;
