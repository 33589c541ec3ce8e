//! Every fault that the checker can find has a sentence of its own.

use tureen::calendar::Date;
use tureen::checker::{
    AimFault, DayLimit, Fault, Named, PlaceFault, PlantingRef, Quantity, StepRef, Subject,
    Violation,
};
use tureen::garden::{Gap, Method};
use tureen::plan::{Aim, Rule, StepKind};
use tureen::report;

use super::plain;
use crate::support::day;
use crate::support::gardens::tiny_garden;

fn bean() -> PlantingRef {
    PlantingRef {
        number: 1,
        ingredient: "bean".to_owned(),
    }
}

fn sowing() -> StepRef {
    StepRef {
        planting: bean(),
        number: 1,
        kind: StepKind::Sow,
    }
}

fn may() -> Date {
    day("2027-05-04")
}

fn named() -> Vec<Fault> {
    vec![
        Fault::Unknown {
            kind: Named::Class,
            name: "9z".to_owned(),
        },
        Fault::Number {
            of: Subject::Ingredient("bean".to_owned()),
            what: Quantity::LowKilograms,
            expected: 0.96,
            got: 2.0,
        },
        Fault::PromiseList {
            expected: vec!["bean".to_owned(), "tomato".to_owned()],
            got: Vec::new(),
        },
        Fault::TooLittle {
            ingredient: "bean".to_owned(),
            expected: 0.5,
            got: 0.24,
        },
        Fault::TooFewSeedlings {
            planting: bean(),
            expected: 30,
            got: 36,
        },
        Fault::TooRarely {
            of: Subject::Planting(bean()),
            expected: 3,
            got: 2,
            years: 30,
        },
        Fault::Aim {
            aim: Aim::WholeDish,
            why: AimFault::PlanBeyondBound {
                reached: 3.0,
                bound: 2.0,
            },
        },
    ]
}

fn in_beds() -> Vec<Fault> {
    let place = |why| Fault::Place {
        planting: bean(),
        bed: "B".to_owned(),
        why,
    };
    vec![
        place(PlaceFault::Nowhere),
        place(PlaceFault::NoStrip(5)),
        place(PlaceFault::NoTrellis(2)),
        place(PlaceFault::NotFreeUntil(may())),
        place(PlaceFault::OfOthers),
        place(PlaceFault::OnlyClimbers),
        place(PlaceFault::Unsuitable),
        place(PlaceFault::TooNarrow),
        place(PlaceFault::Differs),
        place(PlaceFault::BrokenBlock(3)),
        place(PlaceFault::NotWhereItGrows),
        Fault::StripTakenTwice {
            bed: "B".to_owned(),
            strip: 2,
            day: may(),
            first: bean(),
            second: PlantingRef {
                number: 2,
                ingredient: "tomato".to_owned(),
            },
        },
        Fault::Rotation {
            planting: bean(),
            bed: "B".to_owned(),
            family: "legume".to_owned(),
            grew_in: 2026,
            years_hard: 3,
        },
        Fault::FamilyAgain {
            planting: bean(),
            bed: "B".to_owned(),
            strip: 2,
            family: "legume".to_owned(),
            before: PlantingRef {
                number: 2,
                ingredient: "pea".to_owned(),
            },
            cleared: may(),
            years_hard: 3,
        },
    ]
}

fn in_time() -> Vec<Fault> {
    let on = |limit, from, to| Fault::Day {
        step: sowing(),
        got: may(),
        limit,
        from,
        to,
    };
    let limits = [
        DayLimit::Order,
        DayLimit::Harden,
        DayLimit::Cure,
        DayLimit::Delivery,
        DayLimit::PatchSeason,
        DayLimit::Up,
        DayLimit::AfterSowing,
        DayLimit::AfterPottingUp,
        DayLimit::Round,
        DayLimit::Thinning,
    ];
    let mut faults = vec![
        on(
            DayLimit::Span,
            Some(day("2027-03-01")),
            Some(day("2027-04-30")),
        ),
        on(DayLimit::Span, Some(day("2027-06-01")), None),
        on(DayLimit::Span, None, Some(day("2027-04-30"))),
    ];
    faults.extend(limits.map(|limit| on(limit, None, None)));
    faults.extend([
        Fault::Method {
            planting: bean(),
            expected: vec![Method::Direct, Method::Pieces],
            got: Method::Indoor,
        },
        Fault::Steps {
            planting: bean(),
            expected: vec![StepKind::Sow, StepKind::Thin, StepKind::Pick],
            got: vec![StepKind::Pick, StepKind::Sow],
        },
    ]);
    faults
}

fn of_people() -> Vec<Fault> {
    let visits = |expected, got| Fault::Visits {
        step: sowing(),
        class: "1a".to_owned(),
        expected,
        got,
    };
    vec![
        Fault::Hands { step: sowing() },
        Fault::NoVisit { step: sowing() },
        Fault::NoSession {
            step: sowing(),
            class: "1a".to_owned(),
            day: may(),
        },
        Fault::NobodyThere {
            step: sowing(),
            day: may(),
        },
        visits(1, 0),
        visits(0, 1),
        visits(1, 2),
        Fault::Team {
            planting: bean(),
            expected: vec![vec!["1".to_owned()], vec!["3".to_owned(), "4".to_owned()]],
            got: vec!["2".to_owned()],
        },
        Fault::SecondTeam {
            planting: bean(),
            expected: vec!["1".to_owned()],
            got: vec!["1".to_owned(), "2".to_owned()],
        },
        Fault::GradesLeftOut {
            expected: 4,
            got: 2,
            idle: vec!["2".to_owned(), "K".to_owned()],
        },
        Fault::SessionOverfull {
            class: "1a".to_owned(),
            day: may(),
            expected: 45.0,
            got: 61.5,
        },
    ]
}

fn of_seedlings() -> Vec<Fault> {
    vec![
        Fault::Age {
            planting: bean(),
            weeks_lo: 4,
            weeks_hi: 7,
            got: 9,
        },
        Fault::NeverUp { planting: bean() },
        Fault::ShelfClosed {
            planting: bean(),
            day: may(),
        },
        Fault::ShelfFull {
            mat: false,
            day: may(),
            expected: 3,
            got: 4,
        },
        Fault::Mat { planting: bean() },
        Fault::HardensUnattended {
            planting: bean(),
            gap: Gap {
                from: day("2027-04-03"),
                to: day("2027-04-11"),
            },
        },
    ]
}

#[test]
fn every_fault_has_a_sentence() {
    // The rule only groups the sentences; one group shows them all in order.
    let violations: Vec<Violation> = [named(), in_beds(), in_time(), of_people(), of_seedlings()]
        .concat()
        .into_iter()
        .map(|fault| Violation {
            rule: Rule::Readiness,
            fault,
        })
        .collect();
    let text = report::broken(&tiny_garden(), &violations).text(plain(100));
    assert!(!text.contains('{'), "a fault without words: {text}");
    super::screens::compare("faults", &text);
}
