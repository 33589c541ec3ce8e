//! Amounts: plants in a block of strips, seeds that make them sure, flats, kilograms.

use crate::garden::{
    Crop, Garden, IndoorStart, Ingredient, IngredientAt, Method, Printed, Rows, Seedlings, Team,
};
use crate::units::{Centimetres, Kilograms, Metres, STRIP, Share};

/// The share of seeds and seedlings lost under children's hands, beside those that do not
/// germinate (common practice: 10 to 25 %).
pub const CHILD_LOSS: Share = Share(0.15);

/// The chance with which the seeds give the plants.
pub const SURE: Share = Share(0.9);

/// Potted plants kept beyond those that go into the bed (common practice).
const SPARE_POTS: Share = Share(0.1);

/// The most strips of a block whose rows come out whole.
const LARGEST_BLOCK: u32 = 10;

/// Forgiveness for spacings written to a millimetre, in centimetres.
const MILLIMETRE: f64 = 0.1;

/// The smallest piece of bed in which a crop's rows come out whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Block {
    /// Strips of bed length.
    pub strips: u32,
    /// Whole plants in it.
    pub plants: u32,
}

impl Block {
    /// The block of a crop by how its rows lie; `None` where not one plant stands.
    #[must_use]
    pub fn of(crop: &Crop, rows: impl Into<Rows>) -> Option<Self> {
        match rows.into() {
            Rows::Across(width) => Self::across(crop, width),
            Rows::AlongTrellis => Self::along_trellis(crop),
        }
    }

    /// Plants on so many strips, in whole blocks.
    #[must_use]
    pub fn plants_on(self, strips: u32) -> u32 {
        (strips / self.strips.max(1)).saturating_mul(self.plants)
    }

    /// How many rows of a crop lie in it.
    #[must_use]
    pub fn rows(self, crop: &Crop, rows: impl Into<Rows>) -> u32 {
        match rows.into() {
            Rows::Across(_) => rows_across(self.strips, crop),
            Rows::AlongTrellis => 1,
        }
    }

    /// The block of a crop in one row along a trellis: the fewest strips into which its spacing goes whole, up to
    /// ten; else those that hold one plant.
    fn along_trellis(crop: &Crop) -> Option<Self> {
        let Centimetres(in_row) = crop.spacing.in_row;
        let strip = STRIP.0 * 100.0;
        if in_row <= 0.0 {
            return None;
        }
        let strips = strips_of_whole(in_row);
        Some(Self {
            strips,
            plants: whole(f64::from(strips) * strip, in_row),
        })
    }

    /// The block of a crop in a bed of a given width: rows run across the bed at the crop's
    /// spacing, half a spacing from each edge. It takes as many strips as make the rows come
    /// out whole, up to ten; else the strips that hold one row. `None` if the bed is
    /// narrower than half a spacing, where not one plant stands.
    fn across(crop: &Crop, width: Metres) -> Option<Self> {
        let Centimetres(in_row) = crop.spacing.in_row;
        let Centimetres(between) = crop.spacing.between_rows;
        let width = width.0 * 100.0;
        if in_row <= 0.0 || between <= 0.0 || width + MILLIMETRE < in_row / 2.0 {
            return None;
        }
        let strips = strips_of_whole(between);
        let rows = rows_across(strips, crop);
        Some(Self {
            strips,
            plants: rows.saturating_mul(whole(width, in_row)),
        })
    }
}

/// How many rows of a crop lie across some strips.
fn rows_across(strips: u32, crop: &Crop) -> u32 {
    whole(
        f64::from(strips) * STRIP.0 * 100.0,
        crop.spacing.between_rows.0,
    )
}

/// The fewest strips into which a spacing goes whole, up to ten; else those that hold it once.
fn strips_of_whole(spacing: f64) -> u32 {
    let strip = STRIP.0 * 100.0;
    (1..=LARGEST_BLOCK)
        .find(|n| is_multiple(f64::from(*n) * strip, spacing))
        .unwrap_or(((spacing - MILLIMETRE) / strip).ceil().max(1.0) as u32)
}

/// How often a spacing goes into a length, at least once.
fn whole(length: f64, spacing: f64) -> u32 {
    (((length + MILLIMETRE) / spacing).floor() as u32).max(1)
}

/// True if a length is one or more whole spacings.
fn is_multiple(length: f64, spacing: f64) -> bool {
    let times = (length / spacing).round();
    times >= 1.0 && (length - times * spacing).abs() <= MILLIMETRE
}

/// How rows of a crop lie in the widest bed: along a trellis where it climbs and no wider bed has one.
#[must_use]
pub fn widest_rows(garden: &Garden, crop: &Crop) -> Option<Rows> {
    let wide = || garden.beds.iter().filter(|bed| !bed.along_trellis);
    let climbs_there = wide().any(|bed| bed.trellis_strips() > 0);
    if crop.needs.trellis && !climbs_there && garden.beds.iter().any(|bed| bed.along_trellis) {
        return Some(Rows::AlongTrellis);
    }
    let widths = wide().map(|bed| bed.width);
    widths.reduce(Metres::max).map(Rows::Across)
}

/// What a number of kept plants takes and gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Need {
    /// Plants that stand in the bed.
    pub plants: u32,
    /// Seeds (pieces, bought plants) to have.
    pub seeds: u32,
    /// Flats on the shelf from sowing until potting up (or planting out); 0 if not indoor.
    pub flats_sown: u32,
    /// Flats on the shelf after potting up; equal to `flats_sown` where nothing is potted up.
    pub flats_kept: u32,
    /// Usable harvest in a poor year, of one pick.
    pub low: Kilograms,
    /// Usable harvest in an ordinary year, of one pick.
    pub expected: Kilograms,
}

impl Need {
    /// Seedlings that are potted up: the plants and a tenth more, if so many were sown.
    #[must_use]
    pub fn potted(&self) -> u32 {
        let spare = (f64::from(self.plants) * SPARE_POTS.0).ceil() as u32;
        self.plants.saturating_add(spare).min(self.seeds)
    }
}

/// What `plants` plants of an ingredient take and give when grown by `method` by `children`.
///
/// Seed is sown singly, a cell a seed, and in such numbers that the plants are 90 % sure and
/// every child sows its own. Pieces and bought plants are counted as they will stand.
#[must_use]
pub fn need(ingredient: &Ingredient, method: Method, children: u32, plants: u32) -> Need {
    let crop = &ingredient.crop;
    let seeds = match method {
        Method::Direct | Method::Indoor => {
            let grows = Share(crop.germinates.0 * (1.0 - CHILD_LOSS.0));
            let own = ingredient.each_child_sows.saturating_mul(children);
            seeds_for(plants, grows, SURE).max(own)
        }
        Method::Pieces | Method::Bought => plants,
        Method::Seedlings | Method::Growing | Method::Patch => 0,
    };
    let one_pick = f64::from(plants) * crop.picking.one_pick_share.0 * crop.yields.usable.0;
    let need = Need {
        plants,
        seeds,
        flats_sown: 0,
        flats_kept: 0,
        low: crop.yields.low * one_pick,
        expected: crop.yields.expected * one_pick,
    };
    match (method, &crop.indoor) {
        (Method::Indoor, Some(indoor)) => with_flats(need, indoor),
        _ => need,
    }
}

/// The same of an ingredient of a garden that a team grows. Seedlings that stand on the shelf already take their
/// flats as many as they are, whatever is planted of them; of those not yet in pots only what is kept is potted up.
#[must_use]
pub fn need_in(garden: &Garden, at: IngredientAt, team: Team, method: Method, plants: u32) -> Need {
    let ingredient = &garden[at];
    let need = need(ingredient, method, garden.children_of(team), plants);
    match (garden.seedlings_of(at), &ingredient.crop.indoor) {
        (Some(seedlings), Some(indoor)) if method == Method::Seedlings => {
            with_flats_of(need, indoor, seedlings)
        }
        _ => need,
    }
}

/// The plants on the strips of what was printed; `None` for what stands in no bed, or where no plant fits across it.
#[must_use]
pub fn printed_plants(garden: &Garden, printed: &Printed) -> Option<u32> {
    let (bed, _) = printed.places.first()?;
    let block = Block::of(&garden[printed.ingredient].crop, garden[*bed].rows())?;
    Some(block.plants_on(printed.strips()))
}

/// Adds the flats that seedlings take.
fn with_flats_of(need: Need, indoor: &IndoorStart, seedlings: Seedlings) -> Need {
    let flats_sown = seedlings.flats(indoor);
    let of_all = Need {
        seeds: seedlings.count,
        ..need
    };
    let flats_kept = match (seedlings.potted_up, indoor.pots_per_flat) {
        (None, Some(pots)) => of_all.potted().div_ceil(pots.max(1)),
        (Some(_), _) | (None, None) => flats_sown,
    };
    Need {
        flats_sown,
        flats_kept,
        ..need
    }
}

/// Adds the flats that the seeds, and later the pots, take.
fn with_flats(need: Need, indoor: &IndoorStart) -> Need {
    let flats_sown = need.seeds.div_ceil(indoor.cells_per_flat.max(1));
    Need {
        flats_sown,
        flats_kept: indoor
            .pots_per_flat
            .map_or(flats_sown, |pots| need.potted().div_ceil(pots.max(1))),
        ..need
    }
}

/// The smallest number of seeds of which, with a chance of at least `sure`, `plants` or more
/// grow, when each grows with the chance `grows` (held to 1 % at the least).
///
/// Exact. The seed that gives the last plant wanted has a number with a negative binomial
/// distribution: weights `w(plants) = grows^plants`, `w(n+1) = w(n) (1-grows) n/(n+1-plants)`.
/// They are summed until the chance is reached; a common factor keeps them from vanishing
/// where there are thousands of plants.
#[must_use]
pub fn seeds_for(plants: u32, grows: Share, sure: Share) -> u32 {
    const LARGE: f64 = 1e250;
    let grows = grows.0.clamp(0.01, 1.0);
    let sure = sure.0.min(1.0 - 1e-9) - 1e-12;
    let wanted = f64::from(plants);
    let mut log_factor = wanted * grows.ln();
    let mut factor = log_factor.exp();
    let (mut n, mut weight, mut sum) = (wanted, 1.0, 1.0);
    while plants > 0 && sum * factor < sure {
        weight *= (1.0 - grows) * n / (n + 1.0 - wanted);
        sum += weight;
        n += 1.0;
        if sum > LARGE {
            weight /= LARGE;
            sum /= LARGE;
            log_factor += LARGE.ln();
            factor = log_factor.exp();
        }
    }
    n as u32
}
