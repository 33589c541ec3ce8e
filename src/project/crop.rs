//! The sections [crop."..."]: the school's own figures in place of the catalogue's, key by key.

use std::collections::BTreeMap;

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::garden::Crop;
use crate::units::{Celsius, Centimetres, Kilograms, Share};

use super::crop_names::find_crop;
use super::kind::{Value, count, exactly, flag, number, sun};
use super::names::{near, quote};
use super::order::low_above;
use super::table::{Table, named_table, table};

/// Crops with the school's own figures, by the catalogue's name, and where they are given.
pub type Overrides = BTreeMap<String, (Crop, Span)>;

/// Reads all sections.
pub fn read(value: &Value<'_>, catalogue: &Catalogue, findings: &mut Findings) -> Read<Overrides> {
    let sections = named_table(value, findings, |name, value, findings| {
        let name = Given {
            value: name.value.to_owned(),
            span: name.span,
        };
        let known = find_crop(&name, catalogue, findings)?;
        let own = table("this crop", |t| {
            let mut own = known.clone();
            apply(t, &mut own);
            own
        });
        Ok((own(value, findings)?, name.span))
    })?;
    let mut overrides = Overrides::new();
    for section in sections {
        let (crop, span) = section?;
        let name = crop.name.clone();
        if let Some((_, first)) = overrides.insert(name.clone(), (crop, span)) {
            let cause = format!("figures for {} are given twice", quote(&name));
            findings.report(
                Problem::new(Code::DuplicateId, cause)
                    .at(span, "the second")
                    .also(first, "the first")
                    .remedy("put all figures of one crop into one section"),
            );
        }
    }
    Ok(overrides)
}

/// Reports overrides of crops that no ingredient uses.
pub fn check_used(overrides: &Overrides, used: &[&str], findings: &mut Findings) {
    for (name, (_, span)) in overrides {
        if !used.contains(&name.as_str()) {
            let cause = format!("no ingredient uses the crop {}", quote(name));
            let remedy = match near(name, used.iter().copied()) {
                Some(other) => format!("did you mean [crop.{}]?", quote(other)),
                None => "remove this section, or use the crop in the dish".to_owned(),
            };
            findings.report(
                Problem::new(Code::OverrideWithoutUse, cause)
                    .at(*span, "")
                    .remedy(remedy),
            );
        }
    }
}

/// Puts a figure in its place if the file gives it.
fn set<T>(
    t: &mut Table<'_, '_>,
    key: &'static str,
    kind: impl FnOnce(&Value<'_>, &mut Findings) -> Read<T>,
    put: impl FnOnce(T),
) {
    if let Ok(Some(given)) = t.maybe(key, kind) {
        put(given.value);
    }
}

/// Puts all given figures into a crop.
fn apply(t: &mut Table<'_, '_>, crop: &mut Crop) {
    ripening(t, crop);
    picking(t, crop);
    yields(t, crop);
    indoor(t, crop);
    set(t, "germinates", number(0.01..=1.0), |v| {
        crop.germinates = Share(v)
    });
    set(t, "frost_limit_c", number(-30.0..=10.0), |v| {
        crop.frost_limit = Celsius(v)
    });
    let (spacing, needs) = (&mut crop.spacing, &mut crop.needs);
    set(t, "in_row_cm", number(0.5..=300.0), |v| {
        spacing.in_row = Centimetres(v)
    });
    set(t, "between_row_cm", number(0.5..=300.0), |v| {
        spacing.between_rows = Centimetres(v)
    });
    set(t, "soil_cm", number(1.0..=200.0), |v| {
        needs.soil = Centimetres(v)
    });
    set(t, "sun", sun, |v| needs.sun = v);
    set(t, "trellis", flag, |v| needs.trellis = v);
    let kitchen = &mut crop.kitchen;
    set(t, "crate_kg", number(0.1..=100.0), |v| {
        kitchen.crate_holds = Kilograms(v)
    });
    let ages = &mut crop.ages;
    set(t, "sowing_age", count(0..=25), |v| ages.sowing = Some(v));
    set(t, "harvest_age", count(0..=25), |v| ages.harvest = Some(v));
    let rotation = &mut crop.rotation;
    set(t, "rotation_years", count(0..=20), |v| {
        rotation.years_hard = v;
        rotation.years_wished = rotation.years_wished.max(v);
    });
}

/// Packet days take the place of both packet days and published thermal time.
fn ripening(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let ripening = &mut crop.ripening;
    set(t, "days_to_maturity", number(10.0..=400.0), |days| {
        ripening.thermal_from_sowing = None;
        for packet in [
            &mut ripening.days_from_sowing,
            &mut ripening.days_from_planting,
        ] {
            if packet.is_some() {
                *packet = Some(days);
            }
        }
    });
    set(t, "reference_c", number(1.0..=40.0), |v| {
        ripening.reference = Celsius(v)
    });
    set(t, "base_c", number(-5.0..=20.0), |v| {
        ripening.base = Celsius(v)
    });
    set(t, "upper_c", number(10.0..=50.0), |v| {
        ripening.upper = Some(Celsius(v))
    });
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

fn picking(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let picking = &mut crop.picking;
    set(t, "holds_in_ground_days", count(0..=400), |v| {
        picking.holds_in_ground_days = v
    });
    set(t, "storage_days", count(0..=1000), |v| {
        picking.storage_days = v
    });
    set(t, "cure_days", count(0..=100), |v| picking.cure_days = v);
    set(t, "one_pick_share", number(0.01..=1.0), |v| {
        picking.one_pick_share = Share(v)
    });
    if let (false, Some(span)) = (picking.keeps_bearing, t.key_span("one_pick_share")) {
        without_effect(t, span, "this crop is picked only once");
    }
}

fn yields(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let yields = &mut crop.yields;
    let low = t.maybe("yield_low_kg", number(0.0..=100.0));
    let expected = t.maybe("yield_expected_kg", number(0.0001..=100.0));
    set(t, "usable", number(0.05..=1.0), |v| {
        yields.usable = Share(v)
    });
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

fn indoor(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let weeks = t.maybe(
        "indoor_weeks",
        exactly::<2>(number(1.0..=30.0), "the least and the most weeks"),
    );
    let cells = t.maybe("cells_per_flat", count(1..=1000));
    let pots = t.maybe("pots_per_flat", count(1..=200));
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

fn without_effect(t: &mut Table<'_, '_>, span: Span, why: &str) {
    let problem = Problem::new(Code::KeyWithoutEffect, format!("this has no effect: {why}"));
    t.report(problem.at(span, "").remedy("remove it"));
}
