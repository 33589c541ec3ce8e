//! How a thing is done, in words. All of it is common practice, but for depths, which are from
//! memory; the packet comes first.

use crate::facts::how::{Act, Apart, Depth};
use crate::garden::{Ripe, Take, Tending};

use super::{Words, sentence};

/// One thing that is done; how it is taken is not said twice, where another ingredient is taken like it.
pub(crate) fn text(act: Act, taken_like: Option<&str>, words: Words) -> String {
    match act {
        Act::InFlats(depth) => format!(
            "Sow indoors: fill the flats with damp mix; nobody should breathe the dust of dry mix. {} Water \
             with a fine rose.",
            covered(depth, words)
        ),
        Act::InBed(depth, apart) => format!(
            "Sow in the bed: adults fork it loose, children weed it and rake it level. Draw {}. {} Water \
             with a fine rose.",
            drawn(apart, words),
            covered(depth, words)
        ),
        Act::Pieces(depth, apart) => format!(
            "Plant in the bed: adults fork it loose, children weed it. {}, {}. {}",
            sentence(&rows(apart, words)),
            every(apart, words),
            set(depth, words)
        ),
        Act::PotUp => "Pot up: hold each seedling by a leaf, never by its stem; set it as deep as it stood, in \
                       damp mix, and water it."
            .to_owned(),
        Act::Plants(apart) => format!(
            "Plant out: water the plants first. {}, {}. A hole as deep as the ball of roots, with a trowel; \
             press the soil on with both hands, and water.",
            sentence(&rows(apart, words)),
            every(apart, words)
        ),
        Act::Thin(in_row) => format!(
            "Thin: pull the weakest until one stands every {}; hold down the soil beside those that stay, and \
             water.",
            words.short_length(in_row)
        ),
        Act::Tend(tending) => tend(tending).to_owned(),
        Act::Cover(limit) => format!(
            "Frost: air colder than {} kills it. When the forecast is near that, an adult lays frost cloth \
             over it in the evening and takes it off in the morning.",
            words.temperatures(limit, limit)
        ),
        Act::Pick {
            ripe,
            take,
            again,
            frozen,
        } => {
            let take = taken_like
                .map_or_else(|| taken(take).to_owned(), |other| format!("Take it like {other}."));
            let again = again.then_some(" It goes on bearing only if somebody picks it again and again.");
            let frozen = frozen.then_some(" To the kitchen at once: it is frozen on the same day.");
            let more = again.into_iter().chain(frozen).collect::<String>();
            format!("Pick when {}. {take}{more}", ready(ripe))
        }
    }
}

/// `rows 30 cm apart`.
fn rows(apart: Apart, words: Words) -> String {
    match apart.between_rows {
        Some(between) => format!("rows {} apart", words.short_length(between)),
        None => "one row along the trellis".to_owned(),
    }
}

/// `straight rows 30 cm apart`; along a trellis one is straight by itself.
fn drawn(apart: Apart, words: Words) -> String {
    let straight = apart.between_rows.map_or("", |_| "straight ");
    format!("{straight}{}", rows(apart, words))
}

/// `one every 40 cm`.
fn every(apart: Apart, words: Words) -> String {
    format!("one every {}", words.short_length(apart.in_row))
}

/// How deep seed lies.
fn covered(depth: Depth, words: Words) -> String {
    match depth {
        Some((least, most)) if least.0 <= 0.0 => format!(
            "Press the seed on, and cover it with no more than {}.",
            words.short_length(most)
        ),
        Some((least, most)) => format!(
            "Cover the seed with {} of soil, no more.",
            words.short_lengths(least, most)
        ),
        None => "Cover the seed as the packet says.".to_owned(),
    }
}

/// How deep pieces, sets and cloves are set.
fn set(depth: Depth, words: Words) -> String {
    match depth {
        Some((least, most)) => format!(
            "Set them {} deep, tips or eyes up, and close the soil.",
            words.short_lengths(least, most)
        ),
        None => "Set them as deep as the packet says, tips or eyes up.".to_owned(),
    }
}

fn tend(tending: Tending) -> &'static str {
    match tending {
        Tending::Hill => {
            "Hill: when it is a hand high, draw loose soil up around it with a hoe, and once more three weeks \
             later."
        }
        Tending::Stake => {
            "Stake: an adult drives in a stake at planting, with a cap on its top; tie the stem loosely, and \
             again as it grows."
        }
        Tending::Strings => {
            "Hold it up: adults set posts at the ends of the row; string goes along both sides at two heights."
        }
        Tending::Climb => {
            "Lead it up: net, trellis or poles stand before it is a hand high; tops of poles at children's \
             eye height have caps."
        }
        Tending::InsectNet => {
            "Net: a fine net over hoops from the first day keeps butterflies and flies off; weigh its edges \
             down."
        }
        Tending::BirdNet => {
            "Net: before it colours an adult stretches a bird net tight over it, and looks daily that no bird \
             is caught."
        }
        Tending::Straw => "Straw: lay clean straw under the fruit, to keep it off the soil.",
        Tending::Pinch => {
            "Pinch: take out the tip above the third pair of leaves, so that it branches."
        }
    }
}

fn ready(ripe: Ripe) -> &'static str {
    match ripe {
        Ripe::FullColour => "it has all its colour and gives a little when pressed",
        Ripe::FullSize => "it is as large as its kind gets, firm and glossy",
        Ripe::Young => "it is young and tender: a fingernail marks it easily",
        Ripe::HardRind => {
            "a fingernail no longer marks the rind; leave a hand's width of stalk on it"
        }
        Ripe::Slips => "it comes off its stalk at a light pull and smells sweet",
        Ripe::DryTendril => "the tendril beside it is dry and the spot that it lies on is yellow",
        Ripe::FullHusk => "it fills its husk and the husk splits",
        Ripe::BrownSilk => "the silks are brown and dry and a pressed kernel gives milk",
        Ripe::DryHusk => "the husks are dry and the kernels too hard for a fingernail",
        Ripe::DyingTops => "the leaves turn yellow and die back; lift one plant to see",
        Ripe::FallenTops => "half of the tops have fallen over",
        Ripe::BrownLeaves => "the lower third of the leaves is brown",
        Ripe::Shoulder => "what shows at the ground is as wide as you want it; take one to see",
        Ripe::ThickStems => "the stems are as thick as the kitchen wants them",
        Ripe::LongLeaves => {
            "leaves are as long as a hand; the outer ones first, so that the heart grows on"
        }
        Ripe::FirmHead => "it is firm under the hand",
        Ripe::TightBuds => "the head is full and its buds are still closed",
        Ripe::TenderPods => "pods snap and the seeds in them hardly show",
        Ripe::FullPods => "pods are plump and the seeds can be felt in them",
        Ripe::DryPods => "pods are dry and rattle",
        Ripe::DryHeads => "heads are dry and shed their seed when rubbed",
        Ripe::Shoots => {
            "shoots are as long as a finger or more, before it flowers; leave a third of the plant"
        }
        Ripe::Flowers => "flowers have just opened, on a dry morning",
        Ripe::Berries => "it is coloured all over and comes off at a touch",
    }
}

fn taken(take: Take) -> &'static str {
    match take {
        Take::Pick => "By hand: one hand holds the plant, the other picks.",
        Take::Scissors => "Children cut with school scissors.",
        Take::Secateurs => "An adult cuts the stalk with secateurs, children hold and carry.",
        Take::Knife => "An adult cuts with a knife, children hold the basket and carry.",
        Take::Pull => "Pull it up by its base; an adult loosens hard ground with a fork.",
        Take::Fork => {
            "An adult lifts it with a digging fork, set in well beside the row; children stand back, then \
             gather."
        }
    }
}
