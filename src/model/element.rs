//! What every element has.

use crate::model::field::{Field, Given};
use crate::syntax::value::{Comparison, Date, Value};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::units::Length;

/// Which element: its kind and its place in the model's list of that kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ElementId {
    /// Its kind.
    pub kind: ElementKind,
    /// Its place in the list of that kind.
    pub index: u32,
}

/// What every element has.
#[derive(Clone, Debug, PartialEq)]
pub struct Common {
    /// Which element this is.
    pub id: ElementId,
    /// Its name; a title or the keyword for kinds without names.
    pub name: Box<str>,
    /// Where the name stands (the keyword for kinds without names).
    pub name_span: Span,
    /// The whole element in the text.
    pub span: Span,
    /// The title in quotes.
    pub title: Option<Box<str>>,
    /// How far it has come.
    pub status: Field<Status>,
    /// What was measured on site.
    pub shots: Vec<Shot>,
    /// Lines that say where in plan it was measured to stand.
    pub plan_shots: Vec<Span>,
    /// Rules silenced here.
    pub waivers: Vec<Waiver>,
    /// Where its declared values come from.
    pub source: Field<SourceNote>,
    /// Findings acknowledged here.
    pub accepts: Vec<Given<Accept>>,
    /// What the author states of derived facts.
    pub claims: Vec<Claim>,
    /// Lines of this element that could not be read even as far as their phrase: anything might be missing.
    pub has_unread_lines: bool,
    /// The phrases of its lines that could not be read any further.
    pub unread_facts: Vec<&'static str>,
}

impl Common {
    /// The element as a person names it: `beam B1`.
    pub fn label(&self) -> String {
        let word = self.id.kind.word();
        // A grid has no name but its word.
        if *self.name == *word { word.to_owned() } else { format!("{word} {}", self.name) }
    }

    /// True when a line that can't be read says this fact, or may say it: what stands of it in the model is not all.
    pub fn may_say(&self, phrase: &str) -> bool {
        self.has_unread_lines || self.unread_facts.contains(&phrase)
    }

    /// True when every line of it could be read.
    pub const fn is_read_whole(&self) -> bool {
        !self.has_unread_lines && self.unread_facts.is_empty()
    }

    /// The verb that goes with its label: `beam B1 lies`, `joists J1 lie`.
    pub const fn verb<'a>(&self, of_one: &'a str, of_several: &'a str) -> &'a str {
        match self.id.kind {
            ElementKind::Joists | ElementKind::Jacks => of_several,
            _ => of_one,
        }
    }
}

/// How far an element has come.
#[derive(Clone, Debug, PartialEq)]
pub struct Status {
    /// The stage.
    pub stage: Stage,
    /// Since when.
    pub since: Option<Date>,
}

/// The stages of an element.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// On paper.
    Drawn,
    /// Bought.
    Ordered,
    /// Concrete is in place.
    Poured,
    /// Stands.
    Set,
}

impl Stage {
    /// The word a spec writes.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Drawn => "drawn",
            Self::Ordered => "ordered",
            Self::Poured => "poured",
            Self::Set => "set",
        }
    }
}

/// A measured value.
#[derive(Clone, Debug, PartialEq)]
pub struct Shot {
    /// What was measured: `top`, `bottom`, `seat`, `subfloor`, `finish`, `length`.
    pub fact: Box<str>,
    /// The elevation or length.
    pub value: Length,
    /// Where along it, when the line says so.
    pub at: Option<Span>,
    /// When.
    pub on: Option<Date>,
    /// The line.
    pub span: Span,
}

/// A rule silenced on one element.
#[derive(Clone, Debug, PartialEq)]
pub struct Waiver {
    /// The rule's slug as written.
    pub rule: Box<str>,
    /// Where the slug stands.
    pub rule_span: Span,
    /// Why.
    pub reason: Option<Box<str>>,
    /// Its last day.
    pub until: Option<Date>,
    /// The line.
    pub span: Span,
}

impl Waiver {
    /// True when it says why, in more than blanks.
    pub fn has_reason(&self) -> bool {
        self.reason.as_ref().is_some_and(|reason| !reason.trim().is_empty())
    }
}

/// Where a declared value comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct SourceNote {
    /// The document.
    pub document: Box<str>,
    /// Its date.
    pub on: Option<Date>,
}

/// A finding acknowledged on something that stands already.
#[derive(Clone, Debug, PartialEq)]
pub struct Accept {
    /// What was said.
    pub note: Box<str>,
    /// When.
    pub on: Option<Date>,
}

/// `cut should be 96-5/16" within 1/16"`.
#[derive(Clone, Debug, PartialEq)]
pub struct Claim {
    /// The fact's words: `cut`, `studs cut`.
    pub fact: Box<str>,
    /// Where they stand.
    pub fact_span: Span,
    /// What it should be.
    pub value: Value,
    /// Where that stands.
    pub value_span: Span,
    /// How far off still agrees.
    pub within: Option<Length>,
    /// The line.
    pub span: Span,
}

/// A comparison of facts with its place, in an intent or on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Assertion {
    /// What should hold.
    pub comparison: Comparison,
    /// The chunk's first byte, from which the spans inside `comparison` count, as an empty span in its file.
    pub origin: Span,
    /// The line.
    pub span: Span,
}

/// A use of another element's name.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference {
    /// The name as written.
    pub name: Box<str>,
    /// Where it stands.
    pub span: Span,
    /// The element it means; `None` when there is none of that name and a fitting kind (reported once, there).
    pub target: Option<ElementId>,
}

/// A name in the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mention {
    /// Where it stands.
    pub span: Span,
    /// The element it means.
    pub target: ElementId,
    /// True where the element gets its name.
    pub is_declaration: bool,
}
