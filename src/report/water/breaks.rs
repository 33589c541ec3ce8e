//! Breaks in the watering list: who waters in a week, what families pick, room for a name.

use chrono::{Datelike, Weekday};

use crate::calendar::{Date, days_between, plus_days};
use crate::checker::Seedbed;
use crate::facts::order::natural;
use crate::garden::{Break, Care};
use crate::plan::When;
use crate::report::view::View;
use crate::report::words::list;

use super::names::beds_of;

/// Room for a name to be written by hand.
const NAME: &str = "Name: ____________________";

/// A week of the plan that lies in a break.
pub struct BreakWeek<'a> {
    pub pause: &'a Break,
    /// Which week of the break it is, from 1.
    number: usize,
    /// How many it has.
    of: usize,
    monday: Date,
}

/// The break that a week lies in: one that takes at least one of its school days.
pub fn of_week<'a>(view: &View<'a>, week: usize) -> Option<BreakWeek<'a>> {
    let monday = view.garden.horizon().monday(week);
    let pause = (0..5).find_map(|day| {
        let day = plus_days(monday, day);
        view.garden.school_year.break_on(day)
    })?;
    let weeks = mondays(pause);
    let number = weeks.iter().position(|m| *m == monday)? + 1;
    Some(BreakWeek {
        pause,
        number,
        of: weeks.len(),
        monday,
    })
}

/// The Mondays of the weeks of a break that hold at least one school day of it.
fn mondays(pause: &Break) -> Vec<Date> {
    let mut mondays: Vec<Date> = days_between(pause.from, pause.to)
        .filter(|day| !matches!(day.weekday(), Weekday::Sat | Weekday::Sun))
        .map(crate::calendar::monday_of)
        .collect();
    mondays.dedup();
    mondays
}

impl BreakWeek<'_> {
    /// The line under the week's litres.
    pub fn line(&self, view: &View<'_>, seedbeds: &[Seedbed], flats: u32) -> String {
        let which = if self.of == 1 {
            self.pause.name.clone()
        } else {
            format!("{}, week {} of {}", self.pause.name, self.number, self.of)
        };
        let who = match self.pause.care {
            Care::Families => "families water",
            Care::Staff => "staff water",
            Care::Nobody => "NOBODY IS ON SITE, find someone",
        };
        let mut parts = vec![format!("{which}: {who}.")];
        let picks = self.picks(view);
        if !picks.is_empty() {
            parts.push(format!("Pick if ripe and still there: {}.", list(&picks)));
        }
        let sunday = plus_days(self.monday, 6);
        let damp: Vec<&str> = seedbeds
            .iter()
            .filter(|s| s.from <= sunday && s.up >= self.monday)
            .map(|s| s.ingredient.as_str())
            .collect();
        if !damp.is_empty() {
            parts.push(format!(
                "Every day: a look at the seedbed of {}.",
                list(&damp)
            ));
        }
        if flats > 0 {
            parts.push("Every day: the seedlings on the shelf.".to_owned());
        }
        parts.push(NAME.replace(' ', "\u{a0}"));
        parts.join(" ")
    }

    /// What families pick in the week: `potato on Sat 28 Aug (bed 7)`.
    fn picks(&self, view: &View<'_>) -> Vec<String> {
        let mut picks: Vec<(Date, String)> = Vec::new();
        for planting in &view.plan.plantings {
            for step in planting.picks() {
                let When::Families(day) = step.when else {
                    continue;
                };
                if self.monday <= day && day <= plus_days(self.monday, 6) {
                    picks.push((
                        day,
                        format!(
                            "{} on {} ({})",
                            planting.ingredient,
                            view.words.day(day),
                            beds_of(&planting.places)
                        ),
                    ));
                }
            }
        }
        picks.sort_by(|a, b| a.0.cmp(&b.0).then_with(|| natural(&a.1, &b.1)));
        picks.into_iter().map(|(_, text)| text).collect()
    }
}
