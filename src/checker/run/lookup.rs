//! Looks up the plan's names and dates. What cannot be found is reported and left out; the
//! rest is still checked.

use crate::calendar::Date;
use crate::checker::fault::{DayLimit, Fault, Named, PlantingRef, StepRef, Violation};
use crate::checker::needs;
use crate::checker::planting::{Place, Planting, Step, Visit, When};
use crate::garden::{Garden, Ingredient, Source, Team};
use crate::growth::{Light, PickingDays};
use crate::plan::{self, Plan, Rule};

use super::Run;
use super::given;

impl<'a> Run<'a> {
    /// Lays a plan over a garden and tells what is not known there.
    pub fn new(garden: &'a Garden, plan: &'a Plan) -> (Self, Vec<Violation>) {
        let mut unknown = Vec::new();
        let horizon = garden.horizon();
        let mut run = Self {
            garden,
            plan,
            horizon,
            light: Light::of(garden.latitude, horizon),
            picking_days: PickingDays::of(garden),
            gaps: garden.gaps(),
            plantings: Vec::new(),
        };
        run.plantings = (1..)
            .zip(&plan.plantings)
            .filter_map(|(number, planting)| run.planting(number, planting, &mut unknown))
            .collect();
        (run, unknown)
    }

    fn planting(
        &self,
        number: usize,
        planting: &'a plan::Planting,
        unknown: &mut Vec<Violation>,
    ) -> Option<Planting<'a>> {
        let Some(at) = self.garden.ingredient_named(&planting.ingredient) else {
            unknown.push(not_known(Named::Ingredient, &planting.ingredient));
            return None;
        };
        let ingredient = &self.garden[at];
        let name = PlantingRef {
            number,
            ingredient: planting.ingredient.clone(),
        };
        let team = self.team(&planting.grades, ingredient, unknown)?;
        let steps = (1..)
            .zip(&planting.steps)
            .filter_map(|(number, step)| {
                let name = StepRef {
                    planting: name.clone(),
                    number,
                    kind: step.kind,
                };
                self.step(name, step, unknown)
            })
            .collect();
        let mut planting = Planting {
            name,
            plan: planting,
            at,
            ingredient,
            team,
            steps,
            places: self.places(planting, unknown),
            grows_since: self.grows_since(ingredient),
            seedlings: self.garden.seedlings_of(at),
            given: None,
            need: None,
        };
        planting.given = given::given(self, &planting);
        planting.need = needs::need(self.garden, &planting);
        Some(planting)
    }

    fn team(
        &self,
        ids: &[String],
        ingredient: &Ingredient,
        unknown: &mut Vec<Violation>,
    ) -> Option<Team> {
        let not_there = |id: &&String| self.garden.grade_with_id(id).is_none();
        unknown.extend(
            ids.iter()
                .filter(not_there)
                .map(|id| not_known(Named::Grade, id)),
        );
        let found = self.garden.team_with_ids(ids);
        found.or(ingredient.teams.first().copied())
    }

    fn grows_since(&self, ingredient: &Ingredient) -> Option<usize> {
        match ingredient.source {
            Source::Begun(at) => {
                let begun = &self.garden[at];
                begun.in_bed()?;
                self.horizon.day_number(begun.since)
            }
            Source::Sown | Source::Patch(_) => None,
        }
    }

    fn places(&self, planting: &'a plan::Planting, unknown: &mut Vec<Violation>) -> Vec<Place<'a>> {
        let mut places = Vec::new();
        for place in &planting.places {
            match self.garden.bed_with_id(&place.bed) {
                Some(bed) => places.push(Place { bed, plan: place }),
                None => unknown.push(not_known(Named::Bed, &place.bed)),
            }
        }
        places
    }

    fn step(
        &self,
        name: StepRef,
        step: &'a plan::Step,
        unknown: &mut Vec<Violation>,
    ) -> Option<Step<'a>> {
        let mut day_number = |day: Date| self.day_number(&name, day, unknown);
        let (when, first, last) = match &step.when {
            plan::When::Sessions(visits) => {
                let visits = self.visits(&name, visits, unknown);
                let days = || visits.iter().map(|v| v.day);
                let (Some(first), Some(last)) = (days().min(), days().max()) else {
                    let fault = Fault::NoVisit { step: name };
                    unknown.push(Violation {
                        rule: Rule::Participation,
                        fault,
                    });
                    return None;
                };
                (When::Sessions(visits), first, last)
            }
            plan::When::Families(day) => {
                let day = day_number(*day)?;
                (When::Families(day), day, day)
            }
            plan::When::Adult(day) => {
                let day = day_number(*day)?;
                (When::Adult(day), day, day)
            }
            plan::When::Daily { from, to } => {
                let (from, to) = (day_number(*from), day_number(*to));
                (When::Daily, from?, to?)
            }
        };
        Some(Step {
            name,
            plan: step,
            when,
            first,
            last,
        })
    }

    fn visits(
        &self,
        step: &StepRef,
        visits: &[plan::Visit],
        unknown: &mut Vec<Violation>,
    ) -> Vec<Visit> {
        let mut known = Vec::new();
        for visit in visits {
            let class = self.garden.class_named(&visit.class);
            if class.is_none() {
                unknown.push(not_known(Named::Class, &visit.class));
            }
            let day = self.day_number(step, visit.date, unknown);
            if let (Some(class), Some(day)) = (class, day) {
                known.push(Visit { class, day });
            }
        }
        known.sort();
        known
    }

    /// The day number of a date; a date before anyone may sow or after the last day is a
    /// fault, even where it still has a number.
    fn day_number(&self, step: &StepRef, day: Date, unknown: &mut Vec<Violation>) -> Option<usize> {
        let (from, to) = (self.garden.start(), self.garden.last_day());
        if day < from || day > to {
            unknown.push(Violation {
                rule: Rule::Sessions,
                fault: Fault::Day {
                    step: step.clone(),
                    got: day,
                    limit: DayLimit::Span,
                    from: Some(from),
                    to: Some(to),
                },
            });
        }
        self.horizon.day_number(day)
    }
}

fn not_known(kind: Named, name: &str) -> Violation {
    Violation {
        rule: match kind {
            Named::Bed => Rule::Space,
            Named::Class | Named::Grade => Rule::Participation,
            Named::Ingredient => Rule::Amount,
        },
        fault: Fault::Unknown {
            kind,
            name: name.to_owned(),
        },
    }
}
