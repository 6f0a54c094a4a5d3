//! The one worker that analyses: always the newest texts, and gives up as soon as newer ones are there.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use crate::server::abilities::Abilities;
use crate::server::desk::Event;
use crate::server::document::Document;
use crate::server::preferences::Preferences;
use crate::server::publication::{HouseFindings, findings_of};
use crate::server::view::Analysed;
use crate::snapshot::{Caches, Cancelled, analyse};
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
    /// What the person wants to see.
    pub preferences: Arc<Preferences>,
}

/// What came of it.
#[derive(Debug)]
pub struct Analysis {
    /// Of which state of the documents.
    pub generation: u64,
    /// Every house that an open document belongs to.
    pub houses: Vec<Arc<Analysed>>,
    /// What each of them has to say.
    pub findings: Vec<Arc<HouseFindings>>,
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
    pub fn start(abilities: Abilities, events: Sender<Event>) -> std::io::Result<Self> {
        let (sender, jobs) = channel();
        let newest = Arc::new(AtomicU64::new(0));
        let worker = Worker { abilities, events, newest: Arc::clone(&newest), held: Held::default() };
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
                    tracing::error!(
                        "the analysis broke off; the findings shown are those of an earlier text"
                    );
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
        self.held.analyse(self.abilities, &job.preferences, &is_cancelled)?;
        let done = || self.held.specs.iter().filter_map(|held| held.done.as_ref());
        Ok(Analysis {
            generation: job.generation,
            houses: done().map(|done| Arc::clone(&done.house)).collect(),
            findings: done().map(|done| Arc::clone(&done.findings)).collect(),
        })
    }
}

/// What the worker keeps from one analysis for the next.
#[derive(Default)]
struct Held {
    documents: Vec<Arc<Document>>,
    preferences: Arc<Preferences>,
    specs: Vec<HeldSpec>,
}

struct HeldSpec {
    spec: Spec,
    caches: Caches,
    /// Of exactly this spec.
    done: Option<Done>,
}

struct Done {
    house: Arc<Analysed>,
    findings: Arc<HouseFindings>,
}

impl Held {
    /// Brings the specs up to the documents of a job, reading no file while edits alone can do it.
    fn take_in(&mut self, job: &Job) {
        let before = std::mem::replace(&mut self.documents, job.documents.clone());
        let is_known = |document: &&Arc<Document>| before.iter().any(|old| Arc::ptr_eq(old, document));
        let is_open_still = before.iter().all(|old| self.documents.iter().any(|now| now.uri == old.uri));
        let is_open_already = self.documents.iter().all(|now| before.iter().any(|old| old.uri == now.uri));
        let edited: Vec<_> = job.documents.iter().filter(|document| !is_known(document)).collect();
        let is_same_wish = self.preferences == job.preferences;
        self.preferences = Arc::clone(&job.preferences);
        let is_done = !job.is_disk_changed
            && is_same_wish
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
                    held.done = None;
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
                self.specs.push(HeldSpec { spec, caches, done: None });
            }
        }
    }

    fn analyse(
        &mut self,
        abilities: Abilities,
        preferences: &Preferences,
        is_cancelled: &dyn Fn() -> bool,
    ) -> Result<(), Cancelled> {
        for held in self.specs.iter_mut().filter(|held| held.done.is_none()) {
            let snapshot = analyse(&held.spec.inputs, &mut held.caches, today(), is_cancelled)?;
            let house = Analysed::new(held.spec.clone(), Arc::new(snapshot), &self.documents, abilities);
            let findings = Arc::new(findings_of(&house, abilities, preferences));
            held.done = Some(Done { house: Arc::new(house), findings });
        }
        Ok(())
    }
}
