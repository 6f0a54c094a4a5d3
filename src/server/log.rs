//! The server's log: to the client, and to a file when somebody wants one.

use std::fmt::Write as _;
use std::fs::File;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use tower_lsp::lsp_types::notification::LogMessage;
use tower_lsp::lsp_types::{LogMessageParams, MessageType};
use tracing::field::{Field, Visit};
use tracing::{Event, Level, Subscriber};
use tracing_subscriber::filter::Targets;
use tracing_subscriber::layer::{Context, SubscriberExt};
use tracing_subscriber::util::SubscriberInitExt;
use tracing_subscriber::{Layer, Registry};

use crate::server::outbox::Outbox;

/// Whether the client wants to read everything, not only what went wrong.
#[derive(Clone, Debug, Default)]
pub struct Detail(Arc<AtomicBool>);

impl Detail {
    /// The client wants to read everything, or no longer.
    pub fn set(&self, wants_all: bool) {
        self.0.store(wants_all, Ordering::Relaxed);
    }

    fn is_wanted(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}

/// Starts the log of this process: what goes wrong to the client, everything to the file.
///
/// # Errors
/// The file can't be written.
pub fn start(file: Option<&Path>, outbox: Outbox, detail: Detail) -> std::io::Result<()> {
    let ours = Targets::new().with_target(env!("CARGO_PKG_NAME"), Level::DEBUG);
    let to_file = match file {
        None => None,
        Some(path) => {
            let file = File::options().create(true).append(true).open(path)?;
            let lines = tracing_subscriber::fmt::layer().with_ansi(false).with_writer(Arc::new(file));
            Some(lines.with_filter(ours.clone()))
        }
    };
    let to_client = ToClient { outbox, detail }.with_filter(ours);
    // A second session of one process, as in a test, keeps the first one's log.
    _ = Registry::default().with(to_file).with(to_client).try_init();
    std::panic::set_hook(Box::new(|panic| tracing::error!("a fault of ours: {panic}")));
    Ok(())
}

struct ToClient {
    outbox: Outbox,
    detail: Detail,
}

impl<S: Subscriber> Layer<S> for ToClient {
    fn on_event(&self, event: &Event<'_>, _: Context<'_, S>) {
        let level = *event.metadata().level();
        if level > Level::WARN && !self.detail.is_wanted() {
            return;
        }
        let mut message = Sentence::default();
        event.record(&mut message);
        let typ = match level {
            Level::ERROR => MessageType::ERROR,
            Level::WARN => MessageType::WARNING,
            Level::INFO => MessageType::INFO,
            _ => MessageType::LOG,
        };
        self.outbox.notify::<LogMessage>(&LogMessageParams { typ, message: message.0 });
    }
}

/// An event as one line: the message, then its fields.
#[derive(Default)]
struct Sentence(String);

impl Visit for Sentence {
    fn record_debug(&mut self, field: &Field, value: &dyn std::fmt::Debug) {
        // Writing to a string does not fail.
        _ = match field.name() {
            "message" => write!(self.0, "{value:?}"),
            name => write!(self.0, " {name}={value:?}"),
        };
    }
}
