//! From one text of a file to another, line by line.

use std::time::Duration;

use similar::{DiffOp, TextDiff};

use crate::diagnostic::Edit;
use crate::text::{FileId, Span};

/// How long the smallest change is looked for before a coarser one will do.
const PATIENCE: Duration = Duration::from_millis(500);

/// The edits that lead from the old text to the new one: lines that stay where they are keep their cursors and marks.
pub fn difference(file: FileId, old: &str, new: &str) -> Vec<Edit> {
    let diff = TextDiff::configure().timeout(PATIENCE).diff_lines(old, new);
    let n_bytes =
        |lines: Option<&[&str]>| lines.unwrap_or_default().iter().map(|line| line.len()).sum::<usize>();
    let byte = |offset: usize| u32::try_from(offset).unwrap_or(u32::MAX);
    let mut start = 0;
    let mut edits = Vec::new();
    for op in diff.ops() {
        let end = start + n_bytes(diff.old_slices().get(op.old_range()));
        if !matches!(op, DiffOp::Equal { .. }) {
            let text = diff.new_slices().get(op.new_range()).unwrap_or_default().concat();
            edits.push(Edit { span: Span::new(file, byte(start), byte(end)), text });
        }
        start = end;
    }
    edits
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_lines_that_change_are_touched() {
        let edits = difference(FileId(0), "one\n two\nthree\n", "one\n  two\nthree\n");
        assert_eq!(edits, [Edit { span: Span::new(FileId(0), 4, 9), text: "  two\n".to_owned() }]);
        assert_eq!(difference(FileId(0), "same\r\n", "same\r\n"), []);
    }
}
