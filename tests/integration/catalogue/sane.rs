//! Figures that no source can settle must at least agree with each other.

use tureen::catalogue::Entry;
use tureen::garden::{Crop, DegreeDayMethod, Germination, Method, SeedSize, Store};
use tureen::growth::germination::rate;
use tureen::units::Celsius;

use super::{catalogue, entries};

/// Holds for every crop, else the crop and the values are named.
fn for_every_crop(check: impl Fn(&Crop) -> bool, shown: impl Fn(&Crop) -> String) {
    let catalogue = catalogue();
    for Entry { crop, .. } in entries(&catalogue) {
        assert!(check(crop), "{}: {}", crop.name, shown(crop));
    }
}

#[test]
fn shares_are_parts_of_a_whole() {
    for_every_crop(
        |c| {
            [
                c.germinates.0,
                c.picking.one_pick_share.0,
                c.yields.usable.0,
            ]
            .iter()
            .all(|share| *share > 0.0 && *share <= 1.0)
        },
        |c| format!("{} {:?} {:?}", c.germinates, c.picking, c.yields),
    );
}

#[test]
fn one_pick_takes_all_unless_it_keeps_bearing() {
    for_every_crop(
        |c| c.picking.keeps_bearing == (c.picking.one_pick_share.0 < 1.0),
        |c| format!("{:?}", c.picking),
    );
}

#[test]
fn a_poor_year_gives_less_than_an_ordinary_one() {
    for_every_crop(
        |c| c.yields.low.0 > 0.0 && c.yields.low < c.yields.expected,
        |c| format!("{:?}", c.yields),
    );
}

#[test]
fn every_crop_can_be_picked_and_keeps() {
    for_every_crop(
        |c| c.picking.holds_in_ground_days > 0 && c.picking.storage_days > 0,
        |c| format!("{:?}", c.picking),
    );
}

/// A pick at least every two weeks, as nothing that bears can go without for longer (common practice), and
/// picking never shortens the time for which it bears.
#[test]
fn picking_lengthens_what_it_lengthens() {
    let longer = |c: &Crop| match c.picking.while_picked {
        None => true,
        Some(bears) => {
            c.picking.keeps_bearing
                && (1..=14).contains(&bears.every_days)
                && bears.bears_days > c.picking.holds_in_ground_days
        }
    };
    for_every_crop(longer, |c| format!("{:?}", c.picking));
}

#[test]
fn a_crate_can_be_lifted_and_a_store_is_no_freezer() {
    for_every_crop(
        |c| {
            let (low, high) = c.kitchen.temperature;
            (0.5..=35.0).contains(&c.kitchen.crate_holds.0)
                && low <= high
                && (-1.0..=16.0).contains(&low.0)
                && (0.0..=16.0).contains(&high.0)
        },
        |c| format!("{:?}", c.kitchen),
    );
}

#[test]
fn what_keeps_cold_keeps_colder_than_what_keeps_cool_and_moist() {
    for_every_crop(
        |c| {
            let (low, high) = c.kitchen.temperature;
            match c.kitchen.store {
                Store::ColdMoist => high.0 < 4.5,
                Store::CoolMoist => low.0 > 4.0,
                Store::CoolDry => true,
                // Nothing comes from the garden frozen or dried.
                Store::Freezer | Store::Jar => false,
            }
        },
        |c| format!("{:?}", c.kitchen),
    );
}

#[test]
fn every_method_has_its_packet_days() {
    for_every_crop(
        |c| {
            c.methods.iter().all(|method| match method {
                Method::Direct | Method::Pieces => c.ripening.days_from_sowing.is_some(),
                Method::Indoor | Method::Bought => c.ripening.days_from_planting.is_some(),
                Method::Seedlings | Method::Growing | Method::Patch => false,
            })
        },
        |c| format!("{:?} {:?}", c.methods, c.ripening),
    );
}

#[test]
fn planting_is_quicker_than_sowing() {
    for_every_crop(
        |c| {
            let days = c
                .ripening
                .days_from_planting
                .zip(c.ripening.days_from_sowing);
            days.is_none_or(|(planting, sowing)| planting < sowing)
        },
        |c| format!("{:?}", c.ripening),
    );
}

#[test]
fn only_perennials_of_a_patch_have_no_method() {
    let catalogue = catalogue();
    let stand: Vec<&str> = entries(&catalogue)
        .into_iter()
        .filter(|entry| entry.crop.methods.is_empty())
        .map(|entry| entry.crop.name.as_str())
        .collect();
    assert_eq!(stand, ["asparagus", "raspberry", "rhubarb"]);
}

#[test]
fn a_crop_raised_indoors_says_how() {
    for_every_crop(
        |c| c.methods.contains(&Method::Indoor) == c.indoor.is_some(),
        |c| format!("{:?} {:?}", c.methods, c.indoor),
    );
}

#[test]
fn flats_and_weeks_are_those_of_a_school_shelf() {
    for_every_crop(
        |c| {
            c.indoor.is_none_or(|start| {
                start.weeks_lo >= 2
                    && start.weeks_lo <= start.weeks_hi
                    && start.weeks_hi <= 12
                    && [15, 50, 72, 128, 288].contains(&start.cells_per_flat)
                    && start
                        .pots_per_flat
                        .is_none_or(|pots| pots < start.cells_per_flat)
            })
        },
        |c| format!("{:?}", c.indoor),
    );
}

#[test]
fn packet_days_hold_where_the_crop_grows() {
    for_every_crop(
        |c| {
            let r = c.ripening;
            r.base < r.reference && r.upper.is_none_or(|upper| r.reference < upper)
        },
        |c| format!("{:?}", c.ripening),
    );
}

#[test]
fn an_upper_limit_goes_with_the_average_of_the_extremes() {
    for_every_crop(
        |c| (c.ripening.method == DegreeDayMethod::Average) == c.ripening.upper.is_some(),
        |c| format!("{:?}", c.ripening),
    );
}

#[test]
fn seed_comes_up_somewhere() {
    for_every_crop(
        |c| match &c.germination {
            Germination::Table(days) | Germination::Extended { days, .. } => {
                days.iter().flatten().count() >= 3 && days.iter().flatten().all(|d| *d >= 1.0)
            }
            Germination::Range {
                min,
                optimum,
                max,
                days,
            } => min < optimum && optimum < max && *days >= 1.0,
        },
        |c| format!("{:?}", c.germination),
    );
}

/// What is sown, and potatoes, must be up within six weeks; sets and cloves wait, and plants are up.
#[test]
fn seed_rots_and_sets_and_cloves_wait() {
    let waiting = ["garlic", "onion (from sets)", "shallot"];
    for_every_crop(
        |c| {
            let in_bed = [Method::Direct, Method::Pieces];
            let sown = c.methods.iter().any(|m| in_bed.contains(m));
            let rots = sown && !waiting.contains(&c.name.as_str());
            let planted = c.methods.iter().any(|m| !in_bed.contains(m));
            let least = [c.ground.sow, c.ground.set_out];
            c.ground.sow.is_some() == sown
                && c.ground.set_out.is_some() == planted
                && least.iter().flatten().all(|t| (4.0..=18.0).contains(&t.0))
                && c.ground.rots_after.is_some() == rots
                && c.ground
                    .rots_after
                    .is_none_or(|days| (21..=42).contains(&days))
        },
        |c| format!("{:?}", c.ground),
    );
}

/// What is sown as seed says for how long that keeps; pieces and bought plants are none.
#[test]
fn seed_keeps_for_years() {
    for_every_crop(
        |c| {
            let as_seed = |method: &Method| matches!(method, Method::Direct | Method::Indoor);
            c.seed_keeps_years.is_some() == c.methods.iter().any(as_seed)
                && c.seed_keeps_years
                    .is_none_or(|years| (1..=6).contains(&years))
        },
        |c| format!("{:?}", c.seed_keeps_years),
    );
}

/// Small seed is sown too close and thinned, wheat is sown to stand close; at the least a week after seedlings
/// can be held, and long before the crop is ripe.
#[test]
fn small_seed_sown_in_the_bed_is_thinned() {
    for_every_crop(
        |c| {
            let small = c.methods.contains(&Method::Direct) && c.seed_size != SeedSize::Large;
            let ripe = c.ripening.days_from_sowing.unwrap_or(0.0);
            c.thinning.is_some() == (small && c.name != "wheat")
                && c.thinning.is_none_or(|thinning| {
                    (5..=14).contains(&thinning.after)
                        && (5..=14).contains(&(thinning.before - thinning.after))
                        && f64::from(thinning.before) * 1.5 < ripe
                })
        },
        |c| format!("{:?}", c.thinning),
    );
}

/// Seed sown in the coldest ground of its kind is up in time where spring goes on as it does: a
/// degree warmer every five days.
#[test]
fn what_is_sown_at_the_least_warmth_is_up_in_spring() {
    for_every_crop(
        |c| {
            let Some((least, rots_after)) = c.ground.sow.zip(c.ground.rots_after) else {
                return true;
            };
            let soil = |day: u32| least + Celsius(f64::from(day) / 5.0);
            let way: f64 = (1..=rots_after)
                .map(|day| rate(&c.germination, soil(day)))
                .sum();
            way >= 1.0
        },
        |c| format!("{:?} {:?}", c.ground, c.germination),
    );
}

#[test]
fn years_apart_are_wished_no_shorter_than_they_must_be() {
    for_every_crop(
        |c| c.rotation.years_hard >= 1 && c.rotation.years_hard <= c.rotation.years_wished,
        |c| format!("{:?}", c.rotation),
    );
}

#[test]
fn a_plant_fits_a_bed_and_rows_come_out_whole() {
    // A bed is 1.2 m wide; ten strips of 30 cm are the longest block that a school bed holds.
    for_every_crop(
        |c| {
            let rows = c.spacing.between_rows.0;
            c.spacing.in_row.0 <= 120.0
                && (1..=10).any(|strips| f64::from(strips) * 30.0 % rows == 0.0)
        },
        |c| format!("{:?}", c.spacing),
    );
}

/// Usual distances in the row and between rows, cm, lowest to highest. Carrot, beet, leek and
/// leaf lettuce in the row: CSU-720; all others from memory.
#[test]
fn spacings_are_usual_ones() {
    let catalogue = catalogue();
    for (name, in_row, between) in [
        ("tomato", 45.0..=75.0, 90.0..=120.0),
        ("potato", 25.0..=35.0, 75.0..=90.0),
        ("carrot", 5.0..=8.0, 25.0..=35.0),
        ("beet", 10.0..=15.0, 30.0..=40.0),
        ("leek", 10.0..=15.0, 30.0..=45.0),
        ("scallion", 2.0..=5.0, 20.0..=30.0),
        ("lettuce (leaf)", 18.0..=23.0, 20.0..=30.0),
        ("spinach", 8.0..=12.0, 25.0..=35.0),
        ("kale", 30.0..=45.0, 45.0..=60.0),
        ("cabbage", 30.0..=45.0, 60.0..=75.0),
        ("dry bean", 8.0..=12.0, 45.0..=75.0),
        ("snap pea", 4.0..=6.0, 60.0..=90.0),
        ("cucumber", 20.0..=30.0, 90.0..=120.0),
        ("winter squash", 60.0..=120.0, 150.0..=240.0),
        ("sweet corn", 20.0..=30.0, 75.0..=90.0),
    ] {
        let spacing = catalogue.get(name).expect(name).spacing;
        assert!(in_row.contains(&spacing.in_row.0), "{name}: {spacing:?}");
        assert!(
            between.contains(&spacing.between_rows.0),
            "{name}: {spacing:?}"
        );
    }
}
