//! The protocol's methods: decode, one call, encode.
//!
//! A handler's first statement puts its event on the desk; nothing is awaited before, so events keep their order.

use std::sync::OnceLock;
use std::sync::mpsc::Sender;

use tokio::sync::oneshot;
use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types::{
    DidChangeTextDocumentParams, DidChangeWatchedFilesParams, DidChangeWatchedFilesRegistrationOptions,
    DidCloseTextDocumentParams, DidOpenTextDocumentParams, DidSaveTextDocumentParams,
    DocumentFormattingParams, FileSystemWatcher, GlobPattern, Hover, HoverContents, HoverParams,
    HoverProviderCapability, InitializeParams, InitializeResult, InitializedParams, MarkupContent,
    MarkupKind, OneOf, Registration, SaveOptions, ServerCapabilities, ServerInfo, TextDocumentSyncCapability,
    TextDocumentSyncKind, TextDocumentSyncOptions, TextDocumentSyncSaveOptions, TextEdit, Url,
};
use tower_lsp::{Client, LanguageServer, async_trait};

use crate::ide;
use crate::server::abilities::Abilities;
use crate::server::analyst::View;
use crate::server::desk::{self, Event, HouseAnswer};
use crate::server::outbox::Outbox;
use crate::server::ruler::encoding_kind;
use crate::server::{log, parent};

/// Files whose change on disk concerns us.
const WATCHED: [&str; 2] = ["**/*.framing", "**/storyrod.toml"];

/// The handlers of one session.
#[derive(Debug)]
pub struct Handlers {
    client: Client,
    outbox: Outbox,
    session: OnceLock<Session>,
}

/// What there is from `initialize` on.
#[derive(Debug)]
struct Session {
    abilities: Abilities,
    desk: Sender<Event>,
}

impl Handlers {
    /// The handlers for a client.
    pub const fn new(client: Client, outbox: Outbox) -> Self {
        Self { client, outbox, session: OnceLock::new() }
    }

    fn tell(&self, event: Event) {
        if let Some(session) = self.session.get() {
            _ = session.desk.send(event);
        }
    }

    /// The answer of a feature about the house of now.
    async fn of_house<T: Send + 'static>(
        &self,
        uri: Url,
        feature: impl FnOnce(&View) -> Option<T> + Send + 'static,
    ) -> Result<Option<T>> {
        let (reply, answer) = oneshot::channel();
        self.tell(Event::HouseWanted(uri, reply));
        match answer.await {
            Ok(HouseAnswer::View(view)) => apart(move || feature(&view)).await,
            Ok(HouseAnswer::Outdated) => Err(Error::new(ErrorCode::ContentModified)),
            Ok(HouseAnswer::Nothing) | Err(_) => Ok(None),
        }
    }
}

/// Runs a feature where it may take its time. A panic in it is an error of this one request.
async fn apart<T: Send + 'static>(feature: impl FnOnce() -> T + Send + 'static) -> Result<T> {
    tokio::task::spawn_blocking(feature).await.map_err(|fault| {
        log(format_args!("a request broke off: {fault}"));
        Error::internal_error()
    })
}

#[async_trait]
impl LanguageServer for Handlers {
    async fn initialize(&self, params: InitializeParams) -> Result<InitializeResult> {
        let abilities = Abilities::of(&params.capabilities);
        let start = || -> std::io::Result<Session> {
            if let Some(id) = params.process_id {
                // Nobody is left to answer, and whatever hangs must not keep us.
                parent::watch(id, || std::process::exit(1))?;
            }
            Ok(Session { abilities, desk: desk::start(self.outbox.clone(), abilities)? })
        };
        match start() {
            Ok(session) => _ = self.session.set(session),
            Err(fault) => {
                log(format_args!("no thread can be started: {fault}"));
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
        if !self.session.get().is_some_and(|session| session.abilities.watches_files) {
            return;
        }
        // The client may take its time with the answer, so it is waited for elsewhere.
        let client = self.client.clone();
        tokio::spawn(async move {
            if let Err(fault) = client.register_capability(watching().into_iter().collect()).await {
                log(format_args!("the client does not watch files: {fault}"));
            }
        });
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

    async fn hover(&self, params: HoverParams) -> Result<Option<Hover>> {
        let place = params.text_document_position_params;
        let hover = self.of_house(place.text_document.uri, move |view| {
            let ruler = &view.document.ruler;
            let hover = ide::hover(&view.snapshot, view.file, ruler.offset(place.position))?;
            Some((ruler.range(hover.span.start, hover.span.end), hover.text))
        });
        let shows_markdown = self.session.get().is_some_and(|session| session.abilities.renders_markdown);
        let kind = if shows_markdown { MarkupKind::Markdown } else { MarkupKind::PlainText };
        Ok(hover.await?.map(|(range, value)| Hover {
            contents: HoverContents::Markup(MarkupContent { kind, value }),
            range: Some(range),
        }))
    }

    async fn formatting(&self, params: DocumentFormattingParams) -> Result<Option<Vec<TextEdit>>> {
        let (reply, answer) = oneshot::channel();
        self.tell(Event::TextWanted(params.text_document.uri, reply));
        let Ok(document) = answer.await else { return Ok(None) };
        apart(move || {
            let edits = ide::formatting(&document.text());
            let encoded = |edit: ide::Replacement| TextEdit {
                range: document.ruler.range(edit.start, edit.end),
                new_text: edit.text,
            };
            Some(edits.into_iter().map(encoded).collect())
        })
        .await
    }
}

fn capabilities(abilities: Abilities) -> ServerCapabilities {
    ServerCapabilities {
        position_encoding: Some(encoding_kind(abilities.encoding)),
        text_document_sync: Some(TextDocumentSyncCapability::Options(TextDocumentSyncOptions {
            open_close: Some(true),
            change: Some(TextDocumentSyncKind::INCREMENTAL),
            save: Some(TextDocumentSyncSaveOptions::SaveOptions(SaveOptions { include_text: Some(false) })),
            ..TextDocumentSyncOptions::default()
        })),
        hover_provider: Some(HoverProviderCapability::Simple(true)),
        document_formatting_provider: Some(OneOf::Left(true)),
        ..ServerCapabilities::default()
    }
}

/// What we ask a client to watch.
fn watching() -> Option<Registration> {
    let watcher =
        |glob: &str| FileSystemWatcher { glob_pattern: GlobPattern::String(glob.to_owned()), kind: None };
    let options =
        DidChangeWatchedFilesRegistrationOptions { watchers: WATCHED.into_iter().map(watcher).collect() };
    Some(Registration {
        id: "files".to_owned(),
        method: "workspace/didChangeWatchedFiles".to_owned(),
        register_options: Some(serde_json::to_value(options).ok()?),
    })
}
