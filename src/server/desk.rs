//! The one owner of all state: a thread that takes events in the order they came.
//!
//! It applies edits at once and hands the newest texts to the analyst; what comes back for texts that are old by then is
//! dropped. Whoever wants something of it gets the answer through a channel and never waits for an analysis of older text.

use std::collections::HashMap;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use tokio::sync::oneshot;
use tower_lsp::lsp_types::notification::PublishDiagnostics;
use tower_lsp::lsp_types::{PublishDiagnosticsParams, TextDocumentContentChangeEvent, Url};

use crate::server::abilities::Abilities;
use crate::server::analyst::{Analysis, Analyst, Job, View};
use crate::server::document::Document;
use crate::server::outbox::Outbox;

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
    /// Somebody wants the text of now. Nothing is sent for a document that is not open.
    TextWanted(Url, oneshot::Sender<Arc<Document>>),
    /// Somebody wants the house of the text of now.
    HouseWanted(Url, oneshot::Sender<HouseAnswer>),
    /// An analysis is done.
    Analysed(Analysis),
    /// The analysis of a generation broke off for a fault of ours.
    Failed(u64),
}

/// The answer to a wish for a house.
#[derive(Debug)]
pub enum HouseAnswer {
    /// Here it is.
    View(View),
    /// The document is not open, or its analysis failed.
    Nothing,
    /// The document has changed since the question.
    Outdated,
}

/// Starts the thread. It lives as long as the process.
///
/// # Errors
/// The system starts no more threads.
pub fn start(outbox: Outbox, abilities: Abilities) -> std::io::Result<Sender<Event>> {
    let (sender, events) = channel();
    let analyst = Analyst::start(abilities, outbox.clone(), sender.clone())?;
    let desk = Desk {
        abilities,
        outbox,
        analyst,
        documents: HashMap::new(),
        generation: 0,
        is_analysed: true,
        is_disk_changed: false,
        views: HashMap::new(),
        waiting: Vec::new(),
        published: HashMap::new(),
    };
    thread::Builder::new().name("desk".to_owned()).spawn(move || desk.run(&events))?;
    Ok(sender)
}

struct Desk {
    abilities: Abilities,
    outbox: Outbox,
    analyst: Analyst,
    documents: HashMap<Url, Arc<Document>>,
    /// Counts the states of the documents.
    generation: u64,
    /// `views` shows this generation.
    is_analysed: bool,
    /// The disk changed since the last finished analysis.
    is_disk_changed: bool,
    views: HashMap<Url, View>,
    waiting: Vec<Wish>,
    /// What the client was last told of each file.
    published: HashMap<Url, PublishDiagnosticsParams>,
}

/// Somebody waits for a house.
struct Wish {
    uri: Url,
    version: i32,
    reply: oneshot::Sender<HouseAnswer>,
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
                });
            }
        }
    }

    fn take(&mut self, event: Event) {
        match event {
            Event::Opened(uri, version, text) => {
                let document = Document::new(uri.clone(), version, text, self.abilities.encoding);
                self.documents.insert(uri, Arc::new(document));
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
                    self.change();
                }
            }
            Event::DiskChanged => {
                self.is_disk_changed = true;
                self.change();
            }
            Event::TextWanted(uri, reply) => {
                if let Some(document) = self.documents.get(&uri) {
                    _ = reply.send(Arc::clone(document));
                }
            }
            Event::HouseWanted(uri, reply) => match self.documents.get(&uri) {
                Some(document) => {
                    self.waiting.push(Wish { version: document.version, uri, reply });
                    self.grant();
                }
                None => _ = reply.send(HouseAnswer::Nothing),
            },
            Event::Analysed(analysis) if analysis.generation == self.generation => {
                self.is_analysed = true;
                self.is_disk_changed = false;
                self.views = analysis.views;
                self.publish(analysis.publications);
                self.grant();
            }
            Event::Failed(generation) if generation == self.generation => {
                // What the client shows stays: it is old, but it was right.
                self.is_analysed = true;
                self.views.clear();
                self.grant();
            }
            Event::Analysed(_) | Event::Failed(_) => {}
        }
    }

    fn change(&mut self) {
        self.generation += 1;
        self.is_analysed = false;
    }

    /// Answers whoever waits, when there is something to answer with.
    fn grant(&mut self) {
        if !self.is_analysed {
            return;
        }
        for wish in self.waiting.drain(..) {
            let is_same = self.documents.get(&wish.uri).is_some_and(|now| now.version == wish.version);
            let answer = match self.views.get(&wish.uri) {
                _ if !is_same => HouseAnswer::Outdated,
                Some(view) => HouseAnswer::View(view.clone()),
                None => HouseAnswer::Nothing,
            };
            _ = wish.reply.send(answer);
        }
    }

    /// Tells the client what it does not know yet. A file no longer concerned gets an empty list.
    fn publish(&mut self, publications: Vec<PublishDiagnosticsParams>) {
        let mut old = std::mem::take(&mut self.published);
        for publication in publications {
            if old.remove(&publication.uri).as_ref() != Some(&publication) {
                self.outbox.notify::<PublishDiagnostics>(&publication);
            }
            self.published.insert(publication.uri.clone(), publication);
        }
        for uri in old.into_keys() {
            self.outbox.notify::<PublishDiagnostics>(&PublishDiagnosticsParams::new(uri, Vec::new(), None));
        }
    }
}
