//! A garden as full as can be: twenty beds, thirty-six plantings, and names that would break a
//! page or a drawing if they could.

use tureen::checker::CheckedPlan;
use tureen::garden::{Area, BedAt, Garden, Position};
use tureen::plan::Planting;
use tureen::units::{Metres, Minutes};

use super::planned;
use crate::support::gardens::{bed, tiny_garden};
use crate::support::plans::{place, tiny_bean};

/// Names of things, in turn.
pub const NAMES: [&str; 6] = [
    "<script>alert('bean')</script>",
    "\u{5e9}\u{5e2}\u{5d5}\u{5e2}\u{5d9}\u{5ea} \u{202e}\u{5d9}\u{5e8}\u{5d5}\u{5e7}\u{5d4}",
    "\u{1f331}\u{1f468}\u{200d}\u{1f33e} \"bean\" & friends",
    "the longest name of a climbing bean that was ever written on a seed packet",
    "]]> --> </svg>",
    "Donaudampfschifffahrtsgesellschaftsbohne",
];

/// A name that no other has.
fn name(at: usize) -> String {
    match NAMES.get(at) {
        Some(name) => (*name).to_owned(),
        None => format!("bean of kind {at}"),
    }
}

/// The garden and its plan: 36 beans, two to a bed, sown on the same days.
pub fn full() -> (Garden, CheckedPlan) {
    let mut garden = tiny_garden().with_ingredients(|at| at.0 == 0);
    garden.grades.truncate(1);
    let bean = garden.ingredients[0].clone();
    garden.ingredients.clear();
    garden.beds.clear();
    for class in &mut garden.grades[0].classes {
        class.slots[0].minutes = Minutes(100_000.0);
    }
    garden.grades[0].name = NAMES[0].to_owned();
    garden.school_year.breaks[0].name = NAMES[3].to_owned();
    let mut plantings: Vec<Planting> = Vec::new();
    for at in 0..36 {
        let mut ingredient = bean.clone();
        ingredient.name = name(at);
        garden.ingredients.push(ingredient);
        let mut planting = tiny_bean();
        planting.ingredient = name(at);
        let id = name(at / 2);
        planting.places = vec![place(&id, if at % 2 == 0 { 1 } else { 5 }, 4)];
        plantings.push(planting);
    }
    for at in 0..20 {
        let mut bed = bed(&name(at), 8, if at % 3 == 0 { 8 } else { 0 });
        let (column, row) = ((at % 4) as f64, (at / 4) as f64);
        bed.at = (at < 16).then_some(Position {
            x: Metres(3.0 * column),
            y: Metres(1.8 * row),
        });
        garden.beds.push(bed);
    }
    garden.areas = (0..6)
        .map(|at| Area {
            name: name(at),
            size: (Metres(1.0), Metres(0.5)),
            at: Position {
                x: Metres(2.0 * at as f64),
                y: Metres(-1.0),
            },
        })
        .collect();
    assert_eq!(garden.bed_positions().last(), Some(BedAt(19)));
    let checked = planned(&garden, plantings);
    (garden, checked)
}
