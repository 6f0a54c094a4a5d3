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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::diagnostic::{Related, Remedy};
    use crate::text::{ColumnEncoding, FileId, Source};

    fn page(name: &str, text: &str) -> Option<Page> {
        let uri = Url::parse(&format!("file:///{name}")).unwrap();
        let ruler = Ruler::new(Source::new(name, text), ColumnEncoding::Utf16);
        Some(Page { uri, version: None, ruler })
    }

    fn finding(
        file: u32,
        start: u32,
        message: &str,
        consequences: Vec<diagnostic::Diagnostic>,
    ) -> diagnostic::Diagnostic {
        let span = Span::new(FileId(file), start, start + 2);
        diagnostic::Diagnostic {
            rule: "some-rule",
            severity: Severity::Error,
            subject: String::new(),
            span,
            message: message.to_owned(),
            related: vec![Related { span, message: "see here".to_owned() }],
            notes: Vec::new(),
            help: Vec::new(),
            standing: String::new(),
            remedy: Remedy::OnPaper,
            basis: None,
            fix: None,
            waiver: None,
            consequences,
        }
    }

    const FULL: Abilities = Abilities {
        encoding: ColumnEncoding::Utf16,
        shows_related: true,
        renders_markdown: true,
        watches_files: false,
    };

    /// File, line, message and related places of each entry.
    fn shown(root: &diagnostic::Diagnostic, abilities: Abilities) -> Vec<(u32, u32, String, Vec<String>)> {
        let pages = [page("a", "aa\nbb\n"), page("b", "cc\ndd\n")];
        let places = |entry: &Diagnostic| {
            let places = entry.related_information.iter().flatten();
            places.map(|place| format!("{} {}", place.location.uri.path(), place.message)).collect()
        };
        entries(root, &pages, abilities)
            .into_iter()
            .map(|(span, entry)| (span.file.0, entry.range.start.line, entry.message.clone(), places(&entry)))
            .collect()
    }

    #[test]
    fn a_root_is_one_entry_that_lists_what_follows() {
        let grandchild = finding(0, 0, "grandchild", Vec::new());
        let root = finding(0, 3, "root", vec![finding(0, 0, "child", vec![grandchild])]);
        let places = ["/a see here", "/a follows: child", "/a follows: grandchild"].map(str::to_owned);
        assert_eq!(shown(&root, FULL), [(0, 1, "root\n2 more follow from it".to_owned(), places.to_vec())]);
        let plain = Abilities { shows_related: false, ..FULL };
        assert_eq!(shown(&root, plain), [(0, 1, "root\n2 more follow from it".to_owned(), Vec::new())]);
    }

    #[test]
    fn a_consequence_in_another_file_is_an_entry_there_too() {
        let root = finding(0, 3, "root", vec![finding(1, 0, "child", Vec::new())]);
        let [root_entry, child_entry] = shown(&root, FULL).try_into().unwrap();
        assert_eq!((root_entry.0, root_entry.2.as_str()), (0, "root\n1 more follows from it"));
        assert_eq!(root_entry.3, ["/a see here", "/b follows: child"]);
        assert_eq!((child_entry.0, child_entry.2.as_str()), (1, "child\nfollows from: root"));
        assert_eq!(child_entry.3, ["/a follows from: root", "/b see here"]);
    }

    #[test]
    fn what_two_specs_say_of_one_file_is_said_once() {
        let uri = Url::parse("file:///a").unwrap();
        let entry = |message: &str| Diagnostic { message: message.to_owned(), ..Diagnostic::default() };
        let list = |entries: &[&str]| {
            PublishDiagnosticsParams::new(uri.clone(), entries.iter().map(|one| entry(one)).collect(), None)
        };
        let mut all = Vec::new();
        add(&mut all, list(&["x", "y"]));
        add(&mut all, list(&["y", "z"]));
        assert_eq!(all, [list(&["x", "y", "z"])]);
    }
}
