//! What a year leaves to the next, in words.

use crate::facts::carried::{Carried, KnownFrom, Seed, WithoutABed};
use crate::garden::Garden;
use crate::project::carry_over::{CarriedOver, Children, Gone, What};

use super::{Words, count, list, sentence};

/// At most so many beds are told one by one.
const MOST_BEDS: usize = 20;

/// What stands at the head of the new file, line by line.
#[must_use]
pub fn remarks(garden: &Garden, carried: &Carried<'_>) -> Vec<String> {
    let day = Words::of(garden).full_day(garden.feast.day);
    let mut lines = vec![
        format!("from the file of {}, eaten on {day}.", garden.name),
        "all days are 52 weeks later, on the same weekdays: hold terms, breaks and days off against next year's \
         calendar."
            .to_owned(),
        "the children have moved up by a grade; what a grade grows has stayed with the grade. See to `portions`."
            .to_owned(),
        known_from(carried).to_owned(),
    ];
    lines.extend(seed(carried));
    lines
}

/// From what it is known what grew in the beds.
fn known_from(carried: &Carried<'_>) -> &'static str {
    match (carried.known, carried.is_over) {
        (KnownFrom::File, _) => {
            "no plan was there to tell what grew in the beds this year: write it into `grew`."
        }
        (KnownFrom::Plan, true) => {
            "what grew in the beds is as it was planned: correct `grew` where it was otherwise."
        }
        (KnownFrom::Plan, false) => {
            "the season is not over: what grows in the beds is as it is planned, and `grew` may have to be corrected."
        }
        (KnownFrom::Diary, true) => "what grew in the beds is by the plan and the diary.",
        (KnownFrom::Diary, false) => {
            "the season is not over: what grows in the beds is by the diary so far and the plan, and `grew` may have to \
             be corrected."
        }
    }
}

/// A heading with what stands under it.
pub type Section = (&'static str, Vec<String>);

/// What is told of a project that was carried over: what changed, what is still to be looked at, which seed is left.
/// `without` are ingredients for which the new file has no bed.
#[must_use]
pub fn told(
    carried: &Carried<'_>,
    (next, without): (&CarriedOver, &[WithoutABed<'_>]),
) -> Vec<Section> {
    let days = "All days are 52 weeks later, on the same weekdays.";
    let changed = [Some(days.to_owned()), Some(beds(carried))];
    let changed = changed.into_iter().chain([moved_up(next), left(next)]);
    let calendar = "Terms, breaks, days off and harvest days, against next year's calendar; lessons and their hours.";
    let look_at = [
        Some(calendar.to_owned()),
        without_a_plan(carried),
        new_children(next),
        planted_before(next),
        stood_until(next),
        not_in_the_file(carried),
        Some("Who grows what, and how many portions: both are as they were.".to_owned()),
    ];
    let look_at = without_a_bed(without)
        .into_iter()
        .chain(look_at.into_iter().flatten());
    let left = seed(carried).into_iter().map(|told| sentence(&told));
    let left = seeds_counted(carried).into_iter().chain(left);
    let sections = [
        ("What changed", changed.flatten().collect()),
        ("Look at this in the new file", look_at.collect()),
        ("Seed that is left", left.collect::<Vec<_>>()),
    ];
    let some = sections.into_iter().filter(|(_, told)| !told.is_empty());
    some.collect()
}

/// What was written, and under which name it will be eaten. `files` are the new ones, the project file first.
#[must_use]
pub fn written(next: &CarriedOver, files: &[String], words: Words) -> String {
    format!(
        "Wrote {}: {}, eaten on {}.",
        list(files),
        next.name,
        words.full_day(next.feast)
    )
}

/// How it goes on with the new project file; `why` where a crop has no bed.
#[must_use]
pub fn then(file: &str, without: &[WithoutABed<'_>]) -> Section {
    let mut then = vec![
        format!("tureen check {file}: what the program makes of it"),
        format!("tureen plan {file}: a plan of it"),
    ];
    if !without.is_empty() {
        then.push(format!(
            "tureen why {file}: which changes are enough for a plan"
        ));
    }
    ("Then", then)
}

/// What is said first where the season is not over.
#[must_use]
pub fn not_over(garden: &Garden) -> String {
    format!(
        "The season is not over before {}: what grows until then is taken as it is planned. Afterwards carry over \
         again, into another folder.",
        Words::of(garden).full_day(garden.last_day())
    )
}

/// What grew in which bed.
fn beds(carried: &Carried<'_>) -> String {
    let mut beds: Vec<(&str, i32, Vec<&str>)> = Vec::new();
    for grown in &carried.grown {
        match beds.last_mut() {
            Some((bed, year, crops)) if *bed == grown.bed && *year == grown.year => {
                if !crops.contains(&grown.crop.as_str()) {
                    crops.push(&grown.crop);
                }
            }
            _ => beds.push((&grown.bed, grown.year, vec![&grown.crop])),
        }
    }
    let told = beds.iter().take(MOST_BEDS);
    let told = told.map(|(bed, year, crops)| format!("{bed}: {} ({year})", list(crops)));
    let mut told: Vec<String> = told.collect();
    if let Some(more) = beds.len().checked_sub(MOST_BEDS).filter(|more| *more > 0) {
        told.push(format!("{more} more"));
    }
    match told.is_empty() {
        true => "By what is known nothing grew in the beds.".to_owned(),
        false => format!(
            "What grew stands in `grew` of its bed. {}.",
            told.join("; ")
        ),
    }
}

/// Who has moved up.
fn moved_up(next: &CarriedOver) -> Option<String> {
    let told = |own: &Children| {
        let classes = if own.in_other_classes {
            ", in other classes"
        } else {
            ""
        };
        Some(format!(
            "{} has the {} of {}{classes}",
            own.grade,
            own.count,
            own.were.as_ref()?
        ))
    };
    let told: Vec<String> = next.children.iter().filter_map(told).collect();
    (!told.is_empty()).then(|| format!("The children have moved up: {}.", told.join(", ")))
}

/// Grades of which nobody knows how many children begin.
fn new_children(next: &CarriedOver) -> Option<String> {
    let new = next.children.iter().filter(|own| own.were.is_none());
    let new: Vec<String> = new
        .map(|own| format!("{} ({})", own.grade, own.count))
        .collect();
    (!new.is_empty()).then(|| {
        format!(
            "How many children begin in {}: the numbers are last year's.",
            list(&new)
        )
    })
}

/// What left the file.
fn left(next: &CarriedOver) -> Option<String> {
    let told: Vec<String> = next.gone.iter().map(gone).collect();
    (!told.is_empty()).then(|| format!("What is over has left the file: {}.", list(&told)))
}

fn gone(gone: &Gone) -> String {
    let what = match &gone.what {
        What::ForTheDish(crop) | What::ForNone(crop) => crop.clone(),
        What::Seedlings(crop) => format!("{crop} seedlings"),
        What::Unknown => "what stood until `free_from`".to_owned(),
    };
    match &gone.bed {
        Some(bed) => format!("{what} in bed {bed}"),
        None => what,
    }
}

/// What was planted before the plan began, and would have to be again.
fn planted_before(next: &CarriedOver) -> Option<String> {
    let crops = next.gone.iter().filter_map(|gone| match &gone.what {
        What::ForTheDish(crop) => Some(crop.as_str()),
        What::ForNone(_) | What::Seedlings(_) | What::Unknown => None,
    });
    let mut crops: Vec<&str> = crops.collect();
    crops.dedup();
    (!crops.is_empty()).then(|| {
        format!(
            "Whether {} is planted again before the new plan begins: then it needs its [[growing]]. Without one it is \
             planned from the start on.",
            list(&crops)
        )
    })
}

/// What stood in beds until a day, of which the file does not tell what it was.
fn stood_until(next: &CarriedOver) -> Option<String> {
    let beds = next.gone.iter().filter(|gone| gone.what == What::Unknown);
    let beds: Vec<&str> = beds.filter_map(|gone| gone.bed.as_deref()).collect();
    (!beds.is_empty()).then(|| {
        format!(
            "What stood until `free_from` in bed {}: if `grew` does not name it, add it.",
            list(&beds)
        )
    })
}

/// That nothing is known of what was sown.
fn without_a_plan(carried: &Carried<'_>) -> Option<String> {
    (carried.known == KnownFrom::File).then(|| {
        "There is no plan.json beside the project file, so what was sown this year is not known: write it into `grew`."
            .to_owned()
    })
}

/// Names that the plan has and the file has not.
fn not_in_the_file(carried: &Carried<'_>) -> Option<String> {
    (!carried.unknown.is_empty()).then(|| {
        format!(
            "The plan also grew {}, which the file does not have any more: add it to `grew`.",
            list(&carried.unknown)
        )
    })
}

/// Seed that is left, and for how long it is good: one line for what is good, one for what is not.
fn seed(carried: &Carried<'_>) -> Vec<String> {
    let is_good = |seed: &&Seed<'_>| seed.good_until.is_some_and(|until| until > seed.bought);
    let (good, old): (Vec<&Seed<'_>>, Vec<&Seed<'_>>) = carried.seed.iter().partition(is_good);
    let until = |seed: &&Seed<'_>| {
        let until = seed.good_until.unwrap_or(seed.bought);
        format!("{} until {until}", seed.ingredient.name)
    };
    let good: Vec<String> = good.iter().map(until).collect();
    let old: Vec<&str> = old
        .iter()
        .map(|seed| seed.ingredient.name.as_str())
        .collect();
    let good = (!good.is_empty()).then(|| {
        format!(
            "what is left of this year's seed is good if it was kept cool and dry: {}.",
            list(&good)
        )
    });
    let old = (!old.is_empty())
        .then(|| format!("seed to buy anew, for it does not keep: {}.", list(&old)));
    good.into_iter().chain(old).collect()
}

/// How much seed the plan counted; what a packet holds beyond that is left.
fn seeds_counted(carried: &Carried<'_>) -> Option<String> {
    let counted = carried.seed.iter();
    let counted = counted.map(|seed| format!("{} {}", seed.counted, seed.ingredient.name));
    let counted: Vec<String> = counted.collect();
    (!counted.is_empty()).then(|| {
        format!(
            "The plan counted so many seeds: {}. What your packets held beyond that is left.",
            list(&counted)
        )
    })
}

/// Ingredients for which rotation leaves no bed in the next year.
fn without_a_bed(without: &[WithoutABed<'_>]) -> Vec<String> {
    let told = without.iter().map(|own| {
        format!(
            "No bed is left for {}: the {} family must keep away for {}, and stood in all that suit it. The first is \
             ready for it again in {}. Find it another bed (supports, a container), or put another crop into the dish.",
            own.ingredient,
            own.family,
            count(own.years, "year"),
            own.again
        )
    });
    told.collect()
}
