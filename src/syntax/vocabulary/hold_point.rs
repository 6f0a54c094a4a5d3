//! A point where the work waits for a measurement.

use crate::syntax::form::Form::{OneOf, Slot};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static HOLD_POINT: ElementSpec = ElementSpec {
    kind: ElementKind::HoldPoint,
    keyword: "hold point",
    also: &[],
    naming: Naming::Name,
    summary: "Work that waits until something has been measured: shoot first, then cut.",
    example: r#"hold point HP1 "Den step"
  before        cutting stringers
  shoot         top of W2
  shoot         top of W5
  tolerance     1/8"
"#,
    facts: &[
        FactSpec::required(
            "before",
            OneOf(&[Slot("value", Kind::Text), Slot("value", Kind::FreeWords)]),
            "The work that waits.",
            "before cutting stringers",
        ),
        FactSpec::required(
            "shoot",
            Slot("fact", Kind::FactName),
            "What is to be measured.",
            "shoot top of W2",
        )
        .repeatable(),
        FactSpec::optional(
            "tolerance",
            Slot("value", Kind::Length),
            "the profile's",
            "How far off it may be.",
            r#"tolerance 1/8""#,
        ),
    ],
};
