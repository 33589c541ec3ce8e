//! From a plan to the form of the data file.

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::facts::breaks::within;
use crate::facts::gaps::OpenGap;
use crate::facts::idle;
use crate::facts::tasks::{Doer, Task};
use crate::facts::weeks;
use crate::garden::{self, Garden, GradeAt, IngredientAt};
use crate::harmless::plain;
use crate::plan::{self, StepKind};
use crate::report::interval::further_years_95;
use crate::report::places::places;
use crate::report::view::View;
use crate::report::{caution, decision, tasks, thing};

use super::shape::{
    BedUse, Break, Care, Chance, Class, Clock, Day, Decision, Feast, Gap, Grade, Hands, Idle,
    Ingredient, Kind, Method, Part, Place, PlanData, Planting, Project, SCHEMA, Step, VERSION,
    Verdict, Week,
};

/// All that is told of a plan.
pub fn told(view: &View<'_>, calendars: &[String]) -> PlanData {
    let (garden, checked) = (view.garden, view.checked);
    let in_bed = checked.in_bed(garden);
    let plantings = &checked.plan().plantings;
    let planting = |at: usize| planting(plantings, at, in_bed.get(at).copied().flatten());
    PlanData {
        schema: SCHEMA.to_owned(),
        tureen_plan_data: VERSION,
        project: project(garden),
        feast: feast(&garden.feast),
        verdict: verdict(garden, checked),
        grades: grades(view, calendars),
        ingredients: garden
            .ingredient_positions()
            .filter_map(|at| ingredient(garden, checked, at))
            .collect(),
        plantings: (0..plantings.len()).filter_map(planting).collect(),
        steps: view.tasks.iter().map(|task| step(garden, task)).collect(),
        weeks: weeks(view),
        breaks: breaks(garden),
        gaps: gaps(view),
        decisions: view
            .decisions
            .iter()
            .map(|d| Decision {
                by: day(d.by),
                what: plain(&decision(view, &d.topic)),
            })
            .collect(),
    }
}

fn day(day: Date) -> Day {
    Day(day.format("%Y-%m-%d").to_string())
}

/// To a tenth of a gram: what comes after it is the computer's, not the garden's.
fn kg(mass: crate::units::Kilograms) -> f64 {
    // Adding nothing makes plain what is a negative nothing.
    (mass.0 * 1e4).round() / 1e4 + 0.0
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

fn verdict(garden: &Garden, checked: &CheckedPlan) -> Verdict {
    let replay = checked.replay();
    let (years, ready) = (replay.years.len(), replay.whole_dish_years());
    let (fewest, most) = further_years_95(ready, years);
    let rain = replay.dish_ready_on_rain_date.as_ref();
    Verdict {
        weather_years: years,
        generated: garden.weather.is_generated(),
        whole_dish_ready_years: ready,
        rain_date_ready_years: rain.map(|years| years.iter().filter(|ready| **ready).count()),
        expect_at_least_years: fewest,
        expect_at_most_years: most,
    }
}

fn grades(view: &View<'_>, calendars: &[String]) -> Vec<Grade> {
    let (garden, checked) = (view.garden, view.checked);
    let mut calendars = calendars.iter();
    let mut class = |class: &garden::Class| Class {
        name: plain(&class.name),
        children: class.children,
        calendar: calendars.next().cloned().unwrap_or_default(),
    };
    let grows = |at: GradeAt| {
        let plantings = checked.plan().plantings.iter();
        let own = plantings.filter(|p| garden.grade_with_id(&p.grade) == Some(at));
        let mut names: Vec<String> = own.map(|p| plain(&p.ingredient)).collect();
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

fn ingredient(garden: &Garden, checked: &CheckedPlan, at: IngredientAt) -> Option<Ingredient> {
    let seen = checked.replay().ingredients.get(at.0)?;
    let ingredient = &garden[at];
    let mut plantings = checked.plan().plantings.iter();
    let own = plantings.find(|p| p.ingredient == ingredient.name);
    let rain = seen.ready_on_rain_date.as_ref();
    let allergen = ingredient.crop.caution.allergen.as_deref();
    Some(Ingredient {
        name: plain(&ingredient.name),
        grade: own.map(|p| plain(&p.grade)),
        target_kg: kg(ingredient.target(garden.feast.portions)),
        low_kg: kg(seen.low),
        expected_kg: kg(seen.expected),
        ready_years: seen.ready_years(),
        rain_date_ready_years: rain.map(|years| years.iter().filter(|y| y.is_ok()).count()),
        caution: caution(ingredient).as_deref().map(plain),
        allergen: allergen.map(plain),
        buy_by: ingredient
            .fallback
            .map(|fallback| day(garden.school_year.school_day_until(fallback.buy_by))),
    })
}

fn planting(all: &[plan::Planting], at: usize, in_bed: Option<(Date, Date)>) -> Option<Planting> {
    let planting = all.get(at)?;
    let before = all.iter().take(at + 1);
    let place = |place: &plan::Place| Place {
        bed: plain(&place.bed),
        first_strip: place.first_strip,
        strips: place.strips,
    };
    Some(Planting {
        ingredient: plain(&planting.ingredient),
        sowing: before
            .filter(|p| p.ingredient == planting.ingredient)
            .count(),
        grade: plain(&planting.grade),
        method: method(planting.method),
        places: places(&planting.places).iter().map(place).collect(),
        in_bed_from: in_bed.map(|(from, _)| day(from)),
        in_bed_until: in_bed.map(|(_, to)| day(to)),
        plants: planting.plants,
        seeds: planting.seeds,
        flats_sown: planting.flats_sown,
        flats_kept: planting.flats_kept,
        on_mat: planting.on_mat,
    })
}

fn method(method: garden::Method) -> Method {
    match method {
        garden::Method::Direct => Method::Direct,
        garden::Method::Indoor => Method::Indoor,
        garden::Method::Pieces => Method::Pieces,
        garden::Method::Bought => Method::Bought,
        garden::Method::Growing => Method::Growing,
        garden::Method::Patch => Method::Patch,
    }
}

fn step(garden: &Garden, task: &Task<'_>) -> Step {
    let (hands, class) = match task.who {
        Doer::Class(at) => (Hands::Class, Some(plain(&garden.class(at).name))),
        Doer::Families => (Hands::Families, None),
        Doer::Adult => (Hands::Adult, None),
        Doer::Anyone => (Hands::Anyone, None),
    };
    Step {
        planting: task.at.planting,
        kind: match task.kind {
            StepKind::Sow => Kind::Sow,
            StepKind::PotUp => Kind::PotUp,
            StepKind::Harden => Kind::Harden,
            StepKind::PlantOut => Kind::PlantOut,
            StepKind::Thin => Kind::Thin,
            StepKind::Pick => Kind::Pick,
            StepKind::Cure => Kind::Cure,
        },
        title: plain(&tasks::title(task)),
        hands,
        class,
        from: day(task.from),
        to: day(task.to),
        at: task.begins.map(|at| Clock(at.format("%H:%M").to_string())),
        minutes: task.whole_minutes(),
        part: task.part.map(|part| Part {
            part: part.part,
            of: part.total,
            thing: thing(part.thing).to_owned(),
        }),
        chance: task.chance.map(|chance| Chance {
            number: chance.number,
            of: chance.of,
        }),
    }
}

fn weeks(view: &View<'_>) -> Vec<Week> {
    let week = |week: weeks::Week<'_>| Week {
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

fn breaks(garden: &Garden) -> Vec<Break> {
    let told = |pause: &garden::Break| Break {
        name: plain(&pause.name),
        from: day(pause.from),
        to: day(pause.to),
        care: match pause.care {
            garden::Care::Nobody => Care::Nobody,
            garden::Care::Staff => Care::Staff,
            garden::Care::Families => Care::Families,
        },
    };
    let breaks = within(garden).into_iter();
    breaks.map(|b| told(b.pause)).collect()
}

fn gaps(view: &View<'_>) -> Vec<Gap> {
    let told = |gap: &OpenGap<'_>| {
        let mut names: Vec<String> = gap.needs.iter().map(|n| plain(n.ingredient)).collect();
        names.dedup();
        Gap {
            from: day(gap.from),
            to: day(gap.to),
            unattended_days: gap.unattended_days,
            ingredients: names,
        }
    };
    view.gaps.iter().map(told).collect()
}
