//! The value of every proved aim against another engine: the programs of random gardens, as they
//! are written for outside, solved anew from nothing by the solver behind `good_lp`. The search over
//! groups, the blocks that it packed and the sets that it learned have no part in that.

use std::time::Duration;

use good_lp::solvers::{Solution, SolutionStatus};
use good_lp::{Expression, SolverModel, Variable, WithTimeLimit, microlp, variable, variables};
use tureen::deadline::Deadline;
use tureen::garden::Garden;
use tureen::model::{AimProgram, Options, solve_and_record};
use tureen::units::Share;

use crate::random_gardens::make::{Size, TINY, garden};

/// More than can be tried one by one, less than what takes the other engine minutes.
const MIDDLE: Size = Size {
    grades: (2, 4),
    ingredients: (3, 5),
    beds: (2, 4),
    strips: (2, 9),
    years: (6, 10),
    ..TINY
};

/// Gardens whose programs are compared.
const GARDENS: u64 = 25;
/// So long the other engine may take for one program.
const SECONDS: f64 = 5.0;

/// A crowded garden with one sowing of each ingredient.
fn crowded(seed: u64) -> Garden {
    let mut garden = garden(seed, &MIDDLE);
    for ingredient in &mut garden.ingredients {
        ingredient.max_sowings = 1;
        ingredient.grams_per_portion *= 1.5;
        ingredient.least_share = Share(ingredient.least_share.0 * 0.6);
    }
    garden
}

/// The best value of a program; `None` if it was not found in time.
fn by_the_other(solved: &AimProgram) -> Option<f64> {
    let program = &solved.program;
    let mut defined = variables!();
    let vars: Vec<Variable> = program
        .columns()
        .iter()
        .map(|c| {
            let var = variable().clamp(c.lo, c.hi);
            defined.add(if c.whole { var.integer() } else { var })
        })
        .collect();
    let sum = |terms: &[(tureen::model::Col, f64)]| -> Expression {
        let terms = terms.iter();
        terms.map(|(col, weight)| *weight * vars[col.0]).sum()
    };
    let objective = sum(&solved.objective);
    let model = match solved.result.aim.more_is_better() {
        true => defined.maximise(&objective),
        false => defined.minimise(&objective),
    };
    let mut model = model.using(microlp).with_time_limit(SECONDS);
    for row in program.rows() {
        model.add_constraint(sum(&row.terms).leq(row.rhs));
    }
    let solution = model.solve().ok()?;
    let proved = matches!(solution.status(), SolutionStatus::Optimal);
    proved.then(|| solution.eval(&objective))
}

#[test]
fn another_engine_finds_the_same_values() {
    let (mut same, mut open) = (0, 0);
    for seed in 500..500 + GARDENS {
        let options = Options::until(Deadline::after(Duration::from_secs(20)));
        for solved in solve_and_record(&crowded(seed), &options).programs {
            let result = solved.result;
            match by_the_other(&solved).filter(|_| result.proved()) {
                Some(value) => {
                    let off = (value - result.value).abs();
                    assert!(off < 1e-4, "seed {seed}: {result:?}, the other {value}");
                    same += 1;
                }
                None => open += 1,
            }
        }
    }
    println!("{same} programs have the same value, {open} are not compared");
    assert!(same > 100 && open < same / 10, "{same}, {open}");
}
