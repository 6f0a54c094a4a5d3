//! A column or post.

use crate::syntax::form::Form::{Comma, Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{LENGTH, LOAD_CASE, MEMBER, SOURCE, SQUASH, STANDS_ON};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static COLUMN: ElementSpec = ElementSpec {
    kind: ElementKind::Column,
    keyword: "column",
    also: &["post"],
    naming: Naming::Name,
    summary: "An upright of steel, wood or concrete-filled pipe. Plates are written width x length x thickness.",
    example: r#"column C1
  at            B/2
  size          HSS 4 x 4 x 3/16
  cap           plate 7" x 10" x 1/2", long side along B1
  base          plate 9" x 9" x 1/2", grout 1"
  stands on     F1
  cut           should be 96-5/16" within 1/16"
"#,
    facts: &[
        FactSpec::required("at", Slot("point", Kind::Point), "Where its centre stands.", "at B/2"),
        FactSpec::required("size", MEMBER, "What it is.", "size HSS 4 x 4 x 3/16"),
        FactSpec::optional(
            "cap",
            OneOf(&[
                Slot("how", Kind::Word(&["none"])),
                Sequence(&[
                    Slot("how", Kind::Word(&["plate"])),
                    Slot("size", Kind::Dimensions(3, 3)),
                    Optional(&Sequence(&[
                        Comma,
                        Words("long side along"),
                        Slot("along", Kind::Name(&[ElementKind::Beam, ElementKind::Joists])),
                    ])),
                ]),
                Sequence(&[Slot("how", Kind::Word(&["seat"])), Slot("thick", Kind::Length)]),
                Sequence(&[
                    Slot("how", Kind::Word(&["saddle"])),
                    Slot("long", Kind::Length),
                    Words("long"),
                    Optional(&Sequence(&[Comma, Slot("thick", Kind::Length), Words("thick")])),
                ]),
            ]),
            "",
            "What the beam lies on at its top: a plate, a seat of a thickness, a saddle, or nothing. Needed where a beam lies on it.",
            r#"cap plate 7" x 10" x 1/2", long side along B1"#,
        ),
        FactSpec::required(
            "base",
            OneOf(&[
                Sequence(&[
                    Slot("how", Kind::Word(&["plate"])),
                    Slot("size", Kind::Dimensions(3, 3)),
                    Optional(&Sequence(&[Comma, Words("grout"), Slot("grout", Kind::Length)])),
                ]),
                Sequence(&[Slot("how", Kind::Word(&["standoff"])), Slot("standoff", Kind::Length)]),
                Sequence(&[
                    Slot("how", Kind::Word(&["bare"])),
                    Optional(&Sequence(&[Comma, Mark("through the deck")])),
                ]),
            ]),
            "What is under its foot: a plate on grout, a standoff, or nothing; through the deck when it goes down to what carries the deck.",
            r#"base plate 9" x 9" x 1/2", grout 1""#,
        ),
        FactSpec::required(
            "stands on",
            STANDS_ON,
            "What carries it. Its foot is at that thing's top. `FLOOR over X` promises that it stands straight over X.",
            "stands on F1",
        ),
        FactSpec::optional("shim", LENGTH, r#"0""#, "Steel shims on its cap.", r#"shim 1/8""#),
        FactSpec::optional(
            "squash",
            SQUASH,
            "",
            "Blocks under it that carry its load through the joists.",
            "squash 2 of 2x6 SPF under each",
        ),
        FactSpec::optional(
            "length",
            LENGTH,
            "derived",
            "Its length, where nothing above gives it.",
            r#"length 14'-0""#,
        ),
        FactSpec::optional(
            "braced",
            OneOf(&[Mark("none"), Sequence(&[Words("at"), Slot("at", Kind::Length), Words("up")])]),
            "at its ends",
            "How far up something between its ends keeps it from moving sideways.",
            r#"braced at 5'-0" up"#,
        )
        .repeatable(),
        FactSpec::optional(
            "tie",
            Sequence(&[
                Slot("how", Kind::Word(&["top", "bottom"])),
                Words("by"),
                Slot("words", Kind::Text),
                Slot("capacity", Kind::Load),
                SOURCE,
            ]),
            "",
            "What holds its top or its foot in place, and what that can take.",
            r#"tie top by "bent strap" 800 lb source "strap table""#,
        )
        .repeatable(),
        FactSpec::optional(
            "load",
            LOAD_CASE,
            "",
            "A declared load on its top, from what the spec leaves out.",
            r#"load 3840 lb dead "ridge of the old barn""#,
        )
        .repeatable(),
        FactSpec::derived(
            "cut",
            LENGTH,
            "The length of the member alone, without its plates.",
            r#"cut 96-5/16""#,
        ),
    ],
};
