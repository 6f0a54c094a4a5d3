//! `textDocument/diagnostic` and `workspace/diagnostic`: findings for a client that asks.

use std::collections::HashMap;

use tower_lsp::lsp_types::{
    DocumentDiagnosticReport, FullDocumentDiagnosticReport, RelatedFullDocumentDiagnosticReport,
    RelatedUnchangedDocumentDiagnosticReport, UnchangedDocumentDiagnosticReport, Url,
    WorkspaceDiagnosticReport, WorkspaceDocumentDiagnosticReport, WorkspaceFullDocumentDiagnosticReport,
    WorkspaceUnchangedDocumentDiagnosticReport,
};

use crate::server::desk::FileFindings;

/// The report on one document; nothing of what the client has already.
pub fn document(findings: Option<FileFindings>, known: Option<&str>) -> DocumentDiagnosticReport {
    let edition = findings.as_ref().map_or(0, |findings| findings.edition).to_string();
    if known == Some(&edition) {
        return DocumentDiagnosticReport::Unchanged(RelatedUnchangedDocumentDiagnosticReport {
            related_documents: None,
            unchanged_document_diagnostic_report: UnchangedDocumentDiagnosticReport { result_id: edition },
        });
    }
    DocumentDiagnosticReport::Full(RelatedFullDocumentDiagnosticReport {
        related_documents: None,
        full_document_diagnostic_report: FullDocumentDiagnosticReport {
            result_id: Some(edition),
            items: findings.map(|findings| findings.entries).unwrap_or_default(),
        },
    })
}

/// The report on every file. One that the client knows of and that is gone gets an empty list.
pub fn workspace(all: Vec<FileFindings>, known: HashMap<Url, String>) -> WorkspaceDiagnosticReport {
    let mut gone = known.clone();
    let mut items = Vec::new();
    for FileFindings { uri, version, edition, entries } in all {
        gone.remove(&uri);
        let (version, edition) = (version.map(i64::from), edition.to_string());
        items.push(if known.get(&uri) == Some(&edition) {
            WorkspaceDocumentDiagnosticReport::Unchanged(WorkspaceUnchangedDocumentDiagnosticReport {
                uri,
                version,
                unchanged_document_diagnostic_report: UnchangedDocumentDiagnosticReport {
                    result_id: edition,
                },
            })
        } else {
            full(uri, version, edition, entries)
        });
    }
    items.extend(gone.into_keys().map(|uri| full(uri, None, 0.to_string(), Vec::new())));
    WorkspaceDiagnosticReport { items }
}

fn full(
    uri: Url,
    version: Option<i64>,
    edition: String,
    items: Vec<tower_lsp::lsp_types::Diagnostic>,
) -> WorkspaceDocumentDiagnosticReport {
    let report = FullDocumentDiagnosticReport { result_id: Some(edition), items };
    WorkspaceDocumentDiagnosticReport::Full(WorkspaceFullDocumentDiagnosticReport {
        uri,
        version,
        full_document_diagnostic_report: report,
    })
}
