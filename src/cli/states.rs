//! The specs of two states of a folder, and which of the one is which of the other.

use std::path::{Path, PathBuf};

use crate::cli::complain;
use crate::cli::input::{Found, names_from_here, specs_of};
use crate::workspace::{Spec, real_path};

/// A spec of one state.
pub(in crate::cli) struct Kept {
    /// Its root file, counted from the folder of the state.
    pub root: PathBuf,
    /// What it reads.
    pub spec: Spec,
    /// Its files as a reader writes them.
    pub names: Vec<String>,
}

/// Two states.
#[derive(Default)]
pub(in crate::cli) struct States {
    /// The specs as they were.
    pub old: Vec<Kept>,
    /// The specs as they are.
    pub new: Vec<Kept>,
    /// The root files that have another path now, as before and as now.
    pub renamed: Vec<(PathBuf, PathBuf)>,
    /// Something could not be used, which is said then.
    pub is_unusable: bool,
}

/// A spec in both states, or in one.
pub(in crate::cli) enum Pair {
    /// As it was and as it is.
    Both(Kept, Kept),
    /// It is new.
    Came(Kept),
    /// It is gone.
    Went(Kept),
}

impl States {
    /// The specs of two files or folders.
    pub fn of_paths(old: &Path, new: &Path) -> Self {
        let mut states = Self::default();
        states.old = states.used(old);
        states.new = states.used(new);
        states
    }

    fn used(&mut self, path: &Path) -> Vec<Kept> {
        let Found { specs, unusable, .. } = specs_of(&[path.to_owned()], None);
        for unusable in &unusable {
            complain(&unusable.to_string());
        }
        self.is_unusable |= !unusable.is_empty();
        let (here, folder) = (real_path(Path::new(".")), real_path(path));
        let kept = specs.into_iter().map(|spec| {
            let root = spec.paths.first().cloned().unwrap_or_default();
            // Of a file that was named, its folder does not count: the other one stands elsewhere.
            let below = root.strip_prefix(&folder).ok().filter(|below| !below.as_os_str().is_empty());
            let root =
                below.map_or_else(|| root.file_name().map(PathBuf::from).unwrap_or_default(), Path::to_owned);
            Kept { root, names: names_from_here(&here, &spec), spec }
        });
        kept.collect()
    }

    /// Which is which: by path, by what the repository knows of renamed files, by title; the only one on each side in any
    /// case. In the order of the paths.
    pub fn pairs(self) -> Vec<Pair> {
        let Self { mut old, new, renamed, .. } = self;
        if let ([_], [_]) = (old.as_slice(), new.as_slice()) {
            return old.into_iter().zip(new).map(|(old, new)| Pair::Both(old, new)).collect();
        }
        let was = |root: &Path| renamed.iter().find(|(_, is)| is == root).map(|(was, _)| was.clone());
        let (mut pairs, mut left) = (Vec::new(), Vec::new());
        for new in new {
            let at = old.iter().position(|old| old.root == new.root);
            let at = at.or_else(|| old.iter().position(|old| Some(&old.root) == was(&new.root).as_ref()));
            match at {
                Some(at) => pairs.push(Pair::Both(old.remove(at), new)),
                None => left.push(new),
            }
        }
        for new in left {
            match old.iter().position(|old| new.title().is_some() && old.title() == new.title()) {
                Some(at) => pairs.push(Pair::Both(old.remove(at), new)),
                None => pairs.push(Pair::Came(new)),
            }
        }
        pairs.extend(old.into_iter().map(Pair::Went));
        pairs.sort_by(|one, other| one.root().cmp(other.root()));
        pairs
    }
}

impl Pair {
    fn root(&self) -> &Path {
        match self {
            Self::Both(_, kept) | Self::Came(kept) | Self::Went(kept) => &kept.root,
        }
    }

    /// Nobody wrote anything otherwise.
    pub fn is_same_text(&self) -> bool {
        let Self::Both(old, new) = self else { return false };
        let (old, new) = (&old.spec.inputs, &new.spec.inputs);
        let texts = |sources: &[crate::text::Source]| -> Vec<_> {
            sources.iter().map(|source| source.text.clone()).collect()
        };
        texts(&old.sources) == texts(&new.sources) && old.includes == new.includes
    }
}

impl Kept {
    /// The line that opens its project.
    fn title(&self) -> Option<&str> {
        let root = self.spec.inputs.sources.first()?;
        root.text.lines().find(|line| line.starts_with("project")).map(str::trim)
    }
}
