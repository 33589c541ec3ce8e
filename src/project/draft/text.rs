//! The project file of a draft, with a remark beside what a person may want to change.

use chrono::Datelike;

use super::figures::Measures;
use super::school::{Class, Draft, Span};
use crate::calendar::{Date, plus_days};
use crate::units::{Latitude, Metres, OUNCE};
use crate::weather::normals::{Normals, SOURCE};

/// The width of a TOML file's line before its remark.
const BEFORE_REMARK: usize = 32;

impl Draft {
    /// The whole file.
    #[must_use]
    pub fn text(&self) -> String {
        let parts = [
            self.project(),
            self.place(),
            self.calendar(),
            self.grades(),
            self.dish_text(),
            self.beds_text(),
            self.shelf(),
        ];
        parts.join("\n")
    }

    fn project(&self) -> String {
        let mut text = format!(
            "# {}: a project of tureen. Everything after a # is a remark. Change what is not so at your school,\n\
             # then see what the program makes of it: tureen check, tureen plan. KEYS.md lists all that may stand here.\n\n\
             [project]\nname = {}\n",
            self.dish.name,
            quoted(&self.dish.name)
        );
        if let Some(school) = &self.school {
            text += &format!("school = {}\n", quoted(school));
        }
        if self.measures == Measures::Feet {
            text += "locale = \"en-US\"\n";
        }
        text += &remarked(
            &format!("feast = {}", self.feast()),
            &format!(
                "{}: the day on which you eat, a school day",
                self.feast().format("%A")
            ),
        );
        text + &remarked(
            &format!("portions = {}", self.portions()),
            "who eats: children and adults",
        )
    }

    fn place(&self) -> String {
        let remark = match self.station() {
            _ if self.means.is_said() => String::new(),
            Some(near) => whose(near),
            None => "# These are the means of no real place. Put your town's here, or no date of the plan is worth a thing.\n".to_owned(),
        };
        let keys = match self.measures {
            Measures::Metric => ["tmin_c", "tmax_c", "rain_mm"],
            Measures::Feet => ["tmin_f", "tmax_f", "rain_in"],
        };
        let wet = self.station().and_then(|(_, station)| station.rain_days);
        let wet = wet.filter(|_| self.means.rain.is_none());
        place(
            self.latitude(),
            &remark,
            keys.into_iter().zip(self.rows()),
            wet,
        )
    }

    fn calendar(&self) -> String {
        let terms = self.terms();
        let start = terms.iter().map(|term| term.from).min();
        let start = start.unwrap_or(self.today).max(self.today);
        let mut text = "[calendar]\n".to_owned();
        text += &remarked(
            &format!("start = {start}"),
            "the first day on which anyone may sow",
        );
        if let Some(day) = self.moves_up() {
            text += &remarked(
                &format!("moves_up = {day}"),
                "from then on every child is one grade higher",
            );
        }
        text += "terms = [\n";
        for term in &terms {
            text += &format!("  {{ {} }},\n", span(term));
        }
        text += "]\nbreaks = [                       # care: who looks after the garden then, none, staff or families\n";
        for (time_off, care) in &self.breaks {
            text += &format!("  {{ {}, care = \"{}\" }},\n", span(time_off), care.key());
        }
        if self.breaks.is_empty() {
            text += "  # { name = \"Spring break\", from = 2027-04-05, to = 2027-04-09, care = \"none\" },\n";
        }
        text + "]\n"
    }

    fn grades(&self) -> String {
        let classes = self.classes();
        let mut grades: Vec<&str> = Vec::new();
        for class in &classes {
            if !grades.contains(&class.grade()) {
                grades.push(class.grade());
            }
        }
        let starts = self
            .terms()
            .first()
            .map_or(self.today, |term| term.from)
            .max(self.today);
        let mut text =
            "# The grades and the garden lessons of their classes: minutes, else 40.\n".to_owned();
        for grade in grades {
            text += &format!("\n[[grade]]\nid = {}\n", quoted(grade));
            if self.moves_up().is_some() {
                text += &remarked(
                    "hand_over = \"same children\"",
                    "they go on with their plants, one grade higher",
                );
            }
            text += "classes = [\n";
            for class in classes.iter().filter(|class| class.grade() == grade) {
                text += &format!("  {{ {} }},\n", class_text(class, starts));
            }
            text += "]\n";
        }
        text
    }

    fn dish_text(&self) -> String {
        let mut text = "# What goes into the pot, for one. Where no grade is named, the program chooses: grade = \"1\".\n".to_owned();
        for (crop, grams) in &self.dish.ingredients {
            let amount = match self.measures {
                Measures::Metric => format!("grams_per_portion = {grams}"),
                Measures::Feet => format!("ounces_per_portion = {:.2}", grams / (1000.0 * OUNCE)),
            };
            text += &format!("\n[[dish.ingredient]]\ncrop = {}\n{amount}\n", quoted(crop));
        }
        text
    }

    fn beds_text(&self) -> String {
        let unit = match self.measures {
            Measures::Metric => "m",
            Measures::Feet => "ft",
        };
        let mut text = "# The beds. What each carried in former years keeps its family away: grew = { 2026 = [\"potato\"] }.\n".to_owned();
        let trellises = self.trellises() as usize;
        let beds = self.beds();
        let all = beds
            .iter()
            .flat_map(|beds| (0..beds.count).map(move |_| beds));
        for (at, bed) in all.enumerate() {
            text += &format!(
                "\n[[bed]]\nid = \"{}\"\nlength_{unit} = {}\nwidth_{unit} = {}\n",
                at + 1,
                bed.length,
                bed.width
            );
            if at < trellises {
                text += &remarked(
                    &format!("trellis_{unit} = {}", bed.length),
                    "so much of its length has a trellis",
                );
            }
        }
        text
    }

    fn shelf(&self) -> String {
        if self.flats() == 0 {
            return "# No place for seedlings indoors: without a section [shelf] all is sown outside or bought.\n".to_owned();
        }
        let room = match self.measures {
            Measures::Metric => "room_c",
            Measures::Feet => "room_f",
        };
        let flats = remarked(
            &format!("flats = {}", self.flats()),
            "seed trays for which there is light indoors",
        );
        let room = remarked(&format!("{room} = {}", self.room()), "how warm it is there");
        format!("[shelf]\n{flats}{room}")
    }
}

/// The means of a station as the lines of a project file that lies at a latitude, in metric units.
#[must_use]
pub fn place_of(latitude: Latitude, near: &(Metres, Normals)) -> String {
    let (_, station) = near;
    let rows = [
        ("tmin_c", station.low.map(|t| t.0)),
        ("tmax_c", station.high.map(|t| t.0)),
        ("rain_mm", station.rain.map(|rain| rain.0)),
    ];
    place(
        latitude.0,
        &whose(near),
        rows.into_iter(),
        station.rain_days,
    )
}

/// The section of the place.
fn place(
    latitude: f64,
    remark: &str,
    rows: impl Iterator<Item = (&'static str, [f64; 12])>,
    wet: Option<[f64; 12]>,
) -> String {
    let north = "degrees to the north; south of the equator negative";
    let latitude = remarked(&format!("latitude = {latitude}"), north);
    let monthly = remarked(
        "[place.monthly]",
        "means of the twelve months, January first; better is the record of a",
    );
    let better = remarked("", "weather station near you: see `tureen record`");
    let rows: String = rows.map(|(key, row)| line(key, row)).collect();
    let wet = wet.map_or(String::new(), |days| line("rain_days", days));
    format!("[place]\n{latitude}\n{monthly}{better}{remark}{rows}{wet}")
}

/// Whose means these are.
fn whose((far, station): &(Metres, Normals)) -> String {
    format!(
        "# Those of {}, {}, {:.0} km away and {:.0} m above the sea: put your town's here if you know them.\n\
         # Source: {SOURCE}.\n",
        station.name,
        station.country,
        far.0 / 1000.0,
        station.height.0,
    )
}

/// Twelve figures under a key.
fn line(key: &str, row: [f64; 12]) -> String {
    let figures: Vec<String> = row.iter().map(f64::to_string).collect();
    format!("{key} = [{}]\n", figures.join(", "))
}

fn quoted(text: &str) -> String {
    toml::Value::from(text).to_string()
}

/// A line with its remark.
fn remarked(line: &str, remark: &str) -> String {
    format!("{line:<BEFORE_REMARK$} # {remark}\n")
}

fn span(span: &Span) -> String {
    format!(
        "name = {}, from = {}, to = {}",
        quoted(&span.name),
        span.from,
        span.to
    )
}

/// A class; its first lesson is named where it comes only every second week.
fn class_text(class: &Class, starts: Date) -> String {
    let mut text = format!(
        "name = {}, children = {}, day = \"{}\"",
        quoted(&class.name),
        class.children,
        class.day
    );
    if let Some(at) = class.at {
        text += &format!(", at = {}", at.format("%H:%M"));
    }
    if class.every == 2 {
        let days = (0..7).map(|n| plus_days(starts, n));
        let first = days.into_iter().find(|day| day.weekday() == class.day);
        text += &format!(", every = 2, from = {}", first.unwrap_or(starts));
    }
    text
}
