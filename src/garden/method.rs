//! The ways of growing.

use serde::{Deserialize, Serialize};

/// A way of growing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// Seed sown in the bed.
    Direct,
    /// Sown on the shelf, then planted out.
    Indoor,
    /// Seed pieces, sets or cloves planted in the bed.
    Pieces,
    /// Bought young plants planted in the bed.
    Bought,
    /// Seedlings that stand on the shelf when the plan begins, then planted out.
    Seedlings,
    /// Already stands in a bed when the plan begins.
    Growing,
    /// Picked from a perennial patch.
    Patch,
}

impl Method {
    /// True if it stands on the shelf until it is planted out.
    #[must_use]
    pub const fn is_on_shelf(self) -> bool {
        match self {
            Self::Indoor | Self::Seedlings => true,
            Self::Direct | Self::Pieces | Self::Bought | Self::Growing | Self::Patch => false,
        }
    }

    /// True if what comes into the bed are plants.
    #[must_use]
    pub const fn starts_as_plants(self) -> bool {
        match self {
            Self::Indoor | Self::Bought | Self::Seedlings => true,
            Self::Direct | Self::Pieces | Self::Growing | Self::Patch => false,
        }
    }
}
