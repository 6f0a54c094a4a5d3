//! Forces of whole houses: the books balance, reactions come apart into loads of the spec, and what moves, moves.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // a test

use std::sync::Arc;

use storyrod::house::House;
use storyrod::inputs::Inputs;
use storyrod::model::element::ElementId;
use storyrod::statics::action::Receiver;
use storyrod::statics::cases::{ByCase, Case};
use storyrod::statics::contributors::{self, Contribution, Contributor};
use storyrod::syntax::ElementCache;
use storyrod::syntax::value::Date;
use storyrod::text::Source;
use storyrod::units::Force;

const LOON_COVE: &str = include_str!("../grammar/samples/loon-cove.framing");
const HOP_BARN: &str = include_str!("../grammar/samples/hop-barn.framing");
const SAMPLES: [&str; 5] = [
    include_str!("../grammar/samples/first.framing"),
    LOON_COVE,
    HOP_BARN,
    include_str!("../grammar/samples/alley-house.framing"),
    include_str!("../grammar/samples/hill-studio.framing"),
];

fn house(text: &str) -> House {
    let inputs = Inputs { sources: vec![Source::new("house.framing", text)], includes: Vec::new() };
    let today = Date { year: 2027, month: 6, day: 1 };
    House::of(&Arc::new(inputs), &mut ElementCache::default(), today)
}

fn named(house: &House, name: &str) -> ElementId {
    house.model.named(name).unwrap_or_else(|| panic!("no element {name}"))
}

fn reaction(house: &House, of: &str, on: &str) -> ByCase<Force> {
    house.forces.reaction(named(house, of), Receiver::Element(named(house, on)))
}

/// Within one part in a billion of all that was put on the house, each case by itself; and in the samples nothing is lost.
#[test]
fn the_books_of_every_sample_balance() {
    for text in SAMPLES {
        let house = house(text);
        let balance = &house.forces.balance;
        assert!(balance.error() <= 1e-9, "{:e}", balance.error());
        assert!(balance.lost.is_empty(), "{:?}", balance.lost);
        assert!(house.forces.unstable.is_empty(), "{:?}", house.forces.unstable);
        assert!(balance.applied.total() > Force::lb(1_000.0));
    }
}

/// The books balance as well while lines are missing: what reaches nothing is named.
#[test]
fn the_books_balance_without_any_one_line() {
    for text in SAMPLES {
        let lines: Vec<&str> = text.lines().collect();
        // Every seventh line is enough to meet each kind of fact, and quick.
        for skip in (0..lines.len()).step_by(7) {
            let kept: Vec<&str> =
                lines.iter().enumerate().filter(|(at, _)| *at != skip).map(|(_, line)| *line).collect();
            let house = house(&kept.join("\n"));
            let error = house.forces.balance.error();
            assert!(error <= 1e-9, "without `{}`: {error:e}", lines[skip].trim());
        }
    }
}

/// The designer's takedown of the lakeside house, worked out by hand with `span by grid`:
/// B1 carries 13.77 ft of floor at 12 + 40 psf and its own 24 plf on 17'-9", so 740 plf; C1 gets both halves, 13,136 lb.
/// H1 carries 16 ft and 7 ft of roof at 15 + 42 psf and its own 20.1 plf: 1,331 plf on 12'-4 1/2", half of it 8,236 lb.
#[test]
fn the_lakeside_house_by_hand() {
    let house = house(LOON_COVE);
    let on_column = reaction(&house, "B1", "C1");
    assert!((on_column.dead.to_lb() - 3_359.0).abs() < 1.0, "{on_column:?}");
    assert!((on_column.live.to_lb() - 9_777.0).abs() < 1.0, "{on_column:?}");
    assert!((on_column.total().to_lb() - 13_136.0).abs() < 1.0, "{on_column:?}");
    let on_jacks = reaction(&house, "H1", "JK1");
    assert!((on_jacks.total().to_lb() - 8_236.0).abs() < 1.0, "{on_jacks:?}");
    let stripe = house.forces.reaction(named(&house, "J2"), Receiver::Element(named(&house, "LG1")));
    // 11'-6" or so between the bearing lines: 312 plf in all on 16'-0" of ledger.
    assert!((stripe.total().to_lb() / 16.0 - 312.6).abs() < 1.0, "{stripe:?}");
}

/// The barn's ridge post: 256 sq ft at 15 + 42 psf, worked out by hand: 14,592 lb, 10,752 of it snow.
#[test]
fn the_ridge_post_by_hand() {
    let house = house(HOP_BARN);
    let on_post = reaction(&house, "R1", "P1");
    assert!((on_post.snow.to_lb() - 10_752.0).abs() < 0.5, "{on_post:?}");
    assert!((on_post.total().to_lb() - 14_592.0).abs() < 0.5, "{on_post:?}");
}

/// A field of joists in bays of 12 and 14 ft on a beam over four columns, 24 ft long: figures of an exact solver, agreed
/// with by two finite-element solvers (case HA of `tests/data/statics.json`), for joists and beam each jointed or run over.
#[test]
fn oracle_field_beam_columns_agrees() {
    let data: serde_json::Value = serde_json::from_str(include_str!("data/statics.json")).unwrap();
    let results = &data["houses"][0]["results"];
    let number = |value: &serde_json::Value| value.as_f64().unwrap();
    for (joists, joist_joint) in [("simple_joists", "  joint     over B1\n"), ("continuous_joists", "")] {
        for (beam, beam_joint) in
            [("beam_simple_spans", "  joint     over C2\n  joint     over C3\n"), ("beam_continuous", "")]
        {
            let house = house(&field_on_beam(joist_joint, beam_joint));
            let of_wall = |wall: &str| {
                let force = reaction(&house, "J1", wall).total().to_lb();
                force / 24.0
            };
            let (left, right) = match joist_joint {
                "" => {
                    let continuous = &results["continuous_joist"];
                    (number(&continuous["left_wall_plf"]), number(&continuous["right_wall_plf"]))
                }
                _ => (number(&results["wall_plf_left"]), number(&results["wall_plf_right"])),
            };
            assert!((of_wall("W1") / left - 1.0).abs() < 1e-4, "{joists}: {} {left}", of_wall("W1"));
            assert!((of_wall("W2") / right - 1.0).abs() < 1e-4, "{joists}: {} {right}", of_wall("W2"));
            let expected = results["columns"][joists][beam].as_array().unwrap();
            for (column, expected) in ["C1", "C2", "C3", "C4"].iter().zip(expected) {
                let on_it = reaction(&house, "B1", column).total().to_lb();
                assert!((on_it / number(expected) - 1.0).abs() < 1e-4, "{joists} {beam} {column}: {on_it}");
            }
        }
    }
}

fn field_on_beam(joist_joint: &str, beam_joint: &str) -> String {
    let column = |name: &str, at: &str| {
        format!("column {name}\n  at  {at}/2\n  size  6x6 DF-L No.1\n  stands on  outside \"pier\"\n")
    };
    let wall = |name: &str, line: &str| {
        format!(
            "wall {name}\n  kind  concrete\n  from  A/{line} to D/{line}\n  line  centre\n  thick  8\"\n  top  98'\n  stands on  outside \"rock\"\n"
        )
    };
    let columns: String =
        [("C1", "A"), ("C2", "B"), ("C3", "C"), ("C4", "D")].map(|(name, at)| column(name, at)).concat();
    format!(
        "grid
  x  A 0', B 8', C 16', D 24'
  y  1 0', 2 12', 3 26'
product GL
  kind      glulam 5-1/8 x 12
  weight    15 plf
  source    \"invented\" on 2027-01-01
floor main
  subfloor  100'
  deck      3/4\"
  live      40 psf
  dead      12 psf
joists J1
  floor     main
  size      2x10 SPF No.2
  fill      A to D by 1 to 3
  run       along y
  spacing   16\" from A
  span      by grid
{joist_joint}  bears on  W1
  bears on  B1
  bears on  W2
beam B1
  size      GL
  from      A/2 to D/2
  span      by grid
{beam_joint}  bears on  C1
  bears on  C2
  bears on  C3
  bears on  C4
{columns}{}{}",
        wall("W1", "1"),
        wall("W2", "3")
    )
}

/// Four columns under three equal spans: with all spans loaded an inner one gets 1.10wL of live load, with the two beside
/// it alone 1.20wL (textbook coefficients of three equal spans). 500 plf on 10'-0": 5,500 lb and 500 lb more.
#[test]
fn a_column_can_get_more_with_one_span_empty() {
    let column = |name: &str, at: &str| {
        format!("column {name}\n  at  {at}/1\n  size  HSS 4 x 4 x 1/4\n  stands on  F1\n")
    };
    let columns: String = ["A", "B", "C", "D"].iter().map(|at| column(&format!("C{at}"), at)).collect();
    let house = house(&format!(
        "grid
  x  A 0', B 10', C 20', D 30'
  y  1 0'
beam B1
  size      W8x24
  from      A/1 to D/1
  span      by grid
  load      500 plf live
  bears on  CA
  bears on  CB
  bears on  CC
  bears on  CD
{columns}footing F1
  at        A/1
  at        B/1
  at        C/1
  at        D/1
  size      2' x 2' x 12\"
  top       90'
"
    ));
    let live = reaction(&house, "B1", "CB").live.to_lb();
    assert!((live - 5_500.0).abs() < 5.5, "{live}");
    let partial = &house.forces.partial;
    let more = partial.from_to(named(&house, "B1"), named(&house, "CB")).to_lb();
    assert!((more - 500.0).abs() < 2.0, "{more}");
    let below = partial.from_to(named(&house, "CB"), named(&house, "F1")).to_lb();
    assert!((below - more).abs() < 1e-9, "{below}");
}

/// A member that can't stand costs its own load, which is named; the rest of the house is solved.
#[test]
fn what_cannot_stand_loses_its_load_and_no_more() {
    // The girder's west end hangs in the air: its west piece has one support, C1.
    let text = LOON_COVE.replace("  bears on      PK1 for 7\"\n", "");
    assert_ne!(text, LOON_COVE);
    let house = house(&text);
    let balance = &house.forces.balance;
    assert!(balance.error() <= 1e-9);
    let girder = named(&house, "B1");
    assert!(house.forces.unstable.iter().any(|(member, _)| *member == girder));
    let lost: Vec<_> = balance.lost.iter().map(|(at, _, force)| (*at, force.total().to_lb())).collect();
    // The west half of what lies on the girder: 18'-0" at 716 plf of floor and 17'-9" at 24 plf of itself, by hand 13,314 lb.
    assert!(
        matches!(lost.as_slice(), [(at, lb)] if *at == girder && (lb - 13_314.0).abs() < 60.0),
        "{lost:?}"
    );
    assert!((reaction(&house, "H1", "JK1").total().to_lb() - 8_236.0).abs() < 1.0);
}

/// A column 26 ft beside the girder's line holds nothing: the girder spans from pocket to pocket, and each gets half.
#[test]
fn a_column_aside_holds_nothing() {
    let text = LOON_COVE.replace("  at            C/3\n", "  at            A/1\n");
    assert_ne!(text, LOON_COVE);
    let house = house(&text);
    let (west, east) = (reaction(&house, "B1", "PK1").total(), reaction(&house, "B1", "PK2").total());
    assert!((west.to_lb() - east.to_lb()).abs() < 1.0, "{west:?} {east:?}");
    assert_eq!(reaction(&house, "B1", "C1"), ByCase::default());
    assert!(house.forces.balance.error() <= 1e-9);
}

/// Beams that carry one another in a circle have no forces; everything else has.
#[test]
fn a_circle_is_lost_and_named() {
    let house = house(
        "grid
  x  A 0', B 10'
  y  1 0', 2 10'
beam B1
  size      4x10 DF-L No.1
  from      A/1 to B/1
  load      100 plf live
  bears on  B2
  bears on  B2
beam B2
  size      4x10 DF-L No.1
  from      A/1 to A/2
  bears on  B1
",
    );
    let balance = &house.forces.balance;
    assert!(balance.error() <= 1e-9, "{balance:?}");
    assert_eq!(balance.on_soil, ByCase::default());
    assert!(balance.lost.iter().all(|(_, why, _)| why.words().contains("circle")), "{:?}", balance.lost);
}

fn leaves(parts: &[Contribution], found: &mut Vec<(Contributor, ByCase<Force>)>) {
    for part in parts {
        match part.from {
            Contributor::Element(_) => {
                assert!(!part.of.is_empty(), "{part:?} comes from nothing");
                leaves(&part.of, found);
            }
            Contributor::Weight(_)
            | Contributor::AreaOf(..)
            | Contributor::Declared(..)
            | Contributor::Load(_) => found.push((part.from, part.force)),
        }
    }
}

/// The sum of the leaves is the reaction, case by case, for every element of every sample.
#[test]
fn reactions_come_apart_into_loads_of_the_spec() {
    for text in SAMPLES {
        let house = house(text);
        for common in house.model.commons() {
            let tree = contributors::on(&house.model, &house.geometry, &house.forces, common.id);
            let mut found = Vec::new();
            leaves(&tree, &mut found);
            let sum = found.iter().fold(ByCase::default(), |sum, (_, force)| sum + *force);
            let whole = house.forces.weight_and_load_on(common.id);
            for case in Case::ALL {
                let off = (*sum.of(case) - *whole.of(case)).abs();
                assert!(off <= whole.total().abs() * 1e-9 + Force::lb(1e-6), "{}: {off:?}", common.name);
            }
        }
    }
}

/// A wall moved by 1" takes its load 1" along: the strip of floor that C1 carries stays, that of the joists' end grows.
#[test]
fn a_beam_moved_by_an_inch_takes_half_an_inch_of_floor_from_one_side_to_the_other() {
    let before = house(LOON_COVE);
    let moved = LOON_COVE.replace(
        "from          A plus 3\" / 3 to E less 3\" / 3",
        "from          A plus 3\" / 3 plus 1\" to E less 3\" / 3 plus 1\"",
    );
    assert_ne!(moved, LOON_COVE);
    let after = house(&moved);
    // By hand: W1's joists are 1" longer, so W1 takes 1/2" more of the floor's 36'-0": 52 psf x 1/24 ft x 36 ft = 78 lb.
    let on_w1 = |house: &House| reaction(house, "J1", "W1").total().to_lb();
    let gain = on_w1(&after) - on_w1(&before);
    assert!((gain - 78.0).abs() < 0.5, "{gain}");
}
