//! What to change in a document so that it looks as the formatter writes it.

use std::time::Duration;

use similar::{DiffOp, TextDiff};

use crate::syntax;

/// How long we look for the smallest change before a coarser one will do.
const PATIENCE: Duration = Duration::from_millis(500);

/// One change of a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Replacement {
    /// The first byte that goes.
    pub start: u32,
    /// One past the last.
    pub end: u32,
    /// What comes.
    pub text: String,
}

/// The changes that make `text` what the formatter writes, line by line, so that cursors and marks in lines that stay
/// keep their place. Line ends become those of the first line. Invariant: in the order of the text, without overlap.
pub fn formatting(text: &str) -> Vec<Replacement> {
    replacements(text, &syntax::format(text).replace('\n', line_end(text)))
}

fn line_end(text: &str) -> &'static str {
    match text.find(['\r', '\n']).and_then(|at| text.get(at..)) {
        Some(rest) if rest.starts_with("\r\n") => "\r\n",
        Some(rest) if rest.starts_with('\r') => "\r",
        _ => "\n",
    }
}

fn replacements(old: &str, new: &str) -> Vec<Replacement> {
    let diff = TextDiff::configure().timeout(PATIENCE).diff_lines(old, new);
    let n_bytes =
        |lines: Option<&[&str]>| lines.unwrap_or_default().iter().map(|line| line.len()).sum::<usize>();
    let byte = |offset: usize| u32::try_from(offset).unwrap_or(u32::MAX);
    let mut start = 0;
    let mut all = Vec::new();
    for op in diff.ops() {
        let end = start + n_bytes(diff.old_slices().get(op.old_range()));
        if !matches!(op, DiffOp::Equal { .. }) {
            let text = diff.new_slices().get(op.new_range()).unwrap_or_default().concat();
            all.push(Replacement { start: byte(start), end: byte(end), text });
        }
        start = end;
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn applied(old: &str, edits: &[Replacement]) -> String {
        let mut text = old.to_owned();
        for edit in edits.iter().rev() {
            text.replace_range(edit.start as usize..edit.end as usize, &edit.text);
        }
        text
    }

    #[test]
    fn lines_that_stay_are_not_touched() {
        let edits = replacements("one\n two\nthree\n", "one\n  two\nthree\n");
        assert_eq!(edits, [Replacement { start: 4, end: 9, text: "  two\n".to_owned() }]);
        assert_eq!(replacements("same\r\n", "same\r\n"), []);
    }

    #[test]
    fn line_ends_stay_what_they_are() {
        for end in ["\n", "\r\n", "\r"] {
            let text = ["grid", "x A 0'", ""].join(end);
            let formatted = applied(&text, &formatting(&text));
            assert_eq!(formatted, syntax::format(&text).replace('\n', end));
            assert_eq!(formatting(&formatted), []);
        }
    }

    proptest! {
        #[test]
        fn the_changes_lead_from_one_text_to_the_other(old in "[ab é\r\n]{0,40}", new in "[ab é\r\n]{0,40}") {
            let edits = replacements(&old, &new);
            prop_assert!(edits.windows(2).all(|pair| pair[0].end <= pair[1].start));
            prop_assert_eq!(applied(&old, &edits), new);
        }
    }
}
