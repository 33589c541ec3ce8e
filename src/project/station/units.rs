//! The units of a file, and what its values are in degrees Celsius and millimetres.

/// What temperatures are in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TemperatureUnit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Tenths of a degree Celsius.
    TenthsOfCelsius,
}

/// What rain is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RainUnit {
    /// Millimetres.
    Millimetres,
    /// Inches.
    Inches,
    /// Tenths of a millimetre.
    TenthsOfMillimetre,
}

/// The units of a file, as far as they are known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Units {
    /// Of temperatures.
    pub temperature: Option<TemperatureUnit>,
    /// Of rain.
    pub rain: Option<RainUnit>,
}

/// No thermometer has shown more, in degrees Celsius and Fahrenheit (56.7 and 134 in 1913, World
/// Meteorological Organization, archive of extremes; from memory).
const HOTTEST: (f64, f64) = (60.0, 140.0);

impl Units {
    /// Tenths of both, as GHCN-Daily and ECA&D give them.
    pub const TENTHS: Self = Self {
        temperature: Some(TemperatureUnit::TenthsOfCelsius),
        rain: Some(RainUnit::TenthsOfMillimetre),
    };

    /// These, and others where these are not known.
    #[must_use]
    pub fn or(self, others: Self) -> Self {
        Self {
            temperature: self.temperature.or(others.temperature),
            rain: self.rain.or(others.rain),
        }
    }

    /// What the greatest temperature leaves possible: hotter than any place in Celsius are degrees
    /// Fahrenheit, and hotter than any in Fahrenheit are tenths.
    #[must_use]
    pub fn by(hottest: Option<f64>) -> Self {
        let temperature = hottest.map(|hottest| match hottest {
            t if t <= HOTTEST.0 => TemperatureUnit::Celsius,
            t if t <= HOTTEST.1 => TemperatureUnit::Fahrenheit,
            _ => TemperatureUnit::TenthsOfCelsius,
        });
        Self {
            temperature,
            rain: None,
        }
    }

    /// Rain in the unit that goes with that of the temperatures.
    #[must_use]
    pub fn with_rain(self) -> Self {
        let rain = self.temperature.map(|temperature| match temperature {
            TemperatureUnit::Celsius => RainUnit::Millimetres,
            TemperatureUnit::Fahrenheit => RainUnit::Inches,
            TemperatureUnit::TenthsOfCelsius => RainUnit::TenthsOfMillimetre,
        });
        Self {
            rain: self.rain.or(rain),
            ..self
        }
    }
}

impl TemperatureUnit {
    /// In degrees Celsius (NIST SP 811).
    #[must_use]
    pub fn celsius(self, value: f64) -> f64 {
        match self {
            Self::Celsius => value,
            Self::Fahrenheit => (value - 32.0) / 1.8,
            Self::TenthsOfCelsius => value / 10.0,
        }
    }
}

impl RainUnit {
    /// In millimetres (NIST SP 811).
    #[must_use]
    pub fn millimetres(self, value: f64) -> f64 {
        match self {
            Self::Millimetres => value,
            Self::Inches => value * 10.0 * crate::units::INCH,
            Self::TenthsOfMillimetre => value / 10.0,
        }
    }
}
