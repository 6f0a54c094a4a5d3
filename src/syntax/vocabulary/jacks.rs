//! Jack studs under a header.

use crate::syntax::form::Form::{Mark, OneOf, Sequence, Slot};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{COUNTED_MEMBER, OPENINGS, SQUASH, STANDS_ON};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static JACKS: ElementSpec = ElementSpec {
    kind: ElementKind::Jacks,
    keyword: "jacks",
    also: &[],
    naming: Naming::Name,
    summary: "The studs under a header's ends, beside the opening.",
    example: r#"jacks JK1 "Jacks at the door in the middle wall"
  at            DR1 both sides
  size          2 of 2x6 SPF No.2
  kings         1
  stands on     main over B1
  squash        2 of 2x6 SPF under each
"#,
    facts: &[
        FactSpec::required(
            "at",
            Sequence(&[
                Slot("opening", Kind::Name(OPENINGS)),
                OneOf(&[Mark("both sides"), Slot("side", Kind::Side)]),
            ]),
            "The opening they stand beside, on both sides of it or on one.",
            "at DR1 both sides",
        ),
        FactSpec::required(
            "size",
            COUNTED_MEMBER,
            "How many on each side, and of what.",
            "size 2 of 2x6 SPF No.2",
        ),
        FactSpec::optional(
            "kings",
            Slot("value", Kind::Count),
            "1",
            "How many full studs stand beside them on each side.",
            "kings 2",
        ),
        FactSpec::required(
            "stands on",
            STANDS_ON,
            "What carries them. `FLOOR over X` promises that they stand straight over X.",
            "stands on main over B1",
        ),
        FactSpec::optional(
            "squash",
            SQUASH,
            "",
            "Blocks under them that carry their load through the joists.",
            "squash 2 of 2x6 SPF under each",
        ),
    ],
};
