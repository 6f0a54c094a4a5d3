//! Forms and lists of kinds that several facts share.

use crate::syntax::form::Form::{self, Comma, List, Mark, OneOf, Optional, Sequence, Slot, Words};
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::ElementKind;

/// A length as the only value.
pub const LENGTH: Form = Slot("value", Kind::Length);

/// An elevation as the only value.
pub const ELEVATION: Form = Slot("value", Kind::Elevation);

/// Where a declared value comes from. May be left out, because a `source` line of its own covers the element.
pub const SOURCE: Form = Optional(&SOURCE_STATED);

const SOURCE_STATED: Form = Sequence(&[Words("source"), Slot("source", Kind::Text), SOURCE_DATE]);

/// The date of a source.
pub const SOURCE_DATE: Form = Optional(&Sequence(&[Words("on"), Slot("source-date", Kind::Date)]));

/// A load with its source.
pub const DECLARED_LOAD: Form = Sequence(&[Slot("value", Kind::Load), SOURCE]);

/// A stress with its source.
pub const DECLARED_STRESS: Form = Sequence(&[Slot("value", Kind::Stress), SOURCE]);

/// A member as the only value.
pub const MEMBER: Form = Slot("member", Kind::Member);

/// A number of members.
pub const COUNTED_MEMBER: Form = Sequence(&[Slot("count", Kind::Count), Words("of"), MEMBER]);

/// Blocks beside the joists under a post.
pub const SQUASH: Form = Sequence(&[COUNTED_MEMBER, Words("under each")]);

/// How a member hangs from its support.
pub const CONNECTOR: Form = Sequence(&[
    Words("by"),
    OneOf(&[
        Sequence(&[
            Slot("connector", Kind::Word(&["ledger"])),
            Slot("ledger", Kind::Name(&[ElementKind::Ledger])),
        ]),
        Sequence(&[
            Slot("connector", Kind::Word(&["hanger", "clip"])),
            Slot("capacity", Kind::Load),
            Optional(&Slot("words", Kind::Text)),
            SOURCE,
        ]),
    ]),
]);

/// What carries a member from below, and over which length; `outside` is something the spec leaves out.
pub const BEARS_ON: Form = Sequence(&[
    OneOf(&[OUTSIDE, Slot("support", Kind::Name(SUPPORTS))]),
    Optional(&Sequence(&[Words("for"), Slot("for", Kind::Length)])),
]);

/// What carries a member at its side, and by what.
pub const HANGS_FROM: Form =
    Sequence(&[OneOf(&[OUTSIDE, Slot("support", Kind::Name(HANGER_SUPPORTS))]), CONNECTOR]);

/// What carries an upright: an element, or a floor's deck over an element, which promises that one stands over the
/// other.
pub const STANDS_ON: Form = OneOf(&[
    OUTSIDE,
    Sequence(&[
        Slot("floor", Kind::Name(&[ElementKind::Floor])),
        Words("over"),
        Slot("support", Kind::Name(FOOTS)),
    ]),
    Slot("support", Kind::Name(FOOTS)),
]);

/// Something that the spec leaves out.
pub const OUTSIDE: Form = Sequence(&[Mark("outside"), Slot("words", Kind::Text)]);

/// An axis to run along.
pub const ALONG_AXIS: Form = Sequence(&[Words("along"), Slot("axis", Kind::Word(&["x", "y"]))]);

/// A spacing and the grid reference of the first member's centre.
pub const SPACING: Form =
    Sequence(&[Slot("value", Kind::Length), Words("from"), Slot("from", Kind::GridRef)]);

/// Stands where the safe side is to be taken: spans between ends and joints.
pub const BY_GRID: Form = Mark("by grid");

/// Where a member is not continuous.
pub const JOIST_JOINT: Form = Sequence(&[
    Optional(&Sequence(&[Words("lapped"), Slot("lapped", Kind::Length)])),
    Words("over"),
    Slot("support", Kind::Name(SUPPORTS)),
]);

/// One elevation, or several along a line.
pub const TOPS: Form = List(&Sequence(&[Slot("value", Kind::Elevation), AT_GRID]));

/// At a grid reference, or everywhere.
pub const AT_GRID: Form = Optional(&Sequence(&[Words("at"), Slot("at", Kind::GridRef)]));

/// A plan stretch of a line, or all of it.
pub const STRETCH: Form = Optional(&Sequence(&[
    Words("from"),
    Slot("from", Kind::GridRef),
    Words("to"),
    Slot("to", Kind::GridRef),
]));

/// Treated plates between concrete and wood.
pub const SILL: Form = Sequence(&[
    COUNTED_MEMBER,
    Optional(&Sequence(&[
        Comma,
        OneOf(&[
            Slot("place", Kind::Word(&["centred"])),
            Sequence(&[Slot("place", Kind::Word(&["flush with"])), Slot("side", Kind::Side), Words("face")]),
            Sequence(&[
                Slot("place", Kind::Word(&["held in"])),
                Slot("held", Kind::Length),
                Words("from"),
                Slot("side", Kind::Side),
                Words("face"),
            ]),
        ]),
    ])),
    Optional(&Sequence(&[Comma, Words("gasket"), Slot("gasket", Kind::Length)])),
]);

/// Anchor bolts: diameter x length, and their spacing.
pub const ANCHOR: Form =
    Sequence(&[Slot("size", Kind::Dimensions(2, 2)), Words("at"), Slot("at", Kind::Length)]);

/// A load, its case, words for the reader and a source.
pub const LOAD_CASE: Form = Sequence(&[
    Slot("value", Kind::Load),
    Slot("case", Kind::Word(CASES)),
    Optional(&Slot("words", Kind::Text)),
    SOURCE,
]);

/// A hole in a member: how wide, where along it, how far above its bottom.
pub const HOLE_ALONG: Form = Sequence(&[
    Slot("dia", Kind::Length),
    Words("dia at"),
    Slot("at", Kind::GridRef),
    Optional(&Sequence(&[Comma, Slot("above", Kind::Length), Words("above bottom")])),
]);

/// The pressure that soil may take.
pub const SOIL: Form = Sequence(&[
    Slot("value", Kind::Load),
    Optional(&Slot("how", Kind::Word(&["net", "gross"]))),
    Optional(&Mark("assumed")),
    SOURCE,
]);

/// Load cases.
pub const CASES: &[&str] = &["dead", "live", "sleeping", "snow", "roof-live", "wind", "soil"];

/// What floors and areas are used for; each has its least live load.
pub const USES: &[&str] = &[
    "living",
    "sleeping",
    "kitchen",
    "bath",
    "hall",
    "library",
    "book room",
    "office",
    "workshop",
    "storage",
    "garage",
    "deck",
    "balcony",
    "attic",
    "attic storage",
];

/// What a level member can lie on.
pub const SUPPORTS: &[ElementKind] = &[
    ElementKind::Wall,
    ElementKind::Shelf,
    ElementKind::Pocket,
    ElementKind::Ledger,
    ElementKind::Beam,
    ElementKind::Column,
    ElementKind::Footing,
    ElementKind::Slab,
    ElementKind::Header,
    ElementKind::Jacks,
    ElementKind::Squash,
];

/// What a level member can hang from.
pub const HANGER_SUPPORTS: &[ElementKind] =
    &[ElementKind::Beam, ElementKind::Wall, ElementKind::Ledger, ElementKind::Header, ElementKind::Joists];

/// What an upright can stand on.
pub const FOOTS: &[ElementKind] = &[
    ElementKind::Footing,
    ElementKind::Wall,
    ElementKind::Shelf,
    ElementKind::Beam,
    ElementKind::Column,
    ElementKind::Slab,
    ElementKind::Squash,
    ElementKind::Header,
    ElementKind::Joists,
];

/// What a hole or notch can be in.
pub const MEMBERS: &[ElementKind] =
    &[ElementKind::Joists, ElementKind::Beam, ElementKind::Header, ElementKind::Column];

/// What a load can stand on.
pub const LOADED: &[ElementKind] = &[
    ElementKind::Floor,
    ElementKind::Area,
    ElementKind::Joists,
    ElementKind::Beam,
    ElementKind::Header,
    ElementKind::Column,
    ElementKind::Wall,
    ElementKind::Footing,
    ElementKind::Slab,
];

/// What fills a gap in a wall.
pub const OPENINGS: &[ElementKind] = &[ElementKind::Door, ElementKind::Window, ElementKind::Opening];

/// Every kind with a name of its own.
pub const NAMED: &[ElementKind] = &[
    ElementKind::Product,
    ElementKind::Floor,
    ElementKind::Area,
    ElementKind::Joists,
    ElementKind::Opening,
    ElementKind::Wall,
    ElementKind::Shelf,
    ElementKind::Pocket,
    ElementKind::Ledger,
    ElementKind::Beam,
    ElementKind::Column,
    ElementKind::Footing,
    ElementKind::Slab,
    ElementKind::Stair,
    ElementKind::Landing,
    ElementKind::Stoop,
    ElementKind::Door,
    ElementKind::Window,
    ElementKind::Header,
    ElementKind::Jacks,
    ElementKind::Squash,
    ElementKind::Roof,
    ElementKind::Load,
    ElementKind::Drain,
    ElementKind::Hole,
    ElementKind::Notch,
    ElementKind::Duct,
    ElementKind::Sheet,
    ElementKind::HoldPoint,
];
