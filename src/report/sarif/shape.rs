//! The parts of SARIF 2.1.0 that are written, named as the standard names them.

use std::borrow::Cow;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::diagnostic::Severity;
use crate::report::gather::ShardMark;

#[derive(Serialize)]
pub(super) struct Log<'a> {
    #[serde(rename = "$schema")]
    pub schema: &'static str,
    pub version: &'static str,
    pub runs: [Run<'a>; 1],
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Run<'a> {
    pub tool: Tool,
    pub invocations: [Invocation; 1],
    pub original_uri_base_ids: BTreeMap<&'static str, ArtifactLocation>,
    pub column_kind: &'static str,
    pub newline_sequences: [&'static str; 3],
    pub artifacts: Vec<Artifact>,
    pub results: Vec<Outcome<'a>>,
    #[serde(skip_serializing_if = "PartOfRun::is_whole")]
    pub properties: PartOfRun<'a>,
}

/// What the standard has no words for: which part of the specs a run looked at.
#[derive(Default, Deserialize, Serialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub(in crate::report) struct PartOfRun<'a> {
    #[serde(borrow, default, skip_serializing_if = "Option::is_none")]
    pub changed_since: Option<Cow<'a, str>>,
    #[serde(borrow, default, skip_serializing_if = "Option::is_none")]
    pub shard: Option<ShardOfRun<'a>>,
}

/// A shard, with the root file of each spec in the order of the results, and of each input that could not be used.
#[derive(Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(in crate::report) struct ShardOfRun<'a> {
    #[serde(borrow)]
    pub mark: ShardMark<'a>,
    #[serde(borrow)]
    pub specs: Vec<SpecOfRun<'a>>,
    #[serde(borrow)]
    pub unusable: Vec<Cow<'a, str>>,
}

#[derive(Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(in crate::report) struct SpecOfRun<'a> {
    #[serde(borrow)]
    pub file: Cow<'a, str>,
    /// How many results are its.
    pub results: usize,
}

#[derive(Serialize)]
pub(super) struct Tool {
    pub driver: Driver,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Driver {
    pub name: &'static str,
    pub semantic_version: &'static str,
    pub rules: Vec<RuleDescriptor>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct RuleDescriptor {
    pub id: &'static str,
    pub short_description: Text,
    pub full_description: Text,
    pub help: Text,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub help_uri: Option<String>,
    pub default_configuration: Configuration,
    pub properties: Tags,
}

#[derive(Serialize)]
pub(super) struct Configuration {
    pub level: Level,
}

#[derive(Serialize)]
pub(super) struct Tags {
    pub tags: Vec<&'static str>,
}

#[derive(Clone, Serialize)]
pub(super) struct Text {
    pub text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub markdown: Option<String>,
}

/// The least first.
#[derive(Clone, Copy, Deserialize, Serialize, PartialEq, Eq, PartialOrd, Ord)]
#[serde(rename_all = "lowercase")]
pub(in crate::report) enum Level {
    Note,
    Warning,
    Error,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Invocation {
    pub execution_successful: bool,
    pub tool_execution_notifications: Vec<Notification>,
}

#[derive(Serialize)]
pub(super) struct Notification {
    pub level: Level,
    pub message: Text,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub locations: Vec<Location>,
}

#[derive(Serialize)]
pub(super) struct Artifact {
    pub location: ArtifactLocation,
    pub roles: [&'static str; 1],
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Outcome<'a> {
    pub rule_id: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rule_index: Option<usize>,
    pub level: Level,
    pub message: Text,
    pub locations: [Location; 1],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub related_locations: Vec<Location>,
    pub partial_fingerprints: BTreeMap<&'static str, String>,
    pub suppressions: Vec<Suppression<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fixes: Vec<Fix<'a>>,
}

#[derive(Serialize)]
pub(super) struct Suppression<'a> {
    pub kind: &'static str,
    pub status: &'static str,
    pub justification: &'a str,
    pub location: Location,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Location {
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<usize>,
    pub physical_location: PhysicalLocation,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub logical_locations: Vec<LogicalLocation>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub message: Option<Text>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct PhysicalLocation {
    pub artifact_location: ArtifactLocation,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub region: Option<Region>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct LogicalLocation {
    pub fully_qualified_name: String,
    pub kind: &'static str,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct ArtifactLocation {
    pub uri: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uri_base_id: Option<&'static str>,
}

/// A point when it has no end.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Region {
    pub start_line: u32,
    pub start_column: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_line: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_column: Option<u32>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Fix<'a> {
    pub description: Text,
    pub artifact_changes: Vec<ArtifactChange<'a>>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct ArtifactChange<'a> {
    pub artifact_location: ArtifactLocation,
    pub replacements: Vec<Replacement<'a>>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Replacement<'a> {
    pub deleted_region: Region,
    pub inserted_content: Content<'a>,
}

#[derive(Serialize)]
pub(super) struct Content<'a> {
    pub text: &'a str,
}

impl PartOfRun<'_> {
    pub fn is_whole(&self) -> bool {
        self.changed_since.is_none() && self.shard.is_none()
    }
}

impl<'a> SpecOfRun<'a> {
    pub fn of(file: &'a str, results: usize) -> Self {
        Self { file: file.into(), results }
    }
}

impl Text {
    /// Words of ours or the author's. Braces mean a gap to fill, and `[…](…)` a link, unless the standard's escapes
    /// stand before them.
    pub(super) fn of(words: &str) -> Self {
        let words = words.replace('{', "{{").replace('}', "}}");
        let text = match words.contains("](") {
            true => words.replace('[', "\\[").replace(']', "\\]"),
            false => words,
        };
        Self { text, markdown: None }
    }
}

impl From<Severity> for Level {
    fn from(severity: Severity) -> Self {
        match severity {
            Severity::Error => Self::Error,
            Severity::Warning => Self::Warning,
            Severity::Advice => Self::Note,
        }
    }
}
