//! What can be wrong with a plan, as types. The wording belongs to `report`.

mod about;

pub use about::{AimFault, DayLimit, Named, PlaceFault, PlantingRef, Quantity, StepRef, Subject};

use crate::calendar::Date;
use crate::garden::{Gap, Method};
use crate::plan::{Aim, Rule, StepKind};

/// A rule that a plan breaks.
#[derive(Debug, Clone, PartialEq)]
pub struct Violation {
    /// Which rule.
    pub rule: Rule,
    /// What is wrong.
    pub fault: Fault,
}

/// What is wrong with a plan. Days and numbers named `expected` are what the replay saw,
/// those named `got` stand in the plan.
#[derive(Debug, Clone, PartialEq)]
pub enum Fault {
    /// A name that the project file does not know.
    Unknown {
        /// What it should name.
        kind: Named,
        /// The name.
        name: String,
    },
    /// A number is not what the plan gives or needs.
    Number {
        /// Whose number.
        of: Subject,
        /// Which number.
        what: Quantity,
        /// What the replay saw.
        expected: f64,
        /// What the plan says.
        got: f64,
    },
    /// The promised ingredients are not those of the dish, in its order.
    PromiseList {
        /// The dish's ingredients.
        expected: Vec<String>,
        /// The promised ones.
        got: Vec<String>,
    },
    /// An ingredient's low yield does not reach its least share.
    TooLittle {
        /// The ingredient.
        ingredient: String,
        /// Kilograms of its least share.
        expected: f64,
        /// Kilograms in a poor year.
        got: f64,
    },
    /// More plants are planned than there are seedlings on the shelf.
    TooFewSeedlings {
        /// The planting.
        planting: PlantingRef,
        /// The seedlings that there are.
        expected: u32,
        /// The plants of the plan.
        got: u32,
    },
    /// A planting, or an ingredient of several, is ready in too few weather years to be sown.
    TooRarely {
        /// The planting or the ingredient.
        of: Subject,
        /// The fewest years that would do.
        expected: usize,
        /// The years in which it is ready.
        got: usize,
        /// All weather years.
        years: usize,
    },
    /// A way of growing that the ingredient does not allow.
    Method {
        /// The planting.
        planting: PlantingRef,
        /// The ways that are allowed.
        expected: Vec<Method>,
        /// The plan's way.
        got: Method,
    },
    /// Grades that may not grow the ingredient.
    Team {
        /// The planting.
        planting: PlantingRef,
        /// The teams of which one may, each by the ids of its grades.
        expected: Vec<Vec<String>>,
        /// The plan's grades.
        got: Vec<String>,
    },
    /// Other grades than those of an earlier planting of the ingredient.
    SecondTeam {
        /// The planting.
        planting: PlantingRef,
        /// The grades of the earlier one.
        expected: Vec<String>,
        /// The plan's grades.
        got: Vec<String>,
    },
    /// More grades could grow something.
    GradesLeftOut {
        /// How many could.
        expected: usize,
        /// How many do.
        got: usize,
        /// The ids of those that might grow something and do not.
        idle: Vec<String>,
    },
    /// Steps are missing, doubled or out of place.
    Steps {
        /// The planting.
        planting: PlantingRef,
        /// The steps that its method takes.
        expected: Vec<StepKind>,
        /// The plan's steps.
        got: Vec<StepKind>,
    },
    /// A step is done by hands that may not do it.
    Hands {
        /// The step.
        step: StepRef,
    },
    /// A step has no visit of a class that the project knows, on a day within the span.
    NoVisit {
        /// The step.
        step: StepRef,
    },
    /// A step lies on a wrong day; `from` and `to` bound the days that would do.
    Day {
        /// The step.
        step: StepRef,
        /// The plan's day.
        got: Date,
        /// Why it is wrong.
        limit: DayLimit,
        /// The first day that would do, if there is one.
        from: Option<Date>,
        /// The last day that would do, if there is one.
        to: Option<Date>,
    },
    /// Seedlings are too young or too old when they are planted out.
    Age {
        /// The planting.
        planting: PlantingRef,
        /// Least weeks from sowing.
        weeks_lo: u32,
        /// Greatest weeks from sowing.
        weeks_hi: u32,
        /// The plan's weeks.
        got: u32,
    },
    /// Seed does not come up at the temperature of the room or mat.
    NeverUp {
        /// The planting.
        planting: PlantingRef,
    },
    /// A class does not meet on the day.
    NoSession {
        /// The step.
        step: StepRef,
        /// The class's name.
        class: String,
        /// The day.
        day: Date,
    },
    /// Families pick on a day that is in no break in which they care, or an adult works on
    /// a day that is not a weekday in term.
    NobodyThere {
        /// The step.
        step: StepRef,
        /// The day.
        day: Date,
    },
    /// A class takes part not at all, more than once, or where it is not its turn.
    Visits {
        /// The step.
        step: StepRef,
        /// The class's name.
        class: String,
        /// 1 for a class of the grade that tends the planting on that day, else 0.
        expected: u32,
        /// How often it comes in the plan.
        got: u32,
    },
    /// A class has more to do than its session has minutes.
    SessionOverfull {
        /// The class's name.
        class: String,
        /// The day.
        day: Date,
        /// Minutes of the session.
        expected: f64,
        /// Minutes of all its steps.
        got: f64,
    },
    /// A place is wrong for a planting.
    Place {
        /// The planting.
        planting: PlantingRef,
        /// The bed's id; empty if the planting has no place.
        bed: String,
        /// Why.
        why: PlaceFault,
    },
    /// Two plantings on one strip.
    StripTakenTwice {
        /// The bed's id.
        bed: String,
        /// The first such strip, from 1.
        strip: u32,
        /// The first such day.
        day: Date,
        /// The planting that stands there.
        first: PlantingRef,
        /// The planting that is put on top of it.
        second: PlantingRef,
    },
    /// A crop family comes back to a bed too soon.
    Rotation {
        /// The planting.
        planting: PlantingRef,
        /// The bed's id.
        bed: String,
        /// The family.
        family: String,
        /// When the bed carried it.
        grew_in: i32,
        /// Years that it must stay away.
        years_hard: u32,
    },
    /// A crop family comes back too soon to a strip on which the plan itself had it.
    FamilyAgain {
        /// The later planting.
        planting: PlantingRef,
        /// The bed's id.
        bed: String,
        /// The first such strip, from 1.
        strip: u32,
        /// The family.
        family: String,
        /// The earlier planting.
        before: PlantingRef,
        /// The last day on which the earlier one took the strip.
        cleared: Date,
        /// Years that the later one's family must stay away.
        years_hard: u32,
    },
    /// Flats stand on the shelf on a day on which it may not be used.
    ShelfClosed {
        /// The planting.
        planting: PlantingRef,
        /// The first such day.
        day: Date,
    },
    /// More flats than the shelf, or its heat mat, holds.
    ShelfFull {
        /// True for the heat mat.
        mat: bool,
        /// The first day of the overfull span.
        day: Date,
        /// What it holds.
        expected: u32,
        /// Flats in the plan.
        got: u32,
    },
    /// The heat mat is used where there is none or where the crop does not ask for it.
    Mat {
        /// The planting.
        planting: PlantingRef,
    },
    /// Seedlings harden off while nobody is on site.
    HardensUnattended {
        /// The planting.
        planting: PlantingRef,
        /// The days without anyone.
        gap: Gap,
    },
    /// The plan does not go on with what has begun, or with one planting more than once.
    NotAsBegun {
        /// Its ingredient.
        ingredient: String,
        /// How many plantings go on with it.
        got: usize,
    },
    /// A step of something new on a day that is over.
    GoneBy {
        /// The step.
        step: StepRef,
        /// Its first day.
        day: Date,
        /// The first day for which something can be planned.
        as_of: Date,
    },
    /// What the plan says of an aim cannot be so.
    Aim {
        /// The aim.
        aim: Aim,
        /// Why.
        why: AimFault,
    },
}
