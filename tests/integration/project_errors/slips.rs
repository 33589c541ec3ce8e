//! A beginner's mistakes, one each: one message, at the place, with what was written and how it is
//! written right. The messages themselves stand in the snapshots, to be read as a beginner reads them.

use tureen::diagnostic::Problems;

use super::{MINIMAL, load};

/// What the mistake is called, what stands in the sound file, what a beginner writes in its place, and
/// what the remedy must show.
type Slip = (&'static str, &'static str, &'static str, &'static str);

const NAME: &str = "name = \"Carrot day\"";
const FEAST: &str = "feast = 2027-10-08";
const LATITUDE: &str = "latitude = 44.3";
const TERMS: &str = "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 }]";
const CLASSES: &str = "classes = [{ name = \"2a\", children = 20, day = \"Tue\" }]";
const GRAMS: &str = "grams_per_portion = 25";
const LENGTH: &str = "length_m = 3.6";

// One line a slip, to be read as a table.
#[rustfmt::skip]
const SLIPS: [Slip; 80] = [
    ("curly quotes", "\"Carrot day\"", "\u{201c}Carrot day\u{201d}", "\"Carrot day\""),
    ("low and high quotes", "\"Carrot day\"", "\u{201e}Carrot day\u{201c}", "\"Carrot day\""),
    ("an apostrophe in curly quotes", "\"Carrot day\"", "\u{201c}Carrots\u{2019} day\u{201d}", "\"Carrots\u{2019} day\""),
    ("curly quotes in a class", "\"2a\"", "\u{201c}2a\u{201d}", "\"2a\""),
    ("a date with slashes", FEAST, "feast = 6/11/2027", "feast = 2027-06-11 or 2027-11-06"),
    ("a date with slashes of one reading", FEAST, "feast = 10/15/2027", "feast = 2027-10-15"),
    ("a date with points", FEAST, "feast = 8.10.2027", "feast = 2027-10-08"),
    ("a date with the month's name", FEAST, "feast = 8 October 2027", "feast = 2027-10-08"),
    ("a date as in a letter", FEAST, "feast = October 8, 2027", "feast = 2027-10-08"),
    ("a date as in a short letter", FEAST, "feast = Oct 8, 2027", "feast = 2027-10-08"),
    ("a date without zeros", FEAST, "feast = 2027-10-8", "feast = 2027-10-08"),
    ("a date with long dashes", FEAST, "feast = 2027\u{2013}10\u{2013}08", "feast = 2027-10-08"),
    ("a date in quotes", FEAST, "feast = \"2027-10-08\"", "feast = 2027-10-08"),
    ("a foreign date in quotes", FEAST, "feast = \"10/08/2027\"", "feast = 2027-10-08 or 2027-08-10"),
    ("a date with a time", FEAST, "feast = 2027-10-08 12:00:00", "feast = 2027-10-08"),
    ("a day that does not exist", FEAST, "feast = 2027-09-31", "such as 2027-10-08"),
    ("a date of the wrong century", FEAST, "feast = 20270-10-08", "2027-10-08"),
    ("a term from a foreign date", "from = 2027-08-30", "from = 30/8/2027", "from = 2027-08-30"),
    ("a list without its end", CLASSES, "classes = [{ name = \"2a\", children = 20, day = \"Tue\" }", "]"),
    ("a list of terms without its end", TERMS, "terms = [\n  { name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 },\n", "]"),
    ("a list without its beginning", CLASSES, "classes = { name = \"2a\", children = 20, day = \"Tue\" }]", "["),
    ("a table without its end", TERMS, "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 ]", "}"),
    ("a list that ends as a table", TERMS, "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 }}", "]"),
    ("a class without list brackets", CLASSES, "classes = { name = \"2a\", children = 20, day = \"Tue\" }", "[{ ... }]"),
    ("no comma between keys", "children = 20, day", "children = 20 day", "comma"),
    ("no comma between classes", CLASSES, "classes = [{ name = \"2a\", children = 20, day = \"Tue\" } { name = \"2b\", children = 20, day = \"Tue\" }]", "comma"),
    ("two commas", "children = 20,", "children = 20,,", "one comma"),
    ("semicolons between keys", "children = 20, day", "children = 20; day", ","),
    ("a comma at the end of a line", FEAST, "feast = 2027-10-08,", "remove it"),
    ("a semicolon at the end of a line", NAME, "name = \"Carrot day\";", "remove it"),
    ("a decimal comma", LATITUDE, "latitude = 44,3", "latitude = 44.3"),
    ("a decimal comma in a class", "children = 20", "children = 20, minutes = 37,5", "37.5"),
    ("a decimal comma in quotes", LATITUDE, "latitude = \"44,3\"", "latitude = 44.3"),
    ("a long dash for a minus", LATITUDE, "latitude = \u{2212}44.3", "latitude = -44.3"),
    ("a number in quotes", GRAMS, "grams_per_portion = \"25\"", "grams_per_portion = 25"),
    ("a degree sign", LATITUDE, "latitude = 44.3\u{b0}", "latitude = 44.3"),
    ("a colon", NAME, "name: \"Carrot day\"", "name = \"Carrot day\""),
    ("a colon before a number", LATITUDE, "latitude: 44.3", "latitude = 44.3"),
    ("a colon in a class", "children = 20", "children: 20", "children = 20"),
    ("no equals sign", NAME, "name \"Carrot day\"", "name = \"Carrot day\""),
    ("two equals signs", NAME, "name == \"Carrot day\"", "key = value"),
    ("no value", NAME, "name =", "name ="),
    ("no quotes", NAME, "name = Carrot day", "name = \"Carrot day\""),
    ("no quotes around a crop", "crop = \"carrot\"", "crop = carrot", "crop = \"carrot\""),
    ("no quotes around a weekday", "day = \"Tue\"", "day = Tue", "day = \"Tue\""),
    ("no closing quote", NAME, "name = \"Carrot day", "name = \"Carrot day\""),
    ("a number with an opening quote", LATITUDE, "latitude = \"44.3", "without quotes: latitude = 44.3"),
    ("a word for a number", LATITUDE, "latitude = north", "write digits: latitude = ..."),
    ("no closing quote in a class", "\"Tue\" }]", "\"Tue }]", "day = \"Tue\""),
    ("a no-break space", LATITUDE, "latitude\u{a0}= 44.3", "type a blank"),
    ("a space of no width", LATITUDE, "\u{200b}latitude = 44.3", "type a blank"),
    ("many no-break spaces", LATITUDE, "\u{a0}\u{a0}latitude\u{a0}=\u{a0}44.3", "type a blank"),
    ("a remark with slashes", "[place]", "// where we are\n[place]", "# where we are"),
    ("a remark without a sign", "[place]", "where we are\n[place]", "#"),
    ("an hour of one digit", "day = \"Tue\"", "day = \"Tue\", at = 9:00", "at = 09:00"),
    ("an hour in the morning", "day = \"Tue\"", "day = \"Tue\", at = 9am", "at = 09:00"),
    ("an hour in quotes", "day = \"Tue\"", "day = \"Tue\", at = \"9:15\"", "at = 09:15"),
    ("midnight as 24:00", "day = \"Tue\"", "day = \"Tue\", at = 24:00", "00:00 to 23:59"),
    ("a bed in centimetres", LENGTH, "length_m = 240", "length_m = 2.4"),
    ("a length with its unit", LENGTH, "length_m = 2.4 m", "length_m = 2.4"),
    ("a length in feet", LENGTH, "length_m = 8 ft", "length_m = 2.438"),
    ("a length with its unit in quotes", LENGTH, "length_m = \"360 cm\"", "length_m = 3.6"),
    ("a key in yards", LENGTH, "length_yd = 4", "length_m = 3.658"),
    ("a key without its unit", LENGTH, "length = 3.6", "length_m"),
    ("a key in another unit", GRAMS, "oz_per_portion = 1", "grams_per_portion = 28.35"),
    ("a share in per cent", GRAMS, "grams_per_portion = 25\nleast_share = 30%", "least_share = 0.3"),
    ("a share as a whole number", GRAMS, "grams_per_portion = 25\nleast_share = 30", "least_share = 0.3"),
    ("an id without quotes", "id = \"2\"", "id = 2", "id = \"2\""),
    ("a section in the plural", "[[grade]]", "[[grades]]", "grade"),
    ("a part of the dish without the dish", "[[dish.ingredient]]", "[[ingredient]]", "[[dish.ingredient]]"),
    ("a section in single brackets", "[[bed]]", "[bed]", "[[bed]]"),
    ("a section in double brackets", "[project]", "[[project]]", "[project]"),
    ("a section without its bracket", "[project]", "[project", "[project]"),
    ("a section in capitals", "[project]", "[Project]", "project"),
    ("a key in capitals", LENGTH, "LENGTH_M = 3.6", "length_m"),
    ("a misspelt key", LATITUDE, "lattitude = 44.3", "latitude"),
    ("a remark sign before a key", FEAST, "# feast = 2027-10-08", "feast = 2027-10-08"),
    ("a key twice", LENGTH, "length_m = 3.6\nlength_m = 2.4", "remove one"),
    ("a Saturday", "day = \"Tue\"", "day = \"Sat\"", "\"Mon\""),
    ("yes for true", "grams_per_portion = 25", "grams_per_portion = 25\n\n[crop.carrot]\ntrellis = yes", "trellis = true"),
];

/// The sound file with one mistake.
fn with((_, right, wrong, _): &Slip) -> String {
    assert!(MINIMAL.contains(right), "{right}");
    MINIMAL.replacen(right, wrong, 1)
}

fn problems(slip: &Slip) -> Problems {
    match load(&with(slip)) {
        Ok(_) => panic!("{}: loads", slip.0),
        Err(problems) => problems,
    }
}

/// Compares with a snapshot; the folders beside this file are broken projects.
pub fn compare(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("../snapshots");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

#[test]
fn every_slip_is_told_in_one_message_with_its_place_and_the_right_form() {
    let mut all = String::new();
    let mut faults = Vec::new();
    for slip in &SLIPS {
        let found = problems(slip);
        let told = found.render(false, 100);
        let help = told.split("= help:").nth(1).unwrap_or_default();
        if found.len() != 1 {
            faults.push(format!("{}: {} errors\n{told}", slip.0, found.len()));
        } else if !told.contains("--> garden.toml:") || !help.contains(slip.3) {
            faults.push(format!("{}: no place, or not {:?}\n{told}", slip.0, slip.3));
        }
        all += &format!("## {}\n\n{told}\n", slip.0);
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
    compare("slips", &all);
}

#[test]
fn a_slip_hides_no_other_mistake() {
    // One of another kind, below: it is told beside every slip that leaves the rest readable.
    let unreadable = ["a section without its bracket", "no value"];
    for slip in SLIPS.iter().filter(|slip| !unreadable.contains(&slip.0)) {
        let text = with(slip);
        if !text.contains("width_m = 1.2") || !text.contains("[[bed]]") {
            continue;
        }
        let text = text.replacen("width_m = 1.2", "width_m = 1.2\nsun = \"moon\"", 1);
        let told = load(&text).expect_err(slip.0).render(false, 100);
        assert!(
            told.contains("`sun` cannot be \"moon\""),
            "{}\n{told}",
            slip.0
        );
        assert!(
            told.ends_with("2 errors in garden.toml\n"),
            "{}\n{told}",
            slip.0
        );
    }
}

#[test]
fn what_repeats_is_told_once_with_its_lines() {
    let text = MINIMAL.replace('"', "\u{201d}");
    let found = load(&text).expect_err("curly quotes");
    // Each text has its own right form; each is told at its place.
    let told = found.render(false, 100);
    assert!(
        told.contains("\"Carrot day\"") && told.contains("\"carrot\""),
        "{told}"
    );
    let blanks = MINIMAL.replace(" = ", "\u{a0}=\u{a0}");
    let found = load(&blanks).expect_err("no-break spaces");
    assert_eq!(found.len(), 1);
    let told = found.render(false, 100);
    assert!(told.contains("= note: likewise in "), "{told}");
    let beds = format!(
        "{MINIMAL}\n[[bed]]\nid = \"2\"\nlength_m = 1\n\n[[bed]]\nid = \"3\"\nlength_m = 1\n"
    );
    let found = load(&beds).expect_err("no width");
    assert_eq!(found.len(), 1);
    let told = found.render(false, 100);
    assert!(told.contains("= note: likewise in line 30"), "{told}");
    // Of many different mistakes the first twenty are shown.
    let keys = (0..25).map(|n| format!("{}{n} = {n}\n", "q".repeat(30)));
    let text = format!("{MINIMAL}{}", keys.collect::<String>());
    let told = load(&text).expect_err("25 keys").render(false, 100);
    assert!(told.contains("... and 5 more in garden.toml.\n"), "{told}");
    assert!(told.ends_with("25 errors in garden.toml\n"), "{told}");
}

/// A file that ends within a list: the bracket is named, and no comma is missed.
#[test]
fn a_list_that_the_end_of_the_file_cuts_off_is_told_at_its_bracket() {
    for cut_off in ["at = [5, 6", "at = [5,", "at = [", "at = [5, 6\n\n"] {
        let found = load(&format!("{MINIMAL}{cut_off}")).expect_err("it is cut off");
        let told = found.render(false, 100);
        assert!(told.contains("the list of `at` has no closing ]"), "{told}");
        assert!(told.contains("garden.toml:25:6"), "{told}");
        assert!(!told.contains("comma"), "{told}");
    }
}

/// A text of no letters in curly quotes is one, and is told to be empty too; what follows stands as it is.
#[test]
fn an_empty_text_in_curly_quotes_ends_where_it_ends() {
    for quotes in ["\u{201c}\u{201d}", "\u{201e}\u{201c}", "\u{2018}\u{2019}"] {
        for (right, place) in [("\"Carrot day\"", "2:8"), ("\"2a\"", "15:21")] {
            let text = MINIMAL.replacen(right, quotes, 1);
            let told = load(&text).expect_err("curly quotes").render(false, 100);
            assert!(told.contains("write straight quotes: \"\""), "{told}");
            assert!(told.contains("`name` is empty"), "{told}");
            assert_eq!(
                told.matches(&format!("--> garden.toml:{place}\n")).count(),
                2,
                "{told}"
            );
            assert!(told.ends_with("2 errors in garden.toml\n"), "{told}");
        }
    }
}

/// So many lists and tables one after the other lie no deeper than one.
#[test]
fn many_lists_in_a_row_are_not_too_deep() {
    let class = |n: u32| format!("{{ name = \"2{n}\", children = 20, day = \"Tue\" }}");
    let classes = (0..40).map(class).collect::<Vec<_>>().join(", ");
    let text = MINIMAL.replacen(CLASSES, &format!("classes = [{classes}]"), 1);
    load(&text).unwrap_or_else(|found| panic!("{found}"));
    let text = text.replacen(LENGTH, "length_m = 3,6", 1);
    let told = load(&text).expect_err("a decimal comma").render(false, 100);
    assert!(told.contains("length_m = 3.6"), "{told}");
    assert!(told.ends_with("1 error in garden.toml\n"), "{told}");
}

/// What fits nowhere in a list or a table is told at its place, with the form of what it stands in.
#[test]
fn what_cannot_stand_in_a_list_or_a_table_is_told() {
    let list = ("list", "[1, 2, 3]");
    let table = ("table", "{ name = \"2a\", children = 20 }");
    for (right, wrong, at, (what, form)) in [
        (CLASSES, "classes = [=]", "15:12", list),
        (CLASSES, "classes = [1, = 2]", "15:15", list),
        (CLASSES, "classes = [: 2]", "15:12", list),
        (CLASSES, "classes = [{ = 2 }]", "15:14", table),
        (
            CLASSES,
            "classes = [{ name = , children = 20 }]",
            "15:21",
            table,
        ),
        (CLASSES, "classes = [{ 20 }]", "15:14", table),
    ] {
        let text = MINIMAL.replacen(right, wrong, 1);
        let told = load(&text).expect_err(wrong).render(false, 100);
        let cause = format!("this cannot stand in a {what}");
        assert!(told.contains(&cause), "{wrong}\n{told}");
        assert!(
            told.contains(&format!("garden.toml:{at}")),
            "{wrong}\n{told}"
        );
        assert!(
            told.contains(&format!("the {what} opens here")),
            "{wrong}\n{told}"
        );
        assert!(
            told.contains(&format!("like this: {form}")),
            "{wrong}\n{told}"
        );
    }
}

/// Long dashes are told as such only where short ones make a number or a date.
#[test]
fn long_dashes_make_no_date_of_what_is_none() {
    let told = |date: &str| {
        let text = MINIMAL.replacen(FEAST, &format!("feast = {date}"), 1);
        load(&text).expect_err(date).render(false, 100)
    };
    let cause = "a long dash stands where a hyphen should be";
    for date in [
        "2027\u{2013}10\u{2013}08",
        "2027\u{2013}10-08",
        "2027\u{2014}99\u{2014}99",
    ] {
        assert!(told(date).contains(cause), "{}", told(date));
    }
    for date in [
        "2027\u{2013}1x\u{2013}08",
        "20a7\u{2013}10\u{2013}08",
        "2027\u{2013}10",
    ] {
        assert!(!told(date).contains(cause), "{}", told(date));
    }
}

#[test]
fn tabs_blank_lines_marks_and_line_ends_are_no_mistakes() {
    let plain = load(MINIMAL).expect("it loads");
    for text in [
        MINIMAL.replace(" = ", "\t=\t"),
        MINIMAL.replace('\n', "\n\n"),
        format!("\u{feff}{}", MINIMAL.replace('\n', "\r\n")),
        MINIMAL.replace("\" }]", "\", },\n]"),
        MINIMAL.replace("\"Tue\"", "\"tuesday\""),
        MINIMAL.replace("44.3", "+44.3"),
    ] {
        let garden = load(&text).unwrap_or_else(|found| panic!("{text}\n{found}"));
        assert_eq!(garden, plain);
    }
}
