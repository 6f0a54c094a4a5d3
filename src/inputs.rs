//! What an analysis depends on: the files of a spec, what its include lines led to.

use crate::text::{FileId, LocalSpan, Source};

/// Everything an analysis depends on. Same inputs, same snapshot.
#[derive(Clone, Debug)]
pub struct Inputs {
    /// The files of one spec; the first is its root.
    pub sources: Vec<Source>,
    /// What each include line led to, in the order they were met.
    pub includes: Vec<Include>,
}

/// An include line and what it led to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Include {
    /// The file it stands in.
    pub file: FileId,
    /// Where the path stands, counted from the file's start.
    pub span: LocalSpan,
    /// The path as written.
    pub path: String,
    /// What it led to.
    pub outcome: IncludeOutcome,
}

/// What an include line led to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum IncludeOutcome {
    /// This file.
    Read(FileId),
    /// No such file.
    Missing,
    /// The path leads out of the root folder, by itself or through a link.
    Outside,
    /// The file includes itself in the end: the names on the way round.
    Cycle(Vec<String>),
    /// The file was read by an earlier include already.
    Again(FileId),
    /// It stands there but can't be read: why, in a person's words.
    Unreadable(String),
}
