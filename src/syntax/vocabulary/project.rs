//! The house itself.

use crate::syntax::form::Form::{Mark, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{DECLARED_LOAD, SOIL, SOURCE};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static PROJECT: ElementSpec = ElementSpec {
    kind: ElementKind::Project,
    keyword: "project",
    also: &[],
    naming: Naming::Title,
    summary: "The house as a whole: the limits that apply, the ground, the snow and the level everything is measured from. A spec has exactly one, in its root file.",
    example: r#"project "Alder House"
  profile       irc-2021
  limit         riser-difference 3/8"
  datum         main subfloor 100'-0"
  benchmark     "nail in the north gatepost" at 97'-6"
  frost         48"
  soil          2000 psf net source "soils report" on 2027-01-20
  snow          42 psf on roof
"#,
    facts: &[
        FactSpec::required(
            "profile",
            Slot("value", Kind::Slug),
            "The named set of limits that the rules use.",
            "profile irc-2021",
        ),
        FactSpec::optional(
            "limit",
            Sequence(&[Slot("limit", Kind::Slug), Slot("value", Kind::AnyValue), SOURCE]),
            "the profile's",
            "Puts one limit of the profile aside for another value; findings that rest on it say so.",
            r#"limit riser-difference 3/8""#,
        )
        .repeatable(),
        FactSpec::optional(
            "severity",
            Sequence(&[
                Slot("rule", Kind::Slug),
                Slot("value", Kind::Word(&["error", "warning", "advice", "off"])),
                Optional(&Sequence(&[Words("because"), Slot("reason", Kind::Text)])),
            ]),
            "the rule's own",
            "How much one rule matters in this house, or that it does not. Less than by itself needs a reason; a rule that means danger, or finds what is wrong with the text itself, can only matter more.",
            r#"severity flush-steel-no-gap advice because "the joists are dry when they come""#,
        )
        .repeatable(),
        FactSpec::required(
            "datum",
            Sequence(&[
                Slot("floor", Kind::Name(&[ElementKind::Floor])),
                Slot("how", Kind::Word(&["subfloor", "finish"])),
                Slot("value", Kind::Elevation),
            ]),
            "The floor surface whose elevation everything is measured from. It places that floor, and must agree with the floor's own number where there is one.",
            r#"datum main subfloor 100'-0""#,
        ),
        FactSpec::optional(
            "benchmark",
            Sequence(&[Slot("words", Kind::Text), Words("at"), Slot("at", Kind::Elevation)]),
            "",
            "The mark on site from which the rod list counts.",
            r#"benchmark "nail in the north gatepost" at 97'-6""#,
        ),
        FactSpec::optional(
            "frost",
            Sequence(&[Slot("value", Kind::Length), SOURCE]),
            "",
            "How deep frost goes. Needed as soon as a footing stands outside.",
            r#"frost 48""#,
        ),
        FactSpec::optional(
            "soil",
            SOIL,
            "1500 psf gross assumed",
            "The pressure the soil may take, net of or with the footing's own weight.",
            r#"soil 2000 psf net source "soils report" on 2027-01-20"#,
        ),
        FactSpec::optional(
            "snow",
            Sequence(&[
                Slot("value", Kind::Load),
                Words("on"),
                Slot("place", Kind::Word(&["roof", "ground"])),
                SOURCE,
            ]),
            "",
            "The snow load of every roof that states none.",
            "snow 42 psf on roof",
        ),
        FactSpec::optional(
            "moisture",
            Sequence(&[
                Words("install"),
                Slot("install", Kind::Percent),
                Words("service"),
                Slot("service", Kind::Percent),
            ]),
            "install 19% service 9%",
            "How wet sawn wood is when built in and once the house is lived in; what it shrinks follows.",
            "moisture install 19% service 9%",
        ),
        FactSpec::optional(
            "seismic",
            Sequence(&[
                Optional(&Mark("category")),
                Slot("value", Kind::Word(&["A", "B", "C", "D0", "D1", "D2", "E"])),
                SOURCE,
            ]),
            "",
            "The seismic design category. It only raises flags; nothing is designed for it.",
            "seismic category C",
        ),
        FactSpec::optional(
            "wind",
            DECLARED_LOAD,
            "",
            "The wind pressure. It only raises flags; nothing is designed for it.",
            "wind 20 psf",
        ),
    ],
};
