//! Holds every ingredient to a share of its target, in shares and in whole blocks.

use super::program::Program;
use super::rules::{Floor, tighten};
use super::setting::Setting;

/// Holds every ingredient to a share of its target at low yield, in columns and, for ingredients of one
/// sowing, in blocks.
/// Returns the fewest blocks of each candidate that is made.
pub fn at_least(program: &mut Program, setting: &Setting<'_>, share: f64) -> Vec<u32> {
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    program.raise(columns.least_share, share - 1e-9);
    let mut fewest: Vec<u32> = Vec::with_capacity(candidates.all.len());
    for (k, c) in candidates.numbered() {
        let (least, most) = c.amounts.blocks;
        let ingredient = &garden[c.ingredient];
        let wanted = ingredient.target(garden.feast.portions) * (share - 1e-9);
        let blocks = match ingredient.most_plantings() {
            1 => ((wanted / c.amounts.low).ceil().max(0.0) as u32).max(least),
            _ => least,
        };
        fewest.push(blocks);
        if blocks > most {
            program.at_most(vec![(columns.made[k.0], 1.0)], 0.0);
        } else if let (Some(col), true) = (columns.blocks[k.0], blocks > least) {
            program.at_least(
                vec![(col, 1.0), (columns.made[k.0], -f64::from(blocks))],
                0.0,
            );
        }
    }
    let floor = Floor {
        fewest: &fewest,
        share: share - 1e-9,
    };
    tighten(program, setting, &floor);
    fewest
}
