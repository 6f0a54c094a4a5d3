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
use crate::report::{Checked, STRENGTH_CAUTION, Unusable, printable};

struct Suite {
    name: String,
    cases: Vec<Case>,
    /// What is printed beside the cases; nothing when it is empty.
    output: String,
}

struct Case {
    name: String,
    class: String,
    fault: Option<Fault>,
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
    out: &mut impl Write,
) -> io::Result<()> {
    let mut suites: Vec<_> = all.iter().map(|checked| suite_of(checked, fail_on)).collect();
    if !unusable.is_empty() {
        let cases = unusable.iter().map(case_of_unusable).collect();
        suites.push(Suite { name: "not usable".to_owned(), cases, output: String::new() });
    }
    let mut writer = Writer::new_with_indent(&mut *out, b' ', 2);
    writer.write_event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)))?;
    let cases: Vec<&Case> = suites.iter().flat_map(|suite| &suite.cases).collect();
    let counts = counts_of(&cases);
    let element = writer.create_element("testsuites").with_attribute(("name", "storyrod"));
    let element = element.with_attributes(counts.iter().map(|(name, count)| (*name, count.as_str())));
    element.write_inner_content(|writer| suites.iter().try_for_each(|suite| write_suite(suite, writer)))?;
    writeln!(out)
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
    Suite { name: checked.name().to_owned(), cases, output }
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
        class: "not usable".to_owned(),
        fault: Some(Fault {
            element: "error",
            kind: "not usable",
            message: unusable.message.clone(),
            text: unusable.to_string(),
        }),
    }
}

fn counts_of(cases: &[&Case]) -> [(&'static str, String); 3] {
    let faults = |element: &str| {
        let is_such = |case: &&&Case| case.fault.as_ref().is_some_and(|fault| fault.element == element);
        cases.iter().filter(is_such).count().to_string()
    };
    [("tests", cases.len().to_string()), ("failures", faults("failure")), ("errors", faults("error"))]
}

fn write_suite(suite: &Suite, writer: &mut Writer<impl Write>) -> io::Result<()> {
    let counts = counts_of(&suite.cases.iter().collect::<Vec<_>>());
    let element = writer.create_element("testsuite").with_attribute(("name", allowed(&suite.name).as_str()));
    let element = element.with_attributes(counts.iter().map(|(name, count)| (*name, count.as_str())));
    element.write_inner_content(|writer| {
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
fn allowed(text: &str) -> String {
    printable(text).replace(['\u{fffe}', '\u{ffff}'], "\u{fffd}")
}
