//! The language server: the only module that knows the protocol.
//!
//! `wire` and `message` read what a client sends, `transport` brings it to the `handlers`, `outbox` takes everything
//! back. Behind the handlers stands the `desk`, which owns the open documents, and behind it the `analyst`, which turns
//! their newest texts into findings. Handlers call `ide` for answers; `ruler` turns bytes into positions.

mod abilities;
mod analyst;
mod desk;
mod document;
mod handlers;
mod message;
mod outbox;
mod parent;
mod publication;
mod ruler;
mod transport;
mod wire;

use std::fmt;
use std::io::{self, Read, Write};
use std::process::ExitCode;

use tower_lsp::LspService;

use crate::server::handlers::Handlers;
use crate::server::outbox::Outbox;
use crate::server::transport::Ending;

/// Serves the client at standard input and output until it leaves; the exit code is the one that the protocol asks for.
pub fn run() -> ExitCode {
    match session(io::stdin(), io::stdout()) {
        Ok(Ending::Orderly) => ExitCode::SUCCESS,
        Ok(Ending::Abrupt) => ExitCode::FAILURE,
        Err(fault) => {
            log(format_args!("the server can't start: {fault}"));
            ExitCode::FAILURE
        }
    }
}

fn session(input: impl Read + Send + 'static, output: impl Write + Send + 'static) -> io::Result<Ending> {
    let outbox = Outbox::start(output)?;
    let (service, socket) = LspService::new(|client| Handlers::new(client, outbox.clone()));
    let runtime = tokio::runtime::Builder::new_current_thread().build()?;
    let ending = runtime.block_on(transport::serve(service, socket, input, outbox));
    // A feature that is still at work is not waited for.
    runtime.shutdown_background();
    ending
}

/// Says something to whoever reads the server's log. Standard output belongs to the protocol.
fn log(what: fmt::Arguments) {
    // A closed log is no reason to stop.
    _ = writeln!(std::io::stderr(), "storyrod: {what}");
}
