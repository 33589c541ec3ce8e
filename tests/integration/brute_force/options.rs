//! What may be planted of one ingredient: every choice of plantings and block counts, with
//! what it gives and what it takes. Nothing here comes from the program's model; the raw list
//! of candidates is taken as facts.

use tureen::candidates::{Candidate, Thinning};
use tureen::garden::{GradeAt, IngredientAt, Source};

use super::takes::{Choice, School, Takes};

/// All plantings of one ingredient, with their sums.
#[derive(Debug, Clone)]
pub struct Plantings<'a> {
    pub choices: Vec<Choice<'a>>,
    /// The grade that grows them all.
    pub grade: GradeAt,
    /// The weather years in which it is ready, as bits, and how many they are.
    pub ready: u64,
    pub years: f64,
    /// Share of the target at low and at expected yield, at most 1.
    pub low_share: f64,
    pub expected_share: f64,
    pub takes: Takes,
}

/// True if a planting is thinned 14 days after the last sowing at the earliest and 42 after the first
/// at the latest, and is ready in a tenth of the years and in one.
fn keeps_by_itself(candidate: &Candidate, years: usize) -> bool {
    let ready = candidate.ready.len() as usize;
    let steps = &candidate.steps;
    let (Some(sow), Some(thin)) = (&steps.sow, &steps.thin) else {
        return ready > 0 && ready * 10 >= years;
    };
    let (first, last) = match thin {
        Thinning::Round(round) => (round.first(), round.last()),
        Thinning::Adult(day) | Thinning::Families(day) => (*day, *day),
    };
    let in_time = (first - sow.last()).num_days() >= 14 && (last - sow.first()).num_days() <= 42;
    in_time && ready > 0 && ready * 10 >= years
}

/// All choices of plantings that put an ingredient into the pot by themselves, beds aside,
/// those that are ready in most years first; `None` if more than `most` have to be looked at.
pub fn all<'a>(school: &School<'a>, at: IngredientAt, most: usize) -> Option<Vec<Plantings<'a>>> {
    let ingredient = &school.garden[at];
    let plantings = match ingredient.source {
        // What stands already is harvested once.
        Source::Begun(_) | Source::Patch(_) => 1,
        Source::Sown => ingredient.max_sowings as usize,
    };
    // One planting of each candidate, with every number of blocks.
    let single: Vec<Vec<(Choice<'a>, Takes)>> = school
        .candidates
        .all
        .iter()
        .filter(|c| c.ingredient == at && keeps_by_itself(c, school.candidates.years))
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
            let one_grade = |choice: &Choice<'_>| {
                let mut others = choices.iter();
                others.all(|other: &Choice<'_>| other.candidate.grade == choice.candidate.grade)
            };
            let amounts = amounts.iter().filter(|(choice, _)| one_grade(choice));
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
    let grade = choices.first()?.candidate.grade;
    let target = school.garden[at].target(school.garden.feast.portions).0;
    let least = target * school.garden[at].least_share.0;
    let low = |c: &Choice<'_>| c.candidate.amounts.low.0 * f64::from(c.blocks);
    let expected = |c: &Choice<'_>| c.candidate.amounts.expected.0 * f64::from(c.blocks);
    let enough = |year: &usize| {
        let there = choices.iter().filter(|c| c.candidate.ready.has(*year));
        there.map(low).sum::<f64>() >= least - 1e-9
    };
    let ready = (0..school.candidates.years)
        .filter(enough)
        .fold(0, |set: u64, year| set | 1 << year);
    (ready.count_ones() >= school.candidates.least_ready_years()).then(|| Plantings {
        ready,
        years: f64::from(ready.count_ones()),
        low_share: (choices.iter().map(low).sum::<f64>() / target).min(1.0),
        expected_share: (choices.iter().map(expected).sum::<f64>() / target).min(1.0),
        takes,
        grade,
        choices,
    })
}
