//! The pick rule, which needs no foresight: pick at the first allowed session at which the
//! crop is ripe; it must then keep until it is eaten.

use crate::garden::Picking;

use super::season::{Fate, Loss};

/// Why a part of a planting is not in the pot in a weather year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unready {
    /// The ground was too cold to sow on its day.
    NotSown,
    /// The ground was too cold to plant on its day.
    NotPlanted,
    /// It was sown but never came up.
    NotUp,
    /// It was sown, was not up in time, and rotted.
    Rotted,
    /// Not ripe at the last allowed session.
    NotRipe,
    /// Killed by frost before it could be picked.
    Frost,
    /// Bolted before it could be picked.
    Bolted,
    /// Too hot for it before it could be picked: spoilt, or without fruit.
    Heat,
    /// Ripe too early: past before the first allowed session after that.
    Past,
    /// Picked, but it does not keep until the feast.
    DoesNotKeep,
}

impl From<Loss> for Unready {
    fn from(loss: Loss) -> Self {
        match loss {
            Loss::NotSown => Unready::NotSown,
            Loss::NotPlanted => Unready::NotPlanted,
            Loss::Rotted => Unready::Rotted,
            Loss::Frost => Unready::Frost,
            Loss::Bolted => Unready::Bolted,
            Loss::Heat => Unready::Heat,
            Loss::Past => Unready::Past,
        }
    }
}

/// The day number on which a part is picked, if it then keeps until `eaten`. `picks` are the
/// day numbers of the allowed sessions in order; those after `eaten` do not count. That a
/// cure ends in time is a matter of which sessions are allowed, not of this rule.
///
/// # Errors
/// The reason why it is not ready.
pub fn picked_and_kept(
    fate: &Fate,
    picking: &Picking,
    picks: &[usize],
    eaten: usize,
) -> Result<usize, Unready> {
    if fate.up.is_none() {
        return Err(fate.gone.map_or(Unready::NotUp, |(_, loss)| loss.into()));
    }
    let Some(ripe) = fate.ripe else {
        return Err(fate.gone.map_or(Unready::NotRipe, |(_, loss)| loss.into()));
    };
    let pick = picks
        .iter()
        .copied()
        .find(|day| *day >= ripe && *day <= eaten)
        .ok_or(Unready::NotRipe)?;
    if let Some((_, loss)) = fate.gone.filter(|(day, _)| *day <= pick) {
        return Err(loss.into());
    }
    let keeps = (picking.cure_days + picking.storage_days) as usize;
    if pick + keeps < eaten {
        return Err(Unready::DoesNotKeep);
    }
    Ok(pick)
}
