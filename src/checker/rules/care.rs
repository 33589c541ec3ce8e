//! Nothing hardens off while nobody is on site.

use crate::checker::fault::Fault;
use crate::checker::run::Run;

/// All faults: hardening that shares a day with a gap.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for planting in &run.plantings {
        for step in &planting.steps {
            let (from, to) = (run.horizon.date(step.first), run.horizon.date(step.last));
            if !step.plan.kind.facts().is_watched || run.has_begun(step) {
                continue;
            }
            faults.extend(run.gaps.iter().filter(|g| g.touches(from, to)).map(|gap| {
                Fault::HardensUnattended {
                    planting: planting.name.clone(),
                    gap: *gap,
                }
            }));
        }
    }
    faults
}
