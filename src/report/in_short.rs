//! The plan on one screen: verdict, who grows what, what it hangs on, which lessons have no second chance,
//! what to decide next. Lists are cut until it fits; what is cut is counted.

use std::cmp::Reverse;
use std::time::Duration;

use crate::calendar::Date;
use crate::checker::{CheckedPlan, IngredientReplay};
use crate::explain::StepSlack;
use crate::facts::Facts;
use crate::facts::cautions::has_caution;
use crate::facts::packet_days::Out;
use crate::facts::slack::{Later, Wait};
use crate::facts::spans::span_of;
use crate::facts::verdict::{CountedOn, Readiness};
use crate::garden::{Garden, Ingredient, IngredientAt};
use crate::page::{Look, Page};
use crate::plan::{Planting, StepKind};
use crate::words::occasion::occasion;
use crate::words::promise;
use crate::words::view::{View, figure};
use crate::words::{count, list, plantings, step_words};

use super::{decisions, doubts, idle, overview, packet_days, ran_out, verdict};

/// The most lines of a short plan.
const LINES: usize = 40;
/// The columns of the screen on which it has no more.
const COLUMNS: usize = 80;

/// What can be shown, in lists that can be cut.
struct Short<'a> {
    view: &'a View<'a>,
    ran_out: Option<Duration>,
    /// The rows of the table by grade, each with the ready years that it tells.
    rows: Vec<(usize, Vec<String>)>,
    /// What fails, most often first.
    fails: Vec<String>,
    /// The lessons that cannot be made up, an ingredient each.
    fixed: Vec<String>,
    /// What people decide, in order of time.
    decisions: Vec<(Date, String)>,
}

/// Where more ingredients have cautions, they are counted.
const NAMED: usize = 5;

/// How much of each list is shown.
#[derive(Clone, Copy, PartialEq)]
struct Most {
    rows: usize,
    doubts: usize,
    fails: usize,
    fixed: usize,
    decisions: usize,
}

/// One of these, and how long its list is.
type Part = (fn(&mut Most) -> &mut usize, usize);

/// The plan on one screen, with what is known of the slack and the time after which the search
/// was ended.
#[must_use]
pub fn plan_in_short(
    garden: &Garden,
    checked: &CheckedPlan,
    slack: &[StepSlack],
    ran_out: Option<Duration>,
) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let short = Short {
        view: &view,
        ran_out,
        rows: rows(&view),
        fails: fails(&view),
        fixed: fixed(&view, slack),
        decisions: decisions::in_short(&view),
    };
    short.fitting()
}

impl Short<'_> {
    /// As much as fits. The table comes first: who grows what is what most readers come for. Then the lists
    /// grow in turn, so that none takes the room of another.
    fn fitting(&self) -> Page {
        let mut most = Most {
            rows: self.rows.len(),
            doubts: 1,
            fails: 1,
            fixed: 1,
            decisions: 1,
        };
        while most.rows > 1 && !self.fits(most) {
            most.rows -= 1;
        }
        let grown: [Part; 4] = [
            (|most| &mut most.doubts, self.view.garden.doubts.len()),
            (|most| &mut most.decisions, self.decisions.len()),
            (|most| &mut most.fixed, self.fixed.len()),
            (|most| &mut most.fails, self.fails.len()),
        ];
        loop {
            let before = most;
            for (part, all) in grown {
                let mut more = most;
                *part(&mut more) += 1;
                if *part(&mut more) <= all && self.fits(more) {
                    most = more;
                }
            }
            if most == before {
                return self.page(most);
            }
        }
    }

    fn fits(&self, most: Most) -> bool {
        let look = Look {
            width: COLUMNS,
            color: false,
        };
        self.page(most).text(look).lines().count() <= LINES
    }

    fn page(&self, most: Most) -> Page {
        let (view, mut page) = (self.view, Page::new());
        if let Some(text) = self
            .ran_out
            .and_then(|limit| ran_out::of_a_plan(view, limit))
        {
            page.title(&text);
        }
        page.paragraph(&occasion(view.garden));
        doubts::write_most(view.garden, most.doubts, &mut page);
        page.gap();
        page.title(&promise::sentence(view));
        if let Some(text) = verdict::rain_date_in_short(view) {
            page.paragraph(&text);
        }
        if let Some(text) = promise::warmer(view).or_else(|| promise::frosts_unchecked(view.garden))
        {
            page.paragraph(&text);
        }
        self.who_grows_what(most.rows, &mut page);
        packed("What it hangs on", &self.fails, most.fails, &mut page);
        let heading = "No second chance: lessons that cannot be made up";
        packed(heading, &self.fixed, most.fixed, &mut page);
        self.decide(most.decisions, &mut page);
        self.read_on(&mut page);
        page
    }

    fn who_grows_what(&self, most: usize, page: &mut Page) {
        page.heading("Who grows what");
        // Where not all are shown, those that fail most often, in the same order.
        let mut shown: Vec<usize> = (0..self.rows.len()).collect();
        shown.sort_by_key(|row| self.rows.get(*row).map(|(ready, _)| *ready));
        shown.truncate(most);
        shown.sort_unstable();
        let shown = shown.into_iter().filter_map(|row| self.rows.get(row));
        let shown: Vec<Vec<String>> = shown.map(|(_, row)| row.clone()).collect();
        let rest = self.rows.len() - shown.len();

        let view = self.view;
        let mut header = vec!["Grade", "Ingredient"];
        header.extend(dated().map(|(_, head)| head));
        let brings = format!("Brings,\u{a0}{}", view.words.unit_of_mass());
        header.extend(["Ready", &brings]);
        let numbers = [header.len() - 2, header.len() - 1];
        page.table(&header, &shown, &numbers);
        let more = match rest {
            0 => String::new(),
            _ => format!(" And {rest} more, none ready less often than these."),
        };
        page.line(&format!(
            "Ready: years of {} with enough in the pot. Brings: poor to ordinary year.{more}",
            match view.promised() {
                Readiness {
                    on: CountedOn::Fresh,
                    ..
                } => 100,
                Readiness { years, .. } => years,
            }
        ));
        let notes = [overview::years_apart(view), idle::in_short(view)];
        for note in notes.into_iter().flatten() {
            page.line(&note);
        }
    }

    fn decide(&self, most: usize, page: &mut Page) {
        let (shown, rest) = cut(&self.decisions, most);
        page.heading("Decide next");
        decisions::entries(self.view, shown, page);
        if rest > 0 {
            page.line(&format!("And {rest} later: --all."));
        }
    }

    /// What is dangerous, what was assumed, and where all of it stands.
    fn read_on(&self, page: &mut Page) {
        let garden = self.view.garden;
        let cautioned = garden.ingredients.iter().filter(|i| has_caution(i));
        let mut names: Vec<String> = cautioned.map(|i| i.name.clone()).collect();
        if names.len() > NAMED {
            names = vec![count(names.len(), "ingredient")];
        }
        names.extend(["soil", "tools", "kitchen"].map(str::to_owned));
        let assumed = match garden.assumed.len() {
            0 => String::new(),
            n => format!(" {} assumed: tureen check FILE.", count(n, "figure")),
        };
        page.heading("Read on");
        page.line(&format!(
            "Cautions ({}) and all else: --all.{assumed} Saved by --out FOLDER: tureen show FILE --grade \
             ID prints one grade, --slack what can wait.",
            list(&names)
        ));
    }
}

/// So many of a list, and how many are left.
fn cut<T>(all: &[T], most: usize) -> (&[T], usize) {
    let shown = all.get(..most).unwrap_or(all);
    (shown, all.len() - shown.len())
}

/// A list as one paragraph.
fn packed(heading: &str, all: &[String], most: usize, page: &mut Page) {
    let (shown, rest) = cut(all, most);
    if shown.is_empty() {
        return;
    }
    page.heading(heading);
    let more = match rest {
        0 => String::new(),
        _ => format!(" And {rest} more: --all."),
    };
    page.line(&(shown.join(" ") + &more));
}

/// The kinds of steps that have a column of days, each with its head.
fn dated() -> impl Iterator<Item = (StepKind, &'static str)> {
    let kinds = StepKind::ALL.iter();
    kinds.filter_map(|kind| Some((*kind, step_words::of(*kind).short_head?)))
}

/// A row for each ingredient, by grade, with its ready years.
fn rows(view: &View<'_>) -> Vec<(usize, Vec<String>)> {
    let words = overview::words(view);
    let mut all: Vec<_> = view.ingredients().collect();
    all.sort_by_key(|(at, ingredient, _)| (view.grown_by(ingredient), *at));
    let row = |(at, ingredient, seen): &(IngredientAt, &Ingredient, &IngredientReplay)| {
        let mut row = overview::names(view, ingredient);
        // A row stays one line where it can.
        let days = |kind| overview::spans(view, words, ingredient, kind).replace(" - ", "-");
        row.extend(dated().map(|(kind, _)| days(kind)));
        // The line under the table tells of how many years.
        row.push(figure(view.promised_of(*at)));
        row.push(view.words.figures_of_mass(seen.low, seen.expected));
        (view.promised_of(*at).ready, row)
    };
    all.iter().map(row).collect()
}

/// What fails most often and why, and what becomes of the dish if packet days are too short.
fn fails(view: &View<'_>) -> Vec<String> {
    let mut points = view.weak_points();
    points.sort_by_key(|point| Reverse(point.failed));
    let mut all: Vec<String> = points
        .iter()
        .map(|point| verdict::weak_point_in_short(view, point))
        .collect();
    // Before what seldom fails.
    let at = all.len().min(2);
    all.splice(at..at, packet_days::whole_dish(view, Out::More));
    all
}

/// The lessons that cannot be made up: of each planting the steps without slack and the picks that
/// may not fall out.
fn fixed(view: &View<'_>, slack: &[StepSlack]) -> Vec<String> {
    let planted = view.by_grade().into_iter();
    let mut all: Vec<String> = planted
        .filter_map(|(_, planting)| {
            let kinds = StepKind::ALL.iter();
            let steps: Vec<String> = kinds
                .filter_map(|kind| fixed_step(view, slack, planting, *kind))
                .collect();
            let sowing = plantings::sowing(view, planting);
            let sowing = sowing.map_or_else(String::new, |sowing| format!(" ({sowing})"));
            (!steps.is_empty())
                .then(|| format!("{}{sowing}: {}.", planting.ingredient, steps.join(", ")))
        })
        .collect();
    let unknown = |planting: &Planting| {
        let by_people = |kind: &&StepKind| step_words::of(**kind).slack_head.is_some();
        let mut kinds = StepKind::ALL.iter().filter(by_people);
        kinds.any(|kind| view.wait(slack, planting, *kind) == Wait::Unknown)
    };
    if view.plan.plantings.iter().any(unknown) {
        all.push("There was no time to look at all of them; --time-limit gives more.".to_owned());
    }
    all
}

/// `sow 30 Apr - 7 May`, where that cannot be later.
fn fixed_step(
    view: &View<'_>,
    slack: &[StepSlack],
    planting: &Planting,
    kind: StepKind,
) -> Option<String> {
    let days = match view.wait(slack, planting, kind) {
        Wait::OneSession
        | Wait::Weeks {
            later: Later::NoSlack,
            ..
        } => {
            let (from, to) = span_of(planting, kind)?;
            view.words.span(from, to)
        }
        Wait::Picks { .. } => {
            let kept = view.picks_to_keep(slack, planting);
            let kept: Vec<String> = kept.map(|day| view.words.short(day)).collect();
            list(&kept)
        }
        Wait::None | Wait::Unknown | Wait::Weeks { .. } => String::new(),
    };
    (!days.is_empty()).then(|| format!("{}\u{a0}{days}", step_words::of(kind).plain))
}
