//! What a saved plan says of plans made the same way.

use tureen::checker::{CheckedPlan, Standing, check_saved};
use tureen::garden::Garden;
use tureen::model::Options;
use tureen::pipeline::plan;
use tureen::plan::saved::{self, Since};
use tureen::plan::{Plan, UnseenYears};

use super::on_mixed;

fn read(garden: &Garden, text: &str) -> (Plan, Since) {
    saved::read(text).unwrap().for_garden(garden).unwrap()
}

fn checked(garden: &Garden, text: &str) -> CheckedPlan {
    let (plan, since) = read(garden, text);
    check_saved(garden, plan, since).unwrap()
}

#[test]
fn it_is_read_as_it_was_written() {
    let garden = on_mixed(12);
    let made = plan(&garden, &Options::default()).unwrap();
    let text = saved::write(&garden, made.plan());
    let read = checked(&garden, &text);
    assert_eq!(*read.standing(), Standing::Saved);
    assert_eq!(read.plan(), made.plan());
    assert!(read.unseen().is_some());
    assert_eq!(read.unseen(), made.unseen());
    let (dish, years) = (read.unseen().unwrap().dish, read.unseen().unwrap().years);
    for part in [
        format!("\"years\": {years},"),
        format!("\"whole-dish-years\": {dish},"),
    ] {
        assert!(text.contains(&part), "{part} is missing in\n{text}");
    }
}

/// A plan whose file was edited anywhere, in what it says or in its days, or whose project has changed.
#[test]
fn it_is_of_no_other_plan() {
    let garden = on_mixed(12);
    let made = plan(&garden, &Options::default()).unwrap();
    let text = saved::write(&garden, made.plan());
    let dish = made.unseen().unwrap().dish;
    let claim = text.find("\"unseen\"").unwrap();
    let (before, after) = text.split_at(claim);
    let said = format!("\"whole-dish-years\": {dish},");
    let more = format!("\"whole-dish-years\": {},", dish + 1);
    let raised = before.to_owned() + &after.replacen(&said, &more, 1);
    assert_ne!(raised, text);
    let read = checked(&garden, &raised);
    assert_eq!(*read.standing(), Standing::Edited);
    assert_eq!((read.unseen(), &read.plan().unseen), (None, &None));

    let mut other = garden.clone();
    other.grades[0].classes[0].children += 1;
    let read = checked(&other, &text);
    assert!(matches!(read.standing(), Standing::Changed(_)));
    assert_eq!((read.unseen(), &read.plan().unseen), (None, &None));
}

/// Figures that cannot be are not believed under a right checksum either, and of what can be none is refused.
#[test]
fn what_cannot_be_is_not_believed() {
    let garden = on_mixed(12);
    let made = plan(&garden, &Options::default()).unwrap();
    let read = |change: &dyn Fn(&mut UnseenYears)| {
        let mut plan = made.plan().clone();
        change(plan.unseen.as_mut().unwrap());
        let read = checked(&garden, &saved::write(&garden, &plan));
        assert_eq!(*read.standing(), Standing::Saved);
        read.unseen().cloned()
    };
    assert_eq!(read(&|_| {}), made.unseen().cloned());
    assert!(read(&|said| said.whole_dish_years = 0).is_some());
    let damages: [&dyn Fn(&mut UnseenYears); 7] = [
        &|said| said.years = 11,
        &|said| said.years = 0,
        &|said| said.whole_dish_years = 13,
        &|said| said.ingredients[0].ready_years = 13,
        &|said| said.ingredients[1].ingredient = "bean".to_owned(),
        &|said| drop(said.ingredients.pop()),
        // The tiny garden has no rain date.
        &|said| said.rain_date_years = Some(3),
    ];
    for (at, damage) in damages.into_iter().enumerate() {
        assert_eq!(read(damage), None, "damage {at}");
    }
    // The dish is ready no more often than any ingredient.
    let least = made.plan().unseen.as_ref().unwrap().ingredients.iter();
    let least = least.map(|own| own.ready_years).min().unwrap();
    assert_eq!(read(&|said| said.whole_dish_years = least + 1), None);
}
