//! A shelf in a concrete wall.

use crate::syntax::form::Form::{Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{ANCHOR, ELEVATION, LENGTH, SILL, STRETCH};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static SHELF: ElementSpec = ElementSpec {
    kind: ElementKind::Shelf,
    keyword: "shelf",
    also: &["ledge"],
    naming: Naming::Name,
    summary: "A step in one face of a concrete wall for joists to land on. What is left of the wall beside it is its upstand.",
    example: r#"shelf SH1
  in            W2 from south face
  top           97'-9 1/8"
  width         6"
  sill          1 of 2x6 treated, held in 1/2" from south face
"#,
    facts: &[
        FactSpec::required(
            "in",
            Sequence(&[
                Slot("wall", Kind::Name(&[ElementKind::Wall])),
                Words("from"),
                Slot("side", Kind::Side),
                Words("face"),
                STRETCH,
            ]),
            "The wall it is in, the face it opens to, and the stretch of wall where it isn't all of it.",
            "in W2 from south face from A to B",
        ),
        FactSpec::required("top", ELEVATION, "The concrete on which its sill lies.", r#"top 97'-9 1/8""#),
        FactSpec::required("width", LENGTH, "How far it goes into the wall.", r#"width 6""#),
        FactSpec::required(
            "sill",
            SILL,
            "The plates on it, as on a wall.",
            r#"sill 1 of 2x6 treated, held in 1/2" from south face"#,
        ),
        FactSpec::optional(
            "anchor",
            ANCHOR,
            "",
            "The bolts that hold its sill, as on a wall.",
            r#"anchor 5/8" x 12" at 6'-0""#,
        ),
    ],
};
