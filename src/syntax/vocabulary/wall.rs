//! A concrete, masonry, framed or pony wall.

use crate::syntax::form::Form::{Comma, Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{
    ANCHOR, AT_GRID, COUNTED_MEMBER, DECLARED_LOAD, LENGTH, LOAD_CASE, MEMBER, SILL, SOURCE, STANDS_ON, TOPS,
};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static WALL: ElementSpec = ElementSpec {
    kind: ElementKind::Wall,
    keyword: "wall",
    also: &[],
    naming: Naming::Name,
    summary: "A straight wall. Corners close by themselves; where a wall's top changes level, it is two walls.",
    example: r#"wall W2 "North foundation wall"
  kind          concrete
  from          A/3 to C/3
  line          north face
  thick         10"
  top           99'-0 1/2"
  sill          1 of 2x6 treated, held in 1/2" from north face
  grade         97'-4" on north
  stands on     F9
  status        poured 2027-04-02
  shot          top 99'-0 3/8" on 2027-04-03
"#,
    facts: &[
        FactSpec::required(
            "kind",
            Slot("value", Kind::Word(&["concrete", "masonry", "framed", "pony"])),
            "What it is built as. A pony wall is a short framed wall on concrete.",
            "kind concrete",
        ),
        FactSpec::required("from", Slot("line", Kind::Line), "Where it runs.", "from A/3 to C/3"),
        FactSpec::required(
            "line",
            Sequence(&[
                OneOf(&[
                    Slot("place", Kind::Word(&["centre"])),
                    Sequence(&[Slot("side", Kind::Side), Words("face")]),
                ]),
                Optional(&Sequence(&[Comma, Words("held in"), Slot("held", Kind::Length)])),
            ]),
            "What of it lies on its line: its centre or one face, that face maybe held in from the line.",
            "line north face",
        ),
        FactSpec::optional(
            "thick",
            LENGTH,
            "from its studs",
            "Its thickness. A concrete or masonry wall needs it.",
            r#"thick 10""#,
        ),
        FactSpec::optional(
            "height",
            LENGTH,
            "derived",
            "From the underside of the sole to the top of the plates. A framed wall needs it where nothing above fixes it.",
            r#"height 8'-1 1/8""#,
        ),
        FactSpec::derived(
            "top",
            TOPS,
            "The top of the concrete without its sill, or of the upper plate; several with their places where it slopes. A concrete wall needs it.",
            r#"top 99'-0 1/2""#,
        ),
        FactSpec::optional(
            "sill",
            SILL,
            "centred",
            "The plates on concrete under the wood: how many, of what, and where in the thickness. Needed where wood lands.",
            r#"sill 1 of 2x6 treated, held in 1/2" from north face"#,
        ),
        FactSpec::optional(
            "studs",
            Sequence(&[MEMBER, Words("at"), Slot("at", Kind::Length)]),
            "",
            "Its studs and their spacing. A framed or pony wall needs them.",
            r#"studs 2x6 SPF No.2 at 16""#,
        ),
        FactSpec::optional("sole", COUNTED_MEMBER, "1", "The plates under the studs.", "sole 1 of 2x6 treated"),
        FactSpec::optional("plates", COUNTED_MEMBER, "2", "The plates on the studs.", "plates 2 of 2x6 SPF"),
        FactSpec::optional(
            "grade",
            OneOf(&[
                Mark("none"),
                Sequence(&[
                    Slot("value", Kind::Elevation),
                    Words("on"),
                    Slot("side", Kind::Side),
                    AT_GRID,
                    SOURCE,
                ]),
            ]),
            "",
            "The ground against it, by side; more lines for a second side or a slope. A concrete wall outside needs it.",
            r#"grade 97'-4" on north"#,
        )
        .repeatable(),
        FactSpec::optional(
            "anchor",
            ANCHOR,
            "",
            "The bolts that hold the sill: diameter x length, and their spacing.",
            r#"anchor 5/8" x 12" at 6'-0""#,
        ),
        FactSpec::optional(
            "sheathed",
            OneOf(&[Mark("both sides"), Sequence(&[Slot("side", Kind::Side), Words("side")])]),
            "no",
            "Which sides have structural sheathing.",
            "sheathed north side",
        ),
        FactSpec::optional(
            "bearing",
            Slot("value", Kind::Word(&["yes", "no"])),
            "yes for a pony wall",
            "Whether it is meant to carry. A framed wall must say.",
            "bearing yes",
        ),
        FactSpec::optional(
            "weight",
            DECLARED_LOAD,
            "150 pcf for concrete",
            "Its own weight, by length or by area. A framed wall must say.",
            "weight 100 plf",
        ),
        FactSpec::optional(
            "load",
            LOAD_CASE,
            "",
            "A declared load along its top, from what the spec leaves out.",
            r#"load 435 plf live "second floor""#,
        )
        .repeatable(),
        FactSpec::optional(
            "hold down",
            Sequence(&[
                Words("at"),
                Slot("at", Kind::GridRef),
                Words("by"),
                Slot("words", Kind::Text),
                Slot("capacity", Kind::Load),
                Words("in"),
                Slot("concrete", Kind::Length),
                Words("of concrete"),
                SOURCE,
            ]),
            "",
            "What keeps it from lifting: where along it, by what, what that can take, and in concrete of what thickness at the least.",
            r#"hold down at A plus 6" by "cast-in strap" 2900 lb in 8" of concrete source "strap table""#,
        )
        .repeatable(),
        FactSpec::optional(
            "brace",
            Slot("value", Kind::FreeWords),
            "",
            "How this braced wall line goes on where the level changes.",
            "brace collector strap",
        ),
        FactSpec::required(
            "stands on",
            STANDS_ON,
            "What carries it. `FLOOR over X` promises that it stands straight over X.",
            "stands on main over B1",
        ),
    ],
};
