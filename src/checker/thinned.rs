//! On which days the rows of a planting may be thinned, from the weather years in which they come up.

use std::borrow::Cow;

use crate::growth::{Emergence, ThinningDays};
use crate::plan::StepKind;

use super::harvest::{Seasons, days, fate, seasons};
use super::planting::{Planting, Step};
use super::run::Run;

/// The seasons of a run's plantings, for the rules that ask for them.
pub enum Grown<'s> {
    /// There already, in the order of the run.
    Before(Vec<&'s Seasons>),
    /// Grown when a rule asks.
    WhenAsked,
}

impl Grown<'_> {
    /// The seasons of a planting, by its position in the run.
    fn seasons(&self, run: &Run<'_>, at: usize, planting: &Planting<'_>) -> Cow<'_, Seasons> {
        match self {
            Self::Before(all) => match all.get(at) {
                Some(own) => Cow::Borrowed(*own),
                None => Cow::Owned(Vec::new()),
            },
            Self::WhenAsked => Cow::Owned(seasons(run, planting)),
        }
    }
}

/// The days on which a planting may be thinned; `None` for what is not sown, not picked or never thinned.
pub fn thinning_days(
    run: &Run<'_>,
    planting: &Planting<'_>,
    seasons: &Seasons,
) -> Option<ThinningDays> {
    let thinning = planting.ingredient.crop.thinning?;
    let sow = planting.step(StepKind::Sow)?;
    let first_pick = planting.picks().map(|pick| pick.first).min()?;
    let up_of_part = |day| {
        let fates = seasons
            .iter()
            .map(|season| fate(run, planting, season, day));
        Emergence::of(fates.map(|fate| fate.up))
    };
    let up: Vec<Option<Emergence>> = days(sow).into_iter().map(up_of_part).collect();
    Some(ThinningDays::of(thinning, &up, first_pick))
}

/// A step with which a planting is thinned out of time, the day, and the days on which it may be.
pub fn thinned_badly<'p>(
    run: &Run<'_>,
    (at, planting): (usize, &'p Planting<'_>),
    grown: &Grown<'_>,
) -> Option<(&'p Step<'p>, usize, (usize, usize))> {
    let thin = planting.step(StepKind::Thin)?;
    let seasons = grown.seasons(run, at, planting);
    let allowed = thinning_days(run, planting, &seasons)?;
    let (day, span) = allowed.missed_by(&days(thin))?;
    Some((thin, day, span))
}
