//! A slab on ground.

use crate::syntax::form::Form::{OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{DECLARED_STRESS, ELEVATION, LENGTH};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static SLAB: ElementSpec = ElementSpec {
    kind: ElementKind::Slab,
    keyword: "slab",
    also: &[],
    naming: Naming::Name,
    summary: "A concrete slab on ground.",
    example: r#"slab SL1 "Basement slab"
  fill          A plus 10" to C less 10" by 1 plus 10" to 3 less 10"
  top           91'-4 1/2"
  thick         4"
  insulation    2"
  base          crushed stone 4"
  joint         round C1
"#,
    facts: &[
        FactSpec::required(
            "fill",
            Slot("rect", Kind::Rect),
            "Where it lies in plan.",
            r#"fill A plus 10" to C less 10" by 1 plus 10" to 3 less 10""#,
        )
        .repeatable(),
        FactSpec::required("top", ELEVATION, "Its upper surface.", r#"top 91'-4 1/2""#),
        FactSpec::required("thick", LENGTH, "Its thickness.", r#"thick 4""#),
        FactSpec::optional("insulation", LENGTH, r#"0""#, "The insulation under it.", r#"insulation 2""#),
        FactSpec::optional(
            "base",
            Sequence(&[Optional(&Slot("words", Kind::FreeWords)), Slot("value", Kind::Length)]),
            r#"0""#,
            "The layer it lies on.",
            r#"base crushed stone 4""#,
        ),
        FactSpec::optional(
            "concrete",
            DECLARED_STRESS,
            "2500 psi assumed",
            "The concrete's strength at 28 days.",
            "concrete 3000 psi",
        ),
        FactSpec::optional(
            "joint",
            OneOf(&[
                Sequence(&[Words("round"), Slot("post", Kind::Name(&[ElementKind::Column]))]),
                Sequence(&[Words("along"), Slot("wall", Kind::Name(&[ElementKind::Wall]))]),
            ]),
            "none",
            "Where it is parted from what stands in it.",
            "joint round C1",
        )
        .repeatable(),
    ],
};
