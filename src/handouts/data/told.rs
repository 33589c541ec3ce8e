//! From a plan to the form of the data file.

mod caring;
mod doing;
mod time;

use crate::checker;
use crate::facts::places::places;
use crate::facts::{filled, idle};
use crate::garden::{self, Garden, GradeAt, IngredientAt};
use crate::harmless::plain;
use crate::plan::{self, PlantingAt};
use crate::words::cautions;
use crate::words::view::View;

use super::shape::{
    BedUse, Class, Feast, Grade, Idle, Ingredient, Method, Place, PlanData, Planting, Project,
    SCHEMA, Standing, VERSION, Verdict, Week,
};
use time::day;

/// All that is told of a plan.
pub fn told(view: &View<'_>, calendars: &[String]) -> PlanData {
    let garden = view.garden;
    let plantings = view.plan.numbered();
    PlanData {
        schema: SCHEMA.to_owned(),
        tureen_plan_data: VERSION,
        project: project(garden),
        standing: standing(view),
        feast: feast(&garden.feast),
        verdict: verdict(view),
        grades: grades(view, calendars),
        ingredients: garden
            .ingredient_positions()
            .filter_map(|at| ingredient(view, at))
            .collect(),
        plantings: plantings.map(|(at, p)| planting(view, at, p)).collect(),
        steps: view.tasks.iter().map(|t| doing::step(garden, t)).collect(),
        weeks: weeks(view),
        breaks: caring::breaks(garden),
        gaps: view.gaps.iter().map(caring::gap).collect(),
        decisions: caring::decisions(view),
        cautions: caring::cautions(garden),
    }
}

/// To a tenth of a gram: what comes after it is the computer's, not the garden's.
fn kg(mass: crate::units::Kilograms) -> f64 {
    // Adding nothing makes plain what is a negative nothing.
    (mass.0 * 1e4).round() / 1e4 + 0.0
}

fn standing(view: &View<'_>) -> Standing {
    match view.standing() {
        checker::Standing::Planned | checker::Standing::Saved => Standing::AsPlanned,
        checker::Standing::Edited => Standing::Edited,
        checker::Standing::Changed(_) => Standing::ProjectChanged,
    }
}

fn project(garden: &Garden) -> Project {
    Project {
        name: plain(&garden.name),
        school: garden.school.as_deref().map(plain),
        latitude_deg: garden.latitude.0,
        locale: garden.locale.tag().to_owned(),
        start: day(garden.school_year.start),
        moves_up: garden.school_year.moves_up.map(day),
    }
}

fn feast(feast: &garden::Feast) -> Feast {
    Feast {
        day: day(feast.day),
        rain_date: feast.rain_date.map(day),
        deliver_by: day(feast.deliver_by),
        portions: feast.portions,
    }
}

fn verdict(view: &View<'_>) -> Verdict {
    let (garden, replay) = (view.garden, view.replay);
    let verdict = view.verdict();
    let (fewest, most) = verdict.expected.unzip();
    let unseen = view.unseen();
    let rain = replay.dish_ready_on_rain_date.as_ref();
    Verdict {
        unseen_years: unseen.map(|unseen| unseen.years),
        whole_dish_ready_unseen_years: unseen.map(|unseen| unseen.dish),
        rain_date_ready_unseen_years: unseen.and_then(|unseen| unseen.rain_date),
        weather_years: verdict.years,
        generated: garden.weather.is_generated(),
        whole_dish_ready_years: verdict.ready,
        rain_date_ready_years: rain.map(|years| years.iter().filter(|ready| **ready).count()),
        expect_at_least_years: fewest,
        expect_at_most_years: most,
    }
}

fn grades(view: &View<'_>, calendars: &[String]) -> Vec<Grade> {
    let garden = view.garden;
    let mut calendars = calendars.iter();
    let mut class = |class: &garden::Class| Class {
        name: plain(&class.name),
        children: class.children,
        calendar: calendars.next().cloned().unwrap_or_default(),
    };
    let grows = |at: GradeAt| {
        let own = view.planted_by(at);
        let mut names: Vec<String> = own.map(|(_, i)| plain(&i.name)).collect();
        names.dedup();
        names
    };
    garden
        .grade_positions()
        .map(|at| Grade {
            id: plain(&garden[at].id),
            name: plain(&garden[at].name),
            grows: grows(at),
            grows_nothing_because: view.idle(at).map(|why| match why {
                idle::Idle::GivenToOthers => Idle::GivenToOthers,
                idle::Idle::TooYoung => Idle::TooYoung,
                idle::Idle::TooFewIngredients => Idle::TooFewIngredients,
            }),
            classes: garden[at].classes.iter().map(&mut class).collect(),
        })
        .collect()
}

fn ingredient(view: &View<'_>, at: IngredientAt) -> Option<Ingredient> {
    let seen = view.replay.ingredients.get(at.0)?;
    let ingredient = &view.garden[at];
    let own = view.plantings_named(&ingredient.name).next();
    let rain = seen.ready_on_rain_date.as_ref();
    let allergen = ingredient.crop.caution.allergen.as_deref();
    Some(Ingredient {
        name: plain(&ingredient.name),
        grades: own.map_or_else(Vec::new, |p| p.grades.iter().map(|id| plain(id)).collect()),
        target_kg: kg(ingredient.target(view.garden.feast.portions)),
        low_kg: kg(seen.low),
        expected_kg: kg(seen.expected),
        ready_unseen_years: view
            .unseen()
            .and_then(|unseen| unseen.ingredients.get(at.0).copied()),
        ready_years: seen.ready_years(),
        rain_date_ready_years: rain.map(|years| years.iter().filter(|y| y.is_ok()).count()),
        caution: cautions::of(ingredient).as_deref().map(plain),
        allergen: allergen.map(plain),
        buy_by: ingredient
            .fallback
            .map(|fallback| day(view.bought_by(fallback))),
    })
}

fn planting(view: &View<'_>, at: PlantingAt, planting: &plan::Planting) -> Planting {
    let in_bed = view.in_bed.get(at.0).copied().flatten();
    let place = |place: &plan::Place| Place {
        bed: plain(&place.bed),
        first_strip: place.first_strip,
        strips: place.strips,
    };
    Planting {
        ingredient: plain(&planting.ingredient),
        sowing: view.sowing(at).number,
        grades: planting.grades.iter().map(|id| plain(id)).collect(),
        method: method(planting.method),
        places: places(&planting.places).iter().map(place).collect(),
        in_bed_from: in_bed.map(|(from, _)| day(from)),
        in_bed_until: in_bed.map(|(_, to)| day(to)),
        plants: planting.plants,
        seeds: planting.seeds,
        flats_sown: planting.flats_sown,
        flats_kept: planting.flats_kept,
        on_mat: planting.on_mat,
    }
}

fn method(method: garden::Method) -> Method {
    match method {
        garden::Method::Direct => Method::Direct,
        garden::Method::Indoor => Method::Indoor,
        garden::Method::Pieces => Method::Pieces,
        garden::Method::Bought => Method::Bought,
        garden::Method::Seedlings => Method::Seedlings,
        garden::Method::Growing => Method::Growing,
        garden::Method::Patch => Method::Patch,
    }
}

fn weeks(view: &View<'_>) -> Vec<Week> {
    let week = |week: filled::Week<'_>| Week {
        monday: day(week.monday),
        flats_used: week.flats.used,
        flats_there: week.flats.there,
        mat_flats_used: week.warm_flats.used,
        mat_flats_there: week.warm_flats.there,
        beds: week
            .beds
            .into_iter()
            .map(|(bed, strips)| BedUse {
                bed: plain(&bed.id),
                strips_used: strips.used,
                strips_there: strips.there,
            })
            .collect(),
    };
    view.weeks().into_iter().map(week).collect()
}
