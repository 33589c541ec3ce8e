//! The look of each ingredient: a hue and a weave that it keeps through every picture, and the form in which it is
//! drawn. By a rule, so that one project always looks the same, and no two of its ingredients look alike.

use crate::garden::{Crop, Garden, Ripe};

/// How many hues there are, and as many weaves.
pub const CLOTHS: u8 = 12;

/// A hue and a weave, each by its number from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Cloth {
    /// The hue.
    pub hue: u8,
    /// The weave.
    pub weave: u8,
}

/// How a plant looks from afar, by what of it is harvested.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    /// A root under a tuft of leaves.
    Root,
    /// Tubers in the ground under leafy stems.
    Tuber,
    /// A bulb half in the ground.
    Bulb,
    /// A stem of close leaves.
    Shaft,
    /// Single leaves from the ground.
    Leaves,
    /// A head of leaves or buds.
    Head,
    /// Pods on a bush or vine.
    Pods,
    /// Round fruit on an upright plant.
    Fruit,
    /// Large fruit that lies on the ground.
    Gourd,
    /// Ears on a tall stalk.
    Ear,
    /// A bush of fine shoots.
    Herb,
    /// Low plants with berries.
    Berries,
}

impl Form {
    /// The form of a crop, as it shows that it is ready.
    #[must_use]
    pub fn of(crop: &Crop) -> Self {
        let Some(how) = &crop.how else {
            return Self::Leaves;
        };
        match how.ripe {
            Ripe::Shoulder => Self::Root,
            Ripe::DyingTops => Self::Tuber,
            Ripe::FallenTops | Ripe::BrownLeaves => Self::Bulb,
            Ripe::ThickStems => Self::Shaft,
            Ripe::LongLeaves => Self::Leaves,
            Ripe::FirmHead | Ripe::TightBuds => Self::Head,
            Ripe::TenderPods | Ripe::FullPods | Ripe::DryPods => Self::Pods,
            Ripe::FullColour | Ripe::FullSize => Self::Fruit,
            Ripe::Young | Ripe::HardRind | Ripe::Slips | Ripe::DryTendril => Self::Gourd,
            Ripe::FullHusk | Ripe::BrownSilk | Ripe::DryHusk | Ripe::DryHeads => Self::Ear,
            Ripe::Shoots | Ripe::Flowers => Self::Herb,
            Ripe::Berries => Self::Berries,
        }
    }

    /// The number of the cloth that it takes where that is still free: near its own colour.
    fn wanted(self) -> u8 {
        match self {
            Self::Pods => 0,
            Self::Tuber => 1,
            Self::Root => 2,
            Self::Shaft => 3,
            Self::Fruit => 4,
            Self::Leaves => 5,
            Self::Bulb => 6,
            Self::Ear => 7,
            Self::Herb => 8,
            Self::Berries => 9,
            Self::Head => 10,
            Self::Gourd => 11,
        }
    }
}

/// The cloths of all ingredients, in the order of the file: that of its form, or the next free one. Where there are more
/// ingredients than hues, a hue comes again with another weave.
pub(super) fn cloths(garden: &Garden) -> Vec<Cloth> {
    let mut taken: Vec<u32> = Vec::new();
    for ingredient in &garden.ingredients {
        let wanted = u32::from(Form::of(&ingredient.crop).wanted());
        let all = u32::from(CLOTHS);
        let mut turns = (0_u32..).flat_map(|turn| {
            let of_turn = move |step: u32| turn * all + (wanted + step) % all;
            (0..all).map(of_turn)
        });
        let free = turns.find(|number| !taken.contains(number));
        taken.extend(free);
    }
    let cloth = |number: &u32| {
        let all = u32::from(CLOTHS);
        let (hue, turn) = (number % all, number / all);
        Cloth {
            hue: u8::try_from(hue).unwrap_or(0),
            weave: u8::try_from((hue + 5 * turn) % all).unwrap_or(0),
        }
    };
    taken.iter().map(cloth).collect()
}
