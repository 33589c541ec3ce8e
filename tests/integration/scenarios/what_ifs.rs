//! The what-ifs of the READMEs: a change of the project file, and what it brings.

use tureen::catalogue::Catalogue;
use tureen::plan::Promise;
use tureen::project;

use super::outcomes::plan;
use super::text;

/// The promise of a scenario whose project file is changed: each text, which must be there,
/// becomes another.
fn promise(name: &str, changes: &[(&str, &str)]) -> Promise {
    let mut file = text(name, "garden.toml");
    for (old, new) in changes {
        assert!(file.contains(old), "{name} holds no {old:?}");
        file = file.replace(old, new);
    }
    let weather = text(name, "weather.csv");
    let catalogue = Catalogue::load().unwrap();
    let garden = project::load_text(name, &file, Some(&weather), &catalogue)
        .unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)));
    plan(&garden).promise
}

fn ready_years(promise: &Promise, ingredient: &str) -> u32 {
    let mut all = promise.ingredients.iter();
    let one = all.find(|i| i.ingredient == ingredient).unwrap();
    one.ready_years
}

#[test]
fn fleece_over_the_trellis_beds_of_soup_day() {
    let fleece = ("trellis_m = 3.6\n", "trellis_m = 3.6\ncover = \"fleece\"\n");
    let promise = promise("soup-day", &[fleece]);
    assert_eq!(promise.whole_dish_years, 20);
    assert_eq!(ready_years(&promise, "dry bean"), 21);
    assert_eq!(ready_years(&promise, "tomato"), 27);
}

#[test]
fn wrap_day_held_on_its_rain_date() {
    let promise = promise(
        "wrap-day",
        &[
            ("feast = 2027-06-11\n", "feast = 2027-06-18\n"),
            ("rain_date = 2027-06-18\n", ""),
            ("deliver_by = 2027-06-10", "deliver_by = 2027-06-17"),
            ("from = 2027-02-02", "from = 2027-02-09"),
            ("from = 2027-02-03", "from = 2027-02-10"),
            ("from = 2027-02-04", "from = 2027-02-11"),
        ],
    );
    assert_eq!(promise.whole_dish_years, 28);
    let years = ["snap pea", "cilantro", "scallion"].map(|name| ready_years(&promise, name));
    assert_eq!(years, [29, 28, 29]);
}

#[test]
fn three_weeks_of_drying_on_soup_day() {
    let promise = promise("soup-day", &[("cure_days = 14", "cure_days = 21")]);
    assert_eq!(ready_years(&promise, "dry bean"), 15);
}

#[test]
fn scallions_as_the_catalogue_knows_them_on_wrap_day() {
    let promise = promise("wrap-day", &[("reference_c = 13 ", "reference_c = 15.5 ")]);
    assert_eq!(promise.whole_dish_years, 9);
    assert_eq!(ready_years(&promise, "scallion"), 11);
}

#[test]
fn four_flats_for_nine_grades() {
    let promise = promise("nine-grades", &[("\nflats = 5\n", "\nflats = 4\n")]);
    assert_eq!(promise.whole_dish_years, 32);
}

#[test]
fn one_sowing_of_radish_on_wrap_day() {
    let promise = promise("wrap-day", &[("max_sowings = 2", "max_sowings = 1")]);
    assert_eq!(ready_years(&promise, "radish"), 28);
}
