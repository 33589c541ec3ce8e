//! Who keeps picked what would else stop bearing: week by week, from its first ripe fruit to the pick for the dish.

use crate::calendar::{Date, days_between, monday_of, plus_days};
use crate::checker::KeptPicked;
use crate::garden::{KeepsPicked, Team};
use crate::plan::Planting;

use super::known::Known;

/// A planting with those who keep it picked.
#[derive(Debug, Clone, PartialEq)]
pub struct PickingTurns<'a> {
    /// The planting.
    pub planting: &'a Planting,
    /// The day on which it is ripe in the median weather year.
    pub from: Date,
    /// The last day on which it may be picked for the dish.
    pub to: Date,
    /// The most days from one pick to the next.
    pub every_days: u32,
    /// The weather years in which it is ready only because it was kept picked.
    pub counts: usize,
    /// Who, in order of time; weeks in which nobody is there are left out.
    pub turns: Vec<Turn>,
}

/// Weeks in a row in which the same people pick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Turn {
    /// Who.
    pub who: Picker,
    /// The first day of it.
    pub from: Date,
    /// The last day.
    pub to: Date,
}

/// Who picks in a week.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Picker {
    /// The classes of a grade, or of several that grow it together, in their lessons.
    Team(Team),
    /// An adult, on a school day of a week in which those have no lesson.
    Adult,
    /// Staff who water in a break.
    Staff,
    /// Families who care in a break.
    Families,
}

/// All that is kept picked, in the order of the plan.
pub(super) fn kept_picked<'a>(known: &Known<'a>) -> Vec<PickingTurns<'a>> {
    let all = known.replay.kept_picked.iter();
    all.filter_map(|kept| known.turns_of(kept)).collect()
}

impl<'a> Known<'a> {
    fn turns_of(&self, kept: &KeptPicked) -> Option<PickingTurns<'a>> {
        let planting = self.plan.planting(kept.planting)?;
        let team = self.team_of(planting);
        let bears = self.ingredient_of(planting)?.crop.picking.while_picked?;
        let mut turns: Vec<Turn> = Vec::new();
        let mut monday = monday_of(kept.from);
        while monday <= kept.to {
            let (from, to) = (monday.max(kept.from), plus_days(monday, 6).min(kept.to));
            if let Some(who) = self.picker(team, from, to) {
                match turns.last_mut() {
                    Some(turn) if turn.who == who && plus_days(turn.to, 1) == from => turn.to = to,
                    _ => turns.push(Turn { who, from, to }),
                }
            }
            monday = plus_days(monday, 7);
        }
        Some(PickingTurns {
            planting,
            from: kept.from,
            to: kept.to,
            every_days: bears.every_days,
            counts: kept.counts,
            turns,
        })
    }

    /// Who picks in days of one week: children before others, and of others those who are there anyway.
    fn picker(&self, team: Team, from: Date, to: Date) -> Option<Picker> {
        let garden = self.garden;
        let tending = garden.tending(team, from);
        let mut sessions = garden
            .classes_of(tending)
            .flat_map(|class| garden.sessions(class));
        if sessions.any(|day| from <= day && day <= to) {
            return Some(Picker::Team(tending));
        }
        let there: Vec<KeepsPicked> = days_between(from, to)
            .filter_map(|day| garden.keeps_picked(day))
            .collect();
        let who = [
            (KeepsPicked::Families, Picker::Families),
            (KeepsPicked::Staff, Picker::Staff),
            (KeepsPicked::School, Picker::Adult),
        ];
        let mut who = who.into_iter();
        who.find(|(there_then, _)| there.contains(there_then))
            .map(|(_, who)| who)
    }
}
