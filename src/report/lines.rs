//! Findings one a line, as compilers write them: an editor's list of errors and `grep` read that.

use std::io::{self, Write};

use crate::diagnostic::Diagnostic;
use crate::report::{Checked, printable};
use crate::text::{ColumnEncoding, Span};

/// Writes `FILE:LINE:COLUMN: SEVERITY: MESSAGE [RULE]` for every finding of one spec and for what follows from it.
///
/// # Errors
/// What the stream says.
pub fn write_lines(checked: &Checked<'_>, out: &mut impl Write) -> io::Result<()> {
    for finding in checked.findings.iter().flat_map(Diagnostic::with_consequences) {
        let place = place_of(checked, finding.span);
        // A message is one line, but a name in it is the author's.
        let message = printable(&finding.message).replace(['\n', '\r'], " ");
        writeln!(out, "{place}: {}: {message} [{}]", finding.severity.word(), finding.rule)?;
    }
    Ok(())
}

/// A place as editors and terminals follow it: file, line and column in characters, from 1.
pub fn place_of(checked: &Checked<'_>, span: Span) -> String {
    let index = span.file.0 as usize;
    let (Some(name), Some(source)) = (checked.names.get(index), checked.sources.get(index)) else {
        return String::new();
    };
    let place = source.lines.line_column(&source.text, span.start, ColumnEncoding::Utf32);
    format!("{}:{}:{}", printable(name), place.line + 1, place.column + 1)
}
