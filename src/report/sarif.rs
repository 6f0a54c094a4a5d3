//! Findings as SARIF 2.1.0, the published format by which build systems take in what analysers find.

mod places;
mod results;
mod rules;
mod shape;

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::io::{self, Write};
use std::path::Path;

use crate::report::sarif::places::{BASE, address_of, address_of_base};
use crate::report::sarif::shape::{
    Artifact, ArtifactLocation, Driver, Invocation, Location, Log, Notification, PhysicalLocation, Region,
    Run, SpecOfRun, Text, Tool,
};
pub(in crate::report) use crate::report::sarif::shape::{Level, PartOfRun, ShardOfRun};
use crate::report::summary::NOT_CHECKED;
use crate::report::{Checked, Part, STRENGTH_CAUTION, Unusable};

const SCHEMA: &str =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/// Where a run happened and where its rules are described.
#[derive(Clone, Copy, Debug)]
pub struct Around<'a> {
    /// The folder that names are relative to.
    pub here: &'a Path,
    /// The folder from which everyone who shares the specs names them; addresses are relative to it.
    pub base: &'a Path,
    /// What stands before a rule's name in the address of its page.
    pub rules_address: Option<&'a str>,
}

/// Writes all specs of a run as one log.
///
/// # Errors
/// What the stream says.
pub fn write_sarif(
    all: &[Checked<'_>],
    unusable: &[Unusable],
    around: Around<'_>,
    part: Part<'_>,
    out: &mut impl Write,
) -> io::Result<()> {
    let base = address_of_base(around.base).map(|address| (BASE, address));
    let mut n_results = Vec::new();
    let results = all.iter().flat_map(|checked| {
        let results = results::results_of(around, checked);
        n_results.push(results.len());
        results
    });
    let results = results.collect();
    let run = Run {
        tool: Tool {
            driver: Driver {
                name: "storyrod",
                semantic_version: env!("CARGO_PKG_VERSION"),
                rules: rules::descriptors(around.rules_address),
            },
        },
        invocations: [Invocation {
            execution_successful: unusable.is_empty(),
            tool_execution_notifications: notifications_of(around, all, unusable),
        }],
        original_uri_base_ids: base.into_iter().collect(),
        column_kind: "unicodeCodePoints",
        newline_sequences: ["\r\n", "\n", "\r"],
        artifacts: artifacts_of(around, all),
        results,
        properties: PartOfRun {
            changed_since: part.changed_since.map(Cow::from),
            shard: part.shard.map(|shard| ShardOfRun {
                mark: shard.into(),
                specs: all
                    .iter()
                    .zip(n_results)
                    .map(|(checked, n)| SpecOfRun::of(checked.name(), n))
                    .collect(),
                unusable: unusable.iter().map(|unusable| unusable.file.as_str().into()).collect(),
            }),
        },
    };
    serde_json::to_writer_pretty(&mut *out, &Log { schema: SCHEMA, version: "2.1.0", runs: [run] })?;
    writeln!(out)
}

/// Every file that was read, once, by its address.
fn artifacts_of(around: Around<'_>, all: &[Checked<'_>]) -> Vec<Artifact> {
    let locations = all.iter().flat_map(|checked| checked.names).map(|name| address_of(around, name));
    let files: BTreeMap<String, ArtifactLocation> =
        locations.map(|location| (location.uri.clone(), location)).collect();
    files.into_values().map(|location| Artifact { location, roles: ["analysisTarget"] }).collect()
}

/// What could not be used, and what no rule looks at.
fn notifications_of(around: Around<'_>, all: &[Checked<'_>], unusable: &[Unusable]) -> Vec<Notification> {
    let faults = unusable.iter().map(|unusable| Notification {
        level: Level::Error,
        message: Text::of(&unusable.to_string()),
        locations: location_of_fault(around, unusable).into_iter().collect(),
    });
    let cautions = [NOT_CHECKED, STRENGTH_CAUTION].into_iter().filter(|_| !all.is_empty());
    let cautions = cautions.map(|text| Notification {
        level: Level::Note,
        message: Text::of(text),
        locations: Vec::new(),
    });
    faults.chain(cautions).collect()
}

fn location_of_fault(around: Around<'_>, unusable: &Unusable) -> Option<Location> {
    if unusable.file == Unusable::STANDARD_INPUT {
        return None;
    }
    let region = unusable.place.map(|(start_line, start_column)| Region {
        start_line,
        start_column,
        end_line: None,
        end_column: None,
    });
    Some(Location {
        id: None,
        physical_location: PhysicalLocation { artifact_location: address_of(around, &unusable.file), region },
        logical_locations: Vec::new(),
        message: None,
    })
}
