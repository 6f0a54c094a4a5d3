//! The sheets: `rod`, `steps`.

use crate::program::{samples, storyrod_in};

#[test]
fn the_rod_list_goes_from_the_footings_up() {
    let ran = storyrod_in(&samples(), &["rod", "first.framing"], b"");
    assert_eq!(ran.code, 0, "{}", ran.log);
    // Stated in the sample: footing top 95'-0 1/2", wall top 99'-0 1/2", subfloor 100'-0"; the footing is 8" thick.
    let at = |row: &str| ran.out.find(row).unwrap_or_else(|| panic!("no `{row}` in\n{}", ran.out));
    let bottom = at("footing F1 bottom    94'-4 1/2\"");
    let top = at("footing F1 top       95'-0 1/2\"");
    let wall = at("wall W1 top          99'-0 1/2\"");
    let floor = at("floor main subfloor");
    assert!(bottom < top && top < wall && wall < floor, "{}", ran.out);
    assert!(ran.out.contains("licensed professional"), "{}", ran.out);
}

/// Loon Cove, by hand: finishes at 100'-0 3/4" and 98'-4 5/8" + 5/8" = 98'-5 1/4", 19-1/2" apart: three risers of 6-1/2".
/// Seats at 5/8 + 6-1/2 - 1 = 6-1/8" and 12-5/8". With upper joists of 9-1/4", equal decks and 1/8" more finish above, the
/// joists meet at 9-3/8": the sunroom and what carries it go up 10-1/8", W5 from 97'-5 1/8" to 98'-3 1/4".
#[test]
fn steps_are_divided_and_say_what_moves() {
    let ran = storyrod_in(&samples(), &["steps", "loon-cove.framing", "main", "sunroom"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (0, ""));
    for said in [
        "drop: 19-1/2\" from finish to finish, 19-3/8\" from deck to deck",
        "3 of 6-1/2\"\n    rough seats above the deck of sunroom: 6-1/8\", 12-5/8\"\n",
        "2x10 joists: 9-3/8\", 2 of 4-11/16\", low\n",
        "top of W5: 10-1/8\" up, from 97'-5 1/8\" to 98'-3 1/4\"",
        "licensed professional",
    ] {
        assert!(ran.out.contains(said), "no `{said}` in\n{}", ran.out);
    }
    let turned = storyrod_in(&samples(), &["steps", "loon-cove.framing", "sunroom", "main"], b"");
    assert_eq!(turned.out, ran.out);
}

#[test]
fn steps_between_floors_that_are_not_there_say_so() {
    let ran = storyrod_in(&samples(), &["steps", "loon-cove.framing", "main", "sunrom"], b"");
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert_eq!(ran.log, "storyrod: loon-cove.framing: there is no floor `sunrom`; did you mean `sunroom`?\n");
}
