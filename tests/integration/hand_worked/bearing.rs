//! Crops that bear all summer, for a feast in autumn: possible where somebody keeps them picked, and only there.

use tureen::candidates::{Candidate, Candidates, Round};
use tureen::catalogue::Catalogue;
use tureen::garden::{Break, Care, Garden, GradeAt, Method, Term};
use tureen::units::{Metres, Share};

use crate::support::climates::mediterranean;
use crate::support::day;
use crate::support::gardens::{bed, ingredient, tiny_garden};

/// A school on a Mediterranean coast, 39 degrees north, that eats one crop on Friday 1 October, with school from March
/// to the end of May and from September.
fn school(crop: &str, care: Care) -> Garden {
    let mut garden = tiny_garden();
    (garden.latitude, garden.weather) = mediterranean(30);
    let crop = Catalogue::load().unwrap().get(crop).unwrap().clone();
    let mut only = ingredient(crop, GradeAt(1), 5.0);
    only.least_share = Share(0.1);
    only.methods.retain(|method| *method != Method::Bought);
    garden.ingredients = vec![only];
    garden.beds = vec![bed("A", 20, 20)];
    garden.beds[0].length = Metres(6.0);
    garden.shelf.flats = 20;
    garden.shelf.warm_flats = 20;
    garden.shelf.from = day("2027-03-01");
    let year = &mut garden.school_year;
    year.terms = [
        ("Spring", "2027-03-01", "2027-05-28"),
        ("Autumn", "2027-09-06", "2027-12-17"),
    ]
    .map(|(name, from, to)| Term {
        name: name.to_owned(),
        from: day(from),
        to: day(to),
    })
    .to_vec();
    year.breaks = vec![Break {
        name: "Summer".to_owned(),
        from: day("2027-05-29"),
        to: day("2027-09-05"),
        care,
    }];
    garden.feast.day = day("2027-10-01");
    garden.feast.deliver_by = day("2027-09-29");
    garden
}

/// In how many years of 30 the best way of growing it from spring on is ready, where somebody picks all summer and where
/// nobody does.
fn best(crop: &str) -> (u32, u32) {
    let best = |care| {
        let candidates = Candidates::enumerate(&school(crop, care));
        let in_spring = |c: &&Candidate| {
            let sown = c.steps.sow.as_ref().map(Round::first);
            sown.is_some_and(|sown| sown < day("2027-05-29"))
        };
        let ready = candidates.all.iter().filter(in_spring);
        ready.map(|c| c.ready.len()).max().unwrap_or(0)
    };
    assert_eq!(best(Care::Staff), best(Care::Families), "{crop}");
    (best(Care::Families), best(Care::Nobody))
}

#[test]
fn planted_in_spring_for_october_it_needs_somebody_who_picks() {
    // Planted by the end of May they are ripe in July, and unpicked they stop in September.
    for crop in ["eggplant", "summer squash", "tomato"] {
        let (picked, unpicked) = best(crop);
        assert!(picked >= 25, "{crop}: {picked} of 30");
        assert_eq!(unpicked, 0, "{crop}");
    }
    // A cucumber is worn out by October even so.
    assert_eq!(best("cucumber"), (0, 0));
}
