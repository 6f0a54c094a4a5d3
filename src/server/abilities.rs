//! What a client can show, as far as we act on it.

use tower_lsp::lsp_types::{
    ClientCapabilities, DiagnosticTag, DynamicRegistrationClientCapabilities, MarkupKind,
};

use crate::server::ruler::agreed_encoding;
use crate::text::ColumnEncoding;

/// What a client can show and do. Whatever it does not say it can't.
#[derive(Clone, Copy, Debug)]
pub struct Abilities {
    /// How it counts columns.
    pub encoding: ColumnEncoding,
    /// It shows places that belong to a diagnostic.
    pub shows_related: bool,
    /// It shows a link behind a diagnostic's code.
    pub shows_code_links: bool,
    /// It keeps the data of a diagnostic for a later question.
    pub keeps_data: bool,
    /// It greys out what is unused.
    pub greys_unused: bool,
    /// It asks for diagnostics by itself and can be told to ask again: then nothing is pushed.
    pub pulls_diagnostics: bool,
    /// It renders Markdown in a hover.
    pub renders_markdown: bool,
    /// It fills in the places of a snippet.
    pub fills_snippets: bool,
    /// It lets a person choose whether a completion is put in or takes the word's place.
    pub inserts_or_replaces: bool,
    /// It shows a few words beside a completion's label.
    pub shows_label_details: bool,
    /// It renders Markdown beside completions and signatures.
    pub completes_in_markdown: bool,
    /// It tells us of changed files when asked to.
    pub watches_files: bool,
    /// It answers what its settings are.
    pub tells_settings: bool,
    /// It wants to be told of the settings it registers for.
    pub registers_settings: bool,
    /// It shows the progress of long work.
    pub shows_progress: bool,
    /// It opens a document when asked to.
    pub opens_documents: bool,
    /// It asks what a name is before it is changed.
    pub prepares_renames: bool,
    /// It takes edits with the version that they are meant for.
    pub versions_edits: bool,
    /// It can be told to ask again for lenses.
    pub refreshes_lenses: bool,
    /// It can be told to ask again for hints.
    pub refreshes_hints: bool,
    /// It can be told to ask again for tokens.
    pub refreshes_tokens: bool,
}

impl Abilities {
    /// What the client says of itself.
    pub fn of(client: &ClientCapabilities) -> Self {
        let offered = client.general.as_ref().and_then(|general| general.position_encodings.as_deref());
        let text_document = client.text_document.as_ref();
        let workspace = client.workspace.as_ref();
        let window = client.window.as_ref();
        let diagnostics = text_document.and_then(|text| text.publish_diagnostics.as_ref());
        let tags = diagnostics.and_then(|some| some.tag_support.as_ref());
        let pulling = text_document.and_then(|text| text.diagnostic.as_ref());
        let repulling = workspace.and_then(|workspace| workspace.diagnostic.as_ref());
        let hover = text_document.and_then(|text| text.hover.as_ref());
        let formats = hover.and_then(|hover| hover.content_format.as_deref());
        let watching = workspace.and_then(|workspace| workspace.did_change_watched_files);
        let renaming = text_document.and_then(|text| text.rename.as_ref());
        let completion = text_document.and_then(|text| text.completion.as_ref());
        let items = completion.and_then(|completion| completion.completion_item.as_ref());
        let item_formats = items.and_then(|items| items.documentation_format.as_deref());
        let edits = workspace.and_then(|workspace| workspace.workspace_edit.as_ref());
        let lenses = workspace.and_then(|workspace| workspace.code_lens.as_ref());
        let hints = workspace.and_then(|workspace| workspace.inlay_hint.as_ref());
        let tokens = workspace.and_then(|workspace| workspace.semantic_tokens.as_ref());
        let is_set = |flag: Option<bool>| flag.unwrap_or(false);
        let registers = |some: Option<DynamicRegistrationClientCapabilities>| {
            is_set(some.and_then(|some| some.dynamic_registration))
        };
        Self {
            encoding: agreed_encoding(offered.unwrap_or_default()),
            shows_related: is_set(diagnostics.and_then(|some| some.related_information)),
            shows_code_links: is_set(diagnostics.and_then(|some| some.code_description_support)),
            keeps_data: is_set(diagnostics.and_then(|some| some.data_support)),
            greys_unused: tags.is_some_and(|tags| tags.value_set.contains(&DiagnosticTag::UNNECESSARY)),
            pulls_diagnostics: pulling.is_some()
                && is_set(repulling.and_then(|repulling| repulling.refresh_support)),
            renders_markdown: formats.is_some_and(|formats| formats.contains(&MarkupKind::Markdown)),
            fills_snippets: is_set(items.and_then(|items| items.snippet_support)),
            inserts_or_replaces: is_set(items.and_then(|items| items.insert_replace_support)),
            shows_label_details: is_set(items.and_then(|items| items.label_details_support)),
            completes_in_markdown: item_formats
                .is_some_and(|formats| formats.contains(&MarkupKind::Markdown)),
            watches_files: is_set(watching.and_then(|some| some.dynamic_registration)),
            tells_settings: is_set(workspace.and_then(|workspace| workspace.configuration)),
            registers_settings: registers(workspace.and_then(|workspace| workspace.did_change_configuration)),
            shows_progress: is_set(window.and_then(|window| window.work_done_progress)),
            opens_documents: window
                .and_then(|window| window.show_document.as_ref())
                .is_some_and(|it| it.support),
            prepares_renames: is_set(renaming.and_then(|renaming| renaming.prepare_support)),
            versions_edits: is_set(edits.and_then(|edits| edits.document_changes)),
            refreshes_lenses: is_set(lenses.and_then(|lenses| lenses.refresh_support)),
            refreshes_hints: is_set(hints.and_then(|hints| hints.refresh_support)),
            refreshes_tokens: is_set(tokens.and_then(|tokens| tokens.refresh_support)),
        }
    }
}
