//! A beam pocket in a concrete wall.

use crate::syntax::form::Form::{Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{ELEVATION, LENGTH};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static POCKET: ElementSpec = ElementSpec {
    kind: ElementKind::Pocket,
    keyword: "pocket",
    also: &[],
    naming: Naming::Name,
    summary: "A seat for a beam in a concrete wall: a pocket, a notch in a wall's end, or a seat built up on its top.",
    example: r#"pocket PK1 "West seat of T1, notch in the wall end"
  in            W4 from east face
  at            A/3
  seat          98'-11 1/2"
  plate         6" x 10" x 3/4"
  grout         1"
  width         10-1/2"
  depth         6-1/2"
  open          at top and south end
"#,
    facts: &[
        FactSpec::required(
            "in",
            Sequence(&[
                Slot("wall", Kind::Name(&[ElementKind::Wall])),
                Words("from"),
                Slot("side", Kind::Side),
                Words("face"),
            ]),
            "The wall it is in and the face it opens to.",
            "in W4 from east face",
        ),
        FactSpec::required(
            "at",
            Slot("point", Kind::Point),
            "Where the beam's centre line meets the wall.",
            "at A/3",
        ),
        FactSpec::derived("seat", ELEVATION, "The concrete under the grout.", r#"seat 98'-11 1/2""#),
        FactSpec::optional(
            "plate",
            Slot("size", Kind::Dimensions(3, 3)),
            r#"0""#,
            "The steel plate under the beam, width x length x thickness.",
            r#"plate 6" x 10" x 3/4""#,
        ),
        FactSpec::optional("grout", LENGTH, r#"0""#, "The grout between seat and plate.", r#"grout 1""#),
        FactSpec::optional("shim", LENGTH, r#"0""#, "Steel shims between plate and beam.", r#"shim 1/8""#),
        FactSpec::required("width", LENGTH, "How wide it is along the wall.", r#"width 10-1/2""#),
        FactSpec::required(
            "depth",
            LENGTH,
            "How far it goes into the wall, the air behind the beam included.",
            r#"depth 6-1/2""#,
        ),
        FactSpec::optional(
            "height",
            LENGTH,
            "to the wall's top",
            "How high it is above its seat.",
            r#"height 12""#,
        ),
        FactSpec::optional(
            "open",
            OneOf(&[
                Sequence(&[
                    Mark("at top"),
                    Optional(&Sequence(&[Words("and"), Slot("side", Kind::Side), Words("end")])),
                ]),
                Sequence(&[Words("at"), Slot("side", Kind::Side), Words("end")]),
            ]),
            "closed",
            "Where no concrete closes it: at the top of the wall, at its end.",
            "open at top and south end",
        ),
    ],
};
