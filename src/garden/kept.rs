//! Crops that are put by: picked when they are ripe, frozen or dried, and good for months.

use crate::units::Celsius;

use super::crop::Crop;
use super::how::Curing;
use super::kitchen::Store;

/// Days that frozen vegetables, fruits and herbs stay good at -18 C: eight months, the shorter end of what extension
/// services tell (from memory).
const FROZEN_DAYS: u32 = 240;

/// Days that dried herbs and peppers stay good in a closed jar in the dark (common practice).
const DRIED_DAYS: u32 = 365;

/// How a crop is put by for longer than it keeps fresh.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// In a freezer, on the day of the pick.
    Frozen,
    /// Hung or spread out until it is crisp, then in a closed jar.
    Dried,
}

impl Kept {
    /// Its word in a project file.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Frozen => "frozen",
            Self::Dried => "dried",
        }
    }
}

impl Crop {
    /// The ways of putting it by in which it keeps longer than as it is.
    pub fn keeps_longer(&self) -> impl Iterator<Item = Kept> {
        let fresh = self.picking.storage_days;
        let longer = move |kept: &Kept| {
            let put_by = self.kept(*kept);
            put_by.is_some_and(|put_by| put_by.picking.storage_days > fresh)
        };
        [Kept::Frozen, Kept::Dried].into_iter().filter(longer)
    }

    /// True of a crop that is put by.
    #[must_use]
    pub fn is_put_by(&self) -> bool {
        match self.kitchen.store {
            Store::Freezer | Store::Jar => true,
            Store::ColdMoist | Store::CoolMoist | Store::CoolDry => false,
        }
    }

    /// The crop as it is put by; `None` where it is not fit for that.
    #[must_use]
    pub fn kept(&self, kept: Kept) -> Option<Self> {
        let mut crop = self.clone();
        let (days, store, temperature) = match kept {
            Kept::Frozen => {
                self.kitchen.freezing?;
                (
                    FROZEN_DAYS,
                    Store::Freezer,
                    (Celsius(-24.0), Celsius(-18.0)),
                )
            }
            Kept::Dried => {
                crop.picking.cure_days = self.kitchen.dried_days?;
                if let Some(how) = &mut crop.how {
                    how.cures = Some(Curing::Airy);
                }
                (DRIED_DAYS, Store::Jar, (Celsius(5.0), Celsius(21.0)))
            }
        };
        crop.picking.storage_days = days;
        crop.kitchen.store = store;
        crop.kitchen.temperature = temperature;
        Some(crop)
    }
}
