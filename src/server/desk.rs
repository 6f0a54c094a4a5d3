//! The one owner of all state: a thread that takes events in the order they came.
//!
//! It applies edits at once and hands the newest texts to the analyst; what comes back for texts that are old by then is
//! dropped. Whoever wants something of it gets the answer through a channel and never waits for an analysis of older text.

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use tokio::sync::oneshot;
use tower_lsp::lsp_types::notification::PublishDiagnostics;
use tower_lsp::lsp_types::{
    ClientCapabilities, Diagnostic, PublishDiagnosticsParams, TextDocumentContentChangeEvent, Url,
};

use crate::server::abilities::Abilities;
use crate::server::analyst::{Analysis, Analyst, Job};
use crate::server::document::{Document, path_of};
use crate::server::outbox::Outbox;
use crate::server::preferences::Preferences;
use crate::server::publication::{HouseFindings, joined};
use crate::server::refresh::Refresher;
use crate::server::survey::{Survey, SurveyJob, Surveyed, Surveyor};
use crate::server::view::{Analysed, View};
use crate::workspace::{OpenDocuments, real_path};

/// Something that happened, or something asked.
#[derive(Debug)]
pub enum Event {
    /// The editor opened a document.
    Opened(Url, i32, String),
    /// It changed one.
    Changed(Url, i32, Vec<TextDocumentContentChangeEvent>),
    /// It closed one.
    Closed(Url),
    /// Files may stand otherwise on disk than before.
    DiskChanged,
    /// Folders came to the workspace, and others left it.
    FoldersChanged {
        /// New ones.
        added: Vec<PathBuf>,
        /// Those that are no longer part of it.
        removed: Vec<PathBuf>,
    },
    /// The person's wishes, whole.
    PreferencesChanged(Preferences),
    /// Somebody wants the text of now, and whatever is known of its house already. Nothing is sent for a document that is
    /// not open.
    GlanceWanted(Url, oneshot::Sender<Glance>),
    /// Somebody wants the house of the text of now.
    HouseWanted(Url, oneshot::Sender<HouseAnswer>),
    /// Somebody wants every house there is.
    WorkspaceWanted(oneshot::Sender<Workspace>),
    /// Somebody wants what is to be told of a file.
    FindingsWanted(Url, oneshot::Sender<Option<FileFindings>>),
    /// Somebody wants what is to be told of every file.
    AllFindingsWanted(oneshot::Sender<Vec<FileFindings>>),
    /// An analysis is done.
    Analysed(Analysis),
    /// The analysis of a generation broke off for a fault of ours.
    Failed(u64),
    /// The workspace was looked through.
    Surveyed(Survey),
}

/// The text of now, and the house as it last was.
#[derive(Debug)]
pub struct Glance {
    /// The text of now.
    pub document: Arc<Document>,
    /// The house of an earlier text, or of this one. `None` when the document belongs to none that was ever finished.
    pub view: Option<View>,
}

/// The answer to a wish for a house.
#[derive(Debug)]
pub enum HouseAnswer {
    /// Here it is.
    View(Box<View>),
    /// The file is in no house, or its analysis failed.
    Nothing,
    /// The document has changed since the question.
    Outdated,
}

/// Every house there is.
#[derive(Debug)]
pub struct Workspace {
    /// Houses of open documents.
    pub houses: Vec<Arc<Analysed>>,
    /// What is kept of the others.
    pub surveyed: Vec<Arc<Surveyed>>,
    /// The folders of the workspace.
    pub folders: Vec<PathBuf>,
    /// The client as it describes itself.
    pub client: Arc<ClientCapabilities>,
    /// Every open document.
    pub documents: Vec<Arc<Document>>,
}

impl Workspace {
    /// The open documents, to be read before the files on disk.
    pub fn open_documents(&self) -> OpenDocuments {
        let mut open = OpenDocuments::default();
        for document in &self.documents {
            open.open(&document.path, document.text());
        }
        open
    }

    /// The folders to look for files in: those of the workspace, and of houses that lie in none of them.
    pub fn all_folders(&self) -> BTreeSet<PathBuf> {
        let folders: BTreeSet<PathBuf> = self.folders.iter().map(|folder| real_path(folder)).collect();
        let roots = self.houses.iter().map(|house| &house.spec.root_folder);
        let outside = roots.filter(|root| !folders.iter().any(|folder| root.starts_with(folder)));
        let outside: Vec<_> = outside.cloned().collect();
        folders.into_iter().chain(outside).collect()
    }

    /// True when what is seen there was made from the texts that these documents have.
    pub fn has_texts_of(&self, view: &View) -> bool {
        let pages = view.houses().flat_map(|house| house.analysed.pages.iter().flatten());
        let version = |uri: &Url| self.documents.iter().find(|it| it.uri == *uri).map(|it| it.version);
        pages.map(|page| (version(&page.uri), page.version)).all(|(now, then)| now == then)
    }
}

/// What is to be told of one file.
#[derive(Clone, Debug)]
pub struct FileFindings {
    /// The file.
    pub uri: Url,
    /// The version of the document they are of.
    pub version: Option<i32>,
    /// Grows whenever the entries change.
    pub edition: u64,
    /// The entries.
    pub entries: Vec<Diagnostic>,
}

/// What the desk needs of the session.
#[derive(Debug)]
pub struct Setting {
    /// The client as it describes itself.
    pub client: Arc<ClientCapabilities>,
    /// What of it we act on.
    pub abilities: Abilities,
    /// What the person wants, as far as known.
    pub preferences: Preferences,
    /// The folders of the workspace.
    pub folders: Vec<PathBuf>,
    /// Asks the client to ask again.
    pub refresher: Refresher,
    /// Looks through the workspace.
    pub surveyor: Surveyor,
}

/// Starts the thread. It lives as long as the process.
///
/// # Errors
/// The system starts no more threads.
pub fn start(
    outbox: Outbox,
    setting: Setting,
    channel: (Sender<Event>, Receiver<Event>),
) -> std::io::Result<Sender<Event>> {
    let Setting { client, abilities, preferences, folders, refresher, surveyor } = setting;
    let (sender, events) = channel;
    let analyst = Analyst::start(abilities, sender.clone())?;
    let mut desk = Desk {
        abilities,
        client,
        preferences: Arc::new(preferences),
        outbox,
        analyst,
        surveyor,
        refresher,
        folders,
        documents: BTreeMap::new(),
        generation: 0,
        is_analysed: true,
        is_disk_changed: false,
        is_survey_wanted: true,
        houses: Vec::new(),
        findings: Vec::new(),
        surveyed: Vec::new(),
        waiting: Vec::new(),
        told: BTreeMap::new(),
        edition: 0,
    };
    desk.survey();
    thread::Builder::new().name("desk".to_owned()).spawn(move || desk.run(&events))?;
    Ok(sender)
}

/// The channel that [`start`] takes: others put events into it as well.
pub fn events() -> (Sender<Event>, Receiver<Event>) {
    channel()
}

struct Desk {
    abilities: Abilities,
    client: Arc<ClientCapabilities>,
    preferences: Arc<Preferences>,
    outbox: Outbox,
    analyst: Analyst,
    surveyor: Surveyor,
    refresher: Refresher,
    folders: Vec<PathBuf>,
    /// By address, so that the order of the houses does not change from one analysis to the next.
    documents: BTreeMap<Url, Arc<Document>>,
    /// Counts the states of the documents.
    generation: u64,
    /// `houses` are those of this generation.
    is_analysed: bool,
    /// The disk changed since the last finished analysis.
    is_disk_changed: bool,
    /// Something changed that a look through the workspace would show.
    is_survey_wanted: bool,
    houses: Vec<Arc<Analysed>>,
    /// What they have to say.
    findings: Vec<Arc<HouseFindings>>,
    surveyed: Vec<Arc<Surveyed>>,
    waiting: Vec<Wish>,
    /// What there is to tell of each file, and was told to a client that does not ask.
    told: BTreeMap<Url, FileFindings>,
    edition: u64,
}

/// Somebody waits for an analysis.
enum Wish {
    /// For the house of this version of a document; `None` for a file that is not open.
    House(Url, Option<i32>, oneshot::Sender<HouseAnswer>),
    Glance(Url, oneshot::Sender<Glance>),
    Workspace(oneshot::Sender<Workspace>),
    Findings(Url, oneshot::Sender<Option<FileFindings>>),
    AllFindings(oneshot::Sender<Vec<FileFindings>>),
}

impl Desk {
    fn run(mut self, events: &Receiver<Event>) {
        while let Ok(event) = events.recv() {
            let before = self.generation;
            self.take(event);
            // Whatever has come in the meantime goes into the same analysis.
            while let Ok(event) = events.try_recv() {
                self.take(event);
            }
            if self.generation != before {
                self.analyst.analyse(Job {
                    generation: self.generation,
                    documents: self.documents.values().cloned().collect(),
                    is_disk_changed: self.is_disk_changed,
                    preferences: Arc::clone(&self.preferences),
                });
            }
            self.survey();
        }
    }

    fn take(&mut self, event: Event) {
        match event {
            Event::Opened(uri, version, text) => {
                let document = Document::new(uri.clone(), version, text, self.abilities.encoding);
                self.documents.insert(uri, Arc::new(document));
                self.is_survey_wanted = true;
                self.change();
            }
            Event::Changed(uri, version, changes) => {
                if let Some(document) = self.documents.get_mut(&uri) {
                    *document = Arc::new(document.changed(version, changes));
                    self.change();
                }
            }
            Event::Closed(uri) => {
                if self.documents.remove(&uri).is_some() {
                    self.is_disk_changed = true;
                    self.is_survey_wanted = true;
                    self.change();
                }
            }
            Event::DiskChanged => {
                self.is_disk_changed = true;
                self.is_survey_wanted = true;
                self.change();
            }
            Event::FoldersChanged { added, removed } => {
                self.folders.retain(|folder| !removed.contains(folder));
                let new: Vec<_> = added.into_iter().filter(|folder| !self.folders.contains(folder)).collect();
                self.folders.extend(new);
                self.is_survey_wanted = true;
            }
            Event::PreferencesChanged(preferences) => {
                if *self.preferences != preferences {
                    self.preferences = Arc::new(preferences);
                    self.is_survey_wanted = true;
                    self.change();
                    self.refresher.everything_shown();
                }
            }
            Event::GlanceWanted(uri, reply) => self.wish(Wish::Glance(uri, reply)),
            Event::HouseWanted(uri, reply) => {
                let version = self.documents.get(&uri).map(|document| document.version);
                self.wish(Wish::House(uri, version, reply));
            }
            Event::WorkspaceWanted(reply) => self.wish(Wish::Workspace(reply)),
            Event::FindingsWanted(uri, reply) => self.wish(Wish::Findings(uri, reply)),
            Event::AllFindingsWanted(reply) => self.wish(Wish::AllFindings(reply)),
            Event::Analysed(analysis) if analysis.generation == self.generation => {
                self.is_analysed = true;
                self.is_disk_changed = false;
                self.houses = analysis.houses;
                let before = std::mem::replace(&mut self.findings, analysis.findings);
                let files = before.iter().chain(&self.findings).flat_map(|house| &house.files);
                let concerned = files.map(|file| file.uri.clone()).collect();
                self.tell(Some(&concerned));
                self.grant();
                self.refresh_other_documents();
            }
            Event::Failed(generation) if generation == self.generation => {
                // What the client shows stays: it is old, but it was right.
                self.is_analysed = true;
                self.houses.clear();
                self.grant();
            }
            Event::Analysed(_) | Event::Failed(_) => {}
            Event::Surveyed(survey) => {
                self.surveyed = survey.houses;
                self.tell(None);
            }
        }
    }

    fn change(&mut self) {
        self.generation += 1;
        self.is_analysed = false;
    }

    /// Has the workspace looked through when something in it may be otherwise than before.
    fn survey(&mut self) {
        if std::mem::take(&mut self.is_survey_wanted) {
            let folders = if self.preferences.whole_workspace { self.folders.clone() } else { Vec::new() };
            self.surveyor.survey(SurveyJob {
                folders,
                documents: self.documents.values().cloned().collect(),
                preferences: Arc::clone(&self.preferences),
            });
        }
    }

    fn wish(&mut self, wish: Wish) {
        self.waiting.push(wish);
        self.grant();
    }

    /// Answers whoever waits, when there is something to answer with.
    fn grant(&mut self) {
        for wish in std::mem::take(&mut self.waiting) {
            let can_wait_no_longer = match &wish {
                // An old house is better than none.
                Wish::Glance(uri, _) => self.view_of(uri).is_some(),
                // Nobody is helped by the house of a text that is gone.
                Wish::House(uri, version, _) => !self.is_version(uri, *version),
                Wish::Workspace(_) | Wish::Findings(..) | Wish::AllFindings(_) => false,
            };
            if self.is_analysed || can_wait_no_longer {
                self.fulfil(wish);
            } else {
                self.waiting.push(wish);
            }
        }
    }

    fn fulfil(&self, wish: Wish) {
        match wish {
            Wish::House(uri, version, reply) => {
                let answer = match self.view_of(&uri) {
                    _ if !self.is_version(&uri, version) => HouseAnswer::Outdated,
                    Some(view) => HouseAnswer::View(Box::new(view)),
                    None => HouseAnswer::Nothing,
                };
                _ = reply.send(answer);
            }
            Wish::Glance(uri, reply) => {
                if let Some(document) = self.documents.get(&uri) {
                    _ = reply.send(Glance { document: Arc::clone(document), view: self.view_of(&uri) });
                }
            }
            Wish::Workspace(reply) => {
                let workspace = Workspace {
                    houses: self.houses.clone(),
                    surveyed: self.surveyed_elsewhere().cloned().collect(),
                    folders: self.folders.clone(),
                    documents: self.documents.values().cloned().collect(),
                    client: Arc::clone(&self.client),
                };
                _ = reply.send(workspace);
            }
            Wish::Findings(uri, reply) => _ = reply.send(self.told.get(&uri).cloned()),
            Wish::AllFindings(reply) => _ = reply.send(self.told.values().cloned().collect()),
        }
    }

    fn is_version(&self, uri: &Url, version: Option<i32>) -> bool {
        self.documents.get(uri).map(|document| document.version) == version
    }

    fn view_of(&self, uri: &Url) -> Option<View> {
        let path = match self.documents.get(uri) {
            Some(document) => document.path.clone(),
            None => path_of(uri),
        };
        View::of(&path, &self.houses, self.abilities, &self.client, &self.preferences)
    }

    /// What the look through the workspace found in houses of which no document is open.
    fn surveyed_elsewhere(&self) -> impl Iterator<Item = &Arc<Surveyed>> {
        let is_open = |root: &PathBuf| self.findings.iter().any(|house| house.root == *root);
        self.surveyed.iter().filter(move |surveyed| !is_open(&surveyed.findings.root))
    }

    /// Brings what is told of the files up to date, of all or of these.
    fn tell(&mut self, concerned: Option<&BTreeSet<Url>>) {
        let is_concerned = |uri: &Url| concerned.is_none_or(|concerned| concerned.contains(uri));
        let elsewhere = self.surveyed_elsewhere().map(|surveyed| &surveyed.findings);
        let speaks = |house: &&HouseFindings| house.files.iter().any(|file| is_concerned(&file.uri));
        let all = self.findings.iter().map(|house| &**house).chain(elsewhere.filter(speaks));
        let mut new: Vec<_> = joined(all).into_iter().filter(|file| is_concerned(&file.uri)).collect();
        // A file no longer concerned gets an empty list.
        let gone =
            self.told.keys().filter(|uri| is_concerned(uri) && !new.iter().any(|file| file.uri == **uri));
        let gone: Vec<Url> = gone.cloned().collect();
        new.extend(gone.iter().map(|uri| PublishDiagnosticsParams::new(uri.clone(), Vec::new(), None)));

        let mut is_other_changed = false;
        for PublishDiagnosticsParams { uri, diagnostics: entries, version } in new {
            let old = self.told.get(&uri);
            let is_same_version = old.is_some_and(|old| old.version == version);
            let is_same = old.is_some_and(|old| old.entries == entries);
            if is_same && is_same_version {
                continue;
            }
            if !is_same {
                self.edition += 1;
                is_other_changed |= self.documents.len() != 1 || !self.documents.contains_key(&uri);
            }
            let edition = if is_same { old.map_or(0, |old| old.edition) } else { self.edition };
            let now = FileFindings { uri: uri.clone(), version, edition, entries };
            if !self.abilities.pulls_diagnostics {
                let params = PublishDiagnosticsParams::new(uri.clone(), now.entries.clone(), version);
                self.outbox.notify::<PublishDiagnostics>(&params);
            }
            self.told.insert(uri, now);
        }
        for uri in gone {
            self.told.remove(&uri);
        }
        if is_other_changed {
            self.refresher.findings();
        }
    }

    /// Figures of one document can change by an edit in another: the client asks only for the edited one by itself.
    fn refresh_other_documents(&self) {
        let is_shared = |house: &Arc<Analysed>| {
            house.pages.iter().flatten().filter(|page| page.version.is_some()).count() > 1
        };
        if self.houses.iter().any(is_shared) {
            self.refresher.figures();
        }
    }
}
