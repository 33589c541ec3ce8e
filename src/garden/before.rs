//! What strips of a bed carried before, and from when on they are free of it.

use chrono::Datelike;

use crate::calendar::Date;

use super::Garden;
use super::at::BedAt;
use super::crop::Crop;
use super::former::Former;
use super::strips::Strips;

impl Garden {
    /// What stands for no ingredient on any of some strips, in the order of the file.
    pub fn former_on(&self, bed: BedAt, strips: Strips) -> impl Iterator<Item = &Former> {
        let all = self.former.iter();
        all.filter(move |former| former.bed == bed && former.strips.meets(strips))
    }

    /// The first day on which something new may come on some strips of a bed; `None` if that is no matter of
    /// what the file says to stand there for no ingredient, nor of what was lost there.
    #[must_use]
    pub fn free_from(&self, bed: BedAt, strips: Strips) -> Option<Date> {
        let former = self.former_on(bed, strips).map(Former::free_from).max();
        let former = former.max(self.free_of_lost(bed, strips));
        self[bed].free_from.max(former)
    }

    /// How many strips of a bed are free, on a day, of what stood there for no ingredient.
    #[must_use]
    pub fn strips_free_on(&self, bed: BedAt, day: Date) -> u32 {
        let strips = Strips::from_start(self[bed].strips());
        let is_free = |strip| {
            let one = Strips {
                first: strip,
                count: 1,
            };
            self.free_from(bed, one).is_none_or(|free| free <= day)
        };
        strips.iter().map(|strip| u32::from(is_free(strip))).sum()
    }

    /// Years and families that some strips of a bed carried.
    pub fn grew_on(&self, bed: BedAt, strips: Strips) -> impl Iterator<Item = (i32, &str)> {
        let years = self[bed].grew.iter();
        let before = years.flat_map(|(year, of_year)| of_year.iter().map(|f| (*year, f.as_str())));
        let former = self.former_on(bed, strips);
        before.chain(former.map(|f| (f.cleared.year(), f.family.as_str())))
    }

    /// True if some strips of a bed carried the crop's family within the years that it must stay away,
    /// seen from a planting on `day`.
    #[must_use]
    pub fn is_tired_of(&self, (bed, strips): (BedAt, Strips), crop: &Crop, day: Date) -> bool {
        self.years_since((bed, strips), crop, day)
            .is_some_and(|passed| crop.rotation.must_wait(passed))
    }

    /// Years from the last time that some strips of a bed carried the crop's family to a planting on `day`.
    #[must_use]
    pub fn years_since(
        &self,
        (bed, strips): (BedAt, Strips),
        crop: &Crop,
        day: Date,
    ) -> Option<i32> {
        self.grew_on(bed, strips)
            .filter(|(_, family)| *family == crop.rotation.family)
            .map(|(year, _)| day.year() - year)
            .filter(|passed| *passed >= 0)
            .min()
    }
}
