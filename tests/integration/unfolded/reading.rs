//! What single entries of the diary do to a plan: which lessons they tell of, when a class makes up for one that it
//! missed, and what is left of what was sown.

use tureen::calendar::{Date, plus_days};
use tureen::catalogue::Catalogue;
use tureen::garden::{self, Begun, BegunAt, Garden, Reached, Source, Spot};
use tureen::model::{Options, Outcome, solve};
use tureen::pipeline::{Unfolded, unfold};
use tureen::plan::{Plan, StepKind, When};
use tureen::project;

use super::{Saved, Told, planned, reads_as_saved};
use crate::support::day;
use crate::support::gardens::tiny_garden;

const SCHOOL: &str = include_str!("../cli/garden.toml");

/// A school with its plan. Radish: 1a sows on Tue 11 May and thins on 25 May, 1b a day later. Spinach: 2a sows on Tue
/// 20 April, thins on 11 May.
struct School {
    told: Told,
    plan: Plan,
}

fn school() -> School {
    let catalogue = Catalogue::load().unwrap();
    let garden = project::load_text("garden.toml", SCHOOL, None, &catalogue);
    let garden = garden.unwrap_or_else(|found| panic!("{}", found.render(false, 100)));
    let plan = planned(&garden).plan().clone();
    let text = String::new();
    School {
        told: Told { garden, text },
        plan,
    }
}

impl School {
    fn unfold(&self, on: &str) -> Unfolded {
        let (on, garden) = (day(on), &self.told.garden);
        let unfolded = unfold(garden, (&self.plan, None), &self.told.until(on), on);
        unfolded.unwrap().unwrap()
    }

    fn told(entries: &[(&str, &str)]) -> Self {
        let mut school = school();
        for (on, words) in entries {
            school.told.note(day(on), words);
        }
        school
    }
}

/// A planting of an ingredient that is not gone.
fn standing<'s>(of: &Unfolded, season: &'s garden::Season, name: &str) -> &'s garden::Printed {
    let at = of.garden.ingredient_named(name).unwrap();
    season.printed_of(at).next().unwrap().1
}

/// The days on which a step of one is done.
fn days(of: &Unfolded, name: &str, kind: StepKind) -> Vec<Date> {
    let season = of.garden.season.as_ref().unwrap();
    let printed = standing(of, season, name);
    let turns = match kind {
        StepKind::Sow => &printed.sow,
        StepKind::Thin => &printed.thin,
        other => panic!("{other:?}"),
    };
    let turns = turns.iter().flat_map(|turns| &turns.0);
    turns.map(|(_, day)| *day).collect()
}

/// The part that is left of what stands.
fn left(entries: &[(&str, &str)], on: &str) -> f64 {
    let of = School::told(entries).unfold(on);
    standing(&of, of.garden.season.as_ref().unwrap(), "spinach")
        .left
        .0
}

/// None came up: that holds when the plan that was made then is read again, until some come up after all.
#[test]
fn what_did_not_come_up_stays_gone_when_it_is_read_again() {
    let school = School::told(&[("2027-05-05", "up spinach 0 of 56")]);
    let unfolded = school.unfold("2027-05-06");
    let checked = planned(&unfolded.garden);
    let Saved(text) = reads_as_saved(&school.told, &checked, &unfolded.garden);
    let again = |told: &Told| Saved(text.clone()).unfold(told, day("2027-05-10")).unwrap();
    let season = again(&school.told).garden.season.unwrap();
    let gone: Vec<_> = season
        .gone
        .iter()
        .map(|gone| (gone.on, gone.what.sow.clone()))
        .collect();
    assert_eq!(gone.len(), 1, "{season:?}");
    assert_eq!(gone[0].0, day("2027-05-05"));
    assert_eq!(gone[0].1.as_ref().unwrap().first(), Some(day("2027-04-20")));
    assert!(season.printed.iter().all(|p| p.sow != gone[0].1));
    let mut told = school.told;
    told.note(day("2027-05-09"), "up spinach 40 of 56");
    assert_eq!(again(&told).garden.season.unwrap().gone, []);
}

/// A class that missed its lesson makes up for it in the next, also where that is past by now.
#[test]
fn a_lesson_is_made_up_for_in_the_first_one_after_it() {
    let missed = School::told(&[("2027-05-12", "missed 1b sowed radish")]);
    for on in ["2027-05-13", "2027-05-20", "2027-06-03"] {
        let sown = days(&missed.unfold(on), "radish", StepKind::Sow);
        assert_eq!(sown, [day("2027-05-11"), day("2027-05-19")], "{on}");
    }
    // Written down on the day after, or of a lesson that is still to come.
    let after = School::told(&[("2027-05-13", "missed 1b sowed radish")]);
    let sown = days(&after.unfold("2027-05-14"), "radish", StepKind::Sow);
    assert_eq!(sown, [day("2027-05-11"), day("2027-05-19")]);
    let before = School::told(&[("2027-05-11", "missed 1b sowed radish")]);
    let unfolded = before.unfold("2027-05-14");
    let sown = days(&unfolded, "radish", StepKind::Sow);
    assert_eq!(sown, [day("2027-05-11"), day("2027-05-12")]);
    assert_eq!(unfolded.without_effect, [1]);
}

/// The lesson of 19 May is full: it is made up for a week later.
#[test]
fn a_lesson_is_made_up_for_where_there_is_room() {
    let mut school = School::told(&[("2027-05-12", "missed 1b sowed radish")]);
    let radish = school
        .plan
        .plantings
        .iter_mut()
        .find(|p| p.ingredient == "radish");
    let mut steps = radish.unwrap().steps.iter_mut();
    let thin = steps.find(|step| step.kind == StepKind::Thin).unwrap();
    let When::Sessions(visits) = &mut thin.when else {
        panic!("children thin");
    };
    visits[1].date = day("2027-05-19");
    thin.minutes.0 = 35.0;
    let sown = days(&school.unfold("2027-05-13"), "radish", StepKind::Sow);
    assert_eq!(sown, [day("2027-05-11"), day("2027-05-26")]);
}

/// A lesson in which a class was to make up for another falls out of the calendar: there is a plan all the same.
#[test]
fn a_lesson_that_falls_out_is_made_up_for_as_well() {
    let mut school = School::told(&[("2027-05-12", "missed 1b sowed radish")]);
    let unfolded = school.unfold("2027-05-13");
    let saved = reads_as_saved(&school.told, &planned(&unfolded.garden), &unfolded.garden);
    school
        .told
        .garden
        .school_year
        .days_off
        .push(day("2027-05-19"));
    let unfolded = saved.unfold(&school.told, day("2027-05-14")).unwrap();
    let sown = days(&unfolded, "radish", StepKind::Sow);
    assert_eq!(sown, [day("2027-05-11"), day("2027-05-26")]);
    let checked = planned(&unfolded.garden);
    assert!(
        checked
            .plan()
            .plantings
            .iter()
            .any(|p| p.ingredient == "radish")
    );
}

/// What follows on a step that was done late was not done before it.
#[test]
fn nothing_is_thinned_before_it_is_sown() {
    let sown = ("2027-05-13", "sowed spinach 2a");
    let late = School::told(&[sown]).unfold("2027-05-14");
    assert_eq!(days(&late, "spinach", StepKind::Sow), [day("2027-05-13")]);
    assert_eq!(days(&late, "spinach", StepKind::Thin), []);
}

/// Entries of days after its loss are not about what is gone: neither a sowing nor another loss.
#[test]
fn what_is_gone_takes_no_entry_of_a_later_day() {
    let lost = ("2027-04-27", "lost spinach 100 % snails");
    for later in [
        "sowed spinach 2a",
        "lost spinach 50 %",
        "missed 2a thinned spinach",
    ] {
        let school = School::told(&[("2027-05-11", later), lost]);
        let unfolded = school.unfold("2027-05-12");
        let season = unfolded.garden.season.unwrap();
        let [gone] = &season.gone[..] else {
            panic!("{season:?}");
        };
        assert_eq!(gone.on, day("2027-04-27"), "{later}");
        assert_eq!(
            gone.what.sow.as_ref().unwrap().first(),
            Some(day("2027-04-20")),
            "{later}"
        );
        assert_eq!(
            gone.what.thin.as_ref().unwrap().first(),
            Some(day("2027-05-11")),
            "{later}"
        );
        assert_eq!(unfolded.without_effect, [1], "{later}");
    }
}

/// Of 56 seeds 24 plants are to stand. A count tells what stands on its day; a loss is a part of what stood till then.
#[test]
fn counts_and_losses_are_of_what_stands() {
    let count = ("2027-05-03", "up spinach 12 of 56");
    let near = |entries: &[(&str, &str)], expected: f64| {
        let left = left(entries, "2027-05-12");
        assert!((left - expected).abs() < 1e-9, "{entries:?} {left}");
    };
    near(&[count], 0.5);
    near(&[count, ("2027-05-05", "lost spinach 50 %")], 0.25);
    near(&[("2027-05-01", "lost spinach 20 %"), count], 0.5);
    near(
        &[
            ("2027-05-01", "lost spinach 60 %"),
            ("2027-05-05", "lost spinach 60 %"),
        ],
        0.16,
    );
    // However they stand in the file.
    near(&[("2027-05-05", "lost spinach 50 %"), count], 0.25);
}

/// Without a class an entry tells of the lessons that were held by its day; with one also of what was done early.
#[test]
fn an_entry_tells_of_no_lesson_that_was_not_held() {
    let sown = |on: &str, words: &str| {
        let unfolded = School::told(&[(on, words)]).unfold("2027-05-14");
        days(&unfolded, "radish", StepKind::Sow)
    };
    let printed = [day("2027-05-11"), day("2027-05-12")];
    assert_eq!(sown("2027-05-11", "sowed radish"), printed);
    assert_eq!(sown("2027-05-12", "sowed radish"), printed);
    assert_eq!(sown("2027-05-10", "sowed radish"), printed);
    assert_eq!(sown("2027-05-13", "sowed radish"), [day("2027-05-13"); 2]);
    let early = [day("2027-05-11"), day("2027-05-05")];
    assert_eq!(sown("2027-05-05", "sowed radish 1b"), early);
}

/// A lesson that was missed is told as made up by the next entry of its class, or of all.
#[test]
fn a_lesson_that_was_made_up_on_another_day_is_told_so() {
    for (on, made_up) in [
        ("2027-05-19", "sowed radish"),
        ("2027-05-20", "sowed radish 1b"),
    ] {
        let missed = ("2027-05-12", "missed 1b sowed radish");
        let school = School::told(&[missed, (on, made_up)]);
        let sown = days(&school.unfold("2027-05-24"), "radish", StepKind::Sow);
        assert_eq!(sown, [day("2027-05-11"), day(on)], "{made_up}");
    }
}

/// So is one that was missed again, also where nothing was planned in between.
#[test]
fn a_lesson_that_is_missed_again_is_made_up_for_later() {
    let again = [
        ("2027-05-12", "missed 1b sowed radish"),
        ("2027-05-19", "missed 1b sowed radish"),
    ];
    let sown = days(
        &School::told(&again).unfold("2027-05-20"),
        "radish",
        StepKind::Sow,
    );
    assert_eq!(sown, [day("2027-05-11"), day("2027-05-26")]);
}

/// The class of the tomato missed every lesson from that of potting up until that of planting out: what is not potted up
/// by then is not planted out.
#[test]
fn nothing_is_planted_out_before_it_is_potted_up() {
    let garden = tiny_garden();
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("the tiny garden has a plan");
    };
    let tomato = plan.plantings.iter().find(|p| p.ingredient == "tomato");
    let on = |kind| tomato.unwrap().steps_of(kind).next().unwrap().when.first();
    let (potted, out) = (
        on(StepKind::PotUp).unwrap(),
        on(StepKind::PlantOut).unwrap(),
    );
    let lessons = garden.sessions(garden.class_named("2a").unwrap());
    let (missed, after): (Vec<_>, Vec<_>) = lessons
        .into_iter()
        .filter(|day| *day >= potted)
        .partition(|day| *day <= out);
    assert!(missed.len() > 1, "{missed:?}");
    let text = String::new();
    let mut told = Told { garden, text };
    for on in &missed {
        told.note(*on, "missed 2a potted tomato");
    }
    let as_of = plus_days(out, 1);
    let unfolded = unfold(&told.garden, (&plan, None), &told.until(as_of), as_of);
    let unfolded = unfolded.unwrap().unwrap();
    assert_eq!(unfolded.counted.len(), missed.len());
    let season = unfolded.garden.season.as_ref().unwrap();
    let tomato = standing(&unfolded, season, "tomato");
    let potted = tomato.pot_up.as_ref().unwrap().first();
    assert_eq!(potted, Some(after[0]));
    assert_eq!(tomato.plant_out, None);
}

/// The tiny garden with its tomatoes sown before the plan begins; they are planted out on 19 April.
fn with_seedlings() -> Garden {
    let mut garden = tiny_garden();
    garden.school_year.start = day("2027-03-15");
    garden.ingredients[1].source = Source::Begun(BegunAt(0));
    garden.ingredients[1].methods.clear();
    garden.begun = vec![Begun {
        spot: Spot::Shelf { seedlings: 9 },
        reached: Reached::Sown,
        since: day("2027-03-08"),
    }];
    garden
}

/// Seedlings that the plan has planted out are lost like all else; before that their number in the file tells.
#[test]
fn seedlings_that_are_planted_out_may_be_lost() {
    let garden = with_seedlings();
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("the tiny garden has a plan");
    };
    let tomato = plan
        .plantings
        .iter()
        .find(|p| p.ingredient == "tomato")
        .unwrap();
    let out = tomato
        .steps_of(StepKind::PlantOut)
        .next()
        .unwrap()
        .when
        .first()
        .unwrap();
    let on = |after: i64, words: &str| {
        let (mut told, on) = (
            Told {
                garden: garden.clone(),
                text: String::new(),
            },
            plus_days(out, 20),
        );
        let lost = plus_days(out, after);
        told.note(lost, words);
        unfold(&garden, (&plan, None), &told.until(on), on)
            .unwrap()
            .unwrap()
    };
    let part = on(2, "lost tomato 30 %");
    let season = part.garden.season.as_ref().unwrap();
    assert!((standing(&part, season, "tomato").left.0 - 0.7).abs() < 1e-9);
    assert_eq!(on(-2, "lost tomato 30 %").without_effect, [1]);
    let all = on(2, "lost tomato 100 % slugs");
    let season = all.garden.season.as_ref().unwrap();
    let [gone] = &season.gone[..] else {
        panic!("{season:?}");
    };
    assert_eq!(gone.what.method, garden::Method::Seedlings);
    // No seedlings stand on the shelf any more: what comes in their place is sown or bought.
    let at = all.garden.ingredient_named("tomato").unwrap();
    assert_eq!(all.garden[at].source, Source::Sown);
    assert!(!all.garden[at].methods.is_empty());
}
