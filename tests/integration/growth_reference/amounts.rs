//! Blocks, flats and kilograms, worked by hand.

use tureen::garden::{Crop, IndoorStart, Method, Rows};
use tureen::growth::{Block, need};
use tureen::units::{Celsius, Centimetres, Kilograms, Metres, Share};

use super::crops::{ingredient, plain};

fn spaced(in_row: f64, between_rows: f64) -> Crop {
    let mut crop = plain();
    crop.spacing.in_row = Centimetres(in_row);
    crop.spacing.between_rows = Centimetres(between_rows);
    crop
}

#[track_caller]
fn block(in_row: f64, between_rows: f64, width: f64, expected: Option<(u32, u32)>) {
    let found = Block::of(&spaced(in_row, between_rows), Metres(width));
    assert_eq!(found.map(|b| (b.strips, b.plants)), expected);
}

#[test]
fn a_block_holds_whole_rows_of_whole_plants() {
    block(30.0, 30.0, 1.2, Some((1, 4)));
    block(5.0, 15.0, 1.2, Some((1, 48))); // two rows of 24 in 30 cm
    block(45.0, 60.0, 1.2, Some((2, 2)));
    block(10.0, 45.0, 1.2, Some((3, 24))); // two rows of 12 in 90 cm
    block(30.0, 75.0, 1.2, Some((5, 8))); // two rows of 4 in 150 cm
    block(20.0, 35.0, 1.0, Some((7, 30))); // six rows of 5 in 210 cm
    block(60.0, 100.0, 1.2, Some((10, 6))); // three rows of 2 in 300 cm
    block(7.5, 7.5, 0.9, Some((1, 48))); // four rows of 12
}

#[test]
fn lettuce_at_25_by_30_in_a_bed_of_three_metres() {
    // By area 3.6 m2 / 0.075 m2 = 48 plants; rows across a bed of 1.2 m hold four whole
    // plants each, so ten strips hold 40.
    let block = Block::of(&spaced(25.0, 30.0), Metres(1.2)).unwrap();
    assert_eq!(block.plants * (10 / block.strips), 40);
}

#[test]
fn odd_spacings_take_the_strips_of_one_row() {
    block(100.0, 110.0, 1.2, Some((4, 1))); // 120 cm for one row of 110
    block(30.0, 47.0, 1.2, Some((2, 4))); // no ten strips come out whole
}

#[test]
fn narrow_beds() {
    block(90.0, 90.0, 0.6, Some((3, 1))); // wider than half a spacing: one plant
    block(90.0, 90.0, 0.45, Some((3, 1)));
    block(90.0, 90.0, 0.4, None);
    block(0.0, 30.0, 1.2, None);
    block(30.0, 0.0, 1.2, None);
    // A millimetre of rounding is forgiven, a centimetre is not.
    block(30.0, 30.0, 1.1995, Some((1, 4)));
    block(30.0, 30.0, 1.19, Some((1, 3)));
}

#[test]
fn every_child_sows_its_own() {
    // 0.8 x 0.85 = 0.68: two plants take four seeds, but 24 children sow two each.
    let dish = ingredient(plain());
    assert_eq!(need(&dish, Method::Direct, 24, 2).seeds, 48);
    assert_eq!(need(&dish, Method::Direct, 24, 126).seeds, 197);
    assert_eq!(need(&dish, Method::Pieces, 24, 30).seeds, 30);
    assert_eq!(need(&dish, Method::Bought, 24, 30).seeds, 30);
    assert_eq!(need(&dish, Method::Growing, 24, 30).seeds, 0);
}

#[test]
fn flats_before_and_after_potting_up() {
    let mut crop = plain();
    crop.indoor = Some(IndoorStart {
        weeks_lo: 5,
        weeks_hi: 7,
        cells_per_flat: 72,
        pots_per_flat: Some(15),
        warm_below: Celsius(20.0),
    });
    let found = need(&ingredient(crop.clone()), Method::Indoor, 40, 30);
    assert_eq!(found.seeds, 80); // two for each of 40 children; 30 plants need fewer
    assert_eq!(found.flats_sown, 2); // 80 cells at 72
    assert_eq!(found.potted(), 33); // a tenth to spare
    assert_eq!(found.flats_kept, 3); // 33 pots at 15

    crop.indoor = crop.indoor.map(|i| IndoorStart {
        pots_per_flat: None,
        ..i
    });
    let kept_in_cells = need(&ingredient(crop.clone()), Method::Indoor, 40, 30);
    assert_eq!((kept_in_cells.flats_sown, kept_in_cells.flats_kept), (2, 2));
    let direct = need(&ingredient(crop), Method::Direct, 40, 30);
    assert_eq!((direct.flats_sown, direct.flats_kept), (0, 0));
}

#[test]
fn a_flat_of_one_cell_or_one_pot_holds_one() {
    let mut crop = plain();
    let raised = |cells_per_flat, pots_per_flat| IndoorStart {
        weeks_lo: 5,
        weeks_hi: 7,
        cells_per_flat,
        pots_per_flat,
        warm_below: Celsius(20.0),
    };
    for (cells, pots, expected) in [
        (1, Some(1), (80, 33)),
        (2, Some(2), (40, 17)),
        (1, None, (80, 80)),
        (80, Some(33), (1, 1)),
        (79, Some(32), (2, 2)),
    ] {
        crop.indoor = Some(raised(cells, pots));
        let found = need(&ingredient(crop.clone()), Method::Indoor, 40, 30);
        assert_eq!(
            (found.flats_sown, found.flats_kept),
            expected,
            "{cells} {pots:?}"
        );
    }
}

#[test]
fn one_pick_of_a_crop_that_keeps_bearing() {
    let mut crop = plain();
    crop.picking.one_pick_share = Share(0.4);
    crop.yields.low = Kilograms(0.5);
    crop.yields.expected = Kilograms(1.5);
    crop.yields.usable = Share(0.7);
    let found = need(&ingredient(crop), Method::Direct, 20, 55);
    assert!((found.low.0 - 7.7).abs() < 1e-9); // 55 x 0.5 x 0.4 x 0.7
    assert!((found.expected.0 - 23.1).abs() < 1e-9); // 55 x 1.5 x 0.4 x 0.7
}

/// Along a trellis stands one row, however deep: three plants of 10 cm on a strip of 30 cm, one of 60 cm on two.
#[test]
fn a_row_along_a_trellis_is_counted_by_its_length() {
    let cases = [
        (10.0, 1, 3),
        (15.0, 1, 2),
        (30.0, 1, 1),
        (45.0, 3, 2),
        (60.0, 2, 1),
        (25.0, 5, 6),
        (350.0, 12, 1),
    ];
    for (in_row, strips, plants) in cases {
        let found = Block::of(&spaced(in_row, 90.0), Rows::AlongTrellis);
        assert_eq!(found, Some(Block { strips, plants }), "{in_row} cm");
    }
    assert_eq!(Block::of(&spaced(0.0, 90.0), Rows::AlongTrellis), None);
}
