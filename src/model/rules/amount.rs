//! Every ingredient reaches its least share: blocks between fewest and most where a planting
//! is made, no more sowings than allowed, and shares of the target as columns.

use crate::garden::IngredientAt;
use crate::model::columns::of;
use crate::model::program::{Program, negated};

use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    blocks_where_made(program, setting);
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    for at in garden.ingredient_positions() {
        let made: Vec<_> = of(candidates, at)
            .map(|(k, _)| (columns.made[k.0], 1.0))
            .collect();
        program.at_most(made.clone(), f64::from(garden[at].most_plantings()));
        let mut in_pot = vec![(columns.in_pot[at.0], 1.0)];
        in_pot.extend(negated(made));
        program.at_most(in_pot, 0.0);
        if garden[at].most_plantings() > 1 {
            all_give_the_least(program, setting, at);
        }

        let mut low = vec![(columns.least_share, 1.0)];
        low.extend(negated(setting.low_share(at)));
        let mut expected = vec![(columns.expected_share[at.0], 1.0)];
        expected.extend(negated(setting.expected_share(at)));
        program.at_most(low, 0.0);
        program.at_most(expected, 0.0);
    }
}

/// What is in the pot is ready in some year, so all its sowings together give its least share.
fn all_give_the_least(program: &mut Program, setting: &Setting<'_>, at: IngredientAt) {
    let least = setting.garden[at].least_share.0;
    let mut row = vec![(setting.columns.in_pot[at.0], least * (1.0 - 1e-9))];
    row.extend(negated(setting.low_share(at)));
    program.at_most(row, 0.0);
}

/// Fewest and most blocks hold only where the planting is made.
fn blocks_where_made(program: &mut Program, setting: &Setting<'_>) {
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    for (k, c) in candidates.numbered() {
        let Some(blocks) = columns.blocks[k.0] else {
            continue;
        };
        let (least, most) = c.amounts.blocks;
        program.at_least(
            vec![(blocks, 1.0), (columns.made[k.0], -f64::from(least))],
            0.0,
        );
        program.at_most(
            vec![(blocks, 1.0), (columns.made[k.0], -f64::from(most))],
            0.0,
        );
    }
}
