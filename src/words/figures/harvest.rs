//! Figures from the pick on: keeping, amounts, room in the bed, water, caution.

use crate::catalogue::{Basis, Entry};
use crate::facts::crop::rows_in_bed;
use crate::garden::{Crop, Sun};
use crate::units::{Kilograms, Metres};

use super::line::{Line, days, line, old_enough, years};
use crate::words::{Words, count};

/// The width of bed for which the room is worked out: reached from both sides (common practice).
const USUAL_WIDTH: Metres = Metres(1.2);

pub(super) const PICKING: [Line; 9] = [
    line("To cut it", &["ages.harvest"], |crop, _, _| {
        crop.ages.harvest.map(old_enough)
    }),
    line("Picked", &["picking.keeps_bearing"], |crop, _, _| {
        let how = match crop.picking.keeps_bearing {
            true => "again and again",
            false => "once",
        };
        Some(how.to_owned())
    }),
    line("One pick", &["picking.one_pick_share"], |crop, _, _| {
        let share = crop.picking.one_pick_share;
        Some(format!("gives {share} of the season's harvest"))
    }),
    line(
        "Once ripe",
        &["picking.holds_in_ground_days"],
        |crop, _, _| {
            let holds = days(f64::from(crop.picking.holds_in_ground_days));
            Some(match crop.picking.keeps_bearing {
                true => format!("it bears for {holds} if nobody picks"),
                false => format!("it stays good in the ground for {holds}"),
            })
        },
    ),
    line(
        "Kept picked",
        &["picking.while_picked.every_days"],
        |crop, _, _| {
            let every = days(f64::from(crop.picking.while_picked?.every_days));
            Some(format!("at least once in {every}, it bears on"))
        },
    ),
    line(
        "It then bears",
        &["picking.while_picked.bears_days"],
        |crop, _, _| {
            let most = days(f64::from(crop.picking.while_picked?.bears_days));
            Some(format!("until frost or heat ends it, for {most} at most"))
        },
    ),
    line(
        "Frost, once ripe",
        &["picking.safe_underground"],
        |crop, _, _| {
            let harm = match crop.picking.safe_underground {
                true => "does no harm: the ripe crop is safe in the ground",
                false => "harms it",
            };
            Some(harm.to_owned())
        },
    ),
    line("Cured", &["picking.cure_days"], |crop, _, _| {
        let cured = days(f64::from(crop.picking.cure_days));
        Some(format!("{cured} of drying before it is used or stored"))
    }),
    line("Keeps", &["picking.storage_days"], |crop, _, _| {
        let keeps = days(f64::from(crop.picking.storage_days));
        Some(match crop.picking.cure_days {
            0 => format!("{keeps} once picked"),
            _ => format!("{keeps} once cured"),
        })
    }),
];

pub(super) const YIELDS: [Line; 4] = [
    line("Counted by", &["yields.basis"], |_, entry, words| {
        Some(match entry.basis {
            Basis::Row => format!("the {} of row, over a whole season", words.length_unit()),
            Basis::Plant => "the plant, over a whole season".to_owned(),
        })
    }),
    line("Poor year", &["yields.low"], |crop, entry, words| {
        Some(harvest(crop.yields.low, entry, words))
    }),
    line(
        "Ordinary year",
        &["yields.expected"],
        |crop, entry, words| Some(harvest(crop.yields.expected, entry, words)),
    ),
    line("After trimming", &["yields.usable"], |crop, _, _| {
        Some(format!("{} is left for the kitchen", crop.yields.usable))
    }),
];

pub(super) const PLACE: [Line; 9] = [
    line("In the row", &["spacing.in_row"], |crop, _, words| {
        let apart = words.short_length(crop.spacing.in_row);
        Some(format!("{apart} from plant to plant"))
    }),
    line("Rows", &["spacing.between_rows"], |crop, _, words| {
        let apart = words.short_length(crop.spacing.between_rows);
        Some(format!("{apart} apart"))
    }),
    line("So, in a bed", &[], |crop, _, words| {
        let rows = rows_in_bed(crop, USUAL_WIDTH)?;
        let plants = count(rows.plants, "plant");
        Some(format!(
            "{} wide: {plants} on {} of its length",
            words.length(USUAL_WIDTH),
            words.length(rows.length)
        ))
    }),
    line("Sun", &["needs.sun"], |crop, _, _| {
        Some(sun(crop).to_owned())
    }),
    line("Soil", &["needs.soil"], |crop, _, words| {
        let deep = words.short_length(crop.needs.soil);
        Some(format!("at least {deep} deep"))
    }),
    line("Trellis", &["needs.trellis"], |crop, _, _| {
        let needed = match crop.needs.trellis {
            true => "needed: it climbs or is staked",
            false => "not needed",
        };
        Some(needed.to_owned())
    }),
    line("Family", &["rotation.family"], |crop, _, _| {
        Some(crop.rotation.family.clone())
    }),
    line("Kept away", &["rotation.years_hard"], |crop, _, _| {
        let hard = years(crop.rotation.years_hard);
        Some(format!("{hard} at least from a bed that had its family"))
    }),
    line("Better", &["rotation.years_wished"], |crop, _, _| {
        Some(years(crop.rotation.years_wished))
    }),
];

pub(super) const WATER: [Line; 4] = [
    line("Water while small", &["water.initial"], |crop, _, _| {
        Some(water(crop.water?.initial))
    }),
    line("Full grown", &["water.mid"], |crop, _, _| {
        Some(water(crop.water?.mid))
    }),
    line("At the end", &["water.end"], |crop, _, _| {
        Some(water(crop.water?.end))
    }),
    line(
        "Stages",
        &[
            "stages.initial",
            "stages.development",
            "stages.mid",
            "stages.late",
        ],
        |crop, _, _| {
            let stages = crop.stages?;
            Some(format!(
                "{} small, {} growing, {} full grown, {} at the end",
                days(stages.initial),
                days(stages.development),
                days(stages.mid),
                days(stages.late)
            ))
        },
    ),
];

pub(super) const CAUTION: [Line; 2] = [
    line("Caution", &["caution.text"], |crop, _, _| {
        Some(crop.caution.text.clone()).filter(|text| !text.is_empty())
    }),
    line("Allergies", &["caution.allergen"], |crop, _, _| {
        let allergen = crop.caution.allergen.as_ref()?;
        Some(format!(
            "Allergies: ask the school nurse about {allergen} before the dish is fixed."
        ))
    }),
];

/// A crop coefficient in words.
fn water(coefficient: f64) -> String {
    format!("{coefficient} times as much as short grass needs")
}

/// A plant's harvest, counted as the catalogue counts it.
fn harvest(of_plant: Kilograms, entry: &Entry, words: Words) -> String {
    let metres = entry.crop.spacing.in_row.to_metres().0;
    match entry.basis {
        Basis::Row => format!(
            "{}, which is {} a plant",
            words.mass_a_length(of_plant * (1.0 / metres)),
            words.small_mass(of_plant)
        ),
        Basis::Plant => format!("{} a plant", words.figure_of_mass(of_plant)),
    }
}

fn sun(crop: &Crop) -> &'static str {
    match crop.needs.sun {
        Sun::Full => "full: six hours and more a day",
        Sun::Part => "three hours a day at least",
        Sun::Shade => "shade is enough",
    }
}
