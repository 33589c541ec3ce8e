//! The tiny garden's pictures against places worked out by hand.

use tureen::checker::check;
use tureen::facts::Facts;
use tureen::facts::life::Whose;
use tureen::garden::{Garden, GradeAt, Method, Patch, Position, Runs, Source};
use tureen::handouts::pictures;
use tureen::plan::StepKind;
use tureen::units::{Centimetres, Kilograms, Latitude, Metres};
use tureen::words::view::View;

use super::drawing::{Frame, named, number, of_class, read, rect};
use super::planned;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{
    from_to, place, planting, sessions, tiny_bean, tiny_plan, tiny_tomato,
};

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.02
}

fn at(x: f64, y: f64) -> Option<Position> {
    let (x, y) = (Metres(x), Metres(y));
    Some(Position { x, y })
}

/// The 15 weeks from 1 March are 105 days between 120 and 509 points: 3.7048 points a day.
#[test]
fn marks_stand_at_their_days() {
    let garden = tiny_garden();
    let checked = check(&garden, tiny_plan(&garden)).unwrap();
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let svg = pictures::timeline(&view, Whose::All).unwrap().sheet;
    let svg = svg.into_string();
    let drawing = read(&svg);
    let found: Vec<(&str, &str, f64)> = of_class(drawing.root(), "mark")
        .map(|mark| {
            let line = named(mark, "line").next().unwrap();
            let name = |name| mark.attribute(name).unwrap();
            (name("data-step"), name("data-day"), number(line, "x1"))
        })
        .collect();
    // The middle of day 15 is at 120 + 15.5 * 389 / 105, and so on.
    let expected = [
        ("sow", "2027-03-16", 177.42),
        ("thin", "2027-04-13", 281.16),
        ("pick", "2027-05-11", 384.89),
        ("sow", "2027-03-08", 147.79),
        ("pot-up", "2027-03-29", 225.59),
        ("plant-out", "2027-04-19", 303.39),
        ("pick", "2027-05-31", 458.99),
    ];
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for ((step, day, x), (s, d, expected)) in found.iter().zip(expected) {
        assert_eq!((*step, *day), (s, d));
        assert!(near(*x, expected), "{step} {day}: {x}, by hand {expected}");
    }
    // The tomato stands on the shelf from day 7 to day 49, then in the bed until a week after
    // 7 June, which the end of the plan on 13 June cuts.
    let spans: Vec<Frame> = of_class(drawing.root(), "span")
        .map(|span| rect(named(span, "rect").next().unwrap()))
        .collect();
    assert_eq!(spans.len(), 6);
    let [shelf, bed] = [spans[3], spans[4]];
    assert!(
        near(shelf.left, 145.93) && near(shelf.right, 305.24),
        "{shelf:?}"
    );
    assert!(near(bed.left, 301.53) && near(bed.right, 509.0), "{bed:?}");
}

/// Bed A is 2.4 m by 1.2 m with a trellis along its first half, bed B 1.2 m square.
fn placed(runs: Runs, latitude: f64) -> Garden {
    let mut garden = tiny_garden();
    garden.latitude = Latitude(latitude);
    garden.beds[0].at = at(0.0, 0.0);
    garden.beds[0].runs = runs;
    garden.beds[1].at = at(3.0, 0.0);
    garden
}

/// The boxes of the strips of bean and tomato, and the rail of the trellis.
fn on_the_map(garden: &Garden) -> ([Frame; 2], Frame) {
    let checked = check(garden, tiny_plan(garden)).unwrap();
    let facts = Facts::new(garden, &checked);
    let view = View::of(&facts);
    let svg = pictures::map(&view, None).unwrap().sheet.into_string();
    let drawing = read(&svg);
    let strips = |planting: &str| {
        let mut all = of_class(drawing.root(), "strips");
        rect(
            all.find(|n| n.attribute("data-planting") == Some(planting))
                .unwrap(),
        )
    };
    let trellis = of_class(drawing.root(), "trellis").next().unwrap();
    let rail = named(trellis, "line").next().unwrap();
    let rail = Frame {
        left: number(rail, "x1"),
        top: number(rail, "y1"),
        right: number(rail, "x2"),
        bottom: number(rail, "y2"),
    };
    ([strips("0"), strips("1")], rail)
}

fn frame(left: f64, top: f64, right: f64, bottom: f64) -> Frame {
    Frame {
        left,
        top,
        right,
        bottom,
    }
}

/// 4.2 m would fit the paper at 118 points a metre; 90 is the most. The map begins 6 points from
/// the left and 20 from the top.
#[test]
fn strips_lie_at_their_places_on_the_map() {
    let ([bean, tomato], rail) = on_the_map(&placed(Runs::EastWest, 40.0));
    assert_eq!(tomato, frame(6.0, 20.0, 114.0, 128.0));
    assert_eq!(bean, frame(276.0, 20.0, 384.0, 128.0));
    assert_eq!(rail, frame(6.0, 20.0, 114.0, 20.0), "along the north side");
}

#[test]
fn south_of_the_equator_the_trellis_is_on_the_south_side() {
    let ([_, tomato], rail) = on_the_map(&placed(Runs::EastWest, -1.0));
    assert_eq!(tomato, frame(6.0, 20.0, 114.0, 128.0));
    assert_eq!(rail, frame(6.0, 128.0, 114.0, 128.0));
}

/// Turned, bed A reaches 2.4 m north; bed B lies at the foot of it.
#[test]
fn a_turned_bed_begins_at_the_end_away_from_the_sun() {
    let ([bean, tomato], rail) = on_the_map(&placed(Runs::NorthSouth, 40.0));
    assert_eq!(tomato, frame(6.0, 20.0, 114.0, 128.0), "the northern half");
    assert_eq!(bean, frame(276.0, 128.0, 384.0, 236.0));
    assert_eq!(rail, frame(114.0, 20.0, 114.0, 128.0));
    let ([_, tomato], rail) = on_the_map(&placed(Runs::NorthSouth, -1.0));
    assert_eq!(tomato, frame(6.0, 128.0, 114.0, 236.0), "the southern half");
    assert_eq!(rail, frame(114.0, 128.0, 114.0, 236.0));
}

#[test]
fn beds_without_a_place_stand_in_rows_and_the_map_says_so() {
    let garden = tiny_garden();
    let checked = check(&garden, tiny_plan(&garden)).unwrap();
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let drawn = pictures::map(&view, Some(GradeAt(0))).unwrap();
    assert!(drawn.said.description.contains("The file gives no places"));
    let svg = drawn.sheet.into_string();
    assert!(
        svg.contains("their order here is not the real one"),
        "{svg}"
    );
    let drawing = read(&svg);
    let beds: Vec<Frame> = of_class(drawing.root(), "ground").map(rect).collect();
    // 0.9 m apart at 90 points a metre, on one line.
    assert!(near(beds[1].left - beds[0].right, 81.0), "{beds:?}");
    assert_eq!(beds[0].top, beds[1].top);
}

/// A day is 417 / 105 points from 92 on. Bed B is free from 10 March, day 9.
#[test]
fn boxes_of_beds_have_their_days_and_strips() {
    let garden = tiny_garden();
    let checked = check(&garden, tiny_plan(&garden)).unwrap();
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let svg = pictures::beds(&view).unwrap().sheet.into_string();
    let drawing = read(&svg);
    let beds: Vec<_> = of_class(drawing.root(), "bed").collect();
    let part = |bed: usize, class| rect(of_class(beds[bed], class).next().unwrap());
    let (there, tomato) = (part(0, "there"), part(0, "stand"));
    assert!(near(tomato.left, 92.0 + 49.0 * 417.0 / 105.0), "{tomato:?}");
    assert!(near(tomato.top, there.top));
    assert!(near(
        tomato.bottom - tomato.top,
        (there.bottom - there.top) / 2.0
    ));
    let (there, bean) = (part(1, "there"), part(1, "stand"));
    assert!(near(bean.left, 92.0 + 15.0 * 417.0 / 105.0), "{bean:?}");
    assert_eq!(
        (bean.top, bean.bottom),
        (there.top, there.bottom),
        "all 4 strips"
    );
    let free = named(beds[1], "line").next().unwrap();
    assert!(near(number(free, "x1"), 92.0 + 9.0 * 417.0 / 105.0));
}

#[test]
fn a_shelf_that_is_not_used_is_not_shown() {
    let mut garden = tiny_garden().with_ingredients(|at| at.0 == 0);
    garden.grades.truncate(1);
    let checked = planned(&garden, vec![tiny_bean()]);
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let space = pictures::space(&view).unwrap();
    let header = &space.said.table.header;
    assert_eq!(*header, ["Week of", "All beds (of 12)", "No school"]);
    let rows = of_class(read(&space.sheet.into_string()).root(), "flats").count();
    assert_eq!(rows, 1, "all beds, no shelf");
}

#[test]
fn a_patch_alone_has_a_timeline_and_a_map_and_no_beds() {
    let mut garden = tiny_garden().with_ingredients(|at| at.0 == 0);
    garden.grades.truncate(1);
    garden.beds.clear();
    garden.patches = vec![Patch {
        id: "corner".to_owned(),
        crop: "bean".to_owned(),
        pick_from: day("2027-05-01"),
        pick_to: day("2027-06-09"),
        low: Kilograms(2.0),
        expected: Kilograms(3.0),
        size: None,
        at: None,
    }];
    garden.ingredients[0].source = Source::Patch(tureen::garden::PatchAt(0));
    garden.ingredients[0].methods = vec![Method::Patch];
    let visits = [("1a", "2027-05-25"), ("1b", "2027-05-27")];
    let steps = vec![
        sessions(StepKind::Pick, &visits),
        from_to(StepKind::Cure, "2027-05-28", "2027-05-30"),
    ];
    let patch = planting("bean", Method::Patch, 0, Vec::new(), steps);
    let checked = planned(&garden, vec![patch]);
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    assert!(pictures::beds(&view).is_none());
    assert!(pictures::space(&view).is_none());
    let timeline = pictures::timeline(&view, Whose::All).unwrap().sheet;
    assert!(timeline.into_string().contains("data-day=\"2027-05-25\""));
    let map = pictures::map(&view, None).unwrap();
    assert!(map.said.table.rows[0].contains(&"not in the file".to_owned()));
    assert!(map.sheet.into_string().contains("corner"));
}

/// Bed A is 45 cm of ground along its trellis: the tomatoes, here 20 cm apart, stand three on two strips in one row along
/// it, in the middle of its depth. 60 cm and 45 cm are drawn at 150 points a metre, 90 by 67.5 points, from 1 point on.
#[test]
fn plants_along_a_trellis_stand_in_one_row_along_it() {
    let mut garden = tiny_garden();
    garden.ingredients.remove(0);
    garden.ingredients[0].crop.spacing.in_row = Centimetres(20.0);
    let bed = &mut garden.beds[0];
    (bed.along_trellis, bed.width, bed.trellis) = (true, Metres(0.45), bed.length);
    let mut tomato = tiny_tomato();
    (tomato.plants, tomato.places) = (6, vec![place("A", 1, 4)]);
    let checked = planned(&garden, vec![tomato]);
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let svg = pictures::planting(&view, GradeAt(1)).unwrap().sheet;
    let svg = svg.into_string();
    let drawing = read(&svg);
    let piece = of_class(drawing.root(), "planting").next().unwrap();
    let ground = rect(
        named(piece, "rect")
            .find(|r| r.attribute("class") == Some("ground"))
            .unwrap(),
    );
    assert!(near(ground.right - ground.left, 90.0) && near(ground.bottom - ground.top, 67.5));
    let plants: Vec<(f64, f64)> = named(piece, "circle")
        .map(|plant| (number(plant, "cx"), number(plant, "cy")))
        .collect();
    let middle = (ground.top + ground.bottom) / 2.0;
    let expected = [16.0, 46.0, 76.0];
    assert_eq!(plants.len(), 3, "{plants:?}");
    for ((x, y), expected) in plants.iter().zip(expected) {
        assert!(
            near(*x, expected) && near(*y, middle),
            "{plants:?}, {ground:?}"
        );
    }
}
