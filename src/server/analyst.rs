//! The one worker that analyses: always the newest texts, and gives up as soon as newer ones are there.

use std::collections::HashMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use tower_lsp::lsp_types::notification::LogMessage;
use tower_lsp::lsp_types::{LogMessageParams, MessageType, PublishDiagnosticsParams, Url};

use crate::server::abilities::Abilities;
use crate::server::desk::Event;
use crate::server::document::Document;
use crate::server::outbox::Outbox;
use crate::server::publication::publications;
use crate::snapshot::{Caches, Cancelled, Snapshot, analyse};
use crate::text::FileId;
use crate::workspace::{OpenDocuments, Spec, specs_with, today};

/// What is to be analysed.
#[derive(Debug)]
pub struct Job {
    /// Which state of the documents this is.
    pub generation: u64,
    /// Every open document.
    pub documents: Vec<Arc<Document>>,
    /// Files may stand otherwise on disk than at the last finished analysis.
    pub is_disk_changed: bool,
}

/// What came of it.
#[derive(Debug)]
pub struct Analysis {
    /// Of which state of the documents.
    pub generation: u64,
    /// The house that each open document belongs to.
    pub views: HashMap<Url, View>,
    /// What to tell the client of each file.
    pub publications: Vec<PublishDiagnosticsParams>,
}

/// A house as seen from one open document.
#[derive(Clone, Debug)]
pub struct View {
    /// The house and its findings.
    pub snapshot: Arc<Snapshot>,
    /// Which of its files the document is.
    pub file: FileId,
    /// The document.
    pub document: Arc<Document>,
}

/// A spec and what was found in it.
#[derive(Debug)]
pub struct Analysed<'a> {
    /// Where its files are.
    pub spec: &'a Spec,
    /// What was found.
    pub snapshot: &'a Arc<Snapshot>,
}

/// The way to the worker.
#[derive(Debug)]
pub struct Analyst {
    jobs: Sender<Job>,
    newest: Arc<AtomicU64>,
}

impl Analyst {
    /// Starts the worker. Its results go to `events`; it ends with the last handle to it.
    ///
    /// # Errors
    /// The system starts no more threads.
    pub fn start(abilities: Abilities, outbox: Outbox, events: Sender<Event>) -> std::io::Result<Self> {
        let (sender, jobs) = channel();
        let newest = Arc::new(AtomicU64::new(0));
        let worker = Worker { abilities, outbox, events, newest: Arc::clone(&newest), held: Held::default() };
        thread::Builder::new().name("analyst".to_owned()).spawn(move || worker.run(&jobs))?;
        Ok(Self { jobs: sender, newest })
    }

    /// Has the newest state analysed; whatever was under way before is given up.
    pub fn analyse(&self, job: Job) {
        self.newest.store(job.generation, Ordering::Relaxed);
        _ = self.jobs.send(job);
    }
}

struct Worker {
    abilities: Abilities,
    outbox: Outbox,
    events: Sender<Event>,
    newest: Arc<AtomicU64>,
    held: Held,
}

impl Worker {
    fn run(mut self, jobs: &Receiver<Job>) {
        while let Ok(mut job) = jobs.recv() {
            while let Ok(newer) = jobs.try_recv() {
                job = newer;
            }
            let generation = job.generation;
            let event = match catch_unwind(AssertUnwindSafe(|| self.analysis_of(job))) {
                Ok(Ok(analysis)) => Event::Analysed(analysis),
                Ok(Err(Cancelled)) => continue,
                Err(_) => {
                    // Nothing half made is kept.
                    self.held = Held::default();
                    let message =
                        "the analysis broke off; the findings shown are those of an earlier text".to_owned();
                    self.outbox.notify::<LogMessage>(&LogMessageParams { typ: MessageType::ERROR, message });
                    Event::Failed(generation)
                }
            };
            if self.events.send(event).is_err() {
                return;
            }
        }
    }

    fn analysis_of(&mut self, job: Job) -> Result<Analysis, Cancelled> {
        let newest = &self.newest;
        let is_cancelled = || newest.load(Ordering::Relaxed) != job.generation;
        self.held.take_in(&job);
        let analysed = self.held.analysed(&is_cancelled)?;
        Ok(Analysis {
            generation: job.generation,
            views: views(&analysed, &job.documents),
            publications: publications(&analysed, &job.documents, self.abilities),
        })
    }
}

fn views(analysed: &[Analysed], documents: &[Arc<Document>]) -> HashMap<Url, View> {
    let view = |document: &Arc<Document>| {
        analysed.iter().find_map(|Analysed { spec, snapshot }| {
            let file = spec.file_of(&document.path)?;
            let view = View { snapshot: Arc::clone(snapshot), file, document: Arc::clone(document) };
            Some((document.uri.clone(), view))
        })
    };
    documents.iter().filter_map(view).collect()
}

/// What the worker keeps from one analysis for the next.
#[derive(Default)]
struct Held {
    documents: Vec<Arc<Document>>,
    specs: Vec<HeldSpec>,
}

struct HeldSpec {
    spec: Spec,
    caches: Caches,
    /// Of exactly this spec.
    snapshot: Option<Arc<Snapshot>>,
}

impl Held {
    /// Brings the specs up to the documents of a job, reading no file while edits alone can do it.
    fn take_in(&mut self, job: &Job) {
        let before = std::mem::replace(&mut self.documents, job.documents.clone());
        let is_known = |document: &&Arc<Document>| before.iter().any(|old| Arc::ptr_eq(old, document));
        let is_open_still = before.iter().all(|old| self.documents.iter().any(|now| now.uri == old.uri));
        let is_open_already = self.documents.iter().all(|now| before.iter().any(|old| old.uri == now.uri));
        let edited: Vec<_> = job.documents.iter().filter(|document| !is_known(document)).collect();
        let is_done = !job.is_disk_changed
            && is_open_still
            && is_open_already
            && edited.into_iter().all(|document| self.edit(document));
        if !is_done {
            self.read_anew();
        }
    }

    /// Puts a document's text into the specs that hold it. False when that changes which files are read.
    fn edit(&mut self, document: &Document) -> bool {
        let mut is_held = false;
        for held in self.specs.iter_mut().filter(|held| held.spec.has(&document.path)) {
            match held.spec.with_text(&document.path, document.text()) {
                Some(spec) if spec.is_alone == held.spec.is_alone => {
                    held.spec = spec;
                    held.snapshot = None;
                    is_held = true;
                }
                _ => return false,
            }
        }
        is_held
    }

    fn read_anew(&mut self) {
        let mut open = OpenDocuments::default();
        for document in &self.documents {
            open.open(&document.path, document.text());
        }
        let mut before = std::mem::take(&mut self.specs);
        for document in &self.documents {
            // Every document has text, so there is a spec for it.
            for spec in specs_with(&document.path, &open).unwrap_or_default() {
                let is_same = |held: &HeldSpec| held.spec.paths.first() == spec.paths.first();
                if self.specs.iter().any(is_same) {
                    continue;
                }
                let at = before.iter().position(is_same);
                let caches = at.map(|at| before.swap_remove(at).caches).unwrap_or_default();
                self.specs.push(HeldSpec { spec, caches, snapshot: None });
            }
        }
    }

    fn analysed(&mut self, is_cancelled: &dyn Fn() -> bool) -> Result<Vec<Analysed<'_>>, Cancelled> {
        for held in &mut self.specs {
            if held.snapshot.is_none() {
                let snapshot = analyse(&held.spec.inputs, &mut held.caches, today(), is_cancelled)?;
                held.snapshot = Some(Arc::new(snapshot));
            }
        }
        Ok(self
            .specs
            .iter()
            .filter_map(|HeldSpec { spec, snapshot, .. }| {
                snapshot.as_ref().map(|snapshot| Analysed { spec, snapshot })
            })
            .collect())
    }
}
