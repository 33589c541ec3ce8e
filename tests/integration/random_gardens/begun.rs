//! Random gardens in which seedlings stand on the shelf when the plan begins, or beds are turned over.

use tureen::calendar::{Date, plus_days};
use tureen::candidates::Candidates;
use tureen::garden::{
    Bed, BedAt, Begun, BegunAt, Former, Garden, GradeAt, IngredientAt, Method, Reached, Source,
    Spot, StripAt, Strips,
};

use tureen::units::Metres;

use super::dice::Dice;
use super::make::{Size, garden};

/// The gardens of a seed and of those after it are drawn until something in one is raised on the shelf.
const DRAWS: u64 = 1_000;

/// A garden of a seed in which what would be sown on the shelf was sown there before the plan begins.
pub fn garden_with_seedlings(seed: u64, size: &Size) -> Garden {
    let dice = &mut Dice::new(seed);
    let seeds = (0..DRAWS).map(|draw| seed * DRAWS + draw);
    let mut gardens = seeds.filter_map(|seed| begun(dice, garden(seed, size)));
    gardens.next().expect("something is raised on a shelf")
}

/// The garden with its first ingredient of the shelf begun; `None` if there is none.
fn begun(dice: &mut Dice, mut garden: Garden) -> Option<Garden> {
    let all = Candidates::enumerate(&garden).all;
    let mut raised = all.iter().filter(|c| c.method == Method::Indoor);
    let (at, plants) = raised.next().map(|c| {
        let plants = c.amounts.blocks.1 * c.amounts.block.plants;
        (c.ingredient, plants)
    })?;
    let start = garden.school_year.start;
    let given = seedlings(dice, &garden, at, (start, plants));
    // Where there are some, the shelf holds them.
    garden.shelf.from = start;
    let indoor = garden[at].crop.indoor.unwrap();
    let flats = given.on_shelf().unwrap().flats(&indoor);
    garden.shelf.flats = garden.shelf.flats.max(flats);
    garden.ingredients[at.0].source = Source::Begun(BegunAt(garden.begun.len()));
    garden.begun.push(given);
    Some(garden)
}

/// About as many seedlings as the target wants, sown in the weeks before the start.
fn seedlings(
    dice: &mut Dice,
    garden: &Garden,
    at: IngredientAt,
    (start, plants): (Date, u32),
) -> Begun {
    let indoor = garden[at].crop.indoor.unwrap();
    let weeks = i64::from(dice.int(0, indoor.weeks_hi));
    let sown = plus_days(start, -7 * weeks + i64::from(dice.int(0, 6)));
    let in_pots = indoor.pots_per_flat.is_some() && weeks >= 2 && dice.chance(0.4);
    let (reached, since) = match in_pots {
        true => (Reached::PottedUp { sown }, plus_days(sown, 14)),
        false => (Reached::Sown, sown),
    };
    Begun {
        spot: Spot::Shelf {
            seedlings: (f64::from(plants) * dice.real(0.7, 1.6)).ceil() as u32,
        },
        reached,
        since,
    }
}

/// A garden of a seed in which something stands in a bed for an ingredient, is ripe early in the plan, and most
/// of the other beds carry something for none until some weeks after the start; some beds belong to a grade, and some are
/// the ground of one row along a trellis.
pub fn garden_turned_over(seed: u64, size: &Size) -> Garden {
    let dice = &mut Dice::new(seed);
    let seeds = (0..DRAWS).map(|draw| seed * DRAWS + draw);
    let mut gardens = seeds.filter_map(|seed| leaving(garden(seed, size)));
    let mut garden = gardens.next().expect("something grows in a bed");
    for at in garden.bed_positions() {
        let strips = Strips::from_start(garden[at].strips());
        let begun = garden.begun.iter().filter_map(Begun::in_bed);
        let grows = begun
            .clone()
            .any(|(bed, own)| bed == at && own.meets(strips));
        if !grows && dice.chance(0.6) {
            let former = former(dice, &garden, at);
            garden.former.push(former);
        }
        let all_trellis = garden[at].trellis_strips() == garden[at].strips();
        if !grows && all_trellis && dice.chance(0.5) {
            garden.beds[at.0].along_trellis = true;
            garden.beds[at.0].width = Metres(0.45);
        }
        if dice.chance(0.2) {
            garden.beds[at.0].of = vec![GradeAt(dice.below(garden.grades.len()))];
        }
    }
    match dice.chance(0.5) {
        true => climbing(&garden).unwrap_or(garden),
        false => garden,
    }
}

/// The same garden with ground of one row along a trellis, on which something that is sown climbs, of as much as there is
/// room for; `None` if nothing can.
fn climbing(garden: &Garden) -> Option<Garden> {
    let length = Metres(1.8);
    let row = Bed {
        id: "row".to_owned(),
        length,
        width: Metres(0.45),
        trellis: length,
        along_trellis: true,
        cover: None,
        free_from: None,
        grew: Vec::new(),
        of: Vec::new(),
        ..garden.beds[0].clone()
    };
    let at = BedAt(garden.beds.len());
    let sown = garden.ingredient_positions();
    let sown = sown.filter(|at| garden[*at].source == Source::Sown);
    let tries = sown.flat_map(|sown| [1.0, 0.5, 0.25].map(|part| (sown, part)));
    let mut gardens = tries.map(|(sown, part)| {
        let mut garden = garden.clone();
        garden.beds.push(row.clone());
        let climber = &mut garden.ingredients[sown.0];
        climber.crop.needs.trellis = true;
        climber.grams_per_portion *= part;
        garden
    });
    gardens.find(|garden| {
        let all = Candidates::enumerate(garden);
        let mut plots = all.all.iter().flat_map(|c| c.plots.iter());
        plots.any(|plot| all[plot].bed == at)
    })
}

/// The garden, if what stands in a bed of it may be picked well before the feast.
fn leaving(garden: Garden) -> Option<Garden> {
    let begun = garden.begun.iter().position(|b| b.in_bed().is_some())?;
    let is_it = |at: &IngredientAt| garden[*at].source == Source::Begun(BegunAt(begun));
    let at = garden.ingredient_positions().find(is_it)?;
    let all = Candidates::enumerate(&garden).all;
    let span = garden.horizon().days();
    let mut own = all.iter().filter(|c| c.ingredient == at);
    own.any(|c| c.bed_days.1 + 40 < span).then_some(garden)
}

/// Something on a few strips of a bed, for no ingredient.
fn former(dice: &mut Dice, garden: &Garden, bed: BedAt) -> Former {
    let has = garden[bed].strips();
    let first = dice.int(0, has - 1);
    let families = ["onion", "cabbage", "nightshade", "bean", "grass"];
    Former {
        name: "cover".to_owned(),
        family: dice.one(&families).to_owned(),
        bed,
        strips: Strips {
            first: StripAt(first),
            count: dice.int(1, has - first),
        },
        cleared: plus_days(garden.school_year.start, i64::from(dice.int(0, 30))),
        rest_days: dice.int(0, 21),
    }
}
