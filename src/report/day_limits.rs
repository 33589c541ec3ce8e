//! Why a day is wrong for a step, in one table: what a broken plan is told, and what forbids other days for
//! a step of a plan that keeps the rules.

use crate::checker::DayLimit;

/// The words for a limit.
pub(super) struct Told {
    /// After the step of a broken plan and its day: what it keeps from.
    pub broken: &'static str,
    /// Of days on which a step is not: why it cannot be.
    pub forbids: &'static str,
}

/// The table.
pub(super) fn told(limit: DayLimit) -> Told {
    let (broken, forbids) = match limit {
        DayLimit::Span => (
            "outside the plan's time",
            "that lies outside the plan's time",
        ),
        DayLimit::Order => (
            "it must come wholly after the step before it",
            "the step before it is not over",
        ),
        DayLimit::Harden => (
            "hardening off takes the seven days before planting out",
            "seven days to harden off do not fit in",
        ),
        DayLimit::Cure => (
            "drying or curing begins the day after the pick and takes its full time",
            "drying or curing does not fit in",
        ),
        DayLimit::Delivery => same("the kitchen needs it earlier"),
        DayLimit::PatchSeason => (
            "outside the season of the patch",
            "the patch does not bear then",
        ),
        DayLimit::Keeps => same("what is picked then does not keep until the dish"),
        DayLimit::Up => (
            "the seed is not up yet",
            "the seed is not up when it is handled",
        ),
        DayLimit::AfterSowing => (
            "too soon after sowing",
            "potting up comes less than two weeks after sowing",
        ),
        DayLimit::AfterPottingUp => (
            "too soon after potting up",
            "planting out comes less than ten days after potting up",
        ),
        DayLimit::Thinning => (
            "too soon or too late after sowing to thin a row",
            "it would be too soon or too late after sowing to thin",
        ),
        DayLimit::Round => (
            "all classes must do it in the same week or fortnight",
            "the classes would do it too far apart",
        ),
    };
    Told { broken, forbids }
}

/// The same words for both.
fn same(words: &'static str) -> (&'static str, &'static str) {
    (words, words)
}
