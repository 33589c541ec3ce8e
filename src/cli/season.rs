//! A season that is under way, for the commands that plan: as of which day, what of the diary counts, and what is told of
//! it.

use std::path::Path;

use crate::calendar::Date;
use crate::catalogue::Catalogue;
use crate::checker::CheckedPlan;
use crate::diagnostic::{Code, Findings, Problem, Problems, Source};
use crate::garden::Garden;
use crate::page::Page;
use crate::pipeline::{Unfolded, Unreadable, read_printed, unfold};
use crate::plan::saved::SavedError;
use crate::project::{self, Change};
use crate::report;
use crate::words::Words;

use super::answer::{Answer, Exit, Trouble};
use super::clock;
use super::load::{PLAN_FILE, diary, load, plan_path};
use super::terminal::Screen;

/// The season of a project, if one is under way.
#[derive(Default)]
pub(super) struct UnderWay {
    season: Option<Unfolded>,
    /// What is wrong in its diary.
    wrong: Screen,
}

impl UnderWay {
    /// By the saved plan beside the project file, as of a day that is given, or by plan and diary as of today. Without
    /// them, or where nothing has begun, none is.
    pub fn of(project: &Path, garden: &Garden, on: Option<Date>) -> Result<Self, Trouble> {
        let path = plan_path(project, None);
        if !path.exists() {
            return Ok(Self::default());
        }
        let day = on.unwrap_or_else(clock::today);
        let (diary, wrong) = diary(project, garden, day)?;
        if on.is_none() && diary.sections == 0 {
            return Ok(Self::default());
        }
        let on = day;
        let trouble = |why| Trouble::no_season(&path, &why);
        let (before, season) = read_printed(&path).map_err(trouble)?;
        let season = unfold(garden, (&before, season.as_ref()), &diary, on);
        let season = season.map_err(|why| trouble(Unreadable::Content(why)))?;
        match season {
            Some(_) if on > garden.last_day() => Err(is_over(garden)),
            season => Ok(Self { season, wrong }),
        }
    }

    /// The same of a file that may have to be changed before it can be read: then none is.
    pub fn of_file(project: &Path, on: Option<Date>) -> Result<Self, Trouble> {
        match load(project) {
            Ok(garden) => Self::of(project, &garden, on),
            Err(_) => Ok(Self::default()),
        }
    }

    /// The garden in this season; that of the file where none is under way.
    pub fn garden<'g>(&'g self, of_file: &'g Garden) -> &'g Garden {
        let own = self.season.as_ref().map(|unfolded| &unfolded.garden);
        own.unwrap_or(of_file)
    }

    /// The project of a file with changes, in the same season.
    ///
    /// # Errors
    /// What is wrong with the changes, or with the project that they make; or they leave out days on which something
    /// was begun.
    pub fn load(
        &self,
        project: &Path,
        changes: &[Change],
        catalogue: &Catalogue,
    ) -> Result<Garden, Problems> {
        let changed = project::load_changed(project, changes, catalogue)?;
        match &self.season {
            Some(unfolded) => unfolded.over(changed).map_err(|why| no_season(&why)),
            None => Ok(changed),
        }
    }

    /// A plan that was made in this season, with what it changes before it.
    pub fn page(&self, checked: &CheckedPlan, plan: Page) -> Page {
        match &self.season {
            Some(unfolded) => report::unfolded(checked, unfolded, plan),
            None => plan,
        }
    }

    /// An answer that holds no plan of this season, after the day as of which it was sought.
    pub fn first(&self, answer: Answer) -> Answer {
        match &self.season {
            Some(unfolded) => answer.after(&report::as_of(unfolded)),
            None => answer,
        }
    }

    /// An answer, and beside it what is wrong in the diary.
    pub fn beside(self, answer: Answer) -> Answer {
        answer.beside(self.wrong)
    }

    /// The whole answer of a command that looks at this season: first as of when, beside it what is wrong in the diary.
    pub fn answered(self, page: Answer) -> Answer {
        let answer = self.first(page);
        self.beside(answer)
    }
}

/// Why the season cannot go on in a changed project.
fn no_season(why: &SavedError) -> Problems {
    let cause = format!("with what is tried the season cannot go on: {why}");
    let problem = Problem::new(Code::OutOfRange, cause);
    let mut found = Findings::default();
    found.report(
        problem.remedy("Try other days, from `start` to `feast`, that leave in what has begun."),
    );
    let mut problems = Problems::default();
    problems.add(Source::unread(PLAN_FILE.to_owned()), found);
    problems
}

fn is_over(garden: &Garden) -> Trouble {
    let day = Words::of(garden).full_day(garden.last_day());
    Trouble::new(
        Exit::Usage,
        format_args!("The dish was eaten by {day}: nothing of its season is left to plan."),
        "Give a day of the season with --on DATE. The project of the next year is made by \
         `tureen carry-over FILE --out FOLDER`.",
    )
}
