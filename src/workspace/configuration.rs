//! The configuration file `storyrod.toml`: which rules a project weighs otherwise.

use std::fmt;
use std::ops::Range;
use std::path::{Path, PathBuf};

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use crate::diagnostic::Severity;
use crate::inputs::Settings;
use crate::rules::{self, RULES};
use crate::text::{ColumnEncoding, LineIndex, nearest};
use crate::workspace::file_text::{TextFault, text_of};

/// The name of the configuration file; its folder is a spec's root folder.
pub const CONFIGURATION_NAME: &str = "storyrod.toml";

const SEVERITY_TABLE: &str = "severity";
const OFF: &str = "off";

/// Something wrong in a configuration file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConfigurationFault {
    /// The file.
    pub path: PathBuf,
    /// Line and column in characters, from 1; `None` when the file gives no text at all.
    pub place: Option<(u32, u32)>,
    /// What is wrong; lower case, no final stop.
    pub message: String,
}

impl fmt::Display for ConfigurationFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.path.display())?;
        if let Some((line, column)) = self.place {
            write!(out, ":{line}:{column}")?;
        }
        write!(out, ": {}", self.message)
    }
}

/// What a configuration file says, and what is wrong with it. An empty file says nothing and is right.
pub(in crate::workspace) fn read(path: &Path) -> (Settings, Vec<ConfigurationFault>) {
    match text_of(path) {
        Ok(text) => {
            let (settings, faults) = settings_of(&text);
            let lines = LineIndex::new(&text);
            let with_place = |(at, message): (usize, String)| {
                let at = u32::try_from(at).unwrap_or(u32::MAX);
                let place = lines.line_column(&text, at, ColumnEncoding::Utf32);
                ConfigurationFault {
                    path: path.to_owned(),
                    place: Some((place.line + 1, place.column + 1)),
                    message,
                }
            };
            (settings, faults.into_iter().map(with_place).collect())
        }
        // It may stand there only to mark the root folder.
        Err(TextFault::Empty) => Default::default(),
        Err(fault) => {
            let fault = ConfigurationFault { path: path.to_owned(), place: None, message: fault.to_string() };
            (Settings::default(), vec![fault])
        }
    }
}

/// The settings, and each fault with the byte it stands at.
fn settings_of(text: &str) -> (Settings, Vec<(usize, String)>) {
    let mut settings = Settings::default();
    let mut faults = Vec::new();
    let table = match DeTable::parse(text) {
        Ok(table) => table.into_inner(),
        Err(error) => {
            let at = error.span().unwrap_or(0..0).start;
            return (settings, vec![(at, format!("this is no TOML: {}", error.message().trim()))]);
        }
    };
    for (key, value) in in_order_of_text(&table) {
        let name: &str = key.get_ref();
        if name != SEVERITY_TABLE {
            let message = format!("`{name}` is no key of this file{}", did_you_mean(name, [SEVERITY_TABLE]));
            faults.push((key.span().start, message));
            continue;
        }
        let DeValue::Table(rules) = value.get_ref() else {
            faults.push((
                value.span().start,
                format!("`{SEVERITY_TABLE}` is a table: write `[{SEVERITY_TABLE}]`"),
            ));
            continue;
        };
        for (rule, value) in in_order_of_text(rules) {
            match severity_of(rule, value) {
                Ok(severity) => {
                    settings.severities.insert(rule.get_ref().to_string(), severity);
                }
                Err((span, message)) => faults.push((span.start, message)),
            }
        }
    }
    (settings, faults)
}

type Entry<'a, 'i> = (&'a Spanned<DeString<'i>>, &'a Spanned<DeValue<'i>>);

fn in_order_of_text<'a, 'i>(table: &'a DeTable<'i>) -> Vec<Entry<'a, 'i>> {
    let mut entries: Vec<_> = table.iter().collect();
    entries.sort_by_key(|(key, _)| key.span().start);
    entries
}

fn severity_of(
    rule: &Spanned<DeString<'_>>,
    value: &Spanned<DeValue<'_>>,
) -> Result<Option<Severity>, (Range<usize>, String)> {
    let name: &str = rule.get_ref();
    let Some(known) = rules::rule_named(name) else {
        let nearest = did_you_mean(name, RULES.iter().map(|rule| rule.slug));
        return Err((rule.span(), format!("there is no rule `{name}`{nearest}")));
    };
    let word = match value.get_ref() {
        DeValue::String(word) => word.as_ref(),
        _ => "",
    };
    let severity = match (word, Severity::from_word(word)) {
        (OFF, _) => None,
        (_, Some(severity)) => Some(severity),
        (_, None) => {
            let words = [Severity::Error, Severity::Warning, Severity::Advice].map(Severity::word);
            let nearest = did_you_mean(word, words.into_iter().chain([OFF]));
            let message = format!("`{name}` can be \"error\", \"warning\", \"advice\" or \"{OFF}\"{nearest}");
            return Err((value.span(), message));
        }
    };
    if known.is_danger && severity < Some(known.severity) {
        let message = format!(
            "`{name}` means danger and stays an {}: a single place is waived in the spec, with its reason",
            known.severity.word()
        );
        return Err((value.span(), message));
    }
    Ok(severity)
}

/// ``; did you mean `word`?`` with the nearest of the words, or nothing when none is near.
fn did_you_mean<'a>(written: &str, words: impl IntoIterator<Item = &'a str>) -> String {
    nearest(written, words).map(|word| format!("; did you mean `{word}`?")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slug(is_danger: bool) -> &'static str {
        RULES.iter().find(|rule| rule.is_danger == is_danger).unwrap().slug
    }

    fn messages(text: &str) -> Vec<String> {
        let (_, faults) = settings_of(text);
        faults.into_iter().map(|(at, message)| format!("{}: {message}", &text[at..][..3])).collect()
    }

    #[test]
    fn a_rule_is_weighed_otherwise_or_switched_off() {
        let plain = slug(false);
        let text = format!("[severity]\n{plain} = \"off\"\nstair-headroom = \"advice\"\n");
        let (settings, faults) = settings_of(&text);
        assert_eq!(faults, []);
        assert_eq!(settings.severities.get(plain), Some(&None));
        assert_eq!(settings.severities.get("stair-headroom"), Some(&Some(Severity::Advice)));
    }

    #[test]
    fn a_danger_stays_an_error() {
        let danger = slug(true);
        for word in ["off", "advice", "warning"] {
            let text = format!("[severity]\n{danger} = \"{word}\"\n");
            let (settings, faults) = settings_of(&text);
            assert!(settings.severities.is_empty());
            assert!(faults[0].1.contains("means danger and stays an error"), "{faults:?}");
        }
    }

    #[test]
    fn what_is_not_known_is_named_with_the_nearest() {
        let plain = slug(false);
        let misspelt = format!("{plain}s");
        assert_eq!(
            messages(&format!("[severty]\n[severity]\n{misspelt} = \"off\"\n{plain} = \"warnin\"\n")),
            [
                "sev: `severty` is no key of this file; did you mean `severity`?".to_owned(),
                format!("{}: there is no rule `{misspelt}`; did you mean `{plain}`?", &plain[..3]),
                format!(
                    "\"wa: `{plain}` can be \"error\", \"warning\", \"advice\" or \"off\"; did you mean `warning`?"
                ),
            ]
        );
        assert_eq!(messages("severity = 300"), ["300: `severity` is a table: write `[severity]`"]);
    }
}
