//! The program of each aim, as it is written for solvers outside: every name once, every row
//! with its rule, and read again it is what was solved.

mod another_engine;
mod export;
mod reader;

use std::collections::BTreeSet;
use std::sync::LazyLock;
use std::time::Duration;

use tureen::deadline::Deadline;
use tureen::facts::program::Program;
use tureen::garden::{Garden, GradeAt, SeedSize};
use tureen::handouts::mps::mps;
use tureen::model::{AimProgram, Options, Outcome, Recorded, Section, solve, solve_and_record};
use tureen::plan::{Aim, Rule};
use tureen::units::Metres;

use crate::random_gardens::make::{LARGER, TINY, garden};
use crate::support::crops::sown_crop;
use crate::support::gardens::tiny_garden;
use reader::Read;

/// Ample time: no solve should come near it.
fn options() -> Options {
    Options {
        deadline: Deadline::after(Duration::from_secs(60)),
        ..Options::default()
    }
}

fn recorded(garden: &Garden) -> Recorded {
    solve_and_record(garden, &options())
}

/// Gardens of all kinds with their programs, solved once for all tests.
fn some_programs() -> &'static [(Garden, AimProgram)] {
    static MADE: LazyLock<Vec<(Garden, AimProgram)>> = LazyLock::new(|| {
        let gardens = [tiny_garden()]
            .into_iter()
            .chain((0..30).map(|seed| garden(seed, &TINY)))
            .chain([garden(3, &LARGER)]);
        gardens
            .flat_map(|garden| {
                let programs = solve_and_record(&garden, &Options::default()).programs;
                programs.into_iter().map(move |p| (garden.clone(), p))
            })
            .collect()
    });
    &MADE
}

/// Names that stand twice or are no single word.
fn bad_names(names: &[String]) -> Vec<&String> {
    let mut seen = BTreeSet::new();
    names
        .iter()
        .filter(|name| {
            let is_word = name.len() > 2 && !name.contains(char::is_whitespace);
            !seen.insert(name.as_str()) || !is_word
        })
        .collect()
}

#[test]
fn every_name_is_one_word_and_stands_once() {
    for (garden, solved) in some_programs() {
        let program = &solved.program;
        assert_eq!(solved.column_names.len(), program.columns().len());
        assert_eq!(solved.row_names.len(), program.rows().len());
        for names in [&solved.column_names, &solved.row_names] {
            assert_eq!(bad_names(names), Vec::<&String>::new(), "{}", garden.name);
        }
    }
    let names = ["made.pea.1", "made.pea.1", "", "two words"].map(str::to_owned);
    assert_eq!(bad_names(&names).len(), 3);
}

#[test]
fn ingredients_of_one_spelling_keep_their_names_apart() {
    let mut garden = tiny_garden();
    garden.ingredients[0].name = "pea / bean".to_owned();
    garden.ingredients[1].name = "pea - bean".to_owned();
    for solved in recorded(&garden).programs {
        assert_eq!(bad_names(&solved.column_names), Vec::<&String>::new());
        for name in ["in-pot.pea---bean", "in-pot.pea---bean'"] {
            assert!(solved.column_names.iter().any(|n| n == name), "{name}");
        }
    }
}

#[test]
fn every_row_tells_its_rule_and_every_section_its_rows() {
    let mut seen = BTreeSet::new();
    for (_, solved) in some_programs() {
        let mut names = solved.row_names.iter();
        for (section, rows) in solved.program.sections() {
            let begins = match section {
                Section::Rule(rule) => rule.name(),
                Section::Held(_) => "held.",
                Section::Forbidden => "forbidden.",
            };
            for _ in rows {
                let name = names.next().unwrap();
                assert!(name.starts_with(begins), "{name}");
                seen.insert(begins);
            }
        }
        assert_eq!(names.next(), None);
    }
    let rules = [Rule::Space, Rule::Shelf, Rule::Sessions, Rule::Amount];
    for begins in rules
        .map(Rule::name)
        .into_iter()
        .chain(["held.", "readiness", "care"])
    {
        assert!(seen.contains(begins), "no row of {begins}");
    }
}

#[test]
fn what_is_written_is_what_was_solved() {
    for (garden, solved) in some_programs() {
        let read = Read::of(&mps(garden, &Program::of(solved)));
        assert_eq!(
            read,
            Read::from(solved),
            "{}, {:?}",
            garden.name,
            solved.result
        );
    }
}

#[test]
fn no_name_breaks_a_line_or_makes_one_too_long() {
    let mut garden = tiny_garden();
    garden.name = "a\nROWS".to_owned();
    garden.ingredients[0].name = "\u{43c}\n".repeat(300);
    garden.beds[0].id = "b\n".repeat(900);
    for solved in recorded(&garden).programs {
        let text = mps(&garden, &Program::of(&solved));
        assert!(text.lines().all(|line| line.len() < 1000));
        assert_eq!(Read::of(&text), Read::from(&solved));
    }
}

#[test]
fn recording_changes_nothing_and_keeps_one_program_for_each_aim() {
    let garden = tiny_garden();
    let Recorded { outcome, programs } = recorded(&garden);
    assert_eq!(outcome, solve(&garden, &options()));
    let Outcome::Planned(plan) = outcome else {
        panic!("{outcome:?}");
    };
    let results: Vec<_> = programs.iter().map(|p| p.result).collect();
    assert_eq!(results, plan.aims);
    let aims: Vec<Aim> = results.iter().map(|r| r.aim).collect();
    assert!(aims.into_iter().eq(Aim::of(&garden)));
}

#[test]
fn of_an_impossible_garden_the_first_program_is_kept() {
    let mut garden = tiny_garden();
    garden.shelf.flats = 0;
    let Recorded { outcome, programs } = recorded(&garden);
    assert!(matches!(outcome, Outcome::Impossible(_)), "{outcome:?}");
    let [first] = &programs[..] else {
        panic!("{} programs", programs.len());
    };
    assert_eq!(first.result.aim, Aim::InThePot);
    assert_eq!(first.result.value, 1.0);
}

#[test]
fn a_file_looks_like_this() {
    let garden = tiny_garden();
    let programs = recorded(&garden).programs;
    insta::assert_snapshot!(mps(&garden, &Program::of(&programs[10])));
}

/// Two crops whose least shares want 3 strips each, of five: only where they are of one family that
/// must wait, a row holds all that they take to the strips, whatever their days.
#[test]
fn a_family_that_must_wait_has_rows_of_its_own() {
    let rows = |family: &str, years_hard: u32| {
        let mut garden = tiny_garden();
        // Soon ripe and long kept, so that one may follow the other.
        let crop = &mut garden.ingredients[0].crop;
        *crop = sown_crop("bean", 20.0);
        crop.picking.storage_days = 70;
        let mut pea = garden.ingredients[0].clone();
        (pea.name, pea.teams) = ("pea".to_owned(), vec![GradeAt(1).into()]);
        pea.crop.rotation.family = family.to_owned();
        garden.ingredients[1] = pea;
        for ingredient in &mut garden.ingredients {
            ingredient.crop.rotation.years_hard = years_hard;
            ingredient.crop.seed_size = SeedSize::Large;
        }
        garden.beds.truncate(1);
        garden.beds[0].length = Metres(5.0 * 0.3);
        let programs = recorded(&garden).programs;
        let sections = programs[0].program.sections();
        let own = sections.filter(|(section, _)| *section == Section::Rule(Rule::Rotation));
        own.map(|(_, rows)| rows.len()).sum::<usize>()
    };
    assert!(rows("bean", 1) > 0);
    assert_eq!((rows("bean", 0), rows("pea", 1)), (0, 0));
}
