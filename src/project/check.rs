//! Checks all sections against one another and puts the garden together.

use chrono::Datelike;

use crate::calendar::{Date, Horizon, LONGEST_WEEKS, plus_days};
use crate::catalogue::Catalogue;
use crate::diagnostic::{self, Code, Findings, Given, Problem, Read, peek};
use crate::garden::{Bed, Garden, Ingredient, Patch, SchoolYear, Source};
use crate::units::Latitude;
use crate::weather::Record;

use super::assumed::Assumed;
use super::crop_names::{Crops, Overrides};
use super::days::Days;
use super::document::Document;
use super::doubts::doubts;
use super::file::{self, Raw};
use super::grade::{self, GradeIds, unique};
use super::growing::Growing;
use super::grown_by;
use super::ingredient::{Around, Serving};
use super::order::in_order;
use super::place::{self, RawPlace, WeatherFrom};
use super::standing::RawPatch;
use super::weather::{self, Filled};
use super::{along_trellis, bed, dish, feast, ground, growing, school_year, standing};

/// Reads a weather file by the name that the project file gives.
pub type ReadWeather<'a> = dyn Fn(&str) -> Raw + 'a;

/// A project while it is checked.
pub struct Check<'a> {
    catalogue: &'a Catalogue,
    read_weather: &'a ReadWeather<'a>,
    assumed: Assumed,
    /// What is wrong in the project file.
    pub found: Findings,
    /// The weather file and what is wrong in it.
    pub weather: Option<(diagnostic::Source, Findings)>,
}

impl<'a> Check<'a> {
    /// Nothing checked yet.
    pub fn new(catalogue: &'a Catalogue, read_weather: &'a ReadWeather<'a>) -> Self {
        Self {
            catalogue,
            read_weather,
            assumed: Assumed::default(),
            found: Findings::default(),
            weather: None,
        }
    }

    /// Every part in turn; one that is unsound does not keep the others from being checked.
    pub fn garden(&mut self, raw: Document) -> Read<Garden> {
        let days = Days::of(&raw);
        let horizon = self.horizon(&raw, &days);
        let ids = peek(&raw.grades).map(|grades| GradeIds::of(grades, &mut self.found));
        let ingredients = self.ingredients(&raw, peek(&ids), &days);
        let (beds, parted, growing) = self.beds(&raw, (peek(&ids), peek(&ingredients)), &days);
        let room = self.room(peek(&ingredients), peek(&beds), peek(&growing));
        let patches =
            peek(&raw.patches).and_then(|patches| self.patches(patches, &self.crops(&raw)));
        let ground = self.ground(&raw, peek(&beds), peek(&patches));
        let (found, assumed) = (&mut self.found, &mut self.assumed);
        let year = raw
            .calendar
            .and_then(|raw| school_year::check(raw, found, assumed));
        let grades = raw.grades.and_then(|raw| {
            grade::check_first_days(&raw, days.feast, found);
            let moving = days.moves_up_within().is_some();
            grade::check(raw, peek(&ids)?, peek(&year), moving, found, assumed)
        });
        let feast = peek(&raw.project).and_then(|raw| {
            let grades = peek(&grades).map(Vec::as_slice);
            feast::check(raw, days.for_feast(), peek(&year), grades, found, assumed)
        });
        let crops = crops(self.catalogue, &raw.overrides);
        let on_shelf = (raw.shelf, raw.seedlings);
        let (shelf, seedlings) = days.on_shelf(on_shelf, crops, found, assumed);
        let latitude = peek(&raw.place).and_then(|raw| raw.latitude);
        let weather = raw.place.and_then(|raw| self.weather(raw, horizon));
        let project = raw.project?;
        room.and(ground)?;
        let (latitude, weather, beds) = (Latitude(latitude?.value), weather?, parted?);
        let (growing, former) = growing?;
        let garden = Garden {
            doubts: doubts(latitude, &weather, &beds),
            season: None,
            name: project.name?.value,
            school: project.school?.map(|school| school.value),
            locale: project.locale?.map(|l| l.value).unwrap_or_default(),
            families_also: project.families_also?.map(|tongue| tongue.value),
            feast: feast?,
            latitude,
            weather,
            school_year: SchoolYear {
                moves_up: days.moves_up_within(),
                ..year?
            },
            grades: grades?,
            ingredients: ingredients?,
            beds,
            begun: [growing, seedlings?].concat(),
            former,
            patches: patches?,
            areas: raw.areas?.into_iter().map(|area| area.value).collect(),
            shelf: shelf?,
            assumed: std::mem::take(&mut self.assumed).into_list(),
        };
        grown_by::check_teams(&garden, peek(&raw.ingredients)?, &mut self.found);
        Ok(garden)
    }

    fn ingredients(
        &mut self,
        raw: &Document,
        grades: Read<&GradeIds>,
        days: &Days,
    ) -> Read<Vec<Ingredient>> {
        let begun = begun(raw);
        let around = Around {
            crops: self.crops(raw),
            grades,
            begun: peek(&begun).map(Vec::as_slice),
            patches: peek(&raw.patches).map(Vec::as_slice),
            start: days.start,
            feast: days.feast,
        };
        dish::check(
            peek(&raw.ingredients)?,
            &around,
            &mut self.found,
            &mut self.assumed,
        )
    }

    /// The crops of the catalogue and of the file.
    fn crops<'d>(&self, raw: &'d Document) -> Crops<'d>
    where
        'a: 'd,
    {
        crops(self.catalogue, &raw.overrides)
    }

    /// The beds as the file has them, the same with each parted that has a row along its trellis, and what grows
    /// in them.
    fn beds(
        &mut self,
        raw: &Document,
        (grades, ingredients): (Read<&GradeIds>, Read<&Vec<Ingredient>>),
        days: &Days,
    ) -> (Read<Vec<Bed>>, Read<Vec<Bed>>, Read<Growing>) {
        let crops = self.crops(raw);
        let (found, assumed) = (&mut self.found, &mut self.assumed);
        let beds = peek(&raw.beds).and_then(|raw| {
            let beds = bed::check(raw, (&crops, grades), found, assumed)?;
            let dish = ingredients.map_or(&[][..], Vec::as_slice);
            Ok(bed::with_supports(beds, raw, dish, assumed))
        });
        let latitude = peek(&raw.place).and_then(|raw| raw.latitude);
        let parted = peek(&raw.beds).and_then(|raw| {
            let (beds, latitude) = (peek(&beds)?.clone(), Latitude(latitude?.value));
            along_trellis::parted(raw, beds, latitude, found)
        });
        let growing = peek(&raw.growing).and_then(|growing| {
            let around = growing::Around {
                crops,
                raw_beds: peek(&raw.beds)?,
                beds: peek(&parted).map(Vec::as_slice),
                feast: days.feast,
            };
            growing::check(growing, &around, found, assumed)
        });
        (beds, parted, growing)
    }

    /// What does not stand yet where it is picked needs a bed. `growing` is what does.
    fn room(
        &mut self,
        ingredients: Read<&Vec<Ingredient>>,
        beds: Read<&Vec<Bed>>,
        growing: Read<&Growing>,
    ) -> Read<()> {
        let (ingredients, (growing, _)) = (ingredients?, growing?);
        let wants_bed = |ingredient: &&Ingredient| match ingredient.source {
            Source::Sown => true,
            Source::Begun(at) => at.0 >= growing.len(),
            Source::Patch(_) => false,
        };
        match ingredients.iter().find(wants_bed) {
            Some(ingredient) if beds?.is_empty() => {
                let cause = format!("the file has no section [[bed]] for {}", ingredient.name);
                let remedy = "add a section [[bed]] with `id`, `length_m` and `width_m`";
                let problem = Problem::new(Code::MissingKey, cause).remedy(remedy);
                Err(self.found.report(problem))
            }
            _ => Ok(()),
        }
    }

    fn patches(&mut self, raw: &[Given<RawPatch>], crops: &Crops<'_>) -> Read<Vec<Patch>> {
        let ids = raw.iter().map(|patch| patch.value.id.as_ref().ok());
        unique("patches", "id", ids, &mut self.found);
        let patches: Vec<Read<Patch>> = raw
            .iter()
            .map(|raw| standing::check_patch(&raw.value, crops, &mut self.found))
            .collect();
        patches.into_iter().collect()
    }

    /// What lies on the map, if nothing lies on anything else.
    fn ground(
        &mut self,
        raw: &Document,
        beds: Read<&Vec<Bed>>,
        patches: Read<&Vec<Patch>>,
    ) -> Read<()> {
        ground::check(
            (peek(&raw.beds)?, beds?),
            (peek(&raw.patches)?, patches?),
            peek(&raw.areas)?,
            &mut self.found,
        )
    }

    /// The plan's span, if its days are given, in order and not too many.
    fn horizon(&mut self, raw: &Document, days: &Days) -> Read<Horizon> {
        let start = days.start?;
        in_order(("start", start), ("feast", days.feast?), &mut self.found)?;
        let last = days.last()?;
        let growing = peek(&raw.growing)?.iter();
        let growing = growing.filter(|growing| growing.value.serves());
        let sown = growing.filter_map(|growing| growing.value.sown.ok());
        let first = sown.fold(start, |first, sown| {
            if sown.value < first.value {
                sown
            } else {
                first
            }
        });
        let horizon = Horizon::spanning(first.value, last.value);
        if horizon.weeks() > LONGEST_WEEKS {
            let cause = format!(
                "the plan spans {} weeks; at most {LONGEST_WEEKS} can be planned",
                horizon.weeks()
            );
            return Err(self.found.report(
                Problem::new(Code::PlanTooLong, cause)
                    .at(first.span, "from here")
                    .also(last.span, "to here")
                    .remedy("begin later, or correct the year of one of the two dates"),
            ));
        }
        Ok(horizon)
    }

    /// The weather record, if it is sound and holds the plan's span.
    fn weather(&mut self, raw: RawPlace, horizon: Read<Horizon>) -> Read<Record> {
        match place::check(raw, &mut self.found, &mut self.assumed)? {
            WeatherFrom::Means(monthly, years, seed) => {
                Ok(place::generated(&monthly, years, seed, horizon?))
            }
            WeatherFrom::File(name, from) => {
                let file = (self.read_weather)(&name.value);
                let bytes = file.bytes.map_err(|problem| {
                    let label = format!("the file {}", file.name);
                    self.found.report(problem.at(name.span, label))
                })?;
                let mut found = Findings::default();
                let (source, read) = file::decode(file.name, bytes, &mut found);
                let record = read.and_then(|()| weather::read(&source, &mut found));
                self.weather = Some((source, found));
                let Filled { record, gaps } = record?;
                let horizon = horizon?;
                let record = place::counted_from(record, from, horizon, &mut self.found)?;
                let file = self.weather.as_ref();
                let file = file.map_or("", |(source, _)| source.name.as_str());
                note_gaps(file, &gaps, &mut self.assumed);
                note_years(file, &record, &mut self.assumed);
                let (found, assumed) = (&mut self.found, &mut self.assumed);
                place::check_cover(&record, horizon, name.span, found, assumed)?;
                Ok(record)
            }
        }
    }
}

/// The crops of the catalogue and of the file.
fn crops<'d>(catalogue: &'d Catalogue, overrides: &'d Read<Overrides>) -> Crops<'d> {
    Crops {
        catalogue,
        own: overrides.as_ref().ok(),
    }
}

/// All that has begun, in beds and then on the shelf: the order of `Garden::begun`.
fn begun(raw: &Document) -> Read<Vec<Serving<'_>>> {
    let growing = peek(&raw.growing)?.iter();
    let growing = growing.filter_map(|given| {
        let for_ingredient = peek(&given.value.for_ingredient);
        Some(Serving {
            crop: &given.value.crop,
            for_ingredient: for_ingredient.map(Option::as_ref).transpose()?,
        })
    });
    let seedlings = peek(&raw.seedlings)?.iter().map(|given| Serving {
        crop: &given.value.crop,
        for_ingredient: peek(&given.value.for_ingredient),
    });
    Ok(growing.chain(seedlings).collect())
}

/// Notes the days that the record lacked.
fn note_gaps(name: &str, gaps: &[(Date, Date)], assumed: &mut Assumed) {
    let why = "the record lacks them; temperatures are drawn straight from the day before to the day after, \
               without rain";
    for (first, last) in gaps {
        let days = match first == last {
            true => first.to_string(),
            false => format!("{first} to {last}"),
        };
        assumed.note_for(&days, format!("days filled in {name}"), why);
    }
}

/// Notes the calendar years that the record leaves out.
fn note_years(name: &str, record: &Record, assumed: &mut Assumed) {
    let why = "the record lacks them; no plan is grown through their days";
    for years in record.left_out() {
        let year = |at: usize| plus_days(record.first(), at as i64).year();
        let (first, last) = (year(years.start), year(years.end) - 1);
        let years = match first == last {
            true => first.to_string(),
            false => format!("{first} to {last}"),
        };
        assumed.note_for(&years, format!("years left out of {name}"), why);
    }
}
