//! All combinations of plantings of all ingredients, and the best of them aim after aim. A
//! branch is left only where what is chosen already breaks a rule, or where not even the best
//! plantings of the other ingredients could reach a held aim or pass the best plan found.

use std::collections::BTreeSet;

use tureen::garden::Team;
use tureen::plan::Aim;

use super::options::Plantings;
use super::takes::{Choice, School, Takes};
use super::{beds, grades, season};

/// Forgiveness for shares; whole aims are compared exactly.
const ROUNDING: f64 = 1e-6;

/// A value that an aim must not fall short of (or pass, where fewer is better).
#[derive(Clone, Copy)]
struct Held {
    aim: Aim,
    value: f64,
}

/// The best that some plantings of an ingredient can do for each aim.
struct Best {
    ready: u64,
    years: f64,
    low_share: f64,
    expected_share: f64,
}

impl Best {
    fn of(ways: &[Plantings<'_>]) -> Self {
        let most = |of: fn(&Plantings<'_>) -> f64| ways.iter().map(of).fold(0.0, f64::max);
        Self {
            ready: ways.iter().fold(0, |set, p| set | p.ready),
            years: most(|p| p.years),
            low_share: most(|p| p.low_share),
            expected_share: most(|p| p.expected_share),
        }
    }
}

/// The search over all combinations.
pub struct Search<'a> {
    school: &'a School<'a>,
    /// Per ingredient: all it may have, and the best of it.
    ways: Vec<(&'a [Plantings<'a>], Best)>,
    /// The teams that may grow each of these ingredients, then those of all others.
    teams: Vec<&'a [Team]>,
    /// How many grades must grow something.
    most_grades: usize,
    held: Vec<Held>,
    nodes: u64,
    most_nodes: u64,
}

/// The search was given up.
#[derive(Debug)]
pub struct TooLarge;

impl<'a> Search<'a> {
    /// The search for plans with the ingredients for which `some` holds in the pot; the others
    /// still have their grades. `ways` are those of all ingredients.
    pub fn new(
        school: &'a School<'a>,
        ways: &'a [Vec<Plantings<'a>>],
        some: impl Fn(usize) -> bool,
        most_nodes: u64,
    ) -> Self {
        let all = || 0..ways.len();
        let teams = |k: usize| school.garden.ingredients[k].teams.as_slice();
        let of_all: Vec<&[Team]> = all().map(teams).collect();
        let (own, others): (Vec<usize>, Vec<usize>) = all().partition(|k| some(*k));
        let best = |k: &usize| (ways[*k].as_slice(), Best::of(&ways[*k]));
        Self {
            school,
            ways: own.iter().map(best).collect(),
            teams: own.iter().chain(&others).map(|k| teams(*k)).collect(),
            most_grades: grades::most(&BTreeSet::new(), &of_all),
            held: Vec::new(),
            nodes: 0,
            most_nodes,
        }
    }

    /// The value of every aim but the first, in order; `None` if nothing keeps the rules.
    pub fn aims(mut self, concession: u32) -> Result<Option<Vec<f64>>, TooLarge> {
        let mut values = Vec::new();
        for aim in Aim::of(self.school.garden).skip(1) {
            let Some(value) = self.best(aim)? else {
                assert!(values.is_empty(), "a held aim was reached before");
                return Ok(None);
            };
            values.push(value);
            let given_back = match aim {
                Aim::WorstIngredient | Aim::AllIngredients | Aim::WholeDish => {
                    season::given_back(self.school.garden, aim, value, concession)
                }
                _ => 0.0,
            };
            self.held.push(Held {
                aim,
                value: value - given_back,
            });
            if aim == Aim::Slack && concession > 0 {
                // Years buy amounts and slack; what these do not need is taken back.
                for aim in [Aim::WorstIngredient, Aim::WholeDish] {
                    let value = self.best(aim)?.expect("a held aim was reached before");
                    self.held.push(Held { aim, value });
                }
            }
        }
        Ok(Some(values))
    }

    /// True if any combination keeps the rules.
    pub fn any(mut self) -> Result<bool, TooLarge> {
        Ok(self.best(Aim::WorstIngredient)?.is_some())
    }

    /// True if any combination keeps the rules and reaches some values of aims.
    pub fn reaches(mut self, values: &[(Aim, f64)]) -> Result<bool, TooLarge> {
        let held = values.iter().map(|(aim, value)| Held {
            aim: *aim,
            value: *value,
        });
        self.held = held.collect();
        self.any()
    }

    /// The best value of an aim among the combinations that keep all rules and held aims.
    fn best(&mut self, aim: Aim) -> Result<Option<f64>, TooLarge> {
        let mut best = None;
        self.choose(aim, &mut Vec::new(), &self.school.nothing(), &mut best)?;
        Ok(best)
    }

    fn choose(
        &mut self,
        aim: Aim,
        chosen: &mut Vec<&'a Plantings<'a>>,
        takes: &Takes,
        best: &mut Option<f64>,
    ) -> Result<(), TooLarge> {
        self.nodes += 1;
        if self.nodes > self.most_nodes {
            return Err(TooLarge);
        }
        let hope = self.hope(aim, chosen, takes);
        let misses = |h: &Held| worse(h.aim, self.hope(h.aim, chosen, takes), h.value);
        if best.is_some_and(|best| !better(aim, hope, best)) || self.held.iter().any(misses) {
            return Ok(());
        }
        let growing = chosen.iter().flat_map(|p| p.team.grades()).collect();
        if grades::most(&growing, &self.teams[chosen.len()..]) < self.most_grades {
            return Ok(());
        }
        let choices: Vec<Choice<'_>> = chosen.iter().flat_map(|p| p.choices.clone()).collect();
        if !beds::hold(self.school, &choices) {
            return Ok(());
        }
        let Some((ways, _)) = self.ways.get(chosen.len()) else {
            *best = Some(hope);
            return Ok(());
        };
        for way in *ways {
            if let Some(takes) = self.school.both(takes, &way.takes) {
                chosen.push(way);
                self.choose(aim, chosen, &takes, best)?;
                chosen.pop();
            }
        }
        Ok(())
    }

    /// The value of an aim if each ingredient that is not chosen yet had its best plantings
    /// for it and took nothing; its very value if all are chosen.
    fn hope(&self, aim: Aim, chosen: &[&Plantings<'_>], takes: &Takes) -> f64 {
        let open = || self.ways[chosen.len()..].iter().map(|(_, best)| best);
        let years = || {
            chosen
                .iter()
                .map(|p| p.years)
                .chain(open().map(|b| b.years))
        };
        let ready = || {
            chosen
                .iter()
                .map(|p| p.ready)
                .chain(open().map(|b| b.ready))
        };
        let low = || {
            chosen
                .iter()
                .map(|p| p.low_share)
                .chain(open().map(|b| b.low_share))
        };
        let expected = || {
            chosen
                .iter()
                .map(|p| p.expected_share)
                .chain(open().map(|b| b.expected_share))
        };
        match aim {
            Aim::InThePot => self.ways.len() as f64,
            Aim::WorstIngredient => years().fold(f64::INFINITY, f64::min),
            Aim::AllIngredients => years().sum(),
            Aim::WholeDish => f64::from(ready().fold(u64::MAX, |all, set| all & set).count_ones()),
            Aim::LeastGrownShare => low().fold(f64::INFINITY, f64::min),
            Aim::ExpectedAmounts => expected().sum(),
            Aim::MovedDates => takes.moved.0.into(),
            Aim::MovedDays => takes.moved.1.into(),
            Aim::Slack => takes.fragile.into(),
            Aim::Children => takes.by_others.into(),
            Aim::UnattendedDays => self.school.unattended_days(takes).into(),
            Aim::Evenness => takes.second_steps().into(),
            Aim::Tidiness => takes.untidy.into(),
        }
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
    if aim.more_is_better() {
        value > other
    } else {
        value < other
    }
}
