//! One aim after the other: solve, hold, go on from the same point.

use crate::candidates::Candidate;
use crate::garden::Garden;
use crate::plan::{Aim, AimResult};

use super::aim_program::AimProgram;
use super::aims::objective;
use super::board::{Board, Places};
use super::engine::best;
use super::fit::{Fit, fit};
use super::grown_share;
use super::known::{self, Plantings};
use super::layout::Chosen;
use super::one_aim::{result_of, solve_for};
use super::point::{self, chosen, settle};
use super::program::value;
use super::solver::{Deadline, Objective, Solved, Unsolved};
use super::still_possible::still_possible;

/// The aims that hang on which plantings are made, not on how much of each.
const ABOUT_YEARS: [Aim; 4] = [
    Aim::InThePot,
    Aim::WorstIngredient,
    Aim::AllIngredients,
    Aim::WholeDish,
];
/// The aims that ask for dates that stay as they were printed.
pub const ABOUT_DATES: [Aim; 2] = [Aim::MovedDates, Aim::MovedDays];
/// The aims that hang on how much of each planting there is.
pub const ABOUT_AMOUNTS: [Aim; 2] = [Aim::LeastGrownShare, Aim::ExpectedAmounts];
/// The aims after that.
pub const SMALL: [Aim; 5] = [
    Aim::Slack,
    Aim::Children,
    Aim::UnattendedDays,
    Aim::Evenness,
    Aim::Tidiness,
];

/// A point and how far each aim so far is reached and proved.
#[derive(Debug, Clone, PartialEq)]
pub struct Staged {
    /// One value per column.
    pub values: Vec<f64>,
    /// Value and bound of each aim.
    pub aims: Vec<AimResult>,
    /// What the worst ingredient and the whole dish have after taking back.
    pub kept: Vec<AimResult>,
    /// True if every aim's value rests on a point that can be laid out. Where it is false, an
    /// aim has a bound that only sets of plots allow, and keeps a lower value.
    pub laid_out: bool,
    /// The programs of the aims that were followed in this step, if they are recorded.
    pub programs: Vec<AimProgram>,
    /// The points that were reached in this step, in order, each once.
    pub points: Vec<Plantings>,
}

impl Staged {
    /// True unless the first aim was followed and left an ingredient out.
    #[must_use]
    pub fn has_all_in_the_pot(&self, garden: &Garden) -> bool {
        let wanted = garden.ingredients.len() as f64;
        let mut aims = self.aims.iter();
        !aims.any(|a| a.aim == Aim::InThePot && a.value < wanted)
    }

    /// True if time sufficed for all aims about years.
    #[must_use]
    pub fn has_followed_years(&self) -> bool {
        self.aims.len() >= ABOUT_YEARS.len()
    }

    /// Keeps the plantings of the point.
    fn keep_point(&mut self, board: &Board<'_>) {
        let chosen = chosen(&board.candidates, &board.columns, &self.values);
        let point = known::plantings(&board.candidates, &chosen);
        if self.laid_out && self.points.last() != Some(&point) {
            self.points.push(point);
        }
    }

    /// Records the program of an aim as it stands.
    fn record(&mut self, board: &Board<'_>, result: &AimResult, pace: &Pace) {
        if pace.record {
            self.programs.push(AimProgram::of(board, result));
        }
    }
}

/// The last aim to which years may be given back: they buy amounts and slack, no more.
const LAST_TO_TAKE: Aim = Aim::Slack;

/// How long to think, and what may be given back.
#[derive(Debug, Clone, Copy)]
pub struct Pace {
    /// Weather years that each aim about years may give back to later aims.
    pub concession_years: u32,
    /// When to stop.
    pub deadline: Deadline,
    /// True to keep the program of every aim.
    pub record: bool,
}

/// So many sets of plantings are forbidden for one aim before it is given up.
pub const MOST_FORBIDDEN: usize = 40;

/// Solves for the first aim only: as many ingredients in the pot as can be.
///
/// # Errors
/// None found in time, or a failure of the solver.
pub fn in_the_pot(board: &mut Board<'_>, pace: &Pace) -> Result<Staged, Unsolved> {
    let aim = objective(Aim::InThePot, &board.setting());
    let mut tries = 0;
    let mut start = known::better(board, Aim::InThePot, None);
    let (first, values, laid_out) = loop {
        let solved = best(board, (&aim, true), start.as_mut(), &pace.deadline)?;
        let first = result_of(Aim::InThePot, &aim, &board.program, &solved, &pace.deadline);
        match fit(board, &solved.values) {
            Fit::Never(set) if tries < MOST_FORBIDDEN => {
                board.forbid(set);
                start = known::better(board, Aim::InThePot, None);
            }
            fit => break (first, solved.values, fit == Fit::LaidOut),
        }
        tries += 1;
    };
    let mut staged = Staged {
        values,
        aims: vec![first],
        kept: Vec::new(),
        laid_out,
        programs: Vec::new(),
        points: Vec::new(),
    };
    staged.keep_point(board);
    staged.record(board, &first, pace);
    Ok(staged)
}

/// Solves for the aims about years, in order. Stops after the first one if not every
/// ingredient can be in the pot.
///
/// # Errors
/// None found in time, or a failure of the solver.
pub fn years(board: &mut Board<'_>, pace: &Pace) -> Result<Staged, Unsolved> {
    board.only_years = true;
    let mut staged = in_the_pot(board, pace)?;
    let wanted = board.garden.ingredients.len() as f64;
    if staged.aims.iter().all(|first| first.value >= wanted) {
        board.all_in_the_pot();
        settle(board, &mut staged.values);
        for aim in ABOUT_YEARS.into_iter().skip(1) {
            if pace.deadline.is_over() {
                break;
            }
            follow(board, aim, &mut staged, pace)?;
        }
    }
    Ok(staged)
}

/// Solves for some later aims from a point that keeps the earlier ones, or from any point if
/// none is known. `known` are sets of plantings that do not go together. The aim in which time runs out keeps the point it has, with its bound; those
/// after it are not looked at.
///
/// # Errors
/// Not one point found in time, or a failure of the solver.
pub fn later(
    board: &mut Board<'_>,
    start: Option<&[Chosen]>,
    earlier: &[AimResult],
    (known, aims): (&[Vec<Candidate>], &[Aim]),
    pace: &Pace,
) -> Result<Staged, Unsolved> {
    hold_all(board, earlier, pace);
    known.iter().for_each(|set| board.forbid(set.clone()));
    let values = match start {
        Some(chosen) => point::values(board, chosen),
        None => best(board, (&Objective::none(), true), None, &pace.deadline)?.values,
    };
    let mut staged = Staged {
        values,
        aims: earlier.to_vec(),
        kept: Vec::new(),
        laid_out: true,
        programs: Vec::new(),
        points: Vec::new(),
    };
    for aim in aims {
        if pace.deadline.is_over() {
            break;
        }
        follow(board, *aim, &mut staged, pace)?;
        if *aim == LAST_TO_TAKE && pace.concession_years > 0 {
            take_back(board, &mut staged, pace)?;
        }
        let fewer = still_possible(
            board.garden,
            &board.candidates,
            &staged.aims,
            pace.concession_years,
        );
        let fewer = still_possible(board.garden, &fewer, &staged.kept, 0);
        // A smaller program is worth its making if it is much smaller.
        let much_smaller = 4 * fewer.all.len() < 3 * board.candidates.all.len();
        if board.places == Places::Projected && much_smaller {
            let made = chosen(&board.candidates, &board.columns, &staged.values);
            let made = known::carried(&board.candidates, &made, &fewer);
            let known = std::mem::take(&mut board.forbidden);
            let points = known::carried_over(&board.candidates, &board.known, &fewer);
            let steps = board.steps;
            *board = Board::new(board.garden, fewer, board.places);
            board.steps = steps;
            hold_all(board, &staged.aims, pace);
            for kept in &staged.kept {
                board.hold(kept, 0);
            }
            known.into_iter().for_each(|set| board.forbid(set));
            board.known = points;
            staged.values = point::values(board, &made);
        }
    }
    Ok(staged)
}

/// Holds all aims so far, the first of which puts every ingredient in the pot.
pub fn hold_all(board: &mut Board<'_>, results: &[AimResult], pace: &Pace) {
    board.all_in_the_pot();
    for result in results.iter().skip(1) {
        board.hold(result, pace.concession_years);
    }
}

/// A point that keeps the earlier aims, with the later aims as they happen to be.
#[must_use]
pub fn unfinished(board: &Board<'_>, mut staged: Staged, deadline: &Deadline) -> Staged {
    settle(board, &mut staged.values);
    let as_it_is = Solved {
        values: std::mem::take(&mut staged.values),
        proved: false,
    };
    for aim in Aim::of(board.garden).skip(staged.aims.len()) {
        let objective = objective(aim, &board.setting());
        let result = result_of(aim, &objective, &board.program, &as_it_is, deadline);
        staged.aims.push(result);
    }
    Staged {
        values: as_it_is.values,
        ..staged
    }
}

/// Solves for one aim from a point that can be laid out, moves the point and holds the aim.
/// A better point that cannot be laid out is forbidden and another sought; where that is not
/// possible, the point stays, with the better value as its bound.
fn follow(
    board: &mut Board<'_>,
    aim: Aim,
    staged: &mut Staged,
    pace: &Pace,
) -> Result<(), Unsolved> {
    let (result, laid_out) = seek(board, aim, &mut staged.values, pace)?;
    staged.laid_out &= laid_out;
    staged.keep_point(board);
    staged.record(board, &result, pace);
    staged.aims.push(result);
    board.hold(&result, pace.concession_years);
    Ok(())
}

/// Moves a point that can be laid out to the best one for an aim that can be, too. False if a
/// better one could not be laid out, and the point stays where it is.
fn seek(
    board: &mut Board<'_>,
    aim: Aim,
    values: &mut Vec<f64>,
    pace: &Pace,
) -> Result<(AimResult, bool), Unsolved> {
    let mut tries = 0;
    let reached = value(&objective(aim, &board.setting()).terms, values);
    if let Some(known) = known::better(board, aim, Some(reached)) {
        *values = known;
    }
    loop {
        let mut point = values.clone();
        let result = match aim {
            Aim::LeastGrownShare => grown_share::raise(board, &mut point, &pace.deadline)?,
            _ => solve_for(board, aim, &mut point, &pace.deadline)?,
        };
        for known in [&mut *values, &mut point] {
            known.resize(board.program.columns().len(), 0.0);
            settle(board, known);
        }
        match fit(board, &point) {
            Fit::LaidOut => {
                *values = point;
                return Ok((result, true));
            }
            Fit::Never(set) if tries < MOST_FORBIDDEN => {
                board.forbid(set);
                values.resize(board.program.columns().len(), 0.0);
                settle(board, values);
            }
            Fit::Never(_) | Fit::NotKnown => {
                let value = value(&objective(aim, &board.setting()).terms, values);
                return Ok((AimResult { value, ..result }, false));
            }
        }
        tries += 1;
    }
}

/// Takes years back of which nothing so far has made use: the worst ingredient and the whole dish
/// are followed once more, with all that was reached, and then held without giving anything back.
/// To hold the sum of all ingredients as well made the aims after it ten times harder.
fn take_back(board: &mut Board<'_>, staged: &mut Staged, pace: &Pace) -> Result<(), Unsolved> {
    for aim in [Aim::WorstIngredient, Aim::WholeDish] {
        let (reached, _) = seek(board, aim, &mut staged.values, pace)?;
        staged.kept.push(reached);
        board.hold(&reached, 0);
    }
    Ok(())
}
