//! The language server: the only module that knows the protocol.
//!
//! `wire` and `message` read what a client sends, `transport` brings it to the `handlers`, `outbox` takes everything
//! back. Behind the handlers stands the `desk`, which owns the open documents, and behind it the `analyst`, which turns
//! their newest texts into houses and findings, and the `survey`, which does so for the rest of the workspace. Handlers
//! give what the desk knows to the `answers`, which call `ide`; `view` and `ruler` turn bytes into positions.

mod abilities;
mod analyst;
mod answers;
mod capabilities;
mod desk;
mod document;
mod edits;
mod handlers;
mod log;
mod message;
mod outbox;
mod parent;
mod preferences;
mod progress;
mod publication;
mod refresh;
mod ruler;
mod shown_sheets;
mod survey;
mod token_store;
mod transport;
mod view;
mod wire;

use std::io::{self, Read};
use std::path::Path;
use std::process::ExitCode;

use tower_lsp::LspService;

use crate::server::handlers::Handlers;
use crate::server::log::Detail;
use crate::server::outbox::Outbox;
use crate::server::preferences::Preferences;
use crate::server::transport::Ending;

/// What a client can call by name.
pub const COMMANDS: &[&str] = &answers::sheets::COMMANDS;

/// The settings of somebody who has set nothing, as a client's section for us would hold them.
pub fn default_settings() -> serde_json::Value {
    serde_json::to_value(Preferences::default()).unwrap_or_default()
}

/// Serves the client at standard input and output until it leaves; the exit code is the one that the protocol asks for.
///
/// `log` is a file to which everything is written that the server does.
///
/// # Errors
/// The log can't be written, or the system starts no more threads.
pub fn run(log: Option<&Path>) -> io::Result<ExitCode> {
    let outbox = Outbox::start(io::stdout())?;
    let detail = Detail::default();
    log::start(log, outbox.clone(), detail.clone())?;
    Ok(match session(io::stdin(), outbox, detail)? {
        Ending::Orderly => ExitCode::SUCCESS,
        Ending::Abrupt => ExitCode::FAILURE,
    })
}

fn session(input: impl Read + Send + 'static, outbox: Outbox, detail: Detail) -> io::Result<Ending> {
    let (service, socket) = LspService::build(|client| Handlers::new(client, outbox.clone(), detail))
        .custom_method("$/setTrace", Handlers::set_trace)
        .custom_method("window/workDoneProgress/cancel", Handlers::cancel_progress)
        .finish();
    let runtime = tokio::runtime::Builder::new_current_thread().build()?;
    let ending = runtime.block_on(transport::serve(service, socket, input, outbox));
    // A feature that is still at work is not waited for.
    runtime.shutdown_background();
    ending
}
