//! Results as JUnit's XML. Suites and cases are taken over as they are written.

use std::borrow::Cow;
use std::collections::HashMap;
use std::io::Write;
use std::mem;
use std::ops::Range;
use std::path::PathBuf;

use quick_xml::events::{BytesStart, Event};
use quick_xml::{Reader, XmlVersion};

use crate::report::gather::{GatherFault, Gathered, Mark, Misread, ShardMark};
use crate::report::junit::{Counts, MarkProperty, NOT_USABLE};
use crate::report::order::place_in_order;

/// The document of a shard: its suites, and the cases of inputs that could not be used, each behind its place in the order.
#[derive(Default)]
pub(super) struct Body<'a> {
    suites: Vec<(PathBuf, &'a str)>,
    unusable: Vec<(PathBuf, &'a str)>,
    counts: Counts,
    n_cases: usize,
}

/// A suite while it is read.
#[derive(Default)]
struct Suite {
    starts_at: usize,
    name: String,
    cases: Vec<(String, Range<usize>)>,
    /// Every suite of a spec has some.
    has_output: bool,
    is_mark: bool,
}

pub(super) fn read(text: &str) -> Result<(Mark<'_>, Body<'_>), Misread> {
    let mut body = Body::default();
    let mut told = HashMap::new();
    let mut suite = Suite::default();
    let mut depth = 0_usize;
    let mut reader = Reader::from_str(text);
    loop {
        let starts_at = position(&reader);
        let event = reader.read_event().map_err(|error| Misread::Damaged(error.to_string()))?;
        match &event {
            Event::Start(start) | Event::Empty(start) => match (depth, start.name().as_ref()) {
                (0, "testsuites") => body.counts = counts_of(start)?,
                (1, "testsuite") => {
                    suite = Suite { starts_at, name: attribute(start, "name"), ..Suite::default() };
                }
                (2, "testcase") => suite.cases.push((attribute(start, "name"), starts_at..starts_at)),
                (2, "properties") => suite.is_mark = true,
                (2, "system-out") => suite.has_output = true,
                (3, "property") => _ = told.insert(attribute(start, "name"), attribute(start, "value")),
                _ => {}
            },
            Event::Eof => break,
            _ => {}
        }
        let ends_at = position(&reader);
        match &event {
            Event::Start(_) => depth += 1,
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
        if !matches!(event, Event::End(_) | Event::Empty(_)) {
            continue;
        }
        match depth {
            2 => {
                if let Some((_, case)) = suite.cases.last_mut().filter(|(_, case)| case.is_empty()) {
                    case.end = ends_at;
                }
            }
            1 if !suite.is_mark => body.add(text, mem::take(&mut suite), ends_at),
            _ => {}
        }
    }
    let n_cases = body.n_cases;
    match body.counts.tests {
        _ if depth > 0 => Err(Misread::Damaged("it breaks off".to_owned())),
        told if told != n_cases => {
            Err(Misread::Damaged(format!("it tells of {told} tests and has {n_cases}")))
        }
        _ => Ok((mark_of(&told)?, body)),
    }
}

pub(super) fn write(bodies: Vec<Body<'_>>, out: &mut impl Write) -> Result<Gathered, GatherFault> {
    let mut whole = Body::default();
    for body in bodies {
        whole.suites.extend(body.suites);
        whole.unusable.extend(body.unusable);
        whole.counts.tests += body.counts.tests;
        whole.counts.failures += body.counts.failures;
        whole.counts.errors += body.counts.errors;
    }
    let Body { mut suites, mut unusable, counts, .. } = whole;
    suites.sort_by(|(one, _), (other, _)| one.cmp(other));
    unusable.sort_by(|(one, _), (other, _)| one.cmp(other));
    // As the writer of whole documents indents.
    write!(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"storyrod\"")?;
    write_counts(counts, out)?;
    for (_, suite) in suites {
        write!(out, "\n  {suite}")?;
    }
    if !unusable.is_empty() {
        write!(out, "\n  <testsuite name=\"{NOT_USABLE}\"")?;
        write_counts(Counts { tests: unusable.len(), failures: 0, errors: unusable.len() }, out)?;
        for (_, case) in &unusable {
            write!(out, "\n    {case}")?;
        }
        write!(out, "\n  </testsuite>")?;
    }
    writeln!(out, "\n</testsuites>")?;
    Ok(Gathered { is_found: counts.failures > 0, n_unusable: counts.errors })
}

impl<'a> Body<'a> {
    fn add(&mut self, text: &'a str, suite: Suite, ends_at: usize) {
        self.n_cases += suite.cases.len();
        let written = |range: Range<usize>| text.get(range).unwrap_or_default();
        if suite.name == NOT_USABLE && !suite.has_output {
            let cases = suite.cases.into_iter();
            self.unusable.extend(cases.map(|(name, range)| (place_in_order(&name), written(range))));
        } else {
            self.suites.push((place_in_order(&suite.name), written(suite.starts_at..ends_at)));
        }
    }
}

fn mark_of(told: &HashMap<String, String>) -> Result<Mark<'static>, Misread> {
    let of = |property: MarkProperty| told.get(property.name()).cloned();
    let text = |property| of(property).map(Cow::Owned).ok_or(Misread::Whole);
    let number = |property| of(property).and_then(|number| number.parse().ok()).ok_or(Misread::Whole);
    Ok(Mark {
        version: text(MarkProperty::Version)?,
        changed_since: of(MarkProperty::ChangedSince).map(Cow::Owned),
        shard: ShardMark {
            number: number(MarkProperty::Number)?,
            count: number(MarkProperty::Count)?,
            day: text(MarkProperty::Day)?,
            level: text(MarkProperty::Level)?,
            asked: text(MarkProperty::Asked)?,
        },
    })
}

fn position(reader: &Reader<&[u8]>) -> usize {
    usize::try_from(reader.buffer_position()).unwrap_or(usize::MAX)
}

fn attribute(start: &BytesStart<'_>, name: &str) -> String {
    let found = start.try_get_attribute(name).ok().flatten();
    let value =
        found.and_then(|found| found.normalized_value(XmlVersion::default()).ok().map(Cow::into_owned));
    value.unwrap_or_default()
}

fn counts_of(start: &BytesStart<'_>) -> Result<Counts, Misread> {
    let count = |name: &str| {
        let written = attribute(start, name);
        written.parse().map_err(|_| Misread::Damaged(format!("`{name}` is \"{written}\", no count")))
    };
    Ok(Counts { tests: count("tests")?, failures: count("failures")?, errors: count("errors")? })
}

fn write_counts(counts: Counts, out: &mut impl Write) -> Result<(), GatherFault> {
    for (name, count) in counts.attributes() {
        write!(out, " {name}=\"{count}\"")?;
    }
    Ok(write!(out, ">")?)
}
