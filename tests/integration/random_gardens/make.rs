//! Random valid gardens of a given size; the seed is the case.

use tureen::calendar::{Date, Horizon, plus_days};
use tureen::candidates::Candidates;
use tureen::garden::{
    Bed, BedAt, BedKind, Begun, BegunAt, Cover, Crop, Feast, Garden, GradeAt, Ingredient, Locale,
    Method, Patch, PatchAt, Reached, Runs, Shelf, Source, Spot, StripAt, Strips, Sun, Team,
};
use tureen::growth::{Block, need};
use tureen::units::{Celsius, Centimetres, Kilograms, Latitude, Metres, Share};

use super::dice::Dice;
use super::{crops, school, sky};

/// Least and most of everything that makes a garden large.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Size {
    pub grades: (u32, u32),
    pub ingredients: (u32, u32),
    pub beds: (u32, u32),
    /// Strips of a bed.
    pub strips: (u32, u32),
    pub weeks: (u32, u32),
    pub years: (u32, u32),
    pub flats: (u32, u32),
}

/// Small enough to try everything.
pub const TINY: Size = Size {
    grades: (1, 3),
    ingredients: (1, 3),
    beds: (1, 3),
    strips: (1, 8),
    weeks: (12, 24),
    years: (3, 8),
    flats: (0, 12),
};

/// The same with something to choose.
pub const TINY_CHOICE: Size = Size {
    grades: (2, 3),
    ingredients: (2, 3),
    ..TINY
};

/// More sowings than the ground, the shelf and the lessons hold.
pub const CROWDED: Size = Size {
    grades: (3, 4),
    ingredients: (3, 4),
    beds: (2, 4),
    strips: (2, 9),
    weeks: (16, 24),
    years: (8, 12),
    flats: (2, 10),
};

/// About a school.
pub const LARGER: Size = Size {
    grades: (3, 6),
    ingredients: (4, 7),
    beds: (4, 8),
    strips: (3, 10),
    weeks: (16, 28),
    years: (20, 20),
    flats: (4, 20),
};

/// How long before the plan something that already grows was sown, at the most.
const LONGEST_GROWN: i64 = 30;

/// So often another ingredient is drawn where one cannot be grown even by itself.
const DRAWS: u32 = 30;

/// The garden of a seed.
pub fn garden(seed: u64, size: &Size) -> Garden {
    let dice = &mut Dice::new(seed);
    let within = |dice: &mut Dice, (lo, hi)| dice.int(lo, hi);
    let south = dice.chance(0.3);
    let weeks = within(dice, size.weeks);
    let (start, feast) = school::feast(dice, south, weeks);
    let last = feast.rain_date.unwrap_or(feast.day);
    let school_year = school::school_year(dice, start, last);
    let count = within(dice, size.grades) as usize;
    let grades = school::grades(dice, &school_year, count);
    let beds = (0..within(dice, size.beds))
        .map(|k| bed(dice, k, size.strips, start))
        .collect();
    let shelf = shelf(dice, size.flats, start);
    let latitude = dice.real(30.0, 55.0);
    let longest = Horizon::spanning(plus_days(start, -LONGEST_GROWN), last);
    let years = within(dice, size.years);
    let weather = sky::record(dice, south, longest, years);
    let mut garden = Garden {
        name: format!("case {seed}"),
        school: None,
        locale: Locale::British,
        families_also: None,
        feast,
        latitude: Latitude(if south { -latitude } else { latitude }),
        weather,
        school_year,
        grades,
        ingredients: Vec::new(),
        beds,
        begun: Vec::new(),
        former: Vec::new(),
        patches: Vec::new(),
        areas: Vec::new(),
        shelf,
        assumed: Vec::new(),
        doubts: Vec::new(),
        season: None,
    };
    for k in 0..within(dice, size.ingredients) {
        garden = with_ingredient(dice, &garden, k);
    }
    if dice.chance(0.7) {
        tighten_shelf(dice, &mut garden);
    }
    garden
}

/// The garden of a seed in which most ingredients may be grown by several grades.
pub fn open_garden(seed: u64, size: &Size) -> Garden {
    let mut garden = garden(seed, size);
    let dice = &mut Dice::new(seed);
    let all: Vec<Team> = garden.grade_positions().map(Team::from).collect();
    for ingredient in &mut garden.ingredients {
        let own = ingredient.teams[0];
        let keep = dice.one(&[0.0, 0.5, 1.0, 1.0]);
        let may = |team: &Team, dice: &mut Dice| *team == own || dice.chance(keep);
        let teams = all.iter().copied();
        ingredient.teams = teams.filter(|team| may(team, dice)).collect();
    }
    garden
}

/// The garden of a seed in which some ingredients are grown by two grades or all together, and others by one of several.
pub fn shared_garden(seed: u64, size: &Size) -> Garden {
    let mut garden = open_garden(seed, size);
    let dice = &mut Dice::new(seed);
    let all: Vec<GradeAt> = garden.grade_positions().collect();
    for ingredient in &mut garden.ingredients {
        let own = ingredient.teams[0].grades();
        if dice.chance(0.6) {
            let another = all[dice.below(all.len())];
            ingredient.teams = vec![own.chain([another]).collect()];
        }
    }
    garden
}

fn bed(dice: &mut Dice, number: u32, strips: (u32, u32), start: Date) -> Bed {
    let length = f64::from(dice.int(strips.0, strips.1)) * 0.3 + dice.one(&[0.0, 0.0, 0.2]);
    let trellis = if dice.chance(0.4) {
        length * dice.one(&[0.4, 1.0])
    } else {
        0.0
    };
    Bed {
        id: format!("B{number}"),
        kind: BedKind::Bed,
        length: Metres(length),
        width: Metres(dice.one(&[0.6, 0.9, 0.9, 1.2])),
        soil: Centimetres(dice.one(&[20.0, 30.0, 30.0])),
        sun: dice.one(&[Sun::Part, Sun::Full, Sun::Full]),
        trellis: Metres(trellis),
        supports_put_up: trellis == 0.0 && number.is_multiple_of(3),
        cover: dice.chance(0.2).then(|| Cover {
            name: "fleece".into(),
            keeps_off: Celsius(3.0),
            warms_soil: Celsius(1.0),
        }),
        soil_bonus: Celsius(dice.one(&[-2.0, -2.0, -0.5])),
        free_from: dice
            .chance(0.25)
            .then(|| plus_days(start, i64::from(dice.int(0, 70)))),
        grew: grew(dice),
        runs: Runs::EastWest,
        at: None,
        of: Vec::new(),
        along_trellis: false,
    }
}

/// Makes the shelf about as small as the seedlings of all ingredients together allow.
fn tighten_shelf(dice: &mut Dice, garden: &mut Garden) {
    let all = Candidates::enumerate(garden).all;
    let least = |at| {
        let own = all.iter().filter(|c| c.ingredient == at);
        own.filter_map(|c| c.amounts.levels.first())
            .map(|level| level.sown.max(level.kept))
            .min()
    };
    let wanted: u32 = garden.ingredient_positions().filter_map(least).sum();
    if wanted > 0 {
        let flats = dice.int((wanted * 2).div_ceil(3), wanted + 2);
        garden.shelf.flats = garden.shelf.flats.min(flats);
        garden.shelf.warm_flats = garden.shelf.warm_flats.min(flats);
    }
}

fn grew(dice: &mut Dice) -> Vec<(i32, Vec<String>)> {
    let families = ["onion", "cabbage", "nightshade", "bean"];
    let mut grew = Vec::new();
    for year in (2023..=2026).rev() {
        if dice.chance(0.3) {
            grew.push((year, vec![dice.one(&families).into()]));
        }
    }
    grew
}

fn shelf(dice: &mut Dice, flats: (u32, u32), start: Date) -> Shelf {
    let flats = dice.int(flats.0, flats.1);
    let warm = dice.int(0, flats);
    Shelf {
        flats,
        warm_flats: if dice.chance(0.5) { 0 } else { warm },
        room: Celsius(dice.one(&[17.0, 20.0])),
        from: plus_days(start, i64::from(dice.int(0, 7))),
        until: dice
            .chance(0.2)
            .then(|| plus_days(start, i64::from(dice.int(40, 100)))),
    }
}

/// The garden with one more ingredient, mostly one that can be grown if it is the only one.
fn with_ingredient(dice: &mut Dice, garden: &Garden, number: u32) -> Garden {
    let draws = if dice.chance(0.03) { 1 } else { DRAWS };
    let mut drawn = garden.clone();
    for _ in 0..draws {
        drawn = garden.clone();
        ingredient(dice, &mut drawn, number);
        let mut alone = drawn.clone();
        alone.ingredients.drain(..garden.ingredients.len());
        if !Candidates::enumerate(&alone).all.is_empty() {
            break;
        }
    }
    drawn
}

/// Adds an ingredient, and what already stands for it if it is such a one.
fn ingredient(dice: &mut Dice, garden: &mut Garden, number: u32) {
    let crop = crops::crop(dice, format!("crop {number}"));
    let methods = crop.methods.clone();
    let mut ingredient = Ingredient {
        name: format!("ingredient {number}"),
        teams: vec![GradeAt(dice.below(garden.grades.len())).into()],
        source: Source::Sown,
        methods,
        grams_per_portion: 0.0,
        least_share: Share(dice.one(&[0.2, 0.35, 0.5, 0.7, 1.0])),
        each_child_sows: dice.int(0, 2),
        max_sowings: dice.one(&[1, 1, 1, 2, 2, 3]),
        instead: Vec::new(),
        fallback: None,
        crop,
    };
    let standing = dice.below(12);
    let target = if standing == 0 && garden.begun.is_empty() {
        growing(dice, garden, &mut ingredient)
    } else if standing == 1 && garden.patches.is_empty() {
        patch(dice, garden, &mut ingredient)
    } else {
        let blocks = if dice.chance(0.3) {
            f64::from(dice.int(1, 3))
        } else {
            dice.real(0.5, 4.5)
        };
        one_block(dice, garden, &ingredient) * blocks
    };
    ingredient.grams_per_portion = target.0 * 1000.0 / f64::from(garden.feast.portions);
    garden.ingredients.push(ingredient);
}

/// What a block in some bed gives in a poor year.
fn one_block(dice: &mut Dice, garden: &Garden, ingredient: &Ingredient) -> Kilograms {
    let width = garden.beds[dice.below(garden.beds.len())].width;
    let plants = Block::of(&ingredient.crop, width).map_or(1, |b| b.plants);
    need(ingredient, Method::Direct, 1, plants).low
}

/// Puts a crop into some bed before the plan begins; a target that it mostly reaches.
fn growing(dice: &mut Dice, garden: &mut Garden, ingredient: &mut Ingredient) -> Kilograms {
    let at = BedAt(dice.below(garden.beds.len()));
    let bed = &garden[at];
    let first_strip = dice.int(0, bed.strips() - 1);
    let strips = dice.int(1, bed.strips() - first_strip);
    let block = Block::of(&ingredient.crop, bed.width).map_or(1, |b| b.plants / b.strips);
    let stands = need(ingredient, Method::Direct, 1, (block * strips).max(1)).low;
    let since = plus_days(
        garden.school_year.start,
        -i64::from(dice.int(0, LONGEST_GROWN as u32)),
    );
    ingredient.source = Source::Begun(BegunAt(garden.begun.len()));
    garden.begun.push(Begun {
        spot: Spot::Bed {
            bed: at,
            strips: Strips {
                first: StripAt(first_strip),
                count: strips,
            },
        },
        reached: match dice.chance(0.5) {
            true => Reached::PlantedOut,
            false => Reached::Sown,
        },
        since,
    });
    stands * (dice.real(0.4, 1.1) / ingredient.least_share.0)
}

/// Adds a perennial patch; a target that it mostly reaches.
fn patch(dice: &mut Dice, garden: &mut Garden, ingredient: &mut Ingredient) -> Kilograms {
    let Feast { day, .. } = garden.feast;
    let pick_from = plus_days(day, -i64::from(dice.int(5, 40)));
    let low = Kilograms(dice.real(0.5, 4.0));
    ingredient.source = Source::Patch(PatchAt(garden.patches.len()));
    let Crop { name, .. } = &ingredient.crop;
    garden.patches.push(Patch {
        id: "P".into(),
        crop: name.clone(),
        pick_from,
        pick_to: plus_days(pick_from, i64::from(dice.int(5, 40))),
        low,
        expected: low * 1.4,
        size: None,
        at: None,
    });
    low * (dice.real(0.4, 1.1) / ingredient.least_share.0)
}
