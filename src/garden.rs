//! The valid project as a plain immutable value. It knows nothing of files:
//! a `Garden` exists only after `project` has checked every part of it.

mod at;
mod attendance;
mod bed;
mod before;
mod begun;
mod crop;
mod dish;
mod find;
mod former;
mod grade;
mod how;
mod kept;
mod kitchen;
mod locale;
mod method;
mod outdoors;
mod school_year;
mod season;
mod shelf;
mod shut;
mod strips;
mod taking_part;
mod team;
mod tending;
mod tongue;
mod under_way;

pub use at::{BedAt, BegunAt, ClassAt, GradeAt, IngredientAt, PatchAt};
pub use attendance::{Gap, KeepsPicked};
pub use bed::{
    Area, Bed, BedKind, Cover, MOST_PLOTS, Microclimate, OPEN_GROUND, Patch, Plot, Position, Rows,
    Runs,
};
pub use begun::{Begun, Reached, Seedlings, Spot};
pub use crop::{
    Ages, Caution, Crop, DegreeDayMethod, Germination, IndoorStart, Needs, Picking, Ripening,
    Rotation, SeedSize, Spacing, Stages, Sun, WaterUse, WhilePicked, Yield,
};
pub use dish::{Fallback, Feast, Ingredient, Source};
pub use former::Former;
pub use grade::{Class, Grade, HandOver, Hands, Slot};
pub use how::{Curing, How, Ripe, Take, Tending};
pub use kept::Kept;
pub use kitchen::{Arrives, CRATE, Freezing, Kitchen, Preparation, Store};
pub use locale::Locale;
pub use method::Method;
pub use outdoors::{
    Bolting, Bulbs, Chill, DayLengthKind, FrostResponse, Ground, KindOfThePlace, LongDay, NoFruit,
    Spoils, Thinning,
};
pub use school_year::{Break, Care, HarvestDay, SchoolYear, Term};
pub use season::{
    CLEARING_DAYS, Clearing, Gone, Printed, PrintedAt, PrintedYears, Season, Turn, Turns,
};
pub use shelf::{MAT, Shelf};
pub use shut::Shut;
pub use strips::{StripAt, Strips};
pub use team::{FARTHEST, Seat, Team};
pub use tongue::Tongue;

use crate::calendar::{Date, Horizon};
use crate::units::Latitude;
use crate::weather::Record;

/// Reads one of the garden's lists at its typed position.
macro_rules! position {
    ($name:ident, $list:ident, $item:ty) => {
        impl std::ops::Index<$name> for Garden {
            type Output = $item;
            fn index(&self, at: $name) -> &$item {
                &self.$list[at.0]
            }
        }
    };
}

position!(GradeAt, grades, Grade);
position!(IngredientAt, ingredients, Ingredient);
position!(BedAt, beds, Bed);
position!(BegunAt, begun, Begun);
position!(PatchAt, patches, Patch);

/// A value that the program chose because the file does not give it.
#[derive(Debug, Clone, PartialEq)]
pub struct Assumption {
    /// What was assumed, as the file would say it (`deliver_by = 2027-10-06`).
    pub what: String,
    /// Why this value.
    pub why: String,
}

/// Something that the file says and that can hardly be meant.
#[derive(Debug, Clone, PartialEq)]
pub struct Doubt {
    /// What it says (`latitude = 44.3`).
    pub what: String,
    /// Why that is doubted, and what may be meant.
    pub why: String,
}

/// A whole valid project.
#[derive(Debug, Clone, PartialEq)]
pub struct Garden {
    /// The project's name.
    pub name: String,
    /// The school's name, if given.
    pub school: Option<String>,
    /// The language and customs of all that is printed.
    pub locale: Locale,
    /// A second language of what families read, if they want one.
    pub families_also: Option<Tongue>,
    /// The shared day.
    pub feast: Feast,
    /// Where the garden lies.
    pub latitude: Latitude,
    /// Daily weather of many past (or generated) years.
    pub weather: Record,
    /// Terms, breaks, days off, moving up.
    pub school_year: SchoolYear,
    /// The grades with their classes, at least one.
    pub grades: Vec<Grade>,
    /// The dish's ingredients, at least one.
    pub ingredients: Vec<Ingredient>,
    /// Beds and containers.
    pub beds: Vec<Bed>,
    /// What has begun for this dish before the plan does.
    pub begun: Vec<Begun>,
    /// What stands in the beds for no ingredient when the plan begins.
    pub former: Vec<Former>,
    /// Perennial patches.
    pub patches: Vec<Patch>,
    /// Areas on the map that are never planted.
    pub areas: Vec<Area>,
    /// The seedling shelf; no flats when the school has none.
    pub shelf: Shelf,
    /// All that was assumed rather than given.
    pub assumed: Vec<Assumption>,
    /// All that the file says and that can hardly be meant.
    pub doubts: Vec<Doubt>,
    /// The season so far; `None` where nothing has begun by a plan.
    pub season: Option<Season>,
}

impl Garden {
    /// The weeks that the plan covers: from the first day anyone may sow (or the day since
    /// which something has been growing in a bed) to the last of feast and rain date.
    #[must_use]
    pub fn horizon(&self) -> Horizon {
        let start = self
            .begun
            .iter()
            .filter(|begun| begun.in_bed().is_some())
            .map(|begun| begun.since)
            .fold(self.start(), Date::min);
        Horizon::spanning(start, self.last_day())
    }

    /// The first day on which anyone may sow.
    #[must_use]
    pub fn start(&self) -> Date {
        self.school_year.start
    }

    /// The day from which on there is something to plan: the first on which anyone may sow, or, where the
    /// season is under way, that as of which it is planned again. What was done before it is given.
    #[must_use]
    pub fn as_of(&self) -> Date {
        let season = self.season.as_ref();
        season.map_or(self.start(), |season| season.as_of.max(self.start()))
    }

    /// The last day that matters: the rain date where there is one, else the feast.
    #[must_use]
    pub fn last_day(&self) -> Date {
        self.feast.rain_date.unwrap_or(self.feast.day)
    }

    /// The days of which the calendar knows something: from its first day to the end of the last
    /// term, or the last day of the feast if that is later.
    #[must_use]
    pub fn calendar_span(&self) -> (Date, Date) {
        let terms = self.school_year.terms.iter().map(|term| term.to);
        let last = terms.fold(self.last_day(), Date::max);
        (self.start(), last)
    }

    /// All grade positions in order.
    pub fn grade_positions(&self) -> impl Iterator<Item = GradeAt> + use<> {
        (0..self.grades.len()).map(GradeAt)
    }

    /// All ingredient positions in order.
    pub fn ingredient_positions(&self) -> impl Iterator<Item = IngredientAt> + use<> {
        (0..self.ingredients.len()).map(IngredientAt)
    }

    /// The same project with fewer ingredients. What has begun stays: it has its place
    /// whether it is wanted or not.
    #[must_use]
    pub fn with_ingredients(&self, wanted: impl Fn(IngredientAt) -> bool) -> Self {
        let begun = |at: IngredientAt| {
            matches!(self[at].source, Source::Begun(_)) || self.begun_of(at).next().is_some()
        };
        let stays = |at: &IngredientAt| wanted(*at) || begun(*at);
        let stay: Vec<IngredientAt> = self.ingredient_positions().filter(stays).collect();
        self.of_some(&stay)
    }

    /// The same project as if it had never had an ingredient, begun or not.
    #[must_use]
    pub fn without(&self, at: IngredientAt) -> Self {
        let others = self.ingredient_positions().filter(|other| *other != at);
        self.of_some(&others.collect::<Vec<_>>())
    }

    fn of_some(&self, some: &[IngredientAt]) -> Self {
        Self {
            ingredients: some.iter().map(|at| self[*at].clone()).collect(),
            season: self.season.as_ref().map(|season| season.of_some(some)),
            ..self.clone()
        }
    }

    /// The seedlings on the shelf from which an ingredient comes; `None` if it comes from elsewhere.
    #[must_use]
    pub fn seedlings_of(&self, at: IngredientAt) -> Option<Seedlings> {
        match self[at].source {
            Source::Begun(begun) => self[begun].on_shelf(),
            Source::Sown | Source::Patch(_) => None,
        }
    }

    /// All bed positions in order.
    pub fn bed_positions(&self) -> impl Iterator<Item = BedAt> + use<> {
        (0..self.beds.len()).map(BedAt)
    }

    /// One class.
    #[must_use]
    pub fn class(&self, at: ClassAt) -> &Class {
        &self[at.grade].classes[at.class]
    }

    /// The days on which a class meets within the plan's span, in order.
    #[must_use]
    pub fn sessions(&self, at: ClassAt) -> Vec<Date> {
        self.class(at).sessions(&self.school_year, self.horizon())
    }

    /// Minutes of the class's slot on a day on which it meets.
    #[must_use]
    pub fn session_minutes(&self, at: ClassAt, day: Date) -> crate::units::Minutes {
        self.class(at).slot_on(&self.school_year, day).minutes
    }

    /// Who is there on a day to keep picked what would else stop bearing.
    #[must_use]
    pub fn keeps_picked(&self, day: Date) -> Option<KeepsPicked> {
        attendance::keeps_picked(&self.school_year, day)
    }

    /// Spans of more than two days in a row on which nobody is on site.
    #[must_use]
    pub fn gaps(&self) -> Vec<Gap> {
        attendance::gaps(&self.school_year, self.horizon())
    }
}
