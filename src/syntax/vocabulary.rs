//! The vocabulary: every element and fact of the format, in one table.
//!
//! The parser, `grammar/storyrod.ebnf`, the reference, the random specs and the editor grammars all come from here.
//! One file an element; each fact says its form, whether it must stand, what holds without it, and one example.
//!
//! # Labels
//!
//! A fact's values are read by their labels, and one thing has one label everywhere:
//!
//! - What its kind alone explains is labelled by the kind: `point`, `line`, `rect`, `side`, `axis`, `member`, `size`
//!   (lengths parted by ` x `), `date`.
//! - Any other value that is the fact's only or main one is `value`; the words beside it are `words`, the unit-free
//!   choice of a way is `how` (`place` for a place in a thickness, `case` for a load case).
//! - A later value has the word before it: `for`, `at`, `from`, `to`, `by`, `within`, `until`, `held`, `grout`,
//!   `cover`, `gasket`; or, failing that, the word behind it: `above`, `below`, `high`, `long`, `thick`, `deep`, `dia`.
//! - A name is labelled by what it names where only one kind can stand (`floor`, `wall`, `slab`, `joists`, `opening`,
//!   `post`), and `support` for whatever carries.
//! - `N of MEMBER` is `count` and `member`.
//! - A connector is `connector` with `capacity`, `words` and a source, or with `ledger`; a source is `source` and
//!   `source-date`, on a line of its own too.
//! - A mark is labelled by its own words: `outside`, `by grid`, `both sides`.
//!
//! Lists come out flat: `x A 0', B 16'-0"` has the parts `name`, `at`, `name`, `at`.

mod area;
mod beam;
mod column;
mod door;
mod drain;
mod duct;
mod every;
mod fact_names;
mod floor;
mod footing;
mod grammar;
mod grid;
mod header;
mod hold_point;
mod hole;
mod intent;
mod jacks;
mod joists;
mod landing;
mod ledger;
pub mod lexicon;
mod load;
mod notation;
mod notch;
mod opening;
mod parts;
mod pocket;
mod product;
mod project;
mod reference;
mod roof;
mod sheet;
mod shelf;
mod slab;
mod squash;
mod stair;
mod stoop;
mod wall;
mod window;

use std::borrow::Cow;

use crate::syntax::form::Form;

pub use every::{CLAIM, COMMON};
pub use fact_names::{Argument, FACT_NAMES, FactNameSpec};
pub use grammar::grammar;
pub use notation::{kind_name, notation};
pub use reference::{element as element_page, reference, value_meaning};

/// Every element, in the order of [`ElementKind`] and of the reference.
pub static ELEMENTS: &[&ElementSpec] = &[
    &project::PROJECT,
    &grid::GRID,
    &product::PRODUCT,
    &floor::FLOOR,
    &area::AREA,
    &joists::JOISTS,
    &opening::OPENING,
    &wall::WALL,
    &shelf::SHELF,
    &pocket::POCKET,
    &ledger::LEDGER,
    &beam::BEAM,
    &column::COLUMN,
    &footing::FOOTING,
    &slab::SLAB,
    &stair::STAIR,
    &landing::LANDING,
    &stoop::STOOP,
    &door::DOOR,
    &window::WINDOW,
    &header::HEADER,
    &jacks::JACKS,
    &squash::SQUASH,
    &roof::ROOF,
    &load::LOAD,
    &drain::DRAIN,
    &hole::HOLE,
    &notch::NOTCH,
    &duct::DUCT,
    &intent::INTENT,
    &sheet::SHEET,
    &hold_point::HOLD_POINT,
];

/// The element that `words` open: its keyword or another word of the trade for it. `hold point` is two words.
pub fn element_opened_by(words: &str) -> Option<&'static ElementSpec> {
    ELEMENTS.iter().copied().find(|spec| spec.keyword == words || spec.also.contains(&words))
}

/// What the vocabulary says of a kind of element.
pub fn spec_of(kind: ElementKind) -> &'static ElementSpec {
    match kind {
        ElementKind::Project => &project::PROJECT,
        ElementKind::Grid => &grid::GRID,
        ElementKind::Product => &product::PRODUCT,
        ElementKind::Floor => &floor::FLOOR,
        ElementKind::Area => &area::AREA,
        ElementKind::Joists => &joists::JOISTS,
        ElementKind::Opening => &opening::OPENING,
        ElementKind::Wall => &wall::WALL,
        ElementKind::Shelf => &shelf::SHELF,
        ElementKind::Pocket => &pocket::POCKET,
        ElementKind::Ledger => &ledger::LEDGER,
        ElementKind::Beam => &beam::BEAM,
        ElementKind::Column => &column::COLUMN,
        ElementKind::Footing => &footing::FOOTING,
        ElementKind::Slab => &slab::SLAB,
        ElementKind::Stair => &stair::STAIR,
        ElementKind::Landing => &landing::LANDING,
        ElementKind::Stoop => &stoop::STOOP,
        ElementKind::Door => &door::DOOR,
        ElementKind::Window => &window::WINDOW,
        ElementKind::Header => &header::HEADER,
        ElementKind::Jacks => &jacks::JACKS,
        ElementKind::Squash => &squash::SQUASH,
        ElementKind::Roof => &roof::ROOF,
        ElementKind::Load => &load::LOAD,
        ElementKind::Drain => &drain::DRAIN,
        ElementKind::Hole => &hole::HOLE,
        ElementKind::Notch => &notch::NOTCH,
        ElementKind::Duct => &duct::DUCT,
        ElementKind::Intent => &intent::INTENT,
        ElementKind::Sheet => &sheet::SHEET,
        ElementKind::HoldPoint => &hold_point::HOLD_POINT,
    }
}

/// Every kind of element, in the order the reference lists them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ElementKind {
    /// The house itself: limits, soil, snow, datum.
    Project,
    /// Named lines in plan.
    Grid,
    /// A declared product.
    Product,
    /// A framed or slab floor.
    Floor,
    /// Part of a floor.
    Area,
    /// A field of joists.
    Joists,
    /// An opening in a floor or wall.
    Opening,
    /// A concrete, masonry, framed or pony wall.
    Wall,
    /// A shelf in a concrete wall.
    Shelf,
    /// A beam pocket in a concrete wall.
    Pocket,
    /// A ledger on a wall or beam.
    Ledger,
    /// A beam.
    Beam,
    /// A column or post.
    Column,
    /// A footing.
    Footing,
    /// A slab on ground.
    Slab,
    /// A stair or flight of steps.
    Stair,
    /// A landing.
    Landing,
    /// An outdoor landing at a door.
    Stoop,
    /// A door.
    Door,
    /// A window.
    Window,
    /// A header over an opening in a wall.
    Header,
    /// Jack studs under a header.
    Jacks,
    /// Squash blocks.
    Squash,
    /// A roof as a load.
    Roof,
    /// A load of its own.
    Load,
    /// A drain.
    Drain,
    /// A hole.
    Hole,
    /// A notch.
    Notch,
    /// A duct.
    Duct,
    /// A promise of the design.
    Intent,
    /// A drawing sheet and the numbers it shows.
    Sheet,
    /// A point where the work waits for a measurement.
    HoldPoint,
}

impl ElementKind {
    /// The keyword that opens it.
    pub fn word(self) -> &'static str {
        spec_of(self).keyword
    }

    /// The word for several of it: `shelves`, `joists`.
    pub fn plural(self) -> Cow<'static, str> {
        match self {
            Self::Joists | Self::Jacks => self.word().into(),
            Self::Shelf => "shelves".into(),
            Self::Notch => "notches".into(),
            Self::Squash => "squash blocks".into(),
            _ => format!("{}s", self.word()).into(),
        }
    }
}

/// How an element's first line goes on behind its keyword.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Naming {
    /// A name, then maybe a title.
    Name,
    /// A title, no name.
    Title,
    /// Nothing.
    None,
}

/// Must a fact stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Presence {
    /// Without it the element can't be used. (Facts required only for one kind of wall and the like are `Optional` here;
    /// the model asks for them.)
    Required,
    /// It may be left out; `default` says what then holds.
    Optional,
    /// Derived from the rest; checked when stated.
    Derived,
}

/// A kind of element.
#[derive(Debug)]
pub struct ElementSpec {
    /// Which.
    pub kind: ElementKind,
    /// The word or words that open it.
    pub keyword: &'static str,
    /// Other words that the trade uses and that open it too.
    pub also: &'static [&'static str],
    /// What follows the keyword.
    pub naming: Naming,
    /// One sentence: what it is.
    pub summary: &'static str,
    /// A whole element as an example; the reference shows it and a test reads it.
    pub example: &'static str,
    /// Its own facts, in the order the formatter and the reference list them. [`COMMON`] comes on top, but for a
    /// phrase that stands here too.
    pub facts: &'static [FactSpec],
}

impl ElementSpec {
    /// Every fact that may stand in the element: its own, then those of every element.
    pub fn all_facts(&self) -> impl Iterator<Item = &'static FactSpec> {
        let own = self.facts;
        own.iter().chain(COMMON.iter().filter(|common| own.iter().all(|fact| fact.phrase != common.phrase)))
    }

    /// The facts that follow from the rest and that a claim may state: `cut should be 96-5/16"`.
    pub fn claimable(&self) -> impl Iterator<Item = &'static FactNameSpec> {
        let kind = self.kind;
        FACT_NAMES.iter().filter(move |name| name.second.is_none() && name.first.kinds.contains(&kind))
    }
}

/// A fact of an element.
#[derive(Debug, PartialEq)]
pub struct FactSpec {
    /// The words that begin its line.
    pub phrase: &'static str,
    /// What follows.
    pub form: Form,
    /// Must it stand.
    pub presence: Presence,
    /// May it stand more than once.
    pub repeatable: bool,
    /// What holds without it; empty when nothing does.
    pub default: &'static str,
    /// One or two sentences: what it says.
    pub meaning: &'static str,
    /// A line as an example, without indent.
    pub example: &'static str,
}

impl FactSpec {
    /// A fact that must stand, once.
    const fn required(
        phrase: &'static str,
        form: Form,
        meaning: &'static str,
        example: &'static str,
    ) -> Self {
        Self { phrase, form, presence: Presence::Required, repeatable: false, default: "", meaning, example }
    }

    /// A fact that may stand, once; `default` holds without it.
    const fn optional(
        phrase: &'static str,
        form: Form,
        default: &'static str,
        meaning: &'static str,
        example: &'static str,
    ) -> Self {
        Self { phrase, form, presence: Presence::Optional, repeatable: false, default, meaning, example }
    }

    /// A fact that follows from the rest and is checked when stated.
    const fn derived(phrase: &'static str, form: Form, meaning: &'static str, example: &'static str) -> Self {
        Self { phrase, form, presence: Presence::Derived, repeatable: false, default: "", meaning, example }
    }

    /// The same fact, but it may stand more than once.
    const fn repeatable(self) -> Self {
        Self { repeatable: true, ..self }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;
    use crate::syntax::form::Kind;

    #[test]
    fn elements_stand_in_the_order_of_their_kinds() {
        assert!(ELEMENTS.is_sorted_by_key(|spec| spec.kind));
        for spec in ELEMENTS {
            assert_eq!(spec_of(spec.kind).kind, spec.kind);
        }
    }

    #[test]
    fn a_word_opens_one_element() {
        let mut seen = HashSet::new();
        for words in ELEMENTS.iter().flat_map(|spec| spec.also.iter().chain([&spec.keyword])) {
            assert!(seen.insert(words), "`{words}` opens two elements");
        }
        assert_eq!(element_opened_by("post").map(|spec| spec.kind), Some(ElementKind::Column));
        assert_eq!(element_opened_by("hold point").map(|spec| spec.kind), Some(ElementKind::HoldPoint));
        assert_eq!(ElementKind::HoldPoint.word(), "hold point");
        assert!(element_opened_by("hold").is_none());
    }

    #[test]
    fn a_phrase_stands_once_in_an_element() {
        for spec in ELEMENTS {
            let mut seen = HashSet::new();
            for fact in spec.all_facts() {
                assert!(seen.insert(fact.phrase), "`{}` stands twice in {}", fact.phrase, spec.keyword);
            }
        }
    }

    #[test]
    fn an_example_shows_what_it_is_an_example_of() {
        for spec in ELEMENTS {
            assert!(spec.example.starts_with(spec.keyword), "{}", spec.keyword);
            for fact in spec.facts {
                assert!(fact.example.starts_with(fact.phrase), "{}: {}", spec.keyword, fact.example);
                let shown = spec.example.lines().any(|line| line.trim_start().starts_with(fact.phrase));
                assert!(shown || fact.presence != Presence::Required, "{} {}", spec.keyword, fact.phrase);
            }
        }
    }

    #[test]
    fn what_its_kind_explains_is_labelled_by_it() {
        fn check(form: &Form) {
            match form {
                Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Comma => {}
                Form::Slot(label, Kind::Line) => assert_eq!(*label, "line"),
                Form::Slot(label, Kind::Rect) => assert_eq!(*label, "rect"),
                Form::Slot(label, Kind::Side) => assert_eq!(*label, "side"),
                Form::Slot(label, Kind::Member) => assert_eq!(*label, "member"),
                Form::Slot(label, Kind::Dimensions(..)) => assert_eq!(*label, "size"),
                Form::Slot(label, Kind::Name([ElementKind::Floor])) => assert_eq!(*label, "floor"),
                Form::Slot(label, Kind::Name([ElementKind::Wall])) => assert_eq!(*label, "wall"),
                Form::Slot(label, Kind::Name([ElementKind::Slab])) => assert_eq!(*label, "slab"),
                Form::Slot(..) => {}
                Form::Optional(inner) | Form::List(inner) => check(inner),
                Form::Sequence(parts) | Form::OneOf(parts) => parts.iter().for_each(check),
            }
        }
        for fact in ELEMENTS.iter().flat_map(|spec| spec.all_facts()) {
            check(&fact.form);
        }
    }

    #[test]
    fn the_words_of_a_fact_name_differ_by_their_arguments() {
        let mut seen = HashSet::new();
        for name in FACT_NAMES {
            let joins: Vec<_> = name.arguments().map(|argument| argument.joined_by).collect();
            assert!(seen.insert((name.words, joins)), "`{}` stands twice", name.words);
        }
    }
}
