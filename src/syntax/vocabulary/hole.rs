//! A hole.

use crate::syntax::form::Form::{Mark, OneOf, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{LENGTH, MEMBERS};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static HOLE: ElementSpec = ElementSpec {
    kind: ElementKind::Hole,
    keyword: "hole",
    also: &[],
    naming: Naming::Name,
    summary: "A hole through members.",
    example: r#"hole HL1 "Supply line"
  in            J1
  at            2 plus 4'-0"
  size          2" dia
  above bottom  4"
"#,
    facts: &[
        FactSpec::required(
            "in",
            Slot("element", Kind::Name(MEMBERS)),
            "The members it goes through.",
            "in J1",
        ),
        FactSpec::required(
            "at",
            OneOf(&[Mark("each"), Slot("at", Kind::GridRef)]),
            "Where along them its middle is; `each` when every member has it, wherever it is.",
            r#"at 2 plus 4'-0""#,
        ),
        FactSpec::required(
            "size",
            OneOf(&[
                Sequence(&[Slot("dia", Kind::Length), Words("dia")]),
                Slot("size", Kind::Dimensions(2, 2)),
            ]),
            "Its diameter, or width x height.",
            r#"size 2" dia"#,
        ),
        FactSpec::optional(
            "above bottom",
            LENGTH,
            "mid-depth",
            "How far its middle is above the members' bottom.",
            r#"above bottom 4""#,
        ),
    ],
};
