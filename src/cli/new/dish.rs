//! Questions about the dish and its day.

use chrono::{Datelike, Weekday};

use super::question::{Known, Question, words};
use crate::calendar::MONTHS;
use crate::catalogue::Dish;
use crate::project::draft::{self, Draft, Measures};
use crate::words::list;

pub(super) fn all() -> Vec<Question> {
    vec![dish(), amounts(), feast()]
}

fn month(month: u32) -> &'static str {
    let at = usize::try_from(month).unwrap_or_default().saturating_sub(1);
    MONTHS.get(at).copied().unwrap_or_default()
}

/// The dishes to choose from, each with its season at the place.
fn choices(draft: &Draft, known: &Known<'_>) -> String {
    let line = |(at, dish): (usize, &Dish)| {
        let (first, last) = dish.months_at(draft.south());
        let season = match first == last {
            true => month(first).to_owned(),
            false => format!("{} to {}", month(first), month(last)),
        };
        format!("   {:>2}  {:<26} {season}", at + 1, dish.name)
    };
    let lines: Vec<String> = known.dishes.iter().enumerate().map(line).collect();
    lines.join("\n")
}

fn dish() -> Question {
    Question {
        ask: |draft, known| {
            format!(
                "What do you cook? A number, or a name of your own.\n{}",
                choices(draft, known)
            )
        },
        take: |draft, known, line| {
            let number = line.parse::<usize>().ok();
            let chosen = match number {
                Some(number) => number.checked_sub(1).and_then(|at| known.dishes.get(at)),
                None => known
                    .dishes
                    .iter()
                    .find(|dish| dish.name.eq_ignore_ascii_case(line)),
            };
            match (chosen, number) {
                (Some(dish), _) => draft.dish = dish.clone(),
                (None, Some(_)) => return Err(format!("the numbers go to {}", known.dishes.len())),
                (None, None) => draft.dish.name = line.to_owned(),
            }
            Ok(())
        },
        told: |draft| draft.dish.name.clone(),
        lines: None,
    }
}

fn amounts() -> Question {
    Question {
        ask: |draft, _| {
            let (unit, example) = match draft.measures {
                Measures::Metric => ("grams", "carrot 25, potato 60"),
                Measures::Feet => ("ounces", "carrot 1, potato 2"),
            };
            format!("What goes into it, in {unit} for one person? Such as\n   {example}")
        },
        take: |draft, known, line| {
            draft.dish.ingredients = draft::parts(line, known.catalogue, draft.measures)?;
            Ok(())
        },
        told: |draft| {
            let portion =
                |(crop, grams): &(String, f64)| format!("{crop} {}", words(draft).portion(*grams));
            let parts: Vec<String> = draft.dish.ingredients.iter().map(portion).collect();
            list(&parts)
        },
        lines: None,
    }
}

fn feast() -> Question {
    Question {
        ask: |_, _| {
            "On which day does the whole school eat it? A school day: 8 October 2027.".to_owned()
        },
        take: |draft, _, line| {
            let day = draft::day(line, draft.today, draft.measures)?;
            if day <= draft.today {
                return Err(format!("{day} is past"));
            }
            if matches!(day.weekday(), Weekday::Sat | Weekday::Sun) {
                return Err(format!("{} is no school day", words(draft).full_day(day)));
            }
            draft.feast = Some(day);
            Ok(())
        },
        told: |draft| words(draft).full_day(draft.feast()),
        lines: None,
    }
}
