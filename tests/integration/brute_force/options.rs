//! What may be planted of one ingredient: every choice of plantings and block counts, with
//! what it gives and what it takes. Nothing here comes from the program's model; the raw list
//! of candidates is taken as facts.

use std::collections::BTreeMap;

use tureen::calendar::Date;
use tureen::candidates::{Candidate, Candidates};
use tureen::garden::{ClassAt, Garden, IngredientAt, Method, Source};
use tureen::growth::need;

/// A planting with its number of blocks.
#[derive(Debug, Clone, Copy)]
pub struct Choice<'a> {
    pub candidate: &'a Candidate,
    pub blocks: u32,
}

/// All plantings of one ingredient, with their sums.
#[derive(Debug, Clone)]
pub struct Plantings<'a> {
    pub choices: Vec<Choice<'a>>,
    /// Per weather year: it is ready.
    pub ready: Vec<bool>,
    /// Share of the target at low and at expected yield, at most 1.
    pub low_share: f64,
    pub expected_share: f64,
    pub takes: Takes,
}

/// What plantings take of the school, added up.
#[derive(Debug, Clone, Default)]
pub struct Takes {
    /// Per week: flats on the shelf, and on the mat.
    pub flats: Vec<u32>,
    pub warm: Vec<u32>,
    /// Per session: steps and minutes.
    pub sessions: BTreeMap<(ClassAt, Date), (u32, f64)>,
    /// Gaps for which someone must be found.
    pub gaps: Vec<bool>,
    pub fragile: u32,
    pub by_others: u32,
    /// Weeks too old, and plantings.
    pub untidy: u32,
}

impl Takes {
    pub fn nothing(garden: &Garden) -> Self {
        let weeks = garden.horizon().weeks();
        Self {
            flats: vec![0; weeks],
            warm: vec![0; weeks],
            gaps: vec![false; garden.gaps().len()],
            ..Self::default()
        }
    }

    /// What a single planting takes.
    fn of(garden: &Garden, choice: &Choice<'_>) -> Self {
        let Choice { candidate, blocks } = *choice;
        let mut takes = Self::nothing(garden);
        let ingredient = &garden[candidate.ingredient];
        let plants = blocks * candidate.amounts.block.plants;
        let children = garden.children_of(ingredient.grade);
        if let Some(shelf) = candidate.shelf {
            let need = need(ingredient, Method::Indoor, children, plants);
            for week in shelf.sown..=shelf.out {
                takes.flats[week] = match week {
                    w if w < shelf.potted.0 => need.flats_sown,
                    w if w > shelf.potted.1 => need.flats_kept,
                    _ => need.flats_sown.max(need.flats_kept),
                };
                if shelf.warm_until.is_some_and(|until| week <= until) {
                    takes.warm[week] = need.flats_sown;
                }
            }
        }
        for task in &candidate.tasks {
            let session = takes.sessions.entry((task.class, task.date)).or_default();
            session.0 += 1;
            session.1 += task.effort.minutes(plants).0;
        }
        for gap in &candidate.gaps {
            takes.gaps[*gap] = true;
        }
        takes.fragile = candidate.fragile;
        takes.by_others = candidate.by_others;
        takes.untidy = candidate.late_weeks + 1;
        takes
    }

    pub fn and(&self, other: &Self) -> Self {
        let mut both = self.clone();
        for (mine, theirs) in both.flats.iter_mut().zip(&other.flats) {
            *mine += theirs;
        }
        for (mine, theirs) in both.warm.iter_mut().zip(&other.warm) {
            *mine += theirs;
        }
        for (session, (steps, minutes)) in &other.sessions {
            let mine = both.sessions.entry(*session).or_default();
            mine.0 += steps;
            mine.1 += minutes;
        }
        for (mine, theirs) in both.gaps.iter_mut().zip(&other.gaps) {
            *mine |= theirs;
        }
        both.fragile += other.fragile;
        both.by_others += other.by_others;
        both.untidy += other.untidy;
        both
    }

    /// True if shelf, mat and lessons suffice.
    pub fn fits(&self, garden: &Garden) -> bool {
        let in_time = |(session, (_, minutes)): (&(ClassAt, Date), &(u32, f64))| {
            *minutes <= garden.session_minutes(session.0, session.1).0 + 1e-6
        };
        self.flats.iter().all(|n| *n <= garden.shelf.flats)
            && self.warm.iter().all(|n| *n <= garden.shelf.warm_flats)
            && self.sessions.iter().all(in_time)
    }

    /// Second and later steps in one session.
    pub fn second_steps(&self) -> u32 {
        self.sessions.values().map(|(steps, _)| steps - 1).sum()
    }

    pub fn unattended_days(&self, garden: &Garden) -> u32 {
        let gaps = garden.gaps().into_iter().zip(&self.gaps);
        gaps.filter(|(_, used)| **used).map(|(gap, _)| gap.unattended_days()).sum()
    }
}

/// All choices of plantings that put an ingredient into the pot by themselves, beds aside;
/// `None` if there are more than `most`.
pub fn all<'a>(
    garden: &Garden,
    candidates: &'a Candidates,
    at: IngredientAt,
    most: usize,
) -> Option<Vec<Plantings<'a>>> {
    let own: Vec<&Candidate> = candidates.all.iter().filter(|c| c.ingredient == at).collect();
    let plantings = match garden[at].source {
        // What stands in a bed is harvested once.
        Source::Growing(_) => 1,
        Source::Sown | Source::Patch(_) => garden[at].max_sowings,
    };
    let mut found = Vec::new();
    let mut open = vec![(Vec::new(), Takes::nothing(garden), 0)];
    while let Some((choices, takes, next)) = open.pop() {
        if found.len() + open.len() > most {
            return None;
        }
        if choices.len() < plantings as usize {
            for (k, candidate) in own.iter().enumerate().skip(next) {
                for blocks in candidate.amounts.blocks.0..=candidate.amounts.blocks.1 {
                    let choice = Choice { candidate, blocks };
                    let takes = takes.and(&Takes::of(garden, &choice));
                    if takes.fits(garden) {
                        let mut choices: Vec<Choice<'a>> = choices.clone();
                        choices.push(choice);
                        open.push((choices, takes, k + 1));
                    }
                }
            }
        }
        found.extend(in_the_pot(garden, candidates, at, choices, takes));
    }
    Some(found)
}

/// The plantings, if they are ready in enough weather years.
fn in_the_pot<'a>(
    garden: &Garden,
    candidates: &Candidates,
    at: IngredientAt,
    choices: Vec<Choice<'a>>,
    takes: Takes,
) -> Option<Plantings<'a>> {
    let target = garden[at].target(garden.feast.portions).0;
    let least = target * garden[at].least_share.0;
    let low = |c: &Choice<'_>| c.candidate.amounts.low.0 * f64::from(c.blocks);
    let expected = |c: &Choice<'_>| c.candidate.amounts.expected.0 * f64::from(c.blocks);
    let ready: Vec<bool> = (0..candidates.years)
        .map(|year| {
            let there = choices.iter().filter(|c| c.candidate.ready.has(year));
            there.map(low).sum::<f64>() >= least - 1e-9
        })
        .collect();
    let years = ready.iter().filter(|ready| **ready).count();
    (years >= candidates.least_ready_years() as usize).then(|| Plantings {
        ready,
        low_share: (choices.iter().map(low).sum::<f64>() / target).min(1.0),
        expected_share: (choices.iter().map(expected).sum::<f64>() / target).min(1.0),
        takes,
        choices,
    })
}
