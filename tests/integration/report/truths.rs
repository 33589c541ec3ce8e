//! What holds of every text that is printed or written of a plan: for all scenarios and for random
//! gardens.

use std::time::SystemTime;

use chrono::{Datelike, Weekday};
use tureen::calendar::Date;
use tureen::checker::{CheckedPlan, check};
use tureen::explain::{StepSlack, slack};
use tureen::facts::Facts;
use tureen::facts::order::natural;
use tureen::garden::Garden;
use tureen::handouts::calendar::Stamp;
use tureen::handouts::files;
use tureen::report;
use tureen::report::handouts::all;
use tureen::report::tables::{Cell, tables};
use tureen::words::tasks::spot;
use tureen::words::view::View;

use super::figures::negative_nothing;
use super::plain;
use crate::explained::aim::plans;
use crate::random_gardens::make::{LARGER, TINY};
use crate::scenarios;

/// A garden with its plan.
struct Case {
    name: String,
    garden: Garden,
    checked: CheckedPlan,
    slack: Vec<StepSlack>,
}

impl Case {
    fn new(name: String, garden: Garden, checked: CheckedPlan) -> Self {
        let slack = slack(&garden, &checked);
        Self {
            name,
            garden,
            checked,
            slack,
        }
    }

    /// Every page, as text, with what it is.
    fn pages(&self) -> Vec<(String, String)> {
        let facts = Facts::new(&self.garden, &self.checked);
        let view = View::of(&facts);
        let handouts = all(&view, &self.slack, None);
        let mut pages: Vec<(String, String)> = handouts
            .iter()
            .map(|h| (h.title.clone(), h.page.text(plain(160))))
            .collect();
        let slack = report::slack(&self.garden, &self.checked, &self.slack, &[], None);
        pages.push(("what can wait".to_owned(), slack.text(plain(160))));
        pages
    }

    /// Calendars, tables and data, as text.
    fn files(&self) -> Vec<(String, String)> {
        let stamp = Stamp::from(SystemTime::UNIX_EPOCH);
        let facts = Facts::new(&self.garden, &self.checked);
        let files = files(&View::of(&facts), stamp, &self.slack).unwrap();
        let text = |bytes| String::from_utf8(bytes).ok();
        files
            .into_iter()
            .filter_map(|file| Some((file.path, text(file.bytes)?)))
            .collect()
    }
}

/// All scenarios and some random gardens.
fn cases() -> impl Iterator<Item = Case> {
    let bundled = scenarios::planned().iter().map(|(name, garden, checked)| {
        Case::new((*name).to_owned(), garden.clone(), checked.clone())
    });
    let random = plans(10_000..10_030, &TINY).chain(plans(0..4, &LARGER));
    bundled.chain(random.map(|(seed, garden, plan)| {
        let checked = check(&garden, plan).unwrap();
        Case::new(format!("seed {seed}"), garden, checked)
    }))
}

/// True if people of the school are at school, or, before its first term, at work.
fn at_school(garden: &Garden, day: Date) -> bool {
    let year = &garden.school_year;
    let weekday = !matches!(day.weekday(), Weekday::Sat | Weekday::Sun);
    year.school_is_in(day) || weekday && day < year.terms[0].from
}

/// A deadline in a text that falls on a weekend. The day of delivery is the file's own.
fn weekend(text: &str) -> Option<&str> {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = ["Sat", "Sun"].iter().fold(text, |text, day| {
        text.replace(&format!("in the kitchen by {day}"), "delivered")
    });
    let ends = ["by Sat", "by Sun", "garden on Sat", "garden on Sun"];
    ends.into_iter().find(|end| text.contains(end))
}

/// The beds that a text names, in its order.
fn beds_named<'t>(garden: &Garden, text: &'t str) -> Vec<&'t str> {
    let after = text.split("bed ").skip(1);
    let name = |rest: &'t str| {
        let ids = garden.beds.iter().map(|bed| bed.id.len());
        let fits = |len: &usize| {
            rest.is_char_boundary(*len)
                && garden.beds.iter().any(|b| b.id == rest[..*len])
                && !rest[*len..].starts_with(char::is_alphanumeric)
        };
        ids.filter(|len| *len <= rest.len())
            .find(fits)
            .map(|len| &rest[..len])
    };
    after.filter_map(name).collect()
}

#[test]
fn every_text_of_every_plan_is_true_to_its_figures_days_and_names() {
    let (mut texts, mut deadlines, mut places, mut over) = (0, 0, 0, 0);
    for case in cases() {
        let (garden, name) = (&case.garden, &case.name);
        let pages = case.pages();
        for (what, text) in pages.iter().chain(&case.files()) {
            let nothing = negative_nothing(text);
            assert_eq!(nothing, None, "{name}, {what}:\n{text}");
            texts += 1;
        }
        for (what, text) in &pages {
            assert_eq!(weekend(text), None, "{name}, {what}");
        }
        let facts = Facts::new(garden, &case.checked);
        for decision in &facts.decisions {
            assert!(at_school(garden, decision.by), "{name}: {decision:?}");
            deadlines += 1;
        }
        for task in &facts.tasks {
            let place = spot(garden, task);
            let beds = beds_named(garden, &place);
            let rising = beds
                .windows(2)
                .all(|pair| natural(pair[0], pair[1]).is_lt());
            // Two parts of one bed have strips between them that are not theirs.
            let parted = beds.windows(2).any(|pair| pair[0] == pair[1]);
            assert!(rising || parted, "{name}: {place}");
            places += beds.len();
        }
        for row in tables(&View::of(&facts)).iter().flat_map(|t| &t.rows) {
            let signed =
                |cell: &Cell| matches!(cell, Cell::Number(n) if *n == 0.0 && n.is_sign_negative());
            assert!(!row.iter().any(signed), "{name}: {row:?}");
        }
        let plan = &pages[0].1;
        for (ingredient, seen) in garden
            .ingredients
            .iter()
            .zip(&case.checked.replay().ingredients)
        {
            let target = ingredient.target(garden.feast.portions);
            let [low, expected] = [seen.low, seen.expected].map(|kg| 100.0 * (kg / target));
            let shares = format!("{low:.0}-{expected:.0} %");
            assert!(
                plan.contains(&shares),
                "{name}: {} {shares}\n{plan}",
                ingredient.name
            );
            over += usize::from(low > 100.5);
        }
    }
    println!(
        "{texts} texts, {deadlines} deadlines, {places} beds, {over} over 100 % in a poor year"
    );
    assert!(texts > 400 && deadlines > 100 && places > 200 && over > 5);
}
