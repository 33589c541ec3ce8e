//! What plantings take of a school (flats, lessons, people in gaps), added up and held
//! against what there is.

use tureen::calendar::Date;
use tureen::candidates::{Candidate, Candidates};
use tureen::garden::{ClassAt, Garden, Method, Reached, Source, Spot};
use tureen::growth::need;

use super::season;

/// A planting with its number of blocks.
#[derive(Debug, Clone, Copy)]
pub struct Choice<'a> {
    pub candidate: &'a Candidate,
    pub blocks: u32,
}

/// A garden with what is asked of it again and again.
pub struct School<'a> {
    pub garden: &'a Garden,
    pub candidates: &'a Candidates,
    /// The days on which flats are sown or potted up: on no other day do they become more.
    days: Vec<usize>,
    /// All sessions in which something may be done, and their minutes.
    sessions: Vec<(ClassAt, Date)>,
    minutes: Vec<f64>,
    /// Days without anyone of each gap.
    gap_days: Vec<u32>,
}

impl<'a> School<'a> {
    pub fn new(garden: &'a Garden, candidates: &'a Candidates) -> Self {
        let tasks = candidates.all.iter().flat_map(|c| &c.tasks);
        let mut sessions: Vec<(ClassAt, Date)> = tasks.map(|t| (t.class, t.date)).collect();
        sessions.sort();
        sessions.dedup();
        let shelves = || candidates.all.iter().filter_map(|c| c.shelf);
        let mut days: Vec<usize> = shelves().flat_map(|s| [s.sown, s.potted.0]).collect();
        days.sort_unstable();
        days.dedup();
        let minutes = sessions
            .iter()
            .map(|(class, day)| garden.session_minutes(*class, *day).0);
        Self {
            minutes: minutes.collect(),
            sessions,
            days,
            gap_days: garden
                .gaps()
                .iter()
                .map(|gap| gap.unattended_days())
                .collect(),
            garden,
            candidates,
        }
    }

    pub fn nothing(&self) -> Takes {
        Takes {
            flats: vec![0; self.days.len()],
            warm: vec![0; self.days.len()],
            steps: vec![0; self.sessions.len()],
            minutes: vec![0.0; self.sessions.len()],
            gaps: 0,
            moved: (0, 0),
            fragile: 0,
            by_others: 0,
            untidy: 0,
        }
    }

    /// What a single planting takes.
    pub fn takes(&self, choice: &Choice<'_>) -> Takes {
        let Choice { candidate, blocks } = *choice;
        let mut takes = self.nothing();
        let plants = blocks * candidate.amounts.block.plants;
        if let Some(shelf) = candidate.shelf {
            let [sown, kept] = self.flats(candidate, plants);
            for (k, day) in self.days.iter().enumerate() {
                if !(shelf.sown..=shelf.out).contains(day) {
                    continue;
                }
                takes.flats[k] = match *day {
                    d if d < shelf.potted.0 => sown,
                    d if d > shelf.potted.1 => kept,
                    _ => sown.max(kept),
                };
                if shelf.warm_until.is_some_and(|until| *day <= until) {
                    takes.warm[k] = sown;
                }
            }
        }
        for task in &candidate.tasks {
            let session = self
                .sessions
                .binary_search(&(task.class, task.date))
                .unwrap();
            takes.steps[session] += 1;
            takes.minutes[session] += task.effort.minutes(plants).0;
        }
        takes.gaps = candidate.gaps.iter().fold(0, |gaps, gap| gaps | 1 << gap);
        takes.moved = season::moved(self.garden, candidate);
        takes.fragile = candidate.fragile;
        takes.by_others = candidate.by_others;
        takes.untidy = candidate.idle_weeks + 1;
        takes
    }

    /// Flats before and after potting up. Of seedlings that stand already, all have theirs; as many are potted up
    /// as are planted, and a tenth more.
    fn flats(&self, candidate: &Candidate, plants: u32) -> [u32; 2] {
        let ingredient = &self.garden[candidate.ingredient];
        let Source::Begun(at) = ingredient.source else {
            let children = self.garden.children_of(candidate.team);
            let need = need(ingredient, Method::Indoor, children, plants);
            return [need.flats_sown, need.flats_kept];
        };
        let begun = &self.garden[at];
        let indoor = ingredient.crop.indoor.unwrap();
        let Spot::Shelf { seedlings } = begun.spot else {
            panic!("only what is on the shelf has days there");
        };
        match (begun.reached, indoor.pots_per_flat) {
            (Reached::PottedUp { .. }, Some(pots)) => [seedlings.div_ceil(pots); 2],
            (_, Some(pots)) => {
                let potted = (plants + plants.div_ceil(10)).min(seedlings);
                [
                    seedlings.div_ceil(indoor.cells_per_flat),
                    potted.div_ceil(pots),
                ]
            }
            (_, None) => [seedlings.div_ceil(indoor.cells_per_flat); 2],
        }
    }

    /// What both take together, if shelf, mat and lessons suffice for it.
    pub fn both(&self, one: &Takes, other: &Takes) -> Option<Takes> {
        let shelf = &self.garden.shelf;
        let within = |a: &[u32], b: &[u32], most| a.iter().zip(b).all(|(a, b)| a + b <= most);
        let minutes = one.minutes.iter().zip(&other.minutes);
        let mut in_time = minutes.zip(&self.minutes);
        let suffices = within(&one.flats, &other.flats, shelf.flats)
            && within(&one.warm, &other.warm, shelf.warm_flats)
            && in_time.all(|((a, b), there)| a + b <= there + 1e-6);
        suffices.then(|| one.and(other))
    }

    pub fn unattended_days(&self, takes: &Takes) -> u32 {
        let used = |(k, days): (usize, &u32)| days * u32::from(takes.gaps >> k & 1 == 1);
        self.gap_days.iter().enumerate().map(used).sum()
    }
}

/// What plantings take.
#[derive(Debug, Clone)]
pub struct Takes {
    /// Per such day: flats on the shelf, and on the mat.
    flats: Vec<u32>,
    warm: Vec<u32>,
    /// Per session: steps and minutes.
    steps: Vec<u32>,
    minutes: Vec<f64>,
    /// Gaps for which someone must be found, as bits.
    gaps: u64,
    /// Printed dates that move, and by how many days.
    pub moved: (u32, u32),
    pub fragile: u32,
    pub by_others: u32,
    /// Weeks that seedlings are too old or the harvest waits, and plantings.
    pub untidy: u32,
}

impl Takes {
    fn and(&self, other: &Self) -> Self {
        let sums = |a: &[u32], b: &[u32]| a.iter().zip(b).map(|(a, b)| a + b).collect();
        Self {
            flats: sums(&self.flats, &other.flats),
            warm: sums(&self.warm, &other.warm),
            steps: sums(&self.steps, &other.steps),
            minutes: self
                .minutes
                .iter()
                .zip(&other.minutes)
                .map(|(a, b)| a + b)
                .collect(),
            gaps: self.gaps | other.gaps,
            moved: (self.moved.0 + other.moved.0, self.moved.1 + other.moved.1),
            fragile: self.fragile + other.fragile,
            by_others: self.by_others + other.by_others,
            untidy: self.untidy + other.untidy,
        }
    }

    /// Second and later steps in one session.
    pub fn second_steps(&self) -> u32 {
        self.steps.iter().map(|steps| steps.saturating_sub(1)).sum()
    }
}
