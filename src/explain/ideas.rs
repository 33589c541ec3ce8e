//! Other dishes for the same garden: the whole project planned anew for each.

use crate::catalogue::Dish;
use crate::diagnostic::Problems;
use crate::project::Change;

use super::trial::{Trial, Workbench};

/// A dish that could be cooked.
#[derive(Debug, Clone, PartialEq)]
pub struct Idea {
    /// The dish; none for that of the file.
    pub dish: Option<Dish>,
    /// What comes of it.
    pub trial: Trial,
}

impl Workbench<'_> {
    /// Plans the project with its own dish and with each of some others, `later` days after its feast (before it, if
    /// negative). `done` is called after each dish.
    ///
    /// # Errors
    /// What is wrong with the project for one of them.
    pub fn other_dishes(
        &self,
        dishes: &[Dish],
        later: i64,
        done: &(dyn Fn() + Sync),
    ) -> Result<Vec<Idea>, Problems> {
        let on_its_day = match later {
            0 => Vec::new(),
            later => vec![Change::OtherDay(later)],
        };
        let dishes: Vec<Option<&Dish>> = std::iter::once(None)
            .chain(dishes.iter().map(Some))
            .collect();
        let changes = |dish: &Option<&Dish>| {
            let other = dish.map(|dish| Change::OtherDish(dish.clone()));
            on_its_day.iter().cloned().chain(other).collect()
        };
        let sets: Vec<Vec<Change>> = dishes.iter().map(changes).collect();
        let trials = dishes.into_iter().zip(self.trials(&sets, done));
        trials
            .map(|(dish, trial)| {
                let dish = dish.cloned();
                trial.map(|trial| Idea { dish, trial })
            })
            .collect()
    }
}
