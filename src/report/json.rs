//! Findings for a program: the shape that `grammar/lint-output.schema.json` describes.

use std::borrow::Cow;
use std::fmt;
use std::io::{self, Write};

use serde::{Deserialize, Serialize};

use crate::diagnostic::{Diagnostic, Fix, Remedy, Severity};
use crate::report::gather::ShardMark;
use crate::report::{Checked, Part, STRENGTH_CAUTION, printable};
use crate::text::{ColumnEncoding, Span};

/// Raised when a program that reads the old shape could misread the new one.
pub(in crate::report) const SCHEMA: u32 = 1;

/// An input that could not be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unusable {
    /// Its name.
    pub file: String,
    /// Line and column in characters, from 1, where one place is at fault.
    pub place: Option<(u32, u32)>,
    /// Why; lower case, no final stop.
    pub message: String,
}

impl Unusable {
    /// The name of what is no file.
    pub const STANDARD_INPUT: &'static str = "standard input";
}

impl fmt::Display for Unusable {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", printable(&self.file))?;
        if let Some((line, column)) = self.place {
            write!(out, ":{line}:{column}")?;
        }
        write!(out, ": {}", printable(&self.message))
    }
}

/// Writes all specs of a run as one JSON text.
///
/// # Errors
/// What the stream says.
pub fn write_json(
    all: &[Checked<'_>],
    unusable: &[Unusable],
    part: Part<'_>,
    out: &mut impl Write,
) -> io::Result<()> {
    let output = Output {
        schema: SCHEMA,
        version: env!("CARGO_PKG_VERSION").into(),
        caution: STRENGTH_CAUTION.into(),
        changed_since: part.changed_since.map(Cow::from),
        shard: part.shard.map(ShardMark::from),
        specs: all.iter().map(SpecOut::of).collect(),
        unusable: unusable.iter().map(UnusableOut::of).collect(),
    };
    output.write(out)
}

/// A whole result; what is said of each spec may be as it was written before.
#[derive(Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(in crate::report) struct Output<'a, Spec, Unusable> {
    pub schema: u32,
    #[serde(borrow)]
    pub version: Cow<'a, str>,
    #[serde(borrow)]
    pub caution: Cow<'a, str>,
    #[serde(borrow)]
    pub changed_since: Option<Cow<'a, str>>,
    #[serde(borrow)]
    pub shard: Option<ShardMark<'a>>,
    pub specs: Vec<Spec>,
    pub unusable: Vec<Unusable>,
}

impl<Spec: Serialize, Unusable: Serialize> Output<'_, Spec, Unusable> {
    pub fn write(&self, out: &mut impl Write) -> io::Result<()> {
        serde_json::to_writer_pretty(&mut *out, self)?;
        writeln!(out)
    }
}

#[derive(Serialize)]
struct UnusableOut<'a> {
    file: &'a str,
    line: Option<u32>,
    column: Option<u32>,
    message: &'a str,
}

#[derive(Serialize)]
struct SpecOut<'a> {
    file: &'a str,
    files: &'a [String],
    read_alone: bool,
    counts: Counts,
    findings: Vec<FindingOut<'a>>,
}

#[derive(Serialize)]
struct Counts {
    error: usize,
    warning: usize,
    advice: usize,
}

#[derive(Serialize)]
struct FindingOut<'a> {
    rule: &'a str,
    severity: &'static str,
    subject: Option<&'a str>,
    place: PlaceOut<'a>,
    message: &'a str,
    related: Vec<RelatedOut<'a>>,
    notes: &'a [String],
    help: &'a [String],
    remedy: &'static str,
    basis: Option<&'a str>,
    waiver: Option<&'a str>,
    fix: Option<FixOut<'a>>,
    consequences: Vec<FindingOut<'a>>,
}

#[derive(Serialize)]
struct RelatedOut<'a> {
    place: PlaceOut<'a>,
    message: &'a str,
}

#[derive(Serialize)]
struct FixOut<'a> {
    title: &'a str,
    edits: Vec<EditOut<'a>>,
}

#[derive(Serialize)]
struct EditOut<'a> {
    place: PlaceOut<'a>,
    text: &'a str,
}

#[derive(Serialize)]
struct PlaceOut<'a> {
    file: &'a str,
    start: PointOut,
    end: PointOut,
}

#[derive(Serialize)]
struct PointOut {
    byte: u32,
    line: u32,
    column: u32,
}

impl<'a> UnusableOut<'a> {
    fn of(unusable: &'a Unusable) -> Self {
        let (line, column) = unusable.place.unzip();
        Self { file: &unusable.file, line, column, message: &unusable.message }
    }
}

impl<'a> SpecOut<'a> {
    fn of(checked: &'a Checked<'a>) -> Self {
        Self {
            file: checked.name(),
            files: checked.names,
            read_alone: checked.is_alone,
            counts: Counts {
                error: checked.count(Severity::Error),
                warning: checked.count(Severity::Warning),
                advice: checked.count(Severity::Advice),
            },
            findings: checked.findings.iter().map(|finding| FindingOut::of(checked, finding)).collect(),
        }
    }
}

impl<'a> FindingOut<'a> {
    fn of(checked: &'a Checked<'a>, finding: &'a Diagnostic) -> Self {
        let related = finding.related.iter();
        Self {
            rule: finding.rule,
            severity: finding.severity.word(),
            subject: Some(finding.subject.as_str()).filter(|subject| !subject.is_empty()),
            place: PlaceOut::of(checked, finding.span),
            message: &finding.message,
            related: related
                .map(|related| RelatedOut {
                    place: PlaceOut::of(checked, related.span),
                    message: &related.message,
                })
                .collect(),
            notes: &finding.notes,
            help: &finding.help,
            remedy: word_of(finding.remedy),
            basis: finding.basis.as_deref(),
            waiver: finding.waiver.as_deref(),
            fix: finding.fix.as_ref().map(|fix| FixOut::of(checked, fix)),
            consequences: finding.consequences.iter().map(|finding| Self::of(checked, finding)).collect(),
        }
    }
}

impl<'a> FixOut<'a> {
    fn of(checked: &'a Checked<'a>, fix: &'a Fix) -> Self {
        let edits = fix.edits.iter();
        Self {
            title: &fix.title,
            edits: edits
                .map(|edit| EditOut { place: PlaceOut::of(checked, edit.span), text: &edit.text })
                .collect(),
        }
    }
}

impl<'a> PlaceOut<'a> {
    fn of(checked: &'a Checked<'a>, span: Span) -> Self {
        let index = span.file.0 as usize;
        let point = |byte: u32| match checked.sources.get(index) {
            Some(source) => {
                let place = source.lines.line_column(&source.text, byte, ColumnEncoding::Utf32);
                PointOut { byte, line: place.line + 1, column: place.column + 1 }
            }
            None => PointOut { byte, line: 1, column: 1 },
        };
        let file = checked.names.get(index).map(String::as_str).unwrap_or_default();
        Self { file, start: point(span.start), end: point(span.end) }
    }
}

fn word_of(remedy: Remedy) -> &'static str {
    match remedy {
        Remedy::OnPaper => "on-paper",
        Remedy::Ordered => "ordered",
        Remedy::InPlace => "in-place",
    }
}
