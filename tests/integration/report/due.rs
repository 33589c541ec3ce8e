//! What the diary takes from the list of what is due: each entry one task of a class, a pick all picks of
//! what is due about then, another class's nothing.

use tureen::calendar::Date;
use tureen::checker::check;
use tureen::facts::Facts;
use tureen::facts::due::Due;
use tureen::facts::tasks::Doer;
use tureen::plan::StepKind;
use tureen::project::diary::{Diary, Entry, Happened};

use crate::checker_damage::methods::split_plan;
use crate::support::day;
use crate::support::gardens::tiny_garden;

/// A long time after everything, when all that was not done is late.
const AFTER: &str = "2027-07-05";

fn done(on: &str, step: StepKind, class: Option<&str>) -> Entry {
    let (ingredient, class) = ("bean".to_owned(), class.map(str::to_owned));
    let what = Happened::Done {
        step,
        ingredient,
        class,
        count: None,
        kg: None,
    };
    Entry {
        on: day(on),
        by: None,
        what,
    }
}

/// What is late of the bean in the end: days of one step, class by class.
fn late(entries: Vec<Entry>, step: StepKind) -> Vec<(String, Date)> {
    let mut garden = tiny_garden();
    garden.ingredients[0].max_sowings = 2;
    let checked = check(&garden, split_plan(&garden, 1)).unwrap();
    let facts = Facts::new(&garden, &checked);
    let entries: Vec<(usize, Entry)> = (1..).zip(entries).collect();
    let diary = Diary {
        sections: entries.len(),
        entries,
    };
    let due = Due::on(&facts, &diary, day(AFTER));
    let of_bean = due
        .late
        .iter()
        .filter(|task| task.ingredient.name == "bean" && task.kind == step);
    let told = of_bean.map(|task| match task.who {
        Doer::Class(class) => (garden.class(class).name.clone(), task.from),
        other => panic!("{other:?}"),
    });
    told.collect()
}

fn days(of: &[(&str, &str)]) -> Vec<(String, Date)> {
    of.iter()
        .map(|(class, on)| ((*class).to_owned(), day(on)))
        .collect()
}

#[test]
fn an_entry_stands_for_the_first_open_sowing_of_its_class() {
    let all = [
        ("1a", "2027-03-16"),
        ("1b", "2027-03-18"),
        ("1a", "2027-03-30"),
        ("1b", "2027-04-01"),
    ];
    let sow = StepKind::Sow;
    assert_eq!(late(Vec::new(), sow), days(&all));
    let one = done("2027-03-16", sow, Some("1a"));
    assert_eq!(late(vec![one.clone()], sow), days(&all[1..]));
    // Late, but before the second: it is the first all the same.
    let slow = done("2027-03-29", sow, Some("1a"));
    assert_eq!(late(vec![slow.clone()], sow), days(&all[1..]));
    assert_eq!(late(vec![slow, one], sow), days(&[all[1], all[3]]));
    // Without a class it is that of both.
    let both = done("2027-03-18", sow, None);
    assert_eq!(late(vec![both.clone()], sow), days(&all[2..]));
    // Written twice it still tells of that lesson, and of none that is to come.
    assert_eq!(late(vec![both.clone(), both], sow), days(&all[2..]));
    // On the day of the first class it does not tell of the lesson of the other, which is still to come.
    assert_eq!(
        late(vec![done("2027-03-16", sow, None)], sow),
        days(&all[1..])
    );
    // Weeks too early it can mean none.
    assert_eq!(
        late(vec![done("2027-02-01", sow, Some("1a"))], sow),
        days(&all)
    );
}

#[test]
fn after_a_pick_the_other_days_of_its_planting_fall_away() {
    let pick = StepKind::Pick;
    let all = late(Vec::new(), pick);
    let of = |class: &str| all.iter().filter(|(name, _)| name == class).count();
    // Two plantings with two days of picking each.
    assert_eq!((of("1a"), of("1b")), (4, 4), "{all:?}");
    let first = all
        .iter()
        .find(|(name, _)| name == "1a")
        .unwrap()
        .1
        .to_string();
    let picked = done(&first, pick, Some("1a"));
    let left = late(vec![picked], pick);
    let left_of = |class: &str| left.iter().filter(|(name, _)| name == class).count();
    assert_eq!((left_of("1a"), left_of("1b")), (0, 4), "{left:?}");
    let far = done("2027-06-30", pick, Some("1a"));
    assert_eq!(late(vec![far], pick), all);
}
