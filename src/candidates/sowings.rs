//! Candidates of ingredients that are sown or planted within the plan, from seedlings on the shelf too.

mod go_on;

use crate::calendar::{Date, days_between};
use crate::garden::{Ingredient, IngredientAt, Method, Plot, Source, Team};
use crate::growth::{Emergence, ThinningDays};

use super::amounts::Amounts;
use super::candidate::{Candidate, Steps, Thinning};
use super::context::Context;
use super::dropped::{DropReason, Dropped};
use super::going_on::{GoingOn, PrintedPicks, printed_picks};
use super::moves::Open;
use super::nursery::Nursery;
use super::places::{BedClass, PlotSet, allowed, bed_classes};
use super::rounds::{PickDay, Round, rounds};
use super::slack::{bearable_start, fragile, late_start};
use super::takes::{bed_days, by_others, most_blocks_in_lessons, waiting_weeks};
use super::unlisted::MOST_CANDIDATES;
use super::windows::{Seasons, Window, family_days, pick_days};

/// The enumeration of one ingredient, grown by one team.
struct Search<'a> {
    context: &'a Context<'a>,
    at: IngredientAt,
    ingredient: &'a Ingredient,
    team: Team,
    plots: &'a [Plot],
    rounds: Vec<Round>,
    pick_days: Vec<PickDay>,
    /// What it goes on with, if it has begun.
    going_on: Option<GoingOn<'a>>,
    /// Printed picks, of that or of what has yet to begin in a round.
    printed_picks: Vec<(Option<Round>, PrintedPicks)>,
    /// The printed days from which it may move.
    open: Open,
}

/// A way of growing in one class of beds.
struct Setting<'a> {
    method: Method,
    class: &'a BedClass,
    amounts: Amounts,
    seasons: &'a Seasons,
}

/// A start in the bed.
struct Begun<'a> {
    start: &'a Round,
    plots: PlotSet,
    /// When the seed of each part is up; none of what is not sown in the bed.
    up: Vec<Option<Emergence>>,
    /// Gaps in which the seedbed needs daily water.
    seedbed: Vec<usize>,
}

/// All candidates of an ingredient that is sown or planted; not all of them where they are more
/// than a whole garden may have.
pub fn candidates(
    context: &Context<'_>,
    plots: &[Plot],
    at: IngredientAt,
    dropped: &mut Dropped,
) -> Vec<Candidate> {
    let garden = context.garden;
    let ingredient = &garden[at];
    let methods: &[Method] = match ingredient.source {
        Source::Sown => ingredient.methods.as_slice(),
        Source::Begun(which) => match garden[which].on_shelf() {
            Some(_) => &[Method::Seedlings],
            None => &[],
        },
        Source::Patch(_) => &[],
    };
    let mut found = Vec::new();
    let begun: Vec<_> = garden.begun_of(at).collect();
    for (which, printed) in &begun {
        let going_on = GoingOn {
            at: *which,
            printed,
            as_of: garden.as_of(),
        };
        Search::new(context, plots, (at, printed.team), Some(going_on))
            .go_on(&going_on, dropped, &mut found);
    }
    if begun.len() >= ingredient.most_plantings() as usize {
        return found;
    }
    let search = |team: &Team| Search::new(context, plots, (at, *team), None);
    let searches: Vec<Search<'_>> = ingredient.teams.iter().map(search).collect();
    for method in methods {
        for class in &bed_classes(garden) {
            // The weather is the same for every team.
            let mut seasons = None;
            for search in &searches {
                if found.len() > MOST_CANDIDATES {
                    return found;
                }
                search.grow((*method, class), &mut seasons, dropped, &mut found);
            }
        }
    }
    found
}

impl<'a> Search<'a> {
    fn new(
        context: &'a Context<'a>,
        plots: &'a [Plot],
        (at, team): (IngredientAt, Team),
        going_on: Option<GoingOn<'a>>,
    ) -> Self {
        let rounds = rounds(context, team);
        let pick_days = pick_days(context.garden, at, &rounds);
        let printed_picks = printed_picks(context.garden, at, going_on.as_ref(), &pick_days);
        Self {
            context,
            at,
            ingredient: &context.garden[at],
            team,
            plots,
            rounds,
            pick_days,
            going_on,
            printed_picks,
            open: Open::of(context.garden, at, going_on.map(|g| g.at)),
        }
    }

    /// All candidates of one method in one class of beds; `seasons` are filled in when first wanted.
    fn grow(
        &self,
        (method, class): (Method, &BedClass),
        seasons: &mut Option<Seasons>,
        dropped: &mut Dropped,
        found: &mut Vec<Candidate>,
    ) {
        let garden = self.context.garden;
        let crop = &self.ingredient.crop;
        let own = (crop, self.team);
        let ever = allowed(garden, self.plots, class, own, garden.last_day());
        let amounts = ever.and_then(|plots| {
            let strips = plots.iter().map(|k| self.plots[k.0].strips.count).sum();
            let beds = (class.rows, strips);
            Amounts::of(garden, self.at, method, self.team, beds)
        });
        let amounts = match amounts.and_then(|a| self.within_shelf(method, a)) {
            Ok(amounts) => amounts,
            Err(reason) => return refuse(dropped, reason),
        };
        let as_plants = method.starts_as_plants();
        let seasons = seasons
            .get_or_insert_with(|| Seasons::new(garden, crop, class.microclimate, as_plants));
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
        if !method.is_on_shelf() {
            return Ok(amounts);
        }
        let most = amounts.raised_on(self.context.garden.shelf.flats, None);
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
        let own = (&self.ingredient.crop, self.team);
        let plots = match &self.going_on {
            Some(going_on) => Ok(going_on.plots(self.plots)),
            None => allowed(garden, self.plots, setting.class, own, start.first()),
        };
        let plots = match plots {
            Ok(plots) => plots,
            Err(reason) => return refuse(dropped, reason),
        };
        let windows = self.windows(setting.seasons, start);
        if windows.is_empty() {
            let reason = match self.going_on {
                Some(_) => DropReason::NoPickSession,
                None => DropReason::RarelyReady,
            };
            return refuse(dropped, reason);
        }
        let nurseries: Vec<Option<Nursery>> = match setting.method.is_on_shelf() {
            true => self
                .nurseries(start, dropped)
                .into_iter()
                .map(Some)
                .collect(),
            false => vec![None],
        };
        let late = late_start(self.context, self.team, setting.seasons, start);
        let up = emergence(setting, start);
        let begun = Begun {
            start,
            plots,
            seedbed: self.seedbed_gaps(start, &up),
            up,
        };
        for window in &windows {
            let late = bearable_start(setting.seasons, late.as_ref(), window);
            for nursery in &nurseries {
                match self.candidate(setting, &begun, nursery.as_ref(), window, late) {
                    Ok(candidate) => found.push(candidate),
                    Err(reason) => refuse(dropped, reason),
                }
            }
        }
    }

    /// Gaps between sowing in the bed and coming up (in the median year) of what was sown last, when the
    /// seedbed needs daily water.
    fn seedbed_gaps(&self, start: &Round, up: &[Option<Emergence>]) -> Vec<usize> {
        let Some(last) = (0..up.len()).max_by_key(|part| start.day_of_part(*part)) else {
            return Vec::new();
        };
        let until = up[last].map_or(start.last(), |up| self.context.horizon.date(up.usual));
        self.context.gaps_touching(start.first(), until)
    }

    /// Puts one candidate together. `late` is its start in the bed one round late, if its
    /// years bear that.
    fn candidate(
        &self,
        setting: &Setting<'_>,
        begun: &Begun<'_>,
        nursery: Option<&Nursery>,
        window: &Window,
        late: Option<&Round>,
    ) -> Result<Candidate, DropReason> {
        let garden = self.context.garden;
        let steps = self.steps(setting.method, begun, nursery, window)?;
        let tasks = self.tasks(setting.method, &steps);
        let shelf = nursery.map(|n| n.shelf);
        let mut amounts = setting.amounts.clone();
        let is_new = self.going_on.is_none();
        if is_new && shelf.is_some_and(|s| s.warm_until.is_some()) {
            let warm = Some(garden.shelf.warm_flats);
            let most = amounts.raised_on(garden.shelf.flats, warm);
            amounts = amounts.at_most(most).ok_or(DropReason::ShelfTooSmall)?;
        }
        let most = most_blocks_in_lessons(garden, &tasks, &amounts);
        let amounts = amounts.at_most(most).ok_or(DropReason::LessonTooShort)?;
        Ok(Candidate {
            given: self.going_on.map(|going_on| going_on.at),
            moves: self.open.moved(&steps),
            ingredient: self.at,
            team: self.team,
            method: setting.method,
            plots: begun.plots,
            bed_days: bed_days(self.context, begun.start.first(), &window.picks),
            amounts,
            shelf,
            fragile: fragile(
                self.context,
                (self.ingredient, self.team),
                &steps,
                nursery,
                late,
            ),
            by_others: by_others(garden, self.team, &steps),
            idle_weeks: nursery.map_or(0, |n| n.late_weeks)
                + waiting_weeks(garden, self.at, &window.picks),
            ready: window.ready.clone(),
            gaps: match nursery {
                Some(n) => self.context.gaps_touching(n.from, begun.start.last()),
                None => begun.seedbed.clone(),
            },
            tasks,
            steps,
        })
    }

    /// The steps of a planting that starts in the bed.
    fn steps(
        &self,
        method: Method,
        begun: &Begun<'_>,
        nursery: Option<&Nursery>,
        window: &Window,
    ) -> Result<Steps, DropReason> {
        let start = begun.start;
        Ok(Steps {
            sow: match nursery {
                Some(nursery) => nursery.sow.clone(),
                None if method.starts_as_plants() => None,
                None => Some(start.clone()),
            },
            pot_up: nursery.and_then(|n| n.pot_up.clone()),
            plant_out: method.starts_as_plants().then(|| start.clone()),
            thin: self.thinning(begun, &window.picks)?,
            picks: window.picks.clone(),
        })
    }

    /// When a direct sowing is thinned: in the first round that comes in time, else by an
    /// adult on a school day, else by families. What is sown at its distance needs none, nor does what
    /// is picked before it would be thinned.
    ///
    /// # Errors
    /// Nobody is there to thin in time.
    fn thinning(
        &self,
        begun: &Begun<'_>,
        picks: &[PickDay],
    ) -> Result<Option<Thinning>, DropReason> {
        if let Some(thinned) = self.going_on.and_then(|going_on| going_on.thin()) {
            return Ok(Some(thinned));
        }
        let number = |day: Date| self.context.horizon.day_number(day);
        let days = self.ingredient.crop.thinning.and_then(|thinning| {
            let first_pick = picks.first().and_then(|pick| number(pick.first()))?;
            Some(ThinningDays::of(thinning, &begun.up, first_pick))
        });
        let days = days.filter(ThinningDays::are_there);
        let Some((from, to)) = days.as_ref().and_then(ThinningDays::of_all) else {
            return Ok(None);
        };
        let in_time = |round: &&Round| {
            let visits = round.visits.iter().map(|(_, day)| number(*day));
            let thinned = visits.collect::<Option<Vec<usize>>>();
            let missed = |thinned: Vec<usize>| days.as_ref()?.missed_by(&thinned);
            thinned.is_some_and(|thinned| missed(thinned).is_none())
        };
        let printed = self.going_on.and_then(|going_on| going_on.printed_thin());
        let printed = printed.filter(|printed| self.rounds.contains(printed));
        if let Some(round) = printed.iter().chain(&self.rounds).find(in_time) {
            return Ok(Some(Thinning::Round(round.clone())));
        }
        let garden = self.context.garden;
        let (from, to) = (
            self.context.horizon.date(from),
            self.context.horizon.date(to),
        );
        let adult = days_between(from.max(garden.as_of()), to)
            .find(|d| garden.school_year.school_is_in(*d));
        let families =
            || family_days(garden).find(|d| from <= *d && garden.as_of() <= *d && *d <= to);
        let others = adult
            .map(Thinning::Adult)
            .or_else(|| families().map(Thinning::Families));
        match (others, self.going_on) {
            (None, None) => Err(DropReason::NoSession),
            // It stands there already, thinned in time or not.
            (others, _) => Ok(others),
        }
    }
}

/// When the seed of each part is up that is sown in the bed in a round; none of what is not.
fn emergence(setting: &Setting<'_>, start: &Round) -> Vec<Option<Emergence>> {
    if setting.method != Method::Direct {
        return Vec::new();
    }
    let parts = 0..start.visits.len();
    parts
        .map(|part| {
            let fates = setting.seasons.fates(start.day_of_part(part));
            Emergence::of(fates.iter().map(|fate| fate.up))
        })
        .collect()
}

fn refuse(dropped: &mut Dropped, reason: DropReason) {
    *dropped.entry(reason).or_insert(0) += 1;
}
