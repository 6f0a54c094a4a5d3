//! What every handler does: begins the session, asks the desk, lets a feature work apart, asks the client.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::Sender;

use serde_json::Value;
use tokio::runtime::Handle;
use tokio::sync::oneshot;
use tower_lsp::jsonrpc::{Error, ErrorCode, Result};
use tower_lsp::lsp_types::{
    ConfigurationItem, GotoCapability, GotoDefinitionParams, GotoDefinitionResponse, InitializeParams,
    ShowDocumentParams, TextDocumentClientCapabilities, Url,
};

use crate::report::Sheet;
use crate::server::abilities::Abilities;
use crate::server::answers;
use crate::server::answers::kept::Kept;
use crate::server::desk::{self, Event, Glance, HouseAnswer, Setting};
use crate::server::handlers::Handlers;
use crate::server::parent;
use crate::server::preferences::{Preferences, SECTION};
use crate::server::progress::Reporter;
use crate::server::refresh::Refresher;
use crate::server::survey::Surveyor;
use crate::server::view::View;

/// What there is from `initialize` on.
#[derive(Debug)]
pub(in crate::server::handlers) struct Session {
    pub(in crate::server::handlers) abilities: Abilities,
    pub(in crate::server::handlers) desk: Sender<Event>,
}

impl Handlers {
    pub(in crate::server::handlers) fn start(&self, params: &InitializeParams) -> std::io::Result<Session> {
        if let Some(id) = params.process_id {
            // Nobody is left to answer, and whatever hangs must not keep us.
            parent::watch(id, || std::process::exit(1))?;
        }
        let abilities = Abilities::of(&params.capabilities);
        let (client, runtime) = (self.client.clone(), Handle::current());
        let (events, inbox) = desk::events();
        let shows = abilities.shows_progress;
        let reporter =
            Reporter::new(client.clone(), self.outbox.clone(), runtime.clone(), shows, self.stopped.clone());
        let setting = Setting {
            client: Arc::new(params.capabilities.clone()),
            abilities,
            preferences: params.initialization_options.as_ref().map(Preferences::of).unwrap_or_default(),
            folders: folders_of(params),
            refresher: Refresher::new(client, runtime, abilities),
            surveyor: Surveyor::start(abilities, reporter, events.clone())?,
        };
        Ok(Session { abilities, desk: desk::start(self.outbox.clone(), setting, (events, inbox))? })
    }

    pub(in crate::server::handlers) fn tell(&self, event: Event) {
        if let Some(session) = self.session.get() {
            _ = session.desk.send(event);
        }
    }

    /// What the client can do.
    pub(in crate::server::handlers) fn abilities(&self) -> Result<Abilities> {
        self.session.get().map(|session| session.abilities).ok_or_else(Error::internal_error)
    }

    /// What the desk answers to a wish; `None` when it has nothing to say.
    pub(in crate::server::handlers) async fn ask<T>(
        &self,
        wish: impl FnOnce(oneshot::Sender<T>) -> Event,
    ) -> Option<T> {
        let (reply, answer) = oneshot::channel();
        self.tell(wish(reply));
        answer.await.ok()
    }

    /// The answer of a feature about the house of now.
    pub(in crate::server::handlers) async fn of_house<T: Send + 'static>(
        &self,
        uri: Url,
        feature: impl FnOnce(&View) -> Option<T> + Send + 'static,
    ) -> Result<Option<T>> {
        match self.ask(|reply| Event::HouseWanted(uri, reply)).await {
            Some(HouseAnswer::View(view)) => apart(move || feature(&view)).await,
            Some(HouseAnswer::Outdated) => Err(Error::new(ErrorCode::ContentModified)),
            Some(HouseAnswer::Nothing) | None => Ok(None),
        }
    }

    /// The answer of a feature about an item of an earlier answer, by what that one kept in it.
    pub(in crate::server::handlers) async fn of_kept<T: Send + 'static>(
        &self,
        data: Option<Value>,
        feature: fn(&View, &Kept) -> Option<T>,
    ) -> Result<Option<T>> {
        let Some(kept) = Kept::of(data) else { return Ok(None) };
        self.of_house(kept.uri.clone(), move |view| feature(view, &kept)).await
    }

    /// The answer of a feature about the text of now, which may use a house that is one edit behind.
    pub(in crate::server::handlers) async fn of_text<T: Send + 'static>(
        &self,
        uri: Url,
        feature: impl FnOnce(&Glance) -> Option<T> + Send + 'static,
    ) -> Result<Option<T>> {
        match self.ask(|reply| Event::GlanceWanted(uri, reply)).await {
            Some(glance) => apart(move || feature(&glance)).await,
            None => Ok(None),
        }
    }

    /// Opens a sheet in the client, if it can and the person wants it so.
    pub(in crate::server::handlers) fn show(&self, sheet: &Sheet, text: &str) {
        match self.shown_sheets.put(sheet, text) {
            Ok(uri) => {
                let client = self.client.clone();
                let params = ShowDocumentParams {
                    uri,
                    external: Some(false),
                    take_focus: Some(true),
                    selection: None,
                };
                // The client may take its time, and whoever asked has the text already.
                tokio::spawn(async move { client.show_document(params).await });
            }
            Err(fault) => tracing::warn!("the {} can't be opened as a file: {fault}", sheet.title()),
        }
    }

    /// Where a name leads.
    pub(in crate::server::handlers) async fn jump(
        &self,
        params: GotoDefinitionParams,
        question: answers::jump::Question,
        of: fn(&TextDocumentClientCapabilities) -> Option<&GotoCapability>,
    ) -> Result<Option<GotoDefinitionResponse>> {
        let place = params.text_document_position_params;
        let answer = move |view: &View| answers::jump::jump(view, place.position, question, of);
        self.of_house(place.text_document.uri, answer).await
    }

    /// Asks for the person's settings and takes them in. The client may take its time, so it is waited for elsewhere.
    pub(in crate::server::handlers) fn ask_for_settings(&self) {
        let Some(Session { abilities, desk }) = self.session.get() else { return };
        if abilities.tells_settings {
            let (client, desk) = (self.client.clone(), desk.clone());
            tokio::spawn(async move {
                let section = ConfigurationItem { scope_uri: None, section: Some(SECTION.to_owned()) };
                match client.configuration(vec![section]).await {
                    // A client without settings says null, and what it said at the start holds.
                    Ok(answers) => {
                        for settings in answers.iter().filter(|answer| answer.is_object()) {
                            _ = desk.send(Event::PreferencesChanged(Preferences::of(settings)));
                        }
                    }
                    Err(fault) => tracing::warn!("the client does not tell its settings: {fault}"),
                }
            });
        }
    }
}

/// What is wrong with a request, for a person.
pub(in crate::server::handlers) fn refusal(why: String) -> Error {
    Error { message: why.into(), ..Error::new(ErrorCode::InvalidParams) }
}

/// Runs a feature where it may take its time. A panic in it is an error of this one request.
pub(in crate::server::handlers) async fn apart<T: Send + 'static>(
    feature: impl FnOnce() -> T + Send + 'static,
) -> Result<T> {
    tokio::task::spawn_blocking(feature).await.map_err(|fault| {
        tracing::error!("a request broke off: {fault}");
        Error::internal_error()
    })
}

/// The folders of the workspace; of an older client its one root.
fn folders_of(params: &InitializeParams) -> Vec<PathBuf> {
    #[allow(deprecated, reason = "older clients know no workspace folders")]
    let root = params.root_uri.as_ref();
    let folders = params.workspace_folders.iter().flatten().map(|folder| &folder.uri);
    let mut paths: Vec<_> = folders.filter_map(|uri| uri.to_file_path().ok()).collect();
    if paths.is_empty() {
        paths.extend(root.and_then(|uri| uri.to_file_path().ok()));
    }
    paths
}
