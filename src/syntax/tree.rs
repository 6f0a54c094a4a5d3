//! The tree: every byte of a file, in chunks, lines and facts.

use std::sync::Arc;

use crate::syntax::Problem;
use crate::syntax::value::{Date, Load, Member, Side, Value};
use crate::syntax::vocabulary::{ElementKind, FactSpec};
use crate::text::LocalSpan;
use crate::units::{Length, Stress};

/// One file as a tree. Invariant: the chunks' texts, joined, are the file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tree {
    /// In the order of the text.
    pub chunks: Vec<Chunk>,
}

impl Tree {
    /// The chunk that holds byte `offset`.
    pub fn chunk_at(&self, offset: u32) -> Option<&Chunk> {
        let after = self.chunks.partition_point(|chunk| chunk.start <= offset);
        self.chunks.get(after.checked_sub(1)?)
    }
}

/// A stretch of a file from one line in the first column up to the next.
#[derive(Clone, Debug, PartialEq)]
pub struct Chunk {
    /// Its first byte in the file.
    pub start: u32,
    /// What it says; shared while its text stays the same.
    pub body: Arc<Body>,
}

/// What a chunk says. All places count from the chunk's first byte.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// What opens it.
    pub opening: Opening,
    /// The facts that could be read, in the order of the text.
    pub facts: Vec<Fact>,
    /// Phrases of facts whose value could not be read: they count as unknown, not as missing.
    pub broken: Vec<Broken>,
    /// Every line. Invariant: they cover the chunk without gap or overlap.
    pub lines: Vec<Line>,
    /// What could not be read.
    pub problems: Vec<Problem>,
    /// How many bytes long the chunk is.
    pub length: u32,
}

/// What a chunk begins with.
#[derive(Clone, Debug, PartialEq)]
pub enum Opening {
    /// Comments and blank lines before the first element of a file, or a fact that stands there by mistake.
    Nothing,
    /// An include: the path, and where it stands without its quotes. The path is `None` when it could not be read.
    Include(Option<(Box<str>, LocalSpan)>),
    /// An element.
    Element(Heading),
    /// A first word that opens nothing, and the name behind it, when one is there: what uses that name is not at fault.
    Unknown(LocalSpan, Option<Box<str>>),
}

/// An element's first line.
#[derive(Clone, Debug, PartialEq)]
pub struct Heading {
    /// Which kind of element.
    pub kind: ElementKind,
    /// Where the keyword stands.
    pub keyword: LocalSpan,
    /// The name and where it stands. Kinds that only have a title (`project`, `intent`) and kinds of which a spec has
    /// one (`grid`) have none.
    pub name: Option<(Box<str>, LocalSpan)>,
    /// The title in quotes, and where it stands without them.
    pub title: Option<(Box<str>, LocalSpan)>,
}

/// A line of a chunk.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Its bytes, the line end included.
    pub span: LocalSpan,
    /// What it is.
    pub kind: LineKind,
    /// Its comment from the `--` on, the line end excluded.
    pub comment: Option<LocalSpan>,
}

/// What a line is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LineKind {
    /// Nothing but blanks.
    Blank,
    /// Nothing but a comment.
    Comment,
    /// The line that opens the chunk.
    Opening,
    /// A fact that was read: its place in [`Body::facts`].
    Fact(usize),
    /// A line that could not be read.
    Broken,
}

/// A fact that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// What the vocabulary says of it. A claim (`cut should be 96"`) has the one spec that all claims share.
    pub spec: &'static FactSpec,
    /// Where its phrase stands.
    pub phrase: LocalSpan,
    /// All that stands behind the phrase; the phrase itself when nothing does.
    pub value: LocalSpan,
    /// From the phrase to the last value.
    pub span: LocalSpan,
    /// Its values in the order of the text.
    pub parts: Vec<Part>,
}

/// A fact whose value could not be read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Broken {
    /// The phrase, when that much was understood.
    pub phrase: Option<&'static str>,
    /// The line without its comment.
    pub span: LocalSpan,
}

/// A value of a fact.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The label its form gives it.
    pub label: &'static str,
    /// The value.
    pub value: Value,
    /// Where it stands.
    pub span: LocalSpan,
}

/// Reads the parts of a fact by their labels. What isn't there, or is of another kind, is `None`: the form decided
/// what may stand where.
impl Fact {
    /// The first part with this label.
    pub fn part(&self, label: &str) -> Option<&Part> {
        self.parts.iter().find(|part| part.label == label)
    }

    /// Every part with this label.
    pub fn parts_of<'a>(&'a self, label: &'a str) -> impl Iterator<Item = &'a Part> {
        self.parts.iter().filter(move |part| part.label == label)
    }

    /// True when this mark or value stands there.
    pub fn has(&self, label: &str) -> bool {
        self.part(label).is_some()
    }

    /// A length.
    pub fn length(&self, label: &str) -> Option<Length> {
        match &self.part(label)?.value {
            Value::Length(length) => Some(*length),
            _ => None,
        }
    }

    /// A word of a closed list, or free words.
    pub fn word(&self, label: &str) -> Option<&str> {
        match &self.part(label)?.value {
            Value::Word(word) => Some(word),
            _ => None,
        }
    }

    /// Words in quotes.
    pub fn text(&self, label: &str) -> Option<&str> {
        match &self.part(label)?.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// A whole number.
    pub fn count(&self, label: &str) -> Option<u32> {
        match &self.part(label)?.value {
            Value::Count(count) => Some(*count),
            _ => None,
        }
    }

    /// A plain number or a share of a hundred.
    pub fn number(&self, label: &str) -> Option<f64> {
        match &self.part(label)?.value {
            Value::Number(number) | Value::Percent(number) => Some(*number),
            Value::Count(count) => Some(f64::from(*count)),
            _ => None,
        }
    }

    /// A load.
    pub fn load(&self, label: &str) -> Option<Load> {
        match &self.part(label)?.value {
            Value::Load(load) => Some(*load),
            _ => None,
        }
    }

    /// A stress.
    pub fn stress(&self, label: &str) -> Option<Stress> {
        match &self.part(label)?.value {
            Value::Stress(stress) => Some(*stress),
            _ => None,
        }
    }

    /// A day.
    pub fn date(&self, label: &str) -> Option<Date> {
        match &self.part(label)?.value {
            Value::Date(date) => Some(*date),
            _ => None,
        }
    }

    /// A side.
    pub fn side(&self, label: &str) -> Option<Side> {
        match &self.part(label)?.value {
            Value::Side(side) => Some(*side),
            _ => None,
        }
    }

    /// Lengths parted by ` x `.
    pub fn dimensions(&self, label: &str) -> Option<&[Length]> {
        match &self.part(label)?.value {
            Value::Dimensions(lengths) => Some(lengths),
            _ => None,
        }
    }

    /// A member.
    pub fn member(&self, label: &str) -> Option<&Member> {
        match &self.part(label)?.value {
            Value::Member(member) => Some(member),
            _ => None,
        }
    }
}
