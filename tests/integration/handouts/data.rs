//! The data file tells by keys and figures what its texts say, for every scenario.

use std::time::SystemTime;

use serde_json::Value;
use tureen::facts::Facts;
use tureen::garden::Garden;
use tureen::handouts::calendar::Stamp;
use tureen::handouts::files;
use tureen::words::view::View;

use crate::scenarios;

/// The data file of every scenario that has a plan.
fn all() -> impl Iterator<Item = (&'static str, &'static Garden, Value)> {
    scenarios::planned().iter().map(|(name, garden, checked)| {
        let facts = Facts::new(garden, checked);
        let stamp = Stamp::from(SystemTime::UNIX_EPOCH);
        let files = files(&View::of(&facts), stamp, &[]).unwrap();
        let data = files.iter().find(|f| f.path == "plan-data.json").unwrap();
        (*name, garden, serde_json::from_slice(&data.bytes).unwrap())
    })
}

fn list<'d>(data: &'d Value, name: &str) -> &'d [Value] {
    data[name].as_array().unwrap()
}

fn text<'d>(data: &'d Value, name: &str) -> &'d str {
    data[name].as_str().unwrap()
}

#[test]
fn a_decision_tells_its_figures_beside_its_text() {
    let mut seen = std::collections::BTreeMap::new();
    for (name, _, data) in all() {
        for decision in list(&data, "decisions") {
            let (topic, what) = (&decision["topic"], text(decision, "what"));
            let kind = text(topic, "kind");
            match kind {
                "order" => {
                    let (ingredient, count) = (text(topic, "ingredient"), &topic["count"]);
                    assert!(what.contains(ingredient), "{name}: {what}");
                    assert!(what.contains(&format!("Order {count} ")), "{name}: {what}");
                    let thing = text(topic, "thing").rsplit('-').next().unwrap();
                    assert!(what.contains(thing), "{name}: {what} {thing}");
                    // Two weeks to arrive, and deadlines are days of school.
                    assert!(text(decision, "by") < text(topic, "needed"));
                }
                "gap" => {
                    let at = topic["gap"].as_u64().unwrap() as usize;
                    assert!(text(decision, "by") < text(&list(&data, "gaps")[at], "from"));
                }
                "break" => {
                    let mut breaks = list(&data, "breaks").iter();
                    assert!(
                        breaks.any(|b| b["name"] == topic["break"]),
                        "{name}: {what}"
                    );
                    assert!(what.contains(text(topic, "break")));
                }
                "buy" => {
                    let mut ingredients = list(&data, "ingredients").iter();
                    let same = |i: &&Value| i["name"] == topic["ingredient"];
                    assert_eq!(ingredients.find(same).unwrap()["buy_by"], decision["by"]);
                }
                "nurse" | "kitchen" => assert_eq!(topic["ingredient"], Value::Null),
                other => panic!("{name}: {other}"),
            }
            *seen.entry(kind.to_owned()).or_insert(0) += 1;
        }
    }
    assert_eq!(seen.len(), 6, "{seen:?}");
}

#[test]
fn a_step_tells_where_it_is_done_and_what_is_handed_out() {
    let mut places = std::collections::BTreeSet::new();
    for (name, _, data) in all() {
        for step in list(&data, "steps") {
            let at = step["planting"].as_u64().unwrap() as usize;
            let planting = &list(&data, "plantings")[at];
            let (kind, method) = (text(step, "kind"), text(planting, "method"));
            let has_strips = !list(planting, "places").is_empty();
            let place = match (kind, method) {
                ("sow" | "pot-up", "indoor") => "shelf",
                ("harden", _) => "near-shelf",
                ("cure", _) => "drying-place",
                _ if has_strips => "strips",
                _ => "patch",
            };
            assert_eq!(step["place"], place, "{name}: {step}");
            places.insert(place);
            if let Some(part) = step["part"].as_object() {
                let thing = match (kind, method) {
                    ("plant-out", "indoor") => "plant",
                    (_, "pieces") => "seed-piece",
                    (_, "bought") => "bought-plant",
                    _ => "seed",
                };
                assert_eq!(part["thing"], thing, "{name}: {step}");
            }
        }
    }
    assert_eq!(places.len(), 5, "{places:?}");
}

#[test]
fn cautions_tell_whom_they_are_about() {
    let (mut own, mut allergens) = (0, 0);
    for (name, garden, data) in all() {
        let cautions = list(&data, "cautions");
        let of_kind = |kind: &'static str| cautions.iter().filter(move |c| c["kind"] == kind);
        for ingredient in list(&data, "ingredients") {
            let same = |c: &&Value| c["ingredient"] == ingredient["name"];
            let told = of_kind("ingredient").find(same).map(|c| &c["text"]);
            assert_eq!(
                told,
                ingredient["caution"]
                    .is_string()
                    .then_some(&ingredient["caution"])
            );
            own += usize::from(told.is_some());
            if let Some(allergen) = ingredient["allergen"].as_str() {
                let all = list(of_kind("allergies").next().unwrap(), "allergens");
                let carried = all.iter().find(|a| a["name"] == allergen).unwrap();
                assert!(
                    list(carried, "ingredients").contains(&ingredient["name"]),
                    "{name}"
                );
                allergens += 1;
            }
        }
        let mat = garden.shelf.warm_flats > 0;
        assert_eq!(of_kind("heat-mat").count(), usize::from(mat), "{name}");
        for kind in [
            "hands",
            "seed",
            "soil",
            "tools",
            "food-service",
            "trades",
            "compost",
        ] {
            assert_eq!(of_kind(kind).count(), 1, "{name}: {kind}");
        }
    }
    assert!(own > 5 && allergens > 0, "{own} {allergens}");
}
