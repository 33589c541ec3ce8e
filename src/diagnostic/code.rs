//! The kinds of problems. Their names are stable: tests and other programs may rely on them.

use std::fmt;

/// Defines the kinds with their names and sentences.
macro_rules! codes {
    ($($kind:ident $name:literal $sentence:literal)*) => {
        /// The kind of a problem.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code {
            $(#[doc = $sentence] $kind,)*
        }

        impl Code {
            /// All kinds.
            pub const ALL: &[Code] = &[$(Code::$kind,)*];

            /// Its stable name.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self {
                    $(Code::$kind => $name,)*
                }
            }

            /// What it means, in a sentence.
            #[must_use]
            pub fn sentence(self) -> &'static str {
                match self {
                    $(Code::$kind => $sentence,)*
                }
            }
        }
    };
}

codes! {
    NoSuchFile "no-such-file" "A file does not exist."
    UnreadableFile "unreadable-file" "A file exists but cannot be read, or is a folder, a pipe or a device."
    TooLarge "too-large" "A file is larger than such a file can sensibly be."
    NotUtf8 "not-utf8" "A file is not text in UTF-8."
    EmptyFile "empty-file" "A file holds nothing."
    Syntax "syntax" "A line is not well-formed TOML."
    DuplicateKey "duplicate-key" "A key or section is given twice."
    TooDeep "too-deep" "Keys are nested deeper than any project needs."
    UnknownKey "unknown-key" "A key or section is not one that the program knows."
    MissingKey "missing-key" "A key or section that must be given is not."
    WrongType "wrong-type" "A value is of the wrong type, such as text for a number."
    OutOfRange "out-of-range" "A number or date is outside its range."
    ImpossibleDate "impossible-date" "A date does not exist."
    UnknownWord "unknown-word" "A text is not one of the words that may stand there."
    EmptyText "empty-text" "A text is empty."
    BadText "bad-text" "A text is too long, or holds signs that cannot be printed."
    EmptyList "empty-list" "A list is empty that must hold something."
    WrongLength "wrong-length" "A list has too few or too many values."
    ConflictingKeys "conflicting-keys" "Two keys are given of which only one may be."
    KeyWithoutEffect "key-without-effect" "A key is given that can have no effect here."
    DuplicateId "duplicate-id" "Two things have the same id or name."
    NoSuchGrade "no-such-grade" "A grade is named that the file does not hold."
    NeverMeet "never-meet" "Grades that grow something together never have lessons in the same weeks."
    NoSuchTerm "no-such-term" "A term is named that the calendar does not hold."
    NoSuchCrop "no-such-crop" "A crop is named that the catalogue does not hold."
    NoSuchBed "no-such-bed" "A bed is named that the file does not hold."
    NoSuchPatch "no-such-patch" "A patch is named that the file does not hold."
    NoSuchIngredient "no-such-ingredient" "An ingredient is named that the dish does not hold."
    AdopterLeaves "adopter-leaves" "A grade that leaves the school cannot adopt plantings."
    DatesOutOfOrder "dates-out-of-order" "A date is before one that it must not be before."
    SpansOverlap "spans-overlap" "Two terms or two breaks share a day."
    NotASchoolDay "not-a-school-day" "The feast is on a day without school."
    PlanTooLong "plan-too-long" "The plan spans more weeks than can be planned."
    NotPutBy "not-put-by" "A crop cannot be put by in the way asked for."
    MethodNotPossible "method-not-possible" "A crop cannot be grown in the way asked for."
    NeedsAPatch "needs-a-patch" "A perennial cannot be sown for the feast; it needs a patch."
    CropDiffers "crop-differs" "What stands in the garden is not the ingredient's crop."
    TwoSources "two-sources" "An ingredient comes from more than one place."
    OutsideBed "outside-bed" "Something reaches beyond its bed."
    ShelfOverfull "shelf-overfull" "More seedlings stand on the shelf than it holds."
    StripsOverlap "strips-overlap" "Two things stand on the same strip of a bed."
    GroundShared "ground-shared" "A bed or patch lies on the same ground as something else."
    OverrideWithoutUse "override-without-use" "Figures are given for a crop that the dish does not use."
    LowAboveExpected "low-above-expected" "A poor year's figure is above the ordinary year's."
    WeatherHeader "weather-header" "The weather file has no header before its days."
    WeatherColumns "weather-columns" "A line of the weather file has too few or too many columns."
    WeatherNumber "weather-number" "A value of the weather file is not a number."
    WeatherRange "weather-range" "A value of the weather file cannot be true."
    WeatherMinOverMax "weather-min-over-max" "A day's lowest temperature is above its highest."
    WeatherOrder "weather-order" "The days of the weather file are not in order."
    WeatherDuplicate "weather-duplicate" "A day stands twice in the weather file."
    WeatherGap "weather-gap" "Days are missing in the weather file."
    NoSuchStation "no-such-station" "A station is not in its file, or none is named of several."
    WeatherTooShort "weather-too-short" "The weather file does not cover the plan's span once."
}

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
