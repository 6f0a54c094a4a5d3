//! A drawing sheet and the numbers it shows.

use crate::syntax::form::Form::{List, OneOf, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::NAMED;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static SHEET: ElementSpec = ElementSpec {
    kind: ElementKind::Sheet,
    keyword: "sheet",
    also: &[],
    naming: Naming::Name,
    summary: "A drawing sheet and the numbers that stand on it, so that a sheet which no longer agrees is found.",
    example: r#"sheet A-301 "Section through the den"
  shows         top of W2 = 99'-0 1/2"
  shows         riser of S2 = 6-1/2"
  counts        4 of F5
  schedules     C1, C2
  string        17'-9", 17'-9" = 35'-6"
  refers to     S-102
  checked       2027-03-14
  scale         1/4" = 1'-0"
"#,
    facts: &[
        FactSpec::optional(
            "shows",
            Slot("comparison", Kind::Comparison),
            "",
            "A number on the sheet and the fact it is of.",
            r#"shows top of W2 = 99'-0 1/2""#,
        )
        .repeatable(),
        FactSpec::optional(
            "counts",
            Sequence(&[
                Slot("count", Kind::Count),
                Words("of"),
                OneOf(&[Slot("kind", Kind::Word(COUNTED)), Slot("element", Kind::Name(NAMED))]),
            ]),
            "",
            "How many of a kind or of a mark the sheet shows.",
            "counts 4 of F5",
        )
        .repeatable(),
        FactSpec::optional(
            "schedules",
            List(&Slot("element", Kind::Name(NAMED))),
            "",
            "The elements in a schedule on the sheet.",
            "schedules C1, C2",
        )
        .repeatable(),
        FactSpec::optional(
            "string",
            Sequence(&[List(&Slot("value", Kind::Length)), Words("="), Slot("sum", Kind::Length)]),
            "",
            "A string of dimensions on the sheet, and the total beside it.",
            r#"string 17'-9", 17'-9" = 35'-6""#,
        )
        .repeatable(),
        FactSpec::optional(
            "refers to",
            Slot("sheet", Kind::Name(&[ElementKind::Sheet])),
            "",
            "A sheet that this one points to.",
            "refers to S-102",
        )
        .repeatable(),
        FactSpec::optional(
            "checked",
            Slot("date", Kind::Date),
            "",
            "When somebody last compared the sheet with the spec.",
            "checked 2027-03-14",
        ),
        FactSpec::optional(
            "scale",
            OneOf(&[
                Sequence(&[Slot("paper", Kind::Length), Words("="), Slot("real", Kind::Length)]),
                Slot("value", Kind::FreeWords),
            ]),
            "",
            "Its scale.",
            r#"scale 1/4" = 1'-0""#,
        ),
    ],
};

const COUNTED: &[&str] = &[
    "beams",
    "columns",
    "doors",
    "drains",
    "ducts",
    "floors",
    "footings",
    "headers",
    "holes",
    "jacks",
    "joists",
    "landings",
    "ledgers",
    "notches",
    "openings",
    "pockets",
    "roofs",
    "shelves",
    "slabs",
    "squash blocks",
    "stairs",
    "stoops",
    "walls",
    "windows",
];
