//! The life of each planting along the weeks: where it is over which span, and the days that mark
//! its steps.

use crate::calendar::Date;
use crate::garden::{GradeAt, Method};
use crate::plan::{Planting, StepKind};

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

/// The first day of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark {
    /// Which step.
    pub kind: StepKind,
    /// The day.
    pub day: Date,
}

/// The life of one planting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Life {
    /// The position of the planting in the plan.
    pub planting: usize,
    /// True if it is another grade's, which the one that is asked for takes over.
    pub taken_over: bool,
    /// Its spans.
    pub spans: Vec<Span>,
    /// The steps that have a mark, in order of time.
    pub marks: Vec<Mark>,
}

/// The steps that have a mark.
pub const MARKED: [StepKind; 5] = [
    StepKind::Sow,
    StepKind::Thin,
    StepKind::PotUp,
    StepKind::PlantOut,
    StepKind::Pick,
];

impl<'a> Facts<'a> {
    /// The lives of plantings, grade by grade.
    #[must_use]
    pub fn lives(&self, whose: Whose) -> Vec<Life> {
        let all = || self.plan.plantings.iter().enumerate();
        let own = |grade| all().filter(move |(_, p)| self.grade_of(p) == Some(grade));
        let life = |taken_over| {
            move |(at, planting): (usize, &'a Planting)| Life {
                planting: at,
                taken_over,
                spans: self.spans(at, planting),
                marks: marks(planting),
            }
        };
        match whose {
            Whose::All => {
                let grades = self.garden.grade_positions();
                grades.flat_map(own).map(life(false)).collect()
            }
            Whose::Of(grade) => {
                let adopted = all().filter(|(_, p)| self.is_taken_over(p, grade));
                let own = own(grade).map(life(false));
                own.chain(adopted.map(life(true))).collect()
            }
        }
    }

    /// True if a grade ends up with another one's planting.
    fn is_taken_over(&self, planting: &Planting, by: GradeAt) -> bool {
        let end = self.garden.last_day();
        let other = self.grade_of(planting).filter(|other| *other != by);
        other.is_some_and(|other| self.garden.tending(other, end) == by)
    }

    fn spans(&self, at: usize, planting: &Planting) -> Vec<Span> {
        let shelf = (planting.method == Method::Indoor)
            .then(|| {
                let (sown, _) = span_of(planting, StepKind::Sow)?;
                let (_, out) = span_of(planting, StepKind::PlantOut)?;
                Some((sown, out))
            })
            .flatten();
        let all = [
            (SpanKind::Shelf, shelf),
            (SpanKind::Bed, self.in_bed.get(at).copied().flatten()),
            (SpanKind::Pick, span_of(planting, StepKind::Pick)),
            (SpanKind::Cure, span_of(planting, StepKind::Cure)),
        ];
        let span = |(kind, days): (SpanKind, Option<(Date, Date)>)| {
            let (from, to) = self.within(days?);
            Some(Span { kind, from, to })
        };
        all.into_iter().filter_map(span).collect()
    }
}

fn marks(planting: &Planting) -> Vec<Mark> {
    let mark = |kind: StepKind| {
        let (day, _) = span_of(planting, kind)?;
        Some(Mark { kind, day })
    };
    let mut marks: Vec<Mark> = MARKED.into_iter().filter_map(mark).collect();
    marks.sort_by_key(|mark| mark.day);
    marks
}
