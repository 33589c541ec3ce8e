//! The columns of a garden's program, keyed by candidates, ingredients, years and gaps.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::candidates::{Candidate, CandidateAt, Candidates, PlotAt, YearSet};
use crate::garden::{ClassAt, Garden, GradeAt, Ingredient, IngredientAt, Team};

use super::program::{Col, Program, Terms};

/// Weather years that no candidate tells apart.
#[derive(Debug, Clone, PartialEq)]
pub struct AlikeYears {
    /// One of them stands for all.
    pub year: usize,
    /// All of them.
    pub years: YearSet,
    /// How many they are.
    pub count: f64,
}

/// Readiness of one ingredient.
#[derive(Debug, Clone, PartialEq)]
pub enum Ready {
    /// One sowing: it is ready when its planting is.
    AsPlanted,
    /// Several sowings.
    Decided {
        /// One column for each group of alike years, `None` where no candidate is ready.
        each: Vec<(AlikeYears, Option<Col>)>,
        /// How many years these are.
        years: Col,
    },
}

/// A grade with a column of its own.
pub type OfGrade = (GradeAt, Col);
/// A column of a team.
pub type OfTeam = (Team, Col);

/// The columns.
#[derive(Debug, Clone, PartialEq)]
pub struct Columns {
    /// Per candidate: the planting is made.
    pub made: Vec<Col>,
    /// Per candidate: its number of blocks, where that is to be decided.
    pub blocks: Vec<Option<Col>>,
    /// Per candidate: one step up from each level of flats to the next.
    pub level_up: Vec<Vec<Col>>,
    /// Per ingredient: it is in the pot.
    pub in_pot: Vec<Col>,
    /// Per ingredient: the grade that grows it; none where there is nothing to choose.
    pub grown_by: Vec<Vec<OfTeam>>,
    /// Grades to which the file gives no ingredient: it grows one that may be its own.
    pub takes_part: Vec<OfGrade>,
    /// Per ingredient: when it is ready.
    pub ready: Vec<Ready>,
    /// Of each column that tells whether an ingredient of several sowings is ready in some years: which.
    tells: BTreeMap<Col, IngredientAt>,
    /// Years that are alike for every ingredient, with the column of the whole dish.
    pub dish: Vec<(AlikeYears, Col)>,
    /// How many years the whole dish is ready.
    pub dish_years: Col,
    /// Ready years of the worst ingredient.
    pub worst_years: Col,
    /// Least garden-grown share at low yield.
    pub least_share: Col,
    /// Per ingredient: garden-grown share at expected yield, at most 1.
    pub expected_share: Vec<Col>,
    /// Per gap: someone must be found for it.
    pub gap_used: Vec<Col>,
    /// Sessions that two plantings may use: steps beyond the first.
    pub second_steps: BTreeMap<(ClassAt, Date), Col>,
    /// Where plots are named: the blocks of a candidate on a plot.
    pub on_plot: Vec<(CandidateAt, PlotAt, Col)>,
}

impl Columns {
    /// Adds all columns to a program.
    pub fn add(program: &mut Program, garden: &Garden, candidates: &Candidates) -> Self {
        let all = &candidates.all;
        let made = all.iter().map(|_| program.binary()).collect();
        let blocks = all.iter().map(|c| decided_blocks(program, c)).collect();
        let level_up = all
            .iter()
            .map(|c| {
                c.amounts
                    .levels
                    .iter()
                    .skip(1)
                    .map(|_| program.binary())
                    .collect()
            })
            .collect();
        let in_pot = garden
            .ingredients
            .iter()
            .map(|_| program.binary())
            .collect();
        let ready: Vec<Ready> = garden
            .ingredient_positions()
            .map(|at| ready(program, garden, candidates, at))
            .collect();
        let (grown_by, takes_part) = grades(program, garden);
        let dish = alike_years(candidates.years, all.iter().map(|c| &c.ready))
            .into_iter()
            // Not whole: it is at most each of some columns that are, so it comes out whole by itself, and a
            // search need not branch on it.
            .map(|years| (years, program.real(1.0)))
            .collect();
        let years = u32::try_from(candidates.years).unwrap_or(u32::MAX);
        Self {
            made,
            blocks,
            level_up,
            in_pot,
            grown_by,
            takes_part,
            tells: tells(&ready),
            ready,
            dish,
            dish_years: program.whole(0, years),
            worst_years: program.whole(0, years),
            least_share: program.real(1.0),
            expected_share: garden
                .ingredients
                .iter()
                .map(|_| program.real(1.0))
                .collect(),
            gap_used: garden.gaps().iter().map(|_| program.real(1.0)).collect(),
            second_steps: shared_sessions(garden, all)
                .into_iter()
                .map(|(session, most)| (session, program.real(most)))
                .collect(),
            on_plot: Vec::new(),
        }
    }

    /// The number of blocks of a candidate, times a factor.
    #[must_use]
    pub fn blocks_of(
        &self,
        candidates: &Candidates,
        which: CandidateAt,
        factor: f64,
    ) -> (Col, f64) {
        match self.blocks[which.0] {
            Some(col) => (col, factor),
            None => {
                let blocks = candidates[which].amounts.blocks.0;
                (self.made[which.0], factor * f64::from(blocks))
            }
        }
    }

    /// The ready years of an ingredient, added up.
    #[must_use]
    pub fn ready_years(&self, candidates: &Candidates, at: IngredientAt) -> Terms {
        match &self.ready[at.0] {
            Ready::AsPlanted => of(candidates, at)
                .map(|(k, c)| (self.made[k.0], f64::from(c.ready.len())))
                .collect(),
            Ready::Decided { years, .. } => vec![(*years, 1.0)],
        }
    }

    /// The ingredient of several sowings of which a column tells whether it is ready in some years.
    #[must_use]
    pub fn told_ready(&self, col: Col) -> Option<IngredientAt> {
        self.tells.get(&col).copied()
    }

    /// One where an ingredient is ready in a year.
    #[must_use]
    pub fn ready_in(&self, candidates: &Candidates, at: IngredientAt, year: usize) -> Terms {
        match self.decided_in(at, year) {
            Some(col) => col.map(|col| (col, 1.0)).into_iter().collect(),
            None => of(candidates, at)
                .filter(|(_, c)| c.ready.has(year))
                .map(|(k, _)| (self.made[k.0], 1.0))
                .collect(),
        }
    }

    /// Of an ingredient of several sowings the column that tells whether it is ready in a year, if it ever
    /// can be; `None` for one of a single sowing.
    #[must_use]
    pub fn decided_in(&self, at: IngredientAt, year: usize) -> Option<Option<Col>> {
        match &self.ready[at.0] {
            Ready::AsPlanted => None,
            Ready::Decided { each, .. } => {
                let mut each = each.iter();
                let own = each.find(|(alike, _)| alike.years.has(year));
                Some(own.and_then(|(_, col)| *col))
            }
        }
    }
}

/// The candidates of an ingredient with their positions.
pub fn of(
    candidates: &Candidates,
    at: IngredientAt,
) -> impl Iterator<Item = (CandidateAt, &Candidate)> + Clone {
    candidates
        .numbered()
        .filter(move |(_, c)| c.ingredient == at)
}

/// Which grade grows what, and which takes part.
fn grades(program: &mut Program, garden: &Garden) -> (Vec<Vec<OfTeam>>, Vec<OfGrade>) {
    let choice = |ingredient: &Ingredient| match ingredient.only_team() {
        Some(_) => Vec::new(),
        None => {
            let teams = ingredient.teams.iter();
            teams.map(|team| (*team, program.binary())).collect()
        }
    };
    let grown_by = garden.ingredients.iter().map(choice).collect();
    let has_one = |grade: &GradeAt| {
        let mut only = garden.ingredients.iter().filter_map(Ingredient::only_team);
        only.any(|team| team.has(*grade))
    };
    let may = |grade: &GradeAt| garden.ingredients.iter().any(|i| i.may_be_grown_by(*grade));
    let open = garden.grade_positions().filter(|g| may(g) && !has_one(g));
    let takes_part = open.map(|grade| (grade, program.real(1.0))).collect();
    (grown_by, takes_part)
}

/// A column for the blocks of a candidate, if there is anything to decide.
fn decided_blocks(program: &mut Program, candidate: &Candidate) -> Option<Col> {
    let (least, most) = candidate.amounts.blocks;
    // From 0, not from the least: that holds only where the planting is made, which a row says.
    (least < most).then(|| program.whole(0, most))
}

/// How an ingredient's readiness is expressed.
fn ready(
    program: &mut Program,
    garden: &Garden,
    candidates: &Candidates,
    at: IngredientAt,
) -> Ready {
    if garden[at].most_plantings() == 1 {
        return Ready::AsPlanted;
    }
    let groups = alike_years(candidates.years, of(candidates, at).map(|(_, c)| &c.ready));
    let with_column = |years: AlikeYears| {
        let ever = of(candidates, at).any(|(_, c)| c.ready.has(years.year));
        let col = ever.then(|| program.binary());
        (years, col)
    };
    let each: Vec<(AlikeYears, Option<Col>)> = groups.into_iter().map(with_column).collect();
    let most = u32::try_from(candidates.years).unwrap_or(u32::MAX);
    let years = program.whole(0, most);
    Ready::Decided { each, years }
}

/// The columns that tell whether an ingredient is ready, each with its ingredient.
fn tells(ready: &[Ready]) -> BTreeMap<Col, IngredientAt> {
    let of = |(at, ready): (usize, &Ready)| -> Vec<(Col, IngredientAt)> {
        let cols = match ready {
            Ready::AsPlanted => Vec::new(),
            Ready::Decided { each, .. } => each.iter().filter_map(|(_, col)| *col).collect(),
        };
        cols.into_iter()
            .map(|col| (col, IngredientAt(at)))
            .collect()
    };
    ready.iter().enumerate().flat_map(of).collect()
}

/// Groups the weather years that belong to the same of some sets.
fn alike_years<'a>(
    years: usize,
    sets: impl Iterator<Item = &'a YearSet> + Clone,
) -> Vec<AlikeYears> {
    let mut groups: BTreeMap<Vec<bool>, Vec<usize>> = BTreeMap::new();
    for year in 0..years {
        let pattern = sets.clone().map(|set| set.has(year)).collect();
        groups.entry(pattern).or_default().push(year);
    }
    let alike = |own: Vec<usize>| {
        let year = *own.first()?;
        Some(AlikeYears {
            year,
            years: YearSet::of(years, |year| own.contains(&year)),
            count: own.len() as f64,
        })
    };
    groups.into_values().filter_map(alike).collect()
}

/// Sessions in which more than one step may fall, with the most steps beyond the first. Where
/// no grade grows two ingredients, of those of one grade only the one with most steps counts.
fn shared_sessions(garden: &Garden, all: &[Candidate]) -> BTreeMap<(ClassAt, Date), f64> {
    type Users = BTreeMap<(Team, IngredientAt), u32>;
    let mut users: BTreeMap<(ClassAt, Date), Users> = BTreeMap::new();
    for candidate in all {
        for task in &candidate.tasks {
            let of_session = users.entry((task.class, task.date)).or_default();
            let of = (candidate.team, candidate.ingredient);
            *of_session.entry(of).or_insert(0) += 1;
        }
    }
    let apart = garden.each_grade_grows_one();
    let most_steps = |users: Users| {
        // Where no grade grows two ingredients, those of one team never meet in a session: they share one
        // entry, in which only the greatest counts.
        type OfOne = (Option<Team>, Option<IngredientAt>);
        let mut of_one: BTreeMap<OfOne, u32> = BTreeMap::new();
        for ((team, at), steps) in users {
            let steps = steps.min(garden[at].most_plantings());
            let one = if apart {
                (Some(team), None)
            } else {
                (None, Some(at))
            };
            let most = of_one.entry(one).or_insert(0);
            *most = steps.max(*most);
        }
        f64::from(of_one.values().sum::<u32>())
    };
    users
        .into_iter()
        .map(|(session, users)| (session, most_steps(users) - 1.0))
        .filter(|(_, most)| *most > 0.0)
        .collect()
}
