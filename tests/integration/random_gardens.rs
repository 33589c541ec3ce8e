//! Random gardens: every plan that the program makes passes the checker, comes out the same
//! twice, and has every aim proved.

mod crops;
mod dice;
pub mod make;
mod school;
mod sky;

use std::time::Duration;

use tureen::candidates::Candidates;
use tureen::checker::check;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::Plan;

use make::{LARGER, Size, TINY, garden};

/// A time within which every random garden must be proved; no solve should come near it.
const AMPLE: Duration = Duration::from_secs(60);

fn options(seed: u64) -> Options {
    Options {
        time_limit: AMPLE,
        concession_years: (seed % 2) as u32,
    }
}

/// What is wrong with the outcome of one garden, in words.
fn faults(garden: &Garden, outcome: Outcome) -> Result<Option<Plan>, String> {
    match outcome {
        Outcome::Planned(plan) => {
            if let Some(aim) = plan.aims.iter().find(|a| !a.proved()) {
                return Err(format!("not proved: {aim:?}"));
            }
            match check(garden, plan) {
                Ok(checked) => Ok(Some(checked.plan().clone())),
                Err(violations) => Err(format!("{violations:?}")),
            }
        }
        Outcome::Impossible(why) => {
            let named = why.possible_together.len() + why.left_out.len();
            let all_named = named == garden.ingredients.len();
            match why.proved && all_named && !why.left_out.is_empty() {
                true => Ok(None),
                false => Err(format!("{why:?}")),
            }
        }
        Outcome::OutOfTime | Outcome::Failed(_) => Err(format!("{outcome:?}")),
    }
}

/// Solves the gardens of some seeds; how many of them have a plan.
fn plans(seeds: std::ops::Range<u64>, size: &Size) -> usize {
    let mut wrong = Vec::new();
    let mut planned = 0;
    for seed in seeds {
        let garden = garden(seed, size);
        match faults(&garden, solve(&garden, &options(seed))) {
            Ok(Some(_)) => planned += 1,
            Ok(None) => {}
            Err(words) => wrong.push(format!("seed {seed}: {words}")),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    planned
}

#[test]
fn plans_of_tiny_gardens_pass_the_checker_with_every_aim_proved() {
    assert!(plans(10_000..10_100, &TINY) > 40);
}

#[test]
fn plans_of_larger_gardens_pass_the_checker_with_every_aim_proved() {
    assert!(plans(0..12, &LARGER) > 4);
}

#[test]
fn the_same_garden_has_the_same_plan() {
    for seed in 0..4 {
        let garden = garden(seed, &LARGER);
        let once = solve(&garden, &options(seed));
        assert_eq!(once, solve(&garden.clone(), &options(seed)), "seed {seed}");
    }
}

#[test]
fn hunt() {
    let Ok(range) = std::env::var("HUNT") else {
        return;
    };
    let mut it = range.split('-').map(|x| x.parse::<u64>().unwrap());
    let (from, to) = (it.next().unwrap(), it.next().unwrap());
    let large = std::env::var("LARGE").is_ok();
    let mut worst = (Duration::ZERO, 0);
    let mut planned = 0;
    let mut times = Vec::new();
    for seed in from..to {
        let garden = garden(seed, if large { &LARGER } else { &TINY });
        let t = std::time::Instant::now();
        let o = solve(
            &garden,
            &Options {
                time_limit: Duration::from_secs(30),
                ..options(seed)
            },
        );
        let e = t.elapsed();
        times.push(e);
        if e > worst.0 {
            worst = (e, seed);
        }
        if e > Duration::from_secs(3) {
            println!("slow seed {seed}: {e:?}");
        }
        match faults(&garden, o) {
            Ok(Some(_)) => planned += 1,
            Ok(None) => {}
            Err(w) => println!("WRONG seed {seed}: {w}"),
        }
    }
    times.sort();
    println!(
        "planned {planned} of {}, worst {worst:?} median {:?} p95 {:?}",
        to - from,
        times[times.len() / 2],
        times[times.len() * 95 / 100]
    );
}

#[test]
fn show() {
    let Ok(seed) = std::env::var("SEED") else {
        return;
    };
    let seed = seed.parse().unwrap();
    let g = garden(seed, &TINY);
    for i in &g.ingredients {
        println!(
            "{} grade {:?} {:?} {:?} max {} least {:?} target {:?}",
            i.name,
            i.grade,
            i.source,
            i.methods,
            i.max_sowings,
            i.least_share,
            i.target(g.feast.portions)
        );
    }
    println!("{:?} {:?}", g.growing, g.shelf);
    for gr in &g.grades {
        for c in &gr.classes {
            println!(
                "{} {} {:?}",
                c.name,
                c.children,
                c.slots
                    .iter()
                    .map(|s| (s.day, s.every_weeks, s.minutes))
                    .collect::<Vec<_>>()
            );
        }
    }
    let all = Candidates::enumerate(&g);
    let c = all.clone();
    println!(
        "all {} best {} plots {:?}",
        all.all.len(),
        c.all.len(),
        c.plots
    );
    for c in &c.all {
        let m: Vec<String> = c
            .tasks
            .iter()
            .map(|t| {
                format!(
                    "{}:{:.0}-{:.0}/{}",
                    t.date.format("%m%d"),
                    t.effort
                        .minutes(c.amounts.blocks.0 * c.amounts.block.plants)
                        .0,
                    t.effort
                        .minutes(c.amounts.blocks.1 * c.amounts.block.plants)
                        .0,
                    g.session_minutes(t.class, t.date).0
                )
            })
            .collect();
        println!(
            "{:?} {:?} weeks {:?} strips {} blocks {:?} low {:.2} plots {:?} shelf {:?} {:?} ready {} fr {} oth {} late {} {}",
            c.ingredient.0,
            c.method,
            c.bed_weeks,
            c.amounts.block.strips,
            c.amounts.blocks,
            c.amounts.low.0,
            c.plots.iter().collect::<Vec<_>>(),
            c.shelf.map(|s| (s.sown, s.potted, s.out, s.warm_until)),
            c.amounts.levels.len(),
            c.ready.len(),
            c.fragile,
            c.by_others,
            c.idle_weeks,
            m.join(" ")
        );
    }
}
