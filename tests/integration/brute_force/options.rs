//! What may be planted of one ingredient: every choice of plantings and block counts, with
//! what it gives and what it takes. Nothing here comes from the program's model; the raw list
//! of candidates is taken as facts.

use chrono::Datelike;
use tureen::calendar::{Date, plus_days};
use tureen::candidates::{Candidate, Thinning};
use tureen::garden::{Former, IngredientAt, Source, Team};

use super::season;
use super::takes::{Choice, School, Takes};
use crate::support::thinning::Rows;

/// All plantings of one ingredient, with their sums.
#[derive(Debug, Clone)]
pub struct Plantings<'a> {
    pub choices: Vec<Choice<'a>>,
    /// Who grows them all.
    pub team: Team,
    /// The weather years in which it is ready, as bits, and how many they are.
    pub ready: u64,
    pub years: f64,
    /// Share of the target at low and at expected yield, at most 1.
    pub low_share: f64,
    pub expected_share: f64,
    pub takes: Takes,
}

/// True if every plot on which something new may stand belongs to a grade of its team, or to nobody, and is free of what
/// stood there for no ingredient, and of its family.
fn may_stand_there(candidate: &Candidate, school: &School<'_>) -> bool {
    let garden = school.garden;
    let Some(comes) = candidate.steps.into_bed() else {
        return true;
    };
    let rotation = &garden[candidate.ingredient].crop.rotation;
    candidate.plots.iter().all(|plot| {
        let plot = &school.candidates[plot];
        let of = &garden[plot.bed].of;
        let former = garden.former.iter();
        let mut here = former.filter(|f| f.bed == plot.bed && f.strips.meets(plot.strips));
        let left = |f: &Former| {
            let passed = (comes.year() - f.cleared.year()) as u32;
            let rested = plus_days(f.cleared, f.rest_days.into()) <= comes;
            let other = f.family != rotation.family || rotation.years_hard == 0;
            rested && (other || passed > rotation.years_hard)
        };
        let climbs = garden[candidate.ingredient].crop.needs.trellis;
        let own = of.is_empty() || candidate.team.grades().any(|grade| of.contains(&grade));
        own && (climbs || !garden[plot.bed].along_trellis) && here.all(left)
    })
}

/// True if a planting may stand on its plots, is thinned in time, and is ready in a tenth of the years and in one.
fn keeps_by_itself(candidate: &Candidate, school: &School<'_>, rows: &Rows<'_>) -> bool {
    if candidate.given.is_some() {
        // It stands there, whatever speaks against it.
        return true;
    }
    if !may_stand_there(candidate, school) {
        return false;
    }
    let ready = candidate.ready.len() as usize;
    let steps = &candidate.steps;
    let hoped_for = ready > 0 && ready * 10 >= school.candidates.years;
    let (Some(sow), Some(thin)) = (&steps.sow, &steps.thin) else {
        return hoped_for;
    };
    let thinned: Vec<Date> = match thin {
        Thinning::Round(round) => round.visits.iter().map(|v| v.1).collect(),
        Thinning::Adult(day) | Thinning::Families(day) => vec![*day],
    };
    let mut plots = candidate.plots.iter();
    let bed = school.candidates[plots.next().unwrap()].bed;
    let parts = 0..sow.visits.len().max(thinned.len());
    let mut days = parts.map(|j| (sow.day_of_part(j), thinned[j % thinned.len()]));
    let picked = steps.picks[0].first();
    let in_time = days
        .all(|(sown, thinned)| rows.in_time((candidate.ingredient, bed), [sown, thinned, picked]));
    in_time && hoped_for
}

/// How many plantings of an ingredient there may be.
fn plantings_of(school: &School<'_>, at: IngredientAt) -> usize {
    let ingredient = &school.garden[at];
    match ingredient.source {
        // What stands already is harvested once.
        Source::Begun(_) | Source::Patch(_) => 1,
        Source::Sown => ingredient.max_sowings as usize,
    }
}

/// All choices of plantings that put an ingredient into the pot by themselves, beds aside,
/// those that are ready in most years first; `None` if more than `most` have to be looked at.
pub fn all<'a>(school: &School<'a>, at: IngredientAt, most: usize) -> Option<Vec<Plantings<'a>>> {
    let plantings = plantings_of(school, at);
    let rows = Rows::of(school.garden);
    // One planting of each candidate, with every number of blocks.
    let single: Vec<Vec<(Choice<'a>, Takes)>> = school
        .candidates
        .all
        .iter()
        .filter(|c| c.ingredient == at && keeps_by_itself(c, school, &rows))
        .map(|candidate| {
            let (fewest, most) = candidate.amounts.blocks;
            (fewest..=most)
                .map(|blocks| Choice { candidate, blocks })
                .map(|choice| (choice, school.takes(&choice)))
                .collect()
        })
        .collect();
    let mut found = Vec::new();
    let mut open = vec![(Vec::new(), school.nothing(), 0)];
    let mut looked_at = 0;
    while let Some((choices, takes, next)) = open.pop() {
        looked_at += 1;
        if looked_at + open.len() > most {
            return None;
        }
        for (k, amounts) in single.iter().enumerate().skip(next) {
            let one_team = |choice: &Choice<'_>| {
                let mut others = choices.iter();
                others.all(|other: &Choice<'_>| other.candidate.team == choice.candidate.team)
            };
            let amounts = amounts.iter().filter(|(choice, _)| one_team(choice));
            for (choice, more) in amounts.filter(|_| choices.len() < plantings) {
                if let Some(takes) = school.both(&takes, more) {
                    open.push(([&choices[..], &[*choice]].concat(), takes, k + 1));
                }
            }
        }
        found.extend(in_the_pot(school, at, choices, takes));
    }
    found.sort_by(|a, b| {
        (b.years, b.low_share)
            .partial_cmp(&(a.years, a.low_share))
            .unwrap()
    });
    Some(found)
}

/// All choices of every ingredient; `None` if one has too many.
pub fn of_each<'a>(school: &School<'a>, most: usize) -> Option<Vec<Vec<Plantings<'a>>>> {
    let ingredients = school.garden.ingredient_positions();
    ingredients.map(|at| all(school, at, most)).collect()
}

/// The plantings, if they are ready in enough weather years.
fn in_the_pot<'a>(
    school: &School<'a>,
    at: IngredientAt,
    choices: Vec<Choice<'a>>,
    takes: Takes,
) -> Option<Plantings<'a>> {
    let team = choices.first()?.candidate.team;
    let target = school.garden[at].target(school.garden.feast.portions).0;
    let least = target * school.garden[at].least_share.0;
    let low = |c: &Choice<'_>| c.candidate.amounts.low.0 * f64::from(c.blocks);
    let expected = |c: &Choice<'_>| c.candidate.amounts.expected.0 * f64::from(c.blocks);
    let enough = |year: &usize| {
        let there = choices.iter().filter(|c| c.candidate.ready.has(*year));
        there.map(low).sum::<f64>() >= least - 1e-9
    };
    let too_little = choices.iter().map(low).sum::<f64>() < least - 1e-9;
    if too_little || !season::goes_on(school.garden, at, &choices) {
        return None;
    }
    let ready = (0..school.candidates.years)
        .filter(enough)
        .fold(0, |set: u64, year| set | 1 << year);
    let begun = choices.iter().all(|c| c.candidate.given.is_some());
    (begun || ready.count_ones() >= school.candidates.least_ready_years()).then(|| Plantings {
        ready,
        years: f64::from(ready.count_ones()),
        low_share: (choices.iter().map(low).sum::<f64>() / target).min(1.0),
        expected_share: (choices.iter().map(expected).sum::<f64>() / target).min(1.0),
        takes,
        team,
        choices,
    })
}
