//! A framed or slab floor.

use crate::syntax::form::Form::{self, Comma, List, Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{DECLARED_LOAD, ELEVATION, LENGTH, SOURCE, USES};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static FLOOR: ElementSpec = ElementSpec {
    kind: ElementKind::Floor,
    keyword: "floor",
    also: &[],
    naming: Naming::Name,
    summary: "A floor: its level, its layers and what it carries. Exactly one of `subfloor`, `finish at`, `steps down`, `steps up` or `on` places it; what else is said of its level is a promise.",
    example: r#"floor den "Sunken den"
  subfloor      98'-4 5/8"
  steps down    from main by 3 risers at 6-1/2"
  deck          3/4"
  finish        linoleum on board 5/8"
  use           living
  live          40 psf
  dead          12 psf
  ceiling       furring 1-1/2", board 1/2"
  over          crawl, ground 95'-0"
"#,
    facts: &[
        FactSpec::optional(
            "subfloor",
            ELEVATION,
            "derived",
            "The top of the structural deck. Places the floor.",
            r#"subfloor 98'-4 5/8""#,
        ),
        FactSpec::optional(
            "finish at",
            ELEVATION,
            "derived",
            "The walking surface. Places the floor.",
            r#"finish at 98'-5 1/4""#,
        ),
        FactSpec::optional(
            "steps down",
            STEPS,
            "",
            "How far the finish lies below another floor's, in whole risers. A promise where the floor is placed otherwise; else it places the floor and needs its `at`.",
            r#"steps down from main by 3 risers at 6-1/2""#,
        )
        .repeatable(),
        FactSpec::optional(
            "steps up",
            STEPS,
            "",
            "As `steps down`, but above the other floor.",
            "steps up from main by 2 risers",
        )
        .repeatable(),
        FactSpec::optional(
            "on",
            Slot("slab", Kind::Name(&[ElementKind::Slab])),
            "framed",
            "The floor is this slab; it then has no subfloor and no deck of its own.",
            "on SL1",
        ),
        FactSpec::optional(
            "deck",
            LENGTH,
            "",
            "The thickness of the structural deck. A framed floor needs it.",
            r#"deck 3/4""#,
        ),
        FactSpec::optional(
            "finish",
            Sequence(&[Optional(&Slot("words", Kind::FreeWords)), Slot("value", Kind::Length)]),
            r#"0""#,
            "Everything between deck or slab and the walking surface.",
            r#"finish linoleum on board 5/8""#,
        ),
        FactSpec::optional(
            "use",
            Slot("value", Kind::Word(USES)),
            "living",
            "What the floor is for; its live load must be enough for that.",
            "use book room",
        ),
        FactSpec::optional("live", DECLARED_LOAD, "", "The live load. A framed floor needs it.", "live 40 psf"),
        FactSpec::optional(
            "dead",
            DECLARED_LOAD,
            "",
            "The weight of everything on the joists, without the joists. A framed floor needs it.",
            "dead 12 psf",
        ),
        FactSpec::optional(
            "ceiling",
            OneOf(&[
                Mark("none"),
                List(&Sequence(&[Optional(&Slot("words", Kind::FreeWords)), Slot("value", Kind::Length)])),
            ]),
            "none",
            "The layers below this floor's framing, from the joists down.",
            r#"ceiling furring 1-1/2", board 1/2""#,
        ),
        FactSpec::optional(
            "over",
            OneOf(&[
                Sequence(&[
                    Slot("how", Kind::Word(&["crawl"])),
                    Comma,
                    Words("ground"),
                    Slot("ground", Kind::Elevation),
                ]),
                Sequence(&[
                    Slot("how", Kind::Word(&["basement"])),
                    Slot("floor", Kind::Name(&[ElementKind::Floor])),
                ]),
                Slot("how", Kind::Word(&["outside"])),
            ]),
            "by plan",
            "What lies below: a crawl space and its ground, a basement floor, or the open air.",
            r#"over crawl, ground 95'-0""#,
        ),
        FactSpec::optional(
            "tie",
            Sequence(&[Words("at step by engineer"), SOURCE]),
            "none",
            "An engineer has designed how the decks on both sides of the step are tied.",
            r#"tie at step by engineer source "letter of 4 May""#,
        ),
        FactSpec::optional(
            "guard",
            Sequence(&[
                Slot("side", Kind::Side),
                Slot("high", Kind::Length),
                Words("high"),
                Optional(&Sequence(&[Comma, Mark("posts blocked")])),
            ]),
            "none",
            "The open edge that has a guard, its height, and whether its posts stand in blocked joist bays.",
            r#"guard south 36" high, posts blocked"#,
        )
        .repeatable(),
    ],
};

const STEPS: Form = Sequence(&[
    Words("from"),
    Slot("floor", Kind::Name(&[ElementKind::Floor])),
    Words("by"),
    Slot("risers", Kind::Count),
    Words("risers"),
    Optional(&Sequence(&[Words("at"), Slot("at", Kind::Length)])),
]);
