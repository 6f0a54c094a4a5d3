//! Facts that may stand in any element.

use crate::syntax::form::Form::{self, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::FactSpec;
use crate::syntax::vocabulary::parts::{AT_GRID, SOURCE_DATE};

/// The facts of every element.
pub static COMMON: &[FactSpec] = &[
    FactSpec::optional(
        "status",
        Sequence(&[
            Slot("value", Kind::Word(&["drawn", "ordered", "poured", "set"])),
            Optional(&Slot("date", Kind::Date)),
        ]),
        "the project's status, else drawn",
        "How far it is built, and since when. On the project it holds for every element that has none of its own.",
        r#"status poured 2027-04-02"#,
    ),
    FactSpec::optional(
        "shot",
        Sequence(&[SHOT, Words("on"), Slot("date", Kind::Date)]),
        "",
        "A measurement of what was built. Shims, cuts and risers follow from it.",
        r#"shot top 99'-0 3/8" on 2027-04-03"#,
    )
    .repeatable(),
    FactSpec::optional(
        "accept",
        Sequence(&[Slot("words", Kind::Text), Words("on"), Slot("date", Kind::Date)]),
        "",
        "Somebody has seen that this ordered, poured or set element disagrees with the rest, and has decided what to do.",
        r#"accept "shim 3/16 in. at the west end" on 2027-04-10"#,
    )
    .repeatable(),
    FactSpec::optional(
        "waive",
        Sequence(&[
            Slot("rule", Kind::Slug),
            Words("because"),
            Slot("reason", Kind::Text),
            Optional(&Sequence(&[Words("until"), Slot("until", Kind::Date)])),
        ]),
        "",
        "Silences one rule in this element. It needs a reason, and it is reported once it silences nothing or its day has passed.",
        r#"waive bearing-short because "seat widened on site, letter of 3 May" until 2027-09-01"#,
    )
    .repeatable(),
    FactSpec::optional(
        "source",
        Sequence(&[Slot("source", Kind::Text), SOURCE_DATE]),
        "",
        "Where every declared value of the element comes from, unless a line names its own source.",
        r#"source "supplier's table 4" on 2027-01-15"#,
    ),
];

/// The one spec of every claim: a derivable fact of its own element and the value the author expects. It is compared
/// and never used.
pub static CLAIM: FactSpec = FactSpec::optional(
    "should be",
    Sequence(&[
        Slot("fact", Kind::FactName),
        Words("should be"),
        Slot("value", Kind::AnyValue),
        Optional(&Sequence(&[Words("within"), Slot("within", Kind::Length)])),
    ]),
    "",
    "What a derivable fact of this element should come to. Compared with what follows from everything else, never used.",
    r#"cut should be 96-5/16" within 1/16""#,
)
.repeatable();

const SHOT: Form = OneOf(&[
    Sequence(&[Slot("fact", Kind::Word(&["at"])), Slot("value", Kind::Point)]),
    Sequence(&[Slot("fact", Kind::Word(&["length"])), Slot("value", Kind::Length)]),
    Sequence(&[
        Slot("fact", Kind::Word(&["top", "bottom", "seat", "subfloor", "finish"])),
        Slot("value", Kind::Elevation),
        OneOf(&[Sequence(&[Words("at"), Slot("at", Kind::Point)]), AT_GRID]),
    ]),
]);
