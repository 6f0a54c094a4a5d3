//! A stair or flight of steps.

use crate::syntax::form::Form::{Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{LENGTH, MEMBER};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

const ENDS: &[ElementKind] = &[ElementKind::Floor, ElementKind::Landing, ElementKind::Stoop];

pub static STAIR: ElementSpec = ElementSpec {
    kind: ElementKind::Stair,
    keyword: "stair",
    also: &["stairs"],
    naming: Naming::Name,
    summary: "A straight flight between two levels, however short.",
    example: r#"stair S1 "Basement stair"
  from          basement to main
  top           at B plus 7'-7" / 2 plus 2'-0"
  climbs        south
  risers        15
  tread         10"
  width         3'-0"
  opening       O1
  laid out      90'-8 1/4" to 100'-1"
  rise          should be 9'-4 3/4"
"#,
    facts: &[
        FactSpec::required(
            "from",
            Sequence(&[
                OneOf(&[Mark("grade"), Slot("lower", Kind::Name(ENDS))]),
                Words("to"),
                Slot("upper", Kind::Name(ENDS)),
            ]),
            "The levels it joins, the lower one first; `grade` is the ground outside.",
            "from basement to main",
        ),
        FactSpec::required(
            "top",
            Sequence(&[Words("at"), Slot("point", Kind::Point)]),
            "The middle of its top nosing.",
            r#"top at B plus 7'-7" / 2 plus 2'-0""#,
        ),
        FactSpec::required(
            "climbs",
            Slot("side", Kind::Side),
            "Which way one goes when going up.",
            "climbs south",
        ),
        FactSpec::required("risers", Slot("value", Kind::Count), "How many risers it has.", "risers 15"),
        FactSpec::required("tread", LENGTH, "The depth of a tread from nosing to nosing.", r#"tread 10""#),
        FactSpec::required("width", LENGTH, "Its clear width.", r#"width 3'-0""#),
        FactSpec::optional(
            "opening",
            OneOf(&[Slot("value", Kind::Length), Slot("opening", Kind::Name(&[ElementKind::Opening]))]),
            "",
            "The opening it goes through, or the length of it along the run from the top nosing. Needed where it passes a floor.",
            "opening O1",
        ),
        FactSpec::optional(
            "laid out",
            Sequence(&[Slot("lower", Kind::Elevation), Words("to"), Slot("upper", Kind::Elevation)]),
            "equal risers",
            "The finishes its stringers are cut for. A finish that changes later then shows in the end riser, where it lands.",
            r#"laid out 90'-8 1/4" to 100'-1""#,
        ),
        FactSpec::optional(
            "landing",
            Sequence(&[
                Slot("place", Kind::Word(&["top", "bottom", "mid"])),
                Slot("deep", Kind::Length),
                Words("deep"),
                Optional(&Sequence(&[Words("at"), Slot("at", Kind::Elevation)])),
            ]),
            "",
            "A landing at its top, bottom or half way, and how deep it is.",
            r#"landing bottom 3'-0" deep"#,
        )
        .repeatable(),
        FactSpec::optional(
            "nosing",
            LENGTH,
            r#"0""#,
            "How far each tread runs out over the one below.",
            r#"nosing 1""#,
        ),
        FactSpec::optional(
            "handrail",
            Sequence(&[Slot("side", Kind::Side), Slot("high", Kind::Length), Words("high")]),
            "none",
            "The side that has a handrail, and its height above the nosings.",
            r#"handrail east 36" high"#,
        )
        .repeatable(),
        FactSpec::optional(
            "guard",
            Sequence(&[Slot("side", Kind::Side), Slot("high", Kind::Length), Words("high")]),
            "none",
            "The side that has a guard, and its height.",
            r#"guard west 36" high"#,
        )
        .repeatable(),
        FactSpec::optional(
            "stringers",
            MEMBER,
            "",
            "What its stringers are cut from.",
            "stringers 2x12 SPF No.2",
        ),
        FactSpec::optional("tread stock", LENGTH, r#"1""#, "The thickness of a tread.", r#"tread stock 1""#),
        FactSpec::derived("riser", LENGTH, "The height of each riser.", r#"riser 6-7/16""#),
        FactSpec::derived("rise", LENGTH, "From finish to finish.", r#"rise 9'-4 3/4""#),
    ],
};
