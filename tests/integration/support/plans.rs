//! Plans written by hand, with numbers of seeds, flats and minutes filled in from `growth`.

use tureen::calendar::monday_of;
use tureen::garden::{Garden, Method};
use tureen::growth::{effort, need_in};
use tureen::plan::{
    Aim, AimResult, IngredientPromise, Place, Plan, Planting, Promise, Step, StepKind, Visit, When,
};
use tureen::units::{Kilograms, Minutes};

use super::day;

/// A step in sessions: classes with their dates. `fill_in` gives it its minutes.
pub fn sessions(kind: StepKind, visits: &[(&str, &str)]) -> Step {
    let visits = visits.iter().map(|(class, date)| Visit {
        class: (*class).to_owned(),
        date: day(date),
    });
    step(kind, When::Sessions(visits.collect()))
}

/// A step from day to day.
pub fn from_to(kind: StepKind, from: &str, to: &str) -> Step {
    let (from, to) = (day(from), day(to));
    step(kind, When::Daily { from, to })
}

/// A step without minutes.
pub fn step(kind: StepKind, when: When) -> Step {
    Step {
        kind,
        when,
        minutes: Minutes(0.0),
    }
}

/// Strips of a bed, the first counted from 1.
pub fn place(bed: &str, first_strip: u32, strips: u32) -> Place {
    Place {
        bed: bed.to_owned(),
        first_strip,
        strips,
    }
}

/// A planting whose grades and numbers are not filled in yet.
pub fn planting(
    ingredient: &str,
    method: Method,
    plants: u32,
    places: Vec<Place>,
    steps: Vec<Step>,
) -> Planting {
    Planting {
        ingredient: ingredient.to_owned(),
        grades: Vec::new(),
        method,
        steps,
        places,
        plants,
        seeds: 0,
        flats_sown: 0,
        flats_kept: 0,
        on_mat: false,
    }
}

/// Fills in the grades where there are none, and seeds, flats and minutes from the number of plants.
pub fn fill_in(garden: &Garden, planting: &mut Planting) {
    let at = garden.ingredient_named(&planting.ingredient).unwrap();
    let ingredient = &garden[at];
    let team = garden.team_with_ids(&planting.grades);
    let team = team.unwrap_or(ingredient.teams[0]);
    planting.grades = garden.ids_of(team);
    let children = garden.children_of(team);
    let need = need_in(garden, at, team, planting.method, planting.plants);
    planting.seeds = need.seeds;
    planting.flats_sown = need.flats_sown;
    planting.flats_kept = need.flats_kept;
    for step in &mut planting.steps {
        if let When::Sessions(_) = step.when {
            let effort = effort(step.kind, ingredient, planting.method, children);
            step.minutes = effort.minutes(planting.plants);
        }
    }
}

/// What a plan promises for one ingredient.
pub fn promise(ingredient: &str, ready_years: u32, low: f64, expected: f64) -> IngredientPromise {
    IngredientPromise {
        ingredient: ingredient.to_owned(),
        ready_years,
        low: Kilograms(low),
        expected: Kilograms(expected),
    }
}

/// A plan with seeds, flats and minutes filled in, its promise as given, nothing said of aims.
/// The garden has four weather years.
pub fn bare_plan(
    garden: &Garden,
    mut plantings: Vec<Planting>,
    ingredients: Vec<IngredientPromise>,
    whole_dish_years: u32,
) -> Plan {
    for planting in &mut plantings {
        fill_in(garden, planting);
    }
    Plan {
        plantings,
        promise: Promise {
            weather_years: 4,
            whole_dish_years,
            ingredients,
        },
        aims: Vec::new(),
        unseen: None,
    }
}

/// The bean of the tiny garden. Sown on 16 and 18 March it is ripe on 15 and 17 May in the
/// year of 15 C and picked in the second round; on 30 April and 2 May in that of 19 C, and
/// picked in the first round before it is past; too late in the others (26 May in the third
/// warmest).
pub fn tiny_bean() -> Planting {
    planting(
        "bean",
        Method::Direct,
        48,
        vec![place("B", 1, 4)],
        vec![
            sessions(StepKind::Sow, &[("1a", "2027-03-16"), ("1b", "2027-03-18")]),
            sessions(
                StepKind::Thin,
                &[("1a", "2027-04-13"), ("1b", "2027-04-15")],
            ),
            sessions(
                StepKind::Pick,
                &[("1a", "2027-05-11"), ("1b", "2027-05-13")],
            ),
            sessions(
                StepKind::Pick,
                &[("1a", "2027-05-25"), ("1b", "2027-05-27")],
            ),
            from_to(StepKind::Cure, "2027-05-28", "2027-05-30"),
        ],
    )
}

/// The tomato of the tiny garden. Planted out on 19 April it is ripe on 29 May in the year
/// of 15 C, on 18 May in that of 19 C (and past from 3 June), on 6 June in that of 13.5 C,
/// never in that of 11 C.
pub fn tiny_tomato() -> Planting {
    let mut tomato = planting(
        "tomato",
        Method::Indoor,
        4,
        vec![place("A", 1, 4)],
        vec![
            sessions(StepKind::Sow, &[("2a", "2027-03-08")]),
            sessions(StepKind::PotUp, &[("2a", "2027-03-29")]),
            from_to(StepKind::Harden, "2027-04-12", "2027-04-18"),
            sessions(StepKind::PlantOut, &[("2a", "2027-04-19")]),
            sessions(StepKind::Pick, &[("2a", "2027-05-31")]),
            sessions(StepKind::Pick, &[("2a", "2027-06-07")]),
        ],
    );
    tomato.on_mat = true;
    tomato
}

/// A valid plan for the tiny garden: 48 beans of 20 g (0.96 kg of a target of 1 kg) and 4
/// tomatoes of 250 g (1 kg of a target of 2 kg) in a poor year.
pub fn tiny_plan(garden: &Garden) -> Plan {
    let aims = Aim::of(garden).zip([2.0, 2.0, 5.0, 2.0, 0.5, 2.0, 3.0, 0.0, 7.0, 0.0, 4.0]);
    let promises = vec![
        promise("bean", 2, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    Plan {
        aims: aims
            .map(|(aim, value)| AimResult {
                aim,
                value,
                bound: value,
            })
            .collect(),
        ..bare_plan(garden, vec![tiny_bean(), tiny_tomato()], promises, 2)
    }
}

/// The plan of the tiny garden for both grades together: class 2a comes to the beans on the Monday before the others,
/// so its part is ripe a day earlier than that of 1a, and picked a day earlier.
pub fn shared_bean_plan(garden: &Garden) -> Plan {
    let mut bean = tiny_bean();
    for step in &mut bean.steps {
        if let When::Sessions(visits) = &mut step.when {
            let date = monday_of(visits[0].date);
            visits.push(Visit {
                class: "2a".to_owned(),
                date,
            });
        }
    }
    let promises = vec![
        promise("bean", 2, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, vec![bean, tiny_tomato()], promises, 2)
}
