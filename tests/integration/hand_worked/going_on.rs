//! The tiny garden in the middle of its season, with something that the diary or the file has changed since it was
//! planned: what has begun is taken as it is, by candidates, model and checker alike.

use tureen::calendar::Date;
use tureen::candidates::{Candidate, Candidates};
use tureen::checker::check;
use tureen::garden::{
    BedAt, Begun, BegunAt, Clearing, Garden, GradeAt, IngredientAt, Patch, PatchAt, Reached,
    Source, Spot, Strips, Sun,
};
use tureen::model::{Options, Outcome, solve};
use tureen::pipeline::{Unfolded, unfold};
use tureen::plan::{Plan, Rule, Step, StepKind, When};
use tureen::project::diary::{Diary, Entry, Happened};
use tureen::units::{Centimetres, Kilograms};

use crate::support::day;
use crate::support::gardens::{bed, class, tiny_garden};

const BEAN: IngredientAt = IngredientAt(0);

fn planned(garden: &Garden) -> Plan {
    match solve(garden, &Options::default()) {
        Outcome::Planned(plan) => plan,
        other => panic!("{other:?}"),
    }
}

/// The plan of a garden, passed by the checker.
fn sound(garden: &Garden) -> Plan {
    let checked = check(garden, planned(garden)).unwrap();
    checked.plan().clone()
}

/// A garden with its plan, by a day before which something was written down.
fn by(garden: &Garden, plan: &Plan, on: &str, written: (&str, Happened)) -> Unfolded {
    by_all(garden, plan, on, vec![written])
}

/// The same where several things were.
fn by_all(garden: &Garden, plan: &Plan, on: &str, written: Vec<(&str, Happened)>) -> Unfolded {
    let entry = |(written, what): (&str, Happened)| Entry {
        on: day(written),
        by: None,
        what,
    };
    let diary = Diary {
        sections: written.len(),
        entries: (1..).zip(written.into_iter().map(entry)).collect(),
    };
    unfold(garden, (plan, None), &diary, day(on))
        .unwrap()
        .unwrap()
}

/// The same where nothing has happened.
fn quiet(garden: &Garden, plan: &Plan, on: &str) -> Unfolded {
    let nothing = Happened::Words("Nothing".to_owned());
    by(garden, plan, on, ("2027-03-01", nothing))
}

fn steps<'p>(plan: &'p Plan, name: &str, kind: StepKind) -> Vec<&'p Step> {
    let planting = plan.plantings.iter().find(|p| p.ingredient == name);
    planting.unwrap().steps_of(kind).collect()
}

fn first(plan: &Plan, name: &str, kind: StepKind) -> Date {
    steps(plan, name, kind)[0].when.first().unwrap()
}

fn given(garden: &Garden) -> Vec<Candidate> {
    let all = Candidates::enumerate(garden).all.into_iter();
    all.filter(|c| c.given.is_some()).collect()
}

/// The class missed potting up and every lesson in which it would have made up for it, and planted out all the same: then
/// nothing is potted up any more.
#[test]
fn what_was_planted_out_before_it_was_potted_up_goes_on() {
    let garden = tiny_garden();
    let plan = sound(&garden);
    let missed = || Happened::Missed {
        step: StepKind::PotUp,
        ingredient: "tomato".to_owned(),
        class: "2a".to_owned(),
    };
    let out = first(&plan, "tomato", StepKind::PlantOut);
    let lessons = garden.sessions(garden.class_named("2a").unwrap());
    let potted = first(&plan, "tomato", StepKind::PotUp);
    let lessons = lessons.iter().filter(|day| (potted..=out).contains(day));
    let lessons: Vec<String> = lessons.map(Date::to_string).collect();
    assert!(lessons.len() > 2);
    let mut written: Vec<(&str, Happened)> =
        lessons.iter().map(|on| (on.as_str(), missed())).collect();
    let planted = Happened::Done {
        step: StepKind::PlantOut,
        ingredient: "tomato".to_owned(),
        class: Some("2a".to_owned()),
        count: None,
        kg: None,
    };
    let out = out.to_string();
    written.push((&out, planted));
    let unfolded = by_all(&garden, &plan, "2027-04-20", written);
    let again = sound(&unfolded.garden);
    assert!(steps(&again, "tomato", StepKind::PotUp).is_empty());
    assert_eq!(steps(&again, "tomato", StepKind::PlantOut).len(), 1);
}

/// On Thursday 15 April the tomatoes have stood outdoors since Monday: they are planted out as printed, and a plan that
/// plants them out on another day would have had to begin before that.
#[test]
fn hardening_off_that_has_begun_goes_with_its_planting_out() {
    let garden = tiny_garden();
    let plan = sound(&garden);
    let out = first(&plan, "tomato", StepKind::PlantOut);
    assert_eq!(out, day("2027-04-19"));
    let garden = quiet(&garden, &plan, "2027-04-15").garden;
    let again = sound(&garden);
    assert_eq!(again.plantings, plan.plantings);
    let mut bent = again;
    let later = |day: &mut Date| *day = day.succ_opt().unwrap();
    for step in bent.plantings.iter_mut().flat_map(|p| &mut p.steps) {
        match (step.kind, &mut step.when) {
            (StepKind::PlantOut, When::Sessions(visits)) => later(&mut visits[0].date),
            (StepKind::Harden, When::Daily { from, to }) => {
                later(from);
                later(to);
            }
            _ => {}
        }
    }
    let broken = check(&garden, bent).unwrap_err();
    assert!(
        broken.iter().any(|v| v.rule == Rule::Happened),
        "{broken:?}"
    );
}

/// The tiny garden with its beans in bed B since early March.
fn with_beans_that_stand() -> Garden {
    let mut garden = tiny_garden();
    garden.beds[1].free_from = None;
    garden.ingredients[0].source = Source::Begun(BegunAt(0));
    garden.begun.push(Begun {
        spot: Spot::Bed {
            bed: BedAt(1),
            strips: Strips::from_start(4),
        },
        reached: Reached::Sown,
        since: day("2027-03-02"),
    });
    garden
}

/// Whoever the file names by now: the grade that has begun goes on, however the ingredient came.
#[test]
fn the_grade_that_has_begun_goes_on() {
    let garden = with_beans_that_stand();
    let plan = sound(&garden);
    let picked = first(&plan, "bean", StepKind::Pick).succ_opt().unwrap();
    let unfolded = quiet(&garden, &plan, &picked.to_string());
    let mut changed = garden.clone();
    for ingredient in &mut changed.ingredients {
        let other = GradeAt(usize::from(ingredient.teams[0].has(GradeAt(0))));
        ingredient.teams = vec![other.into()];
    }
    let changed = unfolded.over(changed).unwrap();
    let again = sound(&changed);
    let of = |plan: &Plan| {
        plan.plantings
            .iter()
            .map(|p| p.grades.concat())
            .collect::<Vec<_>>()
    };
    assert_eq!(of(&again), of(&plan));
}

/// What somebody has picked already goes on even where it is ripe in no year.
#[test]
fn what_was_picked_too_soon_goes_on() {
    let garden = with_beans_that_stand();
    let plan = sound(&garden);
    let picked = first(&plan, "bean", StepKind::Pick).succ_opt().unwrap();
    let unfolded = quiet(&garden, &plan, &picked.to_string());
    let mut changed = garden.clone();
    changed.ingredients[0].crop.ripening.days_from_sowing = Some(300.0);
    let changed = unfolded.over(changed).unwrap();
    let again = sound(&changed);
    assert_eq!(again.promise.ingredients[0].ready_years, 0);
}

/// The tiny garden with its beans from a patch.
fn with_a_patch() -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients[0].source = Source::Patch(PatchAt(0));
    garden.patches.push(Patch {
        id: "hedge".to_owned(),
        crop: "bean".to_owned(),
        pick_from: day("2027-05-01"),
        pick_to: day("2027-06-05"),
        low: Kilograms(1.0),
        expected: Kilograms(1.5),
        size: None,
        at: None,
    });
    garden
}

/// A patch was picked; by now the file has a season that begins later: what is picked is picked.
#[test]
fn a_pick_that_is_given_may_lie_outside_the_season_of_its_patch() {
    let garden = with_a_patch();
    let plan = sound(&garden);
    let picked = first(&plan, "bean", StepKind::Pick);
    let on = steps(&plan, "bean", StepKind::Pick)[0].when.last().unwrap();
    let unfolded = quiet(&garden, &plan, &on.succ_opt().unwrap().to_string());
    let mut changed = garden.clone();
    changed.patches[0].pick_from = on.succ_opt().unwrap();
    let again = sound(&unfolded.over(changed).unwrap());
    assert_eq!(first(&again, "bean", StepKind::Pick), picked);
    assert_eq!(steps(&again, "bean", StepKind::Pick).len(), 1);
}

/// A patch was picked; by the figures of now that does not keep: it is picked once more.
#[test]
fn a_pick_that_does_not_keep_is_made_good() {
    let mut garden = with_a_patch();
    garden.patches[0].pick_to = day("2027-05-14");
    let plan = sound(&garden);
    let on = steps(&plan, "bean", StepKind::Pick)[0].when.last().unwrap();
    let unfolded = quiet(&garden, &plan, &on.succ_opt().unwrap().to_string());
    let mut changed = garden.clone();
    changed.patches[0].pick_to = day("2027-06-11");
    changed.ingredients[0].crop.picking.storage_days = 14;
    let again = sound(&unfolded.over(changed).unwrap());
    assert_eq!(steps(&again, "bean", StepKind::Pick).len(), 2);
}

/// A class that came to the grade since has not sown with it.
#[test]
fn a_class_that_is_new_has_not_taken_part_in_what_has_begun() {
    let garden = tiny_garden();
    let plan = sound(&garden);
    let unfolded = quiet(&garden, &plan, "2027-04-15");
    let mut changed = garden.clone();
    let new = class("1c", 5, chrono::Weekday::Fri, 1, day("2027-03-05"));
    changed.grades[0].classes.push(new);
    let again = sound(&unfolded.over(changed).unwrap());
    let visits = |kind| match &steps(&again, "bean", kind)[0].when {
        When::Sessions(visits) => visits.len(),
        other => panic!("{other:?}"),
    };
    assert_eq!((visits(StepKind::Sow), visits(StepKind::Pick)), (2, 3));
}

/// Strips cut where something was lost, in the middle of a block: the minutes are those of the plants that stand there.
#[test]
fn minutes_are_those_of_the_plants_that_stand() {
    let mut garden = tiny_garden();
    // Three plants on two strips.
    garden.ingredients[1].crop.spacing.in_row = Centimetres(40.0);
    let plan = sound(&garden);
    let mut garden = quiet(&garden, &plan, "2027-04-15").garden;
    let season = garden.season.as_mut().unwrap();
    let places: Vec<_> = season
        .printed
        .iter()
        .flat_map(|p| p.places.clone())
        .collect();
    season
        .clearing
        .extend(places.into_iter().map(|(bed, strips)| Clearing {
            bed,
            strips: Strips { count: 1, ..strips },
            free_from: day("2027-03-20"),
        }));
    let mut uneven = 0;
    for candidate in given(&garden) {
        let name = &garden[candidate.ingredient].name;
        let planting = plan.plantings.iter().find(|p| p.ingredient == *name);
        let plants = candidate.amounts.blocks.0 * candidate.amounts.block.plants;
        uneven += u32::from(plants != planting.unwrap().plants);
        for task in &candidate.tasks {
            let printed = steps(&plan, name, task.kind)[0].minutes;
            let minutes = task.effort.minutes(plants);
            assert!((minutes - printed).0.abs() < 1e-9, "{task:?} {printed:?}");
        }
    }
    assert!(uneven > 0, "the cut blocks hold no whole plants");
    sound(&garden);
}

/// As many plots as there may be: what has begun keeps its bed to itself, and no plot is forgotten.
#[test]
fn where_there_are_no_more_plots_a_bed_stays_whole() {
    let mut garden = tiny_garden();
    for k in 0..125 {
        let mut other = bed(&format!("S{k}"), 1, 0);
        other.sun = Sun::Shade;
        garden.beds.push(other);
    }
    let plan = sound(&garden);
    let garden = quiet(&garden, &plan, "2027-04-20").garden;
    let all = Candidates::enumerate(&garden);
    assert_eq!(all.plots.len(), tureen::garden::MOST_PLOTS);
    let of_given: Vec<_> = all.all.iter().filter(|c| c.given.is_some()).collect();
    assert!(!of_given.is_empty() && of_given.iter().all(|c| !c.plots.is_empty()));
    assert_eq!(sound(&garden).plantings, plan.plantings);
}

fn lost(name: &str) -> Happened {
    Happened::Lost {
        ingredient: name.to_owned(),
        share: 1.0,
        cause: String::new(),
    }
}

/// What died on the shelf never stood on the strips that were meant for it; what died in the bed is cleared off them, whether
/// its ingredient is wanted or not.
#[test]
fn only_what_stood_in_a_bed_is_cleared_off_it() {
    let garden = tiny_garden();
    let plan = sound(&garden);
    let place = |name: &str| {
        let planting = plan.plantings.iter().find(|p| p.ingredient == name);
        let place = planting.unwrap().places[0].clone();
        (garden.bed_with_id(&place.bed).unwrap(), place.run())
    };
    let on_shelf = by(&garden, &plan, "2027-04-12", ("2027-04-11", lost("tomato"))).garden;
    let (bed, strips) = place("tomato");
    assert_eq!(on_shelf.season.as_ref().unwrap().gone.len(), 1);
    assert_eq!(on_shelf.free_of_lost(bed, strips), None);
    let in_bed = by(&garden, &plan, "2027-04-12", ("2027-04-11", lost("bean"))).garden;
    let (bed, strips) = place("bean");
    let free = Some(day("2027-04-18"));
    assert_eq!(in_bed.free_of_lost(bed, strips), free);
    let without = in_bed.with_ingredients(|at| at != BEAN);
    assert_eq!(without.ingredients.len(), 1);
    assert_eq!(without.free_of_lost(bed, strips), free);
    let season = in_bed.season.as_ref().unwrap().without(BEAN);
    assert!(season.gone.is_empty());
    let without = Garden {
        season: Some(season),
        ..in_bed.clone()
    };
    assert_eq!(without.free_of_lost(bed, strips), free);
}

/// A season that begins after a step that has begun leaves it out of the calendar: that is refused, not planned afresh.
#[test]
fn a_change_that_leaves_out_what_has_begun_is_refused() {
    let garden = tiny_garden();
    let plan = sound(&garden);
    let unfolded = quiet(&garden, &plan, "2027-04-20");
    let mut changed = garden.clone();
    changed.school_year.start = day("2027-04-19");
    assert!(unfolded.over(changed).is_err());
    assert!(unfolded.over(garden.clone()).is_ok());
}

/// Delivery is a week and a half earlier by now, and the beans that are picked would still be drying: nobody makes a plan
/// of that, and the checker refuses one.
#[test]
fn what_was_picked_too_late_for_an_earlier_delivery_is_no_use() {
    let mut garden = with_beans_that_stand();
    garden.ingredients[0].crop.picking.storage_days = 14;
    let plan = sound(&garden);
    let on = steps(&plan, "bean", StepKind::Pick)[0].when.last().unwrap();
    let unfolded = quiet(&garden, &plan, &on.succ_opt().unwrap().to_string());
    let mut changed = garden.clone();
    changed.feast.deliver_by = on.succ_opt().unwrap();
    let changed = unfolded.over(changed).unwrap();
    let Outcome::Impossible(why) = solve(&changed, &Options::default()) else {
        panic!("the beans are not dry by then");
    };
    assert_eq!(why.left_out[0].ingredient, BEAN);
    let broken = check(&changed, plan).unwrap_err();
    assert!(
        broken.iter().any(|v| v.rule == Rule::Readiness),
        "{broken:?}"
    );
}
