//! Results as SARIF. Which results are those of a spec stands in the properties of the shard's run.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::io::{self, Write};
use std::mem;

use serde::de::IgnoredAny;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::diagnostic::Severity;
use crate::report::gather::{GatherFault, Gathered, Mark, Misread, each_read};
use crate::report::order::place_in_order;
use crate::report::sarif::{Level, PartOfRun, ShardOfRun};

#[derive(Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
struct Log<'a> {
    #[serde(rename = "$schema", borrow)]
    schema: &'a RawValue,
    #[serde(borrow)]
    version: &'a RawValue,
    #[serde(borrow)]
    runs: [Run<'a>; 1],
}

#[derive(Deserialize, Serialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct Run<'a> {
    #[serde(borrow)]
    tool: &'a RawValue,
    #[serde(borrow)]
    invocations: [Invocation<'a>; 1],
    #[serde(borrow)]
    original_uri_base_ids: &'a RawValue,
    #[serde(borrow)]
    column_kind: &'a RawValue,
    #[serde(borrow)]
    newline_sequences: &'a RawValue,
    #[serde(borrow)]
    artifacts: Vec<&'a RawValue>,
    #[serde(borrow)]
    results: Vec<&'a RawValue>,
    #[serde(borrow, default, skip_serializing_if = "PartOfRun::is_whole")]
    properties: PartOfRun<'a>,
}

#[derive(Deserialize, Serialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct Invocation<'a> {
    execution_successful: bool,
    #[serde(borrow)]
    tool_execution_notifications: Vec<&'a RawValue>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Tool<'a> {
    #[serde(borrow)]
    driver: Driver<'a>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Driver<'a> {
    #[serde(borrow)]
    semantic_version: Cow<'a, str>,
}

/// What counts in a result.
#[derive(Deserialize)]
struct Outcome {
    level: Level,
    suppressions: Vec<IgnoredAny>,
}

#[derive(Deserialize)]
struct Artifact {
    location: Location,
}

#[derive(Deserialize)]
struct Location {
    uri: String,
}

/// The log of a shard: its results and files as they are written, behind what counts in them.
pub(super) struct Body<'a> {
    log: Log<'a>,
    shard: ShardOfRun<'a>,
    results: Vec<(Outcome, &'a RawValue)>,
    artifacts: Vec<(Artifact, &'a RawValue)>,
}

pub(super) fn read(text: &str) -> Result<(Mark<'_>, Body<'_>), Misread> {
    let mut log: Log<'_> = serde_json::from_str(text)?;
    let [run] = &mut log.runs;
    let tool: Tool<'_> = serde_json::from_str(run.tool.get())?;
    let shard = run.properties.shard.take().ok_or(Misread::Whole)?;
    let n_told: usize = shard.specs.iter().map(|spec| spec.results).sum();
    if n_told != run.results.len() {
        let n_results = run.results.len();
        return Err(Misread::Damaged(format!("it tells of {n_told} results and has {n_results}")));
    }
    let mark = Mark {
        version: tool.driver.semantic_version,
        changed_since: run.properties.changed_since.clone(),
        shard: shard.mark.clone(),
    };
    let results = each_read(mem::take(&mut run.results))?;
    let artifacts = each_read(mem::take(&mut run.artifacts))?;
    Ok((mark, Body { log, shard, results, artifacts }))
}

pub(super) fn write(
    bodies: Vec<Body<'_>>,
    level: Severity,
    out: &mut impl Write,
) -> Result<Gathered, GatherFault> {
    let least = Level::from(level);
    let (mut specs, mut faults, mut cautions) = (Vec::new(), Vec::new(), Vec::new());
    let mut artifacts = BTreeMap::new();
    let mut whole = None;
    let mut is_found = false;
    for Body { mut log, shard, results, artifacts: files } in bodies {
        is_found |= results.iter().any(|(it, _)| it.suppressions.is_empty() && it.level >= least);
        artifacts.extend(files.into_iter().map(|(file, raw)| (file.location.uri, raw)));
        let mut results = results.into_iter().map(|(_, raw)| raw);
        for spec in &shard.specs {
            specs.push((place_in_order(&spec.file), results.by_ref().take(spec.results).collect::<Vec<_>>()));
        }
        let [Run { invocations: [invocation], .. }] = &mut log.runs;
        let mut told = mem::take(&mut invocation.tool_execution_notifications).into_iter();
        faults.extend(shard.unusable.iter().map(|file| place_in_order(file)).zip(told.by_ref()));
        // They are the same wherever a spec was looked at.
        if cautions.is_empty() {
            cautions = told.collect();
        }
        whole.get_or_insert(log);
    }
    let Some(mut whole) = whole else { return Err(GatherFault::Nothing) };
    specs.sort_by(|(one, _), (other, _)| one.cmp(other));
    faults.sort_by(|(one, _), (other, _)| one.cmp(other));
    let n_unusable = faults.len();
    let [run] = &mut whole.runs;
    run.results = specs.into_iter().flat_map(|(_, results)| results).collect();
    run.artifacts = artifacts.into_values().collect();
    run.invocations = [Invocation {
        execution_successful: n_unusable == 0,
        tool_execution_notifications: faults.into_iter().map(|(_, raw)| raw).chain(cautions).collect(),
    }];
    serde_json::to_writer_pretty(&mut *out, &whole).map_err(io::Error::from)?;
    writeln!(out)?;
    Ok(Gathered { is_found, n_unusable })
}
