//! Candidates of ingredients that are sown or planted within the plan.

use crate::calendar::{Date, plus_days};
use crate::garden::{Garden, Ingredient, IngredientAt, Method, Plot, SeedSize, Source};
use crate::growth::{Fate, effort};
use crate::plan::StepKind;

use super::amounts::Amounts;
use super::context::Context;
use super::dropped::{DropReason, Dropped};
use super::nursery::{Nursery, days_on_shelf_until_up, nurseries};
use super::places::{BedClass, PlotSet, allowed, bed_classes};
use super::rounds::{PickDay, Round, rounds};
use super::slack::{fragile_on_shelf, late_fates, late_start_fails};
use super::windows::{Seasons, Window, pick_days, starts_as_plants, windows};
use super::{Candidate, Steps, Task, Thinning, least_ready_years};

/// A crop that is thinned comes up too close where children sow it by the pinch.
const THIN_AFTER_DAYS: i64 = 14;
/// Later than this the roots are entangled (common practice).
const THIN_BEFORE_DAYS: i64 = 42;

/// One ingredient's enumeration.
struct Search<'a> {
    context: &'a Context<'a>,
    at: IngredientAt,
    ingredient: &'a Ingredient,
    plots: &'a [Plot],
    rounds: Vec<Round>,
    pick_days: Vec<PickDay>,
}

/// A way of growing in one class of beds.
struct Setting<'a> {
    method: Method,
    class: &'a BedClass,
    amounts: Amounts,
    seasons: Seasons,
}

/// All candidates of an ingredient that is sown or planted.
pub fn candidates(
    context: &Context<'_>,
    plots: &[Plot],
    at: IngredientAt,
    dropped: &mut Dropped,
) -> Vec<Candidate> {
    let garden = context.garden;
    let ingredient = &garden[at];
    if ingredient.source != Source::Sown {
        return Vec::new();
    }
    let rounds = rounds(context, ingredient.grade);
    let pick_days = pick_days(garden, at, &rounds);
    let search = Search {
        context,
        at,
        ingredient,
        plots,
        rounds,
        pick_days,
    };
    let mut found = Vec::new();
    for method in &ingredient.methods {
        for class in &bed_classes(garden) {
            search.grow(*method, class, dropped, &mut found);
        }
    }
    found
}

impl Search<'_> {
    /// All candidates of one method in one class of beds.
    fn grow(
        &self,
        method: Method,
        class: &BedClass,
        dropped: &mut Dropped,
        found: &mut Vec<Candidate>,
    ) {
        let garden = self.context.garden;
        let crop = &self.ingredient.crop;
        let ever = allowed(garden, self.plots, class, crop, garden.last_day());
        let amounts = ever.and_then(|plots| {
            let strips = plots.iter().map(|k| self.plots[k].strips).sum();
            Amounts::of(garden, self.at, method, class.width, strips)
        });
        let amounts = match amounts.and_then(|a| self.within_shelf(method, a)) {
            Ok(amounts) => amounts,
            Err(reason) => return refuse(dropped, reason),
        };
        let seasons = Seasons::new(garden, crop, class.microclimate, starts_as_plants(method));
        let setting = Setting {
            method,
            class,
            amounts,
            seasons,
        };
        for start in &self.rounds {
            if start.last() < self.pick_days.last().map_or(start.last(), PickDay::first) {
                self.start(&setting, start, dropped, found);
            } else {
                refuse(dropped, DropReason::NoPickSession);
            }
        }
    }

    /// The amounts that the shelf can raise, for plants that are raised there.
    fn within_shelf(&self, method: Method, amounts: Amounts) -> Result<Amounts, DropReason> {
        if method != Method::Indoor {
            return Ok(amounts);
        }
        let garden = self.context.garden;
        let (_, on_mat) =
            days_on_shelf_until_up(garden, self.ingredient).ok_or(DropReason::TooColdIndoors)?;
        let warm = on_mat.then_some(garden.shelf.warm_flats);
        let most = amounts.raised_on(garden.shelf.flats, warm);
        amounts.at_most(most).ok_or(DropReason::ShelfTooSmall)
    }

    /// All candidates that start in the bed in one round.
    fn start(
        &self,
        setting: &Setting<'_>,
        start: &Round,
        dropped: &mut Dropped,
        found: &mut Vec<Candidate>,
    ) {
        let garden = self.context.garden;
        let crop = &self.ingredient.crop;
        let plots = match allowed(garden, self.plots, setting.class, crop, start.first()) {
            Ok(plots) => plots,
            Err(reason) => return refuse(dropped, reason),
        };
        let mut windows = windows(&setting.seasons, start, &self.pick_days);
        let least = least_ready_years(setting.seasons.years());
        windows.retain(|w| w.ready.len() >= least);
        if windows.is_empty() {
            return refuse(dropped, DropReason::RarelyReady);
        }
        let late = late_fates(self.context, &setting.seasons, start);
        let nurseries: Vec<Option<Nursery>> = match setting.method {
            Method::Indoor => {
                nurseries(self.context, self.ingredient, &self.rounds, start, dropped)
                    .into_iter()
                    .map(Some)
                    .collect()
            }
            _ => vec![None],
        };
        let seedbed = self.seedbed_gaps(setting, start);
        for window in &windows {
            let fragile_start = late_start_fails(&setting.seasons, late.as_ref(), window);
            for nursery in &nurseries {
                let made = self.candidate(
                    setting,
                    start,
                    plots,
                    window,
                    nursery.as_ref(),
                    fragile_start,
                    &seedbed,
                );
                match made {
                    Ok(candidate) => found.push(candidate),
                    Err(reason) => refuse(dropped, reason),
                }
            }
        }
    }

    /// Gaps between sowing in the bed and coming up (in the median year), when the seedbed
    /// needs daily water.
    fn seedbed_gaps(&self, setting: &Setting<'_>, start: &Round) -> Vec<usize> {
        if setting.method != Method::Direct {
            return Vec::new();
        }
        let up = median_day_up(&setting.seasons.fates(start.last()));
        let until = up.map_or(start.last(), |day| self.context.horizon.date(day));
        self.context.gaps_touching(start.first(), until)
    }

    /// Puts one candidate together.
    #[expect(
        clippy::too_many_arguments,
        reason = "one place puts all choices together"
    )]
    fn candidate(
        &self,
        setting: &Setting<'_>,
        start: &Round,
        plots: PlotSet,
        window: &Window,
        nursery: Option<&Nursery>,
        fragile_start: bool,
        seedbed: &[usize],
    ) -> Result<Candidate, DropReason> {
        let thin = self.thinning(setting.method, start, &window.picks);
        let steps = Steps {
            sow: match (setting.method, nursery) {
                (Method::Indoor, Some(n)) => Some(n.sow.clone()),
                (Method::Bought, _) => None,
                _ => Some(start.clone()),
            },
            pot_up: nursery.and_then(|n| n.pot_up.clone()),
            plant_out: starts_as_plants(setting.method).then(|| start.clone()),
            thin,
            picks: window.picks.clone(),
        };
        let tasks = tasks(self.context.garden, self.ingredient, setting.method, &steps);
        let most = most_blocks_in_lessons(self.context.garden, &tasks, &setting.amounts);
        let amounts = setting
            .amounts
            .clone()
            .at_most(most)
            .ok_or(DropReason::LessonTooShort)?;
        let (fragile_shelf, too_old_late, gaps) = match nursery {
            Some(n) => {
                let up =
                    days_on_shelf_until_up(self.context.garden, self.ingredient).map_or(0, |d| d.0);
                let (fragile, too_old) =
                    fragile_on_shelf(self.context, self.ingredient, n, start, up);
                (
                    fragile,
                    too_old,
                    self.context.gaps_touching(n.sow.first(), start.last()),
                )
            }
            None => (0, false, seedbed.to_vec()),
        };
        Ok(Candidate {
            ingredient: self.at,
            method: setting.method,
            plots,
            bed_weeks: bed_weeks(self.context, start.first(), &window.picks),
            amounts,
            shelf: nursery.map(|n| n.shelf),
            fragile: fragile_shelf
                + u32::from(fragile_start || too_old_late)
                + u32::from(window.picks.len() == 1),
            by_others: by_others(self.context.garden, self.ingredient, &steps),
            idle_weeks: nursery.map_or(0, |n| n.late_weeks)
                + waiting_weeks(self.context.garden, &window.picks),
            ready: window.ready.clone(),
            gaps,
            tasks,
            steps,
        })
    }

    /// When a direct sowing is thinned: in the first round that comes in time, else by an
    /// adult; large seed is sown at its distance and needs none.
    fn thinning(&self, method: Method, sow: &Round, picks: &[PickDay]) -> Option<Thinning> {
        if method != Method::Direct || self.ingredient.crop.seed_size == SeedSize::Large {
            return None;
        }
        let first_pick = picks.first()?.first();
        let from = plus_days(sow.last(), THIN_AFTER_DAYS);
        let to = plus_days(sow.first(), THIN_BEFORE_DAYS).min(plus_days(first_pick, -1));
        let round = self
            .rounds
            .iter()
            .find(|r| from <= r.first() && r.last() <= to);
        match round {
            Some(round) => Some(Thinning::Round(round.clone())),
            None => crate::calendar::days_between(from, to)
                .find(|d| self.context.garden.school_year.school_is_in(*d))
                .map(Thinning::Adult),
        }
    }
}

fn refuse(dropped: &mut Dropped, reason: DropReason) {
    *dropped.entry(reason).or_insert(0) += 1;
}

/// The median day on which seed is up, over the weather years in which it comes up.
#[must_use]
pub fn median_day_up(fates: &[Fate]) -> Option<usize> {
    let mut days: Vec<usize> = fates.iter().filter_map(|f| f.up).collect();
    days.sort_unstable();
    days.get(days.len() / 2).copied()
}

/// First and last week in the bed: a week after the last pick clears it, unless the feast
/// comes first.
#[must_use]
pub fn bed_weeks(context: &Context<'_>, from: Date, picks: &[PickDay]) -> (usize, usize) {
    let last_pick = picks.iter().map(PickDay::last).max().unwrap_or(from);
    let cleared = context.horizon.week(last_pick) + 1;
    (
        context.horizon.week(from),
        cleared.min(context.horizon.weeks() - 1),
    )
}

/// Whole weeks from the last pick to the feast, for which the harvest is kept.
#[must_use]
pub fn waiting_weeks(garden: &Garden, picks: &[PickDay]) -> u32 {
    let last = picks
        .iter()
        .map(PickDay::last)
        .max()
        .unwrap_or(garden.feast.day);
    u32::try_from((garden.feast.day - last).num_days() / 7).unwrap_or(0)
}

/// The work of all steps in sessions.
#[must_use]
pub fn tasks(garden: &Garden, ingredient: &Ingredient, method: Method, steps: &Steps) -> Vec<Task> {
    let thin = match &steps.thin {
        Some(Thinning::Round(round)) => Some(round),
        _ => None,
    };
    let singles = [
        (StepKind::Sow, steps.sow.as_ref()),
        (StepKind::PotUp, steps.pot_up.as_ref()),
        (StepKind::PlantOut, steps.plant_out.as_ref()),
        (StepKind::Thin, thin),
    ];
    let picks = steps.picks.iter().filter_map(|p| match p {
        PickDay::Round(round) => Some((StepKind::Pick, round)),
        PickDay::Families(_) => None,
    });
    singles
        .into_iter()
        .filter_map(|(kind, round)| Some((kind, round?)))
        .chain(picks)
        .flat_map(|(kind, round)| {
            round.visits.iter().map(move |(class, date)| {
                let effort = effort(kind, ingredient, method, garden.children_of(class.grade));
                Task {
                    kind,
                    class: *class,
                    date: *date,
                    effort,
                }
            })
        })
        .collect()
}

/// The most blocks whose every step fits into its session by itself.
fn most_blocks_in_lessons(garden: &Garden, tasks: &[Task], amounts: &Amounts) -> u32 {
    let (least, most) = amounts.blocks;
    let fits = |blocks: u32| {
        tasks.iter().all(|t| {
            t.effort.minutes(blocks * amounts.block.plants)
                <= garden.session_minutes(t.class, t.date)
        })
    };
    (least..=most).take_while(|b| fits(*b)).last().unwrap_or(0)
}

/// Steps that others do than the children who sowed; a pick window counts once.
#[must_use]
pub fn by_others(garden: &Garden, ingredient: &Ingredient, steps: &Steps) -> u32 {
    let thin = match &steps.thin {
        Some(Thinning::Round(round)) => Some(round),
        _ => None,
    };
    let rounds = [
        steps.sow.as_ref(),
        steps.pot_up.as_ref(),
        steps.plant_out.as_ref(),
        thin,
    ];
    let strangers = |round: &Round| !garden.same_children(ingredient.grade, round.first());
    let steps_of_rounds = rounds
        .into_iter()
        .flatten()
        .filter(|r| strangers(r))
        .count();
    let thinned_by_adult = matches!(steps.thin, Some(Thinning::Adult(_)));
    let picked_by_others = steps.picks.iter().any(|p| match p {
        PickDay::Round(round) => strangers(round),
        PickDay::Families(_) => true,
    });
    steps_of_rounds as u32 + u32::from(thinned_by_adult) + u32::from(picked_by_others)
}
