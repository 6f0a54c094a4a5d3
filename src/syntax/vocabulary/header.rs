//! A header over an opening in a wall.

use crate::syntax::form::Form::Slot;
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{BEARS_ON, ELEVATION, LOAD_CASE, MEMBER, OPENINGS};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static HEADER: ElementSpec = ElementSpec {
    kind: ElementKind::Header,
    keyword: "header",
    also: &[],
    naming: Naming::Name,
    summary: "The member over a door, a window or an opening in a wall.",
    example: r#"header H1 "Over the door in the middle wall"
  over          DR1
  size          3-ply 2x10 SPF No.2
  bears on      JK1
"#,
    facts: &[
        FactSpec::required("over", Slot("opening", Kind::Name(OPENINGS)), "What it spans.", "over DR1"),
        FactSpec::required("size", MEMBER, "What it is.", "size 3-ply 2x10 SPF No.2"),
        FactSpec::required(
            "bears on",
            BEARS_ON,
            "The jacks it lies on, and the length of contact.",
            r#"bears on JK1 for 3""#,
        )
        .repeatable(),
        FactSpec::optional(
            "load",
            LOAD_CASE,
            "",
            "A declared load along it, where the wall above is not in the spec.",
            r#"load 365 plf dead "wall and roof above""#,
        )
        .repeatable(),
        FactSpec::derived("top", ELEVATION, "Its upper edge.", r#"top 106'-2""#),
    ],
};
