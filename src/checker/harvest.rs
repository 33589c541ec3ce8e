//! Every planting grown through every weather year, and what is in the pot then.

use crate::calendar::{Date, plus_days};
use crate::garden::{ClassAt, Method, Source};
use crate::growth::{CropSeason, Fate, Unready, least_ready_years, picked_and_kept};
use crate::units::{Kilograms, Share};

use super::planting::{Planting, Step, When};
use super::run::Run;

/// What became of one ingredient.
#[derive(Debug, Clone, PartialEq)]
pub struct IngredientReplay {
    /// Per weather year: at least the least share is in the pot, or why not (the reason of the
    /// planting that came nearest).
    pub ready: Vec<Result<(), Unready>>,
    /// The same for the rain date.
    pub ready_on_rain_date: Option<Vec<Result<(), Unready>>>,
    /// Usable harvest of all its plantings in a poor year.
    pub low: Kilograms,
    /// Usable harvest of all its plantings in an ordinary year.
    pub expected: Kilograms,
    /// `low` against the target; passes 1 where even a poor year brings more than is wanted.
    pub low_share: Share,
    /// `expected` against the target; passes 1 likewise.
    pub expected_share: Share,
}

impl IngredientReplay {
    /// Weather years in which it is ready for the feast.
    #[must_use]
    pub fn ready_years(&self) -> usize {
        self.ready.iter().filter(|ready| ready.is_ok()).count()
    }
}

/// Forgiveness for sums of kilograms.
const ROUNDING: f64 = 1e-9;

/// In the pot or not, and why not.
pub type Ready = Result<(), Unready>;

/// The sums from which a planting's fates are read, one season per weather year.
pub type Seasons = Vec<CropSeason>;

/// What became of the dish.
#[derive(Debug, Clone, PartialEq)]
pub struct Harvest {
    /// Labels of the weather years.
    pub years: Vec<i32>,
    /// Per planting of a known ingredient, in the order of the plan: weather years in which all its
    /// parts are ready for the feast.
    pub plantings: Vec<usize>,
    /// Per ingredient of the dish.
    pub ingredients: Vec<IngredientReplay>,
    /// Per weather year: all ingredients are ready for the feast.
    pub dish_ready: Vec<bool>,
    /// The same for the rain date, if there is one.
    pub dish_ready_on_rain_date: Option<Vec<bool>>,
}

/// The share of a planting that is begun and picked by the same classes.
pub struct Part {
    /// Day number of sowing or planting.
    pub start: usize,
    /// Day numbers of the allowed picks, in order.
    pub picks: Vec<usize>,
}

impl Harvest {
    /// Grows the whole plan.
    pub fn of(run: &Run<'_>, seasons: &[Seasons]) -> Self {
        let feast = run.garden.feast;
        let rain = feast.rain_date.map(|day| grown_all(run, seasons, day));
        Self::put_together(run, &grown_all(run, seasons, feast.day), rain.as_deref())
    }

    /// Grows the whole plan without a look at the rain date.
    pub fn for_feast(run: &Run<'_>) -> Self {
        let grown = grown_all(run, &seasons_of(run), run.garden.feast.day);
        Self::put_together(run, &grown, None)
    }

    /// From what became of every planting, for the feast and for a rain date.
    pub fn put_together(run: &Run<'_>, feast: &[Vec<Ready>], rain: Option<&[Vec<Ready>]>) -> Self {
        let garden = run.garden;
        let years: Vec<i32> = garden
            .weather
            .years(run.horizon)
            .iter()
            .map(|y| y.label)
            .collect();
        let n = years.len();
        let ready = |grown: &[Vec<Ready>]| -> Vec<Vec<Ready>> {
            let positions = garden.ingredient_positions();
            positions.map(|at| ready_of(run, at, grown, n)).collect()
        };
        let count = |ready: &Vec<Ready>| ready.iter().filter(|ready| ready.is_ok()).count();
        let plantings = feast.iter().map(count).collect();
        let feast = ready(feast);
        let rain = rain.map(ready);
        Self {
            years,
            plantings,
            dish_ready: whole_dish(&feast, n),
            dish_ready_on_rain_date: rain.as_ref().map(|r| whole_dish(r, n)),
            ingredients: ingredients(run, feast, rain),
        }
    }

    /// Weather years in which the whole dish is ready.
    pub fn whole_dish_years(&self) -> usize {
        self.dish_ready.iter().filter(|ready| **ready).count()
    }

    /// The fewest years in which a planting, or an ingredient, must be ready to be sown.
    pub fn least_years(&self) -> usize {
        least_ready_years(self.years.len())
    }

    /// True if every planting and every ingredient is ready often enough to be sown.
    #[must_use]
    pub fn is_hopeful(&self) -> bool {
        let mut plantings = self.plantings.iter();
        self.ingredients_are_hopeful() && plantings.all(|years| *years >= self.least_years())
    }

    /// True if every ingredient is ready often enough to be sown, whatever each of its plantings brings.
    #[must_use]
    pub fn ingredients_are_hopeful(&self) -> bool {
        let mut ingredients = self.ingredients.iter();
        ingredients.all(|own| own.ready_years() >= self.least_years())
    }
}

/// Every planting's seasons.
pub fn seasons_of(run: &Run<'_>) -> Vec<Seasons> {
    run.plantings.iter().map(|p| seasons(run, p)).collect()
}

/// One season per weather year, in the microclimate of the planting's first bed; none for what
/// stands in no bed.
pub fn seasons(run: &Run<'_>, planting: &Planting<'_>) -> Seasons {
    let Some(place) = planting.places.first() else {
        return Vec::new();
    };
    let garden = run.garden;
    let microclimate = garden[place.bed].microclimate();
    let crop = &planting.ingredient.crop;
    let years = garden.weather.years(run.horizon);
    let season =
        |year| CropSeason::new(crop, microclimate, year, &run.light).picked_on(&run.picking_days);
    years.iter().map(season).collect()
}

/// Per planting and weather year: in the pot on a day or not.
pub fn grown_all(run: &Run<'_>, seasons: &[Seasons], day: Date) -> Vec<Vec<Ready>> {
    let plantings = run.plantings.iter().zip(seasons);
    plantings
        .map(|(p, seasons)| grown(run, p, seasons, day))
        .collect()
}

/// Per weather year: enough of an ingredient is in the pot.
fn ready_of(
    run: &Run<'_>,
    at: crate::garden::IngredientAt,
    grown: &[Vec<Ready>],
    years: usize,
) -> Vec<Ready> {
    let mine = || {
        let plantings = run.plantings.iter().zip(grown);
        plantings.filter(|(p, _)| p.at == at)
    };
    let wanted = run.garden[at].least(run.garden.feast.portions);
    (0..years)
        .map(|y| in_the_pot(mine().filter_map(|(p, g)| Some((p, *g.get(y)?))), wanted))
        .collect()
}

/// Puts amounts and readiness of each ingredient together.
fn ingredients(
    run: &Run<'_>,
    feast: Vec<Vec<Ready>>,
    rain: Option<Vec<Vec<Ready>>>,
) -> Vec<IngredientReplay> {
    let mut rain = rain.map(Vec::into_iter);
    run.garden
        .ingredient_positions()
        .zip(feast)
        .map(|(at, ready)| {
            let target = run.garden[at].target(run.garden.feast.portions);
            let needs = || {
                run.plantings
                    .iter()
                    .filter(|p| p.at == at)
                    .filter_map(|p| p.need)
            };
            let low: Kilograms = needs().map(|n| n.low).sum();
            let expected: Kilograms = needs().map(|n| n.expected).sum();
            IngredientReplay {
                ready,
                ready_on_rain_date: rain.as_mut().and_then(Iterator::next),
                low,
                expected,
                low_share: Share(share(low, target)),
                expected_share: Share(share(expected, target)),
            }
        })
        .collect()
}

/// A part of a target; nothing wanted is wholly there.
fn share(amount: Kilograms, target: Kilograms) -> f64 {
    if target.0 > 0.0 { amount / target } else { 1.0 }
}

fn whole_dish(ready: &[Vec<Ready>], years: usize) -> Vec<bool> {
    (0..years)
        .map(|y| {
            ready
                .iter()
                .all(|years| years.get(y).is_some_and(Result::is_ok))
        })
        .collect()
}

/// Ready if the plantings that are ready give enough in a poor year. Else the reason of the
/// planting that came nearest: the greatest in the order of `Unready`. An ingredient without
/// a planting, or with too little in all of them, counts as never up; the amount rule
/// refuses such a plan.
fn in_the_pot<'a>(
    plantings: impl Iterator<Item = (&'a Planting<'a>, Ready)>,
    wanted: Kilograms,
) -> Ready {
    let mut reason = None;
    let mut there = Kilograms(0.0);
    for (planting, ready) in plantings {
        match ready {
            Ok(()) => there = there + planting.need.map_or(Kilograms(0.0), |n| n.low),
            Err(why) => reason = reason.max(Some(why)),
        }
    }
    if there.0 >= wanted.0 - ROUNDING {
        Ok(())
    } else {
        Err(reason.unwrap_or(Unready::NotUp))
    }
}

/// Per weather year: whether all parts of a planting are in the pot on `day`: picked in the
/// plan's window and kept, or, where a crop that keeps bearing is eaten later than planned,
/// picked again. The part that did worst gives the reason. A patch is taken to bear every year.
pub fn grown(run: &Run<'_>, planting: &Planting<'_>, seasons: &Seasons, day: Date) -> Vec<Ready> {
    grown_without(run, planting, seasons, day, &[])
}

/// The same if some hands do not come to some picks: a class, or (`None`) all of a step, which is
/// named by its position in the plan.
pub fn grown_without(
    run: &Run<'_>,
    planting: &Planting<'_>,
    seasons: &Seasons,
    day: Date,
    missed: &[(usize, Option<ClassAt>)],
) -> Vec<Ready> {
    let years = run.garden.weather.years(run.horizon).len();
    if let Source::Patch(_) = planting.ingredient.source {
        let picked = picks_of_parts(planting, missed, 0)
            .iter()
            .all(|days| !days.is_empty());
        return vec![
            if picked {
                Ok(())
            } else {
                Err(Unready::NotRipe)
            };
            years
        ];
    }
    let parts = parts(planting, missed);
    if seasons.is_empty() || parts.is_empty() {
        return vec![Err(Unready::NotUp); years];
    }
    let picking = &planting.ingredient.crop.picking;
    let eaten = run.horizon.day_number(day).unwrap_or(0);
    let again = picked_again(run, planting, day);
    seasons
        .iter()
        .map(|season| {
            let reasons = parts.iter().enumerate().filter_map(|(j, part)| {
                let fate = fate(run, planting, season, part.start);
                let planned = picked_and_kept(&fate, picking, &part.picks, eaten);
                let later = again.get(j % again.len().max(1));
                let later = later.map(|days| picked_and_kept(&fate, picking, days, eaten));
                planned.err().filter(|_| later.is_none_or(|l| l.is_err()))
            });
            reasons.min().map_or(Ok(()), Err)
        })
        .collect()
}

/// For a crop that keeps bearing and is eaten on a later day than the feast: the sessions of
/// each class after the feast's delivery that leave as much time before that day as the
/// delivery leaves before the feast.
fn picked_again(run: &Run<'_>, planting: &Planting<'_>, day: Date) -> Vec<Vec<usize>> {
    let garden = run.garden;
    let feast = garden.feast;
    if day <= feast.day || !planting.ingredient.crop.picking.keeps_bearing {
        return Vec::new();
    }
    let until = plus_days(day, -(feast.day - feast.deliver_by).num_days());
    let tending = garden.tending(planting.team, day);
    garden
        .classes_of(tending)
        .map(|class| {
            let sessions = garden.sessions(class).into_iter();
            let after = sessions.filter(|d| feast.deliver_by < *d && *d <= until);
            after.filter_map(|d| run.horizon.day_number(d)).collect()
        })
        .collect()
}

/// What becomes of a planting that is begun on a day.
pub fn fate(run: &Run<'_>, planting: &Planting<'_>, season: &CropSeason, day: usize) -> Fate {
    match (planting.ingredient.source, planting.plan.method) {
        (Source::Begun(at), _) if planting.seedlings.is_none() => {
            season.begun(day, run.garden[at].as_plants())
        }
        (_, Method::Indoor | Method::Bought | Method::Seedlings) => season.planted_when_fit(day),
        (_, Method::Direct | Method::Pieces | Method::Growing | Method::Patch) => {
            season.sown_when_fit(day)
        }
    }
}

/// The parts of a planting: as many as classes begin or pick it, whichever are more. Part j
/// is begun by class j of those who begin it and picked by class j of those who pick, both
/// counted round. What families pick, they pick for all parts.
pub fn parts(planting: &Planting<'_>, missed: &[(usize, Option<ClassAt>)]) -> Vec<Part> {
    let begun: Vec<usize> = match planting.grows_since {
        Some(day) => vec![day],
        None => planting.bedding().map(days).unwrap_or_default(),
    };
    let picks = picks_of_parts(planting, missed, begun.len()).into_iter();
    picks
        .enumerate()
        .filter_map(|(j, picks)| {
            Some(Part {
                start: *begun.get(j % begun.len().max(1))?,
                picks,
            })
        })
        .collect()
}

/// The days on which each part is picked; at least `least` parts.
fn picks_of_parts(
    planting: &Planting<'_>,
    missed: &[(usize, Option<ClassAt>)],
    least: usize,
) -> Vec<Vec<usize>> {
    let picks = planting.picks().map(|step| attended(step, missed));
    let picks: Vec<Vec<Option<usize>>> = picks.collect();
    let parts = picks.iter().map(Vec::len).max().unwrap_or(0).max(least);
    let of = |days: &Vec<Option<usize>>, j| days.get(j % days.len().max(1)).copied().flatten();
    (0..parts)
        .map(|j| picks.iter().filter_map(|days| of(days, j)).collect())
        .collect()
}

/// The days of a pick, in the order of classes; none for those who do not come.
fn attended(step: &Step<'_>, missed: &[(usize, Option<ClassAt>)]) -> Vec<Option<usize>> {
    let at = step.name.number - 1;
    let falls_out = |class| missed.contains(&(at, class)) || missed.contains(&(at, None));
    match &step.when {
        When::Sessions(visits) => visits
            .iter()
            .map(|v| (!falls_out(Some(v.class))).then_some(v.day))
            .collect(),
        When::Families(_) | When::Adult(_) | When::Daily => {
            vec![(!falls_out(None)).then_some(step.first)]
        }
    }
}

/// The days of a step, in the order of classes.
pub fn days(step: &Step<'_>) -> Vec<usize> {
    match &step.when {
        When::Sessions(visits) => visits.iter().map(|v| v.day).collect(),
        When::Families(_) | When::Adult(_) | When::Daily => vec![step.first],
    }
}
