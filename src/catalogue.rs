//! A stand-in with a few crops, to be replaced by the real catalogue.

use crate::garden::{
    Caution, Crop, DegreeDayMethod, FrostResponse, Germination, IndoorStart, Method, Needs,
    Picking, Ripening, Rotation, SeedSize, Spacing, Sun, Yield,
};
use crate::units::{Celsius, Centimetres, Kilograms, Share};

/// All crops.
pub struct Catalogue {
    crops: Vec<Crop>,
}

impl Catalogue {
    /// The built-in catalogue.
    #[must_use]
    pub fn load() -> Self {
        use Method::{Bought, Direct, Indoor, Pieces};
        let crops = vec![
            crop("carrot", "carrot", &[Direct]),
            crop("dry bean", "legume", &[Direct]),
            crop("garlic", "onion", &[Pieces]),
            crop("tomato", "nightshade", &[Indoor, Bought]),
            crop("strawberry", "berry", &[]),
        ];
        Self { crops }
    }

    /// A crop by name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Crop> {
        self.crops.iter().find(|c| c.name == name)
    }

    /// All names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.crops.iter().map(|c| c.name.as_str())
    }

    /// All families.
    pub fn families(&self) -> impl Iterator<Item = &str> {
        self.crops.iter().map(|c| c.rotation.family.as_str())
    }
}

fn crop(name: &str, family: &str, methods: &[Method]) -> Crop {
    let indoor = methods.contains(&Method::Indoor).then_some(IndoorStart {
        weeks_lo: 5,
        weeks_hi: 7,
        cells_per_flat: 72,
        pots_per_flat: Some(16),
        warm_below: Celsius(20.0),
    });
    Crop {
        name: name.into(),
        botanical: name.into(),
        rotation: Rotation {
            family: family.into(),
            years_hard: 2,
            years_wished: 4,
        },
        methods: methods.to_vec(),
        germination: Germination::Range {
            min: Celsius(5.0),
            optimum: Celsius(20.0),
            max: Celsius(30.0),
            days: 7.0,
        },
        germinates: Share(0.75),
        indoor,
        ripening: Ripening {
            days_from_sowing: (!methods.contains(&Method::Indoor)).then_some(70.0),
            days_from_planting: methods.contains(&Method::Indoor).then_some(70.0),
            thermal_from_sowing: None,
            reference: Celsius(16.0),
            base: Celsius(5.0),
            upper: Some(Celsius(30.0)),
            method: DegreeDayMethod::Average,
        },
        frost_limit: Celsius(-2.0),
        frost: FrostResponse::Killed,
        bolting: None,
        picking: Picking {
            keeps_bearing: false,
            one_pick_share: Share(1.0),
            holds_in_ground_days: 30,
            safe_underground: true,
            cure_days: 0,
            storage_days: 60,
        },
        yields: Yield {
            low: Kilograms(0.05),
            expected: Kilograms(0.1),
            usable: Share(0.85),
        },
        spacing: Spacing {
            in_row: Centimetres(5.0),
            between_rows: Centimetres(30.0),
        },
        needs: Needs {
            sun: Sun::Full,
            soil: Centimetres(30.0),
            trellis: false,
        },
        seed_size: SeedSize::Medium,
        water: None,
        caution: Caution::default(),
    }
}
