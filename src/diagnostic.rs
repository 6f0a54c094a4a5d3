//! What we tell a person: which rule, where, what is wrong, by how much, and what would mend it.

use crate::text::Span;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Worth knowing; nothing is wrong yet.
    Advice,
    /// Will hurt in the end, or breaks good practice.
    Warning,
    /// Wrong: it can't be built so, or not safely.
    Error,
}

impl Severity {
    /// All of them, the gravest first.
    pub const ALL: [Self; 3] = [Self::Error, Self::Warning, Self::Advice];

    /// The word printed, and written in a spec.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Advice => "advice",
            Self::Warning => "warning",
            Self::Error => "error",
        }
    }

    /// The word in a sentence: `an error`.
    pub const fn with_article(self) -> &'static str {
        match self {
            Self::Advice => "advice",
            Self::Warning => "a warning",
            Self::Error => "an error",
        }
    }

    /// The severity a word names.
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|severity| severity.word() == word)
    }
}

/// Whether the cure is a line on a sheet or work on something that stands already.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Remedy {
    /// Nothing is built or bought yet: change the drawing.
    #[default]
    OnPaper,
    /// Ordered: call the supplier.
    Ordered,
    /// Poured or set: the site must be mended, or the rest follow it.
    InPlace,
}

impl Remedy {
    /// The sentence a report ends with.
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::OnPaper => "still on paper",
            Self::Ordered => "already ordered",
            Self::InPlace => "already in place",
        }
    }
}

/// Another place that belongs to a finding, and what it has to do with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Related {
    /// Where.
    pub span: Span,
    /// What stands there: where a number comes from, the first of two.
    pub message: String,
}

/// A change of text that an editor can offer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fix {
    /// What it does, as a person would say it.
    pub title: String,
    /// What to write where. Invariant: the spans do not overlap.
    pub edits: Vec<Edit>,
}

/// One replacement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edit {
    /// What goes away.
    pub span: Span,
    /// What comes.
    pub text: String,
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    /// The rule's slug.
    pub rule: &'static str,
    /// How much it matters here.
    pub severity: Severity,
    /// The element it is about, as a person names it (`beam B1`); empty when it is about the text.
    pub subject: String,
    /// The place.
    pub span: Span,
    /// The fault in one sentence, with both numbers; lower case, no final stop.
    pub message: String,
    /// Where each number comes from.
    pub related: Vec<Related>,
    /// More to know: the chain of arithmetic, an assumed value, what was not checked.
    pub notes: Vec<String>,
    /// The smallest cures, each one line.
    pub help: Vec<String>,
    /// The element whose state decides whether the cure is on paper or on site; most often the subject.
    pub standing: String,
    /// Is the cure on paper or on site.
    pub remedy: Remedy,
    /// The clause or the practice it rests on; printed last.
    pub basis: Option<String>,
    /// An edit that has one answer.
    pub fix: Option<Fix>,
    /// Edits of which a person takes one, where there is more than one answer.
    pub choices: Vec<Fix>,
    /// The line to write in the subject to silence it here; none where the text itself is wrong.
    pub waiver: Option<String>,
    /// What follows from it.
    pub consequences: Vec<Diagnostic>,
}

impl Diagnostic {
    /// It and everything under it, the root first.
    pub fn with_consequences(&self) -> Vec<&Self> {
        let mut all = vec![self];
        let mut next = 0;
        while let Some(diagnostic) = all.get(next).copied() {
            all.extend(diagnostic.consequences.iter());
            next += 1;
        }
        all
    }
}
