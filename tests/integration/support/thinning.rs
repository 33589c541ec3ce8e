//! When a row is thinned, counted anew: year by year from the days on which its seed is up.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use tureen::calendar::Date;
use tureen::garden::{BedAt, Garden, IngredientAt};
use tureen::growth::{CropSeason, Light};
use tureen::plan::{Planting, StepKind, When};

type Seasons = Rc<Vec<CropSeason>>;

/// The rows of a garden, each crop and bed grown once.
pub struct Rows<'g> {
    garden: &'g Garden,
    seasons: RefCell<BTreeMap<(IngredientAt, BedAt), Seasons>>,
}

impl<'g> Rows<'g> {
    pub fn of(garden: &'g Garden) -> Self {
        let seasons = RefCell::default();
        Self { garden, seasons }
    }

    fn seasons(&self, at: IngredientAt, bed: BedAt) -> Seasons {
        let garden = self.garden;
        let grow = || {
            let climate = garden[bed].microclimate();
            let crop = &garden[at].crop;
            let years = garden.weather.years(garden.horizon());
            let season = |year| {
                CropSeason::new(
                    crop,
                    climate,
                    year,
                    &Light::of(garden.latitude, garden.horizon()),
                )
            };
            Rc::new(years.iter().map(season).collect())
        };
        let mut seasons = self.seasons.borrow_mut();
        Rc::clone(seasons.entry((at, bed)).or_insert_with(grow))
    }

    /// Days from sowing until the seed is up, of every weather year in which it comes up.
    pub fn days_up(&self, (at, bed): (IngredientAt, BedAt), sown: Date) -> Vec<i64> {
        let sown = self.garden.horizon().day_number(sown).unwrap();
        let seasons = self.seasons(at, bed);
        let up = seasons.iter().filter_map(|s| s.sown_when_fit(sown).up);
        up.map(|up| up as i64 - sown as i64).collect()
    }

    /// True if rows that were sown on a day are thinned in time on another, where picking begins on a
    /// third: they have been up for as many days as the crop wants, counted from the day by which most
    /// years are up; nine years of ten are up the day before; they have not stood close for too
    /// long, nor for more than two thirds of the time until the pick.
    pub fn in_time(&self, of: (IngredientAt, BedAt), days: [Date; 3]) -> bool {
        let [sown, thinned, picked] = days;
        let Some(thinning) = self.garden[of.0].crop.thinning else {
            return false;
        };
        let up = self.days_up(of, sown);
        let years = up.len();
        let are_up = |day: i64| up.iter().filter(|up| **up <= day).count();
        let (thinned, picked) = ((thinned - sown).num_days(), (picked - sown).num_days());
        if years == 0 {
            return true;
        }
        let first =
            |enough: &dyn Fn(usize) -> bool| (0..).find(|day| enough(are_up(*day))).unwrap();
        let usual = first(&|up| 2 * up > years);
        let late = first(&|up| 10 * up >= 9 * years);
        let [after, before] = [thinning.after, thinning.before].map(i64::from);
        thinned >= usual + after
            && thinned > late
            && (thinned <= usual + before || thinned <= late + after)
            && 3 * (thinned - usual) <= 2 * (picked - usual)
    }

    /// True if every part of a planting is thinned in time: part j by class j, both counted round. What
    /// is not thinned is.
    pub fn thinned_in_time(&self, planting: &Planting) -> bool {
        let of = |kind| planting.steps.iter().find(|s| s.kind == kind);
        let (Some(sow), Some(thin)) = (of(StepKind::Sow), of(StepKind::Thin)) else {
            return true;
        };
        let at = self.garden.ingredient_named(&planting.ingredient).unwrap();
        let mut beds = self.garden.bed_positions();
        let bed = beds.find(|bed| self.garden[*bed].id == planting.places[0].bed);
        let picks = planting.steps.iter().filter(|s| s.kind == StepKind::Pick);
        let first_pick = picks.filter_map(|s| s.when.first()).min().unwrap();
        let (sown, thinned) = (days(&sow.when), days(&thin.when));
        (0..sown.len().max(thinned.len())).all(|j| {
            let [sown, thinned] = [&sown, &thinned].map(|days| days[j % days.len()]);
            self.in_time((at, bed.unwrap()), [sown, thinned, first_pick])
        })
    }
}

fn days(when: &When) -> Vec<Date> {
    match when {
        When::Sessions(visits) => visits.iter().map(|v| v.date).collect(),
        When::Families(day) | When::Adult(day) => vec![*day],
        When::Daily { from, .. } => vec![*from],
    }
}
