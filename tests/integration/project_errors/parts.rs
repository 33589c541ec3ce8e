//! Into how many parts beds may fall that are not alike for every crop.

use tureen::candidates::plots;

use super::edges::{WIDTH, loaded, told, with};

/// Each of 50 beds has a part with trellis and one without, and what stands in the midst of a part makes three of it.
#[test]
fn what_stands_in_the_beds_makes_no_more_parts_than_can_be_planned() {
    let bed = |k: u32| {
        format!("\n[[bed]]\nid = \"more {k}\"\nlength_m = 3.6\nwidth_m = 1\ntrellis_m = 1.8\n")
    };
    let growing = |k: u32| {
        format!(
            "\n[[growing]]\ncrop = \"rye\"\nbed = \"more {k}\"\nfirst_strip = 3\nstrips = 2\n\
             sown = 2027-05-01\ncleared = 2027-08-30\n"
        )
    };
    let file = |n: u32| {
        let first = with(WIDTH, &format!("{WIDTH}\ntrellis_m = 1.8"));
        let beds = (1..50).map(bed).collect::<String>();
        let growing = (1..=n).map(growing).collect::<String>();
        format!("{first}{beds}{growing}")
    };
    let garden = loaded(&file(14));
    assert_eq!((garden.beds.len(), garden.former.len()), (50, 14));
    assert_eq!(plots(&garden).len(), 128);
    let told = told(&file(15));
    assert!(told.contains("into 130 parts; at most 128"), "{told}");
    // It stands at the last of them.
    let text = file(15);
    let before = &text[..text.rfind("[[growing]]").unwrap()];
    let line = before.lines().count() + 1;
    assert!(told.contains(&format!("garden.toml:{line}:1")), "{told}");
}
