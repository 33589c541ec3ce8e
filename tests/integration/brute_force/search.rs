//! All combinations of plantings of all ingredients, and the best of them aim after aim. A
//! branch is left only where what is chosen already breaks a rule, or where not even the best
//! plantings of the other ingredients could reach a held aim or pass the best plan found.

use tureen::candidates::Candidates;
use tureen::garden::Garden;
use tureen::plan::Aim;

use super::beds;
use super::options::{Choice, Plantings, Takes};

/// Forgiveness for shares; whole aims are compared exactly.
const ROUNDING: f64 = 1e-6;

/// A value that an aim must not fall short of (or pass, where fewer is better).
#[derive(Clone, Copy)]
struct Held {
    aim: Aim,
    value: f64,
}

/// The search over all combinations.
pub struct Search<'a> {
    garden: &'a Garden,
    candidates: &'a Candidates,
    /// Per ingredient: all it may have.
    ways: Vec<Vec<Plantings<'a>>>,
    held: Vec<Held>,
    nodes: u64,
    most_nodes: u64,
}

/// The search was given up.
#[derive(Debug)]
pub struct TooLarge;

impl<'a> Search<'a> {
    pub fn new(
        garden: &'a Garden,
        candidates: &'a Candidates,
        ways: Vec<Vec<Plantings<'a>>>,
        most_nodes: u64,
    ) -> Self {
        Self { garden, candidates, ways, held: Vec::new(), nodes: 0, most_nodes }
    }

    /// The value of every aim but the first, in order; `None` if nothing keeps the rules.
    pub fn aims(mut self, concession: u32) -> Result<Option<Vec<f64>>, TooLarge> {
        let mut values = Vec::new();
        for aim in Aim::ALL.into_iter().skip(1) {
            let Some(value) = self.best(aim)? else {
                assert!(values.is_empty(), "a held aim was reached before");
                return Ok(None);
            };
            values.push(value);
            let given_back = match aim {
                Aim::WorstIngredient | Aim::AllIngredients | Aim::WholeDish => concession.into(),
                _ => 0.0,
            };
            self.held.push(Held { aim, value: value - given_back });
        }
        Ok(Some(values))
    }

    /// True if any combination keeps the rules.
    pub fn any(mut self) -> Result<bool, TooLarge> {
        Ok(self.best(Aim::WorstIngredient)?.is_some())
    }

    /// The best value of an aim among the combinations that keep all rules and held aims.
    fn best(&mut self, aim: Aim) -> Result<Option<f64>, TooLarge> {
        let mut best = None;
        let takes = Takes::nothing(self.garden);
        self.choose(aim, &mut Vec::new(), &takes, &mut best)?;
        Ok(best)
    }

    fn choose(
        &mut self,
        aim: Aim,
        chosen: &mut Vec<usize>,
        takes: &Takes,
        best: &mut Option<f64>,
    ) -> Result<(), TooLarge> {
        self.nodes += 1;
        if self.nodes > self.most_nodes {
            return Err(TooLarge);
        }
        let hopeless = self.held.iter().any(|h| worse(h.aim, self.hope(h.aim, chosen, takes), h.value));
        let hope = self.hope(aim, chosen, takes);
        if hopeless || best.is_some_and(|best| !better(aim, hope, best)) {
            return Ok(());
        }
        if !beds::hold(self.garden, self.candidates, &self.choices(chosen)) {
            return Ok(());
        }
        let Some(ways) = self.ways.get(chosen.len()) else {
            *best = Some(hope);
            return Ok(());
        };
        for way in 0..ways.len() {
            let takes = takes.and(&self.ways[chosen.len()][way].takes);
            if takes.fits(self.garden) {
                chosen.push(way);
                self.choose(aim, chosen, &takes, best)?;
                chosen.pop();
            }
        }
        Ok(())
    }

    fn choices(&self, chosen: &[usize]) -> Vec<Choice<'a>> {
        let ways = self.ways.iter().zip(chosen);
        ways.flat_map(|(ways, way)| ways[*way].choices.iter().copied()).collect()
    }

    /// The value of an aim if each ingredient that is not chosen yet had its best plantings
    /// for it; its very value if all are chosen.
    fn hope(&self, aim: Aim, chosen: &[usize], takes: &Takes) -> f64 {
        let made: Vec<&Plantings<'_>> =
            self.ways.iter().zip(chosen).map(|(ways, way)| &ways[*way]).collect();
        let open = &self.ways[chosen.len()..];
        let years = |p: &Plantings<'_>| p.ready.iter().filter(|ready| **ready).count() as f64;
        let most = |ways: &Vec<Plantings<'_>>, of: &dyn Fn(&Plantings<'_>) -> f64| {
            ways.iter().map(of).fold(0.0, f64::max)
        };
        let each = |of: &dyn Fn(&Plantings<'_>) -> f64| -> Vec<f64> {
            let open = open.iter().map(|ways| most(ways, of));
            made.iter().map(|p| of(p)).chain(open).collect()
        };
        let least = |values: Vec<f64>| values.into_iter().fold(f64::INFINITY, f64::min);
        match aim {
            Aim::InThePot => self.ways.len() as f64,
            Aim::WorstIngredient => least(each(&years)),
            Aim::AllIngredients => each(&years).iter().sum(),
            Aim::WholeDish => self.whole_dish(&made, open),
            Aim::LeastGrownShare => least(each(&|p| p.low_share)),
            Aim::ExpectedAmounts => each(&|p| p.expected_share).iter().sum(),
            Aim::Slack => takes.fragile.into(),
            Aim::Children => takes.by_others.into(),
            Aim::UnattendedDays => takes.unattended_days(self.garden).into(),
            Aim::Evenness => takes.second_steps().into(),
            Aim::Tidiness => takes.untidy.into(),
        }
    }

    /// Years in which all that are chosen are ready, and each other one can be.
    fn whole_dish(&self, made: &[&Plantings<'_>], open: &[Vec<Plantings<'_>>]) -> f64 {
        let ready = |year: usize| {
            made.iter().all(|p| p.ready[year])
                && open.iter().all(|ways| ways.iter().any(|p| p.ready[year]))
        };
        (0..self.candidates.years).filter(|year| ready(*year)).count() as f64
    }
}

fn forgiven(aim: Aim) -> f64 {
    if aim.is_whole() { 0.0 } else { ROUNDING }
}

/// True if a value falls short of one that is held.
fn worse(aim: Aim, value: f64, held: f64) -> bool {
    if aim.more_is_better() {
        value < held - forgiven(aim)
    } else {
        value > held + forgiven(aim)
    }
}

/// True if a value passes another.
fn better(aim: Aim, value: f64, other: f64) -> bool {
    if aim.more_is_better() { value > other } else { value < other }
}
