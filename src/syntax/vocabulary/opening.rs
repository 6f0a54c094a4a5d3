//! An opening in a floor or wall.

use crate::syntax::form::Form::{OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{CONNECTOR, COUNTED_MEMBER, MEMBER};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static OPENING: ElementSpec = ElementSpec {
    kind: ElementKind::Opening,
    keyword: "opening",
    also: &[],
    naming: Naming::Name,
    summary: "An opening in a floor (with trimmers and headers) or in a wall.",
    example: r#"opening O1 "Basement stair"
  floor         main
  fill          B plus 6'-0" to B plus 9'-2" by 2 plus 2'-0" to 2 plus 12'-6"
  trimmers      2 of 2x10 SPF No.2 each side
  headers       2 of 2x10 SPF No.2 by hanger 1000 lb "face mount" source "hanger schedule"
  tails         by hanger 700 lb "face mount" source "hanger schedule"
"#,
    facts: &[
        FactSpec::optional(
            "floor",
            Slot("floor", Kind::Name(&[ElementKind::Floor])),
            "",
            "The floor it is in. An opening is in a floor or in a wall.",
            "floor main",
        ),
        FactSpec::optional(
            "in",
            Slot("wall", Kind::Name(&[ElementKind::Wall])),
            "",
            "The wall it is in.",
            "in W2",
        ),
        FactSpec::optional(
            "fill",
            Slot("rect", Kind::Rect),
            "",
            "Where it lies in a floor, from inside face to inside face of its trimmers and headers.",
            r#"fill B plus 6'-0" to B plus 9'-2" by 2 plus 2'-0" to 2 plus 12'-6""#,
        ),
        FactSpec::optional(
            "at",
            Slot("point", Kind::Point),
            "",
            "The middle of an opening in a wall.",
            r#"at B plus 3'-0" / 3"#,
        ),
        FactSpec::optional(
            "size",
            Slot("size", Kind::Dimensions(2, 2)),
            "",
            "Width x height of an opening in a wall.",
            r#"size 12'-0" x 6'-10""#,
        ),
        FactSpec::optional(
            "trimmers",
            Sequence(&[COUNTED_MEMBER, Words("each side")]),
            "",
            "The joists along each side. An opening in a floor needs them.",
            "trimmers 2 of 2x10 SPF No.2 each side",
        ),
        FactSpec::optional(
            "headers",
            Sequence(&[OneOf(&[COUNTED_MEMBER, MEMBER]), Optional(&CONNECTOR)]),
            "",
            "What closes each end between the trimmers, and how it hangs from them. An opening in a floor needs it.",
            r#"headers 2 of 2x10 SPF No.2 by hanger 1000 lb "face mount" source "hanger schedule""#,
        ),
        FactSpec::optional(
            "tails",
            CONNECTOR,
            "",
            "How the joists that were cut hang from the headers.",
            r#"tails by hanger 700 lb "face mount" source "hanger schedule""#,
        ),
        FactSpec::optional(
            "loads",
            Slot("value", Kind::Word(&["kept", "left out"])),
            "kept",
            "Whether the floor's load in the opening stays: a stair in it weighs and carries as much.",
            "loads left out",
        ),
    ],
};
