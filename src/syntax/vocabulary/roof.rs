//! A roof as a load.

use crate::syntax::form::Form::{OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{ALONG_AXIS, BEARS_ON, DECLARED_LOAD, LENGTH, SPACING};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static ROOF: ElementSpec = ElementSpec {
    kind: ElementKind::Roof,
    keyword: "roof",
    also: &[],
    naming: Naming::Name,
    summary: "A roof, as the load it brings to what carries it. Its own members are not designed.",
    example: r#"roof R1 "Main roof"
  fill          A to C by 1 to 3
  dead          15 psf
  snow          42 psf
  kind          trusses
  run           along y
  spacing       24" from A
  bears on      W7
  bears on      W8
  pitch         6 per 12
  overhang      16"
"#,
    facts: &[
        FactSpec::required(
            "fill",
            Slot("rect", Kind::Rect),
            "The plan area whose load goes to its supports.",
            "fill A to C by 1 to 3",
        )
        .repeatable(),
        FactSpec::required("dead", DECLARED_LOAD, "Its weight on plan.", "dead 15 psf"),
        FactSpec::optional("snow", DECLARED_LOAD, "the project's", "Its snow load on plan.", "snow 42 psf"),
        FactSpec::optional("live", DECLARED_LOAD, "", "Its live load on plan.", "live 20 psf"),
        FactSpec::optional(
            "kind",
            Sequence(&[
                Slot("value", Kind::Word(&["rafters", "trusses", "beam"])),
                Optional(&Slot("member", Kind::Member)),
            ]),
            "",
            "What it is built of.",
            "kind rafters 2x10 SPF No.2",
        ),
        FactSpec::optional(
            "run",
            ALONG_AXIS,
            "",
            "Which way its members span. Needed unless one support takes all.",
            "run along y",
        ),
        FactSpec::optional(
            "spacing",
            OneOf(&[SPACING, LENGTH]),
            "",
            "How far apart its members are, and where one of them lies.",
            r#"spacing 24" from A"#,
        ),
        FactSpec::required(
            "bears on",
            BEARS_ON,
            "What carries it. One support takes all, two parallel ones take half each.",
            "bears on W7",
        )
        .repeatable(),
        FactSpec::optional(
            "pitch",
            Sequence(&[Slot("value", Kind::Number), Words("per 12")]),
            "",
            "Its rise for 12 of run; for quantities only.",
            "pitch 6 per 12",
        ),
        FactSpec::optional(
            "overhang",
            LENGTH,
            r#"0""#,
            "How far it runs past its supports; for quantities only.",
            r#"overhang 16""#,
        ),
    ],
};
