//! What files do not tell of themselves, or tell in their own way: days, columns, units, marks.

use tureen::calendar::Date;
use tureen::project::station::{
    Asked, Column, Element, Order, RainUnit, TemperatureUnit, Units, read,
};

use super::formats::{Days, same, table};
use super::{day, files, of_text, on, sound};

fn summer() -> (Date, Days) {
    let days = (0..40)
        .map(|n| (100 + n, 200 + n, if n % 3 == 0 { 25 } else { 0 }))
        .collect();
    (day("2001-07-01"), days)
}

#[test]
fn days_of_the_united_states_are_told_from_those_of_britain() {
    let (first, days) = summer();
    for format in [
        "%m/%d/%Y",
        "%d/%m/%Y",
        "%d-%b-%Y",
        "%B %e, %Y",
        "%Y%m%d0000",
    ] {
        let text = table(
            "date;low;high;rain",
            "{date};{low};{high};{rain}",
            format,
            first,
            &days,
        );
        same(
            &sound("us", &text, &Asked::default()),
            first,
            &days,
            1e-9,
            1e-9,
        );
    }
}

#[test]
fn where_nothing_tells_the_month_from_the_day_it_is_asked_for() {
    let text = "date,low,high,rain\n4/7/1998,1,9,0\n5/7/1998,2,10,0\n";
    let told = of_text("ambiguous", text, &Asked::default()).unwrap_err();
    assert!(told.contains("--dates day-first"), "{told}");
    let asked = |dates| Asked {
        dates: Some(dates),
        ..Asked::default()
    };
    let days_first = sound("day-first", text, &asked(Order::DayFirst));
    assert_eq!(days_first.days[0].0, day("1998-07-04"));
    let told = of_text("month-first", text, &asked(Order::MonthFirst));
    // 7 April and 7 May: more than five days between them are missing, and no other.
    assert!(told.unwrap_err().contains("weather-too-short"));
}

#[test]
fn columns_can_be_named_by_name_and_by_number() {
    let (first, days) = summer();
    let named = |columns: &[(Column, &str)]| Asked {
        columns: columns
            .iter()
            .map(|(column, text)| (*column, (*text).to_owned()))
            .collect(),
        ..Asked::default()
    };
    let names = named(&[
        (Column::Date, "when"),
        (Column::Of(Element::Low), "coldest"),
        (Column::Of(Element::High), "Warmest"),
        (Column::Of(Element::Rain), "wet"),
    ]);
    let line = "{n},{high},{low},{date},{rain}";
    let text = table(
        "no,warmest,coldest,when,wet",
        line,
        "%Y-%m-%d",
        first,
        &days,
    );
    same(&sound("by-name", &text, &names), first, &days, 1e-9, 1e-9);
    let numbers = named(&[
        (Column::Date, "4"),
        (Column::Of(Element::Low), "3"),
        (Column::Of(Element::High), "2"),
        (Column::Of(Element::Rain), "5"),
    ]);
    for header in ["no,warmest,coldest,when,wet", "made by hand"] {
        let text = table(header, line, "%Y-%m-%d", first, &days);
        same(
            &sound("by-number", &text, &numbers),
            first,
            &days,
            1e-9,
            1e-9,
        );
    }
    // A name that is told comes before one that is known.
    let other = named(&[(Column::Of(Element::Low), "soil low")]);
    let text = table(
        "date,low,soil low,high,rain",
        "{date},99,{low},{high},{rain}",
        "%Y-%m-%d",
        first,
        &days,
    );
    same(&sound("other-low", &text, &other), first, &days, 1e-9, 1e-9);
}

#[test]
fn a_unit_that_is_named_comes_before_what_the_file_tells() {
    // A cold month in Fahrenheit, which could be Celsius.
    let text = "date,low,high,rain\n1998-01-01,14,32,0.1\n1998-01-02,23,50,T\n";
    let as_told = sound("cold", text, &Asked::default());
    assert_eq!(on(&as_told, "1998-01-02"), (23.0, 50.0, 0.0));
    let asked = Asked {
        units: Units {
            temperature: Some(TemperatureUnit::Fahrenheit),
            rain: None,
        },
        ..Asked::default()
    };
    let station = sound("cold-f", text, &asked);
    assert_eq!(on(&station, "1998-01-01"), (-10.0, 0.0, 2.5));
    assert_eq!(on(&station, "1998-01-02"), (-5.0, 10.0, 0.0));
    let asked = Asked {
        units: Units {
            rain: Some(RainUnit::Millimetres),
            ..asked.units
        },
        ..asked
    };
    assert_eq!(
        on(&sound("cold-mm", text, &asked), "1998-01-01"),
        (-10.0, 0.0, 0.1)
    );
}

#[test]
fn marks_and_words_for_missing_values_are_known() {
    let text = "date;low;high;rain\n1998-04-01;1;9;0\n1998-04-02;-99.9;9;0\n1998-04-03;M;9;0\n\
                1998-04-04;1;9999;0\n1998-04-05;2;8;\n1998-04-06;3;7;trace\n";
    let station = sound("missing", text, &Asked::default());
    let dates: Vec<String> = station
        .days
        .iter()
        .map(|(date, _)| date.to_string())
        .collect();
    assert_eq!(dates, ["1998-04-01", "1998-04-06"]);
    // In tenths of a degree -99.9 C is out of reach, but -9.9 C is a cold night.
    let text = "STAID, SOUID, DATE, TN, Q_TN, TX, Q_TX, RR, Q_RR\n\
                1,1,19980401, -99,0, -9,0,999,0\n1,1,19980402,-9999,9,5,0,0,0\n1,1,19980403,1,1,5,0,0,0\n";
    let station = sound("tenths", text, &Asked::default());
    assert_eq!(station.days.len(), 1);
    assert_eq!(on(&station, "1998-04-01"), (-9.9, -0.9, 99.9));
    assert_eq!(
        station.files[0].counts.map(|count| count.flagged),
        [1, 0, 0]
    );
}

/// Files of several years that were joined, each with its line of names.
#[test]
fn a_line_of_names_may_stand_again() {
    let (first, days) = summer();
    let text = table(
        "date;low;high;rain",
        "{date};{low};{high};{rain}",
        "%Y-%m-%d",
        first,
        &days,
    );
    let lines: Vec<&str> = text.lines().collect();
    let joined = [&lines[..20], &lines[..1], &lines[20..]]
        .concat()
        .join("\n");
    same(
        &sound("joined", &joined, &Asked::default()),
        first,
        &days,
        1e-9,
        1e-9,
    );
}

/// A table may be split over files whose own columns are named.
#[test]
fn named_columns_may_stand_in_different_files() {
    let (first, days) = summer();
    let one = table("when;cold", "{date};{low}", "%Y-%m-%d", first, &days);
    let other = table(
        "when;hot;wet",
        "{date};{high};{rain}",
        "%Y-%m-%d",
        first,
        &days,
    );
    let columns = [
        (Column::Date, "when"),
        (Column::Of(Element::Low), "cold"),
        (Column::Of(Element::High), "hot"),
        (Column::Of(Element::Rain), "wet"),
    ];
    let asked = Asked {
        columns: columns
            .iter()
            .map(|(column, text)| (*column, (*text).to_owned()))
            .collect(),
        ..Asked::default()
    };
    let paths = files("split", &[("one.csv", &one), ("other.csv", &other)]);
    same(&read(&paths, &asked).unwrap(), first, &days, 1e-9, 1e-9);
}
