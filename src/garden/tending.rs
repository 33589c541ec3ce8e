//! What a team has: its classes, children and rounds, and who tends its plantings after the grades move up.

use std::collections::BTreeSet;

use super::Garden;
use super::at::{ClassAt, GradeAt};
use super::grade::HandOver;
use super::team::{FARTHEST, Team};
use crate::calendar::{Date, monday_of};

impl Garden {
    /// All classes of a grade or team, in the order of the file.
    pub fn classes_of(&self, team: impl Into<Team>) -> impl Iterator<Item = ClassAt> {
        let grades = team.into().grades();
        grades.flat_map(|grade| {
            (0..self[grade].classes.len()).map(move |class| ClassAt { grade, class })
        })
    }

    /// Total children of a grade or team.
    #[must_use]
    pub fn children_of(&self, team: impl Into<Team>) -> u32 {
        let classes = self.classes_of(team);
        classes.map(|class| self.class(class).children).sum()
    }

    /// Total children of the grades of which a class comes: they share the work of a step.
    #[must_use]
    pub fn children_who_share(&self, classes: impl Iterator<Item = ClassAt>) -> u32 {
        self.children_of(classes.map(|class| class.grade).collect::<Team>())
    }

    /// How many weeks a round of a grade or team takes: 2 if some class meets every second week, else 1.
    #[must_use]
    pub fn round_weeks(&self, team: impl Into<Team>) -> u32 {
        let weeks = team.into().grades().map(|grade| self[grade].round_weeks());
        weeks.max().unwrap_or(1)
    }

    /// True if the sections of a team's grades, and of those who adopt their plantings, stand near each other.
    #[must_use]
    pub fn stand_near(&self, team: Team) -> bool {
        let heirs = team.grades().map(|grade| self.heir(grade).0);
        let all = || team.grades().map(|grade| grade.0).chain(heirs.clone());
        let ends = all().min().zip(all().max());
        ends.is_none_or(|(first, last)| last - first < FARTHEST)
    }

    /// Who has a grade's plantings after the grades have moved up.
    fn heir(&self, grade: GradeAt) -> GradeAt {
        match self[grade].hand_over {
            HandOver::Leaves { adopter } => adopter,
            HandOver::SameChildren | HandOver::SameGrade => grade,
        }
    }

    /// True if in some weeks that make a round each class of a team has a session.
    #[must_use]
    pub fn meets_together(&self, team: Team) -> bool {
        let weeks = i64::from(self.round_weeks(team));
        let week = |day: Date| {
            (monday_of(day) - self.horizon().first())
                .num_days()
                .div_euclid(7)
        };
        let within = |session: Date| (0..weeks).map(move |back| week(session) - back);
        let possible = |class| -> BTreeSet<i64> {
            self.sessions(class).into_iter().flat_map(within).collect()
        };
        let all = self.classes_of(team).map(possible);
        all.reduce(|both, own| &both & &own)
            .is_some_and(|weeks| !weeks.is_empty())
    }

    /// The grades whose classes tend the plantings of a team on `day`: its own, and after moving up the adopter in
    /// the place of each that leaves the school.
    #[must_use]
    pub fn tending(&self, team: impl Into<Team>, day: Date) -> Team {
        let moved = self.school_year.moves_up.is_some_and(|up| day >= up);
        let tends = |grade| if moved { self.heir(grade) } else { grade };
        team.into().grades().map(tends).collect()
    }

    /// True if the children who tend a team's plantings on `day` are those who tended them before moving up, in
    /// each of its grades.
    #[must_use]
    pub fn same_children(&self, team: impl Into<Team>, day: Date) -> bool {
        let moved = self.school_year.moves_up.is_some_and(|up| day >= up);
        let same = |grade: GradeAt| self[grade].hand_over == HandOver::SameChildren;
        !moved || team.into().grades().all(same)
    }
}
