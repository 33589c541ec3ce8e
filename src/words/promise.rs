//! What a plan promises: in how many years the whole dish is ready, what to expect of it, whether anything
//! better is possible, and how it was counted.

use crate::facts::how_sure::{Later, Years};
use crate::facts::record;
use crate::facts::verdict::{CountedOn, NotCounted, Proof, Sayable, Verdict};

use crate::garden::Garden;

use super::count;
use super::view::{View, readiness};

/// The sentence at the head of every plan.
#[must_use]
pub fn sentence(view: &View<'_>) -> String {
    let verdict = view.verdict();
    let (kind, proof) = (view.kind_of_years(), proof(&verdict));
    let Verdict { ready, years, .. } = verdict;
    let (promised, on) = (readiness(verdict.promised), verdict.promised.on);
    let head = "The whole dish is ready in";
    let Some((fewest, most)) = verdict.expected else {
        return format!("{head} {promised} {kind}: too few to say more{proof}.");
    };
    let unless = match view.garden.weather.is_generated() {
        true => " (if the monthly means are right)",
        false => "",
    };
    let guess = match view.sayable() {
        Sayable::Little => format!(" Of only {years} years this is little more than a guess."),
        Sayable::Nothing | Sayable::Range => String::new(),
    };
    let told = match on {
        CountedOn::Own => {
            return format!(
                "{head} {ready} of the {years} {kind} that it was made for, so expect it in {fewest} to \
                 {most} of {years} more{unless}{proof}. A plan suits its own years better than others.{guess}"
            );
        }
        CountedOn::Fresh => "years that the plan was not made for",
        CountedOn::InTurn => "past years that plans made the same way had not seen",
    };
    format!(
        "{head} {promised} {told}, so expect it in {fewest} to {most} of the next {years}{unless}. In \
         the {years} {kind} that it was made for: {ready}{proof}.{guess}"
    )
}

/// How far the number of ready years is proved, as the end of the sentence.
fn proof(verdict: &Verdict) -> String {
    let (are, when) = match verdict.proved_before {
        true => ("were", " when it was planned"),
        false => ("are", ""),
    };
    match verdict.proof {
        Proof::Unknown => String::new(),
        Proof::NotProved { most: Some(most) } => format!(
            "; the best plan found, not proved best; at most {most} years {are} possible{when}"
        ),
        Proof::NotProved { most: None } => {
            format!("; the best plan found, not proved best{when}")
        }
        Proof::Open { most } => {
            format!("; the best plan found; at most {most} years {are} possible{when}")
        }
        Proof::Best => format!("; proved best{when}"),
        Proof::GivenUp { possible, given } => format!(
            "; {possible} {are} possible{when}, {} given up for the aims that come after it",
            count(given, "year")
        ),
    }
}

/// Where the climate of a record changes: what the plan does in its last years, and how to plan on them alone.
#[must_use]
pub fn later(later: &Later) -> String {
    let Later {
        from,
        later: (ready, years),
        earlier: (ready_before, before),
    } = later;
    format!(
        "This plan is ready in {ready} of the last {years} years and in {ready_before} of the {before} before. What a plan \
         made from the last {years} alone does otherwise: `tureen try FILE --set place.weather_from={from}`; to keep it, \
         write `weather_from = {from}` under [place]."
    )
}

/// The same on a screen, if there is a change.
#[must_use]
pub fn warmer(view: &View<'_>) -> Option<String> {
    match view.weather_years() {
        Years::Measured {
            change: Some(change),
            later: Some(later),
            ..
        } => {
            let it_grew = if change > 0.0 { "warmer" } else { "cooler" };
            Some(format!(
                "It grew {it_grew} over the years of the record. {}",
                self::later(&later)
            ))
        }
        _ => None,
    }
}

/// Where the means tell little of the frosts: that it is so, and what to do.
#[must_use]
pub fn frosts_unchecked(garden: &Garden) -> Option<String> {
    record::frosts_unchecked(garden).then(|| {
        "Frosts are unchecked: where winters are mild, monthly averages cannot tell them to within weeks. Give your \
         town's dates in the file (`last_frost`, `first_frost`)."
            .to_owned()
    })
}

/// Behind a number of years: that plans had not seen them, if so.
#[must_use]
pub fn unseen(view: &View<'_>) -> &'static str {
    match view.promised().on {
        CountedOn::InTurn => " that plans made the same way had not seen",
        CountedOn::Fresh | CountedOn::Own => "",
    }
}

/// Where several plans are compared on their own years because there was no time for others: that it is so.
#[must_use]
pub fn only_own_years(view: &View<'_>) -> Option<&'static str> {
    (view.not_counted() == Some(NotCounted::NoTime)).then_some(
        "These are the years that the plans were made for, and so too rosy: there was no time to count others \
         (--time-limit gives more).",
    )
}

/// That a plan suits its own years better than others, and what was done about it.
#[must_use]
pub fn suits_its_own(view: &View<'_>) -> String {
    let promised = view.promised();
    let suits = "A plan suits the years it was made from better than others.";
    let rosy = "In tests on years that the plans had not seen, the whole dish was ready less often than \
                promised, by five to ten years in a hundred on average.";
    match (promised.on, view.not_counted()) {
        (CountedOn::Fresh, _) => format!(
            "{suits} So what is promised was counted on {} other made-up years, made from the same means \
             and the same for every plan: the whole dish is ready in {} of them.",
            promised.years, promised.ready
        ),
        (CountedOn::InTurn, _) => format!(
            "{suits} So each of the {} past years was counted with a plan that was made the same way without \
             it, and what is promised is the sum. This plan is ready in {} of them.",
            promised.years,
            view.verdict().ready
        ),
        (CountedOn::Own, Some(NotCounted::NoTime)) => format!(
            "{suits} {rosy} There was no time to count it on others; --time-limit gives more."
        ),
        (CountedOn::Own, Some(NotCounted::NotOfThisPlan)) => format!(
            "{suits} {rosy} For this plan it is not known, because it is not as it was made for these \
             years; a new plan is counted on others."
        ),
        (CountedOn::Own, Some(NotCounted::NotSaid)) => format!(
            "{suits} {rosy} This plan was not counted on others when it was made; a new one is."
        ),
        (CountedOn::Own, _) => format!("{suits} {rosy}"),
    }
}
