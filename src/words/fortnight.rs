//! What happens on a day of the last two weeks, in words.

use crate::facts::fortnight::Event;

use super::view::View;
use super::{decisions, list, sentence, tasks};

/// What is to be known of days of picking.
pub(crate) const NOTE: &str =
    "Where something may be picked on several days, it comes on the first on which it is ripe.";

/// `Pick: tomato (5a and 5b). All is in the kitchen.`: what is done comes before what it is done for.
#[must_use]
pub fn in_words(view: &View<'_>, events: &[Event<'_>]) -> String {
    let mut decided: Vec<String> = Vec::new();
    let mut reached: Vec<String> = Vec::new();
    let mut done: Vec<(String, Vec<String>)> = Vec::new();
    for event in events {
        match event {
            Event::Decide(decision) => decided.push(decisions::what(view, &decision.topic)),
            Event::Deliver => reached.push("All is in the kitchen.".to_owned()),
            Event::Feast => reached.push("The day: cook, serve and eat.".to_owned()),
            Event::Task(task) => {
                let (title, who) = (tasks::title(task), tasks::who(view.garden, task.who));
                match done.iter_mut().find(|(other, _)| *other == title) {
                    Some((_, all)) => all.push(who),
                    None => done.push((title, vec![who])),
                }
            }
        }
    }
    let done = done
        .into_iter()
        .map(|(title, who)| format!("{title} ({}).", list(&who)));
    let all = decided.into_iter().chain(done).chain(reached);
    let all: Vec<String> = all.map(|text| sentence(&text)).collect();
    all.join(" ")
}
