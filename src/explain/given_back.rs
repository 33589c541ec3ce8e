//! What a plan gave back of the aims about years, and what was bought with it: the project is
//! planned again with nothing to be given back.

use crate::checker::CheckedPlan;
use crate::garden::Garden;
use crate::model::Options;
use crate::pipeline;
use crate::plan::Aim;

use super::space::promise;

/// Years of one aim that a plan gave back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct YearsBack {
    /// The aim.
    pub aim: Aim,
    /// Years that were reached for it.
    pub best: u32,
    /// Years that the plan has.
    pub kept: u32,
}

/// What a plan gave back, and how it would be without.
#[derive(Debug, Clone, PartialEq)]
pub struct GivenBack {
    /// The aims of which something was given back, in order; at least one.
    pub aims: Vec<YearsBack>,
    /// The plan if nothing may be given back; `None` if none was found in time.
    pub without: Option<CheckedPlan>,
}

/// The aims about years of which a plan gave something back to later ones.
#[must_use]
pub fn years_back(checked: &CheckedPlan) -> Vec<YearsBack> {
    let about_years = [Aim::WorstIngredient, Aim::AllIngredients, Aim::WholeDish];
    let kept = promise(checked);
    let back = |aim: Aim| {
        let best = checked.plan().aims.iter().find(|r| r.aim == aim)?;
        let kept = kept.iter().find(|r| r.aim == aim)?;
        let whole = |value: f64| value.round().max(0.0) as u32;
        (best.value > kept.value + 0.5).then(|| YearsBack {
            aim,
            best: whole(best.value),
            kept: whole(kept.value),
        })
    };
    about_years.into_iter().filter_map(back).collect()
}

/// What a plan gave back, and the plan that gives nothing back; `None` if nothing was.
#[must_use]
pub fn given_back(garden: &Garden, checked: &CheckedPlan, options: &Options) -> Option<GivenBack> {
    let aims = years_back(checked);
    let nothing = Options {
        concession_years: 0,
        ..*options
    };
    (!aims.is_empty()).then(|| GivenBack {
        aims,
        without: pipeline::decide(garden, &nothing).ok(),
    })
}
