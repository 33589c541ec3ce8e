//! What a search has left open: the options of each group and the bounds of each column. Every
//! change stands on a trail, so that it can be taken back, and on a list of what to look at again.

use super::at::{GroupAt, OptionAt, VarAt};

/// Nothing is left: what was assumed cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dead;

/// A smaller step than this in the bound of a column of parts is not worth taking. All columns together may be out by
/// less than a gain.
const LEAST_STEP: f64 = 1e-8;
/// What the bound of a whole column may be out by.
const ROUNDING: f64 = 1e-6;
/// What a sum of rounded numbers may be out by. Far less than a gain: where both were alike, each point as good as the best
/// known one would pass for a better one until all of it is decided.
pub const LEAST_ROUNDING: f64 = 1e-8;

/// What has become less.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Changed {
    /// The option is closed.
    Option(OptionAt),
    /// The group cannot have none.
    NoneOf(GroupAt),
    /// The column: it is at least more.
    Low(VarAt),
    /// The column: it is at most less.
    High(VarAt),
}

/// A change that can be taken back.
#[derive(Debug, Clone, Copy)]
enum Undo {
    Option(OptionAt),
    NoneOf(GroupAt),
    Low(VarAt, f64),
    High(VarAt, f64),
}

/// A column's bounds. Those of a column that belongs to an option hold if the option is chosen;
/// if it is not, the column is 0.
#[derive(Debug, Clone, Copy)]
pub struct Bounds {
    /// Least value.
    pub lo: f64,
    /// Greatest value.
    pub hi: f64,
    /// True if it takes whole values only.
    pub whole: bool,
}

impl Bounds {
    /// True if one value is left.
    #[must_use]
    pub fn is_fixed(&self) -> bool {
        self.hi - self.lo < if self.whole { 0.5 } else { LEAST_STEP }
    }
}

/// A set of options of which one is chosen, or none where that is allowed.
#[derive(Debug, Clone)]
struct Group {
    options: Vec<OptionAt>,
    open: usize,
    /// The positions of the open options added up: of one alone its own.
    sum: usize,
    none: bool,
}

/// What is left open.
#[derive(Debug)]
pub struct Domains {
    columns: Vec<Bounds>,
    groups: Vec<Group>,
    group_of: Vec<GroupAt>,
    open: Vec<bool>,
    trail: Vec<Undo>,
    changed: Vec<Changed>,
}

impl Domains {
    /// Columns, and groups of numbered options: the first group has the first options.
    #[must_use]
    pub fn new(columns: Vec<Bounds>, sizes: &[usize]) -> Self {
        let mut groups = Vec::new();
        let mut group_of = Vec::new();
        for (group, size) in sizes.iter().enumerate() {
            let first = group_of.len();
            group_of.extend(std::iter::repeat_n(GroupAt(group), *size));
            groups.push(Group {
                options: (first..first + size).map(OptionAt).collect(),
                open: *size,
                sum: (first..first + size).sum(),
                none: true,
            });
        }
        Self {
            columns,
            groups,
            open: vec![true; group_of.len()],
            group_of,
            trail: Vec::new(),
            changed: Vec::new(),
        }
    }

    /// The bounds of a column.
    #[must_use]
    pub fn column(&self, VarAt(column): VarAt) -> Bounds {
        self.columns[column]
    }

    /// All groups.
    pub fn groups(&self) -> impl Iterator<Item = GroupAt> + use<> {
        (0..self.groups.len()).map(GroupAt)
    }

    /// The group of an option.
    #[must_use]
    pub fn group_of(&self, option: OptionAt) -> GroupAt {
        self.group_of[option.0]
    }

    /// True if an option may still be chosen.
    #[must_use]
    pub fn is_open(&self, option: OptionAt) -> bool {
        self.open[option.0]
    }

    /// True if a group may have none of its options.
    #[must_use]
    pub fn may_have_none(&self, group: GroupAt) -> bool {
        self.groups[group.0].none
    }

    /// How many ways a group has left: its open options, and none.
    #[must_use]
    pub fn ways(&self, GroupAt(group): GroupAt) -> usize {
        self.groups[group].open + usize::from(self.groups[group].none)
    }

    /// The open options of a group, in order.
    pub fn options(&self, group: GroupAt) -> impl DoubleEndedIterator<Item = OptionAt> + '_ {
        let all = self.groups[group.0].options.iter().copied();
        all.filter(|option| self.is_open(*option))
    }

    /// The options of a group, open or closed, in order.
    #[must_use]
    pub fn all_options(&self, group: GroupAt) -> &[OptionAt] {
        &self.groups[group.0].options
    }

    /// The option that is left, if it is the only way.
    #[must_use]
    pub fn chosen(&self, group: GroupAt) -> Option<OptionAt> {
        match (self.groups[group.0].open, self.groups[group.0].none) {
            (1, false) => Some(OptionAt(self.groups[group.0].sum)),
            _ => None,
        }
    }

    /// The least that a column times a weight can be.
    #[must_use]
    pub fn least(&self, column: VarAt, weight: f64) -> f64 {
        let Bounds { lo, hi, .. } = self.column(column);
        if weight > 0.0 {
            weight * lo
        } else {
            weight * hi
        }
    }

    /// An option is not chosen.
    pub fn close(&mut self, option: OptionAt) -> Result<(), Dead> {
        if !self.is_open(option) {
            return Ok(());
        }
        let group = self.group_of(option);
        self.open[option.0] = false;
        self.groups[group.0].open -= 1;
        self.groups[group.0].sum -= option.0;
        self.trail.push(Undo::Option(option));
        self.changed.push(Changed::Option(option));
        self.some_way_left(group)
    }

    /// A group has one of its options.
    pub fn close_none(&mut self, group: GroupAt) -> Result<(), Dead> {
        if self.may_have_none(group) {
            self.groups[group.0].none = false;
            self.trail.push(Undo::NoneOf(group));
            self.changed.push(Changed::NoneOf(group));
        }
        self.some_way_left(group)
    }

    fn some_way_left(&self, group: GroupAt) -> Result<(), Dead> {
        match self.ways(group) {
            0 => Err(Dead),
            _ => Ok(()),
        }
    }

    /// A group has this option, or none where no option is given.
    pub fn choose(&mut self, group: GroupAt, option: Option<OptionAt>) -> Result<(), Dead> {
        let others: Vec<OptionAt> = self.options(group).filter(|o| Some(*o) != option).collect();
        for other in others {
            self.close(other)?;
        }
        match option {
            Some(_) => self.close_none(group),
            None => Ok(()),
        }
    }

    /// A column is at least so much.
    pub fn raise(&mut self, column: VarAt, lo: f64) -> Result<(), Dead> {
        let Bounds { lo: old, hi, whole } = self.column(column);
        let lo = if whole { (lo - ROUNDING).ceil() } else { lo };
        if lo > hi + LEAST_ROUNDING {
            return Err(Dead);
        }
        if lo > old + LEAST_STEP {
            self.trail.push(Undo::Low(column, old));
            self.columns[column.0].lo = lo.min(hi);
            self.changed.push(Changed::Low(column));
        }
        Ok(())
    }

    /// A column is at most so much.
    pub fn lower(&mut self, column: VarAt, hi: f64) -> Result<(), Dead> {
        let Bounds { lo, hi: old, whole } = self.column(column);
        let hi = if whole { (hi + ROUNDING).floor() } else { hi };
        if hi < lo - LEAST_ROUNDING {
            return Err(Dead);
        }
        if hi < old - LEAST_STEP {
            self.trail.push(Undo::High(column, old));
            self.columns[column.0].hi = hi.max(lo);
            self.changed.push(Changed::High(column));
        }
        Ok(())
    }

    /// A column times a weight is at most `slack` above the least that it can be.
    pub fn keep_within(&mut self, column: VarAt, weight: f64, slack: f64) -> Result<(), Dead> {
        let Bounds { lo, hi, .. } = self.column(column);
        if weight.abs() * (hi - lo) <= slack {
            Ok(())
        } else if weight > 0.0 {
            self.lower(column, lo + slack / weight)
        } else {
            self.raise(column, hi + slack / weight)
        }
    }

    /// What has changed since this was asked last.
    pub fn take_changed(&mut self) -> Vec<Changed> {
        std::mem::take(&mut self.changed)
    }

    /// Where the trail stands.
    #[must_use]
    pub fn mark(&self) -> usize {
        self.trail.len()
    }

    /// Takes all changes since a mark back.
    pub fn undo(&mut self, mark: usize) {
        self.changed.clear();
        while self.trail.len() > mark {
            match self.trail.pop() {
                Some(Undo::Option(option)) => {
                    self.open[option.0] = true;
                    let group = &mut self.groups[self.group_of[option.0].0];
                    group.open += 1;
                    group.sum += option.0;
                }
                Some(Undo::NoneOf(group)) => self.groups[group.0].none = true,
                Some(Undo::Low(column, lo)) => self.columns[column.0].lo = lo,
                Some(Undo::High(column, hi)) => self.columns[column.0].hi = hi,
                None => return,
            }
        }
    }
}
