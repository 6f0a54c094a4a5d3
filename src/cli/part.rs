//! `lint --changed-since` and `--shard`: which part of the specs a run looks at.

use std::collections::BTreeSet;
use std::fs;
use std::hash::Hasher;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use clap::Args;
use fnv::FnvHasher;

use crate::cli::input::{Found, STANDARD_INPUT, specs_of};
use crate::diagnostic::Severity;
use crate::report::{Part, Shard};
use crate::syntax::value::Date;
use crate::workspace::{
    CONFIGURATION_NAME, Changes, Configuration, History, common_folder, name_within, real_path,
};

/// More machines than any run has: a larger number is a mistake.
const MOST_SHARDS: u32 = 10_000;

#[derive(Debug, Args)]
pub(in crate::cli) struct PartArguments {
    /// Look only at specs that can be affected by what changed since REVISION, a commit, branch or tag of the git
    /// repository: since the last commit that it and what is checked out have in common, so that a branch answers for
    /// its own changes. The files on disk count, committed or not, without those that git ignores. A baseline that
    /// changed affects every spec
    #[arg(long, value_name = "REVISION", conflicts_with = "stdin_filename")]
    changed_since: Option<String>,
    /// Look only at the K-th of N parts of the specs, so that several machines share the work: a spec's part depends on
    /// its name within the repository and on N. `storyrod gather` makes one result of all shards' json, sarif or junit;
    /// in the other formats each stands for itself
    #[arg(long, value_name = "K/N", value_parser = which_of, conflicts_with = "stdin_filename", conflicts_with = "update_baseline")]
    shard: Option<Which>,
}

/// One of so many, counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::cli) struct Which {
    number: u32,
    count: u32,
}

impl PartArguments {
    /// The part, for whoever reads the results; `asked` is of [`mark_of_asked`].
    pub fn part(&self, today: Date, fail_on: Severity, asked: u64) -> Part<'_> {
        let shard = self.shard.map(|Which { number, count }| Shard { number, count, today, fail_on, asked });
        Part { changed_since: self.changed_since.as_deref(), shard }
    }

    /// The specs of this part that the paths lead to. What can't be used falls to a shard as a spec of its name does: it
    /// is told once. `baseline` is the file of known findings: when it changed, every spec is affected.
    ///
    /// # Errors
    /// A path lies in no repository, or in one that does not know the revision.
    pub fn specs_of(
        &self,
        paths: &[PathBuf],
        stdin_name: Option<&Path>,
        baseline: Option<&Path>,
    ) -> anyhow::Result<Found> {
        if self.is_narrowed() && paths.iter().any(|path| path.as_os_str() == STANDARD_INPUT) {
            bail!("`--changed-since` and `--shard` choose among files on disk: standard input is none");
        }
        let mut found = match &self.changed_since {
            Some(revision) => affected(paths, revision, baseline)?,
            None => specs_of(paths, stdin_name),
        };
        if self.shard.is_some() {
            found.specs.retain(|spec| spec.paths.first().is_some_and(|root| self.has(root)));
            found.unusable.retain(|unusable| self.has(Path::new(&unusable.file)));
        }
        Ok(found)
    }

    /// True when it is not the whole.
    pub fn is_narrowed(&self) -> bool {
        self.changed_since.is_some() || self.shard.is_some()
    }

    /// True when a file falls to the shard.
    pub fn has(&self, file: &Path) -> bool {
        self.shard.is_none_or(|which| {
            let folder = common_folder(&real_path(Path::new(".")));
            which.has(&name_within(&folder, &real_path(file)))
        })
    }
}

fn affected(paths: &[PathBuf], revision: &str, baseline: Option<&Path>) -> anyhow::Result<Found> {
    let mut found = Found::default();
    let mut known: Vec<Changes> = Vec::new();
    for path in paths {
        let history = History::of(path).with_context(|| path.display().to_string())?;
        if !known.iter().any(|changes| changes.are_of(&history)) {
            let mut changes = history.changes_since(revision)?;
            if baseline.is_some_and(|file| changes.have(file)) {
                changes.affect_everything();
            }
            found.since.push(changes.since.clone());
            known.push(changes);
        }
        if let Some(changes) = known.iter().find(|changes| changes.are_of(&history)) {
            found.add_affected(path, changes);
        }
    }
    Ok(found.in_order())
}

/// One number for what a run was asked besides its day and level: the paths, what `storyrod.toml` and the baseline say,
/// and the commits since which changes were looked for. It is the same on every machine with the same files.
pub(in crate::cli) fn mark_of_asked(
    paths: &[PathBuf],
    configuration: &Configuration,
    baseline: Option<&Path>,
    since: &[String],
) -> u64 {
    let folder = common_folder(&real_path(Path::new(".")));
    let names: BTreeSet<String> = paths.iter().map(|path| name_within(&folder, &real_path(path))).collect();
    let configured = fs::read(configuration.folder.join(CONFIGURATION_NAME)).unwrap_or_default();
    // What can't be read is told elsewhere.
    let known = baseline.and_then(|file| fs::read(file).ok()).unwrap_or_default();
    let names = names.iter().map(String::as_bytes);
    let since = since.iter().map(String::as_bytes);
    // Published and the same on every machine, unlike the hasher of the standard library.
    let mut hasher = FnvHasher::default();
    for part in names.chain([&*configured, &*known]).chain(since) {
        hasher.write(part);
        hasher.write_u8(0);
    }
    hasher.finish()
}

impl Which {
    /// True for the names that are its own; every name is one shard's.
    fn has(self, name: &str) -> bool {
        // Published and the same on every machine, unlike the hasher of the standard library.
        let mut hasher = FnvHasher::default();
        hasher.write(name.as_bytes());
        // Its low bits alone know little of a name: of `job-1` and `job-3` the lowest is the same.
        let spread = hasher.finish() ^ (hasher.finish() >> 32);
        spread % u64::from(self.count) == u64::from(self.number - 1)
    }
}

fn which_of(written: &str) -> Result<Which, String> {
    let parts = written.split_once('/');
    let numbers = parts.and_then(|(number, count)| Some((number.parse().ok()?, count.parse().ok()?)));
    match numbers {
        None => Err("which of how many is wanted, as 1/4".to_owned()),
        Some((_, count)) if count > MOST_SHARDS => Err(format!("there are at most {MOST_SHARDS} shards")),
        Some((_, 0)) => Err("there is at least one shard".to_owned()),
        Some((0, count)) => Err(format!("shards are counted from 1: the first is 1/{count}")),
        Some((number, count)) if number > count => {
            Err(format!("there is no shard {number} of {count}: the last is {count}/{count}"))
        }
        Some((number, count)) => Ok(Which { number, count }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sizes(names: &[String], count: u32) -> Vec<usize> {
        let size = |number| names.iter().filter(|name| Which { number, count }.has(name)).count();
        (1..=count).map(size).collect()
    }

    /// Of 1,000 names in 8 shards chance puts 125 ± 10 into each (the square root of 1,000 × 1/8 × 7/8): none is to be
    /// off by more than three times that.
    #[test]
    fn shards_are_about_as_large_as_each_other() {
        let schemes: [fn(u32) -> String; 4] = [
            |n| format!("job-{n:04}/house.framing"),
            |n| format!("{n}.framing"),
            |n| format!("jobs/{}/{}/house.framing", 2000 + n / 100, n % 100),
            |n| format!("{}/{}.framing", ["north", "south", "east", "west"][n as usize % 4], n / 4 * 2),
        ];
        for scheme in schemes {
            let names: Vec<_> = (0..1000).map(scheme).collect();
            for count in [1, 2, 3, 4, 5, 8, 16] {
                let sizes = sizes(&names, count);
                assert_eq!(sizes.iter().sum::<usize>(), 1000);
                let share = 1000.0 / f64::from(count);
                let spread = (share * (1.0 - 1.0 / f64::from(count))).sqrt();
                for size in &sizes {
                    let off = (*size as f64 - share).abs();
                    assert!(off <= 3.0 * spread, "{}: {sizes:?} of {count}", names[0]);
                }
            }
        }
    }

    #[test]
    fn a_shard_is_written_as_which_of_how_many() {
        assert_eq!(which_of("1/4"), Ok(Which { number: 1, count: 4 }));
        assert_eq!(which_of("4/4"), Ok(Which { number: 4, count: 4 }));
        for (written, why) in [
            ("0/4", "shards are counted from 1: the first is 1/4"),
            ("5/4", "there is no shard 5 of 4: the last is 4/4"),
            ("1/10001", "there are at most 10000 shards"),
            ("1/4294967296", "which of how many is wanted, as 1/4"),
            ("1/0", "there is at least one shard"),
            ("x", "which of how many is wanted, as 1/4"),
            ("1", "which of how many is wanted, as 1/4"),
            ("1/4/2", "which of how many is wanted, as 1/4"),
            ("-1/4", "which of how many is wanted, as 1/4"),
        ] {
            assert_eq!(which_of(written), Err(why.to_owned()), "{written}");
        }
    }
}
