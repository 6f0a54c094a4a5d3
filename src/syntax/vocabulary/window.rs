//! A window.

use crate::syntax::form::Form::Slot;
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static WINDOW: ElementSpec = ElementSpec {
    kind: ElementKind::Window,
    keyword: "window",
    also: &[],
    naming: Naming::Name,
    summary: "A window.",
    example: r#"window WN1
  in            W7
  at            B plus 6'-0" / 1
  size          5'-0" x 4'-0"
"#,
    facts: &[
        FactSpec::optional(
            "in",
            Slot("wall", Kind::Name(&[ElementKind::Wall])),
            "a wall the spec leaves out",
            "The wall it is in.",
            "in W7",
        ),
        FactSpec::required("at", Slot("point", Kind::Point), "The middle of it.", r#"at B plus 6'-0" / 1"#),
        FactSpec::required(
            "size",
            Slot("size", Kind::Dimensions(2, 2)),
            "Width x height.",
            r#"size 5'-0" x 4'-0""#,
        ),
    ],
};
