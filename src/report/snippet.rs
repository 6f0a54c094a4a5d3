//! The lines of a spec that a finding is about, with its places marked.

use std::fmt::Display;
use std::io;
use std::ops::Range;

use ariadne::{Cache, Color, Config, IndexType, Label, Report, ReportKind, Source};

use crate::diagnostic::{Diagnostic, Severity};
use crate::report::{Checked, Palette, printable};
use crate::text::{LineIndex, Span};

/// A line longer than this many bytes is not printed.
const LONGEST_LINE: usize = 400;

/// The files of a spec, each cut into lines once.
pub(in crate::report) struct Files<'a> {
    files: Vec<File<'a>>,
}

struct File<'a> {
    name: String,
    text: Source<String>,
    lines: &'a LineIndex,
}

impl<'a> Files<'a> {
    pub(in crate::report) fn of(checked: &Checked<'a>) -> Self {
        let named = checked.names.iter().zip(checked.sources);
        let files = named.map(|(name, source)| File {
            name: printable(name).into_owned(),
            text: Source::from(printable(&source.text).into_owned()),
            lines: &source.lines,
        });
        Self { files: files.collect() }
    }

    /// The lines of the finding's places, marked; `None` when one of them is too long to be shown.
    pub(in crate::report) fn snippet(
        &mut self,
        finding: &Diagnostic,
        palette: Palette,
    ) -> io::Result<Option<String>> {
        let Some(place) = self.marked(finding.span) else { return Ok(None) };
        let colour = colour_of(finding.severity);
        let config = Config::new()
            .with_index_type(IndexType::Byte)
            .with_color(palette == Palette::Colour)
            .with_cross_gap(false);
        let mut report = Report::build(ReportKind::Advice, place.clone()).with_config(config);
        let own_message = if finding.subject.is_empty() { "here" } else { &finding.subject };
        let mut labels = vec![(place, own_message, colour)];
        for related in &finding.related {
            let Some(place) = self.marked(related.span) else { return Ok(None) };
            labels.push((place, &related.message, Color::Blue));
        }
        // In this order each file is shown once, from its top to its bottom.
        labels.sort_by_key(|((file, range), ..)| (*file != finding.span.file.0 as usize, *file, range.start));
        for (place, message, colour) in labels {
            report.add_label(Label::new(place).with_message(printable(message)).with_color(colour));
        }
        let mut bytes = Vec::new();
        report.finish().write(&mut *self, &mut bytes)?;
        let mut snippet = String::new();
        // The first line is a heading in the crate's own words and colours; the report writes its own.
        for line in String::from_utf8_lossy(&bytes).lines().skip(1) {
            snippet.push_str(line.trim_end());
            snippet.push('\n');
        }
        Ok(Some(snippet))
    }

    /// The part of a place that stands on its first line, on whole characters; `None` when that line is too long.
    fn marked(&self, span: Span) -> Option<(usize, Range<usize>)> {
        let index = span.file.0 as usize;
        let file = self.files.get(index)?;
        let text = file.text.text();
        let start = floor_boundary(text, span.start as usize);
        let (line_start, next_line) = file.lines.range_of(file.lines.line_of(span.start));
        let line = text.get(line_start as usize..next_line as usize)?;
        if line.len() > LONGEST_LINE {
            return None;
        }
        let line_end = line_start as usize + line.trim_end_matches(['\r', '\n']).len();
        let end = floor_boundary(text, span.end as usize).min(line_end).max(start);
        Some((
            index,
            if start == end { one_character(text, line_start as usize, start, line_end) } else { start..end },
        ))
    }
}

/// An empty place is shown by the character behind it, at the line's end by the one before it.
fn one_character(text: &str, line_start: usize, at: usize, line_end: usize) -> Range<usize> {
    let before = text.get(line_start..at).and_then(|before| before.chars().next_back());
    let behind = text.get(at..line_end).and_then(|behind| behind.chars().next());
    match (before, behind) {
        (_, Some(behind)) => at..at + behind.len_utf8(),
        (Some(before), None) => at - before.len_utf8()..at,
        (None, None) => at..at,
    }
}

impl Cache<usize> for Files<'_> {
    type Storage = String;

    fn fetch(&mut self, id: &usize) -> Result<&Source<String>, impl std::fmt::Debug> {
        self.files.get(*id).map(|file| &file.text).ok_or("no such file in this spec")
    }

    fn display<'a>(&self, id: &'a usize) -> Option<impl Display + 'a> {
        self.files.get(*id).map(|file| file.name.clone())
    }
}

fn colour_of(severity: Severity) -> Color {
    match severity {
        Severity::Error => Color::Red,
        Severity::Warning => Color::Yellow,
        Severity::Advice => Color::Cyan,
    }
}

/// The last character boundary at or before `at`, inside the text.
fn floor_boundary(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}
