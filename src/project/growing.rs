//! The sections [[growing]]: what stands in the beds when the plan begins, for an ingredient, or for none until
//! it is cleared. What stands on the shelf is read by `seedlings`.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, peek};
use crate::garden::{Bed, BedAt, Begun, Former, MOST_PLOTS, Reached, Spot, StripAt, Strips};

use super::assumed::Assumed;
use super::bed::{self, RawBed};
use super::crop_names::Crops;
use super::figures::count;
use super::kind::{date, flag, text};
use super::names::quote;
use super::order::in_order;
use super::table::Table;

/// Days from clearing until something new may come, where the file does not say: what is dug in green rots for
/// two to four weeks before seed is sown on it (common practice).
const USUAL_REST: u32 = 21;

/// A [[growing]] section as given.
pub struct RawGrowing {
    pub crop: Read<Given<String>>,
    bed: Read<Given<String>>,
    first_strip: Read<Option<Given<u32>>>,
    strips: Read<Given<u32>>,
    pub sown: Read<Given<Date>>,
    as_plants: Read<Option<Given<bool>>>,
    pub for_ingredient: Read<Option<Given<String>>>,
    cleared: Read<Option<Given<Date>>>,
    rest_days: Read<Option<Given<u32>>>,
}

/// Reads a [[growing]] section.
pub fn read(t: &mut Table<'_, '_>) -> RawGrowing {
    RawGrowing {
        crop: t.need("crop", "what stands there", "\"garlic\"", text()),
        bed: t.need("bed", "the `id` of its bed", "\"1\"", text()),
        first_strip: t.maybe(
            "first_strip",
            "its first strip; a strip is 30 cm of the bed's length",
            1,
            count(1..=1000),
        ),
        strips: t.need("strips", "how many strips it takes", "4", count(1..=1000)),
        sown: t.need(
            "sown",
            "the day of sowing or planting",
            "2026-10-12",
            date(),
        ),
        as_plants: t.maybe(
            "as_plants",
            "where it is for an ingredient: true if it was planted out",
            false,
            flag(),
        ),
        for_ingredient: t.maybe(
            "for",
            "the name of the ingredient that it becomes",
            "none, and `cleared` is given",
            text(),
        ),
        cleared: t.maybe(
            "cleared",
            "where it is for no ingredient: the day on which it is cut, pulled or dug in",
            "its last pick",
            date(),
        ),
        rest_days: t.maybe(
            "rest_days",
            "from `cleared` until something new may come: 7 to clear and rake, 21 where it is dug in",
            USUAL_REST,
            count(0..=120),
        ),
    }
}

impl RawGrowing {
    /// True if it is for an ingredient, as far as is known.
    pub fn serves(&self) -> bool {
        !matches!(self.for_ingredient, Ok(None))
    }
}

/// What the sections are checked against.
pub struct Around<'a> {
    pub crops: Crops<'a>,
    pub raw_beds: &'a [Given<RawBed>],
    pub beds: Read<&'a [Bed]>,
    pub feast: Read<Given<Date>>,
}

/// What grows for an ingredient, and what stands for none.
pub type Growing = (Vec<Begun>, Vec<Former>);

/// What grows already, if it fits into its beds.
pub fn check(
    raw: &[Given<RawGrowing>],
    around: &Around<'_>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Growing> {
    let places: Vec<Read<Place>> = raw
        .iter()
        .map(|given| place(&given.value, around, findings))
        .collect();
    let mut checked = Vec::new();
    for (given, place) in raw.iter().zip(&places) {
        checked.push(match given.value.serves() {
            true => begun(&given.value, *place, around, findings).map(Stands::Begun),
            false => former(given, *place, around, findings, assumed).map(Stands::Former),
        });
    }
    let places: Vec<Place> = places.into_iter().collect::<Read<_>>()?;
    apart(&places, findings)?;
    few_parts(raw, &places, around.beds?, findings)?;
    let (mut begun, mut former) = (Vec::new(), Vec::new());
    for stands in checked {
        match stands? {
            Stands::Begun(one) => begun.push(one),
            Stands::Former(one) => former.push(one),
        }
    }
    Ok((begun, former))
}

/// One section as it was checked.
enum Stands {
    Begun(Begun),
    Former(Former),
}

/// A bed, its strips, and where the file says how many.
type Place = ((BedAt, Strips), Given<u32>);

/// The strips of a section, if its bed has them.
fn place(raw: &RawGrowing, around: &Around<'_>, findings: &mut Findings) -> Read<Place> {
    let at = peek(&raw.bed).and_then(|id| {
        // The ground along a trellis has no section of its own.
        let mut beds = around.beds.into_iter().flatten();
        match beds.position(|bed| bed.along_trellis && bed.id == id.value) {
            Some(at) => Ok(BedAt(at)),
            None => bed::find(around.raw_beds, id, findings),
        }
    });
    let count = raw.strips?;
    let (bed, strips) = (at?, strips(raw.first_strip?, count));
    within_bed(bed, strips, (count, around.beds?), findings)?;
    Ok(((bed, strips), count))
}

/// What is for an ingredient.
fn begun(
    raw: &RawGrowing,
    place: Read<Place>,
    around: &Around<'_>,
    findings: &mut Findings,
) -> Read<Begun> {
    if let (Ok(sown), Ok(feast)) = (raw.sown, around.feast) {
        in_order(("sown", sown), ("feast", feast), findings)?;
    }
    let for_ingredient = peek(&raw.for_ingredient)?.as_ref();
    if let (Some(cleared), Some(name)) = (raw.cleared?, for_ingredient) {
        let cause = "what is for an ingredient is cleared after its last pick";
        let problem = Problem::new(Code::ConflictingKeys, cause)
            .at(cleared.span, "only for what is for no ingredient")
            .also(name.span, "it is for this one");
        return Err(findings.report(problem.remedy("remove `cleared`, or remove `for`")));
    }
    if let Some(rest) = raw.rest_days? {
        let cause = "`rest_days` is only for what is for no ingredient";
        let problem = Problem::new(Code::KeyWithoutEffect, cause).at(rest.span, "");
        let remedy = "remove it: a week to clear the strips after the last pick is kept anyway";
        return Err(findings.report(problem.remedy(remedy)));
    }
    let as_plants = raw.as_plants?.is_some_and(|given| given.value);
    let ((bed, strips), _) = place?;
    Ok(Begun {
        spot: Spot::Bed { bed, strips },
        reached: match as_plants {
            true => Reached::PlantedOut,
            false => Reached::Sown,
        },
        since: raw.sown?.value,
    })
}

/// What is for no ingredient.
fn former(
    given: &Given<RawGrowing>,
    place: Read<Place>,
    around: &Around<'_>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Former> {
    let raw = &given.value;
    let Some(cleared) = raw.cleared? else {
        let cause = "this is for no ingredient, and nothing says when it is cleared";
        let problem = Problem::new(Code::MissingKey, cause).at(given.span, "");
        let remedy = "name its ingredient with `for`, or give `cleared`, the day on which it is cut, \
                      pulled or dug in";
        return Err(findings.report(problem.remedy(remedy)));
    };
    in_order(("sown", raw.sown?), ("cleared", cleared), findings)?;
    if let Some(as_plants) = raw.as_plants? {
        let cause = "`as_plants` is only for what is for an ingredient";
        let problem = Problem::new(Code::KeyWithoutEffect, cause).at(as_plants.span, "");
        let remedy =
            "remove it: of what is for no ingredient only the day counts on which it is cleared";
        return Err(findings.report(problem.remedy(remedy)));
    }
    let name = peek(&raw.crop)?;
    let family = around.crops.family(name, findings)?;
    let ((bed, strips), _) = place?;
    let rest_days = raw.rest_days?.map(|given| given.value);
    if rest_days.is_none() {
        let what = format!("rest_days = {USUAL_REST}");
        assumed.note_for(
            &name.value,
            what,
            "what is dug in rots first (two to four weeks)",
        );
    }
    Ok(Former {
        name: name.value.clone(),
        family,
        bed,
        strips,
        cleared: cleared.value,
        rest_days: rest_days.unwrap_or(USUAL_REST),
    })
}

/// The strips of a section: from the bed's start where it does not say from where.
fn strips(first: Option<Given<u32>>, count: Given<u32>) -> Strips {
    let first = first.and_then(|first| StripAt::numbered(first.value));
    Strips {
        first: first.unwrap_or(StripAt(0)),
        count: count.value,
    }
}

fn within_bed(
    at: BedAt,
    strips: Strips,
    (given, beds): (Given<u32>, &[Bed]),
    findings: &mut Findings,
) -> Read<()> {
    let Some(bed) = beds.get(at.0) else {
        return Ok(());
    };
    let (last, has) = (strips.last().number(), bed.strips());
    if last <= has {
        return Ok(());
    }
    let cause = format!(
        "this reaches to strip {last}, but bed {} has {has}",
        quote(&bed.id)
    );
    let remedy = "a strip is 30 cm of the bed's length; correct `first_strip` or `strips`";
    Err(findings.report(
        Problem::new(Code::OutsideBed, cause)
            .at(given.span, "")
            .remedy(remedy),
    ))
}

fn apart(places: &[Place], findings: &mut Findings) -> Read<()> {
    let mut order: Vec<&Place> = places.iter().collect();
    order.sort_by_key(|((bed, strips), _)| (*bed, strips.first));
    let mut result = Ok(());
    for pair in order.windows(2) {
        let [
            ((bed, before), first_given),
            ((other_bed, strips), second_given),
        ] = pair
        else {
            continue;
        };
        if bed == other_bed && before.meets(*strips) {
            let cause = "two [[growing]] sections stand on the same strip";
            result = Err(findings.report(
                Problem::new(Code::StripsOverlap, cause)
                    .at(second_given.span, "this one")
                    .also(first_given.span, "and this one")
                    .remedy("correct `first_strip` or `strips`; strips count from 1"),
            ));
        }
    }
    result
}

/// That the beds have no more parts than the program tells apart, with what stands in them already.
fn few_parts(
    raw: &[Given<RawGrowing>],
    places: &[Place],
    beds: &[Bed],
    findings: &mut Findings,
) -> Read<()> {
    let in_bed = |at: BedAt| places.iter().filter(move |((bed, _), _)| *bed == at);
    let parts_of = |(at, bed): (usize, &Bed)| {
        let taken: Vec<Strips> = in_bed(BedAt(at)).map(|((_, strips), _)| *strips).collect();
        bed.parts(&taken).len()
    };
    let parts: usize = beds.iter().enumerate().map(parts_of).sum();
    match raw.last() {
        Some(last) if parts > MOST_PLOTS => {
            let cause = format!(
                "what stands already splits the beds into {parts} parts; at most {MOST_PLOTS} can be planned"
            );
            let label = format!("this is one of {} such sections", raw.len());
            let problem = Problem::new(Code::WrongLength, cause).at(last.span, label);
            let remedy = "write neighbours that are for no ingredient and are cleared together as one section, or leave \
                          out beds that are not for the dish";
            Err(findings.report(problem.remedy(remedy)))
        }
        _ => Ok(()),
    }
}
