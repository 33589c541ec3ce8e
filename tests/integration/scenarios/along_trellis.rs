//! A row along a trellis that has ground of its own: tomatoes on one side of a bed and carrots on the other, in the
//! weather of turned-over.

use std::time::Duration;

use tureen::catalogue::Catalogue;
use tureen::checker::check;
use tureen::deadline::Deadline;
use tureen::explain::{Kind, Workbench};
use tureen::facts::Facts;
use tureen::facts::how::{self, Act};
use tureen::facts::pattern::Lie;
use tureen::garden::{Garden, GradeAt, Position};
use tureen::model::{Options, Outcome};
use tureen::plan::Plan;
use tureen::project::{self, Change};
use tureen::report::{self, pictures::pattern};
use tureen::units::{Centimetres, Metres};
use tureen::words::view::View;

use super::{outcome, text};
use crate::cli::Folder;
use crate::report::plain;

const FILE: &str = r#"
[project]
name = "Both sides of a bed"
feast = 2027-09-24
deliver_by = 2027-09-23
portions = 40

[place]
latitude = 30
weather = "weather.csv"

[calendar]
start = 2027-03-01
terms = [
  { name = "Spring", from = 2027-03-01, to = 2027-06-25 },
  { name = "Autumn", from = 2027-08-30, to = 2027-12-17 },
]
breaks = [{ name = "Summer", from = 2027-06-26, to = 2027-08-29, care = "staff" }]

[[grade]]
id = "1"
classes = [{ name = "1a", children = 12, day = "Tue", minutes = 40 }]

[[grade]]
id = "2"
classes = [{ name = "2a", children = 12, day = "Wed", minutes = 40 }]

[[dish.ingredient]]
crop = "carrot"
grade = "1"
grams_per_portion = 50
least_share = 0.9

[[dish.ingredient]]
crop = "tomato"
grade = "2"
grams_per_portion = 10
method = "bought"

[[bed]]
id = "Wall"
length_m = 1.2
width_m = 1.2
trellis_m = 1.2
"#;

fn garden(file: &str) -> Garden {
    let weather = text("turned-over", "weather.csv");
    let catalogue = Catalogue::load().unwrap();
    project::load_text("garden.toml", file, Some(&weather), &catalogue)
        .unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)))
}

/// The file with more keys of its bed.
fn with(keys: &str) -> String {
    format!("{FILE}{keys}\n")
}

fn place(plan: &Plan, ingredient: &str) -> (String, u32, u32) {
    let planting = plan.plantings.iter().find(|p| p.ingredient == ingredient);
    let planting = planting.unwrap();
    let [place] = planting.places.as_slice() else {
        panic!("{:?}", planting.places)
    };
    (place.bed.clone(), place.strips, planting.plants)
}

/// Over the whole width a row of tomatoes every 90 cm takes three of four strips, and carrots want two: 20 plants of
/// 6 cm on a strip give 0.92 kg of 2 kg, of which nine tenths must be there.
#[test]
fn over_the_whole_width_there_is_no_room_for_both() {
    let Outcome::Impossible(found) = outcome(&garden(FILE), 60, 0) else {
        panic!("there is room")
    };
    assert!(
        found.proved && found.possible_together.len() == 1,
        "{found:?}"
    );
}

/// Along 1.2 m of trellis two tomatoes stand 60 cm apart; on the other 75 cm a strip has 12 carrots, 0.55 kg, and all
/// four strips 2.2 kg.
#[test]
fn a_row_along_the_trellis_leaves_the_other_side_free() {
    let garden = garden(&with("trellis_depth_cm = 45"));
    let plan = match outcome(&garden, 60, 0) {
        Outcome::Planned(plan) => plan,
        other => panic!("{other:?}"),
    };
    assert_eq!(place(&plan, "carrot"), ("Wall".to_owned(), 4, 48));
    let (bed, strips, plants) = place(&plan, "tomato");
    assert_eq!(
        (bed.as_str(), strips),
        ("Wall along the trellis", 2 * plants)
    );
    let checked = check(&garden, plan).unwrap();
    assert_eq!(checked.plan().plantings.len(), 2);
}

fn metres(at: Position) -> (f64, f64) {
    ((at.x.0 * 100.0).round(), (at.y.0 * 100.0).round())
}

/// The row lies on the side away from the sun; in a bed that runs from north to south on its east side.
#[test]
fn the_row_lies_away_from_the_sun() {
    let cases = [
        ("30", "", (100.0, 200.0), (100.0, 275.0)),
        ("-30", "", (100.0, 245.0), (100.0, 200.0)),
        (
            "30",
            "runs = \"north-south\"\n",
            (100.0, 200.0),
            (175.0, 200.0),
        ),
        (
            "-30",
            "runs = \"north-south\"\n",
            (100.0, 200.0),
            (175.0, 200.0),
        ),
    ];
    for (latitude, runs, rest, row) in cases {
        let keys =
            format!("{runs}trellis_depth_cm = 45\nat = {{ x_m = 1, y_m = 2 }}\ncover = \"fleece\"");
        let file = with(&keys).replace("latitude = 30", &format!("latitude = {latitude}"));
        let garden = garden(&file);
        let [bed, along] = garden.beds.as_slice() else {
            panic!("two beds")
        };
        assert_eq!(
            (metres(bed.at.unwrap()), metres(along.at.unwrap())),
            (rest, row)
        );
        assert_eq!((bed.trellis, along.trellis), (Metres(0.0), Metres(1.2)));
        assert!((bed.width.0 - 0.75).abs() < 1e-9 && (along.width.0 - 0.45).abs() < 1e-9);
        // What climbs is not under the cover.
        assert!(bed.cover.is_some() && along.cover.is_none());
    }
}

/// What climbs may stand there when the plan begins.
#[test]
fn what_climbs_may_stand_there_already() {
    let growing = "trellis_depth_cm = 45\n\n[[growing]]\ncrop = \"tomato\"\nbed = \"Wall along the trellis\"\n\
                   strips = 2\nsown = 2027-02-15\nas_plants = true\nfor = \"tomato\"";
    let file = with(growing).replace("method = \"bought\"\n", "");
    let garden = garden(&file);
    let (bed, strips) = garden.begun[0].in_bed().unwrap();
    assert_eq!(
        (garden[bed].id.as_str(), strips.count),
        ("Wall along the trellis", 2)
    );
}

/// A trellis may be measured two centimetres shorter than its bed: no strip of the row is lost.
#[test]
fn a_row_is_as_long_as_its_bed() {
    let shorter = |trellis: &str| {
        let keys = with("trellis_depth_cm = 45");
        garden(&keys.replace("trellis_m = 1.2", &format!("trellis_m = {trellis}")))
    };
    for trellis in ["1.2", "1.19", "1.18"] {
        let garden = shorter(trellis);
        let [bed, along] = garden.beds.as_slice() else {
            panic!("two beds")
        };
        assert_eq!((bed.strips(), along.strips()), (4, 4), "{trellis}");
        assert_eq!(
            (bed.trellis_strips(), along.trellis_strips()),
            (0, 4),
            "{trellis}"
        );
    }
}

/// Six strips of the wall hold three tomatoes of 0.27 kg, and 1 kg is wanted: another bed of six strips holds four, two in
/// each of two rows across it, if a trellis stands there. The wall has one, so none is told for it.
#[test]
fn a_trellis_is_told_only_where_none_stands() {
    let long = with("trellis_depth_cm = 45").replace(" = 1.2\nwidth", " = 1.8\nwidth");
    let long = long.replace("trellis_m = 1.2", "trellis_m = 1.8");
    let more = long.replace(
        "grams_per_portion = 10",
        "grams_per_portion = 25\nleast_share = 1",
    );
    let other = "[[bed]]\nid = \"Gate\"\nlength_m = 1.8\nwidth_m = 1.2\ntrellis_m = 0\n";
    let folder = Folder::with("along-trellis", |_| format!("{more}\n{other}"));
    std::fs::write(
        folder.path("weather.csv"),
        text("turned-over", "weather.csv"),
    )
    .unwrap();
    let catalogue = Catalogue::load().unwrap();
    let load = |changes: &[Change]| {
        project::load_changed(&folder.path("garden.toml"), changes, &catalogue)
    };
    let garden = load(&[]).unwrap_or_else(|found| panic!("{found}"));
    let options = Options::until(Deadline::after(Duration::from_secs(120)));
    let bench = Workbench {
        load: &load,
        options,
    };
    let diagnosis = bench.diagnose(&garden, &catalogue);
    let kinds = diagnosis.repairs.iter().flat_map(|repair| &repair.kinds);
    let trellises = kinds.filter_map(|kind| match kind {
        Kind::Trellis { beds } => Some(beds.as_slice()),
        _ => None,
    });
    assert_eq!(trellises.collect::<Vec<_>>(), [["Gate"]]);
}

/// Tomatoes 60 cm apart along the trellis take two strips each; carrots stand in rows 30 cm apart across 75 cm.
#[test]
fn it_is_told_how_they_stand() {
    let garden = garden(&with("trellis_depth_cm = 45"));
    let Outcome::Planned(plan) = outcome(&garden, 60, 0) else {
        panic!("there is a plan")
    };
    let checked = check(&garden, plan).unwrap();
    let facts = Facts::new(&garden, &checked);
    let [carrots, tomatoes] = [0, 1].map(|grade| facts.ours(GradeAt(grade)));
    let [pattern] = &facts.patterns(&tomatoes)[..] else {
        panic!("one pattern")
    };
    assert_eq!((pattern.lie, pattern.in_row), (Lie::AlongTrellis, 1));
    assert_eq!((pattern.length, pattern.width), (Metres(0.6), Metres(0.45)));
    let [pattern] = &facts.patterns(&carrots)[..] else {
        panic!("one pattern")
    };
    let across = Lie::Across {
        rows: 1,
        between: Centimetres(30.0),
    };
    assert_eq!((pattern.lie, pattern.in_row), (across, 12));
    let apart = |ours| {
        let how = how::of(&garden, ours);
        let mut acts = how.into_iter().flat_map(|how| how.acts);
        acts.find_map(|act| match act {
            Act::InBed(_, apart) | Act::Plants(apart) => Some(apart),
            _ => None,
        })
    };
    assert_eq!(apart(&tomatoes).unwrap().between_rows, None);
    assert_eq!(
        apart(&carrots).unwrap().between_rows,
        Some(Centimetres(30.0))
    );
    let view = View::of(&facts);
    let shown = pattern::patterns(&view, GradeAt(1)).unwrap().said;
    assert!(
        shown
            .description
            .contains("tomato: one row along the trellis, a plant every 60 cm"),
        "{}",
        shown.description
    );
    let page = report::grade(&garden, &checked, GradeAt(1)).text(plain(200));
    assert!(
        page.contains("One row along the trellis, one every 60 cm."),
        "{page}"
    );
}
