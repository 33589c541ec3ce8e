//! The season in a saved plan: as of which day it was made, what was printed before it, and what is lost, in names
//! and dates; and what that makes of the garden.

use serde::{Deserialize, Serialize};

use crate::calendar::Date;
use crate::garden::{self, BedAt, Garden, Method, PrintedYears, Strips, Team, Turn, Turns};
use crate::plan::{By, Place, Planting, StepKind, Visit, When, one_or_several};
use crate::units::Share;

use super::error::SavedError;
use super::mark::mark;
use super::shut::Shut;

/// A season that is under way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Season {
    /// The day from which on was planned.
    pub as_of: Date,
    /// The number of the last entry of the diary that it knows.
    pub entries: usize,
    /// In how many weather years the plan before was ready: the worst ingredient, all added up, the whole dish.
    pub years: (u32, u32, u32),
    /// The plan before, without what is lost; steps that have begun as they were done.
    pub printed: Vec<Printed>,
    /// What is lost wholly.
    pub gone: Vec<Gone>,
    /// School that falls out.
    #[serde(default)]
    pub shut: Shut,
}

/// One planting as it was printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Printed {
    /// The ingredient's name.
    pub ingredient: String,
    /// The ids of the grades that grow it.
    #[serde(rename = "grade", with = "one_or_several")]
    pub grades: Vec<String>,
    /// How it is grown.
    pub method: Method,
    /// True if its flats stand on the heat mat.
    pub on_mat: bool,
    /// Where it stands.
    pub places: Vec<Place>,
    /// Its steps, but for those that go with others.
    pub steps: Vec<Step>,
    /// The part that is not lost.
    pub left: Share,
}

/// A step with its days.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Step {
    /// What is done.
    pub kind: StepKind,
    /// When and by whom.
    pub when: When,
}

/// What is lost wholly.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Gone {
    /// As it was printed.
    pub what: Printed,
    /// The day on which it was lost.
    pub on: Date,
}

impl Printed {
    /// A planting of a plan, nothing of it lost.
    #[must_use]
    pub fn of(planting: &Planting) -> Self {
        let dated = planting.steps.iter().filter(|step| !step.kind.is_span());
        let step = |step: &crate::plan::Step| Step {
            kind: step.kind,
            when: step.when.clone(),
        };
        Self {
            ingredient: planting.ingredient.clone(),
            grades: planting.grades.clone(),
            method: planting.method,
            on_mat: planting.on_mat,
            places: planting.places.clone(),
            steps: dated.map(step).collect(),
            left: Share(1.0),
        }
    }

    /// The first day of its steps.
    #[must_use]
    pub fn first(&self) -> Option<Date> {
        self.steps.iter().filter_map(|step| step.when.first()).min()
    }

    /// The same in positions of a garden.
    ///
    /// # Errors
    /// A name that the project does not know.
    pub fn in_garden(&self, garden: &Garden) -> Result<garden::Printed, SavedError> {
        let ingredient = garden.ingredient_named(&self.ingredient);
        let turns = |kind: StepKind| {
            let own = self.steps.iter().filter(move |step| step.kind == kind);
            own.map(|step| turns_found(garden, &step.when))
                .collect::<Result<Vec<_>, _>>()
        };
        let once = |kind| Ok(turns(kind)?.into_iter().next());
        Ok(garden::Printed {
            ingredient: ingredient
                .ok_or_else(|| SavedError::not_known("ingredient", &self.ingredient))?,
            team: team_found(garden, &self.grades)?,
            method: self.method,
            on_mat: self.on_mat,
            places: places_found(garden, &self.places)?,
            sow: once(StepKind::Sow)?,
            pot_up: once(StepKind::PotUp)?,
            plant_out: once(StepKind::PlantOut)?,
            thin: once(StepKind::Thin)?,
            picks: turns(StepKind::Pick)?,
            left: Share(self.left.0.clamp(0.0, 1.0)),
        })
    }
}

impl Season {
    /// That of a garden, in names.
    #[must_use]
    pub fn of(garden: &Garden) -> Option<Self> {
        let season = garden.season.as_ref()?;
        let PrintedYears { worst, all, dish } = season.years;
        let gone = season.gone.iter().map(|gone| Gone {
            what: named(garden, &gone.what),
            on: gone.on,
        });
        Some(Self {
            as_of: season.as_of,
            entries: season.entries,
            years: (worst, all, dish),
            printed: season.printed.iter().map(|p| named(garden, p)).collect(),
            gone: gone.collect(),
            shut: Shut::of(garden, &season.shut),
        })
    }

    /// The same without what a garden does not know by name.
    #[must_use]
    pub fn as_far_as_known(&self, garden: &Garden) -> Self {
        let printed = self.printed.iter().filter(|p| p.in_garden(garden).is_ok());
        let gone = self.gone.iter();
        let gone = gone.filter(|gone| gone.what.in_garden(garden).is_ok());
        Self {
            shut: self.shut.as_far_as_known(garden),
            printed: printed.cloned().collect(),
            gone: gone.cloned().collect(),
            ..self.clone()
        }
    }

    /// The same in positions of a garden.
    ///
    /// # Errors
    /// A name that the project does not know.
    pub fn in_garden(&self, garden: &Garden) -> Result<garden::Season, SavedError> {
        let printed = self.printed.iter().map(|p| {
            let printed = p.in_garden(garden)?;
            within(garden, self.as_of, &printed)?;
            Ok(printed)
        });
        let gone = self.gone.iter().map(|gone| {
            Ok(garden::Gone {
                what: gone.what.in_garden(garden)?,
                on: gone.on,
            })
        });
        let gone: Vec<garden::Gone> = gone.collect::<Result<_, _>>()?;
        let (worst, all, dish) = self.years;
        Ok(garden::Season {
            as_of: self.as_of,
            entries: self.entries,
            printed: printed.collect::<Result<_, _>>()?,
            clearing: gone.iter().flat_map(garden::Gone::clearing).collect(),
            gone,
            shut: self.shut.in_garden(garden)?,
            years: PrintedYears { worst, all, dish },
            made_for: mark(garden),
        })
    }
}

fn named(garden: &Garden, printed: &garden::Printed) -> Printed {
    let kinds = StepKind::ALL.iter();
    let steps = kinds.flat_map(|kind| turns(printed, *kind).iter().map(|turns| (*kind, turns)));
    let step = |(kind, turns): (StepKind, &Turns)| {
        let when = when(garden, turns)?;
        Some(Step { kind, when })
    };
    Printed {
        ingredient: garden[printed.ingredient].name.clone(),
        grades: garden.ids_of(printed.team),
        method: printed.method,
        on_mat: printed.on_mat,
        places: places(garden, &printed.places),
        steps: steps.filter_map(step).collect(),
        left: printed.left,
    }
}

/// The steps of a kind.
fn turns(printed: &garden::Printed, kind: StepKind) -> &[Turns] {
    match kind {
        StepKind::Sow => printed.sow.as_slice(),
        StepKind::PotUp => printed.pot_up.as_slice(),
        StepKind::PlantOut => printed.plant_out.as_slice(),
        StepKind::Thin => printed.thin.as_slice(),
        StepKind::Pick => &printed.picks,
        StepKind::Harden | StepKind::Cure => &[],
    }
}

fn when(garden: &Garden, turns: &Turns) -> Option<When> {
    let visit = |(turn, date): &(Turn, Date)| match turn {
        Turn::Class(class) => Some(Visit {
            class: garden.class(*class).name.clone(),
            date: *date,
        }),
        Turn::Families | Turn::Adult => None,
    };
    Some(match turns.0.first()? {
        (Turn::Families, day) => When::Families(*day),
        (Turn::Adult, day) => When::Adult(*day),
        (Turn::Class(_), _) => When::Sessions(turns.0.iter().filter_map(visit).collect()),
    })
}

fn places(garden: &Garden, places: &[(BedAt, Strips)]) -> Vec<Place> {
    let place = |(bed, strips): &(BedAt, Strips)| Place::of(&garden[*bed].id, *strips);
    places.iter().map(place).collect()
}

/// What has begun has its days within the span of the plan: only there is anything known of weather.
fn within(garden: &Garden, as_of: Date, printed: &garden::Printed) -> Result<(), SavedError> {
    let span = garden.start()..=garden.last_day();
    let begun = printed.steps().filter(|step| step.begun(as_of));
    let mut days = begun.flat_map(|step| step.0.iter().map(|(_, day)| *day));
    match days.find(|day| !span.contains(day)) {
        Some(day) => Err(SavedError::OutsideCalendar { day }),
        None => Ok(()),
    }
}

fn turns_found(garden: &Garden, when: &When) -> Result<Turns, SavedError> {
    let turn = |(by, day): (By<'_>, Date)| match by {
        By::Class(name) => match garden.class_named(name) {
            Some(class) => Ok((Turn::Class(class), day)),
            None => Err(SavedError::not_known("class", name)),
        },
        By::Families => Ok((Turn::Families, day)),
        By::Adult => Ok((Turn::Adult, day)),
    };
    let turns = when.turns().into_iter().map(turn);
    Ok(Turns(turns.collect::<Result<_, _>>()?))
}

fn team_found(garden: &Garden, ids: &[String]) -> Result<Team, SavedError> {
    let not_known = || SavedError::not_known("grade", &ids.join(", "));
    garden.team_with_ids(ids).ok_or_else(not_known)
}

fn places_found(garden: &Garden, places: &[Place]) -> Result<Vec<(BedAt, Strips)>, SavedError> {
    let place = |place: &Place| match garden.bed_with_id(&place.bed) {
        Some(bed) => Ok((bed, place.run().within(garden[bed].strips()))),
        None => Err(SavedError::not_known("bed", &place.bed)),
    };
    places.iter().map(place).collect()
}
