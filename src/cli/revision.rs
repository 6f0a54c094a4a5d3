//! `--rev`: two states of the specs of a repository, from its revisions.

use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

use crate::cli::complain;
use crate::cli::input::{Found, names_from_here, specs_of};
use crate::cli::states::{Kept, States};
use crate::workspace::{History, Revision, name_within, real_path};

/// The specs at `path` as they stand in the two revisions of `range`, `A..B`; `A` alone stands for `A` and the files on disk.
/// A spec that lies elsewhere in the other revision is followed there.
pub(in crate::cli) fn states(range: &str, path: &Path) -> anyhow::Result<States> {
    let ends = ends(range)?;
    let shown = || path.display().to_string();
    let history = History::of(path).with_context(shown)?;
    let wanted = history.within(path).with_context(shown)?;
    let old_name = match ends.is_since_fork {
        true => history.fork(ends.old, ends.new.unwrap_or("HEAD"))?,
        false => ends.old.to_owned(),
    };
    let old_revision = history.revision(&old_name, &wanted)?;
    let new_revision = ends.new.map(|name| history.revision(name, &wanted)).transpose()?;
    let old = State { revision: Some((&old_name, &old_revision)), folder: old_revision.folder() };
    let new = match (ends.new, &new_revision) {
        (Some(name), Some(revision)) => State { revision: Some((name, revision)), folder: revision.folder() },
        _ => State { revision: None, folder: history.folder() },
    };
    if !old.has(&wanted) && !new.has(&wanted) {
        bail!("{}: neither {} nor {} has it", path.display(), old.name(), new.name());
    }
    let mut states = States::default();
    states.old = old.specs(&wanted, &mut states.is_unusable)?;
    states.new = new.specs(&wanted, &mut states.is_unusable)?;
    if states.old.is_empty() && states.new.is_empty() && !states.is_unusable {
        bail!(
            "{}: there is no spec (`*.framing`) in it, neither in {} nor in {}",
            path.display(),
            old.name(),
            new.name()
        );
    }
    let is_partnered = states.old.len() == states.new.len()
        && states.old.iter().all(|old| states.new.iter().any(|new| new.root == old.root));
    if !is_partnered {
        states.renamed = history.renamed(&old_revision, new_revision.as_ref())?;
        follow(&mut states, &old, &new)?;
    }
    old_revision.close()?;
    new_revision.map(Revision::close).transpose()?;
    Ok(states)
}

/// Adds the partner of each spec that stands elsewhere in the other revision: behind a new name, or outside of what was
/// asked for.
fn follow(states: &mut States, old: &State<'_>, new: &State<'_>) -> anyhow::Result<()> {
    let renamed = states.renamed.clone();
    let was = |is: &Path| renamed.iter().find(|(_, to)| to == is).map(|(from, _)| from.clone());
    let is = |was: &Path| renamed.iter().find(|(from, _)| from == was).map(|(_, to)| to.clone());
    let olds = elsewhere(&states.new, &states.old, old, was);
    let news = elsewhere(&states.old, &states.new, new, is);
    for root in olds {
        states.old.extend(old.specs(&root, &mut states.is_unusable)?);
    }
    for root in news {
        states.new.extend(new.specs(&root, &mut states.is_unusable)?);
    }
    Ok(())
}

/// The root files in the other state of those specs that have no partner among the others yet.
fn elsewhere(
    specs: &[Kept],
    others: &[Kept],
    other: &State<'_>,
    renamed: impl Fn(&Path) -> Option<PathBuf>,
) -> Vec<PathBuf> {
    let is_there = |root: &Path| others.iter().any(|kept| kept.root == root);
    let roots = specs.iter().map(|kept| &kept.root).filter(|root| !is_there(root));
    let partners = roots.filter_map(|root| if other.has(root) { Some(root.clone()) } else { renamed(root) });
    partners.filter(|root| !is_there(root)).collect()
}

/// The two sides of a range.
#[derive(Debug, PartialEq, Eq)]
struct Ends<'r> {
    old: &'r str,
    /// `None` for the files on disk.
    new: Option<&'r str>,
    /// What the newer one changed since both parted.
    is_since_fork: bool,
}

/// The names on the two sides of a range; nothing on a side of the dots is what is checked out.
fn ends(range: &str) -> anyhow::Result<Ends<'_>> {
    let or_head = |name| if str::is_empty(name) { "HEAD" } else { name };
    let (old, new, is_since_fork) = match (range.split_once("..."), range.split_once("..")) {
        (Some((old, new)), _) => (old, Some(or_head(new)), true),
        (None, Some((old, new))) => (old, Some(or_head(new)), false),
        (None, None) => (range, None, false),
    };
    if new.is_some_and(|new| new.starts_with('.')) {
        bail!("`{range}`: write two dots between two revisions, or three");
    }
    Ok(Ends { old: or_head(old), new, is_since_fork })
}

/// A moment of the repository: a revision, or the files on disk.
struct State<'r> {
    revision: Option<(&'r str, &'r Revision<'r>)>,
    folder: &'r Path,
}

impl State<'_> {
    fn has(&self, path: &Path) -> bool {
        self.folder.join(path).exists()
    }

    fn name(&self) -> String {
        self.revision.map_or("the files on disk".to_owned(), |(name, _)| format!("revision `{name}`"))
    }

    /// The specs that a path of the repository leads to; none where there is no such path, and none in a folder without
    /// specs.
    fn specs(&self, path: &Path, is_unusable: &mut bool) -> anyhow::Result<Vec<Kept>> {
        if !self.has(path) {
            return Ok(Vec::new());
        }
        // An empty path is the repository's own folder.
        let place: PathBuf = self.folder.join(path).components().collect();
        if place.is_dir() && crate::workspace::files_below(&place, &Default::default()).is_empty() {
            return Ok(Vec::new());
        }
        let Found { specs, unusable, .. } = specs_of(&[place], None);
        for unusable in &unusable {
            complain(&self.renamed(&unusable.to_string()));
        }
        *is_unusable |= !unusable.is_empty();
        if let Some((name, revision)) = self.revision {
            for path in specs.iter().flat_map(|spec| &spec.unread) {
                if let Some(why) = revision.why_lost(path) {
                    complain(&format!("{}: can't be read: {why}", revision.named(name, path)));
                    *is_unusable = true;
                }
            }
        }
        let here = real_path(Path::new("."));
        let kept = specs.into_iter().map(|spec| {
            let root = spec.paths.first().and_then(|root| root.strip_prefix(self.folder).ok());
            let Some(root) = root.map(Path::to_owned) else {
                bail!("{}: its root file lies outside the repository", name_of(path));
            };
            let names = match self.revision {
                Some((name, revision)) => spec.paths.iter().map(|path| revision.named(name, path)).collect(),
                None => names_from_here(&here, &spec),
            };
            Ok(Kept { root, spec, names })
        });
        kept.collect()
    }

    /// A message with the names that a reader knows.
    fn renamed(&self, message: &str) -> String {
        match self.revision {
            Some((name, _)) => {
                let folder = self.folder.display().to_string();
                message.replace(&format!("{folder}/"), &format!("{name}:")).replace(&folder, name)
            }
            None => message.to_owned(),
        }
    }
}

fn name_of(path: &Path) -> String {
    let name = name_within(Path::new(""), path);
    if name.is_empty() { ".".to_owned() } else { name }
}

#[cfg(test)]
mod tests {
    use super::{Ends, ends};

    #[test]
    fn a_range_has_two_ends_and_a_revision_one() {
        let of = |old, new, is_since_fork| Ends { old, new, is_since_fork };
        assert_eq!(ends("v1..v2").unwrap(), of("v1", Some("v2"), false));
        assert_eq!(ends("v1..").unwrap(), of("v1", Some("HEAD"), false));
        assert_eq!(ends("..topic").unwrap(), of("HEAD", Some("topic"), false));
        assert_eq!(ends("main...").unwrap(), of("main", Some("HEAD"), true));
        assert_eq!(ends("HEAD~3").unwrap(), of("HEAD~3", None, false));
        assert!(ends("v1....v2").is_err());
    }
}
