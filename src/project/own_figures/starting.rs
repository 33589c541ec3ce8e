//! The keys of a section [crop."..."] for starting it: on the shelf, and the soil for it in the bed.

use crate::diagnostic::{Code, Problem};
use crate::garden::{Crop, Method, Thinning};
use crate::units::Celsius;

use super::super::figures::{count, number};
use super::super::lists::exactly;
use super::super::table::Table;
use super::setting::{set, without_effect};

/// The soil in which it is started.
pub(super) fn ground(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let ground = &mut crop.ground;
    let starts = |ways: &[Method]| crop.methods.iter().any(|method| ways.contains(method));
    let sown = starts(&[Method::Direct, Method::Pieces]);
    let planted = starts(&[Method::Indoor, Method::Bought]);
    set(
        t,
        (
            "sowing_soil_c",
            "the coldest soil in which it is sown",
            &["ground.sow"],
        ),
        number(0.0..=30.0),
        |v| ground.sow = Some(Celsius(v)),
    );
    set(
        t,
        (
            "planting_soil_c",
            "the coldest soil in which it is planted out",
            &["ground.set_out"],
        ),
        number(0.0..=30.0),
        |v| ground.set_out = Some(Celsius(v)),
    );
    set(
        t,
        (
            "rots_after_days",
            "what is not up so many days after sowing has rotted",
            &["ground.rots_after"],
        ),
        count(5..=120),
        |v| ground.rots_after = Some(v),
    );
    ways(t, sown, planted);
}

/// When its rows are thinned, in days after it is up.
pub(super) fn thinning(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let days = t.own(
        "thinning_days",
        "the first and the last day after it is up on which its rows are thinned",
        &["thinning.after", "thinning.before"],
        exactly(number(1.0..=60.0), "the first and the last day"),
    );
    let Some(thinning) = &mut crop.thinning else {
        if let Some(span) = t.key_span("thinning_days") {
            without_effect(t, span, "this crop is never thinned");
        }
        return;
    };
    if let Ok(Some(days)) = days {
        let [after, before] = days.value;
        if after > before {
            let cause = "the first day on which it is thinned comes after the last";
            t.report(Problem::new(Code::OutOfRange, cause).at(days.span, "first day first"));
        }
        *thinning = Thinning {
            after: after.ceil() as u32,
            before: before.floor() as u32,
        };
    }
}

/// Soil and days for a way in which it is not started have no effect.
fn ways(t: &mut Table<'_, '_>, sown: bool, planted: bool) {
    for (key, has_effect, why) in [
        ("sowing_soil_c", sown, "this crop is not sown in the bed"),
        ("rots_after_days", sown, "this crop is not sown in the bed"),
        ("planting_soil_c", planted, "this crop is not planted out"),
    ] {
        if let (false, Some(span)) = (has_effect, t.key_span(key)) {
            without_effect(t, span, why);
        }
    }
}

/// Raising it on the shelf.
pub(super) fn indoor(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let weeks = t.own(
        "indoor_weeks",
        "the fewest and the most weeks on the shelf",
        &["indoor.weeks"],
        exactly(number(1.0..=30.0), "the least and the most weeks"),
    );
    let cells = t.own(
        "cells_per_flat",
        "cells in a flat when it is sown",
        &["indoor.cells"],
        count(1..=1000),
    );
    let pots = t.own(
        "pots_per_flat",
        "pots in a flat after potting up",
        &["indoor.pots"],
        count(1..=200),
    );
    let Some(indoor) = &mut crop.indoor else {
        for key in ["indoor_weeks", "cells_per_flat", "pots_per_flat"] {
            if let Some(span) = t.key_span(key) {
                without_effect(t, span, "this crop is not raised indoors");
            }
        }
        return;
    };
    if let Ok(Some(weeks)) = weeks {
        let [lo, hi] = weeks.value;
        if lo > hi {
            let cause = "the least weeks indoors are more than the most";
            t.report(Problem::new(Code::OutOfRange, cause).at(weeks.span, "least first"));
        }
        indoor.weeks_lo = lo.ceil() as u32;
        indoor.weeks_hi = hi.floor() as u32;
    }
    if let Ok(Some(cells)) = cells {
        indoor.cells_per_flat = cells.value;
    }
    if let Ok(Some(pots)) = pots {
        indoor.pots_per_flat = Some(pots.value);
    }
}
