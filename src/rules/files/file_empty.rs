//! Files that say nothing.

use crate::house::House;
use crate::rules::{Findings, rule};
use crate::syntax::Opening;
use crate::text::Span;

rule! {
    /// A file holds no element.
    ///
    /// ## Why
    /// A file that says nothing passes every check; it was cut off, or not saved.
    ///
    /// ## Source
    /// The format's own rule: a spec has at least a `project`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// -- the walls come here
    /// ```
    /// ```framing,passes
    /// wall W1
    /// ```
    "file-empty", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (file, tree) in house.files().zip(&house.trees) {
        // A first word that opens nothing, or a fact that belongs to nothing, says so itself.
        let is_empty = tree
            .chunks
            .iter()
            .all(|chunk| matches!(chunk.body.opening, Opening::Nothing) && chunk.body.problems.is_empty());
        if is_empty {
            let start = Span::new(file, 0, 0);
            findings
                .in_text(house.line_of(start), "this file holds no element")
                .help("a spec begins with `project \"…\"`");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    #[test]
    fn blanks_and_comments_are_no_elements() {
        for text in ["", " \n\n", "-- note\n"] {
            assert_eq!(found(&RULE, text).len(), 1, "{text:?}");
        }
        for text in [
            "grid\n",
            "include \"walls.framing\"\n-- file walls.framing\nfooting F1\n",
            "wobble\n",
            "  top 9'\n",
        ] {
            assert_eq!(found(&RULE, text), [], "{text:?}");
        }
    }
}
