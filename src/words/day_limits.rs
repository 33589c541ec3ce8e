//! Why a day is wrong for a step: read after the step of a broken plan, and after other days for a step of a
//! plan that keeps the rules.

use crate::checker::DayLimit;

/// What keeps a step from a day.
pub(crate) fn told(limit: DayLimit) -> &'static str {
    match limit {
        DayLimit::Span => "that lies outside the plan's time",
        DayLimit::Order => "the step before it is not over",
        DayLimit::Harden => "hardening off takes the seven days before planting out",
        DayLimit::Cure => "drying or curing begins the day after the pick and takes its full time",
        DayLimit::Delivery => "the kitchen needs it earlier",
        DayLimit::PatchSeason => "the patch does not bear then",
        DayLimit::Keeps => "what is picked then does not keep until the dish",
        DayLimit::Up => "the seed is not up yet",
        DayLimit::AfterSowing => "potting up comes less than two weeks after sowing",
        DayLimit::AfterPottingUp => "planting out comes less than ten days after potting up",
        DayLimit::Thinning => "it is too soon or too late after coming up to thin",
        DayLimit::Round => "all classes must do it in the same week or fortnight",
    }
}
