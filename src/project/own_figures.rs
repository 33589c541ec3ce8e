//! The keys of a section [crop."..."]: each takes the place of a figure of the catalogue.

mod picking;
mod setting;
mod starting;

use crate::diagnostic::{Code, Given, Problem};
use crate::garden::{Crop, LongDay, Ripening};
use crate::units::{Celsius, Centimetres, Hours, Kilograms, Share};

use self::setting::{set, without_effect};
use super::figures::{count, number};
use super::kind::{flag, sun};
use super::order::low_above;
use super::table::Table;

/// Puts all given figures into a crop.
pub fn apply(t: &mut Table<'_, '_>, crop: &mut Crop) {
    ripening(t, crop);
    picking::apply(t, crop);
    yields(t, crop);
    starting::indoor(t, crop);
    starting::ground(t, crop);
    starting::thinning(t, crop);
    place(t, crop);
    people(t, crop);
    bulbs(t, crop);
    set(
        t,
        (
            "germinates",
            "the part of the seeds that comes up",
            &["germinates"],
        ),
        number(0.01..=1.0),
        |v| crop.germinates = Share(v),
    );
    set(
        t,
        (
            "frost_limit_c",
            "the coldest air that it bears when hardened",
            &["frost.limit"],
        ),
        number(-30.0..=10.0),
        |v| crop.frost_limit = Celsius(v),
    );
}

/// What it takes of a bed, and for how long its family stays away.
fn place(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let (spacing, needs) = (&mut crop.spacing, &mut crop.needs);
    set(
        t,
        (
            "in_row_cm",
            "from plant to plant in the row",
            &["spacing.in_row"],
        ),
        number(0.5..=300.0),
        |v| spacing.in_row = Centimetres(v),
    );
    set(
        t,
        (
            "between_row_cm",
            "from row to row",
            &["spacing.between_rows"],
        ),
        number(0.5..=300.0),
        |v| spacing.between_rows = Centimetres(v),
    );
    set(
        t,
        ("soil_cm", "depth of soil that it needs", &["needs.soil"]),
        number(1.0..=200.0),
        |v| needs.soil = Centimetres(v),
    );
    set(
        t,
        ("sun", "the least sun that it needs", &["needs.sun"]),
        sun(),
        |v| needs.sun = v,
    );
    set(
        t,
        ("trellis", "true if it needs a trellis", &["needs.trellis"]),
        flag(),
        |v| needs.trellis = v,
    );
    let rotation = &mut crop.rotation;
    set(
        t,
        (
            "rotation_years",
            "years for which its family is kept away from the strip",
            &["rotation.years_hard"],
        ),
        count(0..=20),
        |v| {
            rotation.years_hard = v;
            rotation.years_wished = rotation.years_wished.max(v);
        },
    );
}

/// The day length from which its kind makes bulbs.
fn bulbs(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let hours = t.own(
        "bulbs_from_hours",
        "hours of light from which its kind makes bulbs: short-day onions 10 to 12, long-day ones 14 and more",
        &["bulbs.day_length"],
        number(9.0..=20.0),
    );
    let Some(bulbs) = &mut crop.bulbs else {
        if let Some(span) = t.key_span("bulbs_from_hours") {
            without_effect(
                t,
                span,
                "this crop makes its bulbs at any day length, or none",
            );
        }
        return;
    };
    if let Ok(Some(hours)) = hours {
        bulbs.day_length = LongDay::Hours(Hours(hours.value));
    }
}

/// Who may work on it, and what fills a crate.
fn people(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let kitchen = &mut crop.kitchen;
    set(
        t,
        ("crate_kg", "what fills a harvest crate", &["kitchen.crate"]),
        number(0.1..=100.0),
        |v| kitchen.crate_holds = Kilograms(v),
    );
    let ages = &mut crop.ages;
    set(
        t,
        (
            "sowing_age",
            "from which age on children sow it; 0 for all",
            &["ages.sowing"],
        ),
        count(0..=25),
        |v| ages.sowing = Some(v),
    );
    set(
        t,
        (
            "harvest_age",
            "from which age on children cut it; 0 for all",
            &["ages.harvest"],
        ),
        count(0..=25),
        |v| ages.harvest = Some(v),
    );
}

/// Packet days take the place of both packet days and published thermal time.
fn ripening(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let ripening = &mut crop.ripening;
    set(
        t,
        (
            "days_to_maturity",
            "packet days, from sowing or from planting out",
            &[
                "ripening.days_from_sowing",
                "ripening.days_from_planting",
                "ripening.thermal_from_sowing",
            ],
        ),
        number(10.0..=400.0),
        |days| {
            ripening.thermal_from_sowing = None;
            for (packet, short) in [
                (
                    &mut ripening.days_from_sowing,
                    &mut ripening.short_from_sowing,
                ),
                (
                    &mut ripening.days_from_planting,
                    &mut ripening.short_from_planting,
                ),
            ] {
                // A quicker kind is also quicker at its quickest.
                if let Some(packet) = packet {
                    *short = short.map(|short| short * days / *packet);
                    *packet = days;
                }
            }
        },
    );
    set(
        t,
        (
            "reference_c",
            "the mean temperature at which packet days hold",
            &["ripening.reference"],
        ),
        number(1.0..=40.0),
        |v| ripening.reference = Celsius(v),
    );
    set(
        t,
        ("base_c", "no growth below it", &["ripening.base"]),
        number(-5.0..=20.0),
        |v| ripening.base = Celsius(v),
    );
    set(
        t,
        ("upper_c", "no faster growth above it", &["ripening.upper"]),
        number(10.0..=50.0),
        |v| ripening.upper = Some(Celsius(v)),
    );
    limits_in_order(t, ripening);
}

/// No growth, then the reference, then no faster growth.
fn limits_in_order(t: &mut Table<'_, '_>, ripening: &Ripening) {
    let base = ripening.base;
    let above = [
        ("reference_c", Some(ripening.reference)),
        ("upper_c", ripening.upper),
    ];
    for (key, figure) in above {
        let given = t.key_span(key).or_else(|| t.key_span("base_c"));
        if let (Some(figure), Some(span)) = (figure, given)
            && figure <= base
        {
            let cause = format!("`{key}` must be above `base_c`");
            let label = format!("{key} = {}, base_c = {}", figure.0, base.0);
            t.report(Problem::new(Code::OutOfRange, cause).at(span, label));
        }
    }
}

fn yields(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let yields = &mut crop.yields;
    let low = t.own(
        "yield_low_kg",
        "harvest of a poor year, by the crop's own measure",
        &["yields.low"],
        number(0.0..=100.0),
    );
    let expected = t.own(
        "yield_expected_kg",
        "harvest of an ordinary year, by the same measure",
        &["yields.expected"],
        number(0.0001..=100.0),
    );
    set(
        t,
        (
            "usable",
            "the part that is left after trimming",
            &["yields.usable"],
        ),
        number(0.05..=1.0),
        |v| yields.usable = Share(v),
    );
    let (Ok(low), Ok(expected)) = (low, expected) else {
        return;
    };
    let Some(span) = low.or(expected).map(|given| given.span) else {
        return;
    };
    let low = low.unwrap_or(Given {
        value: yields.low.0,
        span,
    });
    let expected = expected.unwrap_or(Given {
        value: yields.expected.0,
        span,
    });
    yields.low = Kilograms(low.value);
    yields.expected = Kilograms(expected.value);
    if let Some(problem) = low_above(("yield_low_kg", low), ("yield_expected_kg", expected)) {
        t.report(problem);
    }
}
