//! Dates counted back and forth: from the harvest to the seed, and from the seed to the bed.

use chrono::Weekday;
use tureen::calendar::{Date, plus_days};
use tureen::candidates::{Candidate, Candidates, hardening};
use tureen::garden::{Feast, Garden, Microclimate, SchoolYear, Shelf, Term};
use tureen::growth::{CropSeason, Light};
use tureen::units::Celsius;

use super::check::Check;
use super::ours::{catalogue, crop, day};
use crate::support::crops::raised_crop;
use crate::support::gardens::{bed, class, grade, ingredient, tiny_garden};
use crate::support::weather::{daily, steady_years};

/// NC-HOKE: sown about, and set out about (the last week of April, the first week of May,
/// after 1 May).
const SOWN_AND_SET_OUT: [(&str, [(u32, u32); 2]); 6] = [
    ("tomato", [(3, 22), (4, 27)]),
    ("sweet pepper", [(3, 12), (5, 4)]),
    ("eggplant", [(3, 12), (5, 4)]),
    ("cucumber", [(4, 12), (5, 4)]),
    ("summer squash", [(4, 12), (5, 4)]),
    ("melon", [(4, 12), (5, 4)]),
];

/// A feast on 15 September 2026 with tomatoes that take 75 days from planting out, six weeks
/// on the shelf, and bear for 28 days; one class that meets on Thursdays; 15 C all year.
fn garden() -> Garden {
    let mut tomato = raised_crop("tomato", 75.0);
    tomato.picking.holds_in_ground_days = 28;
    Garden {
        feast: Feast {
            day: day(9, 15),
            rain_date: None,
            deliver_by: day(9, 15),
            portions: 20,
        },
        weather: steady_years(&[daily(10.0, 20.0); 3]),
        school_year: SchoolYear {
            start: day(3, 2),
            moves_up: None,
            terms: vec![Term {
                name: "Year".to_owned(),
                from: day(3, 2),
                to: day(9, 30),
            }],
            breaks: Vec::new(),
            days_off: Vec::new(),
            harvest_days: Vec::new(),
        },
        grades: vec![grade(
            "1",
            vec![class("1a", 20, Weekday::Thu, 1, day(3, 5))],
        )],
        ingredients: vec![ingredient(tomato, tureen::garden::GradeAt(0), 40.0)],
        beds: vec![bed("A", 8, 0)],
        shelf: Shelf {
            from: day(3, 2),
            flats: 40,
            warm_flats: 40,
            ..tiny_garden().shelf
        },
        ..tiny_garden()
    }
}

/// When the garden's tomato is ripe if it is planted out on a day.
fn ripe(garden: &Garden, planted: Date) -> Option<Date> {
    let horizon = garden.horizon();
    let open = Microclimate {
        frost_kept_off: Celsius(0.0),
        soil_bonus: Celsius(0.0),
    };
    let years = garden.weather.years(horizon);
    let crop = &garden.ingredients[0].crop;
    let season = CropSeason::new(crop, open, &years[0], &Light::of(garden.latitude, horizon));
    let fate = season.planted(horizon.day_number(planted)?);
    fate.ripe.map(|n| horizon.date(n))
}

/// Back from the harvest: planted out so that the harvest falls 14 days into the bearing.
fn back_from_harvest() -> [Check; 4] {
    let garden = garden();
    let harvest = day(9, 15);
    let set_out = day(6, 18);
    let all = Candidates::enumerate(&garden).all;
    let out = |c: &Candidate| c.steps.plant_out.as_ref().map(|round| round.first());
    let chain = all.iter().find(|c| out(c) == Some(set_out));
    let sown = chain.and_then(|c| Some(c.steps.sow.as_ref()?.first()));
    let hardened = chain.and_then(|c| Some(hardening(c.steps.plant_out.as_ref()?)));
    let days = hardened.map_or(0, |(from, to)| (to - from).num_days() + 1);
    let into_bearing = ripe(&garden, set_out).map(|ripe| plus_days(ripe, 14));
    [
        Check::day("14 days into the bearing", into_bearing, harvest, "RULE"),
        Check::day("sown six weeks before 18 June", sown, day(5, 7), "RULE"),
        Check::day(
            "hardened from seven days before",
            hardened.map(|h| h.0),
            day(6, 11),
            "RULE",
        ),
        Check::range("days of hardening off", days as f64, 7.0, 14.0, "HARDENING"),
    ]
}

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let mut checks = Vec::from(back_from_harvest());
    checks.extend(SOWN_AND_SET_OUT.map(|(name, [sown, out])| {
        let start = crop(&catalogue, name).indoor.expect("raised indoors");
        let age = (day(out.0, out.1) - day(sown.0, sown.1)).num_days() as f64 / 7.0;
        let (least, most) = (f64::from(start.weeks_lo), f64::from(start.weeks_hi));
        let what = format!("{name}: age at setting out, weeks, within ours");
        Check::range(&what, age, least, most, "NC-HOKE")
    }));
    checks
}
