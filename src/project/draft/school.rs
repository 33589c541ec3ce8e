//! What is said of a school.

use chrono::Weekday;

use crate::calendar::{Date, Time};
use crate::catalogue::Dish;
use crate::garden::Care;
use crate::units::Metres;
use crate::weather::normals::Normals;

use super::figures::Measures;
use super::means::Means;

/// When school is in, or out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Span {
    /// What it is called.
    pub name: String,
    /// Its first day.
    pub from: Date,
    /// Its last day.
    pub to: Date,
}

/// A class and its lesson in the garden.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Class {
    /// Its name: `3a`.
    pub name: String,
    /// Children.
    pub children: u32,
    /// The day of the week.
    pub day: Weekday,
    /// When it begins.
    pub at: Option<Time>,
    /// Every week, or every second one.
    pub every: u32,
}

impl Class {
    /// The grade that it belongs to: its name without the letter behind a number.
    #[must_use]
    pub fn grade(&self) -> &str {
        let number = self.name.trim_end_matches(|c: char| c.is_alphabetic());
        match number.is_empty() || !number.chars().all(|c| c.is_ascii_digit()) {
            true => &self.name,
            false => number,
        }
    }
}

/// Beds of one size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beds {
    /// How many.
    pub count: u32,
    /// Length, in the person's unit.
    pub length: f64,
    /// Width, in the person's unit.
    pub width: f64,
}

/// What was said so far. What is empty was not said, and has a default.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// From when the first plan may begin.
    pub today: Date,
    /// The units of the file.
    pub measures: Measures,
    /// Degrees to the north; negative south of the equator.
    pub latitude: Option<f64>,
    /// The weather stations nearest to the place, with their distances, if its longitude was said.
    pub near: Vec<(Metres, Normals)>,
    /// Which of them the means are of; the first if nothing was said.
    pub station: usize,
    /// The school's name.
    pub school: Option<String>,
    /// What is cooked, with the grams of each ingredient.
    pub dish: Dish,
    /// The day on which the school eats.
    pub feast: Option<Date>,
    /// Who eats.
    pub portions: Option<u32>,
    /// When school is in.
    pub terms: Vec<Span>,
    /// When it is not, and who then looks after the garden.
    pub breaks: Vec<(Span, Care)>,
    /// All classes.
    pub classes: Vec<Class>,
    /// All beds.
    pub beds: Vec<Beds>,
    /// So many of them have a trellis.
    pub trellises: Option<u32>,
    /// Seed trays for which there is a place with light.
    pub flats: Option<u32>,
    /// How warm it is there, in the person's unit.
    pub room: Option<f64>,
    /// Monthly means: lowest, highest, rain.
    pub means: Means,
}

impl Draft {
    /// Nothing was said yet.
    #[must_use]
    pub fn new(today: Date, dish: Dish) -> Self {
        Self {
            today,
            measures: Measures::Metric,
            latitude: None,
            near: Vec::new(),
            station: 0,
            school: None,
            dish,
            feast: None,
            portions: None,
            terms: Vec::new(),
            breaks: Vec::new(),
            classes: Vec::new(),
            beds: Vec::new(),
            trellises: None,
            flats: None,
            room: None,
            means: Means::default(),
        }
    }
}
