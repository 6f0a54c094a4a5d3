//! One spec: a root file with everything it includes, and the configuration of its root folder.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::inputs::{Include, IncludeOutcome, Inputs};
use crate::text::{FileId, Source};
use crate::workspace::configuration::{self, ConfigurationFault};
use crate::workspace::file_text::{TextFault, text_at};
use crate::workspace::include_line::{include_lines, opens_project};
use crate::workspace::path::{configured_folder, name_within, real_path};
use crate::workspace::{CONFIGURATION_NAME, OpenDocuments};

/// What an analysis reads, and which files it came from.
#[derive(Clone, Debug)]
pub struct Spec {
    /// What an analysis reads.
    pub inputs: Arc<Inputs>,
    /// The file of each source, links resolved: a [`FileId`] is an index into it.
    pub paths: Vec<PathBuf>,
    /// Files that an include line leads to and that can't be read.
    pub unread: Vec<PathBuf>,
    /// The folder that names are relative to and nothing outside of which is read.
    pub root_folder: PathBuf,
    /// The root file opens no project: a part of a house, read by itself.
    pub is_alone: bool,
    /// What is wrong with the configuration; what is right in it counts.
    pub configuration_faults: Vec<ConfigurationFault>,
}

impl Spec {
    /// True when the file is one of its sources, or one that it would read if it could.
    pub fn has(&self, file: &Path) -> bool {
        let real = real_path(file);
        self.paths.contains(&real) || self.unread.contains(&real)
    }

    /// Which of its sources a file is.
    pub fn file_of(&self, file: &Path) -> Option<FileId> {
        let real = real_path(file);
        self.paths.iter().position(|path| *path == real).map(file_id)
    }

    /// The same spec with other text in one of its files. `None` when it must be read anew: the file is not in it, or
    /// its include lines lead elsewhere than before.
    pub fn with_text(&self, file: &Path, text: Arc<str>) -> Option<Self> {
        let id = self.file_of(file)?;
        let now = include_lines(&text);
        let mut inputs = Inputs::clone(&self.inputs);
        let mut before = inputs.includes.iter_mut().filter(|include| include.file == id);
        for (path, span) in &now {
            let include = before.next().filter(|include| include.path == *path)?;
            include.span = *span;
        }
        if before.next().is_some() {
            return None;
        }
        let is_alone = if id == FileId(0) { !opens_project(&text) } else { self.is_alone };
        let source = inputs.sources.get_mut(id.0 as usize)?;
        *source = Source::new(Arc::clone(&source.name), text);
        Some(Self { inputs: Arc::new(inputs), is_alone, ..self.clone() })
    }
}

/// Reads the spec of a root file.
///
/// # Errors
/// Why the root file itself gives no text. What an include line leads to is in the inputs instead.
pub fn spec_of(root_file: &Path, open: &OpenDocuments) -> Result<Spec, TextFault> {
    let root_file = real_path(root_file);
    let text = text_at(&root_file, open)?;
    let own_folder = root_file.parent().unwrap_or(&root_file).to_owned();
    let configured = configured_folder(&root_file);
    let configuration_faults = match &configured {
        Some(folder) => configuration::read(&folder.join(CONFIGURATION_NAME)).faults,
        None => Vec::new(),
    };
    let is_alone = !opens_project(&text);
    let mut reading = Reading {
        root_folder: configured.unwrap_or(own_folder),
        open,
        known: BTreeMap::new(),
        sources: Vec::new(),
        includes: Vec::new(),
        paths: Vec::new(),
        included_by: Vec::new(),
        unread: Vec::new(),
    };
    reading.add(root_file, text, None);
    reading.follow_includes();
    let Reading { root_folder, sources, includes, paths, unread, .. } = reading;
    let inputs = Arc::new(Inputs { sources, includes });
    Ok(Spec { inputs, paths, unread, root_folder, is_alone, configuration_faults })
}

/// A spec while its files are read.
struct Reading<'a> {
    root_folder: PathBuf,
    open: &'a OpenDocuments,
    known: BTreeMap<PathBuf, FileId>,
    sources: Vec<Source>,
    includes: Vec<Include>,
    paths: Vec<PathBuf>,
    included_by: Vec<Option<FileId>>,
    unread: Vec<PathBuf>,
}

impl Reading<'_> {
    fn add(&mut self, path: PathBuf, text: Arc<str>, included_by: Option<FileId>) -> FileId {
        let id = file_id(self.sources.len());
        self.sources.push(Source::new(name_within(&self.root_folder, &path), text));
        self.known.insert(path.clone(), id);
        self.paths.push(path);
        self.included_by.push(included_by);
        id
    }

    /// Reads file after file until none is left: a chain of includes, however long, needs no deep stack.
    fn follow_includes(&mut self) {
        let mut next = 0;
        while let Some(source) = self.sources.get(next) {
            let file = file_id(next);
            for (path, span) in include_lines(&source.text.clone()) {
                let outcome = self.outcome_of(file, &path);
                self.includes.push(Include { file, span, path, outcome });
            }
            next += 1;
        }
    }

    fn outcome_of(&mut self, file: FileId, path: &str) -> IncludeOutcome {
        if let Some(why) = fault_of_path(path) {
            return IncludeOutcome::Unreadable(why);
        }
        let folder = self.paths.get(file.0 as usize).and_then(|including| including.parent());
        let target = real_path(&folder.unwrap_or(Path::new("")).join(path));
        if !target.starts_with(&self.root_folder) {
            return IncludeOutcome::Outside;
        }
        if let Some(known) = self.known.get(&target).copied() {
            return match self.way_down(known, file) {
                Some(way) => IncludeOutcome::Cycle(way),
                None => IncludeOutcome::Again(known),
            };
        }
        match text_at(&target, self.open) {
            Ok(text) => IncludeOutcome::Read(self.add(target, text, Some(file))),
            Err(fault) => {
                self.unread.push(target);
                match fault {
                    TextFault::Missing | TextFault::LinkToNothing => IncludeOutcome::Missing,
                    other => IncludeOutcome::Unreadable(other.to_string()),
                }
            }
        }
    }

    /// The names from `top` down to `file` and back to `top`, when `file` is included by way of `top`.
    fn way_down(&self, top: FileId, file: FileId) -> Option<Vec<String>> {
        let mut way = vec![self.name_of(top)];
        let mut at = file;
        while at != top {
            way.push(self.name_of(at));
            at = (*self.included_by.get(at.0 as usize)?)?;
        }
        way.push(self.name_of(top));
        way.reverse();
        Some(way)
    }

    fn name_of(&self, file: FileId) -> String {
        self.sources.get(file.0 as usize).map(|source| source.name.to_string()).unwrap_or_default()
    }
}

/// What is wrong with the path of an include as it is written.
fn fault_of_path(path: &str) -> Option<String> {
    if path.trim().is_empty() {
        return Some("the path is empty".to_owned());
    }
    if path.contains('\\') {
        return Some(format!("folders are parted by `/`: write `{}`", path.replace('\\', "/")));
    }
    None
}

fn file_id(index: usize) -> FileId {
    FileId(u32::try_from(index).unwrap_or(u32::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::LocalSpan;

    /// A folder on disk with these files, and the spec of the first.
    fn spec(files: &[(&str, &str)]) -> (tempfile::TempDir, Spec) {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in files {
            let path = folder.path().join(name);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, text).unwrap();
        }
        let spec = spec_of(&folder.path().join(files[0].0), &OpenDocuments::default()).unwrap();
        (folder, spec)
    }

    fn outcomes(spec: &Spec) -> Vec<&IncludeOutcome> {
        spec.inputs.includes.iter().map(|include| &include.outcome).collect()
    }

    fn names(spec: &Spec) -> Vec<&str> {
        spec.inputs.sources.iter().map(|source| &*source.name).collect()
    }

    #[test]
    fn an_include_is_relative_to_the_file_it_stands_in() {
        let (_folder, spec) = spec(&[
            ("house.framing", "include \"parts/walls.framing\"\nproject \"P\"\n"),
            ("parts/walls.framing", "include \"pads.framing\"\n"),
            ("parts/pads.framing", "footing F1\n"),
        ]);
        assert_eq!(names(&spec), ["house.framing", "parts/walls.framing", "parts/pads.framing"]);
        assert_eq!(outcomes(&spec), [&IncludeOutcome::Read(FileId(1)), &IncludeOutcome::Read(FileId(2))]);
        assert!(!spec.is_alone);
    }

    #[test]
    fn what_an_include_led_to_is_said() {
        let (_folder, spec) = spec(&[
            (
                "house.framing",
                "include \"a.framing\"\ninclude \"a.framing\"\ninclude \"none.framing\"\ninclude \"../x.framing\"\ninclude \"/etc/hosts\"\ninclude \"parts\"\ninclude \"parts\\b.framing\"\ninclude \"empty.framing\"\n",
            ),
            ("a.framing", "include \"parts/b.framing\"\n"),
            ("parts/b.framing", "include \"../a.framing\"\ninclude \"b.framing\"\n"),
            ("empty.framing", " \n"),
        ]);
        let cycle =
            |names: &[&str]| IncludeOutcome::Cycle(names.iter().map(|name| (*name).to_owned()).collect());
        let unreadable = |why: &str| IncludeOutcome::Unreadable(why.to_owned());
        assert_eq!(
            outcomes(&spec),
            [
                &IncludeOutcome::Read(FileId(1)),
                &IncludeOutcome::Again(FileId(1)),
                &IncludeOutcome::Missing,
                &IncludeOutcome::Outside,
                &IncludeOutcome::Outside,
                &unreadable("this is a folder; a file is wanted"),
                &unreadable("folders are parted by `/`: write `parts/b.framing`"),
                &unreadable("the file is empty"),
                &IncludeOutcome::Read(FileId(2)),
                &cycle(&["a.framing", "parts/b.framing", "a.framing"]),
                &cycle(&["parts/b.framing", "parts/b.framing"]),
            ]
        );
        assert!(spec.is_alone);
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_root_folder_is_outside() {
        let outside = tempfile::tempdir().unwrap();
        std::fs::write(outside.path().join("x.framing"), "grid\n").unwrap();
        let (folder, _) = spec(&[("house.framing", "include \"link/x.framing\"\n")]);
        std::os::unix::fs::symlink(outside.path(), folder.path().join("link")).unwrap();
        let spec = spec_of(&folder.path().join("house.framing"), &OpenDocuments::default()).unwrap();
        assert_eq!(outcomes(&spec), [&IncludeOutcome::Outside]);
    }

    #[test]
    fn the_configuration_makes_its_folder_the_root() {
        let (_folder, spec) = spec(&[
            ("job/house.framing", "include \"../shared.framing\"\n"),
            ("shared.framing", "grid\n"),
            ("storyrod.toml", ""),
        ]);
        assert_eq!(names(&spec), ["job/house.framing", "shared.framing"]);
    }

    #[test]
    fn an_open_document_stands_before_its_file() {
        let (folder, _) = spec(&[("house.framing", "grid\n")]);
        let house = folder.path().join("house.framing");
        let mut open = OpenDocuments::default();
        open.open(&house, "include \"new.framing\"\n");
        open.open(&folder.path().join("new.framing"), "footing F1\n");
        let read = spec_of(&house, &open).unwrap();
        assert_eq!(names(&read), ["house.framing", "new.framing"]);
        assert_eq!(names(&spec_of(&house, &OpenDocuments::default()).unwrap()), ["house.framing"]);
    }

    #[test]
    fn new_text_is_taken_while_the_includes_stay() {
        let (folder, spec) = spec(&[("house.framing", "include \"a.framing\"\n"), ("a.framing", "grid\n")]);
        let house = folder.path().join("house.framing");
        let moved = spec.with_text(&house, "-- moved\ninclude \"a.framing\"\n".into()).unwrap();
        assert_eq!(moved.inputs.includes[0].span, LocalSpan::new(18, 27));
        assert!(spec.with_text(&house, "include \"b.framing\"\n".into()).is_none());
        assert!(spec.with_text(&house, "".into()).is_none());
        assert!(spec.with_text(&folder.path().join("a.framing"), "include \"c\"\n".into()).is_none());
    }
}
