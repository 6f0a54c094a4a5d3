//! A spec as its elements and their lines, wherever they stand.

use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::syntax::vocabulary::ElementKind;
use crate::syntax::{Chunk, Fact, Opening};
use crate::text::{FileId, Span};

/// An element as written.
#[derive(Clone, Debug)]
pub struct Written<'h> {
    /// What the model has of it.
    pub common: &'h Common,
    /// Its lines that could be read.
    pub lines: Vec<WrittenLine<'h>>,
    /// Its lines that could not be read, blanks apart.
    pub unread: Vec<String>,
}

/// A line that could be read.
#[derive(Clone, Copy, Debug)]
pub struct WrittenLine<'h> {
    /// What it says.
    pub fact: &'h Fact,
    /// Where it stands, without indent and comment.
    pub span: Span,
}

impl Written<'_> {
    /// Which element of its house it is.
    pub fn id(&self) -> ElementId {
        self.common.id
    }

    /// Its kind.
    pub fn kind(&self) -> ElementKind {
        self.common.id.kind
    }
}

/// Every element of a house that the model has.
pub fn elements_of(house: &House) -> Vec<Written<'_>> {
    house.model.commons().filter_map(|common| written(house, common)).collect()
}

fn written<'h>(house: &'h House, common: &'h Common) -> Option<Written<'h>> {
    let file = common.span.file;
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(common.name_span.start)?;
    let Opening::Element(_) = &chunk.body.opening else { return None };
    let lines = chunk.body.facts.iter();
    let lines = lines.map(|fact| WrittenLine { fact, span: fact.span.within(file, chunk.start) }).collect();
    Some(Written { common, lines, unread: unread(house, file, chunk) })
}

fn unread(house: &House, file: FileId, chunk: &Chunk) -> Vec<String> {
    let broken = chunk.body.broken.iter();
    broken.map(|broken| plain(house.text_at(broken.span.within(file, chunk.start)))).collect()
}

/// A text with single blanks.
pub fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
