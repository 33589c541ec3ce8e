//! The project file of a draft, with a remark beside what a person may want to change.

use chrono::{Datelike, NaiveDate, Weekday};

use super::figures::Measures;
use super::school::{Class, Draft, Span};
use crate::calendar::{Date, plus_days};
use crate::garden::Care;

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
                weekday(self.feast())
            ),
        );
        text + &remarked(
            &format!("portions = {}", self.portions()),
            "who eats: children and adults",
        )
    }

    fn place(&self) -> String {
        let remark = "degrees to the north; south of the equator negative";
        let mut text = "[place]\n".to_owned();
        text += &remarked(&format!("latitude = {}", self.latitude()), remark);
        text += "\n[place.monthly]                  # means of the twelve months, January first; better is the record of a\n";
        text +=
            "                                 # weather station near you: see `tureen record`\n";
        if !self.means.is_said() {
            text += "# These are the means of no real place. Put your town's here, or no date of the plan is worth a thing.\n";
        }
        let keys = match self.measures {
            Measures::Metric => ["tmin_c", "tmax_c", "rain_mm"],
            Measures::Feet => ["tmin_f", "tmax_f", "rain_in"],
        };
        let rows = self.means.rows(self.south(), self.measures);
        for (key, row) in keys.iter().zip(rows) {
            let figures: Vec<String> = row.iter().map(f64::to_string).collect();
            text += &format!("{key} = [{}]\n", figures.join(", "));
        }
        text
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
            text += &format!(
                "  {{ {}, care = \"{}\" }},\n",
                span(time_off),
                care_word(*care)
            );
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
                Measures::Feet => format!("ounces_per_portion = {:.2}", grams / GRAMS_OF_AN_OUNCE),
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

/// NIST SP 811.
const GRAMS_OF_AN_OUNCE: f64 = 28.349_523_125;

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
        let first = days
            .into_iter()
            .find(|day| weekday(*day).starts_with(class.day));
        text += &format!(", every = 2, from = {}", first.unwrap_or(starts));
    }
    text
}

fn care_word(care: Care) -> &'static str {
    match care {
        Care::Nobody => "none",
        Care::Staff => "staff",
        Care::Families => "families",
    }
}

fn weekday(day: NaiveDate) -> &'static str {
    match day.weekday() {
        Weekday::Mon => "Monday",
        Weekday::Tue => "Tuesday",
        Weekday::Wed => "Wednesday",
        Weekday::Thu => "Thursday",
        Weekday::Fri => "Friday",
        Weekday::Sat => "Saturday",
        Weekday::Sun => "Sunday",
    }
}
