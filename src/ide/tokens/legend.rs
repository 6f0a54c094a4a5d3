//! The kinds of words and what more there is to say of them; an editor is told these names once.

use crate::model::element::Stage;
use crate::syntax::vocabulary::ElementKind;

/// What a word is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WordKind {
    /// What opens an element, `include`, `should be`.
    Keyword,
    /// The words of a fact: `bears on`, and `top` in `top of W2`.
    Property,
    /// The name of a floor or an area: other elements lie in it.
    Namespace,
    /// The name of a declared product.
    Class,
    /// The name of any other element.
    Variable,
    /// The name of a grid line.
    Parameter,
    /// A word of a closed list: a side, a mark, a kind, a species.
    EnumMember,
    /// A number with its inch and foot marks, a size, a date.
    Number,
    /// A unit of letters.
    Type,
    /// Words of the author's own.
    String,
    /// A comment.
    Comment,
    /// What joins the parts of a fact: `to`, `plus`, `of`, `=`.
    Operator,
    /// A rule, where it is waived.
    Decorator,
}

impl WordKind {
    /// Every kind, in the order of the legend.
    pub const ALL: [Self; 13] = [
        Self::Keyword,
        Self::Property,
        Self::Namespace,
        Self::Class,
        Self::Variable,
        Self::Parameter,
        Self::EnumMember,
        Self::Number,
        Self::Type,
        Self::String,
        Self::Comment,
        Self::Operator,
        Self::Decorator,
    ];

    /// Its place in the legend.
    pub const fn place(self) -> u32 {
        self as u32
    }

    /// The name that editors know it by: all of them are names of the protocol.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Keyword => "keyword",
            Self::Property => "property",
            Self::Namespace => "namespace",
            Self::Class => "class",
            Self::Variable => "variable",
            Self::Parameter => "parameter",
            Self::EnumMember => "enumMember",
            Self::Number => "number",
            Self::Type => "type",
            Self::String => "string",
            Self::Comment => "comment",
            Self::Operator => "operator",
            Self::Decorator => "decorator",
        }
    }

    /// What the name of such an element is.
    pub const fn of_name(kind: ElementKind) -> Self {
        match kind {
            ElementKind::Floor | ElementKind::Area => Self::Namespace,
            ElementKind::Product => Self::Class,
            _ => Self::Variable,
        }
    }
}

/// What more there is to say of a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Modifier {
    /// The element or grid line gets its name here.
    Declaration,
    /// Of an element that is ordered, poured or set: its numbers are fixed.
    Readonly,
    /// Of a comment that is the note of an element.
    Documentation,
    /// Of a waiver past its last day.
    Deprecated,
    /// Of an element that is ordered.
    Ordered,
    /// Of an element that is poured.
    Poured,
    /// Of an element that is set.
    Set,
    /// Of the first line of an element that is checked with a value nobody stated.
    Assumed,
    /// Of the first line of an element that waives a rule.
    Waived,
    /// Of what a claim says: compared, never used.
    Claim,
    /// Of an element of the framing: floors, joists, beams, posts, framed walls, roofs.
    Framing,
    /// Of an element of the foundation: footings, slabs, concrete walls and what is cast in them.
    Foundation,
    /// Of stairs, landings, doors and windows.
    Passage,
    /// Of drains, ducts, and of the holes and notches for them.
    Service,
    /// Of intents, sheets and hold points.
    Promise,
}

impl Modifier {
    /// Every modifier, in the order of the legend.
    pub const ALL: [Self; 15] = [
        Self::Declaration,
        Self::Readonly,
        Self::Documentation,
        Self::Deprecated,
        Self::Ordered,
        Self::Poured,
        Self::Set,
        Self::Assumed,
        Self::Waived,
        Self::Claim,
        Self::Framing,
        Self::Foundation,
        Self::Passage,
        Self::Service,
        Self::Promise,
    ];

    /// The name that editors know it by: the first four are names of the protocol.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Declaration => "declaration",
            Self::Readonly => "readonly",
            Self::Documentation => "documentation",
            Self::Deprecated => "deprecated",
            Self::Ordered => "ordered",
            Self::Poured => "poured",
            Self::Set => "set",
            Self::Assumed => "assumed",
            Self::Waived => "waived",
            Self::Claim => "claim",
            Self::Framing => "framing",
            Self::Foundation => "foundation",
            Self::Passage => "passage",
            Self::Service => "service",
            Self::Promise => "promise",
        }
    }

    /// The trade that an element of this kind belongs to; a wall by its kind is one of two.
    pub const fn of_trade(kind: ElementKind) -> Option<Self> {
        match kind {
            ElementKind::Floor
            | ElementKind::Area
            | ElementKind::Joists
            | ElementKind::Opening
            | ElementKind::Ledger
            | ElementKind::Beam
            | ElementKind::Column
            | ElementKind::Header
            | ElementKind::Jacks
            | ElementKind::Squash
            | ElementKind::Roof
            | ElementKind::Load => Some(Self::Framing),
            ElementKind::Wall
            | ElementKind::Shelf
            | ElementKind::Pocket
            | ElementKind::Footing
            | ElementKind::Slab => Some(Self::Foundation),
            ElementKind::Stair
            | ElementKind::Landing
            | ElementKind::Stoop
            | ElementKind::Door
            | ElementKind::Window => Some(Self::Passage),
            ElementKind::Drain | ElementKind::Hole | ElementKind::Notch | ElementKind::Duct => {
                Some(Self::Service)
            }
            ElementKind::Intent | ElementKind::Sheet | ElementKind::HoldPoint => Some(Self::Promise),
            ElementKind::Project | ElementKind::Grid | ElementKind::Product => None,
        }
    }
}

/// A set of modifiers, one bit each, in the order of the legend.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Modifiers(pub u32);

impl Modifiers {
    /// No modifier.
    pub const NONE: Self = Self(0);

    /// The set with one more.
    #[must_use]
    pub const fn with(self, modifier: Modifier) -> Self {
        Self(self.0 | 1 << modifier as u32)
    }

    /// The set with one more, when there is one.
    #[must_use]
    pub const fn with_some(self, modifier: Option<Modifier>) -> Self {
        match modifier {
            Some(modifier) => self.with(modifier),
            None => self,
        }
    }

    /// The set with one more, when that is so.
    #[must_use]
    pub const fn with_if(self, is_so: bool, modifier: Modifier) -> Self {
        if is_so { self.with(modifier) } else { self }
    }

    /// The set but for one.
    #[must_use]
    pub const fn without(self, modifier: Modifier) -> Self {
        Self(self.0 & !(1 << modifier as u32))
    }

    /// How far an element has come, and whether that fixes its numbers.
    #[must_use]
    pub const fn with_stage(self, stage: Stage) -> Self {
        match stage {
            Stage::Drawn => self,
            Stage::Ordered => self.with(Modifier::Ordered).with(Modifier::Readonly),
            Stage::Poured => self.with(Modifier::Poured).with(Modifier::Readonly),
            Stage::Set => self.with(Modifier::Set).with(Modifier::Readonly),
        }
    }

    /// True when the modifier is among them.
    pub const fn has(self, modifier: Modifier) -> bool {
        self.0 & (1 << modifier as u32) != 0
    }

    /// The modifiers, in the order of the legend.
    pub fn iter(self) -> impl Iterator<Item = Modifier> {
        Modifier::ALL.into_iter().filter(move |modifier| self.has(*modifier))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_legend_stands_in_the_order_of_the_kinds() {
        for (place, kind) in WordKind::ALL.into_iter().enumerate() {
            assert_eq!(kind.place() as usize, place, "{kind:?}");
        }
        for (place, modifier) in Modifier::ALL.into_iter().enumerate() {
            assert_eq!(modifier as usize, place, "{modifier:?}");
        }
    }
}
