//! Findings in JUnit's XML, which systems that run builds show as tests.
//!
//! A spec is a suite. A file in which nothing reaches the fail level is a test that passed; every finding that reaches it
//! is a test that failed. What stays below it is told in the suite's output.

use std::collections::HashMap;
use std::io::{self, Write};

use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesText, Event};

use crate::diagnostic::{Diagnostic, Severity};
use crate::report::details::details;
use crate::report::lines::place_of;
use crate::report::summary::NOT_CHECKED;
use crate::report::{Checked, Part, STRENGTH_CAUTION, Shard, Unusable, printable};

/// The suite of what could not be used.
pub(in crate::report) const NOT_USABLE: &str = "not usable";

struct Suite {
    name: String,
    properties: Vec<(&'static str, String)>,
    cases: Vec<Case>,
    /// What is printed beside the cases; nothing when it is empty.
    output: String,
}

struct Case {
    name: String,
    class: String,
    fault: Option<Fault>,
}

/// How many tests there are, and how many failed or could not run.
#[derive(Clone, Copy, Default)]
pub(in crate::report) struct Counts {
    pub tests: usize,
    pub failures: usize,
    pub errors: usize,
}

/// What the suite of a shard says of it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(in crate::report) enum MarkProperty {
    Version,
    Number,
    Count,
    Day,
    Level,
    Asked,
    ChangedSince,
}

struct Fault {
    /// The standard's word for it: a test that failed, or one that could not run.
    element: &'static str,
    kind: &'static str,
    message: String,
    text: String,
}

/// Writes all specs of a run. A finding at least as grave as `fail_on` is a failed test.
///
/// # Errors
/// What the stream says.
pub fn write_junit(
    all: &[Checked<'_>],
    unusable: &[Unusable],
    fail_on: Severity,
    part: Part<'_>,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut suites: Vec<_> = all.iter().map(|checked| suite_of(checked, fail_on)).collect();
    if !unusable.is_empty() {
        let cases = unusable.iter().map(case_of_unusable).collect();
        suites.push(Suite { cases, ..Suite::of(NOT_USABLE) });
    }
    if let Some(shard) = part.shard {
        // Only a suite may say more than the standard asks.
        let told = MarkProperty::ALL.map(|property| (property, property.of(shard, part.changed_since)));
        let properties = told.into_iter().filter_map(|(property, value)| Some((property.name(), value?)));
        suites.push(Suite { properties: properties.collect(), ..Suite::of(&format!("shard {shard}")) });
    }
    let mut writer = Writer::new_with_indent(&mut *out, b' ', 2);
    writer.write_event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)))?;
    let counts = Counts::of(suites.iter().flat_map(|suite| &suite.cases));
    let element = writer.create_element("testsuites").with_attribute(("name", "storyrod"));
    let counts = counts.attributes();
    let element = element.with_attributes(counts.iter().map(|(name, count)| (*name, count.as_str())));
    element.write_inner_content(|writer| suites.iter().try_for_each(|suite| write_suite(suite, writer)))?;
    writeln!(out)
}

impl MarkProperty {
    pub const ALL: [Self; 7] =
        [Self::Version, Self::Number, Self::Count, Self::Day, Self::Level, Self::Asked, Self::ChangedSince];

    pub fn name(self) -> &'static str {
        match self {
            Self::Version => "version",
            Self::Number => "shard",
            Self::Count => "shards",
            Self::Day => "day",
            Self::Level => "level",
            Self::Asked => "asked",
            Self::ChangedSince => "changed-since",
        }
    }

    fn of(self, shard: Shard, changed_since: Option<&str>) -> Option<String> {
        match self {
            Self::Version => Some(env!("CARGO_PKG_VERSION").to_owned()),
            Self::Number => Some(shard.number.to_string()),
            Self::Count => Some(shard.count.to_string()),
            Self::Day => Some(shard.today.to_string()),
            Self::Level => Some(shard.fail_on.word().to_owned()),
            Self::Asked => Some(shard.asked_word()),
            Self::ChangedSince => changed_since.map(str::to_owned),
        }
    }
}

impl Suite {
    fn of(name: &str) -> Self {
        Self { name: name.to_owned(), properties: Vec::new(), cases: Vec::new(), output: String::new() }
    }
}

impl Counts {
    fn of<'c>(cases: impl IntoIterator<Item = &'c Case>) -> Self {
        let mut counts = Self::default();
        for case in cases {
            counts.tests += 1;
            match case.fault.as_ref().map(|fault| fault.element) {
                Some("failure") => counts.failures += 1,
                Some(_) => counts.errors += 1,
                None => {}
            }
        }
        counts
    }

    /// As attributes of a suite or of all suites.
    pub fn attributes(self) -> [(&'static str, String); 3] {
        [
            ("tests", self.tests.to_string()),
            ("failures", self.failures.to_string()),
            ("errors", self.errors.to_string()),
        ]
    }
}

fn suite_of(checked: &Checked<'_>, fail_on: Severity) -> Suite {
    let mut cases = Vec::new();
    let mut output = String::new();
    let mut failed_files = Vec::new();
    let mut met = HashMap::new();
    for root in checked.findings {
        for finding in root.with_consequences() {
            if finding.severity < fail_on {
                output.push_str(&line_of(checked, finding));
                output.push('\n');
                continue;
            }
            failed_files.push(finding.span.file.0 as usize);
            let mut case = case_of(checked, finding, root);
            let count = met.entry((case.class.clone(), case.name.clone())).or_insert(0);
            *count += 1;
            if *count > 1 {
                case.name = format!("{} ({count})", case.name);
            }
            cases.push(case);
        }
    }
    let files = checked.names.iter().enumerate().filter(|(at, _)| !failed_files.contains(at));
    let passed =
        files.map(|(_, name)| Case { name: name.clone(), class: checked.name().to_owned(), fault: None });
    cases.extend(passed);
    output.push_str(&format!("{NOT_CHECKED}\n{STRENGTH_CAUTION}"));
    Suite { cases, output, ..Suite::of(checked.name()) }
}

fn case_of(checked: &Checked<'_>, finding: &Diagnostic, root: &Diagnostic) -> Case {
    let about = if finding.subject.is_empty() { String::new() } else { format!(": {}", finding.subject) };
    let mut lines = vec![line_of(checked, finding)];
    if !std::ptr::eq(finding, root) {
        lines.push(format!("follows from: {}", line_of(checked, root)));
    }
    lines.extend(details(finding));
    Case {
        name: format!("{}{about}", finding.rule),
        class: checked.names.get(finding.span.file.0 as usize).cloned().unwrap_or_default(),
        fault: Some(Fault {
            element: "failure",
            kind: finding.severity.word(),
            message: finding.message.clone(),
            text: lines.join("\n"),
        }),
    }
}

fn line_of(checked: &Checked<'_>, finding: &Diagnostic) -> String {
    let place = place_of(checked, finding.span);
    format!("{place}: {}: {} [{}]", finding.severity.word(), finding.message, finding.rule)
}

fn case_of_unusable(unusable: &Unusable) -> Case {
    Case {
        name: unusable.file.clone(),
        class: NOT_USABLE.to_owned(),
        fault: Some(Fault {
            element: "error",
            kind: NOT_USABLE,
            message: unusable.message.clone(),
            text: unusable.to_string(),
        }),
    }
}

fn write_suite(suite: &Suite, writer: &mut Writer<impl Write>) -> io::Result<()> {
    let counts = Counts::of(&suite.cases).attributes();
    let element = writer.create_element("testsuite").with_attribute(("name", allowed(&suite.name).as_str()));
    let element = element.with_attributes(counts.iter().map(|(name, count)| (*name, count.as_str())));
    element.write_inner_content(|writer| {
        if !suite.properties.is_empty() {
            writer.create_element("properties").write_inner_content(|writer| {
                suite.properties.iter().try_for_each(|(name, value)| {
                    let property = writer.create_element("property").with_attribute(("name", *name));
                    property.with_attribute(("value", allowed(value).as_str())).write_empty().map(|_| ())
                })
            })?;
        }
        suite.cases.iter().try_for_each(|case| write_case(case, writer))?;
        if !suite.output.is_empty() {
            let output = allowed(&suite.output);
            writer.create_element("system-out").write_text_content(BytesText::new(&output))?;
        }
        Ok(())
    })?;
    Ok(())
}

fn write_case(case: &Case, writer: &mut Writer<impl Write>) -> io::Result<()> {
    let (name, class) = (allowed(&case.name), allowed(&case.class));
    let element = writer.create_element("testcase");
    let element = element.with_attributes([("name", name.as_str()), ("classname", class.as_str())]);
    let Some(fault) = &case.fault else {
        element.write_empty()?;
        return Ok(());
    };
    element.write_inner_content(|writer| {
        let message = allowed(&fault.message);
        let element = writer.create_element(fault.element);
        let element = element.with_attributes([("type", fault.kind), ("message", message.as_str())]);
        element.write_text_content(BytesText::new(&allowed(&fault.text)))?;
        Ok(())
    })?;
    Ok(())
}

/// The text without what XML can't hold: most of that steers terminals, too.
pub(in crate::report) fn allowed(text: &str) -> String {
    printable(text).replace(['\u{fffe}', '\u{ffff}'], "\u{fffd}")
}
