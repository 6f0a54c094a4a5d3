//! `lint --baseline`: what was found before a team began to look is known, and only what is new counts.
//!
//! A finding is known by what its SARIF fingerprint is made of. Where several share that, each is known by its message
//! too, so that one that is mended makes no room for another. One finding about several elements stays known for those
//! that are left when some of them are mended.

use std::collections::HashMap;
use std::fs;
use std::io::ErrorKind;
use std::mem;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use clap::Args;
use serde::{Deserialize, Serialize};

use crate::cli::complain;
use crate::cli::lint::Analysed;
use crate::cli::part::PartArguments;
use crate::diagnostic::Diagnostic;
use crate::report::{counted, is_part_of, known_as, printable};
use crate::rules;
use crate::workspace::{CONFIGURATION_NAME, Configuration, common_folder, name_from, name_within, real_path};

#[derive(Debug, Args)]
pub(in crate::cli) struct BaselineArguments {
    /// Leave out what this file holds: only new findings are shown and count [default: `baseline` in
    /// storyrod.toml]
    #[arg(long, value_name = "FILE")]
    baseline: Option<PathBuf>,
    /// Write the baseline when there is none; else take out of it what is mended, and nothing in
    #[arg(long)]
    update_baseline: bool,
}

/// The file.
#[derive(Debug, Default, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
struct Baseline {
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    known: Vec<Known>,
}

/// A finding that was there.
#[derive(Clone, Debug, Deserialize, Serialize, PartialEq, Eq, PartialOrd, Ord)]
#[serde(deny_unknown_fields)]
struct Known {
    /// The root file of its spec, from the folder of the run's storyrod.toml; without one from that of the repository,
    /// else from the working folder.
    spec: String,
    rule: String,
    element: String,
    /// What it said, for a reader; it counts where several have the same key.
    message: String,
    key: String,
}

const HEAD: &str = "# What `storyrod lint --baseline` leaves out: found before, and to be mended one by one.\n\
                    # `--update-baseline` takes out what is mended. Nothing that means danger belongs here.\n";

impl BaselineArguments {
    /// The file, as a person in the working folder writes it.
    pub fn file(&self, configuration: &Configuration) -> Option<PathBuf> {
        let configured = || Some(Names::of(configuration).seen_from_here(configuration.baseline.as_ref()?));
        self.baseline.clone().or_else(configured)
    }

    /// Takes what the baseline holds out of the findings, and says what it did on standard error.
    ///
    /// # Errors
    /// The file can't be read or written, or there is none to be updated.
    pub fn leave_out_known(
        &self,
        configuration: &Configuration,
        analysed: &mut [Analysed],
        part: &PartArguments,
    ) -> anyhow::Result<()> {
        let names = Names::of(configuration);
        let Some(file) = &self.file(configuration) else {
            if self.update_baseline {
                bail!("`--update-baseline` needs `--baseline FILE`, or `baseline` in {CONFIGURATION_NAME}");
            }
            return Ok(());
        };
        let shown = file.display();
        let baseline = match read(file)? {
            Some(baseline) => baseline,
            None if self.update_baseline && part.is_narrowed() => {
                bail!("{shown}: a baseline begins with all specs: write it without `--changed-since`")
            }
            None if self.update_baseline => {
                if let Some(name) = names.first_outside(analysed) {
                    bail!(
                        "{shown}: it would name `{}` by its whole path, which no other machine has: run it in a folder \
                         above all specs, or put a {CONFIGURATION_NAME} there",
                        printable(&name)
                    );
                }
                Baseline { known: analysed.iter().flat_map(|spec| known_in(spec, &names)).collect() }
            }
            None => bail!("{shown}: there is no such file; `--update-baseline` writes it"),
        };
        if let Some(known) = baseline.known.iter().find(|known| !may_be_known(&known.rule)) {
            bail!("{shown}: `{}` can't be left out: mend it, or waive it with a reason", known.rule);
        }
        let mut known = baseline.known;
        // Each is told of by the shard that looks at its spec.
        known.retain(|known| part.has(&names.folder.join(&known.spec)));
        let Split { stale, shrunk, kept } = split(known, analysed, &names);
        let n_left_out: usize =
            analysed.iter_mut().map(|spec| leave_out(spec, &names.of_spec(spec), &kept)).sum();
        if self.update_baseline {
            write(file, kept)?;
        }
        complain(&format!("{} in {shown}: left out", counted(n_left_out, "known finding")));
        let update = self.update_baseline;
        let mended =
            if update { "mended, and taken out" } else { "mended; `--update-baseline` takes it out" };
        let in_part = match update {
            true => "mended in part: what is left was written",
            false => "mended in part; `--update-baseline` writes what is left",
        };
        let stale = stale.iter().map(|known| (mended, known));
        for (what, known) in stale.chain(shrunk.iter().map(|known| (in_part, known))) {
            let Known { spec, rule, message, .. } = known;
            complain(&format!("advice: {what}: {}: {} [{rule}]", printable(spec), printable(message)));
        }
        Ok(())
    }
}

/// How a baseline names specs: the same, wherever below the configuration or in the repository one runs.
struct Names {
    /// The working folder.
    here: PathBuf,
    /// The folder that names are relative to.
    folder: PathBuf,
}

impl Names {
    fn of(configuration: &Configuration) -> Self {
        let here = real_path(Path::new("."));
        let is_configured = !configuration.folder.as_os_str().is_empty();
        let folder = if is_configured { configuration.folder.clone() } else { common_folder(&here) };
        Self { here, folder }
    }

    fn of_spec(&self, analysed: &Analysed) -> String {
        name_within(&self.folder, &real_path(&self.here.join(analysed.checked().name())))
    }

    /// The first spec with something that may be known and no name within the folder.
    fn first_outside(&self, analysed: &[Analysed]) -> Option<String> {
        let is_outside = |known: &Known| Path::new(&known.spec).is_absolute();
        let known = analysed.iter().flat_map(|spec| known_in(spec, self));
        known.filter(is_outside).map(|known| known.spec).next()
    }

    /// A path as a person in the working folder writes it.
    fn seen_from_here(&self, path: &Path) -> PathBuf {
        PathBuf::from(name_from(&self.here, &real_path(path)))
    }
}

fn read(file: &Path) -> anyhow::Result<Option<Baseline>> {
    let name = || file.display().to_string();
    match fs::read_to_string(file) {
        Ok(text) => Ok(Some(toml::from_str(&text).with_context(name)?)),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
        Err(error) => Err(error).with_context(name),
    }
}

fn write(file: &Path, mut known: Vec<Known>) -> anyhow::Result<()> {
    known.sort();
    let text = HEAD.to_owned() + "\n" + &toml::to_string(&Baseline { known })?;
    fs::write(file, text.trim_end().to_owned() + "\n").with_context(|| file.display().to_string())
}

/// A rule that silence may befall: what means danger, and what is wrong with the text itself, is always said.
fn may_be_known(rule: &str) -> bool {
    rules::rule_named(rule).is_some_and(|rule| !rule.is_danger)
}

fn known_of(spec: &str, finding: &Diagnostic) -> Option<Known> {
    // What no waiver could silence is wrong with the text.
    let is_eligible = may_be_known(finding.rule) && finding.waiver.is_some();
    is_eligible.then(|| Known {
        spec: spec.to_owned(),
        rule: finding.rule.to_owned(),
        element: finding.subject.clone(),
        message: finding.message.clone(),
        key: known_as(spec, finding),
    })
}

fn known_in(analysed: &Analysed, names: &Names) -> Vec<Known> {
    let (checked, name) = (analysed.checked(), names.of_spec(analysed));
    let all = checked.findings.iter().flat_map(Diagnostic::with_consequences);
    all.filter_map(|finding| known_of(&name, finding)).collect()
}

/// What became of the entries.
#[derive(Default)]
struct Split {
    /// Nothing answers to them any more.
    stale: Vec<Known>,
    /// Only a part of them is left.
    shrunk: Vec<Known>,
    /// What is known of what was found, with the messages of today.
    kept: Vec<Known>,
}

/// Holds the entries against what was found. A spec that was not looked at keeps its entries, unless its file is gone.
fn split(known: Vec<Known>, analysed: &[Analysed], names: &Names) -> Split {
    let mut split = Split::default();
    let mut entries: HashMap<String, Vec<Known>> = HashMap::new();
    let looked_at: Vec<String> = analysed.iter().map(|spec| names.of_spec(spec)).collect();
    for known in known {
        match looked_at.contains(&known.spec) {
            true => entries.entry(known.key.clone()).or_default().push(known),
            false if names.folder.join(&known.spec).exists() => split.kept.push(known),
            false => split.stale.push(known),
        }
    }
    let mut found: HashMap<String, Vec<Known>> = HashMap::new();
    for known in analysed.iter().flat_map(|spec| known_in(spec, names)) {
        found.entry(known.key.clone()).or_default().push(known);
    }
    let mut unanswered: Vec<Known> = Vec::new();
    for (key, mut before) in entries {
        match (before.as_slice(), found.get_mut(&key)) {
            // The only one of its kind may have other figures.
            ([_], Some(now)) if now.len() == 1 => split.kept.append(now),
            (_, now) => {
                for one in now.map(mem::take).unwrap_or_default() {
                    if let Some(at) = before.iter().position(|known| known.message == one.message) {
                        split.kept.push(before.swap_remove(at));
                    }
                }
                unanswered.append(&mut before);
            }
        }
    }
    unanswered.sort();
    // Of a kind that no entry has: of two alike one is more than was known.
    let mut alone: Vec<Known> = found.into_values().filter(|now| now.len() == 1).flatten().collect();
    for entry in unanswered {
        let is_part = |now: &Known| {
            now.spec == entry.spec
                && now.rule == entry.rule
                && is_part_of([&now.element, &now.message], [&entry.element, &entry.message])
        };
        let parts: Vec<Known> = alone.extract_if(.., |now| is_part(now)).collect();
        match parts.is_empty() {
            true => split.stale.push(entry),
            false => split.shrunk.push(entry),
        }
        split.kept.extend(parts);
    }
    split.stale.sort();
    split.shrunk.sort();
    split
}

/// Takes the kept entries' findings out of a spec: how many. What follows from one of them and is new stands by itself then.
fn leave_out(analysed: &mut Analysed, name: &str, kept: &[Known]) -> usize {
    let mut left: Vec<&Known> = kept.iter().filter(|known| known.spec == name).collect();
    let n_before = left.len();
    let findings = mem::take(&mut analysed.snapshot.findings);
    analysed.snapshot.findings = new_of(name, findings, &mut left);
    analysed.n_known = n_before - left.len();
    analysed.n_known
}

fn new_of(spec: &str, findings: Vec<Diagnostic>, left: &mut Vec<&Known>) -> Vec<Diagnostic> {
    let mut new = Vec::new();
    for mut finding in findings {
        let known = known_of(spec, &finding);
        let at = known
            .and_then(|known| left.iter().position(|it| it.key == known.key && it.message == known.message));
        let is_known = at.map(|at| left.swap_remove(at)).is_some();
        let consequences = new_of(spec, mem::take(&mut finding.consequences), left);
        match is_known {
            true => new.extend(consequences),
            false => new.push(Diagnostic { consequences, ..finding }),
        }
    }
    new
}
