//! Ladders: the ways in which one thing in a project can be changed, from the cheapest rung to
//! the dearest. A repair is the lowest rung that helps.

use rayon::prelude::*;

use crate::catalogue::Catalogue;
use crate::garden::{Care, Garden, GradeAt, IngredientAt, Method, Source};
use crate::project::Change;

use super::kind::Kind;

/// One way of changing a project.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// What it changes.
    pub kind: Kind,
    /// The changes to the file.
    pub changes: Vec<Change>,
}

/// Rungs of one kind, from the cheapest to the dearest.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    rungs: Vec<Rung>,
    /// True if a dearer rung helps wherever a cheaper one does.
    rising: bool,
}

/// Flats that a school might still find room for.
const MOST_FLATS: u32 = 12;
/// Beds that a school might still build.
const MOST_BEDS: u32 = 4;
/// Minutes that a session might still grow by, and the steps.
const MOST_MINUTES: u32 = 30;
const MINUTES: usize = 5;
/// Weeks by which the feast might move.
const MOST_WEEKS: i64 = 6;
/// Shares of the grams that are tried: steps of a twentieth.
pub const PARTS: u32 = 20;

/// Whether some changes are enough.
pub type Helps<'a> = dyn Fn(&[Change]) -> bool + Sync + 'a;

impl Ladder {
    /// The cheapest rung that helps.
    pub fn lowest(&self, helps: &Helps<'_>) -> Option<Rung> {
        if !self.rising {
            let rungs = self.rungs.par_iter();
            return rungs.find_first(|rung| helps(&rung.changes)).cloned();
        }
        if !self.rungs.last().is_some_and(|rung| helps(&rung.changes)) {
            return None;
        }
        let at = first_that(self.rungs.len(), |n| {
            self.rungs.get(n).is_some_and(|rung| helps(&rung.changes))
        });
        self.rungs.get(at).cloned()
    }

    /// The first few rungs that help.
    pub fn all_that_help(&self, helps: &Helps<'_>, most: usize) -> Vec<Rung> {
        let rungs = self.rungs.par_iter();
        let mut good: Vec<Rung> = rungs.filter(|r| helps(&r.changes)).cloned().collect();
        good.truncate(most);
        good
    }

    /// True if its rungs are other crops, of which none is cheaper than another.
    pub fn is_about_crops(&self) -> bool {
        let first = self.rungs.first();
        first.is_some_and(|rung| matches!(rung.kind, Kind::AnotherCrop { .. }))
    }
}

/// The first of `n` numbers for which something holds that holds for all after it, too; the
/// last, if it is not known to hold for any.
pub fn first_that(n: usize, holds: impl Fn(usize) -> bool) -> usize {
    let (mut lo, mut hi) = (0, n.saturating_sub(1));
    while lo < hi {
        let middle = usize::midpoint(lo, hi);
        if holds(middle) {
            hi = middle;
        } else {
            lo = middle + 1;
        }
    }
    hi
}

/// The ladders that change something around the dish, cheapest kind first.
pub fn around_the_dish(garden: &Garden) -> Vec<Ladder> {
    let mut ladders = Vec::new();
    ladders.extend(someone_there(garden));
    ladders.push(more_flats(garden));
    ladders.extend(longer_sessions(garden));
    ladders.push(cover(garden));
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

/// Other grades that are old enough, where the file names one: first those that grow nothing.
fn another_grade(garden: &Garden, at: IngredientAt) -> Ladder {
    let ingredient = &garden[at];
    let given = ingredient.only_grade();
    let grows = |grade: &GradeAt| garden.ingredients.iter().any(|i| i.grades.contains(grade));
    let mut others: Vec<GradeAt> = garden
        .grade_positions()
        .filter(|grade| given.is_some_and(|given| given != *grade))
        .filter(|grade| !ingredient.is_too_hard_for(&garden[*grade]))
        .collect();
    others.sort_by_key(grows);
    let rung = |grade: &GradeAt| Rung {
        kind: Kind::AnotherGrade {
            ingredient: ingredient.name.clone(),
            grade: garden[*grade].name.clone(),
        },
        changes: vec![Change::set(
            &["dish", "ingredient", &ingredient.name, "grade"],
            &format!("{:?}", garden[*grade].id),
        )],
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

/// Other crops that can be sown and that the dish does not hold, in the order of the catalogue.
fn another_crop(garden: &Garden, at: IngredientAt, catalogue: &Catalogue) -> Ladder {
    let old = &garden[at];
    let is_new = |name: &&str| garden.ingredients.iter().all(|i| i.crop.name != **name);
    let can_be_sown = |name: &&str| catalogue.get(name).is_some_and(|c| !c.methods.is_empty());
    let rungs = catalogue
        .names()
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
        .any(|i| i.source == Source::Sown && i.crop.methods.contains(&Method::Indoor));
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

/// One ladder a grade that grows something.
fn longer_sessions(garden: &Garden) -> Vec<Ladder> {
    let grows = |grade: &GradeAt| garden.ingredients.iter().any(|i| i.grades.contains(grade));
    garden
        .grade_positions()
        .filter(grows)
        .map(|at| {
            let grade = &garden[at];
            let rungs = (MINUTES as u32..=MOST_MINUTES)
                .step_by(MINUTES)
                .map(|minutes| Rung {
                    kind: Kind::LongerSessions {
                        grade: grade.id.clone(),
                        minutes,
                    },
                    changes: grade
                        .classes
                        .iter()
                        .map(|class| {
                            let way = ["grade", &grade.id, "classes", &class.name, "minutes"];
                            let now = class.slots.first().map_or(0.0, |slot| slot.minutes.0);
                            Change::set(&way, &(now + f64::from(minutes)).to_string())
                        })
                        .collect(),
                });
            Ladder {
                rungs: rungs.collect(),
                rising: true,
            }
        })
        .collect()
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

/// Fleece over one more bed with each rung, the longest first.
fn cover(garden: &Garden) -> Ladder {
    let mut bare: Vec<_> = garden.beds.iter().filter(|b| b.cover.is_none()).collect();
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

/// New beds like the longest one.
fn more_beds(garden: &Garden) -> Option<Ladder> {
    let like = garden.beds.iter().max_by_key(|bed| bed.strips())?;
    let one = |n: u32| {
        let id = format!("new {n}");
        let table = format!(
            "{{ id = \"{id}\", length_m = {:?}, width_m = {:?}, soil_cm = {:?}, trellis_m = {:?} }}",
            like.length.0, like.width.0, like.soil.0, like.trellis.0
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
