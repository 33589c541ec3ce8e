//! Who grows what, in a search: as many grades as can be grow something, so not every grade that an
//! ingredient may still have leaves enough for the others. Rows tell that only when nearly all is
//! decided; a greatest matching of seats and grades (`garden::Seat`) tells it at once.

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Dead, Domains};

/// A grade that may take a seat.
#[derive(Debug)]
pub struct Choice {
    /// The position of the grade.
    pub grade: usize,
    /// The column that says so, where there is something to choose.
    pub chosen: Option<VarAt>,
    /// The first sowings by its team.
    pub options: Vec<OptionAt>,
}

/// A seat with the grades of which one takes it.
#[derive(Debug)]
pub struct Grown {
    /// The group of its ingredient's first sowing.
    pub first: GroupAt,
    /// The grades.
    pub choices: Vec<Choice>,
}

/// So many grades grow something.
#[derive(Debug)]
pub struct Grades {
    /// Every seat.
    pub seats: Vec<Grown>,
    /// How many grades there are.
    pub grades: usize,
    /// How many of them must grow something.
    pub wanted: usize,
}

/// Grades that are left for each seat, shared out.
struct Shared {
    left: Vec<Vec<usize>>,
    /// By grade: the seat that it takes.
    grows: Vec<Option<usize>>,
    /// By seat: the grade that takes it.
    grown_by: Vec<Option<usize>>,
}

impl Grades {
    /// Closes grades with which too few would grow something.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        let mut left = Vec::with_capacity(self.seats.len());
        for grown in &self.seats {
            let mut own = Vec::new();
            for choice in &grown.choices {
                if grown.is_left(choice, domains) {
                    own.push(choice.grade);
                } else if let Some(chosen) = choice.chosen {
                    domains.lower(chosen, 0.0)?;
                }
            }
            left.push(own);
        }
        let mut shared = Shared::out(left, self.grades);
        if shared.count() < self.wanted {
            return Err(Dead);
        }
        for (at, grown) in self.seats.iter().enumerate() {
            for choice in &grown.choices {
                let open = shared.left[at].contains(&choice.grade);
                let Some(chosen) = choice.chosen.filter(|_| open) else {
                    continue;
                };
                if shared.count_with(at, choice.grade) < self.wanted {
                    domains.lower(chosen, 0.0)?;
                }
            }
        }
        Ok(())
    }

    /// The groups that it hangs on.
    pub fn groups(&self) -> impl Iterator<Item = GroupAt> + '_ {
        self.seats.iter().map(|grown| grown.first)
    }

    /// The columns that it hangs on.
    pub fn columns(&self) -> impl Iterator<Item = VarAt> + '_ {
        let choices = self.seats.iter().flat_map(|grown| &grown.choices);
        choices.filter_map(|choice| choice.chosen)
    }

    /// About how many terms are looked at.
    #[must_use]
    pub fn size(&self) -> usize {
        let choices = self.seats.iter().map(|grown| grown.choices.len());
        let choices: usize = choices.sum();
        choices * choices
    }
}

impl Grown {
    /// True if a grade may still grow it; one that is in the pot must have a planting for that.
    fn is_left(&self, choice: &Choice, domains: &Domains) -> bool {
        let chosen = choice.chosen.is_none_or(|c| domains.column(c).hi > 0.5);
        let mut options = choice.options.iter();
        chosen && (domains.may_have_none(self.first) || options.any(|o| domains.is_open(*o)))
    }
}

impl Shared {
    /// Shares grades out to as many seats as can be, by augmenting paths.
    fn out(left: Vec<Vec<usize>>, grades: usize) -> Self {
        let mut shared = Self {
            grows: vec![None; grades],
            grown_by: vec![None; left.len()],
            left,
        };
        for at in 0..shared.left.len() {
            shared.find_own(at, &mut vec![false; grades]);
        }
        shared
    }

    fn count(&self) -> usize {
        self.grows.iter().flatten().count()
    }

    /// Gives a grade that is not `seen` to a seat, if need be by moving others on.
    fn find_own(&mut self, at: usize, seen: &mut [bool]) -> bool {
        for k in 0..self.left[at].len() {
            let grade = self.left[at][k];
            if std::mem::replace(&mut seen[grade], true) {
                continue;
            }
            let free = match self.grows[grade] {
                None => true,
                Some(other) => self.find_own(other, seen),
            };
            if free {
                self.grows[grade] = Some(at);
                self.grown_by[at] = Some(grade);
                return true;
            }
        }
        false
    }

    /// How many grades can grow something where a grade takes this seat.
    fn count_with(&mut self, at: usize, grade: usize) -> usize {
        let before = (self.grows.clone(), self.grown_by.clone());
        if self.grown_by[at] == Some(grade) {
            return self.count();
        }
        if let Some(old) = self.grown_by[at].take() {
            self.grows[old] = None;
        }
        if let Some(other) = self.grows[grade].replace(at) {
            self.grown_by[other] = None;
        }
        self.grown_by[at] = Some(grade);
        // One more path at the most: two were loosened, one of which has the grade now.
        for other in 0..self.left.len() {
            let mut seen = vec![false; self.grows.len()];
            seen[grade] = true;
            if self.grown_by[other].is_none() && self.find_own(other, &mut seen) {
                break;
            }
        }
        let count = self.count();
        (self.grows, self.grown_by) = before;
        count
    }
}
