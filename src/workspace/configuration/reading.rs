//! The text of a configuration file to what it says.

use std::num::NonZeroUsize;
use std::ops::Range;
use std::path::Path;

use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

use crate::diagnostic::Severity;
use crate::text::{ColumnEncoding, LineIndex, nearest};
use crate::workspace::Format;
use crate::workspace::configuration::key::{Key, LINT, Takes};
use crate::workspace::configuration::leave_out::Patterns;
use crate::workspace::configuration::{Configuration, ConfigurationFault, ConfiguredPath};

/// What files said before, and where it stands now.
const SEVERITY: &str = "severity";
const SEVERITY_STANDS: &str = ": the severity of a rule stands in the spec, under `project`, one line a rule: `severity RULE advice because \"…\"`";

/// What the text says.
pub fn configuration(path: &Path, text: &str) -> Configuration {
    let folder = path.parent().unwrap_or(path).to_owned();
    let said = Configuration { folder, ..Configuration::default() };
    let mut reading = Reading { path, text, lines: LineIndex::new(text), said };
    match DeTable::parse(text) {
        Ok(table) => reading.take_table(None, table.get_ref()),
        Err(error) => {
            let at = error.span().unwrap_or(0..0);
            reading.refuse(at, format!("this is no TOML: {}", error.message().trim()));
        }
    }
    reading.said
}

/// A configuration while its text is read.
struct Reading<'a> {
    path: &'a Path,
    text: &'a str,
    lines: LineIndex,
    said: Configuration,
}

impl Reading<'_> {
    fn take_table(&mut self, table: Option<&'static str>, entries: &DeTable<'_>) {
        let mut entries: Vec<_> = entries.iter().collect();
        entries.sort_by_key(|(key, _)| key.span().start);
        for (key, value) in entries {
            let name: &str = key.get_ref();
            let known = Key::ALL.into_iter().find(|key| key.table() == table && key.name() == name);
            match (known, value.get_ref()) {
                (Some(known), _) => self.take(known, value),
                (None, DeValue::Table(inner)) if table.is_none() && name == LINT => {
                    self.take_table(Some(LINT), inner);
                }
                (None, _) if table.is_none() && name == LINT => {
                    self.refuse(value.span(), format!("`{LINT}` is a table: write `[{LINT}]`"));
                }
                (None, _) => self.refuse_key(table, key),
            }
        }
    }

    fn refuse_key(&mut self, table: Option<&'static str>, key: &Spanned<DeString<'_>>) {
        let name: &str = key.get_ref();
        let of = table.map_or("of this file".to_owned(), |table| format!("of `[{table}]`"));
        let elsewhere = Key::ALL.into_iter().find(|key| key.table() != table && key.name() == name);
        let more = match elsewhere.map(Key::table) {
            Some(Some(table)) => format!(": it stands under `[{table}]`"),
            Some(None) => ": it stands before the first table".to_owned(),
            None if table.is_none() && name == SEVERITY => SEVERITY_STANDS.to_owned(),
            None => {
                let keys = Key::ALL.into_iter().filter(|key| key.table() == table).map(Key::name);
                did_you_mean(name, keys.chain(table.is_none().then_some(LINT)))
            }
        };
        self.refuse(key.span(), format!("`{name}` is no key {of}{more}"));
    }

    fn take(&mut self, key: Key, value: &Spanned<DeValue<'_>>) {
        let text = || value.get_ref().as_str().filter(|text| !text.is_empty());
        match key {
            Key::Paths => self.take_paths(value),
            Key::LeaveOut => self.take_patterns(value),
            Key::Format => {
                let format = Format::ALL.into_iter().find(|format| Some(format.word()) == text());
                self.said.format = self.known(key, value, format);
            }
            Key::FailOn => self.said.fail_on = self.known(key, value, text().and_then(Severity::from_word)),
            Key::Jobs => self.said.jobs = self.known(key, value, count_of(value.get_ref())),
            Key::Baseline => {
                let file = text().map(|text| self.said.folder.join(text));
                self.said.baseline = self.known(key, value, file);
            }
            Key::RulesAddress => {
                let address = text().filter(|text| url::Url::parse(text).is_ok()).map(str::to_owned);
                self.said.rules_address = self.known(key, value, address);
            }
        }
    }

    /// What was read of a value; when nothing was, it is told what the key takes.
    fn known<T>(&mut self, key: Key, value: &Spanned<DeValue<'_>>, read: Option<T>) -> Option<T> {
        if read.is_none() {
            self.refuse_value(key, value);
        }
        read
    }

    fn take_paths(&mut self, value: &Spanned<DeValue<'_>>) {
        for (span, text) in self.texts(Key::Paths, value) {
            let path = self.said.folder.join(&text);
            let missing = self.fault(span, format!("`paths`: there is no file or folder `{text}`"));
            self.said.paths.push(ConfiguredPath { path, missing });
        }
    }

    fn take_patterns(&mut self, value: &Spanned<DeValue<'_>>) {
        let texts = self.texts(Key::LeaveOut, value);
        let lines: Vec<&str> = texts.iter().map(|(_, text)| text.as_str()).collect();
        let (patterns, faults) = Patterns::of(&self.said.folder, &lines);
        self.said.leave_out = patterns;
        for (at, fault) in faults {
            let Some((span, text)) = texts.get(at) else { continue };
            self.refuse(span.clone(), format!("`{text}` is no pattern of files: {fault}"));
        }
    }

    /// The texts of a list, each with its place; whatever else stands in it is told.
    fn texts(&mut self, key: Key, value: &Spanned<DeValue<'_>>) -> Vec<(Range<usize>, String)> {
        let DeValue::Array(items) = value.get_ref() else {
            self.refuse_value(key, value);
            return Vec::new();
        };
        let mut texts = Vec::new();
        for item in items.iter() {
            match item.get_ref().as_str().filter(|text| !text.is_empty()) {
                Some(text) => texts.push((item.span(), text.to_owned())),
                None => self.refuse_value(key, item),
            }
        }
        texts
    }

    fn refuse_value(&mut self, key: Key, value: &Spanned<DeValue<'_>>) {
        let name = key.name();
        let message = match key.takes() {
            Takes::Word(words) => {
                let written = value.get_ref().as_str().unwrap_or("");
                let quoted: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
                let nearest = did_you_mean(written, words.iter().copied());
                format!("`{name}` can be {}{nearest}", quoted.join(", "))
            }
            Takes::Texts => format!("`{name}` takes a list of texts: `{}`", key.example()),
            Takes::Text => format!("`{name}` takes a text: `{}`", key.example()),
            Takes::Address => format!("`{name}` takes an address: `{}`", key.example()),
            Takes::Count => format!("`{name}` takes a whole number from 1: `{}`", key.example()),
        };
        self.refuse(value.span(), message);
    }

    fn refuse(&mut self, at: Range<usize>, message: String) {
        let fault = self.fault(at, message);
        self.said.faults.push(fault);
    }

    fn fault(&self, at: Range<usize>, message: String) -> ConfigurationFault {
        let start = u32::try_from(at.start).unwrap_or(u32::MAX);
        let place = self.lines.line_column(self.text, start, ColumnEncoding::Utf32);
        ConfigurationFault {
            path: self.path.to_owned(),
            place: Some((place.line + 1, place.column + 1)),
            message,
        }
    }
}

fn count_of(value: &DeValue<'_>) -> Option<NonZeroUsize> {
    let number = value.as_integer()?;
    usize::from_str_radix(number.as_str(), number.radix()).ok().and_then(NonZeroUsize::new)
}

/// ``; did you mean `word`?`` with the nearest of the words, or nothing when none is near.
fn did_you_mean<'a>(written: &str, words: impl IntoIterator<Item = &'a str>) -> String {
    nearest(written, words).map(|word| format!("; did you mean `{word}`?")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> Configuration {
        configuration(Path::new("/job/storyrod.toml"), text)
    }

    /// What is wrong, with line and column.
    fn faults(text: &str) -> Vec<String> {
        let of_one = |fault: ConfigurationFault| {
            let (line, column) = fault.place.unwrap();
            format!("{line}:{column}: {}", fault.message)
        };
        said(text).faults.into_iter().map(of_one).collect()
    }

    #[test]
    fn every_key_says_what_its_example_says() {
        for key in Key::ALL {
            let head = key.table().map(|table| format!("[{table}]\n")).unwrap_or_default();
            assert_eq!(faults(&format!("{head}{}\n", key.example())), [""; 0]);
        }
        let all = said(
            "paths = [\"houses\", \"../x.framing\"]\nleave-out = []\njobs = 0x10\n[lint]\nformat = \"sarif\"\nfail-on = \"advice\"\nbaseline = \"ci/known.toml\"\nrules-address = \"https://example.org/\"\n",
        );
        assert_eq!(all.faults, []);
        let paths: Vec<_> = all.paths.iter().map(|path| path.path.to_str().unwrap()).collect();
        assert_eq!(paths, ["/job/houses", "/job/../x.framing"]);
        assert_eq!((all.format, all.fail_on), (Some(Format::Sarif), Some(Severity::Advice)));
        assert_eq!(
            (all.jobs.unwrap().get(), all.baseline.unwrap().to_str().unwrap()),
            (16, "/job/ci/known.toml")
        );
        assert_eq!(all.rules_address.unwrap(), "https://example.org/");
    }

    #[test]
    fn nothing_is_said_by_an_empty_file_or_one_that_is_no_toml() {
        assert_eq!(faults("# marks the root folder\n"), [""; 0]);
        let broken = said("jobs = \n");
        assert!(broken.faults[0].message.starts_with("this is no TOML"), "{:?}", broken.faults);
        assert_eq!(broken.faults[0].place, Some((1, 8)));
    }

    #[test]
    fn a_key_that_is_not_known_is_named_with_the_nearest_or_its_table() {
        assert_eq!(
            faults(
                "pahts = []\nformat = 3\nlink = 1\nrules = 3\n[lint]\nfail_on = \"error\"\npaths = []\n[other]\nx = 1\n"
            ),
            [
                "1:1: `pahts` is no key of this file; did you mean `paths`?",
                "2:1: `format` is no key of this file: it stands under `[lint]`",
                "3:1: `link` is no key of this file; did you mean `lint`?",
                "4:1: `rules` is no key of this file",
                "6:1: `fail_on` is no key of `[lint]`; did you mean `fail-on`?",
                "7:1: `paths` is no key of `[lint]`: it stands before the first table",
                "8:2: `other` is no key of this file",
            ]
        );
        assert_eq!(faults("lint = 3\n"), ["1:8: `lint` is a table: write `[lint]`"]);
    }

    #[test]
    fn a_severity_is_told_where_it_stands_now() {
        let says = faults("[severity]\nstair-headroom = \"off\"\n");
        assert_eq!(says.len(), 1);
        assert!(says[0].starts_with(
            "1:2: `severity` is no key of this file: the severity of a rule stands in the spec"
        ));
    }

    #[test]
    fn a_value_of_another_kind_is_told_what_the_key_takes_and_the_rest_counts() {
        let text = "paths = [\"a\", 3, \"\"]\nleave-out = \"drafts\"\njobs = -2\n[lint]\nformat = \"sarfi\"\nfail-on = [\"error\"]\nbaseline = \"\"\nrules-address = \"rules/\"\n";
        assert_eq!(
            faults(text),
            [
                "1:15: `paths` takes a list of texts: `paths = [\"houses\"]`",
                "1:18: `paths` takes a list of texts: `paths = [\"houses\"]`",
                "2:13: `leave-out` takes a list of texts: `leave-out = [\"drafts/\"]`",
                "3:8: `jobs` takes a whole number from 1: `jobs = 4`",
                "5:10: `format` can be \"text\", \"lines\", \"json\", \"sarif\", \"junit\", \"markdown\"; did you mean `sarif`?",
                "6:11: `fail-on` can be \"error\", \"warning\", \"advice\"",
                "7:12: `baseline` takes a text: `baseline = \"known.toml\"`",
                "8:17: `rules-address` takes an address: `rules-address = \"https://example.org/rules/\"`",
            ]
        );
        assert_eq!(said(text).paths.len(), 1);
        for jobs in ["0", "1.5", "\"4\"", "99999999999999999999"] {
            assert_eq!(said(&format!("jobs = {jobs}\n")).jobs, None, "{jobs}");
        }
    }

    #[test]
    fn a_pattern_that_leaves_out_nothing_is_told() {
        let text = "leave-out = [\"[z-a]\", \"drafts/\", \"# drafts\", \" \", \"!\"]\n";
        let says = faults(text);
        assert!(says[0].starts_with("1:14: `[z-a]` is no pattern of files: "), "{says:?}");
        assert_eq!(
            says[1..],
            [
                "1:34: `# drafts` is no pattern of files: it leaves out nothing",
                "1:46: ` ` is no pattern of files: it leaves out nothing",
                "1:51: `!` is no pattern of files: it leaves out nothing",
            ]
        );
    }
}
