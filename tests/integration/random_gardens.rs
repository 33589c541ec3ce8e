//! Random gardens: every plan that the program makes passes the checker, comes out the same
//! twice, and has every aim proved.

mod crops;
mod dice;
pub mod make;
mod school;
mod sky;

use tureen::candidates::Candidates;
use tureen::model::{Options, Outcome, solve};

use make::{Size, TINY, garden};

#[test]
fn mix() {
    let t = std::time::Instant::now();
    for seed in 0..60 {
        let g = garden(seed, &TINY);
        let c = Candidates::enumerate(&g);
        let per: Vec<usize> = g
            .ingredient_positions()
            .map(|at| c.all.iter().filter(|c| c.ingredient == at).count())
            .collect();
        let blocks: Vec<_> = g
            .ingredient_positions()
            .map(|at| {
                c.all
                    .iter()
                    .filter(|c| c.ingredient == at)
                    .map(|c| c.amounts.blocks)
                    .max()
            })
            .collect();
        let t1 = std::time::Instant::now();
        let o = solve(&g, &Options::default());
        let what = match &o {
            Outcome::Planned(p) => {
                format!("{:?}", p.aims.iter().map(|a| a.value).collect::<Vec<_>>())
            }
            Outcome::Impossible(i) => format!("impossible {:?}", i.possible_together.len()),
            o => format!("{o:?}"),
        };
        println!(
            "{seed} {per:?} {blocks:?} {:?} {:?} {what}",
            g.ingredients
                .iter()
                .map(|i| i.max_sowings)
                .collect::<Vec<_>>(),
            t1.elapsed()
        );
    }
    println!("{:?}", t.elapsed());
}

#[test]
fn show() {
    let seed = std::env::var("SEED").map_or(0, |c| c.parse().unwrap());
    let g = garden(seed, &TINY);
    for i in &g.ingredients {
        println!(
            "{} {:?} {:?} max {} least {:?} target {:?}",
            i.name,
            i.source,
            i.methods,
            i.max_sowings,
            i.least_share,
            i.target(g.feast.portions)
        );
    }
    println!("{:?}", g.growing);
    let c = Candidates::enumerate(&g);
    for c in &c.all {
        println!(
            "{:?} {:?} weeks {:?} {:?} plots {:?} shelf {:?} ready {} fr {} oth {} late {}",
            c.ingredient,
            c.method,
            c.bed_weeks,
            c.amounts,
            c.plots.iter().collect::<Vec<_>>(),
            c.shelf,
            c.ready.len(),
            c.fragile,
            c.by_others,
            c.idle_weeks
        );
    }
    match solve(
        &g,
        &Options {
            concession_years: (seed % 2) as u32,
            ..Options::default()
        },
    ) {
        Outcome::Planned(p) => println!("{:#?}", tureen::checker::check(&g, p).map(|_| ())),
        o => println!("{o:?}"),
    }
}
