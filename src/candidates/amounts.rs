//! How much of a planting there may be: whole blocks between the least that counts and the
//! target, and the flats that they take on the shelf.

use crate::garden::{Garden, IngredientAt, Method, Rows, Team};
use crate::growth::{Block, Need, need_in};
use crate::units::Kilograms;

use super::dropped::DropReason;

/// Amounts of a candidate, counted in blocks of its bed class.
#[derive(Debug, Clone, PartialEq)]
pub struct Amounts {
    /// Strips and plants of one block.
    pub block: Block,
    /// Fewest and most blocks.
    pub blocks: (u32, u32),
    /// Usable kilograms of one block in a poor year.
    pub low: Kilograms,
    /// Usable kilograms of one block in an ordinary year.
    pub expected: Kilograms,
    /// Flats by number of blocks, in rising order; empty if it is not raised on the shelf.
    pub levels: Vec<Level>,
}

/// Flats that suffice up to a number of blocks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Level {
    /// Up to this many blocks.
    pub up_to: u32,
    /// Flats before potting up.
    pub sown: u32,
    /// Flats after potting up.
    pub kept: u32,
}

impl Amounts {
    /// Amounts of an ingredient by a method in beds of one way of rows that have `strips` in all, grown
    /// by a team.
    ///
    /// # Errors
    /// No plant fits across the bed, the beds do not hold the least amount, or there are not as many seedlings.
    pub fn of(
        garden: &Garden,
        at: IngredientAt,
        method: Method,
        team: Team,
        (rows, strips): (Rows, u32),
    ) -> Result<Self, DropReason> {
        let ingredient = &garden[at];
        let block = Block::of(&ingredient.crop, rows).ok_or(DropReason::NoBed)?;
        let need_of = |blocks: u32| need_in(garden, at, team, method, blocks * block.plants);
        let one = need_of(1);
        let target = ingredient.target(garden.feast.portions);
        let least = match ingredient.most_plantings() {
            1 => blocks_for(one.low, ingredient.least(garden.feast.portions)),
            _ => 1,
        };
        let most = blocks_for(one.low, target).min(strips / block.strips.max(1));
        if most < least {
            return Err(DropReason::BedsTooSmall);
        }
        let there = garden
            .seedlings_of(at)
            .map(|s| s.count / block.plants.max(1));
        let most = there.map_or(most, |there| most.min(there));
        if most < least {
            return Err(DropReason::TooFewSeedlings);
        }
        let levels = match method.is_on_shelf() {
            true => levels(least, most, need_of),
            false => Vec::new(),
        };
        Ok(Self {
            block,
            blocks: (least, most),
            low: one.low,
            expected: one.expected,
            levels,
        })
    }

    /// The same with at most `most` blocks; `None` if that is fewer than the least.
    #[must_use]
    pub fn at_most(mut self, most: u32) -> Option<Self> {
        self.blocks.1 = self.blocks.1.min(most);
        let (least, most) = self.blocks;
        self.levels.retain(|l| l.up_to >= least);
        if let Some(cut) = self.levels.iter().position(|l| l.up_to >= most) {
            self.levels.truncate(cut + 1);
            self.levels[cut].up_to = most;
        }
        (least <= most).then_some(self)
    }

    /// The same with at least `least` blocks; `None` if that is more than the most.
    #[must_use]
    pub fn at_least(mut self, least: u32) -> Option<Self> {
        self.blocks.0 = self.blocks.0.max(least);
        let (least, most) = self.blocks;
        self.levels.retain(|l| l.up_to >= least);
        (least <= most).then_some(self)
    }

    /// The same with just so many blocks; `None` if they are too few or too many.
    #[must_use]
    pub fn exactly(mut self, blocks: u32) -> Option<Self> {
        let (least, most) = self.blocks;
        self.levels.retain(|l| l.up_to >= blocks);
        self.levels.truncate(1);
        self.blocks = (blocks, blocks);
        (least <= blocks && blocks <= most).then_some(self)
    }

    /// Keeps the fewest blocks only.
    pub fn keep_least(&mut self) {
        self.blocks.1 = self.blocks.0;
        self.levels.truncate(1);
    }

    /// The most blocks that a shelf of `flats` (of which `warm` under a mat, if it must stand
    /// there) can raise.
    #[must_use]
    pub fn raised_on(&self, flats: u32, warm: Option<u32>) -> u32 {
        let fits = |l: &&Level| {
            l.sown <= flats && l.kept <= flats && warm.is_none_or(|warm| l.sown <= warm)
        };
        self.levels
            .iter()
            .take_while(fits)
            .last()
            .map_or(0, |l| l.up_to)
    }

    /// Strips of the fewest blocks.
    #[must_use]
    pub fn least_strips(&self) -> u32 {
        self.blocks.0 * self.block.strips
    }

    /// Flats for a number of blocks.
    #[must_use]
    pub fn level(&self, blocks: u32) -> Option<&Level> {
        self.levels.iter().find(|l| blocks <= l.up_to)
    }
}

/// The fewest whole blocks that give an amount, at least one; a milligram is forgiven.
#[must_use]
pub fn blocks_for(per_block: Kilograms, amount: Kilograms) -> u32 {
    if per_block.0 <= 0.0 {
        return u32::MAX;
    }
    ((amount.0 - 1e-6) / per_block.0)
        .ceil()
        .clamp(1.0, f64::from(u32::MAX)) as u32
}

/// The fewest blocks that give a least share by themselves, if one gives so much of it. Unlike `blocks_for` it
/// forgives nothing but rounding: of several sowings it is added up.
#[must_use]
pub fn fewest_for_one(share: f64) -> u32 {
    let blocks = (1.0 / share).floor().clamp(1.0, f64::from(u32::MAX)) as u32;
    match f64::from(blocks) * share >= 1.0 - 1e-9 {
        true => blocks,
        false => blocks.saturating_add(1),
    }
}

/// Runs of block counts that take the same flats.
fn levels(least: u32, most: u32, need: impl Fn(u32) -> Need) -> Vec<Level> {
    let mut levels: Vec<Level> = Vec::new();
    for blocks in least..=most {
        let Need {
            flats_sown: sown,
            flats_kept: kept,
            ..
        } = need(blocks);
        match levels.last_mut() {
            Some(level) if (level.sown, level.kept) == (sown, kept) => level.up_to = blocks,
            _ => levels.push(Level {
                up_to: blocks,
                sown,
                kept,
            }),
        }
    }
    levels
}
