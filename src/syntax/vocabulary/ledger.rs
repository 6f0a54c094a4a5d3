//! A ledger on a wall or beam.

use crate::syntax::form::Form::{OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{ELEVATION, MEMBER, SOURCE};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static LEDGER: ElementSpec = ElementSpec {
    kind: ElementKind::Ledger,
    keyword: "ledger",
    also: &[],
    naming: Naming::Name,
    summary: "A member fastened to the face of a wall or beam, from which joists hang.",
    example: r#"ledger L1 "Den joists at the main wall"
  on            W1 south face
  from          A plus 8'-0" / 1 to B plus 6'-3" / 1
  size          2x10 treated
  top           98'-3 7/8"
  fastened      "1/2 in. anchors at 16 in." 400 plf source "anchor table" on 2027-02-01
"#,
    facts: &[
        FactSpec::required(
            "on",
            Sequence(&[
                Slot("support", Kind::Name(&[ElementKind::Wall, ElementKind::Beam, ElementKind::Joists])),
                Optional(&Sequence(&[Slot("side", Kind::Side), Words("face")])),
            ]),
            "What it is fastened to, and on a wall at which face.",
            "on W1 south face",
        ),
        FactSpec::required(
            "from",
            Slot("line", Kind::Line),
            "Where it runs.",
            r#"from A plus 8'-0" / 1 to B plus 6'-3" / 1"#,
        ),
        FactSpec::required("size", MEMBER, "What it is.", "size 2x10 treated"),
        FactSpec::derived("top", ELEVATION, "Its upper edge.", r#"top 98'-3 7/8""#),
        FactSpec::required(
            "fastened",
            Sequence(&[
                OneOf(&[Slot("words", Kind::Text), Slot("words", Kind::FreeWords)]),
                Slot("capacity", Kind::Load),
                SOURCE,
            ]),
            "How it is fastened and what each foot of it may carry.",
            r#"fastened "1/2 in. anchors at 16 in." 400 plf source "anchor table" on 2027-02-01"#,
        ),
    ],
};
