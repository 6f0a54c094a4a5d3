//! A duct.

use crate::syntax::form::Form::Slot;
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static DUCT: ElementSpec = ElementSpec {
    kind: ElementKind::Duct,
    keyword: "duct",
    also: &[],
    naming: Naming::Name,
    summary: "A duct in or under a floor's framing.",
    example: r#"duct DU1 "Main trunk"
  floor         main
  from          A plus 4'-0" / 2 less 5'-0" to C less 4'-0" / 2 less 5'-0"
  size          20" x 8"
"#,
    facts: &[
        FactSpec::required(
            "floor",
            Slot("floor", Kind::Name(&[ElementKind::Floor])),
            "The floor it is in or under.",
            "floor main",
        ),
        FactSpec::required(
            "from",
            Slot("line", Kind::Line),
            "Its centre line.",
            r#"from A plus 4'-0" / 2 less 5'-0" to C less 4'-0" / 2 less 5'-0""#,
        ),
        FactSpec::required(
            "size",
            Slot("size", Kind::Dimensions(2, 2)),
            "Width x height.",
            r#"size 20" x 8""#,
        ),
    ],
};
