//! A promise of the design.

use crate::syntax::form::Form::{OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::NAMED;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static INTENT: ElementSpec = ElementSpec {
    kind: ElementKind::Intent,
    keyword: "intent",
    also: &[],
    naming: Naming::Title,
    summary: "Something the design promises, so that the change that breaks it is seen.",
    example: r#"intent "Clear bay beside the den"
  keep          finish of den = top of SL2 within 1/4"
  keep          bottom of B1 >= bottom of J1
  keep          W7 over B1 within 1"
  keep          J1 meeting J2
  keep          main step-free to porch
  keep          den level with terrace within 1/4"
  keep          face of W2 straight from A/3 to C/3
  nothing below ceiling of main in A to C by 1 to 2
  no column     in A to C by 2 to 3
  for           "the owner, for the workbench"
"#,
    facts: &[
        FactSpec::optional(
            "keep",
            OneOf(&[
                Sequence(&[
                    Words("face of"),
                    Slot("wall", Kind::Name(&[ElementKind::Wall])),
                    Slot("how", Kind::Word(&["straight"])),
                    Words("from"),
                    Slot("line", Kind::Line),
                ]),
                Sequence(&[
                    Slot("first", Kind::Name(NAMED)),
                    Slot("how", Kind::Word(&["over", "level with"])),
                    Slot("second", Kind::Name(NAMED)),
                    Optional(&Sequence(&[Words("within"), Slot("within", Kind::Length)])),
                ]),
                Sequence(&[
                    Slot("first", Kind::Name(NAMED)),
                    Slot("how", Kind::Word(&["meeting"])),
                    Slot("second", Kind::Name(NAMED)),
                ]),
                Sequence(&[
                    Slot("first", Kind::Name(FLOORS)),
                    Slot("how", Kind::Word(&["step-free"])),
                    Words("to"),
                    Slot("second", Kind::Name(FLOORS)),
                ]),
                Slot("comparison", Kind::Comparison),
            ]),
            "",
            "What is to hold: a comparison of facts, one thing over, level with or meeting another, a way without a step, a wall face that goes straight on.",
            r#"keep finish of den = top of SL2 within 1/4""#,
        )
        .repeatable(),
        FactSpec::optional(
            "nothing below",
            Sequence(&[
                Slot("fact", Kind::FactName),
                Optional(&Sequence(&[Words("in"), Slot("rect", Kind::Rect)])),
            ]),
            "",
            "No beam, duct or pipe may come lower than this level, in an area or anywhere.",
            "nothing below ceiling of main in A to C by 1 to 2",
        )
        .repeatable(),
        FactSpec::optional(
            "no column",
            Sequence(&[Words("in"), Slot("rect", Kind::Rect)]),
            "",
            "No column may stand strictly inside this area; on its edge it may.",
            "no column in A to C by 2 to 3",
        )
        .repeatable(),
        FactSpec::optional(
            "for",
            Slot("value", Kind::Text),
            "",
            "Who wants it, and why.",
            r#"for "the owner, for the workbench""#,
        ),
    ],
};

const FLOORS: &[ElementKind] =
    &[ElementKind::Floor, ElementKind::Slab, ElementKind::Landing, ElementKind::Stoop];
