//! The kitchen's note and the shopping list: whole for soup-day, and figures worked by hand.

use std::sync::LazyLock;

use tureen::checker::{CheckedPlan, check};
use tureen::facts::Facts;
use tureen::facts::decisions::Topic;
use tureen::garden::{Garden, Locale};
use tureen::model::Options;
use tureen::pipeline::plan;
use tureen::report::decision;
use tureen::report::handouts::{Reader, all};
use tureen::units::Kilograms;
use tureen::words::view::View;

use super::plain;
use super::screens::compare;
use crate::scenarios;
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

/// The text of one reader's page.
fn page(garden: &Garden, checked: &CheckedPlan, reader: Reader) -> String {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let pages = all(&view, &[], None);
    let page = pages.into_iter().find(|page| page.reader == reader);
    page.unwrap().page.text(plain(100))
}

fn soup() -> &'static (Garden, CheckedPlan) {
    static SOUP: LazyLock<(Garden, CheckedPlan)> = LazyLock::new(|| {
        let garden = scenarios::load("soup-day", "garden.toml");
        let checked = plan(&garden, &Options::default()).unwrap();
        (garden, checked)
    });
    &SOUP
}

/// The tiny garden, changed, with its plan.
fn tiny_with(change: impl Fn(&mut Garden)) -> (Garden, CheckedPlan) {
    let mut garden = tiny_garden();
    change(&mut garden);
    let checked = check(&garden, tiny_plan(&garden)).unwrap();
    (garden, checked)
}

#[test]
fn the_kitchens_note_of_soup_day() {
    let (garden, checked) = soup();
    let text = page(garden, checked, Reader::Kitchen);
    compare("kitchen-note", &text);
    for ingredient in &garden.ingredients {
        let named = text.matches(ingredient.name.as_str()).count();
        assert!(named >= 5, "{}: {named} times", ingredient.name);
        if let Some(allergen) = &ingredient.crop.caution.allergen {
            assert!(text.contains(allergen.as_str()), "{allergen}");
        }
    }
}

#[test]
fn the_shopping_list_of_soup_day() {
    let (garden, checked) = soup();
    let text = page(garden, checked, Reader::Buyers);
    compare("shopping-list", &text);
    // It asks for the same, by the same days, as what is to decide.
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let orders = facts.decisions.iter().filter_map(|d| match &d.topic {
        Topic::Order(order) => Some((order, decision(&view, &d.topic))),
        _ => None,
    });
    let orders: Vec<_> = orders.collect();
    assert!(orders.len() >= 4, "{orders:?}");
    for (order, what) in orders {
        let name = order.ingredient.name.as_str();
        let amount = what.trim_start_matches("Order ").trim_end_matches('.');
        let day = order.by.format("%a %-d %b").to_string();
        let row = text.lines().find(|line| line.contains(amount));
        let row = row.unwrap_or_else(|| panic!("no {amount} in\n{text}"));
        assert!(row.contains(&day) && row.contains(name), "{row}");
    }
}

/// 48 bean plants give 20 g in a poor and 30 g in an ordinary year, where 50 portions of 20 g are
/// wanted. 1.44 kg are 3.6 crates of 400 g.
#[test]
fn crates_hold_what_comes_and_the_kitchen_orders_what_is_missing() {
    let (garden, checked) = tiny_with(|garden| {
        garden.ingredients[0].crop.kitchen.crate_holds = Kilograms(0.4);
    });
    let text = page(&garden, &checked, Reader::Kitchen);
    let row = text
        .lines()
        .find(|line| line.trim_start().starts_with("bean "));
    let row: Vec<&str> = row.unwrap().split("  ").filter(|c| !c.is_empty()).collect();
    let cells: Vec<&str> = row.iter().map(|cell| cell.trim()).collect();
    assert_eq!(
        cells,
        [
            "bean",
            "960 g (2.1 lb)",
            "1.4 kg (3.2 lb)",
            "1.0 kg (2.2 lb)",
            "40 g (1.4 oz)"
        ]
    );
    assert!(text.contains("Bean 4 of 1.4 kg (3.2 lb)"), "{text}");
}

#[test]
fn both_locales_give_both_units_the_own_one_first() {
    let (british, checked) = soup();
    let american = Garden {
        locale: Locale::American,
        ..british.clone()
    };
    let texts = [british, &american].map(|garden| page(garden, checked, Reader::Kitchen));
    assert!(texts[0].contains(" kg (") && !texts[0].contains(" lb ("));
    assert!(texts[1].contains(" lb (") && !texts[1].contains(" kg ("));
    for name in ["carrot", "leek"] {
        let row = |text: &String| {
            let line = text.lines().find(|l| l.trim_start().starts_with(name));
            line.map(str::to_owned).unwrap()
        };
        let (ours, theirs) = (row(&texts[0]), row(&texts[1]));
        assert!(ours.contains("kg") && ours.contains("lb"), "{ours}");
        assert!(theirs.contains("kg") && theirs.contains("lb"), "{theirs}");
    }
}

#[test]
fn there_is_a_label_for_each_planting_and_class() {
    let (garden, checked) = tiny_with(|_| {});
    let text = page(&garden, &checked, Reader::Buyers);
    // The bean by 1a and 1b, the tomato by 2a.
    assert!(
        text.contains("Labels: 3, one for each planting and class"),
        "{text}"
    );
}
