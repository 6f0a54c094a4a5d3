//! Findings as an editor's diagnostics.
//!
//! One mistake is one entry: what follows from it is listed under it, as related places. A consequence in another file
//! gets an entry there as well, else nobody who has only that file before him would know. A file of several projects
//! has the entries of all of them; one that only some of them have names those.

use std::path::PathBuf;

use indexmap::IndexMap;
use serde_json::json;
use tower_lsp::lsp_types::{
    CodeDescription, Diagnostic, DiagnosticRelatedInformation, DiagnosticSeverity, DiagnosticTag, Location,
    NumberOrString, Position, PublishDiagnosticsParams, Range, Url,
};

use crate::diagnostic::{self, Severity};
use crate::rules::rule_named;
use crate::server::abilities::Abilities;
use crate::server::preferences::Preferences;
use crate::server::view::Analysed;
use crate::text::Span;
use crate::workspace::ConfigurationFault;

/// Who says it.
const SOURCE: &str = "storyrod";

/// The rules that look at nothing but how a file is written: all that can be said of a file that no project includes.
const READING: &str = "spelling";

/// Rules whose place is there for nothing.
const UNUSED: [&str; 2] = ["element-unreferenced", "waiver-silences-nothing"];

/// What one house has to say of each of its files: of every file, also those without a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseFindings {
    /// The file that opens it.
    pub root: PathBuf,
    /// Its title, else the name of the file that opens it.
    pub name: String,
    /// File by file; the root first.
    pub files: Vec<PublishDiagnosticsParams>,
}

/// What a house has to say of its files.
pub fn findings_of(analysed: &Analysed, abilities: Abilities, preferences: &Preferences) -> HouseFindings {
    let Analysed { spec, snapshot, pages } = analysed;
    let encoder = Encoder { analysed, abilities, rules_address: preferences.rules_address.as_deref() };
    let mut lists: Vec<Vec<Diagnostic>> = pages.iter().map(|_| Vec::new()).collect();
    let is_told = |finding: &&diagnostic::Diagnostic| {
        !spec.is_alone || rule_named(finding.rule).is_none_or(|rule| rule.group() == READING)
    };
    for finding in snapshot.findings.iter().filter(is_told) {
        for (span, entry) in encoder.entries(finding) {
            if let Some(list) = lists.get_mut(span.file.0 as usize) {
                list.push(entry);
            }
        }
    }
    let pages = pages.iter().zip(lists).filter_map(|(page, list)| Some((page.as_ref()?, list)));
    let mut files: Vec<_> = pages
        .map(|(page, list)| PublishDiagnosticsParams::new(page.uri.clone(), list, page.version))
        .collect();
    for fault in &spec.configuration_faults {
        if let Ok(uri) = Url::from_file_path(&fault.path) {
            add(&mut files, PublishDiagnosticsParams::new(uri, vec![configuration_entry(fault)], None));
        }
    }
    let title = snapshot.house.model.project.as_ref().map(|project| project.common.name.to_string());
    let source = || spec.inputs.sources.first().map(|source| source.name.to_string()).unwrap_or_default();
    HouseFindings {
        root: spec.paths.first().cloned().unwrap_or_default(),
        name: title.unwrap_or_else(source),
        files,
    }
}

/// Puts a file's list to what is said of the same file already, each entry once.
fn add(all: &mut Vec<PublishDiagnosticsParams>, new: PublishDiagnosticsParams) {
    match all.iter_mut().find(|old| old.uri == new.uri) {
        Some(old) => {
            for entry in new.diagnostics {
                if !old.diagnostics.contains(&entry) {
                    old.diagnostics.push(entry);
                }
            }
        }
        None => all.push(new),
    }
}

/// What to tell the client of each file, from everything that houses say of it.
pub fn joined<'a>(houses: impl Iterator<Item = &'a HouseFindings>) -> Vec<PublishDiagnosticsParams> {
    let mut files: IndexMap<&Url, Vec<(&str, &PublishDiagnosticsParams)>> = IndexMap::new();
    for house in houses {
        for file in &house.files {
            files.entry(&file.uri).or_default().push((&house.name, file));
        }
    }
    files.into_iter().map(|(uri, said)| joined_file(uri, &said)).collect()
}

fn joined_file(uri: &Url, said: &[(&str, &PublishDiagnosticsParams)]) -> PublishDiagnosticsParams {
    let version = said.iter().find_map(|(_, file)| file.version);
    let [(_, only)] = said else {
        let mut entries: Vec<(Diagnostic, Vec<&str>)> = Vec::new();
        for (name, file) in said {
            for entry in &file.diagnostics {
                let same = entries.iter_mut().find(|(known, _)| is_same(known, entry));
                match same {
                    Some((_, names)) => names.push(name),
                    None => entries.push((entry.clone(), vec![name])),
                }
            }
        }
        let named = |(entry, names): (Diagnostic, Vec<&str>)| {
            if names.len() == said.len() { entry } else { in_projects(entry, &names) }
        };
        return PublishDiagnosticsParams::new(uri.clone(), entries.into_iter().map(named).collect(), version);
    };
    PublishDiagnosticsParams::clone(only)
}

/// True when two houses say the same at the same place, wherever the related places are.
fn is_same(one: &Diagnostic, other: &Diagnostic) -> bool {
    one.range == other.range && one.code == other.code && one.message == other.message
}

fn in_projects(entry: Diagnostic, names: &[&str]) -> Diagnostic {
    let message = format!("{}\nin {}", entry.message, names.join(", "));
    Diagnostic { message, ..entry }
}

/// Turns the findings of one house into entries.
struct Encoder<'a> {
    analysed: &'a Analysed,
    abilities: Abilities,
    rules_address: Option<&'a str>,
}

impl Encoder<'_> {
    /// The entries of one root: its own, and one for each consequence in another file.
    fn entries(&self, root: &diagnostic::Diagnostic) -> Vec<(Span, Diagnostic)> {
        let consequences: Vec<_> = root.with_consequences().into_iter().skip(1).collect();
        let mut places = self.places(root);
        places.extend(
            consequences
                .iter()
                .filter_map(|one| self.related(one.span, &format!("follows: {}", one.message))),
        );
        let mut entries = Vec::new();
        entries.extend(self.entry(root, root_message(root, consequences.len()), places));
        for one in consequences.into_iter().filter(|one| one.span.file != root.span.file) {
            let message = format!("{}\nfollows from: {}", one.message, root.message);
            let mut places: Vec<_> =
                self.related(root.span, &format!("follows from: {}", root.message)).into_iter().collect();
            places.extend(self.places(one));
            entries.extend(self.entry(one, message, places));
        }
        entries
    }

    fn places(&self, finding: &diagnostic::Diagnostic) -> Vec<DiagnosticRelatedInformation> {
        finding.related.iter().filter_map(|place| self.related(place.span, &place.message)).collect()
    }

    fn entry(
        &self,
        finding: &diagnostic::Diagnostic,
        message: String,
        places: Vec<DiagnosticRelatedInformation>,
    ) -> Option<(Span, Diagnostic)> {
        let Abilities { shows_related, keeps_data, greys_unused, .. } = self.abilities;
        let range = self.analysed.location(finding.span)?.range;
        let data = keeps_data.then(|| {
            json!({
                "subject": finding.subject,
                "remedy": finding.remedy.sentence(),
                "fix": finding.fix.as_ref().map(|fix| fix.title.as_str()),
                "waiver": finding.waiver,
            })
        });
        let entry = Diagnostic {
            range,
            severity: Some(severity(finding.severity)),
            code: Some(NumberOrString::String(finding.rule.to_owned())),
            code_description: self.page_of(finding.rule),
            source: Some(SOURCE.to_owned()),
            message,
            related_information: (shows_related && !places.is_empty()).then_some(places),
            tags: (greys_unused && UNUSED.contains(&finding.rule)).then(|| vec![DiagnosticTag::UNNECESSARY]),
            data,
        };
        Some((finding.span, entry))
    }

    fn page_of(&self, rule: &str) -> Option<CodeDescription> {
        if !self.abilities.shows_code_links {
            return None;
        }
        let href = Url::parse(&format!("{}{rule}", self.rules_address?)).ok()?;
        Some(CodeDescription { href })
    }

    fn related(&self, span: Span, message: &str) -> Option<DiagnosticRelatedInformation> {
        let location: Location = self.analysed.location(span)?;
        Some(DiagnosticRelatedInformation { location, message: message.to_owned() })
    }
}

/// The fault, its cures, and how much hangs on it: what fits in an editor's line. The rest is in the hover.
fn root_message(root: &diagnostic::Diagnostic, n_consequences: usize) -> String {
    let mut lines = vec![root.message.clone()];
    lines.extend(root.help.iter().map(|help| format!("help: {help}")));
    match n_consequences {
        0 => {}
        1 => lines.push("1 more follows from it".to_owned()),
        n => lines.push(format!("{n} more follow from it")),
    }
    lines.join("\n")
}

fn configuration_entry(fault: &ConfigurationFault) -> Diagnostic {
    let (line, column) = fault.place.unwrap_or((1, 1));
    let at = Position::new(line.saturating_sub(1), column.saturating_sub(1));
    Diagnostic {
        range: Range::new(at, at),
        severity: Some(DiagnosticSeverity::ERROR),
        source: Some(SOURCE.to_owned()),
        message: fault.message.clone(),
        ..Diagnostic::default()
    }
}

const fn severity(severity: Severity) -> DiagnosticSeverity {
    match severity {
        Severity::Error => DiagnosticSeverity::ERROR,
        Severity::Warning => DiagnosticSeverity::WARNING,
        Severity::Advice => DiagnosticSeverity::INFORMATION,
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::diagnostic::{Related, Remedy};
    use crate::inputs::Inputs;
    use crate::snapshot::{Caches, analyse};
    use crate::testing::rule_check::TODAY;
    use crate::text::{ColumnEncoding, FileId, Source};
    use crate::workspace::Spec;

    /// A house of the files `/a` and `/b`.
    fn analysed(text_of_a: &str, text_of_b: &str, is_alone: bool) -> Analysed {
        let sources = vec![Source::new("a", text_of_a), Source::new("b", text_of_b)];
        let inputs = Arc::new(Inputs { sources, includes: Vec::new() });
        let snapshot = analyse(&inputs, &mut Caches::default(), TODAY, &|| false).unwrap();
        let spec = Spec {
            inputs,
            paths: vec!["/a".into(), "/b".into()],
            unread: Vec::new(),
            root_folder: "/".into(),
            is_alone,
            configuration_faults: Vec::new(),
        };
        Analysed::new(spec, Arc::new(snapshot), &[], able())
    }

    fn able() -> Abilities {
        let all = json!({"textDocument": {"publishDiagnostics": {"relatedInformation": true,
            "codeDescriptionSupport": true, "tagSupport": {"valueSet": [1]}}}});
        let abilities = Abilities::of(&serde_json::from_value(all).unwrap());
        assert_eq!(abilities.encoding, ColumnEncoding::Utf16);
        abilities
    }

    fn finding(
        file: u32,
        start: u32,
        message: &str,
        consequences: Vec<diagnostic::Diagnostic>,
    ) -> diagnostic::Diagnostic {
        let span = Span::new(FileId(file), start, start + 2);
        diagnostic::Diagnostic {
            rule: "some-rule",
            severity: Severity::Error,
            subject: String::new(),
            span,
            message: message.to_owned(),
            related: vec![Related { span, message: "see here".to_owned() }],
            notes: Vec::new(),
            help: Vec::new(),
            standing: String::new(),
            remedy: Remedy::OnPaper,
            basis: None,
            fix: None,
            waiver: None,
            choices: Vec::new(),
            consequences,
        }
    }

    /// File, line, message and related places of each entry.
    fn shown(root: &diagnostic::Diagnostic, abilities: Abilities) -> Vec<(u32, u32, String, Vec<String>)> {
        let analysed = analysed("aa\nbb\n", "cc\ndd\n", false);
        let encoder = Encoder { analysed: &analysed, abilities, rules_address: None };
        let places = |entry: &Diagnostic| {
            let places = entry.related_information.iter().flatten();
            places.map(|place| format!("{} {}", place.location.uri.path(), place.message)).collect()
        };
        let entries = encoder.entries(root).into_iter();
        entries
            .map(|(span, entry)| (span.file.0, entry.range.start.line, entry.message.clone(), places(&entry)))
            .collect()
    }

    #[test]
    fn a_root_is_one_entry_that_lists_what_follows() {
        let grandchild = finding(0, 0, "grandchild", Vec::new());
        let root = finding(0, 3, "root", vec![finding(0, 0, "child", vec![grandchild])]);
        let places = ["/a see here", "/a follows: child", "/a follows: grandchild"].map(str::to_owned);
        assert_eq!(shown(&root, able()), [(0, 1, "root\n2 more follow from it".to_owned(), places.to_vec())]);
        let plain = Abilities { shows_related: false, ..able() };
        assert_eq!(shown(&root, plain), [(0, 1, "root\n2 more follow from it".to_owned(), Vec::new())]);
    }

    #[test]
    fn a_consequence_in_another_file_is_an_entry_there_too() {
        let root = finding(0, 3, "root", vec![finding(1, 0, "child", Vec::new())]);
        let [root_entry, child_entry] = shown(&root, able()).try_into().unwrap();
        assert_eq!((root_entry.0, root_entry.2.as_str()), (0, "root\n1 more follows from it"));
        assert_eq!(root_entry.3, ["/a see here", "/b follows: child"]);
        assert_eq!((child_entry.0, child_entry.2.as_str()), (1, "child\nfollows from: root"));
        assert_eq!(child_entry.3, ["/a follows from: root", "/b see here"]);
    }

    #[test]
    fn what_projects_say_of_a_common_file_is_said_once_and_named_where_they_differ() {
        let uri = Url::parse("file:///common").unwrap();
        let entry = |message: &str| Diagnostic { message: message.to_owned(), ..Diagnostic::default() };
        let house = |name: &str, entries: &[&str]| HouseFindings {
            root: PathBuf::from(name),
            name: name.to_owned(),
            files: vec![PublishDiagnosticsParams::new(
                uri.clone(),
                entries.iter().map(|one| entry(one)).collect(),
                Some(3),
            )],
        };
        let [one, two, three] =
            [house("Birch", &["x", "y"]), house("Cedar", &["y", "z"]), house("Elm", &["y", "z"])];
        let said = |houses: &[&HouseFindings]| -> Vec<String> {
            let [file] = joined(houses.iter().copied()).try_into().unwrap();
            assert_eq!(file.version, Some(3));
            file.diagnostics.into_iter().map(|entry| entry.message).collect()
        };
        assert_eq!(said(&[&one]), ["x", "y"]);
        assert_eq!(said(&[&one, &two, &three]), ["x\nin Birch", "y", "z\nin Cedar, Elm"]);
    }

    #[test]
    fn of_a_file_that_no_project_includes_only_the_writing_is_judged() {
        let codes = |is_alone: bool| -> Vec<NumberOrString> {
            let analysed = analysed("column C1\n  stands on F9\n  at 3\u{a7}\n", "", is_alone);
            let said = findings_of(&analysed, able(), &Preferences::default());
            let entries = said.files.into_iter().flat_map(|file| file.diagnostics);
            entries.filter_map(|entry| entry.code).collect()
        };
        let unknown_name = NumberOrString::String("unknown-name".to_owned());
        let stray = NumberOrString::String("stray-character".to_owned());
        assert!(codes(false).contains(&unknown_name) && codes(false).contains(&stray), "{:?}", codes(false));
        assert_eq!(codes(true), [stray]);
    }

    #[test]
    fn a_rule_is_linked_when_somebody_says_where_its_page_stands() {
        let analysed = analysed("column C1\n  at \u{a7}\n", "", false);
        let mut preferences = Preferences::default();
        let link = |preferences: &Preferences| {
            let said = findings_of(&analysed, able(), preferences);
            let entries = said.files.into_iter().flat_map(|file| file.diagnostics);
            entries.filter_map(|entry| entry.code_description).next().map(|page| page.href.to_string())
        };
        assert_eq!(link(&preferences), None);
        preferences.rules_address = Some("https://example.org/rules.html#".to_owned());
        let linked = link(&preferences).unwrap();
        assert!(linked.starts_with("https://example.org/rules.html#") && !linked.ends_with('#'), "{linked}");
    }
}
