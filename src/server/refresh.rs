//! Asks the client to ask again, when what it shows is no longer right and it could not know.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

use tokio::runtime::Handle;
use tower_lsp::Client;

use crate::server::abilities::Abilities;

/// Asks the client to ask again. One question of a kind is under way at a time; what comes up meanwhile is one more.
#[derive(Clone, Debug)]
pub struct Refresher {
    client: Client,
    runtime: Handle,
    abilities: Abilities,
    asks_for_figures: Arc<AtomicU64>,
    asks_for_findings: Arc<AtomicU64>,
}

impl Refresher {
    /// A way to the client, from any thread.
    pub fn new(client: Client, runtime: Handle, abilities: Abilities) -> Self {
        let [asks_for_figures, asks_for_findings] = Default::default();
        Self { client, runtime, abilities, asks_for_figures, asks_for_findings }
    }

    /// Lenses and hints may show old figures.
    pub fn figures(&self) {
        let (client, abilities) = (self.client.clone(), self.abilities);
        self.one_by_one(&self.asks_for_figures, move || {
            let client = client.clone();
            async move {
                // What a client does not understand it refuses, and shows old figures until it asks by itself.
                if abilities.refreshes_hints {
                    _ = client.inlay_hint_refresh().await;
                }
                if abilities.refreshes_lenses {
                    _ = client.code_lens_refresh().await;
                }
                // What is assumed, and what rests on it, has a look of its own.
                if abilities.refreshes_tokens {
                    _ = client.semantic_tokens_refresh().await;
                }
            }
        });
    }

    /// Findings of other files than the one that is edited may be new.
    pub fn findings(&self) {
        if self.abilities.pulls_diagnostics {
            let client = self.client.clone();
            self.one_by_one(&self.asks_for_findings, move || {
                let client = client.clone();
                async move { _ = client.workspace_diagnostic_refresh().await }
            });
        }
    }

    /// The person wants to see other things than before.
    pub fn everything_shown(&self) {
        self.figures();
        self.findings();
    }

    /// Asks, and once answered asks again when there has been a further wish: the client may have looked too early.
    fn one_by_one<F: Future<Output = ()> + Send>(
        &self,
        wishes: &Arc<AtomicU64>,
        question: impl Fn() -> F + Send + 'static,
    ) {
        if wishes.fetch_add(1, Ordering::Relaxed) == 0 {
            let wishes = Arc::clone(wishes);
            self.runtime.spawn(async move {
                loop {
                    let heard = wishes.load(Ordering::Relaxed);
                    question().await;
                    if wishes.compare_exchange(heard, 0, Ordering::Relaxed, Ordering::Relaxed).is_ok() {
                        return;
                    }
                }
            });
        }
    }
}
