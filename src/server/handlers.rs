//! The protocol's methods: each asks the desk and gives what it says to an answer.
//!
//! A handler's first statement puts its event on the desk; nothing is awaited before, so events keep their order.

mod session;

use std::sync::OnceLock;

use serde_json::Value;
use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types::request::{
    GotoDeclarationParams, GotoDeclarationResponse, GotoImplementationParams, GotoImplementationResponse,
    GotoTypeDefinitionParams, GotoTypeDefinitionResponse,
};
use tower_lsp::lsp_types::{
    CallHierarchyIncomingCall, CallHierarchyIncomingCallsParams, CallHierarchyItem,
    CallHierarchyOutgoingCall, CallHierarchyOutgoingCallsParams, CallHierarchyPrepareParams, CodeAction,
    CodeActionParams, CodeActionResponse, CodeLens, CodeLensParams, CompletionItem, CompletionParams,
    CompletionResponse, DidChangeConfigurationParams, DidChangeTextDocumentParams,
    DidChangeWatchedFilesParams, DidChangeWorkspaceFoldersParams, DidCloseTextDocumentParams,
    DidOpenTextDocumentParams, DidSaveTextDocumentParams, DocumentDiagnosticParams,
    DocumentDiagnosticReportResult, DocumentFormattingParams, DocumentHighlight, DocumentHighlightParams,
    DocumentLink, DocumentLinkParams, DocumentOnTypeFormattingParams, DocumentRangeFormattingParams,
    DocumentSymbolParams, DocumentSymbolResponse, ExecuteCommandParams, FoldingRange, FoldingRangeParams,
    GotoDefinitionParams, GotoDefinitionResponse, Hover, HoverParams, InitializeParams, InitializeResult,
    InitializedParams, InlayHint, InlayHintParams, Location, PrepareRenameResponse, ReferenceParams,
    RenameFilesParams, RenameParams, SelectionRange, SelectionRangeParams, SemanticTokens,
    SemanticTokensDeltaParams, SemanticTokensFullDeltaResult, SemanticTokensParams,
    SemanticTokensRangeParams, SemanticTokensRangeResult, SemanticTokensResult, ServerInfo, SetTraceParams,
    SignatureHelp, SignatureHelpParams, SymbolInformation, TextDocumentPositionParams, TextEdit, TraceValue,
    TypeHierarchyItem, TypeHierarchyPrepareParams, TypeHierarchySubtypesParams,
    TypeHierarchySupertypesParams, WorkDoneProgressCancelParams, WorkspaceDiagnosticParams,
    WorkspaceDiagnosticReportResult, WorkspaceEdit, WorkspaceSymbolParams,
};
use tower_lsp::{Client, LanguageServer, async_trait};

use crate::ide::{self, NoRename};
use crate::server::abilities::Abilities;
use crate::server::answers;
use crate::server::answers::code_action::Remembered;
use crate::server::answers::sheets::Wanted;
use crate::server::capabilities::{capabilities, registrations};
use crate::server::desk::{Event, Glance};
use crate::server::handlers::session::{Session, apart, refusal};
use crate::server::log::Detail;
use crate::server::outbox::Outbox;
use crate::server::preferences::Preferences;
use crate::server::progress::Stopped;
use crate::server::shown_sheets::ShownSheets;
use crate::server::token_store::TokenStore;
use crate::server::view::View;

/// The handlers of one session.
#[derive(Debug)]
pub struct Handlers {
    client: Client,
    outbox: Outbox,
    detail: Detail,
    stopped: Stopped,
    shown_sheets: ShownSheets,
    tokens: TokenStore,
    session: OnceLock<Session>,
}

impl Handlers {
    /// The handlers for a client.
    pub fn new(client: Client, outbox: Outbox, detail: Detail) -> Self {
        let (stopped, shown_sheets, tokens) = Default::default();
        Self { client, outbox, detail, stopped, shown_sheets, tokens, session: OnceLock::new() }
    }

    /// `$/setTrace`
    pub async fn set_trace(&self, params: SetTraceParams) {
        self.detail.set(params.value != TraceValue::Off);
    }

    /// `window/workDoneProgress/cancel`
    pub async fn cancel_progress(&self, params: WorkDoneProgressCancelParams) {
        self.stopped.stop(&params.token);
    }
}

#[async_trait]
impl LanguageServer for Handlers {
    async fn initialize(&self, params: InitializeParams) -> Result<InitializeResult> {
        self.detail.set(params.trace.is_some_and(|trace| trace != TraceValue::Off));
        let abilities = Abilities::of(&params.capabilities);
        match self.start(&params) {
            Ok(session) => _ = self.session.set(session),
            Err(fault) => {
                tracing::error!("no thread can be started: {fault}");
                return Err(Error::internal_error());
            }
        }
        Ok(InitializeResult {
            capabilities: capabilities(abilities),
            server_info: Some(ServerInfo {
                name: env!("CARGO_PKG_NAME").to_owned(),
                version: Some(env!("CARGO_PKG_VERSION").to_owned()),
            }),
        })
    }

    async fn initialized(&self, _: InitializedParams) {
        let Some(session) = self.session.get() else { return };
        let wanted = registrations(session.abilities);
        if !wanted.is_empty() {
            let client = self.client.clone();
            tokio::spawn(async move {
                if let Err(fault) = client.register_capability(wanted).await {
                    tracing::warn!("the client does not tell of changes: {fault}");
                }
            });
        }
        self.ask_for_settings();
    }

    async fn shutdown(&self) -> Result<()> {
        Ok(())
    }

    async fn did_open(&self, params: DidOpenTextDocumentParams) {
        let document = params.text_document;
        self.tell(Event::Opened(document.uri, document.version, document.text));
    }

    async fn did_change(&self, params: DidChangeTextDocumentParams) {
        let document = params.text_document;
        self.tell(Event::Changed(document.uri, document.version, params.content_changes));
    }

    async fn did_close(&self, params: DidCloseTextDocumentParams) {
        self.tokens.forget(&params.text_document.uri);
        self.tell(Event::Closed(params.text_document.uri));
    }

    async fn did_save(&self, _: DidSaveTextDocumentParams) {
        // Saved text is open text: only a client that watches no files gives us a reason to look at the disk.
        if self.session.get().is_some_and(|session| !session.abilities.watches_files) {
            self.tell(Event::DiskChanged);
        }
    }

    async fn did_change_watched_files(&self, _: DidChangeWatchedFilesParams) {
        self.tell(Event::DiskChanged);
    }

    async fn did_change_workspace_folders(&self, params: DidChangeWorkspaceFoldersParams) {
        let paths = |folders: Vec<tower_lsp::lsp_types::WorkspaceFolder>| {
            folders.into_iter().filter_map(|folder| folder.uri.to_file_path().ok()).collect()
        };
        let (added, removed) = (paths(params.event.added), paths(params.event.removed));
        self.tell(Event::FoldersChanged { added, removed });
    }

    async fn did_change_configuration(&self, params: DidChangeConfigurationParams) {
        // A client that can be asked sends settings of its own choice here, or none.
        match params.settings {
            Value::Object(_) if !self.session.get().is_some_and(|it| it.abilities.tells_settings) => {
                self.tell(Event::PreferencesChanged(Preferences::of(&params.settings)));
            }
            _ => self.ask_for_settings(),
        }
    }

    async fn diagnostic(&self, params: DocumentDiagnosticParams) -> Result<DocumentDiagnosticReportResult> {
        let findings =
            self.ask(|reply| Event::FindingsWanted(params.text_document.uri, reply)).await.flatten();
        Ok(answers::diagnostics::document(findings, params.previous_result_id.as_deref()).into())
    }

    async fn workspace_diagnostic(
        &self,
        params: WorkspaceDiagnosticParams,
    ) -> Result<WorkspaceDiagnosticReportResult> {
        let all = self.ask(Event::AllFindingsWanted).await.unwrap_or_default();
        let known = params.previous_result_ids.into_iter().map(|known| (known.uri, known.value)).collect();
        Ok(answers::diagnostics::workspace(all, known).into())
    }

    async fn hover(&self, params: HoverParams) -> Result<Option<Hover>> {
        let place = params.text_document_position_params;
        self.of_house(place.text_document.uri, move |view| answers::hover::hover(view, place.position)).await
    }

    async fn code_lens(&self, params: CodeLensParams) -> Result<Option<Vec<CodeLens>>> {
        self.of_house(params.text_document.uri, answers::lenses::lenses).await
    }

    async fn code_action(&self, params: CodeActionParams) -> Result<Option<CodeActionResponse>> {
        self.of_house(params.text_document.uri, move |view| {
            answers::code_action::code_actions(view, params.range, &params.context)
        })
        .await
    }

    async fn code_action_resolve(&self, action: CodeAction) -> Result<CodeAction> {
        let remembered = action.data.clone().map(serde_json::from_value::<Remembered>);
        let Some(Ok(remembered)) = remembered else { return Ok(action) };
        let uri = remembered.uri.clone();
        let resolved = move |view: &View| answers::code_action::resolved(view, action, &remembered);
        // What was offered for a text that has changed is not done to another one.
        self.of_house(uri, resolved).await?.ok_or_else(|| Error::new(ErrorCode::ContentModified))
    }

    async fn completion(&self, params: CompletionParams) -> Result<Option<CompletionResponse>> {
        let (place, abilities) = (params.text_document_position, self.abilities()?);
        let answer = move |glance: &Glance| {
            let is_text = !glance.document.ruler.is_before_text(place.position);
            is_text.then(|| answers::completion::completion(glance, place.position, abilities).into())
        };
        self.of_text(place.text_document.uri, answer).await
    }

    async fn completion_resolve(&self, item: CompletionItem) -> Result<CompletionItem> {
        let Some(uri) = answers::completion::document_of(&item) else { return Ok(item) };
        let (asked, abilities) = (item.clone(), self.abilities()?);
        let answer = move |glance: &Glance| Some(answers::completion::resolved(asked, glance, abilities));
        Ok(self.of_text(uri, answer).await?.unwrap_or(item))
    }

    async fn signature_help(&self, params: SignatureHelpParams) -> Result<Option<SignatureHelp>> {
        let (place, abilities) = (params.text_document_position_params, self.abilities()?);
        let answer =
            move |glance: &Glance| answers::signature_help::signature_help(glance, place.position, abilities);
        self.of_text(place.text_document.uri, answer).await
    }

    async fn inlay_hint(&self, params: InlayHintParams) -> Result<Option<Vec<InlayHint>>> {
        let (uri, range) = (params.text_document.uri, params.range);
        self.of_house(uri, move |view| Some(answers::hints::hints(view, range))).await
    }

    async fn inlay_hint_resolve(&self, hint: InlayHint) -> Result<InlayHint> {
        let Some(uri) = answers::hints::document_of(&hint) else { return Ok(hint) };
        let asked = hint.clone();
        let resolved = self.of_house(uri, move |view| answers::hints::resolved(view, &asked)).await;
        // A hint that no longer stands there has no more to say.
        Ok(resolved.ok().flatten().unwrap_or(hint))
    }

    async fn formatting(&self, params: DocumentFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let uri = params.text_document.uri;
        self.of_text(uri, |glance| Some(answers::formatting::formatting(&glance.document))).await
    }

    async fn goto_definition(&self, params: GotoDefinitionParams) -> Result<Option<GotoDefinitionResponse>> {
        self.jump(params, ide::definition, |client| client.definition.as_ref()).await
    }

    async fn goto_declaration(
        &self,
        params: GotoDeclarationParams,
    ) -> Result<Option<GotoDeclarationResponse>> {
        self.jump(params, ide::declaration, |client| client.declaration.as_ref()).await
    }

    async fn goto_type_definition(
        &self,
        params: GotoTypeDefinitionParams,
    ) -> Result<Option<GotoTypeDefinitionResponse>> {
        self.jump(params, ide::type_definition, |client| client.type_definition.as_ref()).await
    }

    async fn goto_implementation(
        &self,
        params: GotoImplementationParams,
    ) -> Result<Option<GotoImplementationResponse>> {
        self.jump(params, ide::implementation, |client| client.implementation.as_ref()).await
    }

    async fn references(&self, params: ReferenceParams) -> Result<Option<Vec<Location>>> {
        let (place, with_declaration) = (params.text_document_position, params.context.include_declaration);
        let answer =
            move |view: &View| answers::references::references(view, place.position, with_declaration);
        self.of_house(place.text_document.uri, answer).await
    }

    async fn document_highlight(
        &self,
        params: DocumentHighlightParams,
    ) -> Result<Option<Vec<DocumentHighlight>>> {
        let place = params.text_document_position_params;
        let answer = move |view: &View| answers::references::highlights(view, place.position);
        self.of_house(place.text_document.uri, answer).await
    }

    async fn prepare_call_hierarchy(
        &self,
        params: CallHierarchyPrepareParams,
    ) -> Result<Option<Vec<CallHierarchyItem>>> {
        let place = params.text_document_position_params;
        let answer = move |view: &View| answers::load_path::prepare(view, place.position);
        self.of_house(place.text_document.uri, answer).await
    }

    async fn incoming_calls(
        &self,
        params: CallHierarchyIncomingCallsParams,
    ) -> Result<Option<Vec<CallHierarchyIncomingCall>>> {
        self.of_kept(params.item.data, answers::load_path::incoming).await
    }

    async fn outgoing_calls(
        &self,
        params: CallHierarchyOutgoingCallsParams,
    ) -> Result<Option<Vec<CallHierarchyOutgoingCall>>> {
        self.of_kept(params.item.data, answers::load_path::outgoing).await
    }

    async fn prepare_type_hierarchy(
        &self,
        params: TypeHierarchyPrepareParams,
    ) -> Result<Option<Vec<TypeHierarchyItem>>> {
        let place = params.text_document_position_params;
        let answer = move |view: &View| answers::made_of::prepare(view, place.position);
        self.of_house(place.text_document.uri, answer).await
    }

    async fn supertypes(
        &self,
        params: TypeHierarchySupertypesParams,
    ) -> Result<Option<Vec<TypeHierarchyItem>>> {
        self.of_kept(params.item.data, answers::made_of::supertypes).await
    }

    async fn subtypes(&self, params: TypeHierarchySubtypesParams) -> Result<Option<Vec<TypeHierarchyItem>>> {
        self.of_kept(params.item.data, answers::made_of::subtypes).await
    }

    async fn prepare_rename(
        &self,
        place: TextDocumentPositionParams,
    ) -> Result<Option<PrepareRenameResponse>> {
        let answer = move |view: &View| answers::rename::prepare(view, place.position);
        self.of_house(place.text_document.uri, answer).await
    }

    async fn rename(&self, params: RenameParams) -> Result<Option<WorkspaceEdit>> {
        let (place, name) = (params.text_document_position, params.new_name);
        let Some(view) = self.of_house(place.text_document.uri, |view| Some(view.clone())).await? else {
            return Err(refusal(NoRename::NoName.to_string()));
        };
        let Some(workspace) = self.ask(Event::WorkspaceWanted).await else { return Ok(None) };
        if !workspace.has_texts_of(&view) {
            return Err(Error::new(ErrorCode::ContentModified));
        }
        let answer = apart(move || answers::rename::rename(&view, &workspace, place.position, &name)).await?;
        answer.map(Some).map_err(refusal)
    }

    async fn will_rename_files(&self, params: RenameFilesParams) -> Result<Option<WorkspaceEdit>> {
        let Some(session) = self.session.get() else { return Ok(None) };
        let Some(workspace) = self.ask(Event::WorkspaceWanted).await else { return Ok(None) };
        let abilities = session.abilities;
        apart(move || answers::moved_files::moved_files(&workspace, abilities, params)).await
    }

    async fn range_formatting(&self, params: DocumentRangeFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let (uri, range) = (params.text_document.uri, params.range);
        self.of_text(uri, move |glance| Some(answers::formatting::range_formatting(&glance.document, range)))
            .await
    }

    async fn on_type_formatting(
        &self,
        params: DocumentOnTypeFormattingParams,
    ) -> Result<Option<Vec<TextEdit>>> {
        let place = params.text_document_position;
        let edits = move |glance: &Glance| {
            Some(answers::formatting::on_type_formatting(&glance.document, place.position))
        };
        self.of_text(place.text_document.uri, edits).await
    }

    async fn semantic_tokens_full(
        &self,
        params: SemanticTokensParams,
    ) -> Result<Option<SemanticTokensResult>> {
        let uri = params.text_document.uri;
        let tokens = self.of_house(uri.clone(), |view| Some(answers::tokens::tokens(view, None))).await?;
        Ok(tokens.map(|tokens| self.tokens.give(&uri, tokens).into()))
    }

    async fn semantic_tokens_full_delta(
        &self,
        params: SemanticTokensDeltaParams,
    ) -> Result<Option<SemanticTokensFullDeltaResult>> {
        let (uri, known) = (params.text_document.uri, params.previous_result_id);
        let tokens = self.of_house(uri.clone(), |view| Some(answers::tokens::tokens(view, None))).await?;
        Ok(tokens.map(|tokens| self.tokens.give_changes(&uri, &known, tokens)))
    }

    async fn semantic_tokens_range(
        &self,
        params: SemanticTokensRangeParams,
    ) -> Result<Option<SemanticTokensRangeResult>> {
        let range = Some(params.range);
        let feature = move |view: &View| {
            let data = answers::tokens::tokens(view, range);
            Some(SemanticTokens { result_id: None, data }.into())
        };
        self.of_house(params.text_document.uri, feature).await
    }

    async fn document_symbol(&self, params: DocumentSymbolParams) -> Result<Option<DocumentSymbolResponse>> {
        let uri = params.text_document.uri;
        self.of_house(uri, |view| Some(answers::symbols::document_symbols(view))).await
    }

    async fn symbol(&self, params: WorkspaceSymbolParams) -> Result<Option<Vec<SymbolInformation>>> {
        let Some(workspace) = self.ask(Event::WorkspaceWanted).await else { return Ok(None) };
        apart(move || Some(answers::symbols::workspace_symbols(&workspace, &params.query))).await
    }

    async fn folding_range(&self, params: FoldingRangeParams) -> Result<Option<Vec<FoldingRange>>> {
        self.of_house(params.text_document.uri, |view| Some(answers::folding::folding(view))).await
    }

    async fn selection_range(&self, params: SelectionRangeParams) -> Result<Option<Vec<SelectionRange>>> {
        let SelectionRangeParams { text_document, positions, .. } = params;
        let feature = move |view: &View| Some(answers::selection::selection(view, &positions));
        self.of_house(text_document.uri, feature).await
    }

    async fn document_link(&self, params: DocumentLinkParams) -> Result<Option<Vec<DocumentLink>>> {
        self.of_house(params.text_document.uri, |view| Some(answers::links::links(view))).await
    }

    async fn execute_command(&self, params: ExecuteCommandParams) -> Result<Option<Value>> {
        let Wanted { uri, sheet } = Wanted::of(params).map_err(refusal)?;
        let asked = sheet.clone();
        let written = self.of_house(uri, move |view| {
            let opens = view.abilities.opens_documents && view.preferences.opens_sheets;
            Some((answers::sheets::text_of(&asked, view), opens))
        });
        let Some((text, opens)) = written.await? else {
            return Err(refusal("the file belongs to no house that is open".to_owned()));
        };
        let text = text.map_err(refusal)?;
        if opens {
            self.show(&sheet, &text);
        }
        Ok(Some(Value::String(text)))
    }
}
