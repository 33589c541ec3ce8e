//! Care: nothing hardens off in a gap (candidates keep that); other plants that need daily
//! care in a gap use it, and someone must be found.

use crate::candidates::CandidateAt;
use crate::model::columns::of;
use crate::model::program::Program;

use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    for (gap, used) in columns.gap_used.iter().enumerate() {
        for at in garden.ingredient_positions() {
            let touching: Vec<CandidateAt> = of(candidates, at)
                .filter(|(_, c)| c.gaps.contains(&gap))
                .map(|(k, _)| k)
                .collect();
            // One planting of them at the most is made, so one row says as much as one for each, and is closer.
            if garden[at].most_plantings() == 1 {
                let mut row: Vec<_> = touching.iter().map(|k| (columns.made[k.0], 1.0)).collect();
                if !row.is_empty() {
                    row.push((*used, -1.0));
                    program.at_most(row, 0.0);
                }
            } else {
                for k in touching {
                    program.at_most(vec![(columns.made[k.0], 1.0), (*used, -1.0)], 0.0);
                }
            }
        }
    }
}
