//! The works against which the program is checked, beside those that the catalogue cites in
//! `src/catalogue/data/sources.toml`. Each says at its end how it is known.

use tureen::catalogue::Catalogue;

/// How a work is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Known {
    /// The page or table was read.
    Read,
    /// A reprint or a transcription was read.
    SecondHand,
    /// The rule is from memory; the figures were computed apart from this program.
    Memory,
    /// What growers and schools do, without a single work; from memory.
    CommonPractice,
    /// An independent program computed the figures.
    Computed,
}

/// Key, full citation, and how it is known.
pub const SOURCES: [(&str, &str, Known); 29] = [
    (
        "7CFR205.203",
        "US Code of Federal Regulations, Title 7, section 205.203: Soil fertility and crop nutrient management practice standard (National Organic Program).",
        Known::Read,
    ),
    (
        "BE1969",
        "Baskerville, G.L. and Emin, P. 1969. Rapid estimation of heat accumulation from maximum and minimum temperatures. Ecology 50(3):514-517. Figures recomputed, and checked by numerical integration.",
        Known::Memory,
    ),
    (
        "FAO56",
        "Allen, R.G., Pereira, L.S., Raes, D. and Smith, M. 1998. Crop evapotranspiration: guidelines for computing crop water requirements. FAO Irrigation and Drainage Paper 56, Rome. Examples as printed in the test code of other implementations, with example and page.",
        Known::SecondHand,
    ),
    (
        "FAO56-EQ34",
        "The same work, equations 24, 25 and 34, computed apart from this program.",
        Known::Memory,
    ),
    (
        "FAO56-WATER",
        "The same work, equations 20, 52, 58 and 66, examples 8, 20 and 28 and the rule for light rain in chapter 8. Figures recomputed from the equations.",
        Known::Memory,
    ),
    (
        "HANDS",
        "US Centers for Disease Control and Prevention on washing hands, as quoted by Clemson University Extension, HGIC 4360.",
        Known::SecondHand,
    ),
    (
        "HARDENING",
        "Hardening off takes 7 to 14 days in extension bulletins.",
        Known::CommonPractice,
    ),
    (
        "ISU-AGRON541",
        "Iowa State University, Agronomy 541, lesson 2b: growing degree day rules.",
        Known::Read,
    ),
    (
        "KSU-FREEZE",
        "Knapp, M. 2018. What is a hard freeze? Kansas State University, Weather Data Library, 6 April 2018: below 28 F for most of the United States.",
        Known::Read,
    ),
    (
        "LEAD",
        "Guidance sheet on lead in garden soil: test first.",
        Known::SecondHand,
    ),
    (
        "LYNDON-MET",
        "Lyndon State College, Vermont, meteorology notes, chapter 3: the question is printed, the answer follows from it.",
        Known::Read,
    ),
    (
        "MILTON-FREQ",
        "Frost probabilities of Milton-Freewater, Oregon, from federal normals, as reprinted by a seed house.",
        Known::SecondHand,
    ),
    (
        "MN-GDD",
        "Area crops need more growing degree days to reach maturity. Crop column, Detroit Lakes, Minnesota.",
        Known::Read,
    ),
    (
        "MNDNR-FREEZE",
        "Minnesota Department of Natural Resources, State Climatology Office. Freeze dates, normals of 1991-2020: how to read the tables.",
        Known::Read,
    ),
    (
        "NC-HOKE",
        "Hollingsworth, M. 2013. Growing your own transplants. North Carolina Cooperative Extension, Hoke County.",
        Known::Read,
    ),
    (
        "NCEI-FREEZE",
        "US National Centers for Environmental Information: last freeze and frost probability, note to the data set.",
        Known::SecondHand,
    ),
    (
        "NE-SEEDTEST",
        "Testing garden seed viability. Nebraska extension column, Columbus Telegram, 23 January 2021.",
        Known::Read,
    ),
    (
        "NIST-SP811",
        "Thompson, A. and Taylor, B.N. 2008. Guide for the use of the International System of Units (SI). NIST Special Publication 811, appendix B.8: pound avoirdupois, foot, inch, US gallon.",
        Known::Memory,
    ),
    (
        "OHIO-GDD",
        "Karhoff, S. 2023. Corn growing degree days. Ohio State University Extension, 12 June 2023.",
        Known::Read,
    ),
    (
        "POISONS",
        "Parts of crops that poison, blister skin or set off allergies, as school gardens are warned of them.",
        Known::CommonPractice,
    ),
    (
        "RULE",
        "A rule of arithmetic that needs no work: plants = seeds x germination x survival; days counted on a calendar; the chance that no seed of k grows, (1-p)^k.",
        Known::Memory,
    ),
    (
        "SCIPY",
        "SciPy 1.17.1: bisection on binom.sf(plants - 1, seeds, chance) >= 0.9.",
        Known::Computed,
    ),
    (
        "SCIPY-CHI2",
        "SciPy 1.17.1, scipy.stats.chi2_contingency without correction, of the table of hits and misses, seen and further. The interval: Krishnamoorthy, K. and Peng, J. 2011. Improved closed-form prediction intervals for binomial and Poisson distributions. Journal of Statistical Planning and Inference 141:1709-1718.",
        Known::Computed,
    ),
    (
        "SEED-86-50",
        "A seed house's page that defines the 86/50 rule and prints the inputs; the answer follows from them.",
        Known::Read,
    ),
    (
        "STUDYLIB-L3.3",
        "Table L3.3: recommended temperature and relative humidity, approximate storage life of fresh fruits. Handout, author not shown.",
        Known::SecondHand,
    ),
    (
        "UCD-HERBS",
        "Cantwell, M. and Reid, M. Herbs (fresh culinary): recommendations for maintaining postharvest quality. University of California, Davis.",
        Known::Read,
    ),
    (
        "UCIPM-DD",
        "University of California Statewide Integrated Pest Management Program. A simple way to calculate degree-days, citrus table 1.",
        Known::Read,
    ),
    (
        "UWEX-GDD",
        "Calculating growing degree days. Waushara Argus, 25 April 2018.",
        Known::Read,
    ),
    (
        "VT-426-331",
        "Virginia Cooperative Extension 426-331, older edition by Straw, A. Vegetable planting guide and recommended planting dates: frost dates and days between.",
        Known::Read,
    ),
];

/// The full citation of a key.
pub fn citation<'a>(catalogue: &'a Catalogue, key: &str) -> Option<&'a str> {
    let ours = SOURCES.iter().find(|(name, ..)| *name == key);
    ours.map(|(_, text, _)| *text)
        .or_else(|| catalogue.citation(key))
}
