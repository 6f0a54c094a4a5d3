//! The second worker: looks through the folders of the workspace, also where no document is open.
//!
//! It keeps of each house what is to be told, not the house. A house whose files are as before is not
//! analysed again.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use crate::server::abilities::Abilities;
use crate::server::answers::symbols::{Placed, placed};
use crate::server::desk::Event;
use crate::server::document::Document;
use crate::server::preferences::Preferences;
use crate::server::progress::{Progress, Reporter};
use crate::server::publication::{HouseFindings, findings_of};
use crate::server::view::Analysed;
use crate::snapshot::{Caches, Cancelled, analyse};
use crate::workspace::{OpenDocuments, Spec, specs_below, today};

/// From so many houses to look at on, the client is shown how far it has come.
const WORTH_SHOWING: usize = 8;

/// What is to be looked through.
#[derive(Debug)]
pub struct SurveyJob {
    /// The folders of the workspace.
    pub folders: Vec<PathBuf>,
    /// Every open document.
    pub documents: Vec<Arc<Document>>,
    /// What the person wants to see.
    pub preferences: Arc<Preferences>,
}

/// What was found.
#[derive(Debug)]
pub struct Survey {
    /// Every house below the folders that was looked at.
    pub houses: Vec<Arc<Surveyed>>,
}

/// What is kept of a house.
#[derive(Debug)]
pub struct Surveyed {
    /// What it has to say.
    pub findings: HouseFindings,
    /// Its elements.
    pub symbols: Vec<Placed>,
    /// Of its texts and everything else that decides.
    fingerprint: u64,
}

/// The way to the worker.
#[derive(Debug)]
pub struct Surveyor {
    jobs: Sender<(u64, SurveyJob)>,
    newest: Arc<AtomicU64>,
}

impl Surveyor {
    /// Starts the worker. Its results go to `events`; it ends with the last handle to it.
    ///
    /// # Errors
    /// The system starts no more threads.
    pub fn start(abilities: Abilities, reporter: Reporter, events: Sender<Event>) -> std::io::Result<Self> {
        let (sender, jobs) = channel();
        let newest = Arc::new(AtomicU64::new(0));
        let known = HashMap::new();
        let worker = Worker { abilities, reporter, events, newest: Arc::clone(&newest), known };
        thread::Builder::new().name("surveyor".to_owned()).spawn(move || worker.run(&jobs))?;
        Ok(Self { jobs: sender, newest })
    }

    /// Has the workspace looked through; whatever was under way before is given up.
    pub fn survey(&self, job: SurveyJob) {
        let number = self.newest.fetch_add(1, Ordering::Relaxed) + 1;
        _ = self.jobs.send((number, job));
    }
}

struct Worker {
    abilities: Abilities,
    reporter: Reporter,
    events: Sender<Event>,
    newest: Arc<AtomicU64>,
    /// What was found before, by the file that opens the house.
    known: HashMap<PathBuf, Arc<Surveyed>>,
}

impl Worker {
    fn run(mut self, jobs: &Receiver<(u64, SurveyJob)>) {
        while let Ok(mut job) = jobs.recv() {
            while let Ok(newer) = jobs.try_recv() {
                job = newer;
            }
            let (number, job) = job;
            if catch_unwind(AssertUnwindSafe(|| self.look_through(number, &job))).is_err() {
                tracing::error!(
                    "the look through the workspace broke off; files that are not open may show old findings"
                );
                self.known.clear();
            }
        }
    }

    fn look_through(&mut self, number: u64, job: &SurveyJob) {
        let mut open = OpenDocuments::default();
        for document in &job.documents {
            open.open(&document.path, document.text());
        }
        let mut specs: Vec<Spec> = Vec::new();
        for (_, spec) in job.folders.iter().flat_map(|folder| specs_below(folder, &open)) {
            // A root that can't be read is told when somebody opens it; nested folders give one house once.
            let Ok(spec) = spec else { continue };
            if !specs.iter().any(|known| known.paths.first() == spec.paths.first()) {
                specs.push(spec);
            }
        }
        let fingerprints: Vec<u64> = specs.iter().map(|spec| fingerprint(spec, job)).collect();
        let is_new = |(spec, fingerprint): &(&Spec, &u64)| self.known_house(spec, **fingerprint).is_none();
        let n_new = specs.iter().zip(&fingerprints).filter(is_new).count();
        let progress =
            (n_new >= WORTH_SHOWING).then(|| self.reporter.begin("Looking through the workspace", n_new));
        let mut houses = Vec::new();
        for (spec, fingerprint) in specs.into_iter().zip(fingerprints) {
            if self.is_over(number, progress.as_ref()) {
                break;
            }
            let house = match self.known_house(&spec, fingerprint) {
                Some(house) => house,
                None => match self.surveyed(spec, fingerprint, job, number, progress.as_ref()) {
                    Ok(house) => house,
                    Err(Cancelled) => break,
                },
            };
            houses.push(house);
        }
        // What a newer look has overtaken is not worth telling; what a person has stopped is, as far as it came.
        if self.newest.load(Ordering::Relaxed) == number {
            self.known =
                houses.iter().map(|house| (house.findings.root.clone(), Arc::clone(house))).collect();
            _ = self.events.send(Event::Surveyed(Survey { houses }));
        }
    }

    fn surveyed(
        &mut self,
        spec: Spec,
        fingerprint: u64,
        job: &SurveyJob,
        number: u64,
        progress: Option<&Progress>,
    ) -> Result<Arc<Surveyed>, Cancelled> {
        let is_cancelled = || self.is_over(number, progress);
        let snapshot = analyse(&spec.inputs, &mut Caches::default(), today(), &is_cancelled)?;
        let house = Analysed::new(spec, Arc::new(snapshot), &job.documents, self.abilities);
        let mut findings = findings_of(&house, self.abilities, &job.preferences);
        for file in &mut findings.files {
            // Whoever has the document open is told of its version by the analyst.
            file.version = None;
        }
        if let Some(progress) = progress {
            progress.step(&findings.name);
        }
        Ok(Arc::new(Surveyed { findings, symbols: placed(&house), fingerprint }))
    }

    fn is_over(&self, number: u64, progress: Option<&Progress>) -> bool {
        self.newest.load(Ordering::Relaxed) != number || progress.is_some_and(Progress::is_cancelled)
    }

    fn known_house(&self, spec: &Spec, fingerprint: u64) -> Option<Arc<Surveyed>> {
        let known = self.known.get(spec.paths.first()?)?;
        (known.fingerprint == fingerprint).then(|| Arc::clone(known))
    }
}

/// A number that changes with everything that decides what is found in a house.
fn fingerprint(spec: &Spec, job: &SurveyJob) -> u64 {
    let mut hasher = DefaultHasher::new();
    for (path, source) in spec.paths.iter().zip(&spec.inputs.sources) {
        (path, &source.text).hash(&mut hasher);
    }
    // Few and short, and without an order of their own to hash by.
    format!("{:?}", spec.inputs.includes).hash(&mut hasher);
    format!("{:?} {:?} {}", spec.configuration_faults, job.preferences.rules_address, today())
        .hash(&mut hasher);
    // The address that the client writes for a file.
    let open = job.documents.iter().filter(|document| spec.has(&document.path));
    let mut addresses: Vec<_> = open.map(|document| document.uri.as_str()).collect();
    addresses.sort_unstable();
    addresses.hash(&mut hasher);
    hasher.finish()
}
