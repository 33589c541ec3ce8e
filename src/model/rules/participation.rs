//! Participation: a step happens in a round, and a round holds a session of every class, so
//! candidates keep that part of the rule. Rows choose one team for every ingredient, so that
//! as many grades as can be grow something.

use crate::candidates::Round;
use crate::garden::{GradeAt, IngredientAt, Team};
use crate::model::columns::of;
use crate::model::program::{Program, Terms, negated};
use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let garden = setting.garden;
    let whole = |round: &Round| {
        // What was begun is given, whoever came.
        if round.first() < garden.as_of() {
            return true;
        }
        let grades: Team = round.classes().map(|class| class.grade).collect();
        round.classes().eq(garden.classes_of(grades))
    };
    debug_assert!(
        setting
            .candidates
            .all
            .iter()
            .all(|c| c.steps.rounds().all(|(_, round)| whole(round)))
    );
    for at in setting.garden.ingredient_positions() {
        one_team(program, setting, at);
    }
    most_grades(program, setting);
}

/// One team for an ingredient, in the pot or not, and only plantings of that team.
fn one_team(program: &mut Program, setting: &Setting<'_>, at: IngredientAt) {
    let choice = &setting.columns.grown_by[at.0];
    let one: Terms = choice.iter().map(|(_, col)| (*col, 1.0)).collect();
    program.at_least(one.clone(), 1.0);
    program.at_most(one, 1.0);
    let most = f64::from(setting.garden[at].most_plantings());
    for (team, col) in choice {
        // All sowings of an ingredient are of one team, so one row bounds them all.
        let mut made: Terms = of(setting.candidates, at)
            .filter(|(_, c)| c.team == *team)
            .map(|(k, _)| (setting.columns.made[k.0], 1.0))
            .collect();
        if !made.is_empty() {
            made.push((*col, -most));
            program.at_most(made, 0.0);
        }
    }
}

/// As many grades as can be grow something; those to which the file gives an ingredient do.
fn most_grades(program: &mut Program, setting: &Setting<'_>) {
    let columns = setting.columns;
    let grows = |grade: GradeAt| -> Terms {
        let choices = columns.grown_by.iter().flatten();
        choices
            .filter(|(team, _)| team.has(grade))
            .map(|(_, col)| (*col, 1.0))
            .collect()
    };
    for (grade, takes_part) in &columns.takes_part {
        let mut row = vec![(*takes_part, 1.0)];
        row.extend(negated(grows(*grade)));
        program.at_most(row, 0.0);
    }
    let all = columns.takes_part.iter();
    let taking_part: Terms = all.map(|(_, col)| (*col, 1.0)).collect();
    let wanted = setting.garden.most_grades() - setting.garden.grades_with_their_own();
    program.at_least(taking_part, wanted as f64);
}
