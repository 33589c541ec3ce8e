//! What every step of the enumeration asks for again and again, computed once.

use std::collections::BTreeMap;

use crate::calendar::{Date, Horizon};
use crate::garden::{ClassAt, Gap, Garden};

/// A garden with its sessions and gaps.
pub struct Context<'g> {
    /// The garden.
    pub garden: &'g Garden,
    /// The span of the plan.
    pub horizon: Horizon,
    /// Gaps in which nobody is on site.
    pub gaps: Vec<Gap>,
    sessions: BTreeMap<ClassAt, Vec<Date>>,
}

impl<'g> Context<'g> {
    /// Computes sessions and gaps.
    #[must_use]
    pub fn new(garden: &'g Garden) -> Self {
        let sessions = garden
            .grade_positions()
            .flat_map(|grade| garden.classes_of(grade))
            .map(|class| (class, garden.sessions(class)))
            .collect();
        Self {
            garden,
            horizon: garden.horizon(),
            gaps: garden.gaps(),
            sessions,
        }
    }

    /// The sessions of a class.
    #[must_use]
    pub fn sessions(&self, class: ClassAt) -> &[Date] {
        self.sessions.get(&class).map_or(&[], Vec::as_slice)
    }

    /// The session of a class after a day.
    #[must_use]
    pub fn next_session(&self, class: ClassAt, day: Date) -> Option<Date> {
        let sessions = self.sessions(class);
        sessions
            .get(sessions.partition_point(|d| *d <= day))
            .copied()
    }

    /// Positions of the gaps that share a day with a span.
    #[must_use]
    pub fn gaps_touching(&self, from: Date, to: Date) -> Vec<usize> {
        (0..self.gaps.len())
            .filter(|k| self.gaps[*k].touches(from, to))
            .collect()
    }
}
