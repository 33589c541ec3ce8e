//! Who keeps the tiny garden's tomato picked, week by week, worked by hand: ripe on 29 May in the median year (see
//! `checker_damage::bearing`), picked for the dish on Monday 7 June by 2a, which meets on Mondays.

use tureen::checker::{CheckedPlan, check};
use tureen::explain;
use tureen::facts::Facts;
use tureen::facts::class_sheet::{Entry, Quiet};
use tureen::facts::kept_picked::{Picker, Turn};
use tureen::garden::{Break, Care, Garden, GradeAt};
use tureen::plan::StepKind;
use tureen::project::diary::Diary;
use tureen::report;
use tureen::report::handouts::{Reader, all};
use tureen::words::kept_picked::kept_picked;
use tureen::words::view::View;

use crate::checker_damage::bearing::{garden, plan};
use crate::report::plain;
use crate::support::day;

/// With the pick of 7 June alone; that of 31 May falls away.
fn picked_once(garden: &Garden) -> CheckedPlan {
    let mut plan = plan(garden);
    let steps = &mut plan.plantings[0].steps;
    let first = steps.iter().position(|step| step.kind == StepKind::Pick);
    steps.remove(first.unwrap());
    plan.promise = tureen::checker::promise(garden, &plan);
    check(garden, plan).unwrap()
}

/// The bearing garden with a break in which somebody cares, or nobody.
fn with_break(care: Care, from: &str, to: &str) -> Garden {
    let mut garden = garden();
    garden.school_year.breaks.push(Break {
        name: "Late break".to_owned(),
        from: day(from),
        to: day(to),
        care,
    });
    garden
}

fn turn(who: Picker, from: &str, to: &str) -> Turn {
    Turn {
        who,
        from: day(from),
        to: day(to),
    }
}

fn turns(garden: &Garden) -> Vec<Turn> {
    let checked = picked_once(garden);
    let facts = Facts::new(garden, &checked);
    let [kept] = facts.kept_picked() else {
        panic!("one planting")
    };
    assert_eq!((kept.from, kept.to), (day("2027-05-29"), day("2027-06-07")));
    assert_eq!(kept.every_days, 7);
    kept.turns.clone()
}

#[test]
fn children_pick_in_their_lessons_and_others_only_where_there_is_none() {
    // 29 and 30 May are a weekend without anyone; then the class meets on both Mondays.
    let school = turns(&garden());
    let second = Picker::Team(GradeAt(1).into());
    assert_eq!(school, [turn(second, "2027-05-31", "2027-06-07")]);
    // Families pick at weekends too, staff from Monday to Friday.
    let families = turns(&with_break(Care::Families, "2027-05-24", "2027-06-04"));
    assert_eq!(
        families,
        [
            turn(Picker::Families, "2027-05-29", "2027-06-06"),
            turn(second, "2027-06-07", "2027-06-07"),
        ]
    );
    let staff = turns(&with_break(Care::Staff, "2027-05-24", "2027-06-04"));
    assert_eq!(
        staff,
        [
            turn(Picker::Staff, "2027-05-31", "2027-06-06"),
            turn(second, "2027-06-07", "2027-06-07"),
        ]
    );
    // Nobody picks where nobody is there.
    let nobody = turns(&with_break(Care::Nobody, "2027-05-24", "2027-06-04"));
    assert_eq!(nobody, [turn(second, "2027-06-07", "2027-06-07")]);
    // A Monday off: the class does not meet, but school is in.
    let mut off = garden();
    off.school_year.days_off.push(day("2027-05-31"));
    assert_eq!(
        turns(&off),
        [
            turn(Picker::Adult, "2027-05-31", "2027-06-06"),
            turn(second, "2027-06-07", "2027-06-07"),
        ]
    );
}

#[test]
fn it_is_said_who_picks_from_when_to_when_and_what_hangs_on_it() {
    let garden = with_break(Care::Families, "2027-05-24", "2027-05-30");
    let checked = picked_once(&garden);
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    // Unpicked it bears for five days: from 18 and 29 May not until 7 June, from 6 June it does.
    let said = kept_picked(&view, &facts.kept_picked()[0]).replace('\u{a0}', " ");
    assert_eq!(
        said,
        "Tomato, from about 29 May to 7 Jun: pick all that is ripe at least once in 7 days, for the kitchen or to \
         share, so that it goes on bearing: families who water, 29-30 May and Grade 2 in its lessons, 31 May - 7 Jun. \
         Without that it would have stopped too soon in 2 of 4 years."
    );
}

#[test]
fn an_idle_lesson_asks_for_what_the_plants_want_on_that_day() {
    let garden = garden();
    let checked = picked_once(&garden);
    let slack = explain::slack(&garden, &checked);
    let facts = Facts::new(&garden, &checked);
    let sheets = facts.class_sheets(&facts.ours(GradeAt(1)), &slack);
    let quiet = sheets[0].entries.iter().filter_map(|entry| match entry {
        Entry::Quiet(day, what) => Some((*day, *what)),
        Entry::Job(_) | Entry::MovesUp(_) => None,
    });
    // On the shelf until 19 April, ripe soon from two weeks before 7 June, kept picked from 29 May; 5 April is a break.
    let expected = [
        ("2027-03-15", Quiet::CountSeedlings),
        ("2027-03-22", Quiet::TurnFlats),
        ("2027-04-12", Quiet::CountSeedlings),
        ("2027-04-26", Quiet::Mulch),
        ("2027-05-03", Quiet::Weed),
        ("2027-05-10", Quiet::Measure),
        ("2027-05-17", Quiet::Leaves),
        ("2027-05-24", Quiet::Ripeness),
        ("2027-05-31", Quiet::KeepPicked),
    ]
    .map(|(on, what)| (day(on), what));
    assert_eq!(quiet.collect::<Vec<_>>(), expected);
}

#[test]
fn a_week_with_nothing_but_that_is_not_called_empty() {
    let garden = with_break(Care::Families, "2027-05-24", "2027-05-30");
    let checked = picked_once(&garden);
    let diary = Diary {
        sections: 0,
        entries: Vec::new(),
    };
    let page = |on: &str| report::today(&garden, &checked, &[], (&diary, day(on)), &[]);
    let text = |on: &str| page(on).text(plain(160));
    let week = text("2027-05-26");
    assert!(week.contains("Tomato, from about 29 May"), "{week}");
    assert!(!week.contains("Nothing is planned."), "{week}");
    let idle = text("2027-05-12");
    assert!(idle.contains("Nothing is planned."), "{idle}");
    assert!(!idle.contains("pick all that is ripe"), "{idle}");
}

#[test]
fn the_printed_sheet_tells_who_picks_as_the_screen_does() {
    let garden = garden();
    let checked = picked_once(&garden);
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let said = kept_picked(&view, &facts.kept_picked()[0]).replace('\u{a0}', " ");
    let pages = all(&view, &[], None);
    let sheet = pages
        .iter()
        .find(|p| p.reader == Reader::Grade(GradeAt(1)))
        .unwrap();
    let screen = report::grade(&garden, &checked, GradeAt(1));
    for page in [&sheet.page, &screen] {
        let text = page.text(plain(400));
        assert!(text.contains(&said), "{text}");
    }
}
