//! Figures from the seed to the ripe crop: starting, coming up, ripening, cold.

use crate::facts::crop::{CountedFrom, at_the_quickest, ripe_when_planted, ripe_when_sown};
use crate::garden::{
    Crop, DayLengthKind, DegreeDayMethod, FrostResponse, Germination, IndoorStart, KindOfThePlace,
    LongDay, SeedSize,
};
use crate::units::{Celsius, DegreeDays};

use super::line::{Line, days, line, old_enough, way};
use crate::words::{count, day_length};

pub(super) const STARTING: [Line; 9] = [
    line("How", &["methods"], |crop, _, _| Some(methods(crop))),
    line("Seed", &["seed_size"], |crop, _, _| {
        Some(seed_size(crop.seed_size).to_owned())
    }),
    line("Seed keeps", &["seed_keeps_years"], |crop, _, _| {
        let years = count(crop.seed_keeps_years?, "year");
        Some(format!("for the sowings of {years}, cool and dry"))
    }),
    line("To sow it", &["ages.sowing"], |crop, _, _| {
        crop.ages.sowing.map(old_enough)
    }),
    line("Of 100 seeds", &["germinates"], |crop, _, _| {
        Some(format!("{:.0} come up", crop.germinates.0 * 100.0))
    }),
    line("On the shelf", &["indoor.weeks"], |crop, _, _| {
        crop.indoor.as_ref().map(shelf_weeks)
    }),
    line("In a flat", &["indoor.cells"], |crop, _, _| {
        let cells = crop.indoor?.cells_per_flat;
        Some(format!("{cells} cells, when it is sown"))
    }),
    line("Potted up", &["indoor.pots"], |crop, _, _| {
        Some(format!("{} pots in a flat", crop.indoor?.pots_per_flat?))
    }),
    line("Heat mat", &["indoor.warm_below"], |crop, _, _| {
        let warm = crop.indoor?.warm_below.0;
        Some(format!("until it is up, in a room colder than {warm} C"))
    }),
];

pub(super) const COMING_UP: [Line; 9] = [
    line("Soil to sow in", &["ground.sow"], |crop, _, _| {
        crop.ground.sow.map(and_warmer)
    }),
    line("Soil to plant in", &["ground.set_out"], |crop, _, _| {
        crop.ground.set_out.map(and_warmer)
    }),
    line("Rotted", &["ground.rots_after"], |crop, _, _| {
        let rots_after = crop.ground.rots_after?;
        Some(format!("if it is not up after {}", days(rots_after.into())))
    }),
    line(
        "Thinned",
        &["thinning.after", "thinning.before"],
        |crop, _, _| {
            let thinning = crop.thinning?;
            let (after, before) = (thinning.after, days(thinning.before.into()));
            Some(format!("{after} to {before} after it is up"))
        },
    ),
    line(
        "The days above",
        &["germination.table", "germination.extended.row"],
        |crop, _, _| match crop.germination {
            Germination::Table(_) | Germination::Extended { .. } => {
                Some("measured in steady warmth; in a bed it takes longer".to_owned())
            }
            Germination::Range { .. } => None,
        },
    ),
    line(
        "Coldest soil",
        &["germination.range.min", "germination.extended.least"],
        |crop, _, _| match crop.germination {
            Germination::Table(_) => None,
            Germination::Extended { least, .. } => Some(format!(
                "{} C; from there to the first measured days the rate is read on a line",
                least.0
            )),
            Germination::Range { min, .. } => Some(format!("{} C", min.0)),
        },
    ),
    line("Best soil", &["germination.range.optimum"], |crop, _, _| {
        range(crop).map(|(_, best, _, _)| format!("{} C", best.0))
    }),
    line("Warmest soil", &["germination.range.max"], |crop, _, _| {
        range(crop).map(|(_, _, max, _)| format!("{} C", max.0))
    }),
    line("At the best", &["germination.range.days"], |crop, _, _| {
        range(crop).map(|(_, _, _, at_best)| days(at_best))
    }),
];

pub(super) const RIPENING: [Line; 10] = [
    line(
        "From sowing",
        &["ripening.days_from_sowing"],
        |crop, _, _| {
            let packet = crop.ripening.days_from_sowing?;
            Some(format!("{} in the bed, as packets say", days(packet)))
        },
    ),
    line(
        "From planting out",
        &["ripening.days_from_planting"],
        |crop, _, _| {
            let packet = crop.ripening.days_from_planting?;
            Some(format!("{}, as packets say", days(packet)))
        },
    ),
    line(
        "Published warmth",
        &["ripening.thermal_from_sowing"],
        |crop, _, _| {
            let sum = crop.ripening.thermal_from_sowing?.0;
            Some(format!(
                "{sum} degree-days (C) from sowing; used instead of packet days"
            ))
        },
    ),
    line("Packet days hold", &["ripening.reference"], |crop, _, _| {
        let reference = crop.ripening.reference.0;
        Some(format!("where days have a mean of {reference} C"))
    }),
    line("No growth", &["ripening.base"], |crop, _, _| {
        Some(format!("below {} C", crop.ripening.base.0))
    }),
    line("No faster", &["ripening.upper"], |crop, _, _| {
        Some(format!("above {} C", crop.ripening.upper?.0))
    }),
    line(
        "However warm",
        &["ripening.short_from_sowing", "ripening.short_from_planting"],
        |crop, _, _| {
            let least = at_the_quickest(crop);
            let told = |days: Option<f64>, from| Some(format!("{:.0} from {from}", days?));
            let of = [
                told(least.sown, "sowing"),
                told(least.planted, "planting out"),
            ];
            let of: Vec<String> = of.into_iter().flatten().collect();
            let short = "four fifths of the short end on packets";
            (!of.is_empty())
                .then(|| format!("not ripe in fewer days than {}, {short}", of.join(" or ")))
        },
    ),
    line("A day's warmth", &["ripening.method"], |crop, _, _| {
        Some(method(crop.ripening.method).to_owned())
    }),
    line("So, when sown", &[], |crop, _, _| {
        ripe_when_sown(crop).map(ripe)
    }),
    line("So, when planted", &[], |crop, _, _| {
        ripe_when_planted(crop).map(ripe)
    }),
];

pub(super) const WEATHER: [Line; 7] = [
    line("Bears", &["frost.limit"], |crop, _, _| {
        let Celsius(limit) = crop.frost_limit;
        let then = match crop.frost {
            FrostResponse::Killed => "colder air kills it",
            FrostResponse::SetBack { .. } => "colder air takes its leaves",
        };
        Some(format!("{limit} C when it is hardened; {then}"))
    }),
    line(
        "Set back",
        &["frost.sets_back_days"],
        |crop, _, _| match crop.frost {
            FrostResponse::Killed => None,
            FrostResponse::SetBack { days: lost } => {
                Some(format!("by {} of growth, by such a night", days(lost)))
            }
        },
    ),
    line(
        "Long days",
        &["bolting.day_length", "bolting.after_days"],
        |crop, _, _| {
            let bolting = crop.bolting?;
            Some(format!(
                "it flowers, and is lost, after {} of {} hours of light and more",
                days(f64::from(bolting.after_days)),
                bolting.day_length.0
            ))
        },
    ),
    line("Too hot", &["spoils.above", "spoils.days"], |crop, _, _| {
        let spoils = crop.spoils?;
        let spell = days(f64::from(spoils.days));
        let safe = match crop.picking.safe_underground {
            true => ", unless it is ripe",
            false => "",
        };
        let above = spoils.above.0;
        Some(format!(
            "{spell} in a row with a mean over {above} C end it{safe}"
        ))
    }),
    line(
        "No fruit",
        &["no_fruit.nights", "no_fruit.noons", "no_fruit.days"],
        |crop, _, _| {
            let no_fruit = crop.no_fruit?;
            Some(format!(
                "after {} in a row with nights over {} C or noons over {} C",
                days(f64::from(no_fruit.days)),
                no_fruit.nights.0,
                no_fruit.noons.0
            ))
        },
    ),
    line(
        "Young and cold",
        &["chill.below", "chill.days", "chill.within"],
        |crop, _, _| {
            let chill = crop.chill?;
            Some(format!(
                "it flowers too soon after {} with a mean under {} C, in the first {} in the bed",
                days(f64::from(chill.days)),
                chill.below.0,
                days(f64::from(chill.within))
            ))
        },
    ),
    line(
        "Bulbs",
        &[
            "bulbs.cold_nights",
            "bulbs.below",
            "bulbs.day_length",
            "bulbs.days",
        ],
        |crop, _, _| {
            let bulbs = crop.bulbs?;
            let winter = match bulbs.cold_nights {
                0 => String::new(),
                nights => format!("after {nights} nights colder than {} C, ", bulbs.below.0),
            };
            let long = match bulbs.day_length {
                LongDay::Hours(hours) => format!("{} hours of light or more", hours.0),
                LongDay::Kind(KindOfThePlace::ByLatitude) => by_kind(),
            };
            Some(format!(
                "it makes them {winter}in {} of {long}",
                days(f64::from(bulbs.days))
            ))
        },
    ),
];

/// The kinds of onions with the light that they need.
fn by_kind() -> String {
    let kinds = DayLengthKind::ALL.map(|(kind, up_to)| {
        let (name, hours) = (day_length::kind(kind), kind.day_length().0);
        let place = up_to.map_or("beyond".to_owned(), |up_to| {
            format!("below {} degrees of latitude", up_to.0)
        });
        format!("{hours} hours of light or more ({name} kinds, {place})")
    });
    kinds.join(", ")
}

fn methods(crop: &Crop) -> String {
    let ways: Vec<&str> = crop.methods.iter().map(|m| way(*m)).collect();
    if ways.is_empty() {
        return "stands in a patch for years".to_owned();
    }
    let best_first = if ways.len() > 1 { "; best first" } else { "" };
    format!("{}{best_first}", ways.join(", or "))
}

fn seed_size(size: SeedSize) -> &'static str {
    match size {
        SeedSize::Tiny => "tiny: sown as a pinch, with help",
        SeedSize::Medium => "of middling size",
        SeedSize::Large => "large: little hands hold single seeds",
    }
}

fn shelf_weeks(indoor: &IndoorStart) -> String {
    let weeks = if indoor.weeks_lo == indoor.weeks_hi {
        count(indoor.weeks_lo, "week")
    } else {
        format!("{} to {} weeks", indoor.weeks_lo, indoor.weeks_hi)
    };
    format!("{weeks} from sowing to planting out")
}

fn range(crop: &Crop) -> Option<(Celsius, Celsius, Celsius, f64)> {
    match crop.germination {
        Germination::Table(_) | Germination::Extended { .. } => None,
        Germination::Range {
            min,
            optimum,
            max,
            days,
        } => Some((min, optimum, max, days)),
    }
}

fn and_warmer(soil: Celsius) -> String {
    format!("soil of {} C and warmer", soil.0)
}

fn method(method: DegreeDayMethod) -> &'static str {
    match method {
        DegreeDayMethod::Average => {
            "mean of its lowest and highest temperature, each held within the limits"
        }
        DegreeDayMethod::Sine => "area under a sine curve through its lowest and highest",
    }
}

fn ripe((from, need): (CountedFrom, DegreeDays)) -> String {
    let from = match from {
        CountedFrom::Sowing => "sowing",
        CountedFrom::ComingUp => "coming up",
        CountedFrom::PlantingOut => "planting out",
    };
    format!("ripe {:.0} degree-days (C) after {from}", need.0)
}
