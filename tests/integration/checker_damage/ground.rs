//! Damages to the garden under a plan.

use tureen::garden::{
    BedAt, Bulbs, Chill, Former, Garden, Germination, GradeAt, LongDay, NoFruit, Spoils, StripAt,
    Strips, Sun,
};
use tureen::plan::Rule;
use tureen::units::{Celsius, Hours, Metres, Minutes, Share};

use crate::support::day;

use super::table::Damage;

/// Days of 15 and of 19 C, as some of the years have, are over it.
const TEN_DAYS_OF_14_C: Spoils = Spoils {
    above: Celsius(14.0),
    days: 10,
};

/// So are nights of 10 and of 14 C.
const TEN_NIGHTS_OF_9_C: NoFruit = NoFruit {
    nights: Celsius(9.0),
    noons: Celsius(40.0),
    days: 10,
};

/// A cover crop on a strip of the beans, which come on 16 March: eight days after it is cleared.
fn rye(rest_days: u32) -> Former {
    Former {
        name: "rye".to_owned(),
        family: "grass".to_owned(),
        bed: BedAt(1),
        strips: Strips {
            first: StripAt(3),
            count: 1,
        },
        cleared: day("2027-03-08"),
        rest_days,
    }
}

/// All days of spring are so cold.
const TEN_DAYS_UNDER_16_C: Chill = Chill {
    below: Celsius(16.0),
    days: 10,
    within: 35,
};

/// No night of any year is so cold.
const A_WINTER: Bulbs = Bulbs {
    cold_nights: 45,
    below: Celsius(0.0),
    day_length: LongDay::Hours(Hours(12.0)),
    days: 1,
};

pub const GROUND: &[Damage<Garden>] = &[
    (
        "a smaller shelf",
        |g| g.shelf.flats = 2,
        Rule::Shelf,
        "ShelfFull mat:false",
    ),
    (
        "a smaller mat",
        |g| g.shelf.warm_flats = 2,
        Rule::Shelf,
        "ShelfFull mat:true",
    ),
    ("no mat", |g| g.shelf.warm_flats = 0, Rule::Shelf, "Mat"),
    (
        "a warmer room",
        |g| g.shelf.room.0 = 21.0,
        Rule::Shelf,
        "Mat",
    ),
    (
        "the shelf opens later",
        |g| g.shelf.from = day("2027-03-09"),
        Rule::Shelf,
        "ShelfClosed",
    ),
    (
        "the shelf is lent",
        |g| g.shelf.until = Some(day("2027-04-18")),
        Rule::Shelf,
        "ShelfClosed",
    ),
    (
        "a shorter session",
        |g| g.grades[0].classes[1].slots[0].minutes = Minutes(10.5),
        Rule::Sessions,
        "SessionOverfull",
    ),
    (
        "a day off",
        |g| g.school_year.days_off.push(day("2027-03-18")),
        Rule::Sessions,
        "NoSession",
    ),
    (
        "a new class",
        |g| {
            let c = g.grades[1].classes[0].clone();
            g.grades[1].classes.push(c);
            g.grades[1].classes[1].name = "2b".to_owned();
        },
        Rule::Participation,
        "Visits",
    ),
    (
        "a break before planting out",
        |g| {
            g.school_year.breaks[0].from = day("2027-04-12");
            g.school_year.breaks[0].to = day("2027-04-16");
        },
        Rule::Care,
        "HardensUnattended",
    ),
    (
        "the bed is free later",
        |g| g.beds[1].free_from = Some(day("2027-03-17")),
        Rule::Space,
        "Place NotFreeUntil",
    ),
    (
        "a cover crop rests a day longer",
        |g| g.former.push(rye(9)),
        Rule::Space,
        "Place NotFreeUntil",
    ),
    (
        "a cover crop of the family",
        |g| {
            let family = g.ingredients[0].crop.rotation.family.clone();
            g.former.push(Former { family, ..rye(8) });
        },
        Rule::Rotation,
        "Rotation",
    ),
    (
        "a bed of another grade",
        |g| g.beds[1].of = vec![GradeAt(1)],
        Rule::Space,
        "Place OfOthers",
    ),
    (
        "a bed for climbers alone",
        |g| g.beds[1].along_trellis = true,
        Rule::Space,
        "Place OnlyClimbers",
    ),
    (
        "too little sun",
        |g| g.beds[1].sun = Sun::Shade,
        Rule::Space,
        "Place Unsuitable",
    ),
    (
        "too little soil",
        |g| g.beds[1].soil.0 = 19.0,
        Rule::Space,
        "Place Unsuitable",
    ),
    (
        "too narrow",
        |g| g.beds[0].width = Metres(0.2),
        Rule::Space,
        "Place TooNarrow",
    ),
    (
        "another width",
        |g| g.beds[1].width = Metres(0.9),
        Rule::Amount,
        "Number Plants",
    ),
    (
        "a nearer rotation",
        |g| g.beds[0].grew[0].0 = 2024,
        Rule::Rotation,
        "Rotation",
    ),
    (
        "more is wanted",
        |g| g.ingredients[1].least_share = Share(0.51),
        Rule::Amount,
        "TooLittle",
    ),
    (
        "more guests",
        |g| g.feast.portions = 51,
        Rule::Amount,
        "TooLittle",
    ),
    (
        "the kitchen needs it earlier",
        |g| g.feast.deliver_by = day("2027-05-29"),
        Rule::Readiness,
        "Day Delivery",
    ),
    (
        "seed that does not like the mat",
        |g| g.ingredients[1].crop.germination = Germination::Table([None; 9]),
        Rule::Readiness,
        "NeverUp",
    ),
    (
        "seed that takes a month",
        |g| g.ingredients[1].crop.germination = Germination::Table([Some(30.0); 9]),
        Rule::Readiness,
        "Day Up",
    ),
    (
        "warmer years",
        |g| g.ingredients[0].crop.ripening.days_from_sowing = Some(59.0),
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "a crop that ten mild days spoil",
        |g| g.ingredients[0].crop.spoils = Some(TEN_DAYS_OF_14_C),
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "a crop that sets no fruit in mild nights",
        |g| g.ingredients[1].crop.no_fruit = Some(TEN_NIGHTS_OF_9_C),
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "a crop that ten cool days make flower",
        |g| g.ingredients[0].crop.chill = Some(TEN_DAYS_UNDER_16_C),
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "bulbs that wait for a winter",
        |g| g.ingredients[0].crop.bulbs = Some(A_WINTER),
        Rule::Readiness,
        "Number ReadyYears",
    ),
];
