//! Throws out a candidate if another one of the same ingredient and team is at least as good in
//! everything that counts: ready years, beds, days, shelf, sessions, care and the small aims.
//! Days on which the shelf can never run short do not count.

use std::collections::{BTreeMap, BTreeSet};

use crate::calendar::Date;
use crate::garden::{ClassAt, Garden, IngredientAt, Team};
use crate::growth::Effort;
use crate::plan::StepKind;

use super::candidate::Candidate;
use super::room::{SessionOf, crowded_sessions, fullest_days, greatest_use};

/// What counts when candidates are compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// Ready years and amounts, and what they take of beds, shelf and sessions.
    Harvest,
    /// All that, and slack, children, care and waiting.
    Everything,
}

/// What is compared, and where something can run short.
struct Tight {
    scope: Scope,
    /// Days on which flats can run short, in order.
    shelf_days: Vec<usize>,
    /// Ingredients with the teams in whose sessions another planting may have its steps.
    sessions: BTreeSet<(IngredientAt, Team)>,
    /// Sessions that can be too short; `None` if every session counts, for a second step in it does.
    crowded: Option<BTreeSet<SessionOf>>,
}

/// The candidates that no other makes needless, in their order.
pub fn keep_best(garden: &Garden, all: Vec<Candidate>, scope: Scope) -> Vec<Candidate> {
    let tight = Tight::of(garden, &all, scope);
    // Moved, not copied: there can be tens of thousands.
    let mut growers: BTreeMap<(IngredientAt, Team), Vec<Candidate>> = BTreeMap::new();
    for c in all {
        growers.entry((c.ingredient, c.team)).or_default().push(c);
    }
    let mut kept = Vec::new();
    let teams = |at: IngredientAt| garden[at].teams.iter().map(move |team| (at, *team));
    for grown_by in garden.ingredient_positions().flat_map(teams) {
        let own = growers.remove(&grown_by).unwrap_or_default().into_iter();
        let mut own: Vec<(Candidate, Vec<Session>)> = own
            .map(|c| {
                let work = match tight.sessions.contains(&grown_by) {
                    true => sessions(&c, tight.crowded.as_ref()),
                    false => Vec::new(),
                };
                (c, work)
            })
            .collect();
        own.sort_by_key(|(c, _)| {
            (
                std::cmp::Reverse(c.ready.len()),
                c.fragile,
                c.by_others,
                c.gaps.len(),
                c.idle_weeks,
            )
        });
        let mut best: Vec<(Candidate, Vec<Session>)> = Vec::new();
        for (candidate, work) in own {
            if !best
                .iter()
                .any(|(b, b_work)| tight.serves(b, &candidate) && no_more_work(b_work, &work))
            {
                best.push((candidate, work));
            }
        }
        kept.extend(best.into_iter().map(|(c, _)| c));
    }
    kept
}

type Session = ((ClassAt, Date, StepKind), Effort);

/// The sessions that a candidate uses, if they are among some, sorted, with the work in them.
fn sessions(candidate: &Candidate, some: Option<&BTreeSet<SessionOf>>) -> Vec<Session> {
    let tasks = candidate.tasks.iter();
    let counts = |session| some.is_none_or(|some| some.contains(&session));
    let mut all: Vec<Session> = tasks
        .filter(|t| counts((t.class, t.date)))
        .map(|t| ((t.class, t.date, t.kind), t.effort))
        .collect();
    all.sort_unstable_by_key(|(session, _)| *session);
    all
}

/// True if `a` uses no session that `b` does not use, and none of them for more work.
fn no_more_work(a: &[Session], b: &[Session]) -> bool {
    a.iter().all(|(session, work)| {
        let same = b.binary_search_by_key(session, |(session, _)| *session);
        same.is_ok_and(|k| work.is_within(&b[k].1))
    })
}

/// True if `a` is at least as good as `b` for the aims after amounts.
fn serves_small_aims(a: &Candidate, b: &Candidate) -> bool {
    a.fragile <= b.fragile
        && a.by_others <= b.by_others
        && a.idle_weeks <= b.idle_weeks
        && a.gaps.iter().all(|gap| b.gaps.contains(gap))
}

/// True if `a` can stand wherever `b` stands, and no longer. All days count: a planting keeps
/// its strips, so one more day can be in the way even where strips seem plenty on that day.
fn place_serves(a: &Candidate, b: &Candidate) -> bool {
    let within = b.bed_days.0 <= a.bed_days.0 && a.bed_days.1 <= b.bed_days.1;
    b.plots.is_empty() || (a.plots.covers(b.plots) && within)
}

impl Tight {
    fn of(garden: &Garden, all: &[Candidate], scope: Scope) -> Self {
        let short_of_flats = |day: &usize| {
            let cold = greatest_use(garden, all, |c| c.greatest_flats(*day));
            let warm = greatest_use(garden, all, |c| c.greatest_warm_flats(*day));
            cold > garden.shelf.flats || warm > garden.shelf.warm_flats
        };
        let days = fullest_days(all).into_iter();
        Self {
            scope,
            shelf_days: days.filter(short_of_flats).collect(),
            sessions: sharing(garden, all),
            crowded: match scope {
                Scope::Harvest => Some(crowded_sessions(garden, all)),
                Scope::Everything => None,
            },
        }
    }

    /// True if `a` is at least as good as `b`, sessions aside.
    fn serves(&self, a: &Candidate, b: &Candidate) -> bool {
        a.ready.covers(&b.ready)
            && a.given == b.given
            && a.moves.dates <= b.moves.dates
            && a.moves.days <= b.moves.days
            && (self.scope == Scope::Harvest || serves_small_aims(a, b))
            && self.amounts_serve(a, b)
            && place_serves(a, b)
            && self.shelf_serves(a, b)
    }

    /// True if every amount of `b` can be had of `a` on the same strips.
    fn amounts_serve(&self, a: &Candidate, b: &Candidate) -> bool {
        let (x, y) = (&a.amounts, &b.amounts);
        x.block == y.block
            && x.blocks.0 <= y.blocks.0
            && x.blocks.1 >= y.blocks.1
            && x.low == y.low
            && x.expected == y.expected
    }

    /// True if `a` never takes more flats than `b` on a day on which they can run short.
    fn shelf_serves(&self, a: &Candidate, b: &Candidate) -> bool {
        let Some(stands) = a.shelf else { return true };
        let days = self.shelf_days.iter().copied();
        days.filter(|day| stands.sown <= *day && *day <= stands.out)
            .all(|day| {
                let warm = stands.warm_on(day) <= b.shelf.is_some_and(|s| s.warm_on(day));
                warm && a.amounts.levels.iter().all(|level| {
                    let flats_of_b = b
                        .shelf
                        .zip(b.amounts.level(level.up_to.min(b.amounts.blocks.1)));
                    stands.flats_on(day, level.sown, level.kept)
                        <= flats_of_b.map_or(0, |(s, l)| s.flats_on(day, l.sown, l.kept))
                })
            })
    }
}

/// Ingredients, with their teams, that have a session that another planting may use too.
fn sharing(garden: &Garden, all: &[Candidate]) -> BTreeSet<(IngredientAt, Team)> {
    let mut classes: BTreeMap<(IngredientAt, Team), BTreeSet<ClassAt>> = BTreeMap::new();
    for c in all {
        let of = classes.entry((c.ingredient, c.team)).or_default();
        of.extend(c.tasks.iter().map(|t| t.class));
    }
    let apart = garden.each_grade_grows_one();
    let shared = |(at, team): &(IngredientAt, Team), own: &BTreeSet<ClassAt>| {
        let others = classes
            .iter()
            .filter(|((other, by), _)| other != at && !(apart && by == team));
        garden[*at].most_plantings() > 1 || others.into_iter().any(|(_, c)| !c.is_disjoint(own))
    };
    let sharing = classes.iter().filter(|(of, own)| shared(of, own));
    sharing.map(|(of, _)| *of).collect()
}
