//! `tureen carry-over`: writes the project of the next year, of that of this year with its plan and its diary.

use std::path::{Path, PathBuf};

use crate::calendar::Date;
use crate::facts::carried::{Carried, WithoutABed, carried, keeps_away_since, without_a_bed};
use crate::garden::Garden;
use crate::harmless;
use crate::page::Page;
use crate::pipeline::{Unfolded, Unreadable, read_printed, unfold};
use crate::plan::Plan;
use crate::project;
use crate::project::carry_over::{CarriedOver, Left, carry_over, weather_text};
use crate::words::{Words, carry_over as said};

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::clock;
use super::load::{catalogue, diary, load, plan_path, wrong_project};
use super::save::Output;
use super::terminal::Screen;

/// The arguments of `carry-over`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file of this year, with plan.json and diary.toml beside it if there are such.
    file: PathBuf,
    /// The folder of the new project, which is made if it is not there; the new file has the old one's name.
    #[arg(long, value_name = "FOLDER")]
    out: PathBuf,
    /// The day by which the diary is read [default: today].
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Date>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let file = &arguments.file;
    let garden = load(file)?;
    let on = arguments.on.unwrap_or_else(clock::today);
    let (plan, unfolded, wrong) = season(file, &garden, on)?;
    let catalogue = catalogue()?;
    let carried = carried(&garden, plan.as_ref(), unfolded.as_ref(), on);
    let left = Left {
        grown: carried.grown.clone(),
        since: keeps_away_since(&garden, &catalogue),
        remarks: said::remarks(&garden, &carried),
    };
    let next = carry_over(file, &garden, &left).map_err(|problems| wrong_project(&problems))?;
    let name = file.file_name().and_then(|name| name.to_str());
    let files = write(file, (name.unwrap_or_default(), &arguments.out), &next)?;
    let new = project::load(&arguments.out.join(name.unwrap_or_default()), &catalogue);
    let without = new.as_ref().map(without_a_bed).unwrap_or_default();
    let page = told(&garden, &carried, (&next, &without), &files.0);
    let answer = Answer::page(&page).and(Ok(files.1)).beside(wrong);
    Ok(match &new {
        Ok(_) => answer,
        Err(problems) => answer.and(Err(to_correct(wrong_project(problems)))),
    })
}

/// What is told of it.
fn told(
    garden: &Garden,
    carried: &Carried<'_>,
    new: (&CarriedOver, &[WithoutABed<'_>]),
    files: &[String],
) -> Page {
    let mut page = Page::new();
    if !carried.is_over {
        page.paragraph(&said::not_over(garden));
    }
    page.paragraph(&said::written(new.0, files, Words::of(garden)));
    let then = files.first().map(|file| said::then(file, new.1));
    for (heading, items) in said::told(carried, new).into_iter().chain(then) {
        page.heading(heading);
        for item in &items {
            page.item(item);
        }
    }
    page
}

/// The saved plan, what the diary makes of it by a day, and what is wrong in the diary.
fn season(
    file: &Path,
    garden: &Garden,
    on: Date,
) -> Result<(Option<Plan>, Option<Unfolded>, Screen), Trouble> {
    let path = plan_path(file, None);
    if !path.exists() {
        return Ok((None, None, Screen::default()));
    }
    let (plan, season) = read_printed(&path).map_err(|why| Trouble::saved_plan(&path, &why))?;
    let (diary, wrong) = diary(file, garden, on)?;
    if diary.sections == 0 {
        return Ok((Some(plan), None, wrong));
    }
    // After the last day nothing more can happen to what grew.
    let by = on.min(garden.last_day());
    let unfolded = unfold(garden, (&plan, season.as_ref()), &diary, by);
    let unfolded = unfolded.map_err(|why| Trouble::no_season(&path, &Unreadable::Content(why)))?;
    Ok((Some(plan), unfolded, wrong))
}

/// Writes the new file and the copy of its weather, each where nothing stands; tells their names, and what was done
/// beside.
fn write(
    file: &Path,
    (name, folder): (&str, &Path),
    next: &CarriedOver,
) -> Result<(Vec<String>, String), Trouble> {
    let project = Output::begun(folder, name)?;
    let mut names = vec![harmless::path(project.path())];
    let mut beside = String::new();
    if let Some((was, is)) = &next.weather {
        let weather = Output::begun(folder, is)?;
        let text = weather_text(file, was).map_err(|problems| wrong_project(&problems))?;
        names.push(harmless::path(weather.path()));
        beside += &weather.save(&text)?;
    }
    beside += &project.save(&next.text)?;
    Ok((names, beside))
}

/// A new file that does not pass all checks is there all the same.
fn to_correct(mut trouble: Trouble) -> Trouble {
    trouble.text.append(&Screen::lines(
        "The new file is written. Correct these lines there, then go on with `tureen check`.\n",
    ));
    Trouble {
        exit: Exit::ProjectErrors,
        ..trouble
    }
}
