//! What has begun goes on: one of the candidates that go on with it is made, and what is sown beside it makes the
//! ingredient ready often enough. That steps are as they were done, and that no other planting begins before the day as
//! of which is planned, candidates keep by themselves.

use crate::garden::{IngredientAt, PrintedAt};
use crate::model::columns::{Ready, of};
use crate::model::program::{Program, Terms};
use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let Some(season) = &setting.garden.season else {
        return;
    };
    for at in setting.garden.ingredient_positions() {
        for (which, _) in season.begun_of(at) {
            goes_on(program, setting, at, which);
        }
        if season.begun_of(at).next().is_some() {
            sown_beside(program, setting, at);
        }
    }
}

/// One of the candidates that go on with a printed planting is made.
fn goes_on(program: &mut Program, setting: &Setting<'_>, at: IngredientAt, which: PrintedAt) {
    let own = of(setting.candidates, at).filter(|(_, c)| c.given == Some(which));
    let made: Terms = own.map(|(k, _)| (setting.columns.made[k.0], 1.0)).collect();
    if made.is_empty() {
        // Nothing can become of it, so its ingredient is not in the pot.
        program.at_most(vec![(setting.columns.in_pot[at.0], 1.0)], 0.0);
        return;
    }
    program.at_most(made.clone(), 1.0);
    program.at_least(made, 1.0);
}

/// What is new is sown only where the ingredient is then ready often enough.
fn sown_beside(program: &mut Program, setting: &Setting<'_>, at: IngredientAt) {
    let Ready::Decided { years, .. } = &setting.columns.ready[at.0] else {
        return;
    };
    let least = f64::from(setting.candidates.least_ready_years());
    for (k, _) in of(setting.candidates, at).filter(|(_, c)| c.given.is_none()) {
        let made = (setting.columns.made[k.0], least);
        program.at_most(vec![made, (*years, -1.0)], 0.0);
    }
}
