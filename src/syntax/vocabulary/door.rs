//! A door.

use crate::syntax::form::Form::{OneOf, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static DOOR: ElementSpec = ElementSpec {
    kind: ElementKind::Door,
    keyword: "door",
    also: &[],
    naming: Naming::Name,
    summary: "A door.",
    example: r#"door DR1 "Door to the south room"
  in            BW1
  at            B plus 3'-0" / 2
  size          3'-0" x 6'-8"
  hinge         east
  swings        south
"#,
    facts: &[
        FactSpec::optional(
            "in",
            Slot("wall", Kind::Name(&[ElementKind::Wall])),
            "a partition the spec leaves out",
            "The wall it is in.",
            "in BW1",
        ),
        FactSpec::required("at", Slot("point", Kind::Point), "The middle of it.", r#"at B plus 3'-0" / 2"#),
        FactSpec::required(
            "size",
            Slot("size", Kind::Dimensions(2, 2)),
            "Width x height.",
            r#"size 3'-0" x 6'-8""#,
        ),
        FactSpec::required("hinge", Slot("side", Kind::Side), "The side of the hinges.", "hinge east"),
        FactSpec::required(
            "swings",
            OneOf(&[
                Sequence(&[Words("into"), Slot("floor", Kind::Name(&[ElementKind::Floor]))]),
                Slot("side", Kind::Side),
            ]),
            "Where it swings: into the room of a floor, or to a side.",
            "swings into den",
        ),
        FactSpec::optional(
            "threshold",
            OneOf(&[
                Sequence(&[Slot("above", Kind::Length), Words("above finish")]),
                Slot("value", Kind::Elevation),
            ]),
            r#"0" above finish"#,
            "The top of its sill, as an elevation or above the finish inside.",
            r#"threshold 3/4" above finish"#,
        ),
        FactSpec::optional(
            "landing",
            Slot("landing", Kind::Name(&[ElementKind::Stoop, ElementKind::Landing])),
            "",
            "The landing outside it.",
            "landing SP1",
        ),
    ],
};
