//! Made-up crops with round numbers. Above 5 C they gain one degree-day for each degree of
//! the day's mean, and at 15 C their packet days hold.

use tureen::garden::{
    Ages, Arrives, Caution, Crop, DegreeDayMethod, FrostResponse, Germination, Ground, IndoorStart,
    Kitchen, Method, Needs, Picking, Preparation, Ripening, Rotation, SeedSize, Spacing, Store,
    Sun, Thinning, Yield,
};
use tureen::units::{Celsius, Centimetres, Kilograms, Share};

/// Up in five days at 15 C.
const UP_IN_FIVE_DAYS: Germination = Germination::Range {
    min: Celsius(5.0),
    optimum: Celsius(15.0),
    max: Celsius(35.0),
    days: 5.0,
};

/// Thinned from 8 to 28 days after it is up.
const A_WEEK_AFTER: Thinning = Thinning {
    after: 8,
    before: 28,
};

/// 10 cm in the row, 30 cm between rows.
const ROWS: Spacing = Spacing {
    in_row: Centimetres(10.0),
    between_rows: Centimetres(30.0),
};

/// It is started in any soil that can be worked, and rots after six weeks.
pub const ANY_GROUND: Ground = Ground {
    sow: None,
    set_out: None,
    rots_after: Some(42),
};

/// Packet days hold at 15 C; no plateau.
const RIPENING: Ripening = Ripening {
    days_from_sowing: None,
    days_from_planting: None,
    short_from_sowing: None,
    short_from_planting: None,
    thermal_from_sowing: None,
    reference: Celsius(15.0),
    base: Celsius(5.0),
    upper: None,
    method: DegreeDayMethod::Average,
};

/// A crop sown in the bed: up after 5 days at 15 C and warmer, ripe `days` days after sowing
/// at 15 C, 12 plants on a strip of a bed 1.2 m wide, 20 g a plant in a poor year and 30 g in
/// an ordinary one. Killed below -1 C, thinned from 8 to 28 days after it is up.
pub fn sown_crop(name: &str, days: f64) -> Crop {
    Crop {
        name: name.to_owned(),
        like: None,
        how: None,
        botanical: String::new(),
        rotation: Rotation {
            family: name.to_owned(),
            years_hard: 1,
            years_wished: 1,
        },
        methods: vec![Method::Direct],
        germination: UP_IN_FIVE_DAYS,
        germinates: Share(0.9),
        ground: ANY_GROUND,
        thinning: Some(A_WEEK_AFTER),
        indoor: None,
        ripening: Ripening {
            days_from_sowing: Some(days),
            ..RIPENING
        },
        frost_limit: Celsius(-1.0),
        frost: FrostResponse::Killed,
        bolting: None,
        spoils: None,
        no_fruit: None,
        chill: None,
        bulbs: None,
        picking: Picking {
            keeps_bearing: false,
            one_pick_share: Share(1.0),
            holds_in_ground_days: 20,
            while_picked: None,
            safe_underground: false,
            cure_days: 0,
            storage_days: 30,
        },
        yields: Yield {
            low: Kilograms(0.02),
            expected: Kilograms(0.03),
            usable: Share(1.0),
        },
        spacing: ROWS,
        needs: Needs {
            sun: Sun::Part,
            soil: Centimetres(20.0),
            trellis: false,
        },
        seed_size: SeedSize::Medium,
        seed_keeps_years: None,
        ages: Ages::default(),
        water: None,
        stages: None,
        kitchen: kitchen(),
        caution: Caution::default(),
    }
}

/// Trimmed, kept in the cold, 10 kg a crate.
pub fn kitchen() -> Kitchen {
    Kitchen {
        arrives: Arrives::Unwashed,
        steps: vec![Preparation::Trim],
        store: Store::ColdMoist,
        temperature: (Celsius(0.0), Celsius(4.0)),
        crate_holds: Kilograms(10.0),
        freezing: None,
        dried_days: None,
    }
}

/// A crop raised on the shelf for six weeks, with potting up, ripe `days` days after planting
/// out at 15 C. Two plants on two strips of a bed 1.2 m wide, each 0.5 kg a pick in an
/// ordinary year and 0.25 kg in a poor one.
pub fn raised_crop(name: &str, days: f64) -> Crop {
    Crop {
        methods: vec![Method::Indoor],
        indoor: Some(IndoorStart {
            weeks_lo: 6,
            weeks_hi: 6,
            cells_per_flat: 4,
            pots_per_flat: Some(4),
            warm_below: Celsius(20.0),
        }),
        ripening: Ripening {
            days_from_sowing: None,
            days_from_planting: Some(days),
            ..sown_crop(name, 0.0).ripening
        },
        picking: Picking {
            keeps_bearing: true,
            one_pick_share: Share(0.5),
            holds_in_ground_days: 15,
            while_picked: None,
            safe_underground: false,
            cure_days: 0,
            storage_days: 14,
        },
        yields: Yield {
            low: Kilograms(0.5),
            expected: Kilograms(1.0),
            usable: Share(1.0),
        },
        spacing: Spacing {
            in_row: Centimetres(60.0),
            between_rows: Centimetres(60.0),
        },
        ..sown_crop(name, 0.0)
    }
}
