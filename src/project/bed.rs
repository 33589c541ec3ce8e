//! The sections [[bed]]: size, soil, sun, trellis, cover, and what they carried.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, peek};
use crate::garden::{Bed, BedAt, BedKind, Cover, Ingredient, Position, Runs, Source, Sun};
use crate::units::{Celsius, Centimetres, Metres};

use super::assumed::Assumed;
use super::crop_names::Crops;
use super::figures::number;
use super::form::Form;
use super::grade::{GradeIds, unique};
use super::kind::{Kind, date, sun, text, word};
use super::lists::{list, one_or_some};
use super::names::{listed, near, quote};
use super::table::{Table, named, sound, table};

/// Depth of soil where the file does not say (common practice: 20 to 30 cm in a raised bed).
const USUAL_SOIL: f64 = 30.0;

const KINDS: [(&str, BedKind); 2] = [("bed", BedKind::Bed), ("container", BedKind::Container)];

const RUNS: [(&str, Runs); 2] = [
    ("east-west", Runs::EastWest),
    ("north-south", Runs::NorthSouth),
];

/// Covers by name: degrees of frost kept off, and by which the soil is warmer. Common
/// practice, from memory.
const COVERS: [(&str, (&str, f64, f64)); 2] = [
    ("fleece", ("fleece", 2.0, 1.0)),
    ("tunnel", ("tunnel", 3.0, 3.0)),
];

/// So many beds, each with a part under a trellis and one without, leave room in `MOST_PLOTS` for what stands in them.
const MOST_BEDS: usize = 50;

/// Years and families.
type Grew = Vec<(i32, Vec<String>)>;

/// The same as the file gives it: crops or families.
type RawGrew = Vec<(i32, Vec<Given<String>>)>;

/// One section as given.
pub struct RawBed {
    pub id: Read<Given<String>>,
    kind: Read<Option<Given<BedKind>>>,
    pub length: Read<Given<f64>>,
    pub width: Read<Given<f64>>,
    soil: Read<Option<Given<f64>>>,
    sun: Read<Option<Given<Sun>>>,
    pub trellis: Read<Option<Given<f64>>>,
    pub trellis_depth: Read<Option<Given<f64>>>,
    cover: Read<Option<Given<Cover>>>,
    soil_bonus: Read<Option<Given<f64>>>,
    free_from: Read<Option<Given<Date>>>,
    grew: Read<Option<Given<RawGrew>>>,
    runs: Read<Option<Given<Runs>>>,
    pub at: Read<Option<Given<Position>>>,
    grade: Read<Option<Given<Vec<Given<String>>>>>,
}

/// Reads one section.
pub fn read(t: &mut Table<'_, '_>) -> RawBed {
    RawBed {
        id: t.need("id", "its short name, in quotes", "\"1\"", text()),
        kind: t.maybe("kind", "a large pot is a container", "bed", word(&KINDS)),
        length: t.need("length_m", "its length", "3.6", number(0.3..=50.0)),
        width: t.need("width_m", "its width", "1.2", number(0.2..=3.0)),
        soil: t.maybe(
            "soil_cm",
            "depth of good soil",
            USUAL_SOIL,
            number(1.0..=200.0),
        ),
        sun: t.maybe("sun", "how much sun it has in summer", "full", sun()),
        trellis: t.maybe(
            "trellis_m",
            "so much of its length has a trellis",
            "none; where no bed says it, supports are put up for what climbs",
            number(0.0..=50.0),
        ),
        trellis_depth: read_trellis_depth(t),
        cover: t.maybe(
            "cover",
            "what keeps frost off: a word, or a table of its figures",
            "none",
            cover(),
        ),
        soil_bonus: t.maybe(
            "soil_bonus_c",
            "so much warmer is its soil than open ground",
            0,
            number(-5.0..=10.0),
        ),
        free_from: t.maybe(
            "free_from",
            "something else stands here until then",
            "the start",
            date(),
        ),
        grew: t.maybe(
            "grew",
            "what it carried: crops or families, by year",
            "nothing is known",
            grew(),
        ),
        runs: t.maybe(
            "runs",
            "the way that its length lies on the map",
            "east-west",
            word(&RUNS),
        ),
        at: t.maybe(
            "at",
            "its south-west corner on the map",
            "beds are drawn in a row",
            position(),
        ),
        grade: read_grade(t),
    }
}

fn read_trellis_depth(t: &mut Table<'_, '_>) -> Read<Option<Given<f64>>> {
    t.maybe(
        "trellis_depth_cm",
        "so deep is one row along a trellis as long as the bed (40 to 45 is usual); the rest of the width is then \
         a bed of its own",
        "what climbs takes the whole width",
        number(30.0..=90.0),
    )
}

fn read_grade(t: &mut Table<'_, '_>) -> Read<Option<Given<Vec<Given<String>>>>> {
    t.maybe(
        "grade",
        "the `id` of the grade that it belongs to, or several in a list: nobody else sows or plants in it",
        "it is for all",
        one_or_some(text()),
    )
}

/// A place on the map.
pub fn position() -> Kind<'static, Position> {
    sound(table("this place", |t| {
        let far = || number(-10_000.0..=10_000.0);
        let x = t.need("x_m", "metres to the east", "0.0", far());
        let y = t.need("y_m", "metres to the north", "4.2", far());
        Ok(Position {
            x: Metres(x?.value),
            y: Metres(y?.value),
        })
    }))
}

/// Length and width on the map.
pub fn size() -> Kind<'static, (Metres, Metres)> {
    sound(table("this size", |t| {
        let long = || number(0.1..=1000.0);
        let length = t.need("length_m", "from west to east", "2.0", long());
        let width = t.need("width_m", "from south to north", "1.0", long());
        Ok((Metres(length?.value), Metres(width?.value)))
    }))
}

/// A cover by name, or with its own figures.
fn cover() -> Kind<'static, Cover> {
    let form = || Form::Either(Box::new(word(&COVERS).form()), Box::new(own_cover().form()));
    Kind::new(form, |value, findings| {
        if value.value.is_table() {
            return own_cover().read(value, findings);
        }
        let (name, keeps_off, warms_soil) = word(&COVERS).read(value, findings)?;
        Ok(Cover {
            name: name.to_owned(),
            keeps_off: Celsius(keeps_off),
            warms_soil: Celsius(warms_soil),
        })
    })
}

fn own_cover() -> Kind<'static, Cover> {
    sound(table("this cover", |t| {
        let degrees = || number(0.0..=15.0);
        let name = t.need("name", "what it is", "\"glass\"", text());
        let keeps_off = t.need("keeps_off_c", "degrees of frost kept off", "3.0", degrees());
        let warms_soil = t.need(
            "warms_soil_c",
            "so much warmer is the soil",
            "2.0",
            degrees(),
        );
        Ok(Cover {
            name: name?.value,
            keeps_off: Celsius(keeps_off?.value),
            warms_soil: Celsius(warms_soil?.value),
        })
    }))
}

/// What the bed carried: years with crops or families.
fn grew() -> Kind<'static, RawGrew> {
    named(
        "YEAR",
        || list(text()).form(),
        |year, value, findings| {
            let number: Option<i32> = year
                .value
                .parse()
                .ok()
                .filter(|y| (1900..=2200).contains(y));
            let number = number.ok_or_else(|| {
                let cause = format!("{} is not a year", quote(year.value));
                findings.report(
                    Problem::new(Code::OutOfRange, cause)
                        .at(year.span, "should be a year such as 2026")
                        .remedy("write `grew = { 2026 = [\"onion\"] }`"),
                )
            });
            let names = list(text()).read(value, findings)?;
            Ok((number?, names))
        },
    )
    .and_then(|years, _| years.into_iter().collect())
}

/// The families that stood there, the last year first.
fn families(raw: &RawGrew, crops: &Crops<'_>, findings: &mut Findings) -> Read<Grew> {
    let of_year = |(year, names): &(i32, Vec<Given<String>>), findings: &mut Findings| {
        let families = names.iter().map(|name| crops.family(name, findings));
        let families: Vec<Read<String>> = families.collect();
        let mut families: Vec<String> = families.into_iter().collect::<Read<_>>()?;
        families.sort_unstable();
        families.dedup();
        Ok((*year, families))
    };
    let years: Vec<Read<_>> = raw.iter().map(|year| of_year(year, findings)).collect();
    let mut years: Grew = years.into_iter().collect::<Read<_>>()?;
    years.sort_by_key(|(year, _)| std::cmp::Reverse(*year));
    Ok(years)
}

/// The beds, if every part of them is sound.
pub fn check(
    raw: &[Given<RawBed>],
    (crops, grades): (&Crops<'_>, Read<&GradeIds>),
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Vec<Bed>> {
    let ids = raw.iter().map(|bed| bed.value.id.as_ref().ok());
    unique("beds", "id", ids, findings);
    if let Some(surplus) = raw.get(MOST_BEDS) {
        let cause = format!("a project should have at most {MOST_BEDS} beds");
        let problem = Problem::new(Code::WrongLength, cause)
            .at(surplus.span, format!("there are {}", raw.len()));
        let remedy = "write beds of the same kind that lie in a row as one long bed";
        return Err(findings.report(problem.remedy(remedy)));
    }
    let beds: Vec<Read<Bed>> = raw
        .iter()
        .map(|bed| check_bed(&bed.value, (crops, grades), findings, assumed))
        .collect();
    beds.into_iter().collect()
}

fn check_bed(
    raw: &RawBed,
    (crops, grades): (&Crops<'_>, Read<&GradeIds>),
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Bed> {
    let of = match &raw.grade {
        Ok(Some(ids)) => grades.and_then(|grades| grades.find_all(&ids.value, findings)),
        Ok(None) => Ok(Vec::new()),
        Err(reported) => Err(*reported),
    };
    let grew = match &raw.grew {
        Ok(Some(grew)) => families(&grew.value, crops, findings),
        Ok(None) => Ok(Vec::new()),
        Err(reported) => Err(*reported),
    };
    let trellis = raw.trellis?;
    if let (Some(trellis), Ok(length)) = (trellis, raw.length)
        && trellis.value > length.value
    {
        let problem = Problem::new(Code::OutsideBed, "the trellis is longer than the bed")
            .at(trellis.span, format!("at most {}", length.value))
            .also(length.span, "the bed's length")
            .remedy("`trellis_m` is the length of the part that has a trellis");
        return Err(findings.report(problem));
    }
    let bed = Bed {
        id: peek(&raw.id)?.value.clone(),
        kind: raw.kind?.map_or(BedKind::Bed, |given| given.value),
        length: Metres(raw.length?.value),
        width: Metres(raw.width?.value),
        soil: Centimetres(raw.soil?.map_or(USUAL_SOIL, |given| given.value)),
        sun: raw.sun?.map_or(Sun::Full, |given| given.value),
        trellis: Metres(trellis.map_or(0.0, |given| given.value)),
        supports_put_up: false,
        along_trellis: false,
        cover: peek(&raw.cover)?.as_ref().map(|c| c.value.clone()),
        soil_bonus: Celsius(raw.soil_bonus?.map_or(0.0, |given| given.value)),
        free_from: raw.free_from?.map(|given| given.value),
        grew: grew?,
        runs: raw.runs?.map_or(Runs::EastWest, |given| given.value),
        at: raw.at?.map(|given| given.value),
        of: of?,
    };
    if let Ok(None) = raw.soil {
        let what = format!("soil_cm = {USUAL_SOIL}");
        assumed.note_for(&bed.id, what, "a usual depth of good soil");
    }
    if let Ok(None) = raw.sun {
        assumed.note_for(
            &bed.id,
            "sun = \"full\"",
            "beds are taken to lie in the sun",
        );
    }
    Ok(bed)
}

/// Where no bed says whether it has a trellis, stakes, cages or nets are put up for what climbs: those can stand
/// anywhere. Told as an assumption.
pub fn with_supports(
    mut beds: Vec<Bed>,
    raw: &[Given<RawBed>],
    ingredients: &[Ingredient],
    assumed: &mut Assumed,
) -> Vec<Bed> {
    let says = |bed: &Given<RawBed>| !matches!(bed.value.trellis, Ok(None));
    let in_beds = |i: &&Ingredient| !matches!(i.source, Source::Patch(_));
    let climb = ingredients
        .iter()
        .filter(in_beds)
        .filter(|i| i.crop.needs.trellis);
    let climb: Vec<&str> = climb.map(|i| i.name.as_str()).collect();
    if climb.is_empty() || raw.iter().any(says) {
        return beds;
    }
    for bed in &mut beds {
        bed.supports_put_up = true;
    }
    let why = "no bed has a `trellis_m`, so an adult puts up stakes, cages or a net before planting; say \
               `trellis_m = 0` where none can stand";
    for name in climb {
        assumed.note_for(name, "supports for what climbs", why);
    }
    beds
}

/// The position of the bed with an id; reports it if there is none.
pub fn find(raw: &[Given<RawBed>], id: &Given<String>, findings: &mut Findings) -> Read<BedAt> {
    let ids = || {
        raw.iter()
            .map(|bed| bed.value.id.as_ref().map_or("", |id| id.value.as_str()))
    };
    ids()
        .position(|other| other == id.value)
        .map(BedAt)
        .ok_or_else(|| {
            let list = listed(ids());
            let remedy = match near(&id.value, ids()) {
                Some(other) => format!("did you mean {}? The beds are {list}", quote(other)),
                None if raw.is_empty() => "add a section [[bed]]".to_owned(),
                None => format!("the beds are {list}"),
            };
            let cause = format!("there is no bed with the id {}", quote(&id.value));
            findings.report(
                Problem::new(Code::NoSuchBed, cause)
                    .at(id.span, "")
                    .remedy(remedy),
            )
        })
}
