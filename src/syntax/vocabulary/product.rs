//! A declared product.

use crate::syntax::form::Form::{List, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::LENGTH;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static PRODUCT: ElementSpec = ElementSpec {
    kind: ElementKind::Product,
    keyword: "product",
    also: &[],
    naming: Naming::Name,
    summary: "A member or connector whose strength its supplier declares. Members name it as their size.",
    example: r#"product LV12
  kind          composite lumber 1-3/4 x 11-7/8
  values        E 2.0e6 psi, Fb 2600 psi, Fv 285 psi, Fc-perp 750 psi
  cross grain   dry
  source        "supplier's data sheet" on 2027-01-15
"#,
    facts: &[
        FactSpec::required(
            "kind",
            OneOf(&[
                Sequence(&[
                    Slot("value", Kind::Word(&["composite lumber", "glulam", "timber"])),
                    Slot("size", Kind::Dimensions(2, 2)),
                ]),
                Sequence(&[Slot("value", Kind::Word(&["rolled"])), Slot("size", Kind::Dimensions(2, 4))]),
                Sequence(&[Slot("value", Kind::Word(&["I-joist"])), Slot("depth", Kind::Length)]),
                Sequence(&[Slot("value", Kind::Word(&["filled pipe"])), Slot("dia", Kind::Length)]),
                Slot("value", Kind::Word(&["hanger"])),
            ]),
            "What it is made as, and its size: width x depth; for a rolled shape depth x width x web x flange. It decides which values are asked for.",
            "kind composite lumber 1-3/4 x 11-7/8",
        ),
        FactSpec::required(
            "values",
            List(&OneOf(&[
                Sequence(&[
                    Slot("symbol", Kind::Word(&["E", "Emin", "Fb", "Fv", "Fc-perp", "Fc", "Ft", "Fy"])),
                    Slot("value", Kind::Stress),
                ]),
                Sequence(&[Slot("symbol", Kind::Word(&["density"])), Slot("value", Kind::Load)]),
                Sequence(&[
                    Slot("symbol", Kind::Word(&["shear", "end", "interior"])),
                    Slot("value", Kind::Load),
                ]),
                Sequence(&[
                    Slot("symbol", Kind::Word(&["moment"])),
                    Slot("value", Kind::Number),
                    Words("lb-ft"),
                ]),
                Sequence(&[Slot("symbol", Kind::Word(&["EI"])), Slot("value", Kind::Number), Words("lb-in2")]),
                Sequence(&[
                    Slot("symbol", Kind::Word(&["capacity"])),
                    Slot("value", Kind::Load),
                    Optional(&Sequence(&[Words("at"), Slot("at", Kind::Length)])),
                ]),
            ])),
            "The declared values: stresses and moduli; for an I-joist its moment, shear, reactions at the end and inside, and EI; for a column its capacity at a length.",
            "values moment 3500 lb-ft, shear 1500 lb, end 1000 lb, interior 2200 lb, EI 250e6 lb-in2",
        )
        .repeatable(),
        FactSpec::optional(
            "width",
            LENGTH,
            "by kind",
            "The width of a ply or of a flange.",
            r#"width 2-5/16""#,
        ),
        FactSpec::optional(
            "weight",
            Slot("value", Kind::Load),
            "42 pcf for wood",
            "Its own weight, by length or by volume.",
            "weight 2.6 plf",
        ),
        FactSpec::optional(
            "cross grain",
            Slot("value", Kind::Word(&["dry", "sawn"])),
            "by kind",
            "Whether its depth shrinks like sawn wood or comes dry and stays.",
            "cross grain dry",
        ),
        FactSpec::required(
            "source",
            Sequence(&[Slot("source", Kind::Text), Words("on"), Slot("source-date", Kind::Date)]),
            "The document the values are from, and its date.",
            r#"source "supplier's data sheet" on 2027-01-15"#,
        ),
    ],
};
