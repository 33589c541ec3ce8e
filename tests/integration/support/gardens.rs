//! The tiny garden: two grades, two beds, one crop sown in the bed and one raised on the
//! shelf, one spring term with a break, on the equator (twelve hours of light every day).

use chrono::Weekday;
use tureen::calendar::Date;
use tureen::garden::{
    Bed, BedKind, Break, Care, Class, Crop, Feast, Garden, Grade, GradeAt, HandOver, Ingredient,
    Locale, Runs, SchoolYear, Shelf, Slot, Source, Sun, Term,
};
use tureen::units::{Celsius, Centimetres, Latitude, Metres, Minutes, Share};

use super::crops::{raised_crop, sown_crop};
use super::day;
use super::weather::{daily, steady_years};

/// A class with one slot for all terms.
pub fn class(name: &str, children: u32, day: Weekday, every_weeks: u32, from: Date) -> Class {
    Class {
        name: name.to_owned(),
        children,
        slots: vec![Slot {
            day,
            every_weeks,
            from,
            minutes: Minutes(45.0),
            at: None,
        }],
        falls_out: Vec::new(),
    }
}

/// A grade whose children keep their plantings.
pub fn grade(id: &str, classes: Vec<Class>) -> Grade {
    Grade {
        id: id.to_owned(),
        name: format!("Grade {id}"),
        age: None,
        classes,
        hand_over: HandOver::SameChildren,
    }
}

/// An ingredient sown within the plan by all the crop's methods, one sowing, one seed a child
/// at the least, half of the target at the least.
pub fn ingredient(crop: Crop, grade: GradeAt, grams_per_portion: f64) -> Ingredient {
    Ingredient {
        name: crop.name.clone(),
        methods: crop.methods.clone(),
        crop,
        teams: vec![grade.into()],
        source: Source::Sown,
        grams_per_portion,
        least_share: Share(0.5),
        each_child_sows: 1,
        max_sowings: 1,
        instead: Vec::new(),
        fallback: None,
    }
}

/// A sunny bed, 1.2 m wide and 30 cm deep, with so many strips, the first of which have a
/// trellis.
pub fn bed(id: &str, strips: u32, trellis_strips: u32) -> Bed {
    Bed {
        id: id.to_owned(),
        kind: BedKind::Bed,
        length: Metres(f64::from(strips) * 0.3),
        width: Metres(1.2),
        soil: Centimetres(30.0),
        sun: Sun::Full,
        trellis: Metres(f64::from(trellis_strips) * 0.3),
        supports_put_up: false,
        cover: None,
        // So that the soil is the mean of the air, which is easy to work by hand.
        soil_bonus: Celsius(-2.0),
        free_from: None,
        grew: Vec::new(),
        runs: Runs::EastWest,
        at: None,
        of: Vec::new(),
        along_trellis: false,
    }
}

/// One spring term in 2027, Monday 1 March to Friday 18 June, with a break from 5 to 9 April
/// in which nobody cares.
pub fn spring() -> SchoolYear {
    SchoolYear {
        start: day("2027-03-01"),
        moves_up: None,
        terms: vec![Term {
            name: "Spring".to_owned(),
            from: day("2027-03-01"),
            to: day("2027-06-18"),
        }],
        breaks: vec![Break {
            name: "Spring break".to_owned(),
            from: day("2027-04-05"),
            to: day("2027-04-09"),
            care: Care::Nobody,
        }],
        days_off: Vec::new(),
        harvest_days: Vec::new(),
    }
}

/// The beds of the tiny garden.
fn tiny_beds() -> Vec<Bed> {
    let mut a = bed("A", 8, 4);
    a.grew = vec![(2023, vec!["nightshade".to_owned()])];
    let mut b = bed("B", 4, 0);
    b.free_from = Some(day("2027-03-10"));
    b.grew = vec![(2026, vec!["nightshade".to_owned()])];
    vec![a, b]
}

/// The shelf of the tiny garden.
fn tiny_shelf() -> Shelf {
    Shelf {
        flats: 3,
        warm_flats: 3,
        room: Celsius(18.0),
        from: day("2027-03-01"),
        until: None,
    }
}

/// The tiny garden, with a feast of 50 portions on Friday 11 June, delivered on Wednesday.
///
/// Grade 1, classes 1a (Tuesday) and 1b (Thursday) every second week from 2 and 4 March, grows
/// `bean`: sown in the bed, ripe after 60 days at 15 C, three days of drying. Grade 2, class
/// 2a every Monday, grows `tomato`: six weeks on the shelf, ripe 40 days after planting out at
/// 15 C, on a trellis. Bed A has 8 strips, 4 of them with trellis; bed B has 4 strips and is
/// free from 10 March. The four weather years have means of 15, 19, 11 and 13.5 C.
pub fn tiny_garden() -> Garden {
    let mut bean = sown_crop("bean", 60.0);
    bean.picking.cure_days = 3;
    let mut tomato = raised_crop("tomato", 40.0);
    tomato.needs.trellis = true;
    tomato.rotation.family = "nightshade".to_owned();
    tomato.rotation.years_hard = 3;
    tomato.rotation.years_wished = 4;
    Garden {
        name: "Tiny garden".to_owned(),
        school: None,
        locale: Locale::British,
        families_also: None,
        feast: Feast {
            day: day("2027-06-11"),
            rain_date: None,
            deliver_by: day("2027-06-09"),
            portions: 50,
        },
        latitude: Latitude(0.0),
        weather: steady_years(&[
            daily(10.0, 20.0),
            daily(14.0, 24.0),
            daily(6.0, 16.0),
            daily(8.5, 18.5),
        ]),
        school_year: spring(),
        grades: vec![
            grade(
                "1",
                vec![
                    class("1a", 20, Weekday::Tue, 2, day("2027-03-02")),
                    class("1b", 20, Weekday::Thu, 2, day("2027-03-04")),
                ],
            ),
            grade(
                "2",
                vec![class("2a", 10, Weekday::Mon, 1, day("2027-03-01"))],
            ),
        ],
        ingredients: vec![
            ingredient(bean, GradeAt(0), 20.0),
            ingredient(tomato, GradeAt(1), 40.0),
        ],
        beds: tiny_beds(),
        begun: Vec::new(),
        former: Vec::new(),
        patches: Vec::new(),
        areas: Vec::new(),
        shelf: tiny_shelf(),
        assumed: Vec::new(),
        doubts: Vec::new(),
        season: None,
    }
}

/// The tiny garden in which both grades grow the beans together.
pub fn shared_beans() -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients[0].teams = vec![garden.grade_positions().collect()];
    garden
}
