//! A footing.

use crate::syntax::form::Form::{Comma, List, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{DECLARED_STRESS, SOIL, TOPS};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static FOOTING: ElementSpec = ElementSpec {
    kind: ElementKind::Footing,
    keyword: "footing",
    also: &["pad"],
    naming: Naming::Name,
    summary: "A footing on soil: a pad, a pier, or a strip under walls.",
    example: r#"footing F1 "Pad under C1"
  kind          pad
  at            B/2
  size          2'-9" x 2'-9" x 14"
  top           91'-0 1/2"
  bars          4 #5 each way, cover 3"
  concrete      3000 psi
"#,
    facts: &[
        FactSpec::optional(
            "kind",
            Slot("value", Kind::Word(&["pad", "strip", "pier", "stepped"])),
            "pad with `at`, strip with `under`",
            "What it is; `stepped` is a strip that steps.",
            "kind strip",
        ),
        FactSpec::optional(
            "at",
            Slot("point", Kind::Point),
            "",
            "The centre of a pad or pier; several lines are several alike under one mark.",
            "at B/2",
        )
        .repeatable(),
        FactSpec::optional(
            "under",
            List(&Slot("wall", Kind::Name(&[ElementKind::Wall]))),
            "",
            "The walls a strip follows, along their centre lines.",
            "under W1, W2, W3",
        ),
        FactSpec::optional(
            "offset",
            Sequence(&[Slot("value", Kind::Length), Slot("side", Kind::Side)]),
            r#"0""#,
            "How far a strip's centre lies to one side of its walls'.",
            r#"offset 2" south"#,
        ),
        FactSpec::required(
            "size",
            OneOf(&[
                Sequence(&[Slot("round", Kind::Length), Words("round x"), Slot("thick", Kind::Length)]),
                Slot("size", Kind::Dimensions(2, 3)),
            ]),
            "Width x length x thickness of a pad or pier, width x thickness of a strip, or the diameter of a round pier and its height.",
            r#"size 2'-9" x 2'-9" x 14""#,
        ),
        FactSpec::required(
            "top",
            OneOf(&[
                Sequence(&[
                    Slot("below", Kind::Length),
                    Words("below"),
                    Slot("slab", Kind::Name(&[ElementKind::Slab])),
                ]),
                TOPS,
            ]),
            "Its top, as an elevation or as so much below a slab's underside.",
            r#"top 2" below SL1"#,
        ),
        FactSpec::optional(
            "step",
            Sequence(&[Words("down"), Slot("down", Kind::Length), Words("at"), Slot("at", Kind::GridRef)]),
            "none",
            "Where a stepped strip goes down, and by how much.",
            r#"step down 16" at B plus 2'-0""#,
        )
        .repeatable(),
        FactSpec::optional(
            "local pad",
            Sequence(&[Slot("size", Kind::Dimensions(3, 3)), Words("at"), Slot("point", Kind::Point)]),
            "none",
            "A place where a strip is widened under a concentrated load.",
            r#"local pad 3'-0" x 3'-0" x 12" at A/3"#,
        )
        .repeatable(),
        FactSpec::optional(
            "pedestal",
            Sequence(&[
                Slot("size", Kind::Dimensions(2, 2)),
                Comma,
                OneOf(&[
                    Sequence(&[
                        Slot("above", Kind::Length),
                        Words("above"),
                        Slot("slab", Kind::Name(&[ElementKind::Slab])),
                    ]),
                    Sequence(&[Words("top"), Slot("top", Kind::Elevation)]),
                ]),
            ]),
            "none",
            "A short pier on it: its two widths, and its top above a slab's or as an elevation.",
            r#"pedestal 12" x 12", 1" above SL1"#,
        ),
        FactSpec::optional(
            "bars",
            Sequence(&[
                Slot("count", Kind::Count),
                Slot("bar", Kind::Bar),
                Slot("how", Kind::Word(&["each way", "long"])),
                Optional(&Sequence(&[Comma, Words("cover"), Slot("cover", Kind::Length)])),
            ]),
            "plain concrete",
            "Its bars, and the concrete below them.",
            r#"bars 4 #5 each way, cover 3""#,
        )
        .repeatable(),
        FactSpec::optional(
            "concrete",
            DECLARED_STRESS,
            "2500 psi assumed",
            "The concrete's strength at 28 days.",
            "concrete 3000 psi",
        ),
        FactSpec::optional(
            "soil",
            SOIL,
            "the project's",
            "The pressure the soil may take here.",
            "soil 1500 psf gross assumed",
        ),
    ],
};
