//! The ladders of a project: what can be changed in it, from the cheapest rung to the dearest.

mod sessions;

use crate::catalogue::Catalogue;
use crate::garden::{Bed, Care, Garden, GradeAt, IngredientAt, Method, Source, Team};
use crate::project::{Change, along_trellis_of};

use super::kind::Kind;
pub use super::rung::{Ladder, Rung, first_that};

/// Flats that a school might still find room for.
const MOST_FLATS: u32 = 12;
/// Beds that a school might still build.
const MOST_BEDS: u32 = 4;
/// Weeks by which the feast might move.
const MOST_WEEKS: i64 = 6;
/// Shares of the grams that are tried: steps of a twentieth.
pub const PARTS: u32 = 20;

/// The ladders that change something around the dish, cheapest kind first.
pub fn around_the_dish(garden: &Garden) -> Vec<Ladder> {
    let mut ladders = Vec::new();
    ladders.push(sessions::later_delivery(garden));
    ladders.extend(sessions::harvest_day(garden));
    ladders.extend(someone_there(garden));
    ladders.push(more_flats(garden));
    ladders.extend(sessions::longer(garden));
    ladders.extend(sessions::every_week(garden));
    ladders.push(bed_for_all(garden));
    ladders.push(cover(garden));
    ladders.push(trellis(garden));
    ladders.extend(more_beds(garden));
    ladders.push(another_day());
    ladders.retain(|ladder| !ladder.rungs.is_empty());
    ladders
}

/// The ladders that change one ingredient, cheapest kind first.
pub fn of_ingredient(garden: &Garden, at: IngredientAt, catalogue: &Catalogue) -> Vec<Ladder> {
    let rising = |rungs| Ladder {
        rungs,
        rising: true,
    };
    let grams = (1..PARTS).rev().map(|part| fewer_grams(garden, at, part));
    let mut ladders = vec![
        rising(grams.collect()),
        another_grade(garden, at),
        put_by(garden, at),
        another_crop(garden, at, catalogue),
        rising(vec![bought(garden, at)]),
    ];
    ladders.retain(|ladder| !ladder.rungs.is_empty());
    ladders
}

/// A part of an ingredient's grams, in twentieths, as a file would say it.
pub fn fewer_grams(garden: &Garden, at: IngredientAt, part: u32) -> Rung {
    let ingredient = &garden[at];
    let from = ingredient.grams_per_portion;
    let to = (from * f64::from(part) / f64::from(PARTS) * 10.0)
        .floor()
        .max(1.0)
        / 10.0;
    let way = ["dish", "ingredient", &ingredient.name, "grams_per_portion"];
    Rung {
        kind: Kind::FewerGrams {
            ingredient: ingredient.name.clone(),
            from,
            to,
        },
        changes: vec![Change::set(&way, &to.to_string())],
    }
}

/// Other grades that are old enough, where the file names who grows it: first those that grow nothing. Of several that
/// grow it together each may do so alone.
fn another_grade(garden: &Garden, at: IngredientAt) -> Ladder {
    let ingredient = &garden[at];
    let given = ingredient.only_team();
    let grows = |grade: &GradeAt| garden.ingredients.iter().any(|i| i.may_be_grown_by(*grade));
    let mut others: Vec<GradeAt> = garden
        .grade_positions()
        .filter(|grade| given.is_some_and(|given| given != Team::from(*grade)))
        .filter(|grade| !ingredient.is_too_hard_for(&garden[*grade]))
        .collect();
    others.sort_by_key(grows);
    let set = |key, value: &str| Change::set(&["dish", "ingredient", &ingredient.name, key], value);
    let shared = given.is_some_and(|given| given.size() > 1);
    let alone = |id: &str| -> Vec<Change> {
        let no_more = shared.then(|| set("together", ""));
        no_more
            .into_iter()
            .chain([set("grade", &format!("{id:?}"))])
            .collect()
    };
    let rung = |grade: &GradeAt| Rung {
        kind: Kind::AnotherGrade {
            ingredient: ingredient.name.clone(),
            grade: garden[*grade].name.clone(),
        },
        changes: alone(&garden[*grade].id),
    };
    Ladder {
        rungs: others.iter().map(rung).collect(),
        rising: false,
    }
}

/// The school's own figures of a crop, out of the file: they may stand only while it is grown.
fn without_own_figures(crop: &str) -> Change {
    Change::set(&["crop", crop], "")
}

/// Other crops that can be sown and that the dish does not hold: those that the cook takes in its place, the best first; else all,
/// in the order of the catalogue.
fn another_crop(garden: &Garden, at: IngredientAt, catalogue: &Catalogue) -> Ladder {
    let old = &garden[at];
    let is_new = |name: &&str| garden.ingredients.iter().all(|i| i.crop.name != **name);
    let can_be_sown = |name: &&str| catalogue.get(name).is_none_or(|c| !c.methods.is_empty());
    let names: Vec<&str> = match old.instead.is_empty() {
        true => catalogue.names().collect(),
        false => old.instead.iter().map(|crop| crop.name.as_str()).collect(),
    };
    let rungs = names
        .into_iter()
        .filter(|_| old.source == Source::Sown)
        .filter(is_new)
        .filter(can_be_sown)
        .map(|crop| Rung {
            kind: Kind::AnotherCrop {
                ingredient: old.name.clone(),
                crop: crop.to_owned(),
            },
            changes: vec![
                Change::set(&["dish", "ingredient", &old.name, "method"], ""),
                Change::set(
                    &["dish", "ingredient", &old.name, "crop"],
                    &format!("{crop:?}"),
                ),
                without_own_figures(&old.crop.name),
            ],
        });
    Ladder {
        rungs: rungs.collect(),
        rising: false,
    }
}

/// It is frozen, or dried; where that would not keep it longer there is no rung.
fn put_by(garden: &Garden, at: IngredientAt) -> Ladder {
    let ingredient = &garden[at];
    let rungs = ingredient.crop.keeps_longer().map(|kept| Rung {
        kind: Kind::PutBy {
            ingredient: ingredient.name.clone(),
            kept,
        },
        changes: vec![Change::set(
            &["dish", "ingredient", &ingredient.name, "kept"],
            &format!("{:?}", kept.key()),
        )],
    });
    Ladder {
        rungs: rungs.collect(),
        rising: false,
    }
}

fn bought(garden: &Garden, at: IngredientAt) -> Rung {
    let ingredient = &garden[at];
    Rung {
        kind: Kind::Bought {
            ingredient: ingredient.name.clone(),
        },
        changes: vec![
            Change::set(&["dish", "ingredient", &ingredient.name], ""),
            without_own_figures(&ingredient.crop.name),
        ],
    }
}

fn more_flats(garden: &Garden) -> Ladder {
    let indoor = garden
        .ingredients
        .iter()
        .any(|i| i.source == Source::Sown && i.crop.methods.contains(&Method::Indoor))
        || garden.begun.iter().any(|begun| begun.on_shelf().is_some());
    let rungs = (1..=MOST_FLATS).filter(|_| indoor).map(|more| Rung {
        kind: Kind::MoreFlats { more },
        changes: vec![Change::set(
            &["shelf", "flats"],
            &(garden.shelf.flats + more).to_string(),
        )],
    });
    Ladder {
        rungs: rungs.collect(),
        rising: true,
    }
}

/// Staff, then families, in each break in which nobody is there; families where staff are.
fn someone_there(garden: &Garden) -> Vec<Ladder> {
    let breaks = garden.school_year.breaks.iter();
    breaks
        .filter(|pause| pause.care != Care::Families)
        .map(|pause| {
            let who = match pause.care {
                Care::Nobody => vec![(Care::Staff, "\"staff\""), (Care::Families, "\"families\"")],
                _ => vec![(Care::Families, "\"families\"")],
            };
            let rungs = who.into_iter().map(|(who, word)| Rung {
                kind: Kind::SomeoneThere {
                    pause: pause.name.clone(),
                    who,
                },
                changes: vec![Change::set(
                    &["calendar", "breaks", &pause.name, "care"],
                    word,
                )],
            });
            Ladder {
                rungs: rungs.collect(),
                rising: true,
            }
        })
        .collect()
}

/// The beds that have a section in the file; the ground along a trellis has none of its own.
fn of_the_file(garden: &Garden) -> impl Iterator<Item = &Bed> {
    garden.beds.iter().filter(|bed| !bed.along_trellis)
}

/// Each of the beds that belong to some grades, for all.
fn bed_for_all(garden: &Garden) -> Ladder {
    let owned = of_the_file(garden).filter(|bed| !bed.of.is_empty());
    let rung = |bed: &Bed| Rung {
        changes: vec![Change::set(&["bed", &bed.id, "grade"], "")],
        kind: Kind::BedForAll {
            bed: bed.id.clone(),
        },
    };
    Ladder {
        rungs: owned.map(rung).collect(),
        rising: false,
    }
}

/// Fleece over one more bed with each rung, the longest first.
fn cover(garden: &Garden) -> Ladder {
    let mut bare: Vec<_> = of_the_file(garden).filter(|b| b.cover.is_none()).collect();
    bare.sort_by_key(|bed| std::cmp::Reverse(bed.strips()));
    let rungs = (1..=bare.len()).map(|n| {
        let beds: Vec<String> = bare.iter().take(n).map(|bed| bed.id.clone()).collect();
        Rung {
            changes: beds
                .iter()
                .map(|id| Change::set(&["bed", id, "cover"], "\"fleece\""))
                .collect(),
            kind: Kind::Cover { beds },
        }
    });
    Ladder {
        rungs: rungs.collect(),
        // Warmer ground can also be too warm for a seed.
        rising: false,
    }
}

/// A trellis along one more bed with each rung, the longest first; where something climbs.
fn trellis(garden: &Garden) -> Ladder {
    let climbs = garden.ingredients.iter().any(|i| i.crop.needs.trellis);
    // The row along a trellis is ground of its own: the rest of its bed has none, and lacks none.
    let has_row = |bed: &&Bed| {
        garden
            .beds
            .iter()
            .any(|row| row.id == along_trellis_of(&bed.id))
    };
    let lacks = |bed: &&Bed| climbs && bed.trellis_strips() < bed.strips() && !has_row(bed);
    let mut lacking: Vec<&Bed> = of_the_file(garden).filter(lacks).collect();
    lacking.sort_by_key(|bed| std::cmp::Reverse(bed.strips()));
    let rungs = (1..=lacking.len()).map(|n| Rung {
        kind: Kind::Trellis {
            beds: lacking.iter().take(n).map(|bed| bed.id.clone()).collect(),
        },
        changes: lacking
            .iter()
            .take(n)
            .map(|bed| Change::set(&["bed", &bed.id, "trellis_m"], &bed.length.0.to_string()))
            .collect(),
    });
    Ladder {
        rungs: rungs.collect(),
        rising: true,
    }
}

/// New beds like the longest one.
fn more_beds(garden: &Garden) -> Option<Ladder> {
    let like = of_the_file(garden).max_by_key(|bed| bed.strips())?;
    let one = |n: u32| {
        let id = format!("new {n}");
        // Where no bed says whether it has a trellis, the new one does not either.
        let trellis = match like.supports_put_up {
            true => String::new(),
            false => format!(", trellis_m = {:?}", like.trellis.0),
        };
        let table = format!(
            "{{ id = \"{id}\", length_m = {:?}, width_m = {:?}, soil_cm = {:?}{trellis} }}",
            like.length.0, like.width.0, like.soil.0
        );
        Change::set(&["bed", &id], &table)
    };
    let rungs = (1..=MOST_BEDS).map(|more| Rung {
        kind: Kind::MoreBeds {
            like: like.id.clone(),
            more,
        },
        changes: (1..=more).map(one).collect(),
    });
    Some(Ladder {
        rungs: rungs.collect(),
        rising: true,
    })
}

/// Other days, the nearest first.
fn another_day() -> Ladder {
    let rungs = (1..=MOST_WEEKS).flat_map(|weeks| [7 * weeks, -7 * weeks]);
    Ladder {
        rungs: rungs
            .map(|later| Rung {
                kind: Kind::AnotherDay { later },
                changes: vec![Change::OtherDay(later)],
            })
            .collect(),
        rising: false,
    }
}
