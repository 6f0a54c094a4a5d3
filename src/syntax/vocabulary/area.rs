//! Part of a floor.

use crate::syntax::form::Form::{Nothing, Optional, Sequence, Slot};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{DECLARED_LOAD, USES};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static AREA: ElementSpec = ElementSpec {
    kind: ElementKind::Area,
    keyword: "area",
    also: &[],
    naming: Naming::Name,
    summary: "Part of a floor with a use, a load or a finish of its own.",
    example: r#"area shower "Shower at the north wall"
  in            main
  fill          A to A plus 5'-0" by 3 less 4'-0" to 3
  use           bath
  dead          24 psf
  finish        tile bed 1-1/4"
"#,
    facts: &[
        FactSpec::required(
            "in",
            Slot("floor", Kind::Name(&[ElementKind::Floor])),
            "The floor it is part of.",
            "in main",
        ),
        FactSpec::required(
            "fill",
            Slot("rect", Kind::Rect),
            "Where it lies in plan.",
            r#"fill A to A plus 5'-0" by 3 less 4'-0" to 3"#,
        )
        .repeatable(),
        FactSpec::optional(
            "use",
            Slot("value", Kind::Word(USES)),
            "the floor's",
            "What it is for.",
            "use bath",
        ),
        FactSpec::optional(
            "live",
            DECLARED_LOAD,
            "the floor's",
            "Its live load, in place of the floor's.",
            "live 60 psf",
        ),
        FactSpec::optional(
            "dead",
            DECLARED_LOAD,
            "the floor's",
            "Its dead load, in place of the floor's.",
            "dead 24 psf",
        ),
        FactSpec::optional(
            "finish",
            Sequence(&[Optional(&Slot("words", Kind::FreeWords)), Slot("value", Kind::Length)]),
            "the floor's",
            "Its build-up on the deck; the walking surface changes by the difference.",
            r#"finish tile bed 1-1/4""#,
        ),
        FactSpec::optional("no column", Nothing, "", "No column may stand strictly inside it.", "no column"),
    ],
};
