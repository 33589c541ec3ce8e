//! Plans that keep what is held already, and no more is asked of them: any at all, or one on
//! the fewest strips of bed.

use std::ops::Range;

use crate::candidates::{Candidate, CandidateAt, Candidates, PlotAt, Scope, families, fullest};
use crate::garden::Garden;
use crate::plan::{Aim, AimResult, Plan};

use super::board::{Board, Places};
use super::decode;
use super::engine::best;
use super::fit::{Fit, fit, layout};
use super::layout::{Chosen, Part, Parts, places};
use super::open_grades;
use super::point::{self, chosen};
use super::program::{Col, Program, Terms, value};
use super::solver::{Objective, Solved, Unsolved, relaxed_bound, solve};
use super::stages::{MOST_FORBIDDEN, Pace, hold_all};
use super::still_possible::still_possible;

/// Plantings with their places, as positions in a list of candidates.
struct Placed {
    candidates: Candidates,
    chosen: Vec<Chosen>,
    parts: Parts,
}

impl Placed {
    /// The same in names and dates, if the plots hold it. It says nothing of aims.
    fn plan(&self, garden: &Garden) -> Option<Plan> {
        let Self {
            candidates,
            chosen,
            parts,
        } = self;
        let places = places(garden, candidates, chosen, parts)?;
        let aims = Vec::new();
        Some(decode::plan(garden, candidates, chosen, places, aims))
    }
}

/// Strips of bed that are enough.
#[derive(Debug, Clone, PartialEq)]
pub struct FewestStrips {
    /// A plan on the fewest that were found.
    pub plan: Plan,
    /// No plan that keeps what is held uses fewer than this.
    pub bound: u32,
}

/// Any plan that keeps what is held; `None` if it is proved that there is none.
///
/// # Errors
/// Neither is known in time, or a failure of the solver.
pub fn any(
    garden: &Garden,
    all: &Candidates,
    held: &[AimResult],
    pace: &Pace,
) -> Result<Option<Plan>, Unsolved> {
    let few = enough(garden, all, held);
    let promising = open_grades::promising(garden, &few);
    let first = promising.map(|few| any_placed(garden, few, held, pace));
    let placed = match first {
        Some(Ok(Some(placed))) => Some(placed),
        _ => any_placed(garden, few, held, pace)?,
    };
    let plan = placed.map(|placed| placed.plan(garden).ok_or(Unsolved::OutOfTime));
    plan.transpose()
}

/// A plan on the fewest strips that keeps what is held. Strips of a plot are alike, so the
/// strips that a plot needs are the most that are taken at once.
///
/// # Errors
/// No plan was found in time, or a failure of the solver.
pub fn on_fewest_strips(
    garden: &Garden,
    all: &Candidates,
    held: &[AimResult],
    pace: &Pace,
) -> Result<FewestStrips, Unsolved> {
    let few = enough(garden, all, held);
    let known = any_placed(garden, few.clone(), held, pace)?.ok_or(Unsolved::Infeasible)?;
    let at_once = most_at_once(garden, few.clone(), held, pace)?;
    let mut board = Board::new(garden, few, Places::Named);
    hold_all(&mut board, held, pace);
    let peaks = peaks(&mut board);
    let mut start = start(&board, &peaks, &known);
    let strips = Objective {
        terms: peaks.iter().map(|peak| (peak.col, 1.0)).collect(),
        maximise: false,
    };
    board
        .program
        .at_least(strips.terms.clone(), f64::from(at_once));
    let goal = (&strips, true);
    let Solved { values, proved } = best(&mut board, goal, Some(&mut start), &pace.deadline)?;
    let bound = match proved {
        true => Some(value(&strips.terms, &values)),
        false => relaxed_bound(&board.program, &strips, pace.deadline.left_for_bounds()),
    };
    let bound = bound.map_or(0, at_least).max(at_once);
    // Where families must wait, so few strips may not do after all.
    let fewest = placed_on_plots(board, &peaks, &values).plan(garden);
    let plan = fewest.or_else(|| known.plan(garden));
    Ok(FewestStrips {
        bound,
        plan: plan.ok_or(Unsolved::OutOfTime)?,
    })
}

/// The candidates that can be part of such a plan, each with as much as the held share asks
/// for: more takes more room and makes nothing readier. Where several sowings add up, the
/// amounts stay open.
fn enough(garden: &Garden, all: &Candidates, held: &[AimResult]) -> Candidates {
    let share = held.iter().find(|r| r.aim == Aim::LeastGrownShare);
    // Less a billionth, or rounding would ask for one block more than the held share has.
    let share = share.map_or(0.0, |r| r.value - 1e-9);
    let with_enough = |c: Candidate| {
        let ingredient = &garden[c.ingredient];
        if ingredient.most_plantings() > 1 {
            return Some(c);
        }
        let wanted = ingredient.target(garden.feast.portions) * share;
        let blocks = (wanted / c.amounts.low).ceil().max(0.0) as u32;
        let amounts = c.amounts.clone();
        let amounts = amounts.exactly(blocks.max(c.amounts.blocks.0))?;
        Some(Candidate { amounts, ..c })
    };
    let mut few = still_possible(garden, all, held, 0);
    few.all = few.all.into_iter().filter_map(with_enough).collect();
    few.without_needless(garden, Scope::Harvest)
}

fn any_placed(
    garden: &Garden,
    few: Candidates,
    held: &[AimResult],
    pace: &Pace,
) -> Result<Option<Placed>, Unsolved> {
    // The smaller form first; only where its plantings find no layout the one that names every plot.
    for places in [Places::Projected, Places::Named] {
        let mut board = Board::new(garden, few.clone(), places);
        hold_all(&mut board, held, pace);
        for _ in 0..MOST_FORBIDDEN {
            let Some(values) = point(&mut board, pace)? else {
                return Ok(None);
            };
            match fit(&board, &values) {
                Fit::LaidOut => return placed(board, &values).map(Some),
                Fit::Never(set) => board.forbid(set),
                Fit::NotKnown => break,
            }
        }
    }
    Err(Unsolved::OutOfTime)
}

/// The plantings of a point that can be laid out.
fn placed(board: Board<'_>, values: &[f64]) -> Result<Placed, Unsolved> {
    let placed = layout(&board, values).ok().flatten();
    let (chosen, parts) = placed.ok_or(Unsolved::OutOfTime)?;
    Ok(Placed {
        candidates: board.candidates,
        chosen,
        parts,
    })
}

/// Any point of a program, or `None` if it is proved that it has none.
fn point(board: &mut Board<'_>, pace: &Pace) -> Result<Option<Vec<f64>>, Unsolved> {
    match best(board, (&Objective::none(), true), None, &pace.deadline) {
        Ok(solved) => Ok(Some(solved.values)),
        Err(Unsolved::Infeasible) => Ok(None),
        Err(other) => Err(other),
    }
}

/// Strips that every plan that keeps what is held takes, on one day or for one family, wherever
/// they are. This is a smaller program, and no plan needs fewer strips.
fn most_at_once(
    garden: &Garden,
    few: Candidates,
    held: &[AimResult],
    pace: &Pace,
) -> Result<u32, Unsolved> {
    let mut board = Board::new(garden, few, Places::Projected);
    hold_all(&mut board, held, pace);
    let Board {
        candidates,
        columns,
        program,
        ..
    } = &mut board;
    let strips = candidates.plots.iter().map(|p| p.strips.count).sum();
    let most = program.whole(0, strips);
    let placed = candidates.numbered();
    let taken: Vec<_> = placed
        .filter(|(_, c)| !c.plots.is_empty())
        .map(|(k, c)| {
            (
                k,
                columns.blocks_of(candidates, k, f64::from(c.amounts.block.strips)),
            )
        })
        .collect();
    add_peak(program, garden, candidates, (most, &taken));
    let objective = Objective {
        terms: vec![(most, 1.0)],
        maximise: false,
    };
    // The other half is for the search that this bound serves.
    let limit = pace.deadline.left() / 2;
    let value = match solve(&board.program, &objective, None, limit) {
        Ok(solved) if solved.proved => solved.values[most.0],
        Ok(_) | Err(Unsolved::OutOfTime) => {
            relaxed_bound(&board.program, &objective, pace.deadline.left_for_bounds())
                .unwrap_or(0.0)
        }
        Err(other) => return Err(other),
    };
    Ok(at_least(value))
}

/// The fewest whole strips that keep a bound, but for rounding.
fn at_least(bound: f64) -> u32 {
    (bound - 1e-6).ceil() as u32
}

/// A candidate with its strips as a term.
type Taken = (CandidateAt, (Col, f64));

/// Holds a column to at least the strips that are taken on one day, or by a family of which a strip
/// carries only one planting. `taken` has each candidate's strips as a term.
fn add_peak(
    program: &mut Program,
    garden: &Garden,
    candidates: &Candidates,
    (peak, taken): (Col, &[Taken]),
) {
    let span = |k: CandidateAt| candidates[k].bed_days;
    let mut add = |own: &dyn Fn(CandidateAt) -> bool| {
        let own = taken.iter().filter(|(k, _)| own(*k));
        let mut row: Terms = own.map(|(_, term)| *term).collect();
        row.push((peak, -1.0));
        program.at_most(row, 0.0);
    };
    for day in fullest(taken.iter().map(|(k, _)| span(*k))) {
        add(&|k| span(k).0 <= day && day <= span(k).1);
    }
    for family in families(garden, &candidates.all).values() {
        add(&|k| family.contains(&candidates[k].ingredient));
    }
}

/// The most strips of a plot that are taken at once.
struct Peak {
    /// The column.
    col: Col,
    /// The rows that hold it to what is taken on a day, or by a family.
    rows: Range<usize>,
}

/// The peak of each plot, in order.
fn peaks(board: &mut Board<'_>) -> Vec<Peak> {
    let Board {
        garden,
        candidates,
        columns,
        program,
        ..
    } = board;
    let mut peaks = Vec::new();
    for (plot, place) in candidates.numbered_plots() {
        let col = program.whole(0, place.strips.count);
        let here = columns.on_plot.iter().filter(|(_, on, _)| *on == plot);
        let strips = |k: CandidateAt| f64::from(candidates[k].amounts.block.strips);
        let taken: Vec<_> = here.map(|(k, _, col)| (*k, (*col, strips(*k)))).collect();
        let first = program.rows().len();
        add_peak(program, garden, candidates, (col, &taken));
        let rows = first..program.rows().len();
        peaks.push(Peak { col, rows });
    }
    peaks
}

/// The point of plantings that are placed.
fn start(board: &Board<'_>, peaks: &[Peak], known: &Placed) -> Vec<f64> {
    let mut values = point::values(board, &known.chosen);
    for (c, parts) in known.chosen.iter().zip(&known.parts) {
        for part in parts {
            let on = |(k, plot, _): &&(CandidateAt, PlotAt, Col)| {
                (*k, *plot) == (c.candidate, part.plot)
            };
            if let Some((.., col)) = board.columns.on_plot.iter().find(on) {
                values[col.0] = f64::from(part.blocks);
            }
        }
    }
    for peak in peaks {
        // The column itself is still 0 in these rows, so what is left is what is taken.
        let rows = &board.program.rows()[peak.rows.clone()];
        let taken = rows.iter().map(|row| value(&row.terms, &values));
        values[peak.col.0] = taken.fold(0.0, f64::max);
    }
    values
}

/// The plantings of a point of a program whose plots are named, where that puts them (there may
/// be more than is planted), on plots that are no larger than the most that is taken at once.
fn placed_on_plots(mut board: Board<'_>, peaks: &[Peak], values: &[f64]) -> Placed {
    for (plot, peak) in board.candidates.plots.iter_mut().zip(peaks) {
        plot.strips.count = values[peak.col.0] as u32;
    }
    let chosen = chosen(&board.candidates, &board.columns, values);
    let parts = |c: &Chosen| {
        let mut left = c.blocks;
        let of_it = board.columns.on_plot.iter();
        let of_it = of_it.filter(|(k, ..)| *k == c.candidate);
        let parts = of_it.map(|(_, plot, col)| {
            let blocks = left.min(values[col.0] as u32);
            left -= blocks;
            Part {
                plot: *plot,
                blocks,
            }
        });
        parts.filter(|part| part.blocks > 0).collect()
    };
    Placed {
        parts: chosen.iter().map(parts).collect(),
        candidates: board.candidates,
        chosen,
    }
}
