//! A season that is under way, for the commands that plan: as of which day, what of the diary counts, and what is told of
//! it.

use std::path::Path;

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::garden::Garden;
use crate::page::Page;
use crate::pipeline::{Unfolded, Unreadable, read_printed, unfold};
use crate::project::diary::DIARY_FILE;
use crate::report;

use super::answer::{Answer, Trouble};
use super::clock;
use super::load::{PLAN_FILE, diary, load};
use super::terminal::Screen;

/// The season of a project, if one is under way; and what is wrong in its diary.
pub(super) struct UnderWay(Option<(Unfolded, Screen)>);

impl UnderWay {
    /// By the saved plan beside the project file and the diary, as of a day or today. Without one of them, or where
    /// nothing has begun, none is.
    pub fn of(project: &Path, garden: &Garden, on: Option<Date>) -> Result<Self, Trouble> {
        let path = project.with_file_name(PLAN_FILE);
        if !path.exists() || !project.with_file_name(DIARY_FILE).exists() {
            return Ok(Self(None));
        }
        let on = on.unwrap_or_else(clock::today);
        let (diary, wrong) = diary(project, garden, on)?;
        let trouble = |why| Trouble::no_season(&path, &why);
        let (before, season) = read_printed(&path).map_err(trouble)?;
        let unfolded = unfold(garden, (&before, season.as_ref()), &diary, on);
        let unfolded = unfolded.map_err(|why| trouble(Unreadable::Content(why)))?;
        Ok(Self(unfolded.map(|unfolded| (unfolded, wrong))))
    }

    /// The same of a file that may have to be changed before it can be read: then none is.
    pub fn of_file(project: &Path, on: Option<Date>) -> Result<Self, Trouble> {
        match load(project) {
            Ok(garden) => Self::of(project, &garden, on),
            Err(_) => Ok(Self(None)),
        }
    }

    /// The garden in this season; that of the file where none is under way.
    pub fn garden<'g>(&'g self, of_file: &'g Garden) -> &'g Garden {
        let own = self.0.as_ref().map(|(unfolded, _)| &unfolded.garden);
        own.unwrap_or(of_file)
    }

    /// A changed garden in the same season.
    pub fn over(&self, changed: Garden) -> Garden {
        match &self.0 {
            Some((unfolded, _)) => unfolded.over(changed),
            None => changed,
        }
    }

    /// A plan that was made in this season, with what it changes before it.
    pub fn page(&self, garden: &Garden, checked: &CheckedPlan, plan: Page) -> Page {
        match &self.0 {
            Some((unfolded, _)) => report::unfolded(garden, checked, unfolded, plan),
            None => plan,
        }
    }

    /// An answer that holds no plan, after the day as of which it was sought.
    pub fn first(&self, answer: Answer) -> Answer {
        match &self.0 {
            Some((unfolded, _)) => answer.after(&report::as_of(unfolded)),
            None => answer,
        }
    }

    /// An answer, and beside it what is wrong in the diary.
    pub fn beside(self, answer: Answer) -> Answer {
        match self.0 {
            Some((_, wrong)) => answer.beside(wrong),
            None => answer,
        }
    }
}
