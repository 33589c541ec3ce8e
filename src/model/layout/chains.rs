//! One plot, strip by strip: each strip carries plantings one after the other, and two that clash
//! never share one. Exact: where plantings only clash because they stand at once, counting
//! strips day by day would do; where families must wait it would not.

use std::collections::HashSet;

use super::chosen::PieceAt;

/// A planting on the plot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Use {
    /// Which one.
    pub piece: PieceAt,
    /// Strips that it wants.
    pub strips: u32,
}

/// What a strip carries, in order of time.
pub type Chain = Vec<PieceAt>;

/// The search was given up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GaveUp;

/// The search takes so many steps at the most. In what was seen it took under a hundred.
const MOST_STEPS: u32 = 20_000;
/// More plantings than this are not looked at on one plot.
const MOST_USES: usize = 128;

/// What each strip of a plot carries; `None` if the plot is too small. `uses` are in order of
/// time, by first day; `clash` tells of two pieces whether no strip can carry both.
///
/// The plantings are put on strips in order of time. All that matters of a strip is which of those
/// that are to come it can still carry, so strips that are alike in this are one group, and
/// every way of sharing a planting out over the groups is tried, the groups that are worth
/// least first. A state from which the rest failed once is not tried again.
///
/// # Errors
/// Neither was found within the limit of steps.
pub fn chains(
    uses: &[Use],
    strips: u32,
    clash: impl Fn(PieceAt, PieceAt) -> bool,
) -> Result<Option<Vec<Chain>>, GaveUp> {
    if uses.len() > MOST_USES {
        return Err(GaveUp);
    }
    let may_share = |a: &Use| {
        let free = uses.iter().enumerate();
        let free = free.filter(|(_, b)| !clash(a.piece, b.piece));
        free.map(|(k, _)| 1_u128 << k).sum()
    };
    let fresh = Strip {
        can_carry: u128::MAX,
        carries: 0,
    };
    let mut search = Search {
        uses,
        may_share: uses.iter().map(may_share).collect(),
        failed: HashSet::new(),
        steps: 0,
    };
    let found = search.from(0, vec![fresh; strips as usize])?;
    let chain = |strip: Strip| {
        let carried = (0..uses.len()).filter(|k| strip.carries >> k & 1 == 1);
        carried.map(|k| uses[k].piece).collect()
    };
    Ok(found.map(|strips| strips.into_iter().map(chain).collect()))
}

/// A strip in the middle of the search.
#[derive(Debug, Clone, Copy)]
struct Strip {
    /// The plantings that it can carry, as bits over `uses`.
    can_carry: u128,
    /// Those that it carries.
    carries: u128,
}

struct Search<'a> {
    uses: &'a [Use],
    /// Per planting: those with which it can share a strip, as bits.
    may_share: Vec<u128>,
    failed: HashSet<(usize, Vec<u128>)>,
    steps: u32,
}

impl Search<'_> {
    /// Puts the plantings from `next` on where those before them have their strips.
    fn from(&mut self, next: usize, mut strips: Vec<Strip>) -> Result<Option<Vec<Strip>>, GaveUp> {
        let Some(wanted) = self.uses.get(next).map(|u| u.strips) else {
            return Ok(Some(strips));
        };
        // Of what is over nothing matters any more.
        let to_come = u128::MAX << next;
        for strip in &mut strips {
            strip.can_carry &= to_come;
        }
        // Strips that are alike stand together, and those of least use come first; the order also makes one
        // state of all that differ by names of strips only.
        strips.sort_by_key(|s| (s.can_carry.count_ones(), s.can_carry));
        let state = (next, strips.iter().map(|s| s.can_carry).collect());
        if self.failed.contains(&state) {
            return Ok(None);
        }
        let found = self.share_out(next, wanted, 0, &strips)?;
        if found.is_none() {
            self.failed.insert(state);
        }
        Ok(found)
    }

    /// Puts the `left` strips of a planting on the groups of strips from `from` on.
    fn share_out(
        &mut self,
        which: usize,
        left: u32,
        from: usize,
        strips: &[Strip],
    ) -> Result<Option<Vec<Strip>>, GaveUp> {
        self.steps += 1;
        if self.steps > MOST_STEPS {
            return Err(GaveUp);
        }
        if left == 0 {
            return self.from(which + 1, strips.to_vec());
        }
        let can = |s: &Strip| s.can_carry >> which & 1 == 1;
        let Some(first) = (from..strips.len()).find(|k| can(&strips[*k])) else {
            return Ok(None);
        };
        let alike = |s: &&Strip| s.can_carry == strips[first].can_carry;
        let group = strips[first..].iter().take_while(alike).count();
        let after = first + group;
        // Too few strips are left for the rest of the planting, however they are shared out.
        if strips[first..].iter().filter(|s| can(s)).count() < left as usize {
            return Ok(None);
        }
        // The least useful strips are spent first: the others stay free for what is to come.
        for n in (0..=group.min(left as usize)).rev() {
            let mut with = strips.to_vec();
            for strip in &mut with[first..first + n] {
                strip.can_carry &= self.may_share[which];
                strip.carries |= 1 << which;
            }
            let found = self.share_out(which, left - n as u32, after, &with)?;
            if found.is_some() {
                return Ok(found);
            }
        }
        Ok(None)
    }
}
