//! All that the watering list says, sentence by sentence: a further language is a further file
//! with these, and the compiler asks for each.

use crate::calendar::Date;
use crate::checker::{Seedbed, WaterNeed};
use crate::facts::water::{Asked, BreakWeek};
use crate::garden::{Bed, Garden};
use crate::words::water::WaterMeasure;

/// What the weeks alone add up to, and what whole years do.
pub(crate) struct Sums {
    /// Week by week.
    pub weeks: WaterNeed,
    /// Year by year.
    pub whole: WaterNeed,
    /// In how many weather years.
    pub years: usize,
}

/// A language in which the list is written. What is given back is a whole sentence or several, a
/// heading, or the head of a column.
pub(crate) trait Speech {
    /// In what water is measured out, and what that is called.
    fn measure(&self) -> WaterMeasure;
    /// What the list is called.
    fn title(&self) -> String;
    /// What is to be known before anybody reads on; none where nothing is.
    fn note(&self) -> Option<String>;
    /// The dish, the school, the day, how many eat.
    fn occasion(&self, garden: &Garden) -> String;
    /// The heading of the table.
    fn for_each_week(&self) -> String;
    /// What is asked of families in a break: the first line of their page.
    fn asked(&self, asked: &Asked<'_>) -> String;

    /// How the table is read.
    fn legend(&self) -> String;
    /// The heads of the columns before those of the beds.
    fn heads(&self) -> [&'static str; 3];
    /// The head of a bed's column.
    fn bed(&self, bed: &Bed) -> String;
    /// A week by its Monday.
    fn week(&self, monday: Date) -> String;
    /// That a row is that of all weeks until a day.
    fn until(&self, day: Date) -> String;
    /// Who waters in a week of a break, what else is to be done, and room for a name.
    fn break_week(&self, week: &BreakWeek<'_>) -> String;
    /// What the whole span needs.
    fn whole(&self, need: WaterNeed) -> String;
    /// The heading of the seedbeds.
    fn seedbeds(&self) -> &'static str;
    /// One seedbed, in beds of these names, and until when it is looked at.
    fn seedbed(&self, seedbed: &Seedbed, beds: &[&str]) -> String;
    /// What to do where only the top of the soil dries.
    fn lies_shallow(&self) -> &'static str;
    /// What to do where the seed lies deep.
    fn lies_deep(&self) -> &'static str;
    /// The heading of how to water.
    fn how(&self) -> &'static str;
    /// How to water, before the rain gauge.
    fn habits(&self) -> Vec<String>;
    /// What a line of the rain gauge saves, by beds of the same figure.
    fn rain_gauge(&self, saved: &[(String, Vec<&str>)]) -> String;
    /// What mulch saves.
    fn mulch(&self) -> String;
    /// What to do where a cover of this name keeps the rain off.
    fn cover(&self, bed: &Bed, cover: &str) -> String;
    /// Local rules, and who carries how much.
    fn caution(&self) -> String;
    /// The heading of how it is computed.
    fn computed(&self) -> &'static str;
    /// How it is computed.
    fn how_computed(&self, sums: &Sums) -> String;
    /// That patches are left out.
    fn patches(&self) -> &'static str;
}
