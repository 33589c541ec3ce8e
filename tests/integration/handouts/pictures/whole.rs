//! What holds of every picture, in three scenarios and in a garden as full as can be.

use std::collections::BTreeSet;

use chrono::TimeDelta;
use roxmltree::Node;
use tureen::checker::CheckedPlan;
use tureen::facts::Facts;
use tureen::facts::life::Whose;
use tureen::garden::{Bed, Former, Garden};
use tureen::handouts::pictures::{self, Drawn};
use tureen::model::Options;
use tureen::page::Picture;
use tureen::pipeline;
use tureen::plan::{Place, StepKind};
use tureen::words::view::View;

use super::all;
use super::drawing::{Frame, named, number, of_class, paper, read, rect, texts};
use super::full::{NAMES, full};
use crate::scenarios::load;

/// The gardens with their plans.
fn gardens() -> Vec<(Garden, CheckedPlan)> {
    let scenarios = ["soup-day", "wrap-day", "nine-grades"];
    let planned = scenarios.map(|name| {
        let garden = load(name, "garden.toml");
        let planned = pipeline::plan(&garden, &Options::default());
        let checked = planned.unwrap_or_else(|found| panic!("{name}: {found:?}"));
        (garden, checked)
    });
    planned.into_iter().chain([full()]).collect()
}

#[test]
fn every_picture_holds_what_all_must_hold() {
    for (garden, checked) in gardens() {
        let facts = Facts::new(&garden, &checked);
        let view = View::of(&facts);
        let drawn = all(&view);
        assert!(drawn.len() >= 4, "{}", garden.name);
        let own = |grade| view.ours(grade).own.len();
        let many = garden.grade_positions().any(|grade| own(grade) > 6);
        let mut ids = BTreeSet::new();
        for picture in &drawn {
            let told = format!("{}: {}", garden.name, picture.said.title);
            for svg in [&picture.sheet, &picture.phone] {
                let svg = svg.clone().into_string();
                is_named(&svg, &mut ids, &told);
                fits_its_paper(&svg, &told, many);
                texts_lie_apart(&svg, &told);
            }
            assert!(picture.said.description.len() > 60, "{told}");
            let table = &picture.said.table;
            assert!(!table.rows.is_empty(), "{told}");
            let whole = |row: &Vec<String>| row.len() == table.header.len();
            assert!(table.rows.iter().all(whole), "{told}");
        }
        everything_is_there(&view);
        beds_hold_what_is_used(&view);
        space_holds_what_is_used(&view);
        strips_share_no_ground(&view);
    }
}

/// It is an image with title and description; no id of the page stands twice.
fn is_named(svg: &str, ids: &mut BTreeSet<String>, told: &str) {
    let drawing = read(svg);
    let root = drawing.root_element();
    assert_eq!(root.attribute("role"), Some("img"), "{told}");
    let mut own = BTreeSet::new();
    for id in drawing.descendants().filter_map(|n| n.attribute("id")) {
        assert!(
            ids.insert(id.to_owned()),
            "{told}: the id {id} stands twice"
        );
        own.insert(id);
    }
    for by in ["aria-labelledby", "aria-describedby"] {
        assert!(own.contains(root.attribute(by).unwrap()), "{told}: {by}");
    }
}

/// A picture is 510 units wide on a sheet, 900 on a wall, 320 on a phone; the plants of a bed are drawn no wider than they
/// need. On a sheet it is at most the 24 cm high that A4 or Letter leaves; only the plants of a
/// grade with very many plantings are higher.
fn fits_its_paper(svg: &str, told: &str, many: bool) {
    let drawing = read(svg);
    let root = drawing.root_element();
    let paper = paper(&drawing);
    let name = root.attribute("id").unwrap();
    let on_sheet = of_class(root, "on-sheet").any(|node| node == root);
    let (wide, high) = (paper.right, paper.bottom);
    match (name.split('-').next().unwrap(), on_sheet) {
        ("pattern", true) => assert!(wide <= 510.0, "{told}: {wide}"),
        // The longest names that there are make it wider than a phone, which then shows it smaller.
        ("pattern", false) => assert!(many || wide <= 320.0, "{told}: {wide}"),
        ("poster", true) => assert_eq!(wide, 900.0, "{told}"),
        (_, true) => assert_eq!(wide, 510.0, "{told}"),
        (_, false) => assert_eq!(wide, 320.0, "{told}"),
    }
    let is_limited = on_sheet && !(many && name.starts_with("pattern"));
    assert!(high <= 680.0 || !is_limited, "{told}: {high} points high");
}

/// No text lies on another or beyond the paper.
fn texts_lie_apart(svg: &str, told: &str) {
    let drawing = read(svg);
    let paper = paper(&drawing);
    let texts = texts(&drawing);
    // The plants of a bed may have no more than a name and two distances.
    let name = drawing.root_element().attribute("id").unwrap();
    let least = if name.starts_with("pattern") { 2 } else { 4 };
    assert!(texts.len() > least, "{told}");
    for (n, (text, frame)) in texts.iter().enumerate() {
        assert!(frame.within(&paper), "{told}: {text:?} at {frame:?}");
        for (other, place) in texts.iter().take(n) {
            assert!(
                !frame.meets(place),
                "{told}: {text:?} at {frame:?} lies on {other:?} at {place:?}"
            );
        }
    }
}

/// A row for each planting, and in it a mark for each kind of step at its first day.
fn everything_is_there(view: &View<'_>) {
    let svg = pictures::timeline(view, Whose::All)
        .unwrap()
        .sheet
        .into_string();
    let drawing = read(&svg);
    let rows: Vec<_> = of_class(drawing.root(), "row").collect();
    assert_eq!(rows.len(), view.plan.plantings.len());
    let horizon = view.garden.horizon();
    let grades = view.garden.grades.iter().map(|grade| &grade.id);
    let plantings = grades.flat_map(|id| {
        view.plan
            .plantings
            .iter()
            .filter(move |p| p.grades.contains(id))
    });
    let mut marks = 0;
    for (row, planting) in rows.iter().zip(plantings) {
        let drawn: Vec<_> = of_class(*row, "mark").collect();
        for (key, kind) in [
            ("sow", StepKind::Sow),
            ("pot-up", StepKind::PotUp),
            ("plant-out", StepKind::PlantOut),
            ("thin", StepKind::Thin),
            ("pick", StepKind::Pick),
        ] {
            let of_kind = planting.steps.iter().filter(|s| s.kind == kind);
            let day = of_kind.filter_map(|s| s.when.first()).min();
            let mark = drawn.iter().find(|m| m.attribute("data-step") == Some(key));
            assert_eq!(mark.is_some(), day.is_some(), "{planting:?} {key}");
            let Some((mark, day)) = mark.zip(day) else {
                continue;
            };
            let line = named(*mark, "line").next().unwrap();
            let days = (day - horizon.first()).num_days() as f64 + 0.5;
            let x = 120.0 + 389.0 * days / horizon.days() as f64;
            assert!((number(line, "x1") - x).abs() < 0.02, "{planting:?} {key}");
            marks += 1;
        }
    }
    assert!(marks > view.plan.plantings.len());
}

/// Boxes lie within what there is, on no other, and on every Monday as high together as the
/// replay says or, where the week's fullest day is another, lower.
fn beds_hold_what_is_used(view: &View<'_>) {
    let svg = pictures::beds(view).unwrap().sheet.into_string();
    let drawing = read(&svg);
    let horizon = view.garden.horizon();
    let used = view.garden.beds.iter().zip(&view.replay.strips_by_week);
    let used: Vec<_> = used
        .filter(|(_, weeks)| weeks.iter().any(|n| *n > 0))
        .collect();
    let rows: Vec<_> = of_class(drawing.root(), "bed").collect();
    assert_eq!(rows.len(), used.len());
    for (row, (bed, weeks)) in rows.iter().zip(used) {
        let there = rect(of_class(*row, "there").next().unwrap());
        let strip = (there.bottom - there.top) / f64::from(bed.strips());
        let boxes: Vec<Frame> = of_class(*row, "stand").map(rect).collect();
        for (n, frame) in boxes.iter().enumerate() {
            assert!(frame.within(&there), "{}: {frame:?}", bed.id);
            let met = boxes.iter().take(n).find(|other| other.meets(frame));
            assert!(met.is_none(), "{}: {frame:?} {met:?}", bed.id);
        }
        let day = (there.right - there.left) / horizon.days() as f64;
        for (week, most) in weeks.iter().enumerate() {
            let used = (0..7).map(|k| {
                let x = there.left + day * ((week * 7 + k) as f64 + 0.5);
                let here = boxes.iter().filter(|f| f.left <= x && x < f.right);
                here.map(|f| (f.bottom - f.top) / strip).sum::<f64>()
            });
            let drawn = used.fold(0.0, f64::max);
            assert!((drawn - f64::from(*most)).abs() < 0.05, "{} {week}", bed.id);
        }
    }
}

/// Columns are as high as flats or strips are used, under the line of those that there are: for
/// the shelf, for the mat, for all beds together, each where it is used.
fn space_holds_what_is_used(view: &View<'_>) {
    let (garden, replay) = (view.garden, view.replay);
    let weeks = 0..garden.horizon().weeks();
    let beds = weeks.map(|w| replay.strips_by_week.iter().map(|bed| bed[w]).sum());
    let all_strips: u32 = garden.beds.iter().map(|b| b.strips()).sum();
    let expected: Vec<(u32, Vec<u32>)> = [
        (garden.shelf.flats, replay.flats_by_week.clone()),
        (garden.shelf.warm_flats, replay.warm_flats_by_week.clone()),
        (all_strips, beds.collect()),
    ]
    .into_iter()
    .filter(|(_, weeks)| weeks.iter().any(|used| *used > 0))
    .collect();
    let svg = pictures::space(view).unwrap().sheet.into_string();
    let drawing = read(&svg);
    let rows: Vec<_> = of_class(drawing.root(), "flats").collect();
    assert_eq!(rows.len(), expected.len());
    for (row, (there, weeks)) in rows.into_iter().zip(expected) {
        let Lines {
            left,
            week,
            of_all,
            bottom,
        } = lines(row, weeks.len());
        let columns: Vec<Frame> = of_class(row, "stand").map(rect).collect();
        // The highest column tells the height of one best, for edges are rounded.
        let flats = of_class(row, "stand").map(|column| number(column, "data-flats"));
        let heights = columns.iter().map(|column| column.bottom - column.top);
        let (flats, high) = flats
            .zip(heights)
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .unwrap();
        let one = high / flats;
        for (at, line) in of_all.iter().enumerate() {
            let standing = match there == all_strips {
                true => standing_before(garden, at),
                false => 0,
            };
            let free = (bottom - line) / one;
            assert!(
                (free - f64::from(there - standing)).abs() < 0.02 / one + 0.01,
                "week {at}: {free}"
            );
        }
        for (at, used) in weeks.iter().enumerate() {
            let x = left + week * (at as f64 + 0.5);
            let mut here = columns.iter().filter(|c| c.left <= x && x < c.right);
            let drawn = here.next().map_or(0.0, |c| (c.bottom - c.top) / one);
            assert!(
                (drawn - f64::from(*used)).abs() < 0.02 / one + 0.01,
                "week {at}"
            );
            assert!(here.next().is_none() && drawn <= f64::from(there) + 0.01);
        }
    }
}

/// The lines of a row of the picture of space.
struct Lines {
    left: f64,
    /// The width of a week.
    week: f64,
    /// The ground.
    bottom: f64,
    /// The line of what there is, week by week.
    of_all: Vec<f64>,
}

/// The ground line is the first; above it stand those of what there is.
fn lines(row: Node<'_, '_>, weeks: usize) -> Lines {
    let lines: Vec<[f64; 5]> = named(row, "line")
        .map(|line| ["x1", "x2", "y1", "y2", "stroke-width"].map(|key| number(line, key)))
        .collect();
    let [left, right, bottom, ..] = lines[0];
    let week = (right - left) / weeks as f64;
    let of_week = |at: usize| {
        let x = left + week * (at as f64 + 0.5);
        let over =
            |[x1, x2, y1, y2, thick]: &&[f64; 5]| *thick > 1.0 && y1 == y2 && *x1 <= x && x < *x2;
        lines.iter().find(over).map_or(bottom, |[_, _, y, ..]| *y)
    };
    Lines {
        left,
        week,
        bottom,
        of_all: (0..weeks).map(of_week).collect(),
    }
}

/// Strips that cannot be used yet at the end of a week: of beds that are not free, and of what stands, or rots, for no
/// ingredient.
fn standing_before(garden: &Garden, week: usize) -> u32 {
    let sunday = garden.horizon().monday(week) + TimeDelta::days(6);
    let rests =
        |former: &Former| former.cleared + TimeDelta::days(former.rest_days.into()) > sunday;
    let of_bed = |(at, bed): (usize, &Bed)| {
        let former = garden.former.iter().filter(|f| f.bed.0 == at && rests(f));
        match bed.free_from.is_some_and(|free| free > sunday) {
            true => bed.strips(),
            false => former.map(|former| former.strips.count).sum(),
        }
    };
    garden.beds.iter().enumerate().map(of_bed).sum()
}

/// On the map strips lie within their bed, and no two plantings on one another: where one follows
/// the other, they share the width.
fn strips_share_no_ground(view: &View<'_>) {
    let svg = pictures::map(view, None).unwrap().sheet.into_string();
    let drawing = read(&svg);
    let grounds: Vec<Frame> = of_class(drawing.root(), "ground").map(rect).collect();
    assert_eq!(grounds.len(), view.garden.beds.len());
    let names = of_class(drawing.root(), "bold").count();
    assert_eq!(
        names,
        view.garden.beds.len() + 1,
        "every bed has its name, and north"
    );
    let mut strips = 0;
    for bed in of_class(drawing.root(), "bed") {
        let ground = rect(of_class(bed, "ground").next().unwrap());
        let others = grounds.iter().filter(|other| other.meets(&ground)).count();
        assert_eq!(others, 1, "a bed meets itself only");
        let cells: Vec<Frame> = of_class(bed, "strips").map(rect).collect();
        for (n, cell) in cells.iter().enumerate() {
            assert!(cell.within(&ground), "{cell:?} {ground:?}");
            assert!(!cells.iter().take(n).any(|other| other.meets(cell)));
        }
        strips += cells.len();
    }
    let stands = view.plan.plantings.iter().map(|p| apart(&p.places));
    assert_eq!(strips, stands.sum::<usize>());
}

/// Of the places of a planting those that do not lie side by side in one bed.
fn apart(places: &[Place]) -> usize {
    let mut along: Vec<&Place> = places.iter().collect();
    along.sort_by_key(|place| (&place.bed, place.first_strip));
    let beside = along.windows(2).filter(|pair| {
        pair[0].bed == pair[1].bed && pair[0].first_strip + pair[0].strips == pair[1].first_strip
    });
    along.len() - beside.count()
}

#[test]
fn names_are_texts_and_nothing_else() {
    let (garden, checked) = full();
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let labels = pictures::on_page(&view, Picture::Labels).unwrap();
    let both = |d: Drawn| [d.sheet.into_string(), d.phone.into_string()];
    let drawn: Vec<String> = all(&view).into_iter().flat_map(both).collect();
    for picture in &drawn {
        assert_eq!(picture.matches("</svg>").count(), 1, "{picture}");
    }
    for page in drawn.iter().chain([&labels.clone().into_string()]) {
        assert!(!page.contains("<script") && !page.contains("]]>"), "{page}");
        assert!(!page.contains('\u{202e}'), "it turns what stands after it");
    }
    let labels = labels.into_string();
    for name in NAMES {
        let escaped = name
            .replace('&', "&amp;")
            .replace('<', "&lt;")
            .replace('>', "&gt;");
        let escaped = escaped.replace('"', "&quot;").replace('\u{202e}', "");
        assert!(labels.contains(&escaped), "{name}");
    }
}

#[test]
fn every_bed_in_use_and_every_class_of_every_planting_has_a_label() {
    let (garden, checked) = full();
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let labels = pictures::labels(&view).unwrap().into_string();
    // A label for each bed in use, and for each planting one of each of both classes.
    assert_eq!(labels.matches("<li>").count(), 18 + 2 * 36);
}
