//! Participation: a step happens in a round, and a round holds a session of every class, so
//! candidates keep the rule and there are no rows.

use crate::candidates::Round;
use crate::model::program::Program;
use crate::model::setting::Setting;

/// Adds the rows of the rule: none.
pub fn add_rows(_program: &mut Program, setting: &Setting<'_>) {
    let whole = |round: &Round| {
        let grades = round.visits.first().map(|(class, _)| class.grade);
        grades.is_some_and(|grade| round.visits.len() == setting.garden[grade].classes.len())
    };
    debug_assert!(
        setting
            .candidates
            .all
            .iter()
            .all(|c| c.steps.rounds().all(|(_, round)| whole(round)))
    );
}
