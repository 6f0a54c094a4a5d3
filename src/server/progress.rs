//! Long work that a person can watch and stop.

use std::collections::BTreeSet;
use std::sync::atomic::{AtomicI32, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use tokio::runtime::Handle;
use tokio::sync::mpsc::{UnboundedReceiver, UnboundedSender, unbounded_channel};
use tower_lsp::Client;
use tower_lsp::lsp_types::notification::Progress as ProgressNotification;
use tower_lsp::lsp_types::request::WorkDoneProgressCreate;
use tower_lsp::lsp_types::{
    NumberOrString, ProgressParams, ProgressParamsValue, WorkDoneProgress, WorkDoneProgressBegin,
    WorkDoneProgressCreateParams, WorkDoneProgressEnd, WorkDoneProgressReport,
};

use crate::server::outbox::Outbox;

/// Shows work to the client, when it can show any.
#[derive(Clone, Debug)]
pub struct Reporter {
    client: Client,
    outbox: Outbox,
    runtime: Handle,
    shows: bool,
    last_token: Arc<AtomicI32>,
    stopped: Stopped,
}

/// The tokens of the work that the person has stopped.
#[derive(Clone, Debug, Default)]
pub struct Stopped(Arc<Mutex<BTreeSet<i32>>>);

/// One piece of work. It ends for the client when it is dropped.
#[derive(Debug)]
pub struct Progress {
    token: i32,
    n_steps: usize,
    n_done: AtomicUsize,
    stopped: Stopped,
    steps: UnboundedSender<WorkDoneProgress>,
}

impl Stopped {
    /// Stops the work of this token.
    pub fn stop(&self, token: &NumberOrString) {
        if let NumberOrString::Number(token) = token {
            self.0.lock().unwrap_or_else(PoisonError::into_inner).insert(*token);
        }
    }

    fn has(&self, token: i32) -> bool {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).contains(&token)
    }

    fn forget(&self, token: i32) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).remove(&token);
    }
}

impl Reporter {
    /// A way to the client, from any thread.
    pub fn new(client: Client, outbox: Outbox, runtime: Handle, shows: bool, stopped: Stopped) -> Self {
        Self { client, outbox, runtime, shows, last_token: Arc::default(), stopped }
    }

    /// Begins a piece of work of so many steps.
    pub fn begin(&self, title: &str, n_steps: usize) -> Progress {
        let token = self.last_token.fetch_add(1, Ordering::Relaxed) + 1;
        let (steps, shown) = unbounded_channel();
        if self.shows {
            _ = steps.send(WorkDoneProgress::Begin(WorkDoneProgressBegin {
                title: title.to_owned(),
                cancellable: Some(true),
                message: None,
                percentage: Some(0),
            }));
            self.runtime.spawn(show(self.client.clone(), self.outbox.clone(), token, shown));
        }
        Progress { token, n_steps, n_done: AtomicUsize::new(0), stopped: self.stopped.clone(), steps }
    }
}

/// Sends the steps of a piece of work to the client, once it has agreed to show them.
async fn show(client: Client, outbox: Outbox, token: i32, mut steps: UnboundedReceiver<WorkDoneProgress>) {
    let token = NumberOrString::Number(token);
    let create = WorkDoneProgressCreateParams { token: token.clone() };
    if client.send_request::<WorkDoneProgressCreate>(create).await.is_err() {
        return;
    }
    while let Some(step) = steps.recv().await {
        let value = ProgressParamsValue::WorkDone(step);
        outbox.notify::<ProgressNotification>(&ProgressParams { token: token.clone(), value });
    }
}

impl Progress {
    /// One more step is done: this one.
    pub fn step(&self, what: &str) {
        let n_done = self.n_done.fetch_add(1, Ordering::Relaxed) + 1;
        let percentage = n_done.saturating_mul(100) / self.n_steps.max(1);
        _ = self.steps.send(WorkDoneProgress::Report(WorkDoneProgressReport {
            cancellable: Some(true),
            message: Some(format!("{n_done}/{} {what}", self.n_steps)),
            percentage: u32::try_from(percentage.min(100)).ok(),
        }));
    }

    /// True once the person has stopped it.
    pub fn is_cancelled(&self) -> bool {
        self.stopped.has(self.token)
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        let message = self.is_cancelled().then(|| "stopped".to_owned());
        _ = self.steps.send(WorkDoneProgress::End(WorkDoneProgressEnd { message }));
        self.stopped.forget(self.token);
    }
}
