//! Breaks within the plan: which, who cares for plants in them, what families pick.

use crate::calendar::Date;
use crate::garden::{Break, Care, Garden};
use crate::plan::{StepKind, When};

use super::known::Known;
use super::spans::{first_day, span_of};

/// A break within the weeks of the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BreakIn<'a> {
    /// The break.
    pub pause: &'a Break,
    /// How many breaks of the same name come before it.
    pub same_before: usize,
}

/// The breaks within the weeks of the plan, in order of time.
#[must_use]
pub fn within(garden: &Garden) -> Vec<BreakIn<'_>> {
    let horizon = garden.horizon();
    let breaks = &garden.school_year.breaks;
    let numbered = breaks.iter().enumerate().map(|(at, pause)| BreakIn {
        pause,
        same_before: breaks
            .iter()
            .take(at)
            .filter(|b| b.name == pause.name)
            .count(),
    });
    numbered
        .filter(|b| b.pause.from <= horizon.last() && horizon.first() <= b.pause.to)
        .collect()
}

impl<'a> Known<'a> {
    /// The breaks in which somebody cares and something stands on the shelf or in the beds.
    pub fn breaks_to_fill(&self) -> impl Iterator<Item = &'a Break> {
        let stands = |from: Date, to: Date| {
            self.plan.plantings.iter().any(|p| {
                let last = span_of(p, StepKind::Pick).map(|(_, last)| last);
                let days = first_day(p).zip(last);
                days.is_some_and(|(first, last)| first <= to && from <= last)
            })
        };
        let breaks = self.garden.school_year.breaks.iter();
        breaks.filter(move |b| b.care != Care::Nobody && stands(b.from, b.to))
    }

    /// The breaks in which somebody cares, from the first work on to the last day that matters,
    /// each with the names of what families pick then.
    #[must_use]
    pub fn cared_breaks(&self) -> Vec<(&'a Break, Vec<&'a str>)> {
        let first = self.plan.plantings.iter().filter_map(first_day).min();
        let last = self.garden.last_day();
        let breaks = self.garden.school_year.breaks.iter();
        let cared = breaks.filter(|b| {
            b.care != Care::Nobody && first.is_some_and(|day| day <= b.to) && b.from <= last
        });
        cared.map(|b| (b, self.families_pick(b))).collect()
    }

    /// The names of what families pick or otherwise do in a break, in the order of the plan.
    fn families_pick(&self, pause: &Break) -> Vec<&'a str> {
        let then = pause.from..=pause.to;
        let by_families = |when: &When| matches!(when, When::Families(day) if then.contains(day));
        let planted = self.planted();
        let mut names: Vec<&str> = planted
            .flat_map(|(p, i)| p.steps.iter().map(move |s| (s, i)))
            .filter(|(step, _)| by_families(&step.when))
            .map(|(_, ingredient)| ingredient.name.as_str())
            .collect();
        names.dedup();
        names
    }
}
