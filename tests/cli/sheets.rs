//! The sheets: `rod`, `steps`.

use crate::program::{folder_with, sample, samples, storyrod_in};

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

/// Behind the line of an element that begins so, one more.
fn with_line(text: &str, element: &str, line: &str, new: &str) -> String {
    let mut lines: Vec<&str> = text.lines().collect();
    let start = lines.iter().position(|it| it.starts_with(element)).unwrap();
    let at = start + lines[start..].iter().position(|it| it.trim_start().starts_with(line)).unwrap();
    lines.insert(at + 1, new);
    lines.join("\n") + "\n"
}

/// Loon Cove as built, by hand. The pad F1, drawn at 91'-0 1/2", lies at 90'-11 7/8", 5/8" low: 1" of grout would be 1-5/8", more
/// than 1-1/2", so C1 is cut to 96-5/16" + 5/8" = 96-15/16", and it is ordered. The sunroom's finish, 98'-5 1/4", lies 1/2" high: the
/// lowest of its three risers of 6-1/2" is 6". W2 is 1/8" low, as in the sample: packed under J1. What was measured of W5 at one place
/// can't be followed.
#[test]
fn the_house_as_built_says_what_follows() {
    let mut text = sample("loon-cove.framing");
    for (element, line, shot) in [
        ("footing F1", "top", "  shot top 90'-11 7/8\" on 2027-04-05"),
        ("floor sunroom", "finish", "  shot finish 98'-5 3/4\" on 2027-05-05"),
        ("wall W5", "top", "  shot top 97'-4 7/8\" at B on 2027-04-05"),
    ] {
        text = with_line(&text, element, line, shot);
    }
    let folder = folder_with(&[("house.framing", &text)]);
    let ran = storyrod_in(folder.path(), &["rod", "house.framing", "--as-built"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (0, ""), "{}", ran.out);
    let said = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for wanted in [
        "footing F1 top 91'-0 1/2\" 90'-11 7/8\" 5/8\" low 1/2\" no",
        "floor sunroom finish 98'-5 1/4\" 98'-5 3/4\" 1/2\" high 1/4\" no",
        "wall W2 top 99'-0 1/2\" 99'-0 3/8\" 1/8\" low 1/4\" yes",
        "wall W5 top at B 97'-5 1/8\" 97'-4 7/8\" 1/4\" low 1/4\" yes",
        "not followed wall W5 shot top 97'-4 7/8\" at B on 2027-04-05: it is the level of one place",
        "wall W2 pack 1/8\" between it and joists J1",
        "column C1 grout can't take it up: it would be 1-5/8\", 1\" as drawn",
        "there is room for 96-15/16\"~: 5/8\"~ too short",
        "call the supplier before it is made: cut 8'-0 15/16\"~",
        "the risers of stair S2 go from 6\" to 6-1/2\"",
        "nothing follows for: plan checker, framer, plumber",
        "licensed professional",
    ] {
        assert!(said.contains(wanted), "no `{wanted}` in\n{}", ran.out);
    }
    assert!(!said.contains("holds no longer"), "{}", ran.out);
    let unmeasured = storyrod_in(&samples(), &["rod", "first.framing", "--as-built"], b"");
    assert!(unmeasured.out.contains("nothing was measured"), "{}", unmeasured.out);
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
