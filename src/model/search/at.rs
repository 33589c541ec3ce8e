//! Positions in a search.

/// A group: of its options one is chosen, or none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GroupAt(pub usize);

/// An option: a candidate as one of an ingredient's sowings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OptionAt(pub usize);

/// A column of the search: those of the program come first, then those that a further sowing has
/// of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct VarAt(pub usize);

/// A row of the search.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RowAt(pub usize);
