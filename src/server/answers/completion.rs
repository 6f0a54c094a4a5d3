//! `textDocument/completion` and `completionItem/resolve`.

use std::path::Path;

use serde_json::json;
use tower_lsp::lsp_types::{
    CompletionItem, CompletionItemKind, CompletionItemLabelDetails, CompletionList, CompletionTextEdit,
    Documentation, InsertReplaceEdit, InsertTextFormat, InsertTextMode, MarkupContent, MarkupKind, Position,
    TextEdit, Url,
};

use crate::ide::{self, Completion, CompletionKind};
use crate::server::abilities::Abilities;
use crate::server::desk::Glance;
use crate::snapshot::Snapshot;

/// Of more files than this beside a document none is looked for.
const MOST_FILES: usize = 500;

/// What can be typed at a position.
pub fn completion(glance: &Glance, position: Position, abilities: Abilities) -> CompletionList {
    let document = &glance.document;
    let offset = document.ruler.offset(position);
    let found = ide::completion(&document.text(), offset, snapshot(glance), &|| paths_near(&document.path));
    let items = found.items.into_iter().enumerate();
    CompletionList {
        is_incomplete: found.is_incomplete,
        items: items.map(|(at, item)| encoded(glance, at, item, abilities)).collect(),
    }
}

/// The item with its documentation.
pub fn resolved(mut item: CompletionItem, glance: &Glance, abilities: Abilities) -> CompletionItem {
    let subject = item.data.as_ref().and_then(|data| data.get("subject")?.as_str());
    let told = subject.and_then(|subject| ide::documentation(subject, snapshot(glance)));
    item.documentation = told.map(|value| documentation(value, abilities));
    item
}

/// The document that a resolved item was offered in.
pub fn document_of(item: &CompletionItem) -> Option<Url> {
    Url::parse(item.data.as_ref()?.get("uri")?.as_str()?).ok()
}

fn snapshot(glance: &Glance) -> Option<&Snapshot> {
    glance.view.as_ref().map(|view| view.house.snapshot())
}

/// Text for a client that shows Markdown, or none.
pub fn documentation(value: String, abilities: Abilities) -> Documentation {
    let kind = if abilities.completes_in_markdown { MarkupKind::Markdown } else { MarkupKind::PlainText };
    Documentation::MarkupContent(MarkupContent { kind, value })
}

fn encoded(glance: &Glance, at: usize, item: Completion, abilities: Abilities) -> CompletionItem {
    let ruler = &glance.document.ruler;
    let snippet = item.snippet.filter(|_| abilities.fills_snippets);
    let insert_text_format =
        snippet.is_some().then_some(InsertTextFormat::SNIPPET).or(Some(InsertTextFormat::PLAIN_TEXT));
    let new_text = snippet.unwrap_or(item.text);
    let replace = ruler.range(item.replace.start, item.replace.end);
    let text_edit = if abilities.inserts_or_replaces {
        let insert = ruler.range(item.replace.start, item.cursor.max(item.replace.start));
        CompletionTextEdit::InsertAndReplace(InsertReplaceEdit { new_text, insert, replace })
    } else {
        CompletionTextEdit::Edit(TextEdit { range: replace, new_text })
    };
    let description = item.detail.as_deref().map(first_words);
    CompletionItem {
        label_details: description
            .filter(|_| abilities.shows_label_details)
            .map(|description| CompletionItemLabelDetails { detail: None, description: Some(description) }),
        kind: Some(kind(item.kind)),
        detail: item.detail,
        sort_text: Some(format!("{at:04}")),
        filter_text: item.filter,
        insert_text_format,
        // Values stand in the element's own column already.
        insert_text_mode: Some(InsertTextMode::AS_IS),
        text_edit: Some(text_edit),
        data: item.subject.map(|subject| json!({"uri": glance.document.uri, "subject": subject})),
        label: item.label,
        ..CompletionItem::default()
    }
}

/// As much of a detail as stands beside a label.
fn first_words(detail: &str) -> String {
    const LONGEST: usize = 48;
    match detail.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", detail.get(..end).unwrap_or(detail)),
        None => detail.to_owned(),
    }
}

const fn kind(kind: CompletionKind) -> CompletionItemKind {
    match kind {
        CompletionKind::Element => CompletionItemKind::CLASS,
        CompletionKind::Fact => CompletionItemKind::PROPERTY,
        CompletionKind::Name(_) => CompletionItemKind::REFERENCE,
        CompletionKind::FreeName => CompletionItemKind::VARIABLE,
        CompletionKind::Place => CompletionItemKind::CONSTANT,
        CompletionKind::Word => CompletionItemKind::KEYWORD,
        CompletionKind::Unit => CompletionItemKind::UNIT,
        CompletionKind::Size => CompletionItemKind::ENUM_MEMBER,
        CompletionKind::Number => CompletionItemKind::VALUE,
        CompletionKind::Slug => CompletionItemKind::EVENT,
        CompletionKind::File => CompletionItemKind::FILE,
    }
}

/// The specs beside a document and one folder below it, as an include writes them.
fn paths_near(document: &Path) -> Vec<String> {
    let Some(folder) = document.parent() else { return Vec::new() };
    let mut found = Vec::new();
    let mut folders = vec![(folder.to_owned(), String::new())];
    while let Some((folder, prefix)) = folders.pop() {
        let Ok(entries) = std::fs::read_dir(&folder) else { continue };
        for entry in entries.flatten().take(MOST_FILES) {
            let name = entry.file_name().to_string_lossy().into_owned();
            let is_folder = entry.file_type().is_ok_and(|kind| kind.is_dir());
            if is_folder && prefix.is_empty() && !name.starts_with('.') {
                folders.push((entry.path(), format!("{name}/")));
            } else if name.ends_with(".framing") && entry.path() != document {
                found.push(format!("{prefix}{name}"));
            }
        }
    }
    found.sort();
    found
}
