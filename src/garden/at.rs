//! Typed positions in the garden's lists, in the order of the project file.

/// Which grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GradeAt(pub usize);

/// Which ingredient.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct IngredientAt(pub usize);

/// Which bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BedAt(pub usize);

/// What has begun already: which of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BegunAt(pub usize);

/// Which perennial patch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PatchAt(pub usize);

/// Which class of which grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ClassAt {
    /// The grade that the class is listed under.
    pub grade: GradeAt,
    /// Position among that grade's classes.
    pub class: usize,
}
