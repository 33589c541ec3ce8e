//! Damages to places, numbers, promises and aims.

use tureen::garden::Method;
use tureen::plan::{Aim, AimResult, Plan, Rule, StepKind};
use tureen::units::Kilograms;

use crate::support::plans::{place, sessions};

use super::table::{Damage, bean};

fn aim(plan: &mut Plan, aim: Aim) -> &mut AimResult {
    plan.aims.iter_mut().find(|a| a.aim == aim).unwrap()
}

pub const NUMBERS: &[Damage<Plan>] = &[
    (
        "an unknown ingredient",
        |p| p.plantings[0].ingredient = "yam".to_owned(),
        Rule::Amount,
        "Unknown Ingredient",
    ),
    (
        "an ingredient without a planting",
        |p| {
            p.plantings.pop();
        },
        Rule::Amount,
        "Number Plantings",
    ),
    (
        "more sowings than allowed",
        |p| {
            let again = p.plantings[0].clone();
            p.plantings.push(again);
        },
        Rule::Amount,
        "Number Plantings",
    ),
    (
        "another method",
        |p| p.plantings[0].method = Method::Pieces,
        Rule::Readiness,
        "Method",
    ),
    (
        "said to stand there already",
        |p| p.plantings[0].method = Method::Growing,
        Rule::Readiness,
        "Method",
    ),
    (
        "said to be a patch",
        |p| p.plantings[0].method = Method::Patch,
        Rule::Readiness,
        "Method",
    ),
    (
        "an unknown bed",
        |p| p.plantings[0].places[0].bed = "Z".to_owned(),
        Rule::Space,
        "Unknown Bed",
    ),
    (
        "beds swapped: rotation",
        |p| {
            p.plantings[0].places[0].bed = "A".to_owned();
            p.plantings[1].places[0].bed = "B".to_owned();
        },
        Rule::Rotation,
        "Rotation",
    ),
    (
        "beds swapped: no trellis",
        |p| {
            p.plantings[0].places[0].bed = "A".to_owned();
            p.plantings[1].places[0].bed = "B".to_owned();
        },
        Rule::Space,
        "Place NoTrellis",
    ),
    (
        "no place",
        |p| p.plantings[0].places.clear(),
        Rule::Space,
        "Place Nowhere",
    ),
    (
        "no strips",
        |p| p.plantings[0].places[0].strips = 0,
        Rule::Space,
        "Place Nowhere",
    ),
    (
        "strip nought",
        |p| p.plantings[0].places[0].first_strip = 0,
        Rule::Space,
        "Place NoStrip(0)",
    ),
    (
        "moved out of the bed",
        |p| p.plantings[0].places[0].first_strip = 2,
        Rule::Space,
        "Place NoStrip(5)",
    ),
    (
        "moved off the trellis",
        |p| p.plantings[1].places[0].first_strip = 2,
        Rule::Space,
        "Place NoTrellis(5)",
    ),
    (
        "countless strips",
        |p| p.plantings[0].places[0].strips = u32::MAX,
        Rule::Space,
        "Place NoStrip",
    ),
    (
        "a strip added",
        |p| p.plantings[1].places[0].strips = 5,
        Rule::Space,
        "Place NoTrellis(5)",
    ),
    (
        "a strip taken away",
        |p| p.plantings[0].places[0].strips = 3,
        Rule::Amount,
        "Number Plants",
    ),
    (
        "half a block",
        |p| p.plantings[1].places[0].strips = 3,
        Rule::Space,
        "Place BrokenBlock(2)",
    ),
    (
        "the same strips twice",
        |p| p.plantings[0].places.push(place("B", 1, 4)),
        Rule::Space,
        "StripTakenTwice",
    ),
    (
        "two plantings on one strip",
        |p| p.plantings[0].places = vec![place("A", 4, 4)],
        Rule::Space,
        "StripTakenTwice",
    ),
    (
        "sown before the bed is free",
        |p| *bean(p, 0) = sessions(StepKind::Sow, &[("1a", "2027-03-02"), ("1b", "2027-03-04")]),
        Rule::Space,
        "Place NotFreeUntil",
    ),
    (
        "plants raised",
        |p| p.plantings[0].plants = 49,
        Rule::Amount,
        "Number Plants",
    ),
    (
        "countless plants",
        |p| p.plantings[0].plants = u32::MAX,
        Rule::Amount,
        "Number Plants",
    ),
    (
        "seeds lowered",
        |p| p.plantings[0].seeds -= 1,
        Rule::Amount,
        "Number Seeds",
    ),
    (
        "flats lowered",
        |p| p.plantings[1].flats_sown -= 1,
        Rule::Amount,
        "Number FlatsSown",
    ),
    (
        "potted flats lowered",
        |p| p.plantings[1].flats_kept -= 1,
        Rule::Amount,
        "Number FlatsKept",
    ),
    (
        "more flats than the shelf",
        |p| p.plantings[1].flats_sown += 1,
        Rule::Shelf,
        "ShelfFull mat:false",
    ),
    (
        "countless flats",
        |p| {
            p.plantings[1].flats_sown = u32::MAX;
            p.plantings[0].flats_sown = u32::MAX;
        },
        Rule::Shelf,
        "ShelfFull",
    ),
    (
        "a bed on the mat",
        |p| p.plantings[0].on_mat = true,
        Rule::Shelf,
        "Mat",
    ),
    (
        "low amount raised",
        |p| p.promise.ingredients[0].low = Kilograms(0.97),
        Rule::Amount,
        "Number LowKilograms",
    ),
    (
        "expected amount raised",
        |p| p.promise.ingredients[1].expected = Kilograms(2.1),
        Rule::Amount,
        "Number ExpectedKilograms",
    ),
    (
        "ready years raised",
        |p| p.promise.ingredients[0].ready_years = 3,
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "ready years lowered",
        |p| p.promise.ingredients[1].ready_years = 2,
        Rule::Readiness,
        "Number ReadyYears",
    ),
    (
        "whole dish raised",
        |p| p.promise.whole_dish_years = 3,
        Rule::Readiness,
        "Number Dish ReadyYears",
    ),
    (
        "weather years raised",
        |p| p.promise.weather_years = 30,
        Rule::Readiness,
        "Number WeatherYears",
    ),
    (
        "a promise left out",
        |p| {
            p.promise.ingredients.pop();
        },
        Rule::Amount,
        "PromiseList",
    ),
    (
        "promises swapped",
        |p| p.promise.ingredients.swap(0, 1),
        Rule::Amount,
        "PromiseList",
    ),
    (
        "an unknown promise",
        |p| p.promise.ingredients[0].ingredient = "yam".to_owned(),
        Rule::Amount,
        "PromiseList",
    ),
    (
        "aims out of order",
        |p| p.aims.swap(0, 1),
        Rule::Amount,
        "Aim Order",
    ),
    (
        "an aim twice",
        |p| p.aims.push(p.aims[10]),
        Rule::Shelf,
        "Aim Order",
    ),
    (
        "a value beyond its bound",
        |p| aim(p, Aim::WorstIngredient).value = 3.0,
        Rule::Readiness,
        "Aim ValueBeyondBound",
    ),
    (
        "a value under its bound, where fewer is better",
        |p| aim(p, Aim::UnattendedDays).value = 6.0,
        Rule::Care,
        "Aim ValueBeyondBound",
    ),
    (
        "a bound that the plan passes",
        |p| {
            let a = aim(p, Aim::AllIngredients);
            a.value = 4.0;
            a.bound = 4.0;
        },
        Rule::Readiness,
        "Aim PlanBeyondBound",
    ),
    (
        "a bound that is no number",
        |p| aim(p, Aim::WholeDish).bound = f64::NAN,
        Rule::Readiness,
        "Aim ValueBeyondBound",
    ),
    (
        "fewer in the pot",
        |p| aim(p, Aim::InThePot).value = 1.0,
        Rule::Amount,
        "Aim Value",
    ),
];
