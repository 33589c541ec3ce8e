//! Participation: a step happens in a round, and a round holds a session of every class, so
//! candidates keep the rule and there are no rows.

use crate::model::program::Program;

use crate::model::setting::Setting;

/// Adds the rows of the rule: none.
pub fn add_rows(_program: &mut Program, setting: &Setting<'_>) {
    debug_assert!(
        setting
            .candidates
            .all
            .iter()
            .all(|c| !c.steps.picks.is_empty())
    );
}
