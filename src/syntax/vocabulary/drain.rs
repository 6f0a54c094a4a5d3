//! A drain.

use crate::syntax::form::Form::{Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::LENGTH;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static DRAIN: ElementSpec = ElementSpec {
    kind: ElementKind::Drain,
    keyword: "drain",
    also: &[],
    naming: Naming::Name,
    summary: "A drain through a floor, and the way its pipe takes.",
    example: r#"drain DN1 "Bath flange"
  floor         main
  at            A plus 8'-4" / 2 plus 3'-0"
  hole          5"
  pipe          3"
  runs          north 6'-0" at 1/4" per foot
  turns         down
"#,
    facts: &[
        FactSpec::required(
            "floor",
            Slot("floor", Kind::Name(&[ElementKind::Floor])),
            "The floor it goes through.",
            "floor main",
        ),
        FactSpec::required(
            "at",
            Slot("point", Kind::Point),
            "The middle of it.",
            r#"at A plus 8'-4" / 2 plus 3'-0""#,
        ),
        FactSpec::required("hole", LENGTH, "The diameter of the hole in the deck.", r#"hole 5""#),
        FactSpec::optional("pipe", LENGTH, "", "The pipe's outside diameter.", r#"pipe 3""#),
        FactSpec::optional(
            "runs",
            Sequence(&[
                Slot("side", Kind::Side),
                Slot("value", Kind::Length),
                Optional(&Sequence(&[
                    Words("at"),
                    Slot("slope", Kind::Length),
                    Optional(&Words("per foot")),
                ])),
            ]),
            "",
            "Which way its pipe runs under the floor, how far, and how much it falls on each foot.",
            r#"runs north 6'-0" at 1/4" per foot"#,
        )
        .repeatable(),
        FactSpec::optional(
            "turns",
            Slot("value", Kind::FreeWords),
            "",
            "Where its pipe turns at the end of its run.",
            "turns down",
        ),
    ],
};
