//! The pick rule, which needs no foresight: pick at the first allowed session at which the
//! crop is ripe; it must then keep until it is eaten.

use crate::garden::Picking;

use super::season::Fate;

/// Why a part of a planting is not in the pot in a weather year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unready {
    /// It never came up.
    NotUp,
    /// Not ripe at the last allowed session.
    NotRipe,
    /// Killed by frost before it could be picked.
    Frost,
    /// Bolted before it could be picked.
    Bolted,
    /// Ripe too early: past before the first allowed session after that.
    Past,
    /// Picked, but it does not keep until the feast.
    DoesNotKeep,
}

/// The day number on which a part is picked, if it then keeps until `eaten`. `picks` are the
/// day numbers of the allowed sessions in order.
///
/// # Errors
/// The reason why it is not ready.
pub fn picked_and_kept(
    fate: &Fate,
    picking: &Picking,
    picks: &[usize],
    eaten: usize,
) -> Result<usize, Unready> {
    todo!("{fate:?} {picking:?} {picks:?} {eaten}")
}
