//! A landing; a stoop has the same facts.

use crate::syntax::form::Form::{OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{ELEVATION, STANDS_ON};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static LANDING: ElementSpec = ElementSpec {
    kind: ElementKind::Landing,
    keyword: "landing",
    also: &[],
    naming: Naming::Name,
    summary: "A landing inside, between two flights or at a door.",
    example: r#"landing LD1 "Half way down"
  kind          framed 2x8 SPF No.2
  at            B plus 7'-7" / 2 plus 6'-0"
  size          3'-0" x 3'-0"
  top           95'-4"
  gap           0" open to W2
  stands on     W2
"#,
    facts: LANDING_FACTS,
};

/// The facts of landings and stoops.
pub static LANDING_FACTS: &[FactSpec] = &[
    FactSpec::required(
        "kind",
        OneOf(&[
            Slot("value", Kind::Word(&["concrete", "existing"])),
            Sequence(&[Slot("value", Kind::Word(&["framed"])), Slot("member", Kind::Member)]),
        ]),
        "What it is built as: concrete, framed of a member, or there already.",
        "kind framed 2x8 SPF No.2",
    ),
    FactSpec::required(
        "at",
        OneOf(&[Slot("point", Kind::Point), Slot("door", Kind::Name(&[ElementKind::Door]))]),
        "The door it lies at, or the place of its middle.",
        "at DR1",
    ),
    FactSpec::required(
        "size",
        Slot("size", Kind::Dimensions(2, 2)),
        "Its width and how far it runs out.",
        r#"size 5'-0" x 3'-0""#,
    ),
    FactSpec::required("top", ELEVATION, "Its walking surface, at the house.", r#"top 98'-4""#),
    FactSpec::required(
        "gap",
        Sequence(&[
            Slot("value", Kind::Length),
            Slot("how", Kind::Word(&["open", "flashed", "filled"])),
            Words("to"),
            Slot("wall", Kind::Name(&[ElementKind::Wall])),
        ]),
        "The gap between it and the wall, and what closes it. Say so when there is none.",
        r#"gap 1/2" flashed to W2"#,
    ),
    FactSpec::optional(
        "steps down",
        Sequence(&[
            Words("to grade by"),
            Slot("risers", Kind::Count),
            Words("risers at"),
            Slot("at", Kind::Length),
        ]),
        "",
        "The steps from it to the ground.",
        r#"steps down to grade by 2 risers at 7""#,
    ),
    FactSpec::required("stands on", STANDS_ON, "What carries it.", "stands on F7"),
    FactSpec::optional(
        "slope",
        Sequence(&[Slot("value", Kind::Length), Optional(&Words("per foot"))]),
        "level",
        "How much it falls away from the house on each foot.",
        r#"slope 1/8" per foot"#,
    ),
];
