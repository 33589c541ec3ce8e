//! How many grades can grow something: one team for every ingredient, shared out so that as
//! few grades as possible are left with nothing.

use std::collections::BTreeSet;

use super::Garden;
use super::at::{GradeAt, IngredientAt};
use super::dish::Ingredient;
use super::team::{Seat, Team};

impl Garden {
    /// True if the grade of some ingredient is to be chosen.
    #[must_use]
    pub fn has_open_grades(&self) -> bool {
        self.ingredients.iter().any(|i| i.only_team().is_none())
    }

    /// The same project with the grades of its ingredients fixed.
    #[must_use]
    pub fn grown_by(&self, teams: &[(IngredientAt, Team)]) -> Self {
        let mut fixed = self.clone();
        for (at, team) in teams {
            fixed.ingredients[at.0].teams = vec![*team];
        }
        fixed
    }

    /// The same project with no more than one sowing of each ingredient; `None` if it has no more
    /// anyway.
    #[must_use]
    pub fn with_one_sowing_each(&self) -> Option<Self> {
        let several = |i: &Ingredient| i.most_plantings() > 1;
        self.ingredients.iter().any(several).then(|| {
            let mut fewer = self.clone();
            for ingredient in &mut fewer.ingredients {
                ingredient.max_sowings = 1;
            }
            fewer
        })
    }

    /// The most grades that can grow something at once (the size of a greatest matching of seats and grades, by
    /// augmenting paths).
    #[must_use]
    pub fn most_grades(&self) -> usize {
        let seats: Vec<Seat> = self.seats().collect();
        self.greatest_matching(&seats).iter().flatten().count()
    }

    /// A team for every ingredient, some of which are given, so that as many grades as can be with these grow
    /// something.
    #[must_use]
    pub fn share_out(&self, given: &[(IngredientAt, Team)]) -> Vec<Team> {
        let fixed = self.grown_by(given);
        let seats: Vec<Seat> = fixed.seats().collect();
        let matched = fixed.greatest_matching(&seats);
        let own = |at: IngredientAt| {
            let ingredient = &fixed[at];
            let is_own = |seat: Option<usize>| seat.is_some_and(|seat| seats[seat].of == at);
            let seated = matched.iter().position(|seat| is_own(*seat));
            let seated = seated.map(|grade| Team::from(GradeAt(grade)));
            let team = ingredient.only_team().or(seated);
            team.or(ingredient.teams.first().copied())
        };
        self.ingredient_positions().filter_map(own).collect()
    }

    /// All seats, in the order of the ingredients.
    pub fn seats(&self) -> impl Iterator<Item = Seat> {
        let of = |of: IngredientAt| -> Vec<Seat> {
            let ingredient = &self[of];
            let in_it = |team: &Team| {
                let team = *team;
                team.grades().map(move |grade| (grade, team))
            };
            let all = ingredient.teams.iter().flat_map(in_it);
            match ingredient.only_team() {
                Some(_) => all
                    .map(|one| Seat {
                        of,
                        open_to: vec![one],
                    })
                    .collect(),
                None => vec![Seat {
                    of,
                    open_to: all.collect(),
                }],
            }
        };
        self.ingredient_positions().flat_map(of)
    }

    /// By grade: the position of the seat that is matched with it, in a greatest matching.
    fn greatest_matching(&self, seats: &[Seat]) -> Vec<Option<usize>> {
        let mut taken: Vec<Option<usize>> = vec![None; self.grades.len()];
        for seat in 0..seats.len() {
            gives_to_another(seats, seat, &mut taken, &mut vec![false; self.grades.len()]);
        }
        taken
    }

    /// How many grades the file gives an ingredient that no other grade may grow in their place.
    #[must_use]
    pub fn grades_with_their_own(&self) -> usize {
        let only = self.ingredients.iter().filter_map(Ingredient::only_team);
        let grades: BTreeSet<GradeAt> = only.flat_map(Team::grades).collect();
        grades.len()
    }

    /// True if no grade ever grows two ingredients: as many grades as there are seats must grow something.
    #[must_use]
    pub fn each_grade_grows_one(&self) -> bool {
        self.most_grades() == self.seats().count()
    }
}

/// Gives a seat to a grade that has none yet, if need be by moving others on.
fn gives_to_another(
    seats: &[Seat],
    seat: usize,
    taken: &mut [Option<usize>],
    seen: &mut [bool],
) -> bool {
    for (GradeAt(grade), _) in &seats[seat].open_to {
        if std::mem::replace(&mut seen[*grade], true) {
            continue;
        }
        let free = match taken[*grade] {
            None => true,
            Some(other) => gives_to_another(seats, other, taken, seen),
        };
        if free {
            taken[*grade] = Some(seat);
            return true;
        }
    }
    false
}
