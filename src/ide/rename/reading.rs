//! Does a text mean the same once a name in it is another.

use std::collections::HashSet;
use std::mem::{Discriminant, discriminant};

use crate::diagnostic::Edit;
use crate::house::House;
use crate::ide::meaning::{Meaning, Named, lines_and_rules};
use crate::model::Model;
use crate::model::plan::Axis;
use crate::model::problem::ModelProblemKind;
use crate::syntax::{Chunk, ProblemKind, Tree, parse_fresh};
use crate::text::{FileId, Span};

/// A place of the text as it is that would mean something else once these edits are made; `None` when every name of the
/// spec means afterwards what it means now, and nothing new is out of order.
///
/// The edits lie in the order of the text, and all change one name to one other.
pub fn first_change(house: &House, edits: &[Edit]) -> Option<Span> {
    let moved = Moved { edits };
    let mut trees = Vec::with_capacity(house.trees.len());
    for (file, tree) in (0..).map(FileId).zip(&house.trees) {
        match tree_after(house, file, tree, &moved) {
            Ok(tree) => trees.push(tree),
            Err(place) => return Some(place),
        }
    }
    let model = Model::of(&trees);

    let elements = house.model.mentions.iter().map(|it| (moved.place(it.span), it.target, it.is_declaration));
    let elements_after = model.mentions.iter().map(|it| (it.span, it.target, it.is_declaration));
    let lines = lines_and_rules(&house.model.grid, &house.trees);
    let lines = lines.map(|it| (moved.place(it.span), axis(&it), it.is_declaration));
    let lines_after = lines_and_rules(&model.grid, &trees).map(|it| (it.span, axis(&it), it.is_declaration));
    let known =
        problems(&house.model, &house.trees).map(|(place, sort)| (moved.place(place), sort)).collect();

    first_other(elements, elements_after, |it| it.0)
        .or_else(|| first_other(lines, lines_after, |it| it.0))
        .or_else(|| first_new(&known, problems(&model, &trees)))
        .map(|place| moved.back(place))
}

/// Where the text stands after the edits.
struct Moved<'a> {
    edits: &'a [Edit],
}

impl Moved<'_> {
    fn of_file(&self, file: FileId) -> &[Edit] {
        let start = self.edits.partition_point(|edit| edit.span.file < file);
        let end = self.edits.partition_point(|edit| edit.span.file <= file);
        self.edits.get(start..end).unwrap_or_default()
    }

    fn byte(&self, file: FileId, byte: u32) -> u32 {
        let edits = self.of_file(file);
        let n_before = edits.partition_point(|edit| edit.span.end <= byte);
        let growth = edits.first().map_or(0, growth);
        let after = i64::from(byte) + growth * i64::try_from(n_before).unwrap_or(0);
        u32::try_from(after).unwrap_or(byte)
    }

    fn place(&self, place: Span) -> Span {
        let (start, end) = (self.byte(place.file, place.start), self.byte(place.file, place.end));
        Span::new(place.file, start, end)
    }

    /// Where a place of the new text begins in the text as it is.
    fn back(&self, place: Span) -> Span {
        let edits = self.of_file(place.file);
        let n_before = edits.partition_point(|edit| self.byte(place.file, edit.span.end) <= place.start);
        let growth = edits.first().map_or(0, growth);
        let before = i64::from(place.start) - growth * i64::try_from(n_before).unwrap_or(0);
        let start = u32::try_from(before).unwrap_or(place.start);
        Span::new(place.file, start, start)
    }
}

fn growth(edit: &Edit) -> i64 {
    let before = i64::from(edit.span.end) - i64::from(edit.span.start);
    i64::try_from(edit.text.len()).unwrap_or(0) - before
}

/// The tree of a file after the edits, or the edit behind which it falls into other elements. Only what changes is read.
fn tree_after(house: &House, file: FileId, tree: &Tree, moved: &Moved<'_>) -> Result<Tree, Span> {
    let edits = moved.of_file(file);
    let Some(first) = edits.first() else { return Ok(tree.clone()) };
    let changed: Vec<usize> = changed_chunks(tree, edits);
    let mut text = String::new();
    let mut starts = Vec::with_capacity(changed.len());
    for chunk in changed.iter().filter_map(|index| tree.chunks.get(*index)) {
        starts.push(u32::try_from(text.len()).unwrap_or(u32::MAX));
        push_edited(&mut text, house, file, chunk, edits);
    }
    let read = parse_fresh(&text).chunks;
    if !read.iter().map(|chunk| chunk.start).eq(starts) {
        return Err(first.span);
    }
    let mut chunks = tree.chunks.clone();
    for chunk in &mut chunks {
        chunk.start = moved.byte(file, chunk.start);
    }
    for (index, new) in changed.into_iter().zip(read) {
        if let Some(chunk) = chunks.get_mut(index) {
            chunk.body = new.body;
        }
    }
    Ok(Tree { chunks })
}

fn changed_chunks(tree: &Tree, edits: &[Edit]) -> Vec<usize> {
    let holders = edits.iter().filter_map(|edit| {
        let after = tree.chunks.partition_point(|chunk| chunk.start <= edit.span.start);
        after.checked_sub(1)
    });
    let mut changed: Vec<usize> = holders.collect();
    changed.dedup();
    changed
}

fn push_edited(text: &mut String, house: &House, file: FileId, chunk: &Chunk, edits: &[Edit]) {
    let end = chunk.start.saturating_add(chunk.body.length);
    let from = edits.partition_point(|edit| edit.span.start < chunk.start);
    let to = edits.partition_point(|edit| edit.span.start < end);
    let mut copied = chunk.start;
    for edit in edits.get(from..to).unwrap_or_default() {
        text.push_str(house.text_at(Span::new(file, copied, edit.span.start)));
        text.push_str(&edit.text);
        copied = edit.span.end;
    }
    text.push_str(house.text_at(Span::new(file, copied, end)));
}

/// The axis of a grid line: its name is what may change.
fn axis(named: &Named) -> Option<Axis> {
    match &named.meaning {
        Meaning::GridLine(axis, _) => Some(*axis),
        Meaning::Element(_) | Meaning::Rule(_) | Meaning::Include(_) => None,
    }
}

/// Where two lists first differ.
fn first_other<T: PartialEq>(
    mut before: impl Iterator<Item = T>,
    mut after: impl Iterator<Item = T>,
    place: impl Fn(&T) -> Span,
) -> Option<Span> {
    loop {
        match (before.next(), after.next()) {
            (None, None) => return None,
            (Some(one), Some(other)) if one == other => {}
            (Some(one), Some(other)) => return Some(place(&one).min(place(&other))),
            (Some(one), None) | (None, Some(one)) => return Some(place(&one)),
        }
    }
}

/// What is out of order, whatever names and numbers it is told with.
#[derive(PartialEq, Eq, Hash)]
enum Sort {
    Text(Discriminant<ProblemKind>),
    Model(Discriminant<ModelProblemKind>),
}

fn problems<'a>(model: &'a Model, trees: &'a [Tree]) -> impl Iterator<Item = (Span, Sort)> + 'a {
    let chunks = (0..).map(FileId).zip(trees);
    let chunks = chunks.flat_map(|(file, tree)| tree.chunks.iter().map(move |chunk| (file, chunk)));
    let of_text = chunks.flat_map(|(file, chunk)| {
        let problems = chunk.body.problems.iter();
        problems.map(move |it| (it.span.within(file, chunk.start), Sort::Text(discriminant(&it.kind))))
    });
    let of_model = model.problems.iter().map(|it| (it.span, Sort::Model(discriminant(&it.kind))));
    of_text.chain(of_model)
}

fn first_new(known: &HashSet<(Span, Sort)>, found: impl Iterator<Item = (Span, Sort)>) -> Option<Span> {
    found.filter(|problem| !known.contains(problem)).map(|(place, _)| place).min()
}
