//! Ready years: of the worst ingredient, of each, and of the whole dish.

use crate::model::columns::Ready;
use crate::model::program::{Program, negated};

use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    let least = f64::from(candidates.least_ready_years());
    let mut dish = vec![(columns.dish_years, 1.0)];
    dish.extend(columns.dish.iter().map(|(years, col)| (*col, -years.count)));
    program.at_most(dish, 0.0);
    for at in garden.ingredient_positions() {
        let years = columns.ready_years(candidates, at);
        let mut worst = vec![(columns.worst_years, 1.0)];
        worst.extend(negated(years.clone()));
        program.at_most(worst, 0.0);
        if let Ready::Decided { each, years: sum } = &columns.ready[at.0] {
            let mut counted = vec![(*sum, 1.0)];
            let each = each.iter().filter_map(|(y, col)| Some(((*col)?, -y.count)));
            counted.extend(each);
            program.at_most(counted, 0.0);
            enough_in_a_ready_year(program, setting, at);
            // What has begun goes on, however seldom it is ready: `happened` asks only for what is sown beside it.
            if garden.begun_of(at).next().is_none() {
                let mut in_pot = vec![(columns.in_pot[at.0], least)];
                in_pot.extend(negated(years));
                program.at_most(in_pot, 0.0);
            }
        }
        for (years, dish) in &columns.dish {
            let mut row = vec![(*dish, 1.0)];
            row.extend(negated(columns.ready_in(candidates, at, years.year)));
            program.at_most(row, 0.0);
        }
    }
}

/// In a year in which an ingredient of several sowings counts as ready, those of them that
/// are ready give the least share.
fn enough_in_a_ready_year(
    program: &mut Program,
    setting: &Setting<'_>,
    at: crate::garden::IngredientAt,
) {
    let Ready::Decided { each, .. } = &setting.columns.ready[at.0] else {
        return;
    };
    for (years, col) in each {
        let Some(col) = col else { continue };
        let mut row = vec![(*col, 1.0)];
        row.extend(negated(setting.least_share_ready(at, years.year)));
        program.at_most(row, 0.0);
    }
}
