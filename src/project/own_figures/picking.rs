//! Figures of picking in a section [crop."..."]: how long it holds or bears, keeps and cures, what one pick gives.

use crate::diagnostic::{Code, Problem};
use crate::garden::{Crop, Picking, WhilePicked};
use crate::units::Share;

use super::super::figures::{count, number};
use super::super::table::Table;
use super::setting::{set, without_effect};

/// Puts given figures of picking into a crop.
pub(super) fn apply(t: &mut Table<'_, '_>, crop: &mut Crop) {
    let picking = &mut crop.picking;
    set(
        t,
        (
            "holds_in_ground_days",
            "so long it stays good where it stands, once ripe",
            &["picking.holds_in_ground_days"],
        ),
        count(0..=400),
        |v| picking.holds_in_ground_days = v,
    );
    set(
        t,
        (
            "storage_days",
            "so long it keeps in store",
            &["picking.storage_days"],
        ),
        count(0..=1000),
        |v| picking.storage_days = v,
    );
    set(
        t,
        (
            "cure_days",
            "days of drying before it is stored",
            &["picking.cure_days"],
        ),
        count(0..=100),
        |v| picking.cure_days = v,
    );
    set(
        t,
        (
            "one_pick_share",
            "of what it bears in all, the part of one pick",
            &["picking.one_pick_share"],
        ),
        number(0.01..=1.0),
        |v| picking.one_pick_share = Share(v),
    );
    if let (false, Some(span)) = (picking.keeps_bearing, t.key_span("one_pick_share")) {
        without_effect(t, span, "this crop is picked only once");
    }
    while_picked(t, picking);
}

/// How long it bears where it is kept picked; only for what such picking lengthens.
fn while_picked(t: &mut Table<'_, '_>, picking: &mut Picking) {
    let lengthened = picking.while_picked.is_some();
    let mut bears = picking.while_picked.unwrap_or(WhilePicked {
        every_days: 0,
        bears_days: 0,
    });
    set(
        t,
        (
            "bears_days",
            "so long it bears from first ripe, where somebody keeps it picked",
            &["picking.while_picked.bears_days"],
        ),
        count(0..=400),
        |v| bears.bears_days = v,
    );
    set(
        t,
        (
            "picked_every_days",
            "kept picked means: a pick in at least so many days",
            &["picking.while_picked.every_days"],
        ),
        count(1..=14),
        |v| bears.every_days = v,
    );
    let own = t.key_span("bears_days");
    if let (false, Some(span)) = (lengthened, own.or_else(|| t.key_span("picked_every_days"))) {
        without_effect(t, span, "picking does not make this crop bear longer");
        return;
    }
    let holds = picking.holds_in_ground_days;
    let given = own.or_else(|| t.key_span("holds_in_ground_days"));
    if let (true, true, Some(span)) = (lengthened, bears.bears_days < holds, given) {
        let cause = "`bears_days` must not be less than `holds_in_ground_days`, which holds where nobody picks";
        let label = format!(
            "bears_days = {}, holds_in_ground_days = {holds}",
            bears.bears_days
        );
        let problem = Problem::new(Code::OutOfRange, cause).at(span, label);
        t.report(problem.remedy("give both, and both alike for a kind that stops by itself"));
    }
    picking.while_picked = lengthened.then_some(bears);
}
