//! A finished house as seen from one of its files: what answers are made from.

use std::path::Path;
use std::sync::Arc;

use tower_lsp::lsp_types::{ClientCapabilities, Location, Position, Range, Url};

use crate::server::abilities::Abilities;
use crate::server::document::Document;
use crate::server::preferences::Preferences;
use crate::server::ruler::Ruler;
use crate::snapshot::Snapshot;
use crate::text::{FileId, Span};
use crate::workspace::Spec;

/// A file as the client knows it.
#[derive(Clone, Debug)]
pub struct Page {
    /// Its address.
    pub uri: Url,
    /// The client's count of its changes; `None` for a file that is not open.
    pub version: Option<i32>,
    /// Its text and how the client measures it.
    pub ruler: Ruler,
}

/// A spec, what was found in it, and its files as the client knows them.
#[derive(Debug)]
pub struct Analysed {
    /// Where its files are.
    pub spec: Spec,
    /// The house and its findings.
    pub snapshot: Arc<Snapshot>,
    /// Its files, in the order of their [`FileId`]s. `None` for a path that no address can name.
    pub pages: Vec<Option<Page>>,
}

/// A house and which of its files is looked at.
#[derive(Clone, Debug)]
pub struct HouseView {
    /// The house.
    pub analysed: Arc<Analysed>,
    /// The file.
    pub file: FileId,
}

/// Every house that a file belongs to, as seen from there.
#[derive(Clone, Debug)]
pub struct View {
    /// The file.
    pub page: Page,
    /// The first house.
    pub house: HouseView,
    /// The further ones, when several projects include the file.
    pub others: Vec<HouseView>,
    /// What the client can show.
    pub abilities: Abilities,
    /// The client as it describes itself, for what only one answer asks of it.
    pub client: Arc<ClientCapabilities>,
    /// What the person wants to see.
    pub preferences: Arc<Preferences>,
}

impl Analysed {
    /// A finished house with its files as the client knows them.
    pub fn new(
        spec: Spec,
        snapshot: Arc<Snapshot>,
        documents: &[Arc<Document>],
        abilities: Abilities,
    ) -> Self {
        let open: Vec<_> =
            documents.iter().filter_map(|document| Some((spec.file_of(&document.path)?, document))).collect();
        let files = (0..).map(FileId).zip(spec.paths.iter().zip(&spec.inputs.sources));
        let pages = files
            .map(|(id, (path, source))| match open.iter().find(|(file, _)| *file == id) {
                Some((_, document)) => Some(document.page()),
                None => {
                    let uri = Url::from_file_path(path).ok()?;
                    Some(Page { uri, version: None, ruler: Ruler::new(source.clone(), abilities.encoding) })
                }
            })
            .collect();
        Self { spec, snapshot, pages }
    }

    /// One of its files.
    pub fn page(&self, file: FileId) -> Option<&Page> {
        self.pages.get(file.0 as usize)?.as_ref()
    }

    /// A place in one of its files.
    pub fn location(&self, span: Span) -> Option<Location> {
        let page = self.page(span.file)?;
        Some(Location::new(page.uri.clone(), page.ruler.range(span.start, span.end)))
    }
}

impl HouseView {
    /// The house and its findings.
    pub fn snapshot(&self) -> &Snapshot {
        &self.analysed.snapshot
    }
}

impl View {
    /// Every house, as seen from the file at `path`; the files of no house have none.
    pub fn of(
        path: &Path,
        houses: &[Arc<Analysed>],
        abilities: Abilities,
        client: &Arc<ClientCapabilities>,
        preferences: &Arc<Preferences>,
    ) -> Option<Self> {
        let mut views = houses.iter().filter_map(|analysed| {
            let file = analysed.spec.file_of(path)?;
            Some(HouseView { analysed: Arc::clone(analysed), file })
        });
        let house = views.next()?;
        let page = house.analysed.page(house.file)?.clone();
        let others = views.collect();
        let (client, preferences) = (Arc::clone(client), Arc::clone(preferences));
        Some(Self { page, house, others, abilities, client, preferences })
    }

    /// Every house the file belongs to.
    pub fn houses(&self) -> impl Iterator<Item = &HouseView> {
        std::iter::once(&self.house).chain(&self.others)
    }

    /// The byte at a position of the file.
    pub fn offset(&self, position: Position) -> u32 {
        self.page.ruler.offset(position)
    }

    /// The range between two bytes of the file.
    pub fn range(&self, start: u32, end: u32) -> Range {
        self.page.ruler.range(start, end)
    }
}
