//! Which specs there are below a folder, and which of them a file belongs to.

use std::collections::HashSet;
use std::path::{Path, PathBuf};

use ignore::{DirEntry, WalkBuilder};

use crate::workspace::configuration::LeftOut;
use crate::workspace::file_text::{TextFault, fault_of, text_at};
use crate::workspace::include_line::opens_project;
use crate::workspace::path::{configured_folder, real_path};
use crate::workspace::{CONFIGURATION_NAME, Changes, OpenDocuments, Spec, spec_of};

/// How a spec's file ends, without the dot.
pub(in crate::workspace) const EXTENSION: &str = "framing";

/// What a walk through a folder comes to.
#[derive(Debug, Default)]
pub struct Below {
    /// The files that hold specs or parts of specs, by path.
    pub files: Vec<PathBuf>,
    /// What the walk could not look into, and why: there may be specs in it.
    pub unread: Vec<(PathBuf, TextFault)>,
}

/// The specs below a folder, by path: every file that opens a project, then every file that no project includes, then
/// what the walk could not look into.
///
/// Files that version control leaves out, and hidden ones, are left out here too.
pub fn specs_below(folder: &Path, open: &OpenDocuments) -> Vec<(PathBuf, Result<Spec, TextFault>)> {
    let Below { files, unread } = below(folder, open);
    let mut specs = specs_among(files, open);
    specs.extend(unread.into_iter().map(|(path, fault)| (path, Err(fault))));
    specs
}

/// Those of the specs below a folder that a change can affect. What can't be affected is not read, nor is a folder in
/// which nothing can.
pub fn specs_affected(folder: &Path, changes: &Changes) -> Vec<(PathBuf, Result<Spec, TextFault>)> {
    let open = OpenDocuments::default();
    let mut walk = WalkBuilder::new(real_path(folder));
    let reach = changes.reach();
    walk.filter_entry(move |entry| {
        let is_folder = entry.file_type().is_some_and(|kind| kind.is_dir());
        !is_folder || reach.extends_into(entry.path())
    });
    let Below { mut files, unread } = walked(&walk);
    let reach = changes.reach();
    files.retain(|file| reach.extends_to(file));
    files.sort();
    let mut specs = specs_among(changes.connected(files), &open);
    specs.retain(|(file, spec)| match spec {
        Ok(spec) => changes.affect(spec),
        Err(_) => changes.affect_root(&real_path(file)),
    });
    // What can't be looked into may have changed.
    specs.extend(unread.into_iter().map(|(path, fault)| (path, Err(fault))));
    specs
}

fn specs_among(files: Vec<PathBuf>, open: &OpenDocuments) -> Vec<(PathBuf, Result<Spec, TextFault>)> {
    let (roots, parts): (Vec<_>, Vec<_>) =
        files.into_iter().partition(|file| text_at(file, open).is_ok_and(|text| opens_project(&text)));
    let mut specs: Vec<_> = roots.into_iter().map(|file| with_spec(file, open)).collect();
    let read = specs.iter().filter_map(|(_, spec)| spec.as_ref().ok());
    let included: HashSet<PathBuf> =
        read.flat_map(|spec| spec.paths.iter().chain(&spec.unread)).cloned().collect();
    let stray = parts.into_iter().filter(|part| !included.contains(&real_path(part)));
    specs.extend(stray.map(|part| with_spec(part, open)));
    specs
}

/// The specs that a file is read in: its own when it opens a project, else each project near it that includes it; the
/// file alone when there is none.
///
/// *Near* is below the folder of the configuration, or below the file's own folder when there is no configuration.
///
/// # Errors
/// Why the file gives no text.
pub fn specs_with(file: &Path, open: &OpenDocuments) -> Result<Vec<Spec>, TextFault> {
    let file = real_path(file);
    // A file that can't be read needs no walk through its folder.
    if !opens_project(&text_at(&file, open)?) {
        let folder = configured_folder(&file).or_else(|| file.parent().map(Path::to_owned));
        let near = files_below(&folder.unwrap_or_default(), open);
        let projects = near.iter().filter(|near| text_at(near, open).is_ok_and(|text| opens_project(&text)));
        let including: Vec<_> = projects
            .filter_map(|project| spec_of(project, open).ok())
            .filter(|spec| spec.has(&file))
            .collect();
        if !including.is_empty() {
            return Ok(including);
        }
    }
    Ok(vec![spec_of(&file, open)?])
}

/// The files below a folder that hold specs or parts of specs, by path, without those that a configuration above them
/// leaves out. What can't be looked into is passed over.
pub fn files_below(folder: &Path, open: &OpenDocuments) -> Vec<PathBuf> {
    below(folder, open).files
}

/// The same with what can't be looked into.
pub fn below(folder: &Path, open: &OpenDocuments) -> Below {
    let folder = real_path(folder);
    let Below { mut files, unread } = walked(&WalkBuilder::new(&folder));
    let mut unsaved: Vec<_> =
        open.paths().filter(|path| path.starts_with(&folder)).map(Path::to_owned).collect();
    let mut left_out = LeftOut::default();
    unsaved.retain(|file| !left_out.has(file));
    files.append(&mut unsaved);
    files.sort();
    files.dedup();
    Below { files, unread }
}

/// True when there are specs below a folder and a configuration leaves out every one.
pub fn are_left_out(folder: &Path) -> bool {
    let mut left_out = LeftOut::default();
    let walk = WalkBuilder::new(real_path(folder));
    // What can't be looked into may hold one that is not left out.
    let mut found = each_in(&walk).map(|found| found.unwrap_or_else(|(path, _)| path)).peekable();
    // Mostly the first one answers.
    found.peek().is_some() && found.all(|path| left_out.has(&path))
}

fn walked(walk: &WalkBuilder) -> Below {
    let (mut files, mut unread) = all_in(walk);
    let mut left_out = LeftOut::default();
    files.retain(|file| !left_out.has(file));
    unread.retain(|(path, _)| !left_out.has(path));
    unread.sort_by(|(one, _), (other, _)| one.cmp(other));
    Below { files, unread }
}

/// The files in a walk, those that a configuration leaves out among them, and what it could not look into.
fn all_in(walk: &WalkBuilder) -> (Vec<PathBuf>, Vec<(PathBuf, TextFault)>) {
    let (mut files, mut unread) = (Vec::new(), Vec::new());
    for found in each_in(walk) {
        match found {
            Ok(file) => files.push(file),
            Err(fault) => unread.push(fault),
        }
    }
    (files, unread)
}

fn each_in(walk: &WalkBuilder) -> impl Iterator<Item = Result<PathBuf, (PathBuf, TextFault)>> {
    walk.build().filter_map(|entry| match entry.map(DirEntry::into_path) {
        // A link that leads nowhere is no folder: who reads it says so.
        Ok(path) => (is_spec(&path) && !path.is_dir()).then_some(Ok(path)),
        Err(error) => Some(Err(unread_of(&error))),
    })
}

/// Where a walk met an error, and which.
fn unread_of(error: &ignore::Error) -> (PathBuf, TextFault) {
    let mut path = PathBuf::new();
    let mut inner = error;
    let fault = loop {
        match inner {
            ignore::Error::WithPath { path: at, err } => (path, inner) = (at.clone(), err),
            ignore::Error::WithDepth { err, .. } | ignore::Error::WithLineNumber { err, .. } => inner = err,
            ignore::Error::Io(error) => break fault_of(error),
            other => break TextFault::System(other.to_string()),
        }
    };
    (path, fault)
}

/// A file that holds a spec or a part of one, by its name.
pub(in crate::workspace) fn is_spec(path: &Path) -> bool {
    path.extension().is_some_and(|extension| extension == EXTENSION)
}

/// A file that decides for a whole folder which specs are read in it, and how, by its name.
pub(in crate::workspace) fn decides_for_folder(path: &Path) -> bool {
    path.file_name()
        .is_some_and(|name| [CONFIGURATION_NAME, ".gitignore", ".ignore"].iter().any(|it| name == *it))
}

fn with_spec(file: PathBuf, open: &OpenDocuments) -> (PathBuf, Result<Spec, TextFault>) {
    let spec = spec_of(&file, open);
    (file, spec)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workspace::name_within;

    fn folder_with(files: &[(&str, &str)]) -> tempfile::TempDir {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in files {
            std::fs::create_dir_all(folder.path().join(name).parent().unwrap()).unwrap();
            std::fs::write(folder.path().join(name), text).unwrap();
        }
        folder
    }

    fn names(specs: &[Spec]) -> Vec<String> {
        specs.iter().map(|spec| spec.inputs.sources[0].name.to_string()).collect()
    }

    #[test]
    fn a_folder_gives_its_projects_then_what_none_includes() {
        let folder = folder_with(&[
            ("barn/hop.framing", "project \"Hop\"\ninclude \"walls.framing\"\n"),
            ("barn/walls.framing", "wall W1\n"),
            ("a-left-over.framing", "wall W2\n"),
            ("notes.md", "project\n"),
            (".hidden/x.framing", "project \"X\"\n"),
        ]);
        let found = specs_below(folder.path(), &OpenDocuments::default());
        let found: Vec<_> = found
            .iter()
            .map(|(path, spec)| {
                (path.file_name().unwrap().to_str().unwrap(), spec.as_ref().unwrap().is_alone)
            })
            .collect();
        assert_eq!(found, [("hop.framing", false), ("a-left-over.framing", true)]);
    }

    /// The left-out files of each folder are those of its own configuration and of every one above.
    #[test]
    fn what_a_configuration_leaves_out_is_passed_over() {
        let folder = folder_with(&[
            (
                "storyrod.toml",
                "leave-out = [\"drafts/\", \"*.old.framing\", \"/a/only-here.framing\", \"!b.old.framing\"]\n",
            ),
            ("a/a.framing", ""),
            ("a/a.old.framing", ""),
            ("a/b.old.framing", ""),
            ("a/drafts/deep/c.framing", ""),
            ("a/only-here.framing", ""),
            ("job/storyrod.toml", "leave-out = [\"/only-here.framing\"]\n"),
            ("job/a/only-here.framing", ""),
            ("job/only-here.framing", ""),
            ("job/job.old.framing", ""),
        ]);
        let left_in = |below: &str| -> Vec<String> {
            let files = files_below(&folder.path().join(below), &OpenDocuments::default());
            files.iter().map(|file| name_within(&real_path(folder.path()), file)).collect()
        };
        assert_eq!(left_in(""), ["a/a.framing", "a/b.old.framing", "job/a/only-here.framing"]);
        assert_eq!(left_in("a"), ["a/a.framing", "a/b.old.framing"]);
        assert_eq!(left_in("job"), ["job/a/only-here.framing"]);
        assert_eq!(left_in("a/drafts"), [""; 0]);
        assert!(are_left_out(&folder.path().join("a/drafts")) && !are_left_out(&folder.path().join("a")));
        assert!(!are_left_out(&folder.path().join("none")));
    }

    #[test]
    fn a_part_is_read_in_the_project_that_includes_it() {
        let folder = folder_with(&[
            ("house.framing", "project \"House\"\ninclude \"parts/walls.framing\"\n"),
            ("parts/walls.framing", "wall W1\n"),
            ("other.framing", "wall W2\n"),
            ("storyrod.toml", ""),
        ]);
        let open = OpenDocuments::default();
        let with = |name: &str| specs_with(&folder.path().join(name), &open).map(|specs| names(&specs));
        assert_eq!(with("parts/walls.framing"), Ok(vec!["house.framing".to_owned()]));
        assert_eq!(with("house.framing"), Ok(vec!["house.framing".to_owned()]));
        assert_eq!(with("other.framing"), Ok(vec!["other.framing".to_owned()]));
        assert_eq!(with("none.framing"), Err(TextFault::Missing));
    }
}
