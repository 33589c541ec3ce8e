//! The life of each planting along the weeks: where it is over which span, and the first days of
//! its steps.

use crate::calendar::{Date, Horizon, plus_days};
use crate::garden::{GradeAt, Method, Seedlings, Team};
use crate::plan::{Planting, PlantingAt, StepKind};

use super::Facts;
use super::spans::span_of;

/// Whose plantings are meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// Those of all grades.
    All,
    /// Those of one grade, with those that it takes over.
    Of(GradeAt),
}

/// What a planting does over a span of days.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SpanKind {
    /// It stands on the shelf.
    Shelf,
    /// It takes its strips of bed, the week to clear them included.
    Bed,
    /// It may be picked.
    Pick,
    /// It dries or cures.
    Cure,
}

/// A span of days within the plan, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    /// What it is.
    pub kind: SpanKind,
    /// First day.
    pub from: Date,
    /// Last day.
    pub to: Date,
}

/// The life of one planting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Life {
    /// The position of the planting in the plan.
    pub planting: PlantingAt,
    /// True if it is another grade's, which the one that is asked for takes over.
    pub taken_over: bool,
    /// Its spans.
    pub spans: Vec<Span>,
    /// The first day of each kind of step that it takes.
    pub first_days: Vec<(StepKind, Date)>,
}

impl<'a> Facts<'a> {
    /// The lives of plantings, grade by grade.
    #[must_use]
    pub fn lives(&self, whose: Whose) -> Vec<Life> {
        let all = || self.plan.numbered();
        let life = |taken_over| {
            move |(at, planting): (PlantingAt, &'a Planting)| Life {
                planting: at,
                taken_over,
                spans: self.spans(at, planting),
                first_days: first_days(planting),
            }
        };
        match whose {
            Whose::All => self.by_grade().into_iter().map(life(false)).collect(),
            Whose::Of(grade) => {
                let adopted = all().filter(|(_, p)| self.is_taken_over(p, grade));
                let own = all().filter(|(_, p)| self.team_of(p).has(grade));
                let own = own.map(life(false));
                own.chain(adopted.map(life(true))).collect()
            }
        }
    }

    /// The weeks along which the lives of some plantings are shown: for one grade from its own first week to the feast,
    /// with a week to spare on both sides.
    #[must_use]
    pub fn season(&self, whose: Whose, lives: &[Life]) -> Horizon {
        let (first, last) = self.span();
        let spans = || lives.iter().flat_map(|life| &life.spans);
        match whose {
            Whose::All => self.garden.horizon(),
            Whose::Of(_) => {
                let from = spans().map(|span| span.from).min().unwrap_or(first);
                let to = spans().map(|span| span.to).max().unwrap_or(last);
                let to = plus_days(to.max(self.garden.feast.day), 7).min(last);
                Horizon::spanning(plus_days(from, -7).max(first), to)
            }
        }
    }

    /// True if a grade ends up with another one's planting.
    fn is_taken_over(&self, planting: &Planting, by: GradeAt) -> bool {
        let end = self.garden.last_day();
        let team = self.team_of(planting);
        !team.has(by) && self.garden.tending(team, end).has(by)
    }

    /// The grades that grow a planting and have left it to others by the end.
    #[must_use]
    pub fn left_by(&self, planting: &Planting) -> Team {
        let team = self.team_of(planting);
        let stay = self.garden.tending(team, self.garden.last_day());
        team.grades().filter(|grade| !stay.has(*grade)).collect()
    }

    /// The first and last day of a planting's seedlings on the shelf; of those that stood there already, from
    /// the first day of the plan on.
    pub(super) fn on_shelf(&self, planting: &Planting) -> Option<(Date, Date)> {
        let from = match planting.method {
            Method::Indoor => span_of(planting, StepKind::Sow)?.0,
            Method::Seedlings => self.seedlings(planting)?.since().max(self.garden.start()),
            Method::Direct | Method::Pieces | Method::Bought => return None,
            Method::Growing | Method::Patch => return None,
        };
        let (_, out) = span_of(planting, StepKind::PlantOut)?;
        Some((from, out))
    }

    /// The seedlings from which a planting comes, if they stood on the shelf already.
    pub(super) fn seedlings(&self, planting: &Planting) -> Option<Seedlings> {
        let at = self.garden.ingredient_named(&planting.ingredient)?;
        self.garden.seedlings_of(at)
    }

    fn spans(&self, at: PlantingAt, planting: &Planting) -> Vec<Span> {
        let shelf = self.on_shelf(planting);
        let in_bed = self.in_bed.get(at.0).copied().flatten();
        let stands = [(SpanKind::Shelf, shelf), (SpanKind::Bed, in_bed)].into_iter();
        let steps = StepKind::ALL.iter();
        let steps = steps.filter_map(|kind| Some((span_kind(*kind)?, span_of(planting, *kind))));
        let span = |(kind, days): (SpanKind, Option<(Date, Date)>)| {
            let (from, to) = self.within(days?);
            Some(Span { kind, from, to })
        };
        stands.chain(steps).filter_map(span).collect()
    }
}

/// What the days of a step are to a planting, if they are a span of their own.
fn span_kind(kind: StepKind) -> Option<SpanKind> {
    match kind {
        StepKind::Pick => Some(SpanKind::Pick),
        StepKind::Cure => Some(SpanKind::Cure),
        // These are days on the shelf or in the bed, which are told as such.
        StepKind::Sow | StepKind::PotUp | StepKind::Harden | StepKind::PlantOut => None,
        StepKind::Thin => None,
    }
}

fn first_days(planting: &Planting) -> Vec<(StepKind, Date)> {
    let kinds = StepKind::ALL.iter();
    let first = kinds.filter_map(|kind| Some((*kind, span_of(planting, *kind)?.0)));
    first.collect()
}
