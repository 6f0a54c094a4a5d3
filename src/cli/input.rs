//! Arguments to specs: files, folders, standard input.

use std::collections::HashSet;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::cli::configured;
use crate::report::{Unusable, place_in_order};
use crate::workspace::{
    self, Changes, ConfigurationFault, OpenDocuments, Spec, TextFault, name_from, real_path,
};

/// The argument that stands for standard input.
pub(in crate::cli) const STANDARD_INPUT: &str = "-";

/// The specs that some arguments lead to, and what could not be used.
#[derive(Debug, Default)]
pub(in crate::cli) struct Found {
    /// Each spec once, by the path of its root file.
    pub specs: Vec<Spec>,
    /// What could not be used.
    pub unusable: Vec<Unusable>,
    /// The commits since which changes were looked for, one for each repository.
    pub since: Vec<String>,
    /// The root files of the specs.
    roots: HashSet<PathBuf>,
}

/// The specs of the arguments.
pub(in crate::cli) fn specs_of(paths: &[PathBuf], stdin_name: Option<&Path>) -> Found {
    let mut found = Found::default();
    let is_input = |path: &&PathBuf| path.as_os_str() == STANDARD_INPUT;
    // However often it is named, there is one standard input.
    if paths.iter().any(|path| is_input(&path)) {
        found.add_standard_input(stdin_name);
    } else if let Some(name) = stdin_name {
        found.refuse(name, "`--stdin-filename` names standard input, and no `-` asks for it");
    }
    for path in paths.iter().filter(|path| !is_input(path)) {
        if path.is_dir() {
            found.add_folder(path);
        } else {
            found.add_file(path, path, &OpenDocuments::default());
        }
    }
    found.in_order()
}

/// Why a walk comes to no spec where there are some.
pub(in crate::cli) const ALL_LEFT_OUT: &str =
    "every spec in this folder or below it is left out by a `storyrod.toml`";

/// Why a walk through a folder comes to no spec.
pub(in crate::cli) fn why_none_below(folder: &Path) -> &'static str {
    match workspace::are_left_out(folder) {
        true => ALL_LEFT_OUT,
        false => "there is no spec (`*.framing`) in this folder or below it",
    }
}

/// The text of standard input, which may not be empty.
pub(in crate::cli) fn standard_input() -> Result<Arc<str>, TextFault> {
    let text = workspace::text_of_bytes(workspace::bytes_of(io::stdin().lock())?)?;
    if text.trim().is_empty() { Err(TextFault::Empty) } else { Ok(text) }
}

/// The name of each file of a spec as someone in the working folder `here` writes it.
pub(in crate::cli) fn names_from_here(here: &Path, spec: &Spec) -> Vec<String> {
    spec.paths.iter().map(|path| name_from(here, path)).collect()
}

impl Found {
    /// Adds the specs of a file or folder that a change can affect: there may be none.
    pub fn add_affected(&mut self, path: &Path, changes: &Changes) {
        if path.is_dir() {
            self.add_each(workspace::specs_affected(path, changes));
            return;
        }
        match workspace::specs_with(path, &OpenDocuments::default()) {
            Ok(specs) => {
                specs.into_iter().filter(|spec| changes.affect(spec)).for_each(|spec| self.add(spec))
            }
            Err(fault) => self.refuse(path, &fault.to_string()),
        }
    }

    /// Everything in an order in which that of the arguments does not matter: the same specs print the same bytes.
    pub fn in_order(mut self) -> Self {
        let here = real_path(Path::new("."));
        let name = |spec: &Spec| spec.paths.first().map(|root| place_in_order(&name_from(&here, root)));
        self.specs.sort_by_cached_key(name);
        self.add_configuration_faults();
        self
    }

    fn add_standard_input(&mut self, name: Option<&Path>) {
        let name = name.unwrap_or(Path::new("stdin"));
        match standard_input() {
            Ok(text) => {
                let mut open = OpenDocuments::default();
                open.open(name, text);
                self.add_file(name, name, &open);
            }
            Err(fault) => self.refuse(Path::new(Unusable::STANDARD_INPUT), &fault.to_string()),
        }
    }

    fn add_folder(&mut self, folder: &Path) {
        let specs = workspace::specs_below(folder, &OpenDocuments::default());
        if specs.is_empty() {
            self.refuse(folder, why_none_below(folder));
        }
        self.add_each(specs);
    }

    fn add_each(&mut self, specs: Vec<(PathBuf, Result<Spec, TextFault>)>) {
        for (file, spec) in specs {
            match spec {
                Ok(spec) => self.add(spec),
                Err(fault) => {
                    let here = real_path(Path::new("."));
                    self.refuse(Path::new(&name_from(&here, &file)), &fault.to_string());
                }
            }
        }
    }

    fn add_file(&mut self, name: &Path, file: &Path, open: &OpenDocuments) {
        match workspace::specs_with(file, open) {
            Ok(specs) => specs.into_iter().for_each(|spec| self.add(spec)),
            Err(fault) => self.refuse(name, &fault.to_string()),
        }
    }

    fn add(&mut self, spec: Spec) {
        if spec.paths.first().is_some_and(|root| self.roots.insert(root.clone())) {
            self.specs.push(spec);
        }
    }

    fn refuse(&mut self, name: &Path, message: &str) {
        let file = name.display().to_string();
        self.unusable.push(Unusable { file, place: None, message: message.to_owned() });
    }

    /// A faulty configuration is one input that can't be used, however many specs stand under it.
    fn add_configuration_faults(&mut self) {
        let faults: Vec<_> = self.specs.iter().flat_map(|spec| &spec.configuration_faults).cloned().collect();
        self.add_faults(&faults);
    }

    /// Adds faults of a configuration, each once.
    pub fn add_faults<'f>(&mut self, faults: impl IntoIterator<Item = &'f ConfigurationFault>) {
        for unusable in faults.into_iter().map(configured::unusable) {
            if !self.unusable.contains(&unusable) {
                self.unusable.push(unusable);
            }
        }
        self.unusable.sort_by_cached_key(|unusable| place_in_order(&unusable.file));
    }
}
