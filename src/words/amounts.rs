//! Masses, lengths and rain, in the locale's unit alone or with the other one beside it.

use super::Words;
use crate::units::{
    Celsius, Centimetres, Feet, Kilograms, Litres, Metres, Millimetres, Pounds, rounded,
};

impl Words {
    /// With as many digits as a scale in a kitchen shows: `60 g`, `4.8 kg`, `27 kg`; `2.1 oz`,
    /// `11 lb`.
    #[must_use]
    pub fn mass(self, mass: Kilograms) -> String {
        self.choose(metric_mass(mass), us_mass(mass.to_pounds()))
    }

    /// `4.8 to 7.6 kg`, or one figure where both read the same.
    #[must_use]
    pub fn mass_range(self, low: Kilograms, high: Kilograms) -> String {
        range(&self.mass(low), &self.mass(high))
    }

    /// `4.8 kg (11 lb)`; `11 lb (4.8 kg)`.
    #[must_use]
    pub fn mass_in_both(self, mass: Kilograms) -> String {
        self.both(&metric_mass(mass), &us_mass(mass.to_pounds()))
    }

    /// `4.8 to 7.6 kg (11 to 17 lb)`; the other way round.
    #[must_use]
    pub fn mass_range_in_both(self, low: Kilograms, high: Kilograms) -> String {
        let metric = range(&metric_mass(low), &metric_mass(high));
        let us = range(&us_mass(low.to_pounds()), &us_mass(high.to_pounds()));
        self.both(&metric, &us)
    }

    /// What goes into one portion, as the file gives it: `25 g`; `0.88 oz`.
    #[must_use]
    pub fn portion(self, grams: f64) -> String {
        let unit = self.choose("g", "oz");
        format!("{} {unit}", self.portion_figure(grams))
    }

    /// The same without its unit: `25`; `0.88`.
    #[must_use]
    pub fn portion_figure(self, grams: f64) -> String {
        let ounces = Kilograms(grams / 1000.0).to_pounds().ounces();
        let digits = if ounces < 0.995 { 2 } else { 1 };
        self.choose((grams + 0.0).to_string(), rounded(ounces, digits))
    }

    /// Two masses as bare figures in the locale's larger unit, for a column: `6.4-11`, `0.91-1.7`.
    #[must_use]
    pub fn figures_of_mass(self, low: Kilograms, high: Kilograms) -> String {
        let figure = |mass| {
            let (figure, _) = self.mass_unit(mass);
            let digits = match figure {
                f if f < 0.995 => 2,
                f if f < 9.95 => 1,
                _ => 0,
            };
            rounded(figure, digits)
        };
        match (figure(low), figure(high)) {
            (low, high) if low == high => high,
            (low, high) => format!("{low}-{high}"),
        }
    }

    /// The locale's larger unit of mass: `kg`; `lb`.
    #[must_use]
    pub fn unit_of_mass(self) -> &'static str {
        self.mass_unit(Kilograms(0.0)).1
    }

    /// With two digits, to be compared: `4.76 kg`; `10.49 lb`.
    #[must_use]
    pub fn exact_mass(self, mass: Kilograms) -> String {
        let (figure, unit) = self.mass_unit(mass);
        format!("{} {unit}", rounded(figure, 2))
    }

    /// A mass in the locale's larger unit, and that unit: kilograms; pounds.
    #[must_use]
    pub fn mass_unit(self, mass: Kilograms) -> (f64, &'static str) {
        let pounds = mass.to_pounds().0;
        self.choose((mass.0, Kilograms::SYMBOL), (pounds, Pounds::SYMBOL))
    }

    /// What one plant gives: `360 g`, `1.20 kg`; `12.7 oz`, `2.65 lb`.
    #[must_use]
    pub fn small_mass(self, mass: Kilograms) -> String {
        let pounds = mass.to_pounds();
        let metric = match mass.0 {
            kg if kg < 0.9995 => format!("{}\u{a0}g", rounded(kg * 1000.0, 0)),
            kg => format!("{}\u{a0}kg", rounded(kg, 2)),
        };
        let us = match pounds.0 {
            lb if lb < 0.995 => format!("{}\u{a0}oz", rounded(pounds.ounces(), 1)),
            lb => format!("{}\u{a0}lb", rounded(lb, 2)),
        };
        self.choose(metric, us)
    }

    /// A mass as it stands in the catalogue: `1.75 kg`; `3.86 lb`.
    #[must_use]
    pub fn figure_of_mass(self, mass: Kilograms) -> String {
        let us = mass.to_pounds().0;
        self.choose(
            format!("{} kg", without_dust(mass.0)),
            format!("{} lb", rounded(us, 2)),
        )
    }

    /// What a length of row gives, of the mass for a metre: `0.7 kg a metre`; `0.47 lb a foot`.
    #[must_use]
    pub fn mass_a_length(self, of_a_metre: Kilograms) -> String {
        let of_a_foot = of_a_metre.to_pounds().0 / Metres(1.0).to_feet().0;
        self.choose(
            format!("{} kg a metre", without_dust(of_a_metre.0)),
            format!("{} lb a foot", rounded(of_a_foot, 2)),
        )
    }

    /// The unit of a row's length in words: `metre`; `foot`.
    #[must_use]
    pub fn length_unit(self) -> &'static str {
        self.choose("metre", "foot")
    }

    /// A length with its unit: `3.6 m`; `12 ft`.
    #[must_use]
    pub fn length(self, length: Metres) -> String {
        self.choose(metric_length(length), us_length(length.to_feet()))
    }

    /// `3.6 m (12 ft)`; `12 ft (3.6 m)`.
    #[must_use]
    pub fn length_in_both(self, length: Metres) -> String {
        self.both(&metric_length(length), &us_length(length.to_feet()))
    }

    /// A rectangle: `3.6 x 1.2 m`; `11.8 x 3.9 ft`.
    #[must_use]
    pub fn size(self, length: Metres, width: Metres) -> String {
        let metric = format!("{} x {} m", rounded(length.0, 1), rounded(width.0, 1));
        self.choose(metric, us_size(length, width))
    }

    /// A rectangle with as many digits as the file gives: `4 x 1.25 m`; `13.1 x 4.1 ft`.
    #[must_use]
    pub fn ground(self, length: Metres, width: Metres) -> String {
        self.choose(metric_ground(length, width), us_size(length, width))
    }

    /// `3.6 x 1.2 m (11.8 x 3.9 ft)`; the other way round.
    #[must_use]
    pub fn ground_in_both(self, length: Metres, width: Metres) -> String {
        self.both(&metric_ground(length, width), &us_size(length, width))
    }

    /// A spacing, depth or width of soil: `30 cm`, `2.5 cm`; `12 in`, `1 in`.
    #[must_use]
    pub fn short_length(self, length: Centimetres) -> String {
        self.choose(format!("{} cm", length.0 + 0.0), us_short_length(length))
    }

    /// `0.6 to 1.3 cm`; `1/4 to 1/2 in`.
    #[must_use]
    pub fn short_lengths(self, least: Centimetres, most: Centimetres) -> String {
        let figure = |length| self.short_length(length).replace(' ', "\u{a0}");
        range(&figure(least), &figure(most))
    }

    /// `30 cm (12 in)`; `12 in (30 cm)`.
    #[must_use]
    pub fn short_length_in_both(self, length: Centimetres) -> String {
        self.both(&format!("{} cm", length.0 + 0.0), &us_short_length(length))
    }

    /// How far above the ground a weather station's thermometer hangs, in words.
    #[must_use]
    pub fn height_of_a_thermometer(self) -> &'static str {
        self.choose("two metres", "six feet")
    }

    /// A depth of rain: `12 mm`; `0.5 in`.
    #[must_use]
    pub fn rain(self, rain: Millimetres) -> String {
        let inches = rain.to_inches().0;
        self.choose(
            format!("{}\u{a0}mm", rounded(rain.0, 0)),
            format!("{}\u{a0}in", rounded(inches, 1)),
        )
    }

    /// The rain of a whole year: `812 mm`; `32 in`.
    #[must_use]
    pub fn rain_of_a_year(self, rain: Millimetres) -> String {
        let inches = rain.to_inches().0;
        self.choose(
            format!("{} mm", rounded(rain.0, 0)),
            format!("{} in", rounded(inches, 0)),
        )
    }

    /// What makes a day a rain day: a millimetre.
    #[must_use]
    pub fn rain_day(self) -> &'static str {
        self.choose("1 mm", "0.04 in")
    }

    /// A volume with its unit in short: `40 L`; `11 gal`.
    #[must_use]
    pub fn volume(self, volume: Litres) -> String {
        self.choose(metric_volume(volume), us_volume(volume))
    }

    /// `40 L (11 gal)`; `11 gal (40 L)`.
    #[must_use]
    pub fn volume_in_both(self, volume: Litres) -> String {
        self.both(&metric_volume(volume), &us_volume(volume))
    }

    /// `0 C (32 F)`, `7.2 to 10 C (45 to 50 F)`, in every locale.
    #[must_use]
    pub fn temperatures(self, low: Celsius, high: Celsius) -> String {
        let f = |c: Celsius| rounded(c.0 * 1.8 + 32.0, 0);
        let [from, to] = [low, high].map(|c| without_dust(c.0));
        if low == high {
            format!("{from} C ({} F)", f(low))
        } else {
            format!("{from} to {to} C ({} to {} F)", f(low), f(high))
        }
    }

    /// Two texts that say the same, the locale's own first.
    fn both(self, metric: &str, us: &str) -> String {
        let (first, second) = self.choose((metric, us), (us, metric));
        format!("{first} ({second})")
    }
}

/// A figure without the dust of arithmetic, nothing without a sign.
fn without_dust(figure: f64) -> f64 {
    (figure * 1e6).round() / 1e6 + 0.0
}

/// `60 g`, `4.8 kg`, `27 kg`.
fn metric_mass(mass: Kilograms) -> String {
    let kg = mass.0;
    if kg < 0.995 {
        format!("{}\u{a0}g", rounded((kg * 100.0).round() * 10.0, 0))
    } else {
        three_digits(kg, Kilograms::SYMBOL)
    }
}

/// `2.1 oz`, `12 oz`, `4.8 lb`, `27 lb`.
fn us_mass(mass: Pounds) -> String {
    let ounces = mass.ounces();
    if ounces < 15.5 {
        three_digits(ounces, "oz")
    } else {
        three_digits(mass.0, Pounds::SYMBOL)
    }
}

fn metric_length(length: Metres) -> String {
    format!("{}\u{a0}m", rounded(length.0, 1))
}

fn us_length(length: Feet) -> String {
    three_digits(length.0, Feet::SYMBOL)
}

/// As a ruler shows it: eighths under an inch, quarters under ten inches, whole inches above.
fn us_short_length(length: Centimetres) -> String {
    let inches = length.to_inches().0;
    let parts = if inches < 1.0 {
        8.0
    } else if inches < 10.0 {
        4.0
    } else {
        1.0
    };
    let told = (inches * parts).round() / parts;
    let whole = told.trunc();
    let fraction = match ((told - whole) * 8.0).round() {
        1.0..2.0 => "1/8",
        2.0..3.0 => "1/4",
        3.0..4.0 => "3/8",
        4.0..5.0 => "1/2",
        5.0..6.0 => "5/8",
        6.0..7.0 => "3/4",
        7.0..8.0 => "7/8",
        _ => "",
    };
    match (whole > 0.0, fraction.is_empty()) {
        (false, false) => format!("{fraction} in"),
        (true, false) => format!("{whole} {fraction} in"),
        _ => format!("{} in", whole + 0.0),
    }
}

/// Two digits at most, and none that tells nothing: `3.6 x 1.25 m`, `4 x 1.2 m`.
fn metric_ground(length: Metres, width: Metres) -> String {
    let short = |length: Metres| {
        let text = rounded(length.0, 2);
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    };
    format!("{} x {} m", short(length), short(width))
}

fn us_size(length: Metres, width: Metres) -> String {
    let [length, width] = [length, width].map(|side| rounded(side.to_feet().0, 1));
    format!("{length} x {width} ft")
}

fn metric_volume(volume: Litres) -> String {
    three_digits(volume.0, Litres::SYMBOL)
}

fn us_volume(volume: Litres) -> String {
    three_digits(volume.to_gallons().0, crate::units::Gallons::SYMBOL)
}

/// `4.8 kg`, `27 kg`: one digit after the point under ten.
fn three_digits(figure: f64, unit: &str) -> String {
    if figure < 9.95 {
        format!("{}\u{a0}{unit}", rounded(figure, 1))
    } else {
        format!("{}\u{a0}{unit}", rounded(figure, 0))
    }
}

/// `4.8 to 7.6 kg`, `910 g to 1.7 kg`, or one figure where both read the same.
fn range(low: &str, high: &str) -> String {
    match (low.split_once('\u{a0}'), high.split_once('\u{a0}')) {
        _ if low == high => high.to_owned(),
        (Some((number, a)), Some((_, b))) if a == b => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}
