//! `--rev`: two states of one spec from the revisions of its repository.

use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

use crate::cli::complain;
use crate::cli::input::specs_of;
use crate::cli::lint::{Analysed, analysed};
use crate::syntax::value::Date;
use crate::workspace::{History, Revision, name_within};

/// The spec at `path` as it stands in the two revisions of `range`, `A..B`; `A` alone stands for `A` and the files on disk.
/// `None` when one of them can't be used, which is said then.
pub(in crate::cli) fn states(
    range: &str,
    path: &Path,
    today: Date,
) -> anyhow::Result<Option<(Analysed, Analysed)>> {
    let (old_name, new_name) = ends(range)?;
    let shown = || path.display().to_string();
    let history = History::of(path).with_context(shown)?;
    let wanted = history.within(path).with_context(shown)?;
    let old_revision = history.revision(old_name)?;
    let new_revision = new_name.map(|name| history.revision(name)).transpose()?;
    let old = State { revision: Some((old_name, &old_revision)), folder: old_revision.folder() };
    let new = match (new_name, &new_revision) {
        (Some(name), Some(revision)) => State { revision: Some((name, revision)), folder: revision.folder() },
        _ => State { revision: None, folder: history.folder() },
    };
    let renamed = || history.renamed(&old_revision, new_revision.as_ref());
    // The newer state knows best what the spec is; one that is only in the older was renamed.
    let known = if new.has(&wanted) { &new } else { &old };
    let other = if new.has(&wanted) { &old } else { &new };
    if !known.has(&wanted) {
        bail!("{}: neither {} nor {} has it", path.display(), old.name(), new.name());
    }
    let Some((spec, root)) = known.spec(&wanted, today)? else { return Ok(None) };
    let other_root = if other.has(&root) {
        root
    } else {
        let renamed = renamed()?;
        let partner = if new.has(&wanted) {
            renamed.into_iter().find(|(_, is)| *is == root).map(|(was, _)| was)
        } else {
            renamed.into_iter().find(|(was, _)| *was == root).map(|(_, is)| is)
        };
        match partner {
            Some(partner) => partner,
            None => bail!("{} has no {}, nor what it was renamed to or from", other.name(), name_of(&root)),
        }
    };
    let Some((other_spec, _)) = other.spec(&other_root, today)? else { return Ok(None) };
    let both = if new.has(&wanted) { (other_spec, spec) } else { (spec, other_spec) };
    old_revision.close()?;
    new_revision.map(Revision::close).transpose()?;
    Ok(Some(both))
}

/// The names on the two sides of a range; nothing on a side of the dots is what is checked out.
fn ends(range: &str) -> anyhow::Result<(&str, Option<&str>)> {
    if range.contains("...") {
        bail!("`{range}`: write two dots between two revisions");
    }
    let or_head = |name| if str::is_empty(name) { "HEAD" } else { name };
    Ok(match range.split_once("..") {
        Some((old, new)) => (or_head(old), Some(or_head(new))),
        None => (or_head(range), None),
    })
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

    /// The one spec that a path of the repository leads to, and the path of its root file.
    fn spec(&self, path: &Path, today: Date) -> anyhow::Result<Option<(Analysed, PathBuf)>> {
        // An empty path is the repository's own folder.
        let place: PathBuf = self.folder.join(path).components().collect();
        let found = specs_of(&[place], None);
        for unusable in &found.unusable {
            complain(&self.renamed(&unusable.to_string()));
        }
        if !found.unusable.is_empty() {
            return Ok(None);
        }
        let paths: Vec<Vec<PathBuf>> = found.specs.iter().map(|spec| spec.paths.clone()).collect();
        let [paths] = paths.as_slice() else {
            bail!("{} holds several specs: name the root file of one", self.renamed(&name_of(path)));
        };
        let mut specs = analysed(found.specs, today, 1)?.into_iter();
        let Some(spec) = specs.next() else { return Ok(None) };
        let root = paths.first().and_then(|root| root.strip_prefix(self.folder).ok());
        let Some(root) = root.map(Path::to_owned) else {
            bail!("{}: its root file lies outside the repository", name_of(path));
        };
        Ok(Some(match self.revision {
            Some((name, revision)) => {
                (spec.with_names(paths.iter().map(|path| revision.named(name, path)).collect()), root)
            }
            None => (spec, root),
        }))
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
    use super::ends;

    #[test]
    fn a_range_has_two_ends_and_a_revision_one() {
        assert_eq!(ends("v1..v2").unwrap(), ("v1", Some("v2")));
        assert_eq!(ends("v1..").unwrap(), ("v1", Some("HEAD")));
        assert_eq!(ends("..topic").unwrap(), ("HEAD", Some("topic")));
        assert_eq!(ends("HEAD~3").unwrap(), ("HEAD~3", None));
        assert!(ends("v1...v2").is_err());
    }
}
