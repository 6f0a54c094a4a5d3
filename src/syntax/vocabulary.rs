//! The vocabulary: every element and fact of the format, in one table.
//!
//! The parser, `grammar/storyrod.ebnf`, the reference, the random specs and the editor grammars all come from here.
//! One file an element; each fact says its form, whether it must stand, what holds without it, and one example.

use crate::syntax::form::Form;

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
    /// Its own facts, in the order the formatter and the reference list them. `COMMON` comes on top.
    pub facts: &'static [FactSpec],
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
