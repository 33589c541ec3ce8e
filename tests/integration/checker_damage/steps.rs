//! Damages to steps: their days, their hands, their order.

use tureen::plan::{Plan, Rule, StepKind, When};
use tureen::units::Minutes;

use crate::support::day;
use crate::support::plans::{from_to, sessions};

use super::table::{Damage, bean, tomato, visits};

pub const STEPS: &[Damage<Plan>] = &[
    (
        "sown a week late",
        |p| visits(tomato(p, 0))[0].date = day("2027-03-15"),
        Rule::Readiness,
        "Age",
    ),
    (
        "sown two weeks early, before the year",
        |p| visits(bean(p, 0))[0].date = day("2027-02-23"),
        Rule::Sessions,
        "Day Span",
    ),
    (
        "a date in another century",
        |p| visits(bean(p, 0))[0].date = day("1927-03-16"),
        Rule::Sessions,
        "Day Span",
    ),
    (
        "the last date there is",
        |p| bean(p, 4).when = When::Adult(chrono::NaiveDate::MAX),
        Rule::Sessions,
        "Day Span",
    ),
    (
        "sown on a Wednesday",
        |p| visits(bean(p, 0))[0].date = day("2027-03-17"),
        Rule::Sessions,
        "NoSession",
    ),
    (
        "sown in the other week",
        |p| visits(bean(p, 0))[0].date = day("2027-03-23"),
        Rule::Sessions,
        "NoSession",
    ),
    (
        "potted up in the break",
        |p| visits(tomato(p, 1))[0].date = day("2027-04-05"),
        Rule::Sessions,
        "NoSession",
    ),
    (
        "a round of four weeks",
        |p| visits(bean(p, 0))[1].date = day("2027-04-01"),
        Rule::Sessions,
        "Day Round",
    ),
    (
        "a session dropped",
        |p| {
            visits(bean(p, 0)).pop();
        },
        Rule::Participation,
        "Visits",
    ),
    (
        "all sessions dropped",
        |p| visits(bean(p, 0)).clear(),
        Rule::Participation,
        "NoVisit",
    ),
    (
        "a session doubled",
        |p| {
            let v = visits(bean(p, 0));
            v.push(v[0].clone());
        },
        Rule::Participation,
        "Visits",
    ),
    (
        "a class of another grade",
        |p| visits(tomato(p, 0))[0].class = "1a".to_owned(),
        Rule::Participation,
        "Visits",
    ),
    (
        "an unknown class",
        |p| visits(tomato(p, 0))[0].class = "9z".to_owned(),
        Rule::Participation,
        "Unknown Class",
    ),
    (
        "sown by families",
        |p| bean(p, 0).when = When::Families(day("2027-03-16")),
        Rule::Participation,
        "Hands",
    ),
    (
        "picked by an adult",
        |p| bean(p, 3).when = When::Adult(day("2027-05-25")),
        Rule::Participation,
        "Hands",
    ),
    (
        "picked day by day",
        |p| *bean(p, 3) = from_to(StepKind::Pick, "2027-05-25", "2027-05-27"),
        Rule::Participation,
        "Hands",
    ),
    (
        "picked by families in term",
        |p| bean(p, 3).when = When::Families(day("2027-05-27")),
        Rule::Sessions,
        "NobodyThere",
    ),
    (
        "thinned by an adult on a Sunday",
        |p| bean(p, 1).when = When::Adult(day("2027-04-18")),
        Rule::Sessions,
        "NobodyThere",
    ),
    (
        "thinned by an adult in the break",
        |p| bean(p, 1).when = When::Adult(day("2027-04-07")),
        Rule::Sessions,
        "NobodyThere",
    ),
    (
        "minutes for an adult",
        |p| bean(p, 1).when = When::Adult(day("2027-04-14")),
        Rule::Sessions,
        "Number Minutes",
    ),
    (
        "minutes lowered",
        |p| bean(p, 0).minutes = Minutes(1.0),
        Rule::Sessions,
        "Number Minutes",
    ),
    (
        "minutes that are no number",
        |p| bean(p, 0).minutes = Minutes(f64::NAN),
        Rule::Sessions,
        "Number Minutes",
    ),
    (
        "more minutes than the session has",
        |p| bean(p, 0).minutes = Minutes(46.0),
        Rule::Sessions,
        "SessionOverfull",
    ),
    (
        "no sowing",
        |p| {
            p.plantings[0].steps.remove(0);
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "no potting up",
        |p| {
            p.plantings[1].steps.remove(1);
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "no hardening",
        |p| {
            p.plantings[1].steps.remove(2);
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "no planting out",
        |p| {
            p.plantings[1].steps.remove(3);
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "no pick",
        |p| p.plantings[1].steps.truncate(4),
        Rule::Readiness,
        "Steps",
    ),
    (
        "no cure",
        |p| {
            p.plantings[0].steps.pop();
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "a cure that is not needed",
        |p| {
            p.plantings[1]
                .steps
                .push(from_to(StepKind::Cure, "2027-06-08", "2027-06-09"))
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "thinned when it has hardly come up",
        |p| {
            visits(bean(p, 1))[0].date = day("2027-03-23");
            visits(bean(p, 1))[1].date = day("2027-03-25");
        },
        Rule::Readiness,
        "Day Thinning 2027-03-23 2027-03-30 2027-04-19",
    ),
    (
        "thinned when its roots are entangled",
        |p| {
            visits(bean(p, 1))[0].date = day("2027-04-20");
            visits(bean(p, 1))[1].date = day("2027-04-22");
        },
        Rule::Readiness,
        "Day Thinning 2027-04-20 2027-03-30 2027-04-19",
    ),
    (
        "thinned by an adult on the day after sowing",
        |p| bean(p, 1).when = When::Adult(day("2027-03-19")),
        Rule::Readiness,
        "Day Thinning 2027-03-19",
    ),
    (
        "thinned twice",
        |p| {
            let s = bean(p, 1).clone();
            p.plantings[0].steps.insert(1, s);
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "thinned on the shelf",
        |p| {
            p.plantings[1]
                .steps
                .insert(1, sessions(StepKind::Thin, &[("2a", "2027-03-22")]))
        },
        Rule::Readiness,
        "Steps",
    ),
    (
        "a pick doubled",
        |p| {
            let s = bean(p, 3).clone();
            p.plantings[0].steps.insert(3, s);
        },
        Rule::Readiness,
        "Day Order",
    ),
    (
        "picks out of order",
        |p| p.plantings[0].steps.swap(2, 3),
        Rule::Readiness,
        "Day Order",
    ),
    (
        "picked after the feast",
        |p| visits(tomato(p, 5))[0].date = day("2027-06-14"),
        Rule::Sessions,
        "Day Span",
    ),
    (
        "picked only before it is ripe",
        |p| {
            p.plantings[0].steps.remove(3);
            p.plantings[0].steps[3] = from_to(StepKind::Cure, "2027-05-14", "2027-05-16");
        },
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "picked only after it is past",
        |p| {
            p.plantings[1].steps.remove(4);
        },
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "hardened for six days",
        |p| *tomato(p, 2) = from_to(StepKind::Harden, "2027-04-13", "2027-04-18"),
        Rule::Readiness,
        "Day Harden 2027-04-13",
    ),
    (
        "hardened until the day of planting",
        |p| *tomato(p, 2) = from_to(StepKind::Harden, "2027-04-12", "2027-04-19"),
        Rule::Readiness,
        "Day Harden 2027-04-19",
    ),
    (
        "hardened through the break",
        |p| *tomato(p, 2) = from_to(StepKind::Harden, "2027-04-05", "2027-04-18"),
        Rule::Care,
        "HardensUnattended",
    ),
    (
        "hardened backwards",
        |p| *tomato(p, 2) = from_to(StepKind::Harden, "2027-04-18", "2027-04-12"),
        Rule::Readiness,
        "Day Harden",
    ),
    (
        "potted up a week after sowing",
        |p| visits(tomato(p, 1))[0].date = day("2027-03-15"),
        Rule::Readiness,
        "Day AfterSowing",
    ),
    (
        "potted up a week before planting",
        |p| visits(tomato(p, 1))[0].date = day("2027-04-12"),
        Rule::Readiness,
        "Day AfterPottingUp",
    ),
    (
        "cured for two days",
        |p| *bean(p, 4) = from_to(StepKind::Cure, "2027-05-28", "2027-05-29"),
        Rule::Readiness,
        "Day Cure",
    ),
    (
        "cured later",
        |p| *bean(p, 4) = from_to(StepKind::Cure, "2027-06-08", "2027-06-10"),
        Rule::Readiness,
        "Day Delivery",
    ),
];
