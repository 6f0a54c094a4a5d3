//! `workspace/willRenameFiles`: include lines follow the files that move.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;

use tower_lsp::lsp_types::{RenameFilesParams, Url, WorkspaceEdit};

use crate::server::abilities::Abilities;
use crate::server::desk::Workspace;
use crate::server::edits::Edits;
use crate::server::ruler::Ruler;
use crate::server::view::Page;
use crate::text::Source;
use crate::workspace::{Move, files_below, include_edits, real_path, text_of};

/// The changes that keep every include of the workspace leading where it leads; `None` when none is needed.
pub fn moved_files(
    workspace: &Workspace,
    abilities: Abilities,
    params: RenameFilesParams,
) -> Option<WorkspaceEdit> {
    let path = |uri: &str| Some(real_path(&Url::parse(uri).ok()?.to_file_path().ok()?));
    let moves = params.files.iter();
    let moves: Vec<Move> =
        moves.filter_map(|it| Some(Move { from: path(&it.old_uri)?, to: path(&it.new_uri)? })).collect();
    let mut edits = Edits::default();
    let open = workspace.open_documents();
    let files: BTreeSet<PathBuf> =
        workspace.all_folders().iter().flat_map(|folder| files_below(folder, &open)).collect();
    for file in files {
        let Some((page, text)) = page_of(file.clone(), workspace, abilities) else { continue };
        for edit in include_edits(&file, &text, &moves) {
            edits.add(&page, edit.span.start, edit.span.end, &edit.path);
        }
    }
    (!edits.is_empty()).then(|| edits.encoded(abilities))
}

/// A file as the client knows it, and its text as we read it.
fn page_of(file: PathBuf, workspace: &Workspace, abilities: Abilities) -> Option<(Page, Arc<str>)> {
    if let Some(document) = workspace.documents.iter().find(|document| real_path(&document.path) == file) {
        return Some((document.page(), document.text()));
    }
    let text = text_of(&file).ok()?;
    let ruler = Ruler::new(Source::new("", text.clone()), abilities.encoding);
    Some((Page { uri: Url::from_file_path(&file).ok()?, version: None, ruler }, text))
}
