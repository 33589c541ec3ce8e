//! What is noted of sums: of each group in a row the least that it can take, and a way that takes no more.
//! Nothing has to be looked at again while that way is open, so rows wait at the ways, not at the groups.

use super::at::{GroupAt, OptionAt, RowAt};

/// A group in a row: its position there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ShareAt(pub usize);

/// A way of a group.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// Its option is chosen.
    Option(OptionAt),
    /// No option is chosen.
    None,
    /// To be found.
    Unknown,
}

/// The least of a group, and a way that takes so little.
#[derive(Debug, Clone, Copy)]
pub struct Least {
    /// So much.
    pub least: f64,
    /// The way.
    pub by: By,
}

/// What was known of a group in a row.
#[derive(Debug, Clone, Copy)]
pub struct Was {
    /// The row.
    pub row: RowAt,
    /// The group.
    pub share: ShareAt,
    /// What was known.
    pub least: Least,
}

/// A group of a row that waits until a way is closed.
pub type Waiting = (RowAt, ShareAt);

/// What is noted.
#[derive(Debug)]
pub struct Notes {
    trail: Vec<Was>,
    at_option: Vec<Vec<Waiting>>,
    at_none: Vec<Vec<Waiting>>,
}

impl Notes {
    /// Nothing yet, of so many options and groups.
    #[must_use]
    pub fn new(options: usize, groups: usize) -> Self {
        Self {
            trail: Vec::new(),
            at_option: vec![Vec::new(); options],
            at_none: vec![Vec::new(); groups],
        }
    }

    /// Notes what was known before it changes.
    pub fn was(&mut self, was: Was) {
        self.trail.push(was);
    }

    /// A group of a row waits at an option from now on.
    pub fn wait_at_option(&mut self, OptionAt(option): OptionAt, waiting: Waiting) {
        self.at_option[option].push(waiting);
    }

    /// A group of a row waits from now on until a group has some option.
    pub fn wait_at_none(&mut self, GroupAt(group): GroupAt, waiting: Waiting) {
        self.at_none[group].push(waiting);
    }

    /// Those that have ever waited at an option.
    #[must_use]
    pub fn at_option(&self, OptionAt(option): OptionAt) -> &[Waiting] {
        &self.at_option[option]
    }

    /// Those that have ever waited until a group has some option.
    #[must_use]
    pub fn at_none(&self, GroupAt(group): GroupAt) -> &[Waiting] {
        &self.at_none[group]
    }

    /// Where the trail stands.
    #[must_use]
    pub fn mark(&self) -> usize {
        self.trail.len()
    }

    /// The last note after a mark, taken back.
    pub fn take_back(&mut self, mark: usize) -> Option<Was> {
        match self.trail.len() > mark {
            true => self.trail.pop(),
            false => None,
        }
    }
}
