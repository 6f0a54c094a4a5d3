//! What stands under the cursor.

use crate::house::House;
use crate::ide::meaning::element_at;
use crate::model::element::{Common, ElementId};
use crate::snapshot::Snapshot;
use crate::syntax::value::Value;
use crate::syntax::{Chunk, Fact, Heading, Opening, Part};
use crate::text::{FileId, LocalSpan, Span};

/// A place with what stands there.
#[derive(Clone, Copy, Debug)]
pub struct Cursor<'a> {
    /// All that is known.
    pub snapshot: &'a Snapshot,
    /// The file.
    pub file: FileId,
    /// The byte.
    pub offset: u32,
    /// The chunk of the file.
    pub chunk: &'a Chunk,
    /// The element the chunk is, when the model has it.
    pub element: Option<ElementId>,
    /// The fact at the place, from its phrase to its last value.
    pub fact: Option<&'a Fact>,
    /// The value of the fact.
    pub part: Option<&'a Part>,
}

impl<'a> Cursor<'a> {
    /// What stands at a place; `None` outside of the text.
    pub fn at(snapshot: &'a Snapshot, file: FileId, offset: u32) -> Option<Self> {
        let chunk = snapshot.house.trees.get(file.0 as usize)?.chunk_at(offset)?;
        let touches = |span: LocalSpan| span.within(file, chunk.start).touches(offset);
        let fact = chunk.body.facts.iter().find(|fact| touches(fact.span));
        let is_value = |part: &&Part| part.value != Value::Mark && touches(part.span);
        let part = fact.and_then(|fact| fact.parts.iter().find(is_value));
        let element = element_at(&snapshot.house, file, offset);
        Some(Self { snapshot, file, offset, chunk, element, fact, part })
    }

    /// The house.
    pub const fn house(&self) -> &'a House {
        &self.snapshot.house
    }

    /// A place of the chunk as one of the file.
    pub const fn span(&self, local: LocalSpan) -> Span {
        local.within(self.file, self.chunk.start)
    }

    /// The heading of the chunk.
    pub fn heading(&self) -> Option<&'a Heading> {
        match &self.chunk.body.opening {
            Opening::Element(heading) => Some(heading),
            Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
        }
    }

    /// What all elements have, of the element that the chunk is.
    pub fn common(&self) -> Option<&'a Common> {
        self.house().model.common(self.element?)
    }
}
