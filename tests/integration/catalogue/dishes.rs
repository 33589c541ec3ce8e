//! The dishes from which a project starts: each can be grown, at an invented place and the smallest school.

use tureen::catalogue::{Catalogue, dishes};
use tureen::model::Options;
use tureen::pipeline::plan;
use tureen::project;
use tureen::project::draft::Draft;

#[test]
fn every_dish_can_be_grown_in_most_years() {
    let catalogue = Catalogue::load().expect("the catalogue loads");
    let mut faults = Vec::new();
    for dish in dishes().expect("the dishes load") {
        let name = dish.name.clone();
        let draft = Draft::new("2026-11-29".parse().expect("a date"), dish);
        // Ten years tell as much here as thirty.
        let text = draft.text().replacen("tmin_c", "years = 10\ntmin_c", 1);
        let garden = project::load_text("garden.toml", &text, None, &catalogue);
        let garden = garden.unwrap_or_else(|found| panic!("{name}\n{}", found.render(false, 100)));
        match plan(&garden, &Options::default()) {
            Ok(checked) => {
                let unseen = checked.unseen().expect("made-up years");
                if 2 * unseen.dish <= unseen.years {
                    faults.push(format!("{name}: {} of {}", unseen.dish, unseen.years));
                }
            }
            Err(why) => faults.push(format!("{name}: {why:?}")),
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}
