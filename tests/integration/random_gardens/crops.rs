//! Random crops of different kinds: leaves, roots, fruit, tubers, bulbs and pods.

use tureen::garden::{
    Ages, Bolting, Caution, Crop, DegreeDayMethod, FrostResponse, Germination, Ground, IndoorStart,
    Method, Needs, NoFruit, Picking, Ripening, Rotation, SeedSize, Spacing, Spoils, Sun, Thinning,
    WhilePicked, Yield,
};
use tureen::units::{Celsius, Centimetres, DegreeDays, Hours, Kilograms, Share};

use super::dice::Dice;
use crate::support::crops::kitchen;

/// What a kind of crop has of its own.
struct Kind {
    methods: &'static [&'static [Method]],
    days: (f64, f64),
    frost_limit: f64,
    bears: f64,
    holds: (u32, u32),
    stores: &'static [u32],
    cures: &'static [u32],
    underground: bool,
    climbs: f64,
    seed: SeedSize,
}

use Method::{Bought, Direct, Indoor, Pieces};

const KINDS: [Kind; 6] = [
    Kind {
        methods: &[&[Direct], &[Direct, Indoor], &[Indoor], &[Indoor]],
        days: (24.0, 40.0),
        frost_limit: -2.0,
        bears: 0.6,
        holds: (8, 25),
        stores: &[2, 5, 9],
        cures: &[0],
        underground: false,
        climbs: 0.0,
        seed: SeedSize::Tiny,
    },
    Kind {
        methods: &[&[Direct]],
        days: (30.0, 55.0),
        frost_limit: -3.0,
        bears: 0.0,
        holds: (14, 40),
        stores: &[7, 21, 60],
        cures: &[0],
        underground: true,
        climbs: 0.0,
        seed: SeedSize::Medium,
    },
    Kind {
        methods: &[&[Indoor], &[Indoor], &[Indoor, Bought], &[Bought]],
        days: (28.0, 50.0),
        frost_limit: 0.0,
        bears: 0.8,
        holds: (15, 45),
        stores: &[4, 8],
        cures: &[0],
        underground: false,
        climbs: 0.3,
        seed: SeedSize::Medium,
    },
    Kind {
        methods: &[&[Pieces]],
        days: (35.0, 60.0),
        frost_limit: -1.0,
        bears: 0.0,
        holds: (20, 50),
        stores: &[10, 80],
        cures: &[0, 7],
        underground: true,
        climbs: 0.0,
        seed: SeedSize::Large,
    },
    Kind {
        methods: &[&[Pieces], &[Indoor], &[Direct, Pieces]],
        days: (40.0, 60.0),
        frost_limit: -6.0,
        bears: 0.0,
        holds: (12, 30),
        stores: &[14, 90],
        cures: &[7, 10],
        underground: true,
        climbs: 0.0,
        seed: SeedSize::Medium,
    },
    Kind {
        methods: &[&[Direct], &[Direct, Indoor], &[Indoor]],
        days: (30.0, 50.0),
        frost_limit: 0.0,
        bears: 0.6,
        holds: (8, 30),
        stores: &[3, 10, 60],
        cures: &[0],
        underground: false,
        climbs: 0.5,
        seed: SeedSize::Large,
    },
];

/// A crop of a random kind.
pub fn crop(dice: &mut Dice, name: String) -> Crop {
    let kind = &KINDS[dice.below(KINDS.len())];
    let methods = dice.one(kind.methods).to_vec();
    let bears = dice.chance(kind.bears);
    let low = dice.real(0.02, 0.3);
    Crop {
        ground: ground(&name, &methods, low),
        thinning: (kind.seed != SeedSize::Large).then(|| thinning(low)),
        name,
        like: None,
        how: None,
        botanical: "Fictum hortense".into(),
        rotation: rotation(dice),
        germination: germination(dice),
        germinates: Share(dice.one(&[0.6, 0.8, 0.95])),
        indoor: methods.contains(&Indoor).then(|| indoor(dice)),
        methods,
        ripening: ripening(dice, kind.days),
        frost_limit: Celsius(kind.frost_limit),
        frost: frost(dice),
        bolting: bolting(dice),
        spoils: spoils(low),
        no_fruit: no_fruit(low),
        chill: None,
        bulbs: None,
        picking: picking(dice, kind, bears, low),
        yields: Yield {
            low: Kilograms(low),
            expected: Kilograms(low * dice.one(&[1.0, 1.3, 1.8])),
            usable: Share(dice.one(&[0.7, 0.9, 1.0])),
        },
        spacing: Spacing {
            in_row: Centimetres(dice.one(&[5.0, 10.0, 25.0, 40.0])),
            between_rows: Centimetres(dice.one(&[15.0, 20.0, 30.0, 45.0, 60.0])),
        },
        needs: Needs {
            sun: dice.one(&[Sun::Shade, Sun::Part, Sun::Part, Sun::Part, Sun::Full]),
            soil: Centimetres(dice.one(&[15.0, 25.0])),
            trellis: dice.chance(kind.climbs),
        },
        seed_size: kind.seed,
        seed_keeps_years: None,
        ages: Ages::default(),
        water: None,
        stages: None,
        kitchen: kitchen(),
        caution: Caution::default(),
    }
}

fn frost(dice: &mut Dice) -> FrostResponse {
    match dice.chance(0.3) {
        true => FrostResponse::SetBack {
            days: dice.real(3.0, 12.0),
        },
        false => FrostResponse::Killed,
    }
}

fn bolting(dice: &mut Dice) -> Option<Bolting> {
    dice.chance(0.15).then(|| Bolting {
        day_length: Hours(dice.real(13.0, 15.5)),
        after_days: dice.int(15, 60),
    })
}

/// In a third of all crops, by its harvest and not by a die of its own, so that gardens stay what they were.
fn spoils(low: f64) -> Option<Spoils> {
    (harvest_in_three(low) == 1).then_some(Spoils {
        above: Celsius(22.0 + 40.0 * low),
        days: 14,
    })
}

/// In another third.
fn no_fruit(low: f64) -> Option<NoFruit> {
    (harvest_in_three(low) == 2).then_some(NoFruit {
        nights: Celsius(19.0 + 20.0 * low),
        noons: Celsius(30.0 + 30.0 * low),
        days: 10,
    })
}

fn harvest_in_three(low: f64) -> u32 {
    (low * 1000.0) as u32 % 3
}

fn rotation(dice: &mut Dice) -> Rotation {
    Rotation {
        family: dice.one(&["onion", "cabbage", "nightshade", "bean"]).into(),
        years_hard: dice.int(0, 1),
        years_wished: 3,
    }
}

fn germination(dice: &mut Dice) -> Germination {
    if dice.chance(0.3) {
        let days = dice.real(3.0, 7.0);
        let day = |factor: f64| Some(days * factor);
        let columns = [
            None,
            day(4.0),
            day(2.5),
            day(1.5),
            day(1.1),
            day(1.0),
            day(1.2),
            None,
            None,
        ];
        return Germination::Table(columns);
    }
    Germination::Range {
        min: Celsius(dice.real(2.0, 9.0)),
        optimum: Celsius(dice.real(18.0, 26.0)),
        max: Celsius(33.0),
        days: dice.real(3.0, 9.0),
    }
}

/// Many random crops wait for warmer soil, and seed rots early or late; sets and cloves wait. Thrown with
/// dice of its own, so that all else of a garden stays what it was.
fn ground(name: &str, methods: &[Method], low: f64) -> Ground {
    let own = name.bytes().map(u64::from).sum::<u64>() + (low * 1e6) as u64;
    let dice = &mut Dice::new(own);
    let soil = [None, Some(Celsius(7.0)), Some(Celsius(10.0))];
    Ground {
        sow: dice.one(&soil),
        set_out: dice.one(&soil),
        rots_after: methods
            .contains(&Direct)
            .then(|| dice.one(&[14, 21, 28, 42])),
    }
}

/// Thinned early or late, as if by dice of its own.
fn thinning(low: f64) -> Thinning {
    let dice = &mut Dice::new((low * 1e6) as u64);
    let (after, before) = dice.one(&[(5, 10), (10, 21), (14, 28)]);
    Thinning { after, before }
}

fn picking(dice: &mut Dice, kind: &Kind, bears: bool, low: f64) -> Picking {
    let one_pick_share = Share(if bears { dice.one(&[0.2, 0.5]) } else { 1.0 });
    let holds = dice.int(kind.holds.0, kind.holds.1);
    Picking {
        keeps_bearing: bears,
        one_pick_share,
        holds_in_ground_days: holds,
        while_picked: bears.then(|| while_picked(low, holds)),
        safe_underground: kind.underground,
        cure_days: dice.one(kind.cures),
        storage_days: dice.one(kind.stores),
    }
}

/// Kept picked, it bears up to two months longer, as if by dice of its own.
fn while_picked(low: f64, holds: u32) -> WhilePicked {
    let dice = &mut Dice::new((low * 1e6) as u64);
    WhilePicked {
        every_days: dice.one(&[4, 7, 10]),
        bears_days: holds + dice.int(10, 60),
    }
}

fn indoor(dice: &mut Dice) -> IndoorStart {
    let weeks_lo = dice.int(2, 5);
    let potted = weeks_lo >= 3 && dice.chance(0.6);
    IndoorStart {
        weeks_lo,
        weeks_hi: weeks_lo + dice.int(0, 2),
        cells_per_flat: dice.one(&[6, 12, 24]),
        pots_per_flat: potted.then(|| dice.one(&[4, 8, 12])),
        warm_below: Celsius(dice.one(&[15.0, 22.0])),
    }
}

fn ripening(dice: &mut Dice, (lo, hi): (f64, f64)) -> Ripening {
    let days = dice.real(lo, hi);
    let sine = dice.chance(0.3);
    // No die of its own, so that gardens stay what they were: half of the crops have a plateau.
    let short = (days.fract() < 0.5).then_some(0.8 * days);
    Ripening {
        short_from_sowing: short.map(|short| short + 10.0),
        short_from_planting: short,
        days_from_sowing: Some(days + 10.0),
        days_from_planting: Some(days),
        thermal_from_sowing: dice
            .chance(0.15)
            .then(|| DegreeDays(days * dice.real(9.0, 12.0))),
        reference: Celsius(dice.real(14.0, 18.0)),
        base: Celsius(dice.real(2.0, 7.0)),
        upper: dice.chance(0.4).then_some(Celsius(28.0)),
        method: if sine {
            DegreeDayMethod::Sine
        } else {
            DegreeDayMethod::Average
        },
    }
}
