//! What has begun goes on: one of the candidates that go on with it is made. That their steps are as they were
//! done, and that no other planting begins before the day as of which is planned, candidates keep by themselves.

use crate::garden::PrintedAt;
use crate::model::program::{Program, Terms};
use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let Some(season) = &setting.garden.season else {
        return;
    };
    for (which, printed) in season.printed.iter().enumerate() {
        if !printed.begun(season.as_of) {
            continue;
        }
        let given = Some(PrintedAt(which));
        let all = setting
            .candidates
            .numbered()
            .filter(|(_, c)| c.given == given);
        let made: Terms = all.map(|(k, _)| (setting.columns.made[k.0], 1.0)).collect();
        program.at_most(made.clone(), 1.0);
        match made.is_empty() {
            // Nothing can become of it, so its ingredient is not in the pot.
            true => program.at_most(
                vec![(setting.columns.in_pot[printed.ingredient.0], 1.0)],
                0.0,
            ),
            false => program.at_least(made, 1.0),
        }
    }
}
