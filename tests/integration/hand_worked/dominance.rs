//! When a candidate makes another needless: of two that are alike but for one thing, the better one
//! always stays, whichever comes first.

use tureen::candidates::{Candidate, Candidates, PlotAt, PlotSet, Scope, YearSet};

use crate::support::gardens::tiny_garden;

/// A thing that makes a candidate worse, and whether it counts as long as only the harvest does.
type Worse = (&'static str, fn(&mut Candidate), bool);

const WORSE: [Worse; 9] = [
    (
        "no ready year",
        |c| c.ready = YearSet::of(4, |_| false),
        true,
    ),
    ("in the bed a day sooner", |c| c.bed_days.0 -= 1, true),
    ("in the bed a day longer", |c| c.bed_days.1 += 1, true),
    ("on fewer plots", |c| c.plots = first_plot(c), true),
    ("at most a block less", |c| c.amounts.blocks.1 -= 1, true),
    ("one more gap", |c| c.gaps.push(0), false),
    ("one more step without slack", |c| c.fragile += 1, false),
    ("one more step by others", |c| c.by_others += 1, false),
    ("a week more of waiting", |c| c.idle_weeks += 1, false),
];

/// The first of a candidate's plots alone.
fn first_plot(candidate: &Candidate) -> PlotSet {
    let first = candidate.plots.iter().next();
    let plots = tureen::candidates::plots(&tiny_garden());
    let at = |plot: &tureen::garden::Plot| plots.iter().position(|p| p == plot);
    PlotSet::of(&plots, |plot| at(plot).map(PlotAt) == first)
}

/// A candidate that can be made worse in all of these things.
fn sound(all: &Candidates) -> Candidate {
    let found = all.all.iter().find(|c| {
        let (least, most) = c.amounts.blocks;
        c.gaps.is_empty() && c.plots.iter().count() > 1 && least < most && !c.ready.is_empty()
    });
    found.unwrap().clone()
}

/// What is kept of two candidates.
fn kept(all: &Candidates, pair: [&Candidate; 2], scope: Scope) -> Vec<Candidate> {
    let pair = Candidates {
        all: pair.map(Candidate::clone).to_vec(),
        ..all.clone()
    };
    pair.without_needless(&tiny_garden(), scope).all
}

#[test]
fn of_two_that_differ_in_one_thing_the_better_stays() {
    let all = Candidates::enumerate(&tiny_garden());
    let better = &sound(&all);
    for scope in [Scope::Harvest, Scope::Everything] {
        assert_eq!(kept(&all, [better, better], scope).len(), 1);
        for (name, make_worse, in_harvest) in WORSE {
            let mut worse = better.clone();
            make_worse(&mut worse);
            for pair in [[better, &worse], [&worse, better]] {
                let kept = kept(&all, pair, scope);
                let counts = in_harvest || scope == Scope::Everything;
                let stays = kept.contains(better) || !counts && kept == [worse.clone()];
                assert!(stays, "{name}, {scope:?}");
            }
        }
    }
}

#[test]
fn of_two_of_which_each_is_better_in_something_both_stay() {
    let all = Candidates::enumerate(&tiny_garden());
    for (first, make_first, _) in WORSE {
        for (second, make_second, _) in WORSE.into_iter().filter(|(name, ..)| *name != first) {
            let (mut a, mut b) = (sound(&all), sound(&all));
            make_first(&mut a);
            make_second(&mut b);
            let kept = kept(&all, [&a, &b], Scope::Everything);
            assert_eq!(kept.len(), 2, "{first}; {second}");
        }
    }
}
