//! Repairs of a project that has no plan: for each kind of change the smallest that is enough
//! by itself, or, where none is, several together. Each is made, planned and checked.

use rayon::prelude::*;

use crate::catalogue::Catalogue;
use crate::checker::CheckedPlan;
use crate::garden::{Garden, IngredientAt};
use crate::growth::{Block, need, widest_rows};
use crate::model::Possible;
use crate::project::Change;

use super::kind::Kind;
use super::ladder::{self, Ladder, PARTS, Rung};
use super::trial::{Trial, Workbench};

/// Why a project has no plan, and what would give it one.
#[derive(Debug, Clone, PartialEq)]
pub struct Diagnosis {
    /// Ingredients that cannot be in the pot, even each by itself.
    pub hopeless: Vec<String>,
    /// If there are none: ingredients that cannot be in the pot together.
    pub conflict: Vec<String>,
    /// True if it is proved that any fewer of those in conflict can be.
    pub conflict_is_least: bool,
    /// Changes that are enough, each by itself: one of a kind and thing, the cheapest kind first.
    pub repairs: Vec<Repair>,
    /// Several changes that are enough together, where no single one is, or where each that is
    /// weighs more than the heaviest of them.
    pub together: Option<Repair>,
    /// True if the time ran out before all was tried.
    pub cut_short: bool,
}

/// Changes that give the project a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Repair {
    /// What is changed.
    pub kinds: Vec<Kind>,
    /// The changed project and its plan.
    pub trial: Trial,
}

impl Repair {
    /// What its heaviest change asks of a school.
    fn weight(&self) -> u32 {
        self.kinds.iter().map(Kind::weight).max().unwrap_or(0)
    }
}

/// Other crops that are told of for one ingredient.
const MOST_CROPS: usize = 3;
/// More sets of ingredients of one size than this are not tried one by one.
const MOST_SETS: usize = 150;

impl Workbench<'_> {
    /// Looks for repairs of a project that has no plan. Half of the time goes to what might help
    /// and half to planning it and to the heart of the matter.
    #[must_use]
    pub fn diagnose(&self, garden: &Garden, catalogue: &Catalogue) -> Diagnosis {
        let climbing = self.with_part_of_the_time(2);
        let rungs = climbing.rungs(garden, catalogue);
        let unclimbed = climbing.options.deadline.is_over();
        let mut repairs: Vec<Repair> = rungs
            .into_par_iter()
            .filter_map(|rung| self.repaired(vec![rung]))
            .collect();
        repairs.sort_by_key(Repair::weight);
        let hopeless = self.hopeless(garden);
        let (conflict, conflict_is_least) = match hopeless.is_empty() {
            true => self.conflict(garden),
            false => (Vec::new(), false),
        };
        let name = |at: &IngredientAt| garden[*at].name.clone();
        // Where one change helps several ingredients, it is seldom the smallest for any of them.
        let together = match repairs.first() {
            None => self.several(garden, &hopeless, catalogue),
            Some(single) if hopeless.len() > 1 => self
                .several(garden, &hopeless, catalogue)
                .filter(|several| several.weight() < single.weight()),
            Some(_) => None,
        };
        Diagnosis {
            conflict: conflict.iter().map(name).collect(),
            conflict_is_least,
            hopeless: hopeless.iter().map(name).collect(),
            together,
            repairs,
            cut_short: self.options.deadline.is_over() || unclimbed,
        }
    }

    /// The rungs that help, of all ladders.
    fn rungs(&self, garden: &Garden, catalogue: &Catalogue) -> Vec<Rung> {
        let mut ladders = Vec::new();
        for at in garden.ingredient_positions() {
            // Where not even leaving it out helps, no change of it does.
            let rest = garden.with_ingredients(|other| other != at);
            if self.possible(&rest) == Possible::Yes {
                ladders.extend(ladder::of_ingredient(garden, at, catalogue));
            }
        }
        ladders.extend(ladder::around_the_dish(garden));
        ladders
            .par_iter()
            .flat_map_iter(|ladder| self.climb(ladder))
            .collect()
    }

    /// The lowest rung that helps; of crops, which have no order, the first few.
    fn climb(&self, ladder: &Ladder) -> Vec<Rung> {
        let helps = |changes: &[Change]| self.helps(changes);
        match ladder.is_about_crops() {
            true => ladder.all_that_help(&helps, MOST_CROPS),
            false => ladder.lowest(&helps).into_iter().collect(),
        }
    }

    /// Plans and checks the project with some rungs taken. What is ready in none of the years that count is no repair.
    fn repaired(&self, rungs: Vec<Rung>) -> Option<Repair> {
        let changes = rungs.iter().flat_map(|r| r.changes.clone()).collect();
        let trial = self.trial(&self.needed(changes)).ok()?;
        let ready = |checked: &CheckedPlan| match checked.unseen() {
            Some(unseen) => unseen.dish,
            None => checked.replay().whole_dish_years(),
        };
        let helps = trial.outcome.as_ref().is_ok_and(|plan| ready(plan) > 0);
        helps.then(|| Repair {
            kinds: rungs.into_iter().map(|rung| rung.kind).collect(),
            trial,
        })
    }

    /// The changes without those that change nothing: a key taken out that is not in the file.
    fn needed(&self, mut changes: Vec<Change>) -> Vec<Change> {
        let Ok(changed) = (self.load)(&changes) else {
            return changes;
        };
        for at in (0..changes.len()).rev() {
            let mut fewer = changes.clone();
            fewer.remove(at);
            if (self.load)(&fewer).is_ok_and(|garden| garden == changed) {
                changes = fewer;
            }
        }
        changes
    }

    /// Ingredients that cannot be in the pot, even if each were the only one.
    fn hopeless(&self, garden: &Garden) -> Vec<IngredientAt> {
        let alone = |at: &IngredientAt| {
            let only = garden.with_ingredients(|other| other == *at);
            // What has begun stands beside each, and may itself be what cannot be.
            let beside = garden.without(*at).with_ingredients(|_| false);
            self.possible(&only) == Possible::No
                && (beside.ingredients.is_empty() || self.possible(&beside) != Possible::No)
        };
        let all: Vec<IngredientAt> = garden.ingredient_positions().collect();
        all.into_par_iter().filter(alone).collect()
    }

    /// Ingredients that cannot be in the pot together: the first set of the smallest size for
    /// which that is proved, in the order of the dish; and whether all smaller sets are proved
    /// to be possible. All ingredients, where no smaller set was found or there are too many.
    fn conflict(&self, garden: &Garden) -> (Vec<IngredientAt>, bool) {
        let all: Vec<IngredientAt> = garden.ingredient_positions().collect();
        let mut known = true;
        for size in 1..all.len() {
            let sets = subsets(&all, size);
            if sets.len() > MOST_SETS {
                return (all, false);
            }
            let found: Vec<Possible> = sets
                .par_iter()
                .map(|set| {
                    let few = garden.with_ingredients(|at| set.contains(&at));
                    self.possible(&few)
                })
                .collect();
            let impossible = found.iter().position(|found| *found == Possible::No);
            if let Some(set) = impossible.and_then(|at| sets.get(at)) {
                return (set.clone(), known);
            }
            known &= !found.contains(&Possible::Unknown);
        }
        (all, known)
    }

    /// Several changes that help together: what each hopeless ingredient needs beside fewer
    /// grams, then fewer grams of all. What is changed around the dish serves more than one of them; where that
    /// gives no plan, each is changed by itself.
    fn several(
        &self,
        garden: &Garden,
        hopeless: &[IngredientAt],
        catalogue: &Catalogue,
    ) -> Option<Repair> {
        let own = |at| ladder::of_ingredient(garden, at, catalogue);
        let all = |at| [own(at), ladder::around_the_dish(garden)].concat();
        let several = self.several_of(hopeless, &all);
        several.or_else(|| match hopeless.is_empty() {
            true => None,
            false => self.several_of(hopeless, &own),
        })
    }

    /// The same, each ingredient by its own ladders.
    fn several_of(
        &self,
        hopeless: &[IngredientAt],
        ladders: &dyn Fn(IngredientAt) -> Vec<Ladder>,
    ) -> Option<Repair> {
        let (mut rungs, mut taken, mut bought) = (Vec::new(), Vec::new(), Vec::new());
        for at in hopeless {
            // What helps one may help the next as well.
            if self.is_possible_alone(*at, &taken) {
                continue;
            }
            let rung = self.alone(*at, &taken, ladders(*at))?;
            match rung.kind {
                Kind::FewerGrams { .. } => {}
                // What is bought is no ingredient of the file: those after it move up.
                Kind::Bought { .. } => bought.push(rung),
                _ => {
                    taken.extend(rung.changes.clone());
                    rungs.push(rung);
                }
            }
        }
        taken.extend(bought.iter().flat_map(|r| r.changes.clone()));
        rungs.extend(bought);
        if !self.helps(&taken) {
            for rung in self.fewer_grams_of_all(&taken)? {
                taken.extend(rung.changes.clone());
                rungs.push(rung);
            }
        }
        self.repaired(rungs)
    }

    /// The cheapest rung that, beside what is taken, makes an ingredient possible if it were the only one.
    fn alone(&self, at: IngredientAt, taken: &[Change], mut ladders: Vec<Ladder>) -> Option<Rung> {
        let helps = |changes: &[Change]| {
            let in_time = !self.options.deadline.is_over();
            in_time && self.is_possible_alone(at, &[taken, changes].concat())
        };
        ladders.sort_by_key(Ladder::weight);
        let bought = ladders.pop()?;
        let lowest = ladders.iter().find_map(|ladder| ladder.lowest(&helps));
        lowest.or_else(|| bought.rungs.into_iter().next())
    }

    /// True if an ingredient can be in the pot as the only one of the changed project.
    fn is_possible_alone(&self, at: IngredientAt, changes: &[Change]) -> bool {
        (self.load)(changes).is_ok_and(|changed| {
            let only = changed.with_ingredients(|other| other == at);
            self.possible(&only) == Possible::Yes
        })
    }

    /// With some changes made: every ingredient has the part of its grams that all can have
    /// alike, and one after the other, those first of which a strip of bed gives most, as much
    /// more as will do.
    fn fewer_grams_of_all(&self, made: &[Change]) -> Option<Vec<Rung>> {
        let garden = (self.load)(made).ok()?;
        let all: Vec<IngredientAt> = garden.ingredient_positions().collect();
        let rung = |at: IngredientAt, part: u32| ladder::fewer_grams(&garden, at, part);
        let helps = |parts: &[u32]| {
            let rungs = all.iter().zip(parts).map(|(at, part)| rung(*at, *part));
            let changes = made.iter().cloned().chain(rungs.flat_map(|r| r.changes));
            self.helps(&changes.collect::<Vec<_>>())
        };
        let same = |part: u32| vec![part; all.len()];
        // Parts are counted down from the whole.
        let most = |holds: &dyn Fn(u32) -> bool| {
            PARTS - ladder::first_that(PARTS as usize, |n| holds(PARTS - n as u32)) as u32
        };
        let alike = most(&|part| helps(&same(part)));
        let mut parts = same(alike);
        if !helps(&parts) {
            return None;
        }
        let mut order: Vec<usize> = (0..all.len()).collect();
        order.sort_by(|a, b| {
            let gives = |n: &usize| {
                all.get(*n)
                    .map_or(0.0, |at| kilograms_a_strip(&garden, *at))
            };
            gives(b).total_cmp(&gives(a))
        });
        for n in order {
            let with = |part: u32| {
                let mut more = parts.clone();
                more[n] = part.max(parts[n]);
                more
            };
            parts = with(most(&|part| helps(&with(part))));
        }
        let fewer = all.iter().zip(&parts).filter(|(_, part)| **part < PARTS);
        Some(fewer.map(|(at, part)| rung(*at, *part)).collect())
    }
}

/// Usable kilograms that a strip of the widest bed gives in a poor year.
fn kilograms_a_strip(garden: &Garden, at: IngredientAt) -> f64 {
    let ingredient = &garden[at];
    let rows = widest_rows(garden, &ingredient.crop);
    let block = rows.and_then(|rows| Block::of(&ingredient.crop, rows));
    let method = ingredient.methods.first();
    block.zip(method).map_or(0.0, |(block, method)| {
        need(ingredient, *method, 0, block.plants).low.0 / f64::from(block.strips)
    })
}

/// All subsets of a size, in order.
fn subsets(all: &[IngredientAt], size: usize) -> Vec<Vec<IngredientAt>> {
    match (size, all) {
        (0, _) => vec![Vec::new()],
        (_, []) => Vec::new(),
        (_, [first, rest @ ..]) => {
            let mut with = subsets(rest, size - 1);
            for subset in &mut with {
                subset.insert(0, *first);
            }
            with.extend(subsets(rest, size));
            with
        }
    }
}
