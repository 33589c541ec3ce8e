//! `tureen today`: what is due this week, what is late, what to decide and to water, by the saved plan and the
//! diary.

use std::path::PathBuf;

use crate::calendar::{Date, plus_days};
use crate::explain;
use crate::facts::forecast::Expected;
use crate::garden::{Garden, Locale};
use crate::harmless;
use crate::project;
use crate::report;
use crate::units::Celsius;
use crate::weather::Daily;

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::clock;
use super::load::{diary, load, plan_path, saved_plan, wrong_project};
use super::time_limit::TimeLimit;

/// A forecast is looked at for so many days.
const LONGEST: i64 = 14;

/// The arguments of `today`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; its diary stands beside it.
    file: PathBuf,
    /// The saved plan, or its folder [default: plan.json beside the project file].
    #[arg(long, value_name = "PATH")]
    plan: Option<PathBuf>,
    /// The day [default: today].
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Date>,
    /// The lowest temperature that is forecast for the coming night, such as -1 or 30F.
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true, value_parser = degrees)]
    tonight: Option<Degrees>,
    /// The highest temperature that is forecast for tomorrow, such as 31 or 88F.
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true, value_parser = degrees)]
    tomorrow: Option<Degrees>,
    /// A forecast of the next days, a table as the weather file: date,tmin_c,tmax_c,rain_mm.
    #[arg(long, value_name = "CSV", conflicts_with_all = ["tonight", "tomorrow"])]
    forecast: Option<PathBuf>,
    #[command(flatten)]
    time: TimeLimit<10>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let garden = load(&arguments.file)?;
    let on = arguments.on.unwrap_or_else(clock::today);
    let (garden, checked) = saved_plan(
        garden,
        &plan_path(&arguments.file, arguments.plan.as_deref()),
    )?;
    let (diary, wrong) = diary(&arguments.file, &garden, on)?;
    let slack = explain::slack_within(&garden, &checked, &deadline);
    let forecast = forecast(arguments, &garden, on)?;
    let page = report::today(&garden, &checked, &slack, (&diary, on), &forecast);
    Ok(Answer::page(&report::opened(&garden, &checked, page)).beside(wrong))
}

/// A temperature as it is typed, with its unit where that is typed too.
#[derive(Debug, Clone, Copy)]
struct Degrees {
    figure: f64,
    fahrenheit: Option<bool>,
}

fn degrees(text: &str) -> Result<Degrees, String> {
    let text = text.trim();
    let (figure, fahrenheit) = match text.char_indices().next_back() {
        Some((end, 'C' | 'c')) => (&text[..end], Some(false)),
        Some((end, 'F' | 'f')) => (&text[..end], Some(true)),
        _ => (text, None),
    };
    let figure = figure.trim().trim_end_matches('\u{b0}').parse::<f64>();
    let in_range = |figure: &f64| (-100.0..=150.0).contains(figure);
    match figure.ok().filter(in_range) {
        Some(figure) => Ok(Degrees { figure, fahrenheit }),
        None => Err("write a temperature, such as -1, 31C or 30F".to_owned()),
    }
}

impl Degrees {
    /// In degrees Celsius; without a unit as the school measures.
    fn celsius(self, locale: Locale) -> Celsius {
        let by_custom = match locale {
            Locale::British => false,
            Locale::American => true,
        };
        match self.fahrenheit.unwrap_or(by_custom) {
            true => Celsius(((self.figure - 32.0) / 1.8 * 10.0).round() / 10.0),
            false => Celsius(self.figure),
        }
    }
}

/// What is expected of the days after a day.
fn forecast(
    arguments: &Arguments,
    garden: &Garden,
    on: Date,
) -> Result<Vec<(Date, Expected)>, Trouble> {
    let celsius = |degrees: Degrees| degrees.celsius(garden.locale);
    let Some(path) = &arguments.forecast else {
        let tomorrow = Expected {
            low: arguments.tonight.map(celsius),
            high: arguments.tomorrow.map(celsius),
            rain: None,
        };
        return Ok(vec![(plus_days(on, 1), tomorrow)]);
    };
    let days = project::forecast(path).map_err(|problems| wrong_project(&problems))?;
    let near = |(day, _): &(Date, Daily)| on < *day && *day <= plus_days(on, LONGEST);
    let days: Vec<(Date, Expected)> = days
        .into_iter()
        .filter(near)
        .map(|(day, daily)| {
            let expected = Expected {
                low: Some(daily.tmin),
                high: Some(daily.tmax),
                rain: Some(daily.rain),
            };
            (day, expected)
        })
        .collect();
    match days.is_empty() {
        false => Ok(days),
        true => {
            let what = format_args!(
                "{} holds none of the {LONGEST} days after {on}.",
                harmless::path(path)
            );
            let remedy = "Give the table of the days to come, or another day with --on.";
            Err(Trouble::new(Exit::Usage, what, remedy))
        }
    }
}
