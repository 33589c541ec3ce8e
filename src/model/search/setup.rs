//! A board as groups and rows.

use crate::candidates::CandidateAt;
use crate::garden::{GradeAt, IngredientAt, Seat, Team};
use crate::model::board::Board;
use crate::model::columns::{Ready, of};
use crate::model::program::{self, Col, Section, Terms};
use crate::plan::Rule;

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Bounds, Domains};
use super::grades::{Choice, Grades, Grown};
use super::linear::{Linear, Stands};
use super::local::Local;
use super::order::{Order, Wanted};
use super::rows::{Row, Rows};
use super::state::{Goal, Limit, Search, Way};
use super::years::MOST_IN_PAIRS;

/// Groups and columns under work.
struct Groups {
    /// What each column of the program is.
    stands: Vec<Stands>,
    /// The bounds of each column of the search.
    bounds: Vec<Bounds>,
    ways: Vec<Way>,
    options: Vec<Vec<OptionAt>>,
    sizes: Vec<usize>,
    /// The groups of each ingredient, in the order of its sowings.
    of: Vec<Vec<GroupAt>>,
}

impl Groups {
    /// A group for each sowing that an ingredient may have.
    fn of(board: &Board<'_>) -> Self {
        let columns = board.program.columns().iter();
        let bounds: Vec<Bounds> = columns
            .map(|c| Bounds {
                lo: c.lo,
                hi: c.hi,
                whole: c.whole,
            })
            .collect();
        let mut groups = Self {
            stands: vec![Stands::Free; bounds.len()],
            bounds,
            ways: Vec::new(),
            options: vec![Vec::new(); board.candidates.all.len()],
            sizes: Vec::new(),
            of: Vec::new(),
        };
        for at in board.garden.ingredient_positions() {
            groups.add(board, at);
        }
        groups
    }

    fn add(&mut self, board: &Board<'_>, at: IngredientAt) {
        let columns = &board.columns;
        let own: Vec<usize> = of(&board.candidates, at).map(|(k, _)| k.0).collect();
        // One at the least, so that an ingredient without any planting has a group that has none.
        let sowings = board.garden[at].most_plantings() as usize;
        let sowings = sowings.min(own.len()).max(1);
        let first = self.sizes.len();
        for sowing in 0..sowings {
            for k in &own {
                let option = OptionAt(self.ways.len());
                self.is(columns.made[*k], option);
                let blocks = columns.blocks[*k].map(|col| self.of_option(col, option, sowing));
                for col in &columns.level_up[*k] {
                    self.of_option(*col, option, sowing);
                }
                self.options[*k].push(option);
                self.ways.push(Way {
                    candidate: CandidateAt(*k),
                    blocks,
                    cost: 0.0,
                });
            }
            self.sizes.push(own.len());
        }
        self.of
            .push((first..first + sowings).map(GroupAt).collect());
    }

    /// A column is 1 where an option is chosen.
    fn is(&mut self, Col(col): Col, option: OptionAt) {
        match &mut self.stands[col] {
            Stands::Is(options) => options.push(option),
            other => *other = Stands::Is(vec![option]),
        }
    }

    /// The column of an option for one of the program: the first sowing has that itself, a later one
    /// has its own with the same bounds.
    fn of_option(&mut self, Col(col): Col, option: OptionAt, sowing: usize) -> VarAt {
        let own = match sowing {
            0 => VarAt(col),
            _ => {
                self.bounds.push(self.bounds[col]);
                VarAt(self.bounds.len() - 1)
            }
        };
        match &mut self.stands[col] {
            Stands::Of(options) => options.push((option, own)),
            other => *other = Stands::Of(vec![(option, own)]),
        }
        own
    }
}

impl<'a> Search<'a> {
    /// A search of a board that has not begun.
    #[must_use]
    pub fn new(board: &'a Board<'a>, goal: &Goal<'a>, limit: Limit) -> Self {
        let mut groups = Groups::of(board);
        let sign = if goal.objective.maximise { -1.0 } else { 1.0 };
        for (Col(col), weight) in &goal.objective.terms {
            if let Stands::Is(options) = &groups.stands[*col] {
                for option in options {
                    groups.ways[option.0].cost += sign * weight;
                }
            }
        }
        let columns = groups.bounds.len();
        let domains = Domains::new(groups.bounds, &groups.sizes);
        // So many branches cost about what probing costs, which most programs do not need.
        let most_nodes = groups.ways.len() as u64;
        let mut search = Self {
            board,
            goal: *goal,
            limit,
            rows: Rows::new(groups.sizes.len(), groups.ways.len(), columns),
            ways: groups.ways,
            options: groups.options,
            best: None,
            learned: Vec::new(),
            looked_at: 0,
            nodes: 0,
            most_nodes,
            over_limit: false,
            sure: true,
            domains,
        };
        search.add_rows(&groups.stands, sign);
        search.add_sowings(&groups.of);
        search.add_grades(&groups.of);
        search.rows.fit();
        search
    }

    fn add_rows(&mut self, stands: &[Stands], sign: f64) {
        let cost = self.goal.objective.terms.iter();
        let cost: Terms = cost.map(|(col, weight)| (*col, sign * weight)).collect();
        let better = self.goal.better_than.map(|v| sign * v - self.gain());
        let rhs = better.unwrap_or(f64::MAX);
        let cost = Linear::new(in_search(&cost, stands), rhs, &self.domains);
        self.rows.add(Row::Linear(cost));
        for (section, rows) in self.board.program.sections() {
            for row in rows {
                if self.says_less(section, row, stands) {
                    continue;
                }
                let terms = row.terms.iter();
                let terms: Vec<_> = terms.map(|(col, w)| (&stands[col.0], *w)).collect();
                if let Some(rows) = Local::of(&terms, row.rhs) {
                    rows.into_iter()
                        .for_each(|row| self.rows.add(Row::Local(row)));
                    continue;
                }
                let terms = in_search(&row.terms, stands);
                let row = Linear::new(terms, row.rhs, &self.domains);
                if row.can_bind(&self.domains) {
                    self.rows.add(Row::Linear(row));
                }
            }
        }
        for set in &self.board.forbidden {
            self.forbid(set);
        }
    }

    /// True if other rows of the search say more than a row of the program: what is forbidden is added
    /// as sets, and when plantings are ready is known by ingredient.
    fn says_less(&self, section: Section, row: &program::Row, stands: &[Stands]) -> bool {
        match section {
            Section::Forbidden => true,
            Section::Rule(Rule::Readiness) => {
                let Board {
                    garden, columns, ..
                } = self.board;
                let cols = || row.terms.iter().map(|(col, _)| *col);
                let mut told = cols().filter_map(|col| columns.told_ready(col));
                match told.next() {
                    Some(at) => garden[at].most_plantings() <= MOST_IN_PAIRS,
                    None => cols().any(|col| stands[col.0] != Stands::Free),
                }
            }
            _ => false,
        }
    }

    /// What is known of the plantings of each ingredient, and of their order where it may have several.
    fn add_sowings(&mut self, groups: &[Vec<GroupAt>]) {
        let columns = &self.board.columns;
        for (at, groups) in self.board.garden.ingredient_positions().zip(groups) {
            self.rows.add(Row::Years(self.years(at, groups)));
            if columns.ready[at.0] == Ready::AsPlanted {
                continue;
            }
            if let Some(first) = groups.first() {
                self.rows.add(Row::Wanted(Wanted {
                    in_pot: VarAt(columns.in_pot[at.0].0),
                    first: *first,
                }));
            }
            for two in groups.windows(2) {
                let (first, second) = (two[0], two[1]);
                self.rows.add(Row::Order(Order { first, second }));
            }
        }
    }
}

impl Search<'_> {
    /// As many grades as can be grow something, where some ingredient's grade is to be chosen.
    fn add_grades(&mut self, groups: &[Vec<GroupAt>]) {
        let Board {
            garden, columns, ..
        } = self.board;
        if !garden.has_open_grades() {
            return;
        }
        let seat = |seat: Seat| {
            let first = *groups.get(seat.of.0)?.first()?;
            let choice = |(grade, team): &(GradeAt, Team)| {
                let options = self.domains.all_options(first).iter().copied();
                let by = |option: &OptionAt| {
                    let candidate = self.way(*option).candidate;
                    self.board.candidates[candidate].team == *team
                };
                let mut chosen = columns.grown_by[seat.of.0].iter();
                let chosen = chosen.find(|(other, _)| other == team);
                Choice {
                    grade: grade.0,
                    chosen: chosen.map(|(_, col)| VarAt(col.0)),
                    options: options.filter(by).collect(),
                }
            };
            let choices = seat.open_to.iter().map(choice).collect();
            Some(Grown { first, choices })
        };
        let row = Grades {
            seats: garden.seats().filter_map(seat).collect(),
            grades: garden.grades.len(),
            wanted: garden.most_grades(),
        };
        self.rows.add(Row::Grades(row));
    }
}

/// The terms of a row of the program with what their columns are.
fn in_search<'a>(
    terms: &'a Terms,
    stands: &'a [Stands],
) -> impl Iterator<Item = (VarAt, &'a Stands, f64)> {
    let terms = terms.iter();
    terms.map(|(col, weight)| (VarAt(col.0), &stands[col.0], *weight))
}
