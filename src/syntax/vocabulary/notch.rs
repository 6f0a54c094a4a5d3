//! A notch.

use crate::syntax::form::Form::{Mark, OneOf, Slot};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::MEMBERS;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static NOTCH: ElementSpec = ElementSpec {
    kind: ElementKind::Notch,
    keyword: "notch",
    also: &[],
    naming: Naming::Name,
    summary: "A notch in the edge of members.",
    example: r#"notch NT1
  in            J1
  at            1 plus 4"
  size          4" x 1-1/2"
  edge          bottom
"#,
    facts: &[
        FactSpec::required("in", Slot("element", Kind::Name(MEMBERS)), "The members it is cut in.", "in J1"),
        FactSpec::required(
            "at",
            OneOf(&[Mark("each"), Slot("at", Kind::GridRef)]),
            "Where along them its middle is; `each` when every member has it.",
            r#"at 1 plus 4""#,
        ),
        FactSpec::required(
            "size",
            Slot("size", Kind::Dimensions(2, 2)),
            "Length x depth.",
            r#"size 4" x 1-1/2""#,
        ),
        FactSpec::required(
            "edge",
            Slot("value", Kind::Word(&["top", "bottom"])),
            "The edge it is cut in.",
            "edge bottom",
        ),
    ],
};
