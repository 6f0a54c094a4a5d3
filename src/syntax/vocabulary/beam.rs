//! A beam.

use crate::syntax::form::Form::{Comma, Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{
    BEARS_ON, BY_GRID, CASES, FOOTS, HANGS_FROM, HOLE_ALONG, LENGTH, MEMBER, SOURCE, SUPPORTS,
};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static BEAM: ElementSpec = ElementSpec {
    kind: ElementKind::Beam,
    keyword: "beam",
    also: &["girder"],
    naming: Naming::Name,
    summary: "A beam in one piece, or in several that meet over supports.",
    example: r#"beam B1 "Center girder"
  size          W8x24
  from          A/2 to C/2
  set           flush in main, held 1/2" low
  joint         over C1
  span          by grid
  bears on      PK1 for 7"
  bears on      C1 for 9"
  bears on      PK2 for 7"
  bottom        should be 99'-2 13/16" within 1/16"
"#,
    facts: &[
        FactSpec::required("size", MEMBER, "What it is.", "size W8x24"),
        FactSpec::required("from", Slot("line", Kind::Line), "Its centre line from end to end.", "from A/2 to C/2"),
        FactSpec::required(
            "set",
            OneOf(&[
                Sequence(&[
                    Slot("how", Kind::Word(&["flush in"])),
                    Slot("floor", Kind::Name(&[ElementKind::Floor])),
                    Optional(&Sequence(&[
                        Comma,
                        Words("held"),
                        Slot("held", Kind::Length),
                        Optional(&Words("low")),
                    ])),
                ]),
                Sequence(&[
                    Slot("how", Kind::Word(&["dropped under"])),
                    Slot("floor", Kind::Name(&[ElementKind::Floor])),
                    Optional(&Sequence(&[Comma, Words("packed"), Slot("packed", Kind::Length)])),
                ]),
                Sequence(&[
                    Slot("how", Kind::Word(&["upset in"])),
                    Slot("floor", Kind::Name(&[ElementKind::Floor])),
                    Words("by"),
                    Slot("by", Kind::Length),
                ]),
                Sequence(&[Slot("how", Kind::Word(&["top"])), Slot("top", Kind::Elevation)]),
            ]),
            "What fixes its top: flush with the joists of a floor and held so much low; dropped under them, packed by so much; upset so far above the subfloor; or an elevation.",
            r#"set flush in main, held 1/2" low"#,
        ),
        FactSpec::optional(
            "nailer",
            Sequence(&[MEMBER, Words("flat on top"), Optional(&Sequence(&[Comma, Mark("bolted")]))]),
            "none",
            "A plank flat on its top, in the stack of whatever bears on it.",
            "nailer 2x10 SPF flat on top, bolted",
        ),
        FactSpec::optional(
            "packing",
            Sequence(&[
                OneOf(&[Slot("how", Kind::Word(&["solid 2x"])), MEMBER]),
                Slot("words", Kind::Word(&["in web", "on flange", "on face"])),
                Optional(&Sequence(&[Comma, OneOf(&[Mark("both sides"), Sequence(&[Slot("side", Kind::Side), Words("side")])])])),
            ]),
            "none",
            "Wood bolted to steel so that hangers can be nailed: what, where and on which side.",
            "packing solid 2x in web, south side",
        )
        .repeatable(),
        FactSpec::optional(
            "joint",
            Sequence(&[
                Words("over"),
                Slot("support", Kind::Name(SUPPORTS)),
                Optional(&Sequence(&[Comma, Slot("how", Kind::Word(&["lapped", "spliced"]))])),
            ]),
            "one piece",
            "A support where pieces or plies meet. The spans on its two sides are then simple spans.",
            "joint over C1, spliced",
        )
        .repeatable(),
        FactSpec::optional(
            "span",
            BY_GRID,
            "between centres of bearing",
            "Takes spans from ends and joints instead, which is the safe side.",
            "span by grid",
        ),
        FactSpec::optional(
            "bears on",
            BEARS_ON,
            "all that the support gives",
            "A support it lies on, and the length of real contact, both pieces together where they meet. In a pocket the length must stand.",
            r#"bears on PK1 for 7""#,
        )
        .repeatable(),
        FactSpec::optional(
            "hangs from",
            HANGS_FROM,
            "",
            "A support it hangs from at its side, and by what.",
            r#"hangs from B2 by clip 6800 lb "double angle" source "shop drawing""#,
        )
        .repeatable(),
        FactSpec::optional(
            "laid",
            Slot("value", Kind::Word(&["on edge", "flat"])),
            "on edge",
            "Whether it stands on its narrow or lies on its wide side.",
            "laid flat",
        ),
        FactSpec::derived(
            "braced",
            OneOf(&[
                Mark("none"),
                Sequence(&[Words("at"), Slot("at", Kind::Length)]),
                Sequence(&[Words("by"), Slot("joists", Kind::Name(&[ElementKind::Joists]))]),
            ]),
            "What keeps its upper edge from moving sideways; without it, the joists in contact.",
            "braced by J1",
        ),
        FactSpec::optional(
            "load",
            Sequence(&[
                Slot("value", Kind::Load),
                Slot("case", Kind::Word(CASES)),
                Optional(&OneOf(&[
                    Sequence(&[
                        Words("from"),
                        Slot("from", Kind::GridRef),
                        Words("to"),
                        Slot("to", Kind::GridRef),
                    ]),
                    Sequence(&[Words("at"), Slot("at", Kind::GridRef)]),
                ])),
                Optional(&Slot("words", Kind::Text)),
                SOURCE,
            ]),
            "",
            "A declared load from what the spec leaves out: all along it, over a stretch, or at a place.",
            r#"load 435 plf live from A to B "second floor""#,
        )
        .repeatable(),
        FactSpec::optional(
            "transfers",
            Sequence(&[
                Slot("post", Kind::Name(&[ElementKind::Column, ElementKind::Jacks])),
                Words("to"),
                Slot("support", Kind::Name(FOOTS)),
            ]),
            "",
            "A post stands on it away from the support below, and that is meant.",
            "transfers P1 to C1",
        )
        .repeatable(),
        FactSpec::optional(
            "hole",
            HOLE_ALONG,
            "",
            "A hole through it, and how far the hole's middle is above its bottom.",
            r#"hole 2" dia at B plus 4'-0", 5" above bottom"#,
        )
        .repeatable(),
        FactSpec::optional(
            "stiffener",
            OneOf(&[
                Sequence(&[Mark("none"), SOURCE]),
                Sequence(&[Words("at"), Slot("at", Kind::GridRef)]),
            ]),
            "",
            "Where plates stiffen its web; `none` where somebody has looked at the web and it needs none.",
            "stiffener at B",
        )
        .repeatable(),
        FactSpec::derived("cut", LENGTH, "The length the shop cuts it to.", r#"cut 17'-8 1/2""#),
    ],
};
