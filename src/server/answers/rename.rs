//! `textDocument/prepareRename` and `rename`.
//!
//! A name in a file that several projects share is one name: whoever changes it changes it in all of them, also in
//! projects of which no file is open.

use std::collections::HashSet;
use std::sync::Arc;

use tower_lsp::lsp_types::{Position, PrepareRenameResponse, WorkspaceEdit};

use crate::ide::{self, NoRename};
use crate::server::desk::Workspace;
use crate::server::edits::Edits;
use crate::server::view::{Analysed, View};
use crate::snapshot::{Caches, analyse};
use crate::text::{FileId, Span};
use crate::workspace::{Spec, specs_below, today};

/// The name at a position, when it can be changed.
pub fn prepare(view: &View, position: Position) -> Option<PrepareRenameResponse> {
    let offset = view.offset(position);
    let mut names =
        view.houses().filter_map(|house| ide::prepare_rename(&house.snapshot().house, house.file, offset));
    let name = names.next()?;
    let range = view.range(name.span.start, name.span.end);
    Some(PrepareRenameResponse::RangeWithPlaceholder { range, placeholder: name.name })
}

/// The changes that give the name at a position another, in every project that has it.
///
/// # Errors
/// Why one of the projects can't have it, as a sentence.
pub fn rename(
    view: &View,
    workspace: &Workspace,
    position: Position,
    name: &str,
) -> Result<WorkspaceEdit, String> {
    let offset = view.offset(position);
    let here = view.houses().map(|house| Arc::clone(&house.analysed));
    let houses = with_neighbours(here.collect(), workspace, view);
    let starts = view.houses().zip(0..).map(|(house, index)| (index, Span::new(house.file, offset, offset)));
    edits(&houses, starts.collect(), name).map(|edits| edits.encoded(view.abilities))
}

/// Follows the name from these places, each in one of the houses, into every house that has a file with a changed place.
fn edits(houses: &[Arc<Analysed>], starts: Vec<(usize, Span)>, name: &str) -> Result<Edits, String> {
    let mut edits = Edits::default();
    let mut is_found = false;
    let mut done: HashSet<(usize, Span)> = HashSet::new();
    let mut waiting = starts;
    while let Some((index, place)) = waiting.pop() {
        let Some(house) = houses.get(index) else { continue };
        if done.contains(&(index, place)) {
            continue;
        }
        let changes = match ide::rename(&house.snapshot.house, place.file, place.start, name) {
            Ok(changes) => changes,
            // In this project the name means nothing.
            Err(NoRename::NoName) => continue,
            Err(refusal) if index == 0 => return Err(refusal.to_string()),
            // Not the project that one looks at.
            Err(refusal) => {
                let root = house.spec.inputs.sources.first().map_or("", |source| &source.name);
                return Err(format!("{refusal}, in {root}"));
            }
        };
        is_found = true;
        for change in changes {
            let (Some(page), true) = (house.page(change.span.file), done.insert((index, change.span))) else {
                continue;
            };
            edits.add(page, change.span.start, change.span.end, &change.text);
            waiting.extend(same_place(houses, house, change.span).filter(|it| !done.contains(it)));
        }
    }
    if is_found { Ok(edits) } else { Err(NoRename::NoName.to_string()) }
}

/// A place of one house as the houses see it that have its file.
fn same_place<'a>(
    houses: &'a [Arc<Analysed>],
    house: &'a Analysed,
    place: Span,
) -> impl Iterator<Item = (usize, Span)> + 'a {
    let path = house.spec.paths.get(place.file.0 as usize);
    houses.iter().enumerate().filter_map(move |(index, other)| {
        let file: FileId = other.spec.file_of(path?)?;
        Some((index, Span { file, ..place }))
    })
}

/// These houses, then every other of the workspace that shares a file with one of them, or with one that does.
fn with_neighbours(mut houses: Vec<Arc<Analysed>>, workspace: &Workspace, view: &View) -> Vec<Arc<Analysed>> {
    // A file that opens a project is in no other: where there are no further ones, nothing need be looked through.
    if houses.iter().all(|house| house.spec.paths.len() == 1 && !house.spec.is_alone) {
        return houses;
    }
    let open = workspace.open_documents();
    let below = workspace.all_folders().into_iter().flat_map(|folder| specs_below(&folder, &open));
    let mut others: Vec<Spec> = below.filter_map(|(_, spec)| spec.ok()).collect();
    loop {
        let is_neighbour = |spec: &Spec| {
            let is_known = houses.iter().any(|house| house.spec.paths.first() == spec.paths.first());
            let has = |house: &Arc<Analysed>| house.spec.paths.iter().any(|path| spec.has(path));
            !is_known && houses.iter().any(has)
        };
        let Some(at) = others.iter().position(is_neighbour) else { return houses };
        let spec = others.swap_remove(at);
        let root = spec.paths.first();
        let is_this = |house: &&Arc<Analysed>| house.spec.paths.first() == root;
        match workspace.houses.iter().find(is_this).cloned() {
            Some(house) => houses.push(house),
            None => houses.extend(analysed(spec, workspace, view)),
        }
    }
}

fn analysed(spec: Spec, workspace: &Workspace, view: &View) -> Option<Arc<Analysed>> {
    let snapshot = analyse(&spec.inputs, &mut Caches::default(), today(), &|| false).ok()?;
    Some(Arc::new(Analysed::new(spec, Arc::new(snapshot), &workspace.documents, view.abilities)))
}
