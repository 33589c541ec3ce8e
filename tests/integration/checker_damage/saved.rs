//! The saved plan: it comes back as it was, and a broken file says where and what to do.

use tureen::plan::Plan;
use tureen::plan::saved::{self, SavedError, Since};

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

use super::leaves::read_and_check;

fn saved_text() -> String {
    let garden = tiny_garden();
    saved::write(&garden, &tiny_plan(&garden))
}

/// What is said of the text after an edit.
fn said(from: &str, to: &str) -> String {
    let text = saved_text();
    assert!(text.contains(from), "{from} is not in the text");
    let error = saved::read(&text.replacen(from, to, 1)).unwrap_err();
    assert!(error.remedy().ends_with('.'));
    error.to_string()
}

#[test]
fn a_saved_plan_comes_back_as_it_was() {
    let garden = tiny_garden();
    let plan: Plan = tiny_plan(&garden);
    let text = saved::write(&garden, &plan);
    let read = saved::read(&text).unwrap();
    assert_eq!(read.project, "Tiny garden");
    assert_eq!(read.feast, day("2027-06-11"));
    let (read, since) = read.for_garden(&garden).unwrap();
    assert_eq!((&read, since), (&plan, Since::Nothing));
    assert_eq!(saved::write(&garden, &read), text);
}

#[test]
fn the_saved_text_begins_with_its_form_and_project() {
    let text = saved_text();
    let mark = format!("\"garden\": \"{}\",", saved::read(&text).unwrap().garden);
    let head: Vec<&str> = text.lines().take(7).map(str::trim).collect();
    assert_eq!(
        head,
        [
            "{",
            "\"tureen_plan\": 3,",
            concat!("\"program\": \"", env!("CARGO_PKG_VERSION"), "\","),
            "\"project\": \"Tiny garden\",",
            "\"feast\": \"2027-06-11\",",
            mark.as_str(),
            "\"plan\": {",
        ]
    );
    assert!(text.ends_with("}\n"));
}

#[test]
fn numbers_come_back_to_the_last_digit() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    for (k, step) in (1..).zip(&mut plan.plantings[0].steps) {
        step.minutes.0 = 10.0 / f64::from(k * 3) + 1e-13;
    }
    let read = saved::read(&saved::write(&garden, &plan)).unwrap();
    assert_eq!(read.plan, plan);
}

#[test]
fn text_that_is_not_json_says_where() {
    assert_eq!(
        saved::read("").unwrap_err().to_string(),
        "line 1, column 0: not valid JSON: EOF while parsing a value"
    );
    assert_eq!(
        said("\"feast\": \"2027-06-11\",", "\"feast\": \"2027-06-11\""),
        "line 6, column 3: not valid JSON: expected `,` or `}`"
    );
}

#[test]
fn json_that_is_no_plan_says_so() {
    for text in ["{}", "[]", "1", "[1]", "{\"plan\": 1}", "null"] {
        assert_eq!(saved::read(text).unwrap_err(), SavedError::NotAPlan);
    }
}

#[test]
fn another_form_is_named() {
    assert_eq!(
        said("\"tureen_plan\": 3", "\"tureen_plan\": 1"),
        "saved in form 1; this program reads form 3"
    );
    assert_eq!(
        said("\"tureen_plan\": 3", "\"tureen_plan\": \"new\""),
        "saved in form \"new\"; this program reads form 3"
    );
}

#[test]
fn a_wrong_field_says_where_and_what_would_do() {
    assert_eq!(
        said("\"on-mat\": false", "\"on_mat\": false"),
        "line 100, column 16: unknown field `on_mat`, expected one of `ingredient`, `grade`, \
         `method`, `steps`, `places`, `plants`, `seeds`, `flats-sown`, `flats-kept`, `on-mat`"
    );
    assert_eq!(
        said("\"2027-03-16\"", "\"2027-02-30\""),
        "line 20, column 38: input is out of range"
    );
    assert_eq!(
        said("\"direct\"", "\"thrown\""),
        "line 12, column 26: unknown variant `thrown`, expected one of `direct`, `indoor`, \
         `pieces`, `bought`, `seedlings`, `growing`, `patch`"
    );
}

#[test]
fn a_plan_for_another_project_or_day_is_refused() {
    let mut garden = tiny_garden();
    let text = saved_text();
    garden.name = "Other garden".to_owned();
    let error = saved::read(&text).unwrap().for_garden(&garden).unwrap_err();
    assert_eq!(
        error.to_string(),
        "the plan was made for \"Tiny garden\", not for \"Other garden\""
    );
    garden.name = "Tiny garden".to_owned();
    garden.feast.day = day("2027-06-18");
    let error = saved::read(&text).unwrap().for_garden(&garden).unwrap_err();
    assert_eq!(
        error.to_string(),
        "the plan was made for 2027-06-11, but the feast is on 2027-06-18"
    );
}

#[test]
fn no_text_makes_it_panic() {
    let garden = tiny_garden();
    // Every beginning of the file, and the file with each of its bytes replaced.
    let text = saved_text();
    for end in (0..text.trim_end().len()).step_by(7) {
        assert!(saved::read(&text[..end]).is_err());
    }
    for at in (0..text.len()).step_by(11) {
        let mut bytes = text.clone().into_bytes();
        bytes[at] = b'\\';
        if let Ok(damaged) = String::from_utf8(bytes) {
            assert!(read_and_check(&garden, &damaged).is_none(), "{damaged}");
        }
    }
}
