//! A field of joists.

use crate::syntax::form::Form::{Mark, OneOf, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{
    ALONG_AXIS, BEARS_ON, BY_GRID, HANGS_FROM, JOIST_JOINT, MEMBER, SPACING, SUPPORTS,
};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static JOISTS: ElementSpec = ElementSpec {
    kind: ElementKind::Joists,
    keyword: "joists",
    also: &["joist"],
    naming: Naming::Name,
    summary: "A field of joists of one size under one floor, over one bay or several. Two supports are the least.",
    example: r#"joists J1 "Main joists"
  floor         main
  size          2x10 SPF No.2
  fill          A to C by 1 to 3
  run           along y
  spacing       16" from A
  joint         over B1
  bears on      W2 for 3-7/8"
  hangs from    B1 by hanger 1100 lb "face mount" source "hanger schedule"
  bears on      W1 for 3-7/8"
  blocked       solid over W1
"#,
    facts: &[
        FactSpec::required(
            "floor",
            Slot("floor", Kind::Name(&[ElementKind::Floor])),
            "The floor they carry; it gives their level and their load.",
            "floor main",
        ),
        FactSpec::required("size", MEMBER, "What each joist is.", "size 2x10 SPF No.2"),
        FactSpec::required(
            "fill",
            Slot("rect", Kind::Rect),
            "The plan area they carry. Its edges lie on lines of support or on the field's edge.",
            "fill A to C by 1 to 3",
        )
        .repeatable(),
        FactSpec::required("run", ALONG_AXIS, "Which way they span.", "run along y"),
        FactSpec::required(
            "spacing",
            SPACING,
            "How far apart they are, centre to centre, and where the centre of one of them lies.",
            r#"spacing 16" from A"#,
        ),
        FactSpec::optional(
            "rim",
            OneOf(&[Mark("none"), MEMBER, Slot("value", Kind::Length)]),
            "one of the same joists",
            "What closes the joists' ends at the outer bearings.",
            r#"rim 1-1/8" rim board"#,
        ),
        FactSpec::optional(
            "bears on",
            BEARS_ON,
            "the whole support less the rim",
            "A support they lie on, and for how long they touch it, counted from the edge nearest to the span.",
            r#"bears on W2 for 3-7/8""#,
        )
        .repeatable(),
        FactSpec::optional(
            "hangs from",
            HANGS_FROM,
            "",
            "A support they hang from at its side, and by what. They end there.",
            r#"hangs from B1 by hanger 1100 lb "face mount" source "hanger schedule""#,
        )
        .repeatable(),
        FactSpec::optional(
            "joint",
            JOIST_JOINT,
            "they run through",
            "A support where the pieces end, side by side or lapped by a length. Without it they are continuous there.",
            r#"joint lapped 8" over B1"#,
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
            "blocked",
            Sequence(&[
                Slot("how", Kind::Word(&["solid", "x-bridging"])),
                OneOf(&[
                    Sequence(&[Words("over"), Slot("support", Kind::Name(SUPPORTS))]),
                    Sequence(&[Words("at"), Slot("at", Kind::GridRef)]),
                    Sequence(&[Words("beside"), Slot("wall", Kind::Name(&[ElementKind::Wall]))]),
                ]),
            ]),
            "",
            "Where they are kept from rolling, and how. Solid blocking also carries what stands above it. Beside a wall that they run along, the blocking of the first bays hands the wall's thrust on to the deck.",
            "blocked solid over W1",
        )
        .repeatable(),
        FactSpec::optional(
            "doubled",
            Sequence(&[Words("under"), Slot("wall", Kind::Name(&[ElementKind::Wall]))]),
            "no",
            "A wall that runs along them and has two of them under it, side by side.",
            "doubled under W7",
        )
        .repeatable(),
        FactSpec::optional(
            "deck edge",
            Slot("value", Kind::GridRef),
            "the edge of the fill",
            "Where the deck ends when it runs past the fill or stops short of it. It changes no load.",
            r#"deck edge 3 less 4-5/8""#,
        )
        .repeatable(),
        FactSpec::optional(
            "cantilever",
            Sequence(&[
                Words("past"),
                Slot("support", Kind::Name(SUPPORTS)),
                Words("by"),
                Slot("by", Kind::Length),
            ]),
            "none",
            "How far they run out past their last support.",
            r#"cantilever past W1 by 2'-0""#,
        )
        .repeatable(),
    ],
};
