//! Which turns of a plan's steps an entry tells of: one rule, for the season under way and for the list of a week.

use super::entry::{Entry, Happened};
use crate::calendar::Date;
use crate::plan::{StepAt, StepKind};

/// An entry about a lesson is written down within so many days of it.
const NEAR: i64 = 3;

/// A step is done at most so many days before its own.
const EARLY: i64 = 21;

/// Somebody's turn at a step of a plan.
#[derive(Debug, Clone)]
pub struct Turn<'p> {
    /// The step.
    pub step: StepAt,
    /// Which of its turns, from 0.
    pub visit: usize,
    /// What is done.
    pub kind: StepKind,
    /// Of which ingredient.
    pub ingredient: &'p str,
    /// The class that comes in a lesson, if one does.
    pub class: Option<&'p str>,
    /// Its day in the plan.
    pub day: Date,
}

/// What the diary has told of a turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Told {
    Nothing,
    Done,
    Missed,
}

/// All turns of a plan, and what the diary has told of them so far. Entries come in order of their days.
#[derive(Debug)]
pub struct Turns<'p>(Vec<(Turn<'p>, Told)>);

impl<'p> Turns<'p> {
    /// Turns of which nothing is told yet.
    #[must_use]
    pub fn of(turns: impl Iterator<Item = Turn<'p>>) -> Self {
        Self(turns.map(|turn| (turn, Told::Nothing)).collect())
    }

    /// All turns, each with whether it is told as done.
    pub fn all(&self) -> impl Iterator<Item = (&Turn<'p>, bool)> {
        self.0
            .iter()
            .map(|(turn, told)| (turn, *told == Told::Done))
    }

    /// The turns, of those that `may` be meant, that an entry tells as done; `None` if it fits none. Of what was told
    /// before there are none.
    pub fn done(
        &mut self,
        entry: &Entry,
        may: impl Fn(&Turn<'_>) -> bool,
    ) -> Option<Vec<Turn<'p>>> {
        let Happened::Done {
            step,
            ingredient,
            class,
            ..
        } = &entry.what
        else {
            return None;
        };
        let by = |turn: &Turn<'_>| {
            let own = turn.class.zip(class.as_deref());
            own.is_none_or(|(own, told)| own == told)
        };
        let fits = |turn: &Turn<'_>| {
            turn.kind == *step && turn.ingredient == ingredient && by(turn) && may(turn)
        };
        let meant = self.meant((entry.on, class.is_some()), fits)?;
        let mut new = Vec::new();
        for (turn, told) in meant {
            if *told != Told::Done {
                new.push(turn.clone());
            }
            *told = Told::Done;
        }
        Some(new)
    }

    /// An entry stands for the turns of one step: of the lesson of its day or of the days just before; else for those
    /// that were missed; else for the last ones by then of which nothing is told. Only where all that was due is told, a
    /// class that is named, or somebody who needs no lesson, was early.
    fn meant(
        &mut self,
        (on, named): (Date, bool),
        fits: impl Fn(&Turn<'_>) -> bool,
    ) -> Option<Vec<&mut (Turn<'p>, Told)>> {
        let after = |turn: &Turn<'_>| (on - turn.day).num_days();
        let may_mean = |turn: &Turn<'_>, told: Told, how: How| match how {
            How::Lesson => (0..=NEAR).contains(&after(turn)) && (named || told != Told::Missed),
            How::MadeUp => after(turn) >= 0 && told == Told::Missed,
            How::Late => after(turn) >= 0 && told == Told::Nothing,
            How::Early => {
                (-EARLY..0).contains(&after(turn))
                    && told != Told::Done
                    && (named || turn.class.is_none())
            }
        };
        for how in [How::Lesson, How::MadeUp, How::Late, How::Early] {
            let all = self.0.iter();
            let all = all.filter(|(turn, told)| fits(turn) && may_mean(turn, *told, how));
            let nearest = all.min_by_key(|(turn, told)| (after(turn).abs(), *told == Told::Done));
            if let Some(step) = nearest.map(|(turn, _)| turn.step) {
                let own = self.0.iter_mut().filter(|(turn, told)| {
                    turn.step == step && fits(turn) && may_mean(turn, *told, how)
                });
                return Some(own.collect());
            }
        }
        None
    }

    /// The turn, of those that `may` be meant, that a class missed by an entry: in the lesson of its day or of the days
    /// just before.
    pub fn missed(&mut self, entry: &Entry, may: impl Fn(&Turn<'_>) -> bool) -> Option<Turn<'p>> {
        let Happened::Missed {
            step,
            ingredient,
            class,
        } = &entry.what
        else {
            return None;
        };
        let after = |turn: &Turn<'_>| (entry.on - turn.day).num_days();
        let all = self.0.iter_mut().filter(|(turn, told)| {
            turn.kind == *step
                && turn.ingredient == ingredient
                && turn.class == Some(class)
                && (0..=NEAR).contains(&after(turn))
                && *told != Told::Missed
                && may(turn)
        });
        let (turn, told) = all.min_by_key(|(turn, _)| after(turn))?;
        *told = Told::Missed;
        Some(turn.clone())
    }

    /// The turns that fall out, of which nothing is told yet.
    pub fn fell_out(&mut self, missed: impl Fn(&Turn<'_>) -> bool) -> Vec<Turn<'p>> {
        let own = self.0.iter_mut();
        let own = own.filter(|(turn, told)| *told == Told::Nothing && missed(turn));
        own.map(|(turn, told)| {
            *told = Told::Missed;
            turn.clone()
        })
        .collect()
    }

    /// A turn that was missed is made up for on another day, of which nothing is told yet.
    pub fn made_up(&mut self, turn: &Turn<'_>, on: Date) {
        let is_it = |other: &Turn<'_>| (other.step, other.visit) == (turn.step, turn.visit);
        for (own, told) in self.0.iter_mut().filter(|(other, _)| is_it(other)) {
            own.day = on;
            *told = Told::Nothing;
        }
    }
}

/// How an entry may mean a turn.
#[derive(Debug, Clone, Copy)]
enum How {
    Lesson,
    MadeUp,
    Late,
    Early,
}
