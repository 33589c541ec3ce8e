//! Figures from the pick on: keeping, amounts, room in the bed, water, caution.

use crate::catalogue::{Basis, Entry};
use crate::facts::crop::rows_in_bed;
use crate::garden::{Crop, Sun};
use crate::units::{Kilograms, Metres};

use super::super::line::{Line, days, old_enough, years};
use crate::words::{Words, count};

/// The width of bed for which the room is worked out: reached from both sides (common practice).
const USUAL_WIDTH: Metres = Metres(1.2);

pub(super) const PICKING: [Line; 7] = [
    Line {
        label: "To cut it",
        fields: &["ages.harvest"],
        text: |crop, _, _| crop.ages.harvest.map(old_enough),
    },
    Line {
        label: "Picked",
        fields: &["picking.keeps_bearing"],
        text: |crop, _, _| {
            let how = match crop.picking.keeps_bearing {
                true => "again and again",
                false => "once",
            };
            Some(how.to_owned())
        },
    },
    Line {
        label: "One pick",
        fields: &["picking.one_pick_share"],
        text: |crop, _, _| {
            let share = crop.picking.one_pick_share;
            Some(format!("gives {share} of the season's harvest"))
        },
    },
    Line {
        label: "Once ripe",
        fields: &["picking.holds_in_ground_days"],
        text: |crop, _, _| {
            let holds = days(f64::from(crop.picking.holds_in_ground_days));
            Some(match crop.picking.keeps_bearing {
                true => format!("it bears for {holds}"),
                false => format!("it stays good in the ground for {holds}"),
            })
        },
    },
    Line {
        label: "Frost, once ripe",
        fields: &["picking.safe_underground"],
        text: |crop, _, _| {
            let harm = match crop.picking.safe_underground {
                true => "does no harm: the ripe crop is safe in the ground",
                false => "harms it",
            };
            Some(harm.to_owned())
        },
    },
    Line {
        label: "Cured",
        fields: &["picking.cure_days"],
        text: |crop, _, _| {
            let cured = days(f64::from(crop.picking.cure_days));
            Some(format!("{cured} of drying before it is used or stored"))
        },
    },
    Line {
        label: "Keeps",
        fields: &["picking.storage_days"],
        text: |crop, _, _| {
            let keeps = days(f64::from(crop.picking.storage_days));
            Some(match crop.picking.cure_days {
                0 => format!("{keeps} once picked"),
                _ => format!("{keeps} once cured"),
            })
        },
    },
];

pub(super) const YIELDS: [Line; 4] = [
    Line {
        label: "Counted by",
        fields: &["yields.basis"],
        text: |_, entry, words| {
            Some(match entry.basis {
                Basis::Row => format!("the {} of row, over a whole season", words.length_unit()),
                Basis::Plant => "the plant, over a whole season".to_owned(),
            })
        },
    },
    Line {
        label: "Poor year",
        fields: &["yields.low"],
        text: |crop, entry, words| Some(harvest(crop.yields.low, entry, words)),
    },
    Line {
        label: "Ordinary year",
        fields: &["yields.expected"],
        text: |crop, entry, words| Some(harvest(crop.yields.expected, entry, words)),
    },
    Line {
        label: "After trimming",
        fields: &["yields.usable"],
        text: |crop, _, _| Some(format!("{} is left for the kitchen", crop.yields.usable)),
    },
];

pub(super) const PLACE: [Line; 9] = [
    Line {
        label: "In the row",
        fields: &["spacing.in_row"],
        text: |crop, _, words| {
            let apart = words.short_length(crop.spacing.in_row);
            Some(format!("{apart} from plant to plant"))
        },
    },
    Line {
        label: "Rows",
        fields: &["spacing.between_rows"],
        text: |crop, _, words| {
            let apart = words.short_length(crop.spacing.between_rows);
            Some(format!("{apart} apart"))
        },
    },
    Line {
        label: "So, in a bed",
        fields: &[],
        text: |crop, _, words| {
            let rows = rows_in_bed(crop, USUAL_WIDTH)?;
            let plants = count(rows.plants, "plant");
            Some(format!(
                "{} wide: {plants} on {} of its length",
                words.length(USUAL_WIDTH),
                words.length(rows.length)
            ))
        },
    },
    Line {
        label: "Sun",
        fields: &["needs.sun"],
        text: |crop, _, _| Some(sun(crop).to_owned()),
    },
    Line {
        label: "Soil",
        fields: &["needs.soil"],
        text: |crop, _, words| {
            let deep = words.short_length(crop.needs.soil);
            Some(format!("at least {deep} deep"))
        },
    },
    Line {
        label: "Trellis",
        fields: &["needs.trellis"],
        text: |crop, _, _| {
            let needed = match crop.needs.trellis {
                true => "needed: it climbs or is staked",
                false => "not needed",
            };
            Some(needed.to_owned())
        },
    },
    Line {
        label: "Family",
        fields: &["rotation.family"],
        text: |crop, _, _| Some(crop.rotation.family.clone()),
    },
    Line {
        label: "Kept away",
        fields: &["rotation.years_hard"],
        text: |crop, _, _| {
            let hard = years(crop.rotation.years_hard);
            Some(format!("{hard} at least from a bed that had its family"))
        },
    },
    Line {
        label: "Better",
        fields: &["rotation.years_wished"],
        text: |crop, _, _| Some(years(crop.rotation.years_wished)),
    },
];

pub(super) const WATER: [Line; 4] = [
    Line {
        label: "Water while small",
        fields: &["water.initial"],
        text: |crop, _, _| Some(water(crop.water?.initial)),
    },
    Line {
        label: "Full grown",
        fields: &["water.mid"],
        text: |crop, _, _| Some(water(crop.water?.mid)),
    },
    Line {
        label: "At the end",
        fields: &["water.end"],
        text: |crop, _, _| Some(water(crop.water?.end)),
    },
    Line {
        label: "Stages",
        fields: &[
            "stages.initial",
            "stages.development",
            "stages.mid",
            "stages.late",
        ],
        text: |crop, _, _| {
            let stages = crop.stages?;
            Some(format!(
                "{} small, {} growing, {} full grown, {} at the end",
                days(stages.initial),
                days(stages.development),
                days(stages.mid),
                days(stages.late)
            ))
        },
    },
];

pub(super) const CAUTION: [Line; 2] = [
    Line {
        label: "Caution",
        fields: &["caution.text"],
        text: |crop, _, _| Some(crop.caution.text.clone()).filter(|text| !text.is_empty()),
    },
    Line {
        label: "Allergies",
        fields: &["caution.allergen"],
        text: |crop, _, _| {
            let allergen = crop.caution.allergen.as_ref()?;
            Some(format!(
                "Allergies: ask the school nurse about {allergen} before the dish is fixed."
            ))
        },
    },
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
