//! What we offer a client.

use serde_json::{Value, json};
use tower_lsp::jsonrpc::Response;
use tower_lsp::lsp_types::{
    CallHierarchyServerCapability, CodeActionOptions, CodeActionProviderCapability, CodeLensOptions,
    CompletionOptions, CompletionOptionsCompletionItem, DeclarationCapability, DiagnosticOptions,
    DiagnosticServerCapabilities, DidChangeWatchedFilesRegistrationOptions, DocumentLinkOptions,
    DocumentOnTypeFormattingOptions, ExecuteCommandOptions, FileOperationFilter, FileOperationPattern,
    FileOperationPatternKind, FileOperationRegistrationOptions, FileSystemWatcher,
    FoldingRangeProviderCapability, GlobPattern, HoverProviderCapability, ImplementationProviderCapability,
    InlayHintOptions, InlayHintServerCapabilities, OneOf, Registration, RenameOptions, SaveOptions,
    SelectionRangeProviderCapability, SemanticTokensFullOptions, SemanticTokensOptions,
    SemanticTokensServerCapabilities, ServerCapabilities, SignatureHelpOptions, TextDocumentSyncCapability,
    TextDocumentSyncKind, TextDocumentSyncOptions, TextDocumentSyncSaveOptions,
    TypeDefinitionProviderCapability, WorkDoneProgressOptions, WorkspaceFileOperationsServerCapabilities,
    WorkspaceFoldersServerCapabilities, WorkspaceServerCapabilities,
};

use crate::server::abilities::Abilities;
use crate::server::answers::code_action::kinds;
use crate::server::answers::formatting::LINE_END;
use crate::server::answers::sheets::COMMANDS;
use crate::server::answers::tokens::legend;
use crate::server::preferences::SECTION;
use crate::server::ruler::encoding_kind;

/// Files whose change on disk concerns us.
const WATCHED: [&str; 2] = ["**/*.framing", "**/storyrod.toml"];

/// What may hold includes, or be included, when it moves.
const MOVED: [(&str, FileOperationPatternKind); 2] =
    [("**/*.framing", FileOperationPatternKind::File), ("**", FileOperationPatternKind::Folder)];

/// What we offer a client with these abilities.
pub fn capabilities(abilities: Abilities) -> ServerCapabilities {
    ServerCapabilities {
        position_encoding: Some(encoding_kind(abilities.encoding)),
        text_document_sync: Some(TextDocumentSyncCapability::Options(TextDocumentSyncOptions {
            open_close: Some(true),
            change: Some(TextDocumentSyncKind::INCREMENTAL),
            save: Some(TextDocumentSyncSaveOptions::SaveOptions(SaveOptions { include_text: Some(false) })),
            ..TextDocumentSyncOptions::default()
        })),
        inlay_hint_provider: Some(OneOf::Right(InlayHintServerCapabilities::Options(InlayHintOptions {
            resolve_provider: Some(true),
            ..InlayHintOptions::default()
        }))),
        hover_provider: Some(HoverProviderCapability::Simple(true)),
        definition_provider: Some(OneOf::Left(true)),
        declaration_provider: Some(DeclarationCapability::Simple(true)),
        type_definition_provider: Some(TypeDefinitionProviderCapability::Simple(true)),
        implementation_provider: Some(ImplementationProviderCapability::Simple(true)),
        references_provider: Some(OneOf::Left(true)),
        document_highlight_provider: Some(OneOf::Left(true)),
        rename_provider: Some(if abilities.prepares_renames {
            OneOf::Right(RenameOptions {
                prepare_provider: Some(true),
                work_done_progress_options: WorkDoneProgressOptions::default(),
            })
        } else {
            OneOf::Left(true)
        }),
        call_hierarchy_provider: Some(CallHierarchyServerCapability::Simple(true)),
        code_lens_provider: Some(CodeLensOptions { resolve_provider: Some(false) }),
        completion_provider: Some(CompletionOptions {
            trigger_characters: Some([" ", "/", "\"", "#"].map(str::to_owned).to_vec()),
            resolve_provider: Some(true),
            completion_item: Some(CompletionOptionsCompletionItem { label_details_support: Some(true) }),
            ..CompletionOptions::default()
        }),
        signature_help_provider: Some(SignatureHelpOptions {
            trigger_characters: Some([" ", ","].map(str::to_owned).to_vec()),
            retrigger_characters: Some([" ", ","].map(str::to_owned).to_vec()),
            work_done_progress_options: WorkDoneProgressOptions::default(),
        }),
        document_formatting_provider: Some(OneOf::Left(true)),
        code_action_provider: Some(CodeActionProviderCapability::Options(CodeActionOptions {
            code_action_kinds: Some(kinds()),
            resolve_provider: Some(true),
            ..CodeActionOptions::default()
        })),
        document_range_formatting_provider: Some(OneOf::Left(true)),
        document_on_type_formatting_provider: Some(DocumentOnTypeFormattingOptions {
            first_trigger_character: LINE_END.to_owned(),
            more_trigger_character: None,
        }),
        semantic_tokens_provider: Some(SemanticTokensServerCapabilities::SemanticTokensOptions(
            SemanticTokensOptions {
                legend: legend(),
                range: Some(true),
                full: Some(SemanticTokensFullOptions::Delta { delta: Some(true) }),
                work_done_progress_options: WorkDoneProgressOptions::default(),
            },
        )),
        document_symbol_provider: Some(OneOf::Left(true)),
        workspace_symbol_provider: Some(OneOf::Left(true)),
        folding_range_provider: Some(FoldingRangeProviderCapability::Simple(true)),
        selection_range_provider: Some(SelectionRangeProviderCapability::Simple(true)),
        document_link_provider: Some(DocumentLinkOptions {
            resolve_provider: None,
            work_done_progress_options: WorkDoneProgressOptions::default(),
        }),
        execute_command_provider: Some(ExecuteCommandOptions {
            commands: COMMANDS.map(str::to_owned).to_vec(),
            work_done_progress_options: WorkDoneProgressOptions::default(),
        }),
        // Whoever asks is told, but nobody is told twice: what is asked for is not pushed.
        diagnostic_provider: abilities.pulls_diagnostics.then(|| {
            DiagnosticServerCapabilities::Options(DiagnosticOptions {
                identifier: Some(SECTION.to_owned()),
                inter_file_dependencies: true,
                workspace_diagnostics: true,
                work_done_progress_options: WorkDoneProgressOptions::default(),
            })
        }),
        workspace: Some(WorkspaceServerCapabilities {
            workspace_folders: Some(WorkspaceFoldersServerCapabilities {
                supported: Some(true),
                change_notifications: Some(OneOf::Left(true)),
            }),
            file_operations: Some(WorkspaceFileOperationsServerCapabilities {
                will_rename: Some(FileOperationRegistrationOptions { filters: MOVED.map(filter).to_vec() }),
                ..WorkspaceFileOperationsServerCapabilities::default()
            }),
        }),
        ..ServerCapabilities::default()
    }
}

fn filter((glob, kind): (&str, FileOperationPatternKind)) -> FileOperationFilter {
    FileOperationFilter {
        scheme: Some("file".to_owned()),
        pattern: FileOperationPattern { glob: glob.to_owned(), matches: Some(kind), options: None },
    }
}

/// What we offer and the protocol's types here have no member for.
const LATER: [&str; 1] = ["typeHierarchyProvider"];

/// The answer to `initialize` with what the protocol's types here have no member for.
pub fn with_later_members(answer: Response) -> Response {
    let (id, result) = answer.into_parts();
    match result {
        Ok(mut result) => {
            if let Some(offered) = result.pointer_mut("/capabilities").and_then(Value::as_object_mut) {
                offered.extend(LATER.map(|name| (name.to_owned(), Value::Bool(true))));
            }
            Response::from_ok(id, result)
        }
        Err(error) => Response::from_error(id, error),
    }
}

/// What we ask a client to tell us of.
pub fn registrations(abilities: Abilities) -> Vec<Registration> {
    let mut wanted = Vec::new();
    if abilities.watches_files {
        let watcher =
            |glob: &str| FileSystemWatcher { glob_pattern: GlobPattern::String(glob.to_owned()), kind: None };
        let options =
            DidChangeWatchedFilesRegistrationOptions { watchers: WATCHED.into_iter().map(watcher).collect() };
        wanted.push(Registration {
            id: "files".to_owned(),
            method: "workspace/didChangeWatchedFiles".to_owned(),
            register_options: serde_json::to_value(options).ok(),
        });
    }
    if abilities.registers_settings {
        wanted.push(Registration {
            id: "settings".to_owned(),
            method: "workspace/didChangeConfiguration".to_owned(),
            register_options: Some(json!({"section": SECTION})),
        });
    }
    wanted
}
