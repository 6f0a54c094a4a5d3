//! Findings as an editor's diagnostics.
//!
//! One mistake is one entry: what follows from it is listed under it, as related places. A consequence in another file
//! gets an entry there as well, else nobody who has only that file before him would know.

use std::sync::Arc;

use tower_lsp::lsp_types::{
    Diagnostic, DiagnosticRelatedInformation, DiagnosticSeverity, Location, NumberOrString, Position,
    PublishDiagnosticsParams, Range, Url,
};

use crate::diagnostic::{self, Severity};
use crate::server::abilities::Abilities;
use crate::server::analyst::Analysed;
use crate::server::document::Document;
use crate::server::ruler::Ruler;
use crate::text::Span;
use crate::workspace::{ConfigurationFault, Spec};

/// Who says it.
const SOURCE: &str = "storyrod";

/// What to tell the client of each file of the specs: every file, also those without a finding.
pub fn publications(
    analysed: &[Analysed],
    documents: &[Arc<Document>],
    abilities: Abilities,
) -> Vec<PublishDiagnosticsParams> {
    let mut all: Vec<PublishDiagnosticsParams> = Vec::new();
    for Analysed { spec, snapshot } in analysed {
        let pages = pages(spec, documents, abilities);
        let mut lists: Vec<Vec<Diagnostic>> = pages.iter().map(|_| Vec::new()).collect();
        for finding in &snapshot.findings {
            for (span, entry) in entries(finding, &pages, abilities) {
                if let Some(list) = lists.get_mut(span.file.0 as usize) {
                    list.push(entry);
                }
            }
        }
        for (page, list) in pages.into_iter().zip(lists) {
            let Some(page) = page else { continue };
            add(&mut all, PublishDiagnosticsParams::new(page.uri, list, page.version));
        }
        for fault in &spec.configuration_faults {
            if let Ok(uri) = Url::from_file_path(&fault.path) {
                add(&mut all, PublishDiagnosticsParams::new(uri, vec![configuration_entry(fault)], None));
            }
        }
    }
    all
}

/// Puts a file's list to what other specs say of the same file, each entry once.
fn add(all: &mut Vec<PublishDiagnosticsParams>, new: PublishDiagnosticsParams) {
    match all.iter_mut().find(|old| old.uri == new.uri) {
        Some(old) => {
            for entry in new.diagnostics {
                if !old.diagnostics.contains(&entry) {
                    old.diagnostics.push(entry);
                }
            }
        }
        None => all.push(new),
    }
}

/// A file as the client knows it.
struct Page {
    uri: Url,
    version: Option<i32>,
    ruler: Ruler,
}

/// The files of a spec, in its order. `None` for a path that no address can name.
fn pages(spec: &Spec, documents: &[Arc<Document>], abilities: Abilities) -> Vec<Option<Page>> {
    let open: Vec<_> =
        documents.iter().filter_map(|document| Some((spec.file_of(&document.path)?, document))).collect();
    let files = (0..).zip(spec.paths.iter().zip(&spec.inputs.sources));
    files
        .map(|(index, (path, source))| match open.iter().find(|(file, _)| file.0 == index) {
            Some((_, document)) => Some(Page {
                uri: document.uri.clone(),
                version: Some(document.version),
                ruler: document.ruler.clone(),
            }),
            None => Some(Page {
                uri: Url::from_file_path(path).ok()?,
                version: None,
                ruler: Ruler::new(source.clone(), abilities.encoding),
            }),
        })
        .collect()
}

/// The entries of one root: its own, and one for each consequence in another file.
fn entries(
    root: &diagnostic::Diagnostic,
    pages: &[Option<Page>],
    abilities: Abilities,
) -> Vec<(Span, Diagnostic)> {
    let consequences: Vec<_> = root.with_consequences().into_iter().skip(1).collect();
    let mut places: Vec<_> =
        root.related.iter().filter_map(|place| related(place.span, &place.message, pages)).collect();
    places.extend(
        consequences.iter().filter_map(|one| related(one.span, &format!("follows: {}", one.message), pages)),
    );
    let mut entries = Vec::new();
    entries.extend(entry(root, root_message(root, consequences.len()), places, pages, abilities));
    for one in consequences.into_iter().filter(|one| one.span.file != root.span.file) {
        let message = format!("{}\nfollows from: {}", one.message, root.message);
        let mut places: Vec<_> =
            related(root.span, &format!("follows from: {}", root.message), pages).into_iter().collect();
        places.extend(one.related.iter().filter_map(|place| related(place.span, &place.message, pages)));
        entries.extend(entry(one, message, places, pages, abilities));
    }
    entries
}

fn entry(
    finding: &diagnostic::Diagnostic,
    message: String,
    places: Vec<DiagnosticRelatedInformation>,
    pages: &[Option<Page>],
    abilities: Abilities,
) -> Option<(Span, Diagnostic)> {
    let page = pages.get(finding.span.file.0 as usize)?.as_ref()?;
    let entry = Diagnostic {
        range: page.ruler.range(finding.span.start, finding.span.end),
        severity: Some(severity(finding.severity)),
        code: Some(NumberOrString::String(finding.rule.to_owned())),
        source: Some(SOURCE.to_owned()),
        message,
        related_information: (abilities.shows_related && !places.is_empty()).then_some(places),
        ..Diagnostic::default()
    };
    Some((finding.span, entry))
}

/// The fault, its cures, and how much hangs on it: what fits in an editor's line. The rest is in the hover.
fn root_message(root: &diagnostic::Diagnostic, n_consequences: usize) -> String {
    let mut lines = vec![root.message.clone()];
    lines.extend(root.help.iter().map(|help| format!("help: {help}")));
    match n_consequences {
        0 => {}
        1 => lines.push("1 more follows from it".to_owned()),
        n => lines.push(format!("{n} more follow from it")),
    }
    lines.join("\n")
}

fn related(span: Span, message: &str, pages: &[Option<Page>]) -> Option<DiagnosticRelatedInformation> {
    let page = pages.get(span.file.0 as usize)?.as_ref()?;
    let range = page.ruler.range(span.start, span.end);
    Some(DiagnosticRelatedInformation {
        location: Location::new(page.uri.clone(), range),
        message: message.to_owned(),
    })
}

fn configuration_entry(fault: &ConfigurationFault) -> Diagnostic {
    let (line, column) = fault.place.unwrap_or((1, 1));
    let at = Position::new(line.saturating_sub(1), column.saturating_sub(1));
    Diagnostic {
        range: Range::new(at, at),
        severity: Some(DiagnosticSeverity::ERROR),
        source: Some(SOURCE.to_owned()),
        message: fault.message.clone(),
        ..Diagnostic::default()
    }
}

const fn severity(severity: Severity) -> DiagnosticSeverity {
    match severity {
        Severity::Error => DiagnosticSeverity::ERROR,
        Severity::Warning => DiagnosticSeverity::WARNING,
        Severity::Advice => DiagnosticSeverity::INFORMATION,
    }
}
