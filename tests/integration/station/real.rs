//! Excerpts of real files, with the figures that they print. All are of GHCN-Daily, of the National Oceanic
//! and Atmospheric Administration, which is in the public domain: `sharjah.dly` from the repository
//! CUAHSI/GHCN-Transducer, `three-stations.csv` from PacktPublishing/Frank-Kanes-Taming-Big-Data-with-Apache-Spark-and-Python,
//! `death-valley.csv` from ehmatthes/pcc_2e. The figures below were read off them by eye.

use tureen::project::station::{Asked, Kind, RainUnit, Station, TemperatureUnit};

use super::{day, files, of_text, on, sound};

const SHARJAH: &str = include_str!("files/sharjah.dly");
const THREE: &str = include_str!("files/three-stations.csv");
const DEATH_VALLEY: &str = include_str!("files/death-valley.csv");

fn gaps(station: &Station) -> Vec<(String, String)> {
    let text = |(from, to): &(tureen::calendar::Date, tureen::calendar::Date)| {
        (from.to_string(), to.to_string())
    };
    station.gaps.iter().map(text).collect()
}

fn spans(list: &[(&str, &str)]) -> Vec<(String, String)> {
    list.iter()
        .map(|(a, b)| ((*a).to_owned(), (*b).to_owned()))
        .collect()
}

/// Sharjah, March to June 1944: days 20 to 31, 30, 31 and 30, of which six lack the lowest temperature.
#[test]
fn months_of_fixed_width() {
    let station = sound("sharjah", SHARJAH, &Asked::default());
    let file = &station.files[0];
    assert_eq!(file.kind, Kind::Fixed);
    assert_eq!(file.station.as_ref().unwrap().0, "AE000041196");
    assert_eq!(file.counts.map(|count| count.values), [97, 103, 103]);
    assert_eq!(file.counts.map(|count| count.flagged), [0; 3]);
    assert_eq!(station.days.len(), 97);
    assert_eq!(on(&station, "1944-03-20"), (19.1, 38.0, 0.0));
    assert_eq!(on(&station, "1944-03-31"), (20.2, 31.3, 0.0));
    assert_eq!(on(&station, "1944-05-18"), (18.0, 41.3, 0.0));
    assert_eq!(on(&station, "1944-06-30"), (26.3, 43.5, 0.0));
    assert_eq!(station.span, (day("1944-03-20"), day("1944-06-30")));
    let filled = [
        ("1944-03-29", "1944-03-29"),
        ("1944-04-06", "1944-04-07"),
        ("1944-04-12", "1944-04-12"),
        ("1944-04-15", "1944-04-15"),
        ("1944-06-14", "1944-06-14"),
    ];
    assert_eq!(gaps(&station), spans(&filled));
    // Between 13.5 on the 5th and 19.6 on the 8th lie two days on a straight line.
    let at = (day("1944-04-06") - day("1944-03-20")).num_days() as usize;
    let filled = station.record.days()[at].tmin.0;
    assert!(
        (filled - (13.5 + (19.6 - 13.5) / 3.0)).abs() < 1e-9,
        "{filled}"
    );
}

/// Editors may cut the blanks at the ends of lines, and with them the last marks.
#[test]
fn blanks_lost_at_the_ends_of_lines_change_nothing() {
    let cut: String = SHARJAH
        .lines()
        .map(|l| l.trim_end().to_owned() + "\r\n")
        .collect();
    assert_ne!(cut.replace("\r\n", "\n"), SHARJAH);
    let (cut, whole) = (
        sound("sharjah-cut", &cut, &Asked::default()),
        sound("sharjah-whole", SHARJAH, &Asked::default()),
    );
    assert_eq!(cut.days, whole.days);
}

/// The beginning of the year 1800 at three stations, none of which has all three values.
#[test]
fn a_line_for_each_value() {
    let told = of_text("three", THREE, &Asked::default()).unwrap_err();
    for part in [
        "no-such-station",
        "this file holds 3 stations",
        "EZE00100082, GM000010962, ITE00100554",
        "--station",
    ] {
        assert!(told.contains(part), "{part}\n{told}");
    }
    let asked = |station: &str| Asked {
        station: Some(station.to_owned()),
        ..Asked::default()
    };
    let told = of_text("three-of", THREE, &asked("ITE00100554")).unwrap_err();
    assert!(
        told.contains("the lowest temperature on 10, the highest temperature on 10, the rain on 0"),
        "{told}"
    );
    assert!(
        told.contains("give the file with the rain as well"),
        "{told}"
    );
    let told = of_text("three-none", THREE, &asked("ITE00100555")).unwrap_err();
    assert!(told.contains("did you mean ITE00100554?"), "{told}");
}

/// The same as files of one station each: temperatures of one, rain of another.
#[test]
fn files_of_parts_are_put_together() {
    let of = |id: &str| -> String {
        let lines = THREE.lines().filter(|line| line.starts_with(id));
        lines.map(|line| line.to_owned() + "\n").collect()
    };
    let (warmth, rain) = (of("ITE00100554"), of("GM000010962"));
    let paths = files(
        "three-parts",
        &[("warmth.csv", &warmth), ("rain.csv", &rain)],
    );
    let station = tureen::project::station::read(&paths, &Asked::default()).unwrap();
    assert!(station.files.iter().all(|file| file.kind == Kind::Long));
    // The highest of the 2nd and the lowest of the 3rd are marked as inconsistent (I).
    assert_eq!(
        station.files[0].counts.map(|c| (c.values, c.flagged)),
        [(10, 1), (10, 1), (0, 0)]
    );
    assert_eq!(
        station.files[1].counts.map(|c| (c.values, c.flagged)),
        [(0, 0), (0, 0), (11, 0)]
    );
    assert_eq!(station.days.len(), 9);
    assert_eq!(on(&station, "1800-01-01"), (-14.8, -7.5, 0.0));
    assert_eq!(on(&station, "1800-01-11"), (4.1, 6.6, 3.1));
    assert_eq!(gaps(&station), spans(&[("1800-01-02", "1800-01-03")]));
}

/// Death Valley, February and March 2018, in degrees Fahrenheit and inches, which no word of the file tells.
#[test]
fn a_table_of_the_archive_in_fahrenheit_and_inches() {
    let station = sound("death-valley", DEATH_VALLEY, &Asked::default());
    let file = &station.files[0];
    assert_eq!(file.units.temperature, Some(TemperatureUnit::Fahrenheit));
    assert_eq!(file.units.rain, Some(RainUnit::Inches));
    assert_eq!(file.guessed_by, Some(85.0));
    let told = file.station.clone().unwrap();
    assert_eq!(
        told,
        (
            "USC00042319".to_owned(),
            Some("DEATH VALLEY, CA US".to_owned())
        )
    );
    assert_eq!(file.counts.map(|count| count.values), [30, 30, 31]);
    assert_eq!(station.days.len(), 30);
    // 82 F is 27.78 C, 48 F 8.89 C; 0.08 inches are 2.03 mm.
    assert_eq!(on(&station, "2018-02-10"), (8.9, 27.8, 0.0));
    assert_eq!(on(&station, "2018-03-11"), (14.4, 27.8, 2.0));
    assert_eq!(gaps(&station), spans(&[("2018-02-18", "2018-02-18")]));
}
