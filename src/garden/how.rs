//! How a crop is grown and picked by hands that have not done it before. Kinds only; `report` words them.

use serde::Deserialize;

use crate::units::Centimetres;

/// What is done for a crop while it grows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Tending {
    /// Soil is drawn up around it.
    Hill,
    /// Tied to a stake of its own.
    Stake,
    /// Held by strings between posts on both sides of the row.
    Strings,
    /// Led up a net, a trellis or poles.
    Climb,
    /// Covered with a fine net against butterflies and flies.
    InsectNet,
    /// Covered with a net against birds while it bears.
    BirdNet,
    /// Straw under the fruit.
    Straw,
    /// Tips pinched out, so that it branches.
    Pinch,
}

/// By what a child sees that it is ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ripe {
    /// Fruit that has all its colour.
    FullColour,
    /// Fruit of full size, firm and glossy.
    FullSize,
    /// Fruit that is still young and tender.
    Young,
    /// A rind that a fingernail no longer marks.
    HardRind,
    /// Fruit that leaves its stalk by itself.
    Slips,
    /// A dry tendril beside the fruit.
    DryTendril,
    /// A husk that is full.
    FullHusk,
    /// Brown silks and milk in the kernels.
    BrownSilk,
    /// Dry husks, hard kernels.
    DryHusk,
    /// Tops that turn yellow and die back.
    DyingTops,
    /// Tops that have fallen over.
    FallenTops,
    /// Lower leaves that are brown.
    BrownLeaves,
    /// The width of the root at the ground.
    Shoulder,
    /// The thickness of stems.
    ThickStems,
    /// The length of leaves.
    LongLeaves,
    /// A head that is firm.
    FirmHead,
    /// A head of buds that are closed.
    TightBuds,
    /// Pods that snap.
    TenderPods,
    /// Pods in which the seeds are felt.
    FullPods,
    /// Pods that rattle.
    DryPods,
    /// Heads that shed seed.
    DryHeads,
    /// Shoots that are long enough to cut.
    Shoots,
    /// Flowers that have just opened.
    Flowers,
    /// Berries that are coloured all over.
    Berries,
}

/// How it is taken from the plant or from the ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Take {
    /// Picked by hand.
    Pick,
    /// Cut with scissors.
    Scissors,
    /// Cut with secateurs, by an adult or beside one.
    Secateurs,
    /// Cut with a knife, by an adult.
    Knife,
    /// Pulled up by hand.
    Pull,
    /// Lifted with a fork, by an adult.
    Fork,
}

/// Where it dries or cures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Curing {
    /// Airy, out of sun and rain.
    Airy,
    /// Warm and dry.
    Warm,
    /// Warm and moist.
    WarmMoist,
    /// Dark and cool.
    Dark,
    /// Spread out or hung up under a roof.
    Roof,
}

/// How a crop is grown and picked.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct How {
    /// How deep its seed, pieces, sets or plants are set, least and most; 0 is pressed on and not
    /// covered. `None` where that is for the packet, or where it is never sown.
    pub depth: Option<(Centimetres, Centimetres)>,
    /// What is done for it while it grows, in order.
    #[serde(default)]
    pub tending: Vec<Tending>,
    /// By what it is seen to be ready.
    pub ripe: Ripe,
    /// How it is taken.
    pub take: Take,
    /// Where it dries or cures, if it does.
    pub cures: Option<Curing>,
    /// True if it is dry seed that is soaked overnight before it is cooked.
    #[serde(default)]
    pub soaked: bool,
}
