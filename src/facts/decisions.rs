//! What to decide and by when: seed orders, people, purchases, the nurse.

use crate::calendar::{Date, plus_days};
use crate::garden::{Break, Fallback, Ingredient};
use crate::plan::Planting;

use super::gaps::OpenGap;
use super::known::Known;
use super::spans::{first_day, is_sown};
use super::things::Thing;

/// Seed and plants take up to two weeks to arrive (common practice).
const ORDER_DAYS: i64 = 14;
/// People are asked two weeks ahead (common practice).
const ASK_DAYS: i64 = 14;

/// Something to decide by a day.
#[derive(Debug, Clone, PartialEq)]
pub struct Decision<'a> {
    /// The last day, one of school.
    pub by: Date,
    /// What it is about.
    pub topic: Topic<'a>,
}

/// What a decision is about.
#[derive(Debug, Clone, PartialEq)]
pub enum Topic<'a> {
    /// The nurse is asked about what goes into the dish.
    Nurse,
    /// Seed, pieces or plants are ordered.
    Order(Order<'a>),
    /// Somebody is named for days without anyone.
    Gap(OpenGap<'a>),
    /// The watering list of a break is filled.
    Break(&'a Break),
    /// The kitchen is told what the garden brings, so that it orders the rest.
    Kitchen,
    /// An ingredient is bought if it has failed.
    Buy {
        /// The ingredient.
        ingredient: &'a Ingredient,
        /// What it costs, as the file says.
        cost: Option<f64>,
    },
}

/// Seed, pieces or plants of an ingredient to order.
#[derive(Debug, Clone, PartialEq)]
pub struct Order<'a> {
    /// The last day of school on which it is time, so that they are there when they are needed.
    pub by: Date,
    /// The first day on which they are.
    pub needed: Date,
    /// The ingredient.
    pub ingredient: &'a Ingredient,
    /// What is ordered.
    pub thing: Thing,
    /// How many, of all sowings.
    pub count: u32,
}

impl Topic<'_> {
    /// True if what it is about is not over on a day, though it should have been decided before.
    fn is_open(&self, day: Date) -> bool {
        match self {
            Self::Order(_) => true,
            Self::Gap(gap) => gap.to >= day,
            Self::Break(pause) => pause.to >= day,
            Self::Nurse | Self::Kitchen | Self::Buy { .. } => false,
        }
    }

    /// What sort of decision it is.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Nurse => "nurse",
            Self::Order(_) => "order",
            Self::Gap(_) => "gap",
            Self::Break(_) => "break",
            Self::Kitchen => "kitchen",
            Self::Buy { .. } => "buy",
        }
    }

    /// Its key, the same in every plan of a project: the sort, and what of that sort.
    #[must_use]
    pub fn key(&self) -> String {
        let of_that_sort = match self {
            Self::Nurse | Self::Kitchen => return self.kind().to_owned(),
            Self::Order(order) => &order.ingredient.name,
            Self::Gap(gap) => &gap.number.to_string(),
            Self::Break(pause) => &pause.name,
            Self::Buy { ingredient, .. } => &ingredient.name,
        };
        [self.kind(), of_that_sort].join(" ")
    }
}

/// All decisions of a plan in order of time.
pub(super) fn decisions<'a>(known: &Known<'a>, gaps: &[OpenGap<'a>]) -> Vec<Decision<'a>> {
    let orders = known.orders();
    let start = known.garden.school_year.start;
    let first_order = orders.first().map_or(start, |order| order.by);
    let decide = |by: Date, topic: Topic<'a>| Decision {
        by: known.school_day_until(by),
        topic,
    };
    // The nurse comes first among decisions of one day.
    let mut all = vec![decide(first_order.min(start), Topic::Nurse)];
    all.extend(orders.into_iter().map(|o| decide(o.by, Topic::Order(o))));
    let gaps = gaps.iter().cloned();
    all.extend(gaps.map(|gap| decide(plus_days(gap.from, -ASK_DAYS), Topic::Gap(gap))));
    let breaks = known.breaks_to_fill();
    all.extend(breaks.map(|b| decide(plus_days(b.from, -ASK_DAYS), Topic::Break(b))));
    all.push(decide(known.rest_ordered_by(), Topic::Kitchen));
    for ingredient in &known.garden.ingredients {
        let buy = |Fallback { buy_by, cost }| decide(buy_by, Topic::Buy { ingredient, cost });
        all.extend(ingredient.fallback.map(buy));
    }
    // What was to be decided before the day as of which is planned is decided, but for what has yet to come: that is
    // at once.
    if let Some(as_of) = known.garden.season.as_ref().map(|season| season.as_of) {
        all.retain(|decision| decision.by >= as_of || decision.topic.is_open(as_of));
        for decision in &mut all {
            decision.by = decision.by.max(as_of);
        }
    }
    all.sort_by_key(|decision| decision.by);
    all
}

impl<'a> Known<'a> {
    /// All that is ordered, in order of time; on one day in the order of the file.
    #[must_use]
    pub fn orders(&self) -> Vec<Order<'a>> {
        let ingredients = self.garden.ingredients.iter().filter(|i| is_sown(i));
        let mut orders: Vec<Order<'a>> = ingredients.filter_map(|i| self.order(i)).collect();
        orders.sort_by_key(|order| order.by);
        orders
    }

    /// What is ordered of an ingredient; `None` where nothing is counted. What has begun by the day as of which is
    /// planned was ordered before.
    fn order(&self, ingredient: &'a Ingredient) -> Option<Order<'a>> {
        let as_of = self.garden.season.as_ref().map(|season| season.as_of);
        let to_come = |p: &&Planting| as_of.is_none_or(|day| first_day(p) >= Some(day));
        let plantings = self.plantings_named(&ingredient.name).filter(to_come);
        let plantings: Vec<&Planting> = plantings.collect();
        let needed = plantings.iter().filter_map(|p| first_day(p)).min()?;
        let in_time = self.school_day_until(plus_days(needed, -ORDER_DAYS));
        let count: u32 = plantings.iter().map(|p| p.seeds).sum();
        let thing = Thing::sown(plantings.first()?.method);
        (count > 0).then(|| Order {
            by: as_of.map_or(in_time, |at_once| in_time.max(at_once)),
            needed,
            ingredient,
            thing,
            count,
        })
    }

    /// The last day of school on which the kitchen orders what the garden does not bring in time.
    #[must_use]
    pub fn rest_ordered_by(&self) -> Date {
        self.school_day_until(plus_days(self.garden.feast.deliver_by, -ORDER_DAYS))
    }

    /// The last day of school by which what is bought in place of an ingredient is ordered.
    #[must_use]
    pub fn bought_by(&self, fallback: Fallback) -> Date {
        self.school_day_until(fallback.buy_by)
    }
}
