//! The rules that every plan keeps and the aims that are followed in order.

use serde::{Deserialize, Serialize};

use crate::garden::Garden;

/// A rule that a plan keeps. `model/rules` and `checker/rules` hold one file for each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rule {
    /// Strips are used by one planting at a time.
    Space,
    /// Flats on the shelf and on the mat do not exceed what stands ready.
    Shelf,
    /// Children work only when their class meets, and within its minutes.
    Sessions,
    /// A crop family keeps away from a bed for its years.
    Rotation,
    /// Every ingredient reaches its least share, and amounts are what the plants give.
    Amount,
    /// Steps follow one another as the crop needs, and the promised years are ready.
    Readiness,
    /// Every class of a grade takes part in its steps, one grade, or one team of them, grows an
    /// ingredient, and as many grades as can be grow something.
    Participation,
    /// Nothing hardens off while nobody is on site.
    Care,
    /// What has begun by the printed plan stays as it was done, and nothing else has begun.
    Happened,
}

impl Rule {
    /// All rules.
    pub const ALL: [Rule; 9] = [
        Rule::Space,
        Rule::Shelf,
        Rule::Sessions,
        Rule::Rotation,
        Rule::Amount,
        Rule::Readiness,
        Rule::Participation,
        Rule::Care,
        Rule::Happened,
    ];

    /// Its short name.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Rule::Space => "space",
            Rule::Shelf => "shelf",
            Rule::Sessions => "sessions",
            Rule::Rotation => "rotation",
            Rule::Amount => "amount",
            Rule::Readiness => "readiness",
            Rule::Participation => "participation",
            Rule::Care => "care",
            Rule::Happened => "happened",
        }
    }
}

/// What is aimed at, in order; each aim is held before the next is followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Aim {
    /// As many ingredients in the pot as can be. Count, more is better.
    InThePot,
    /// Ready years of the worst ingredient. Years, more is better.
    WorstIngredient,
    /// Ready years of all ingredients, added up. Years, more is better.
    AllIngredients,
    /// Ready years of the whole dish. Years, more is better.
    WholeDish,
    /// Dates that move of those that were printed. Count, fewer is better.
    MovedDates,
    /// By how many days they move, added up. Days, fewer is better.
    MovedDays,
    /// The least garden-grown share of the target at low yield. Share, more is better.
    LeastGrownShare,
    /// Garden-grown shares at expected yield, each at most 1, added up. More is better.
    ExpectedAmounts,
    /// Steps that one cancelled session would lose. Count, fewer is better.
    Slack,
    /// Steps not done by the children who sowed. Count, fewer is better.
    Children,
    /// Days on which something needs care and nobody is on site. Days, fewer is better.
    UnattendedDays,
    /// Second steps in one session of a class. Count, fewer is better.
    Evenness,
    /// Weeks that seedlings are older than they need be, plus weeks that the harvest waits for
    /// the feast, plus number of sowings. Fewer is better.
    Tidiness,
}

impl Aim {
    /// All aims in order.
    pub const ALL: [Aim; 13] = [
        Aim::InThePot,
        Aim::WorstIngredient,
        Aim::AllIngredients,
        Aim::WholeDish,
        Aim::MovedDates,
        Aim::MovedDays,
        Aim::LeastGrownShare,
        Aim::ExpectedAmounts,
        Aim::Slack,
        Aim::Children,
        Aim::UnattendedDays,
        Aim::Evenness,
        Aim::Tidiness,
    ];

    /// The aims of a garden's plan, in order: dates can only move once the season is under way.
    pub fn of(garden: &Garden) -> impl Iterator<Item = Aim> + use<> {
        let again = garden.season.is_some();
        let all = Self::ALL.into_iter();
        all.filter(move |aim| again || !aim.is_about_dates())
    }

    /// Its short name.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Aim::InThePot => "in-the-pot",
            Aim::WorstIngredient => "worst-ingredient",
            Aim::AllIngredients => "all-ingredients",
            Aim::WholeDish => "whole-dish",
            Aim::MovedDates => "moved-dates",
            Aim::MovedDays => "moved-days",
            Aim::LeastGrownShare => "least-grown-share",
            Aim::ExpectedAmounts => "expected-amounts",
            Aim::Slack => "slack",
            Aim::Children => "children",
            Aim::UnattendedDays => "unattended-days",
            Aim::Evenness => "evenness",
            Aim::Tidiness => "tidiness",
        }
    }

    /// True if more is better.
    #[must_use]
    pub fn more_is_better(self) -> bool {
        self <= Aim::ExpectedAmounts && !self.is_about_dates()
    }

    /// True if it asks for dates that stay as they were printed.
    #[must_use]
    pub fn is_about_dates(self) -> bool {
        matches!(self, Aim::MovedDates | Aim::MovedDays)
    }

    /// True if its value is a whole number.
    #[must_use]
    pub fn is_whole(self) -> bool {
        !matches!(self, Aim::LeastGrownShare | Aim::ExpectedAmounts)
    }
}
