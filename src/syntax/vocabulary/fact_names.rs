//! The facts about a house that sheets, intents, claims, hovers and schedules name.

use crate::syntax::form::Kind;
use crate::syntax::vocabulary::ElementKind::{
    self, Area, Beam, Column, Door, Drain, Duct, Floor, Footing, Header, Hole, Jacks, Joists, Landing,
    Ledger, Opening, Pocket, Roof, Shelf, Slab, Squash, Stair, Stoop, Wall, Window,
};
use crate::syntax::vocabulary::parts::{LOADED, NAMED};

/// A fact that follows from the spec: `top of X`, `drop from F to F`.
#[derive(Debug, PartialEq)]
pub struct FactNameSpec {
    /// The words that say which fact: `clear height`. They come again where the arguments differ: `rise`.
    pub words: &'static str,
    /// The element it is about.
    pub first: Argument,
    /// The second element, when it is about two.
    pub second: Option<Argument>,
    /// A load case may narrow it. `dead`, `live` or `snow` before the words name one, `all` the plain sum; without
    /// one the governing combination is meant.
    pub takes_case: bool,
    /// What kind of value it has.
    pub gives: Kind,
    /// One sentence: what it is.
    pub meaning: &'static str,
}

/// An element that a fact is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Argument {
    /// The word before its name: `of`, `from`, `under`.
    pub joined_by: &'static str,
    /// The kinds it can be.
    pub kinds: &'static [ElementKind],
}

/// Every fact that can be named. A claim leaves out the arguments: they are its own element.
pub static FACT_NAMES: &[FactNameSpec] = &[
    one(
        "top",
        "of",
        TOPPED,
        Kind::Elevation,
        "Its upper surface; of joists, of the joists and not of the deck.",
    ),
    one(
        "bottom",
        "of",
        TOPPED,
        Kind::Elevation,
        "Its lower surface; of joists, of the joists and not of the ceiling.",
    ),
    one(
        "centre",
        "of",
        &[Column, Footing, Stair, Door, Window, Drain, Hole],
        Kind::Point,
        "Its middle in plan.",
    ),
    one("length", "of", LONG, Kind::Length, "From end to end."),
    one("span", "of", SPANNING, Kind::Length, "Its longest span, between centres of bearing or by the grid."),
    one("clear span", "of", SPANNING, Kind::Length, "Its longest span from face to face of its supports."),
    one(
        "cut",
        "of",
        &[Joists, Beam, Column, Header, Jacks, Squash, Ledger],
        Kind::Length,
        "The length it is cut to, without plates.",
    ),
    one("size", "of", SIZED, Kind::Member, "Its size."),
    one("thick", "of", &[Wall, Slab, Footing], Kind::Length, "Its thickness."),
    one("sills", "of", &[Wall, Shelf], Kind::Count, "How many sills lie on it."),
    one("studs cut", "of", &[Wall], Kind::Length, "The length its studs are cut to."),
    one(
        "seat",
        "of",
        &[Pocket, Shelf, Column],
        Kind::Elevation,
        "What the thing it carries lies on, packing left out.",
    ),
    one(
        "cover",
        "of",
        &[Footing],
        Kind::Length,
        "The ground above its underside, at the lowest grade beside it.",
    ),
    one("subfloor", "of", &[Floor], Kind::Elevation, "The top of its deck."),
    one("finish", "of", &[Floor, Area, Landing, Stoop], Kind::Elevation, "Its walking surface."),
    one("ceiling", "of", &[Floor], Kind::Elevation, "The underside of the ceiling below its framing."),
    one("joist top", "of", &[Floor], Kind::Elevation, "The underside of its deck."),
    one("joist bottom", "of", &[Floor], Kind::Elevation, "The underside of its joists."),
    two(
        "drop",
        ("from", &[Floor]),
        ("to", &[Floor]),
        Kind::Length,
        "How far the second floor's finish lies below the first's.",
    ),
    two(
        "subfloor drop",
        ("from", &[Floor]),
        ("to", &[Floor]),
        Kind::Length,
        "How far the second floor's deck lies below the first's.",
    ),
    two(
        "rise",
        ("from", &[Floor]),
        ("to", &[Floor]),
        Kind::Length,
        "How far the second floor's finish lies above the first's.",
    ),
    two(
        "step",
        ("from", &[Wall, Shelf]),
        ("to", &[Wall, Shelf]),
        Kind::Length,
        "How far the second wall's top lies above the first's.",
    ),
    one("riser", "of", &[Stair], Kind::Length, "The height of each riser."),
    one("rise", "of", &[Stair], Kind::Length, "Its height from finish to finish."),
    one("risers", "of", &[Stair], Kind::Count, "How many risers it has."),
    one("run", "of", &[Stair], Kind::Length, "Its length in plan, from the first nosing to the last."),
    one("headroom", "of", &[Stair], Kind::Length, "The least height above its nosings."),
    one(
        "clear height",
        "under",
        &[Floor, Beam, Joists, Header, Duct],
        Kind::Length,
        "From the finish below to the lowest thing of it.",
    ),
    two(
        "gap",
        ("between", &[Floor, Joists, Beam, Wall]),
        ("and", &[Floor, Joists, Beam, Wall]),
        Kind::Length,
        "The height between the underside of the upper one and the top of the lower; of floors, of their joists.",
    ),
    one("load", "on", LOADED, Kind::Load, "All that comes down on it.").by_case(),
    two("reaction", ("of", CARRIED), ("on", CARRYING), Kind::Load, "What the first brings to the second.")
        .by_case(),
    two("bearing", ("of", CARRIED), ("on", CARRYING), Kind::Length, "The length of contact between the two."),
    one("pressure", "under", &[Footing], Kind::Load, "The pressure on the soil."),
    one(
        "utilisation",
        "of",
        STRESSED,
        Kind::Number,
        "Its worst demand divided by what it can take; neither what is asked beyond the code nor how many bars there must be is a demand.",
    ),
    one("spacing", "of", &[Joists, Roof], Kind::Length, "From centre to centre."),
    one("area", "of", &[Floor, Area, Joists, Opening, Roof, Slab, Footing], Kind::Area, "Its area in plan."),
    one("count", "of", NAMED, Kind::Count, "How many pieces there are of it."),
];

const fn one(
    words: &'static str,
    joined_by: &'static str,
    kinds: &'static [ElementKind],
    gives: Kind,
    meaning: &'static str,
) -> FactNameSpec {
    FactNameSpec {
        words,
        first: Argument { joined_by, kinds },
        second: None,
        takes_case: false,
        gives,
        meaning,
    }
}

const fn two(
    words: &'static str,
    first: (&'static str, &'static [ElementKind]),
    second: (&'static str, &'static [ElementKind]),
    gives: Kind,
    meaning: &'static str,
) -> FactNameSpec {
    FactNameSpec {
        words,
        first: Argument { joined_by: first.0, kinds: first.1 },
        second: Some(Argument { joined_by: second.0, kinds: second.1 }),
        takes_case: false,
        gives,
        meaning,
    }
}

impl FactNameSpec {
    const fn by_case(self) -> Self {
        Self { takes_case: true, ..self }
    }

    /// The elements it is about, in order.
    pub fn arguments(&self) -> impl Iterator<Item = &Argument> {
        std::iter::once(&self.first).chain(self.second.as_ref())
    }
}

const TOPPED: &[ElementKind] = &[
    Joists, Wall, Shelf, Pocket, Ledger, Beam, Column, Footing, Slab, Landing, Stoop, Header, Duct, Door,
    Window,
];

const LONG: &[ElementKind] =
    &[Joists, Wall, Ledger, Beam, Column, Footing, Header, Jacks, Squash, Opening, Duct];

const SPANNING: &[ElementKind] = &[Joists, Beam, Header, Roof];

const SIZED: &[ElementKind] = &[Joists, Ledger, Beam, Column, Header, Jacks, Squash, Footing];

const CARRIED: &[ElementKind] =
    &[Joists, Wall, Ledger, Beam, Column, Header, Jacks, Squash, Roof, Stair, Landing, Stoop];

const CARRYING: &[ElementKind] =
    &[Wall, Shelf, Pocket, Ledger, Beam, Column, Footing, Slab, Header, Jacks, Squash, Joists];

const STRESSED: &[ElementKind] =
    &[Joists, Ledger, Beam, Column, Header, Jacks, Squash, Wall, Footing, Pocket, Shelf];
