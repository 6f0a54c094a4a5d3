//! Named lines in plan.

use crate::syntax::form::Form::{List, OneOf, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::ALONG_AXIS;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static GRID: ElementSpec = ElementSpec {
    kind: ElementKind::Grid,
    keyword: "grid",
    also: &[],
    naming: Naming::None,
    summary: "The named lines from which every place in plan is told. Distances count from one origin and are not spacings; x grows east, y grows north. A spec has one grid.",
    example: r#"grid
  x             A 0', B 17'-9", C 35'-6"
  y             1 0', 2 14'-0", 3 28'-0"
  line          B is "centre of the girder's joint"
"#,
    facts: &[
        FactSpec::required(
            "x",
            List(&Sequence(&[Slot("name", Kind::GridLine), Slot("at", Kind::Length)])),
            "Lines that run north, from west to east, each with its distance from the origin.",
            r#"x A 0', B 17'-9", C 35'-6""#,
        ),
        FactSpec::required(
            "y",
            List(&Sequence(&[Slot("name", Kind::GridLine), Slot("at", Kind::Length)])),
            "Lines that run east, from south to north. No name of x may come again.",
            r#"y 1 0', 2 14'-0", 3 28'-0""#,
        ),
        FactSpec::optional(
            "north",
            OneOf(&[
                ALONG_AXIS,
                Sequence(&[
                    Slot("value", Kind::Number),
                    Words("degrees"),
                    Slot("how", Kind::Word(&["east of y", "west of y"])),
                ]),
            ]),
            "along y",
            "True north, for sheets only. The words for sides always mean the grid's own.",
            "north 12 degrees east of y",
        ),
        FactSpec::optional(
            "line",
            Sequence(&[Slot("name", Kind::GridLine), Words("is"), Slot("words", Kind::Text)]),
            "",
            "What a grid line is, in words for the reader.",
            r#"line B is "centre of the girder's joint""#,
        )
        .repeatable(),
    ],
};
