//! A load of its own.

use crate::syntax::form::Form::Slot;
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{CASES, DECLARED_LOAD, LOADED};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static LOAD: ElementSpec = ElementSpec {
    kind: ElementKind::Load,
    keyword: "load",
    also: &[],
    naming: Naming::Name,
    summary: "A load of its own: a tub, a stove, a stack of books. It stands at a point, along a line or on an area.",
    example: r#"load LD2 "Masonry heater"
  on            main
  fill          B plus 2'-0" to B plus 6'-0" by 2 to 2 plus 4'-0"
  amount        180 psf
  case          dead
  source        "heater's data sheet" on 2027-02-11
"#,
    facts: &[
        FactSpec::required("on", Slot("element", Kind::Name(LOADED)), "What it stands on.", "on main"),
        FactSpec::optional(
            "at",
            Slot("point", Kind::Point),
            "",
            "Where it stands, when it is a single force. One of `at`, `from` and `fill` must stand.",
            r#"at B plus 2'-0" / 2"#,
        ),
        FactSpec::optional(
            "from",
            Slot("line", Kind::Line),
            "",
            "Where it runs, when it is a load along a line.",
            "from A/2 to B/2",
        ),
        FactSpec::optional(
            "fill",
            Slot("rect", Kind::Rect),
            "",
            "Where it lies, when it is a load on an area.",
            r#"fill B plus 2'-0" to B plus 6'-0" by 2 to 2 plus 4'-0""#,
        ),
        FactSpec::required(
            "amount",
            DECLARED_LOAD,
            "How much: psf on an area, plf along a line, lb at a point.",
            "amount 180 psf",
        ),
        FactSpec::required("case", Slot("case", Kind::Word(CASES)), "Its load case.", "case dead"),
    ],
};
